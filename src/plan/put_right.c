#include "plan/put_right.h"

#include "constants.h"
#include "plan/grind_care.h"
#include "plan/variant_bake.h"
#include "plan/words.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>

static void add(hs_result *r, int stop, int wheel, const char *format, ...) HS_PRINTF(4, 5);

static void add(hs_result *r, int stop, int wheel, const char *format, ...) {
    if (r->rights == HS_MAX_RIGHTS) return;
    hs_result_right *one = &r->right[r->rights++];
    one->stop = stop;
    one->wheel = wheel;
    va_list args;
    va_start(args, format);
    vsnprintf(one->text, sizeof one->text, format, args);
    va_end(args);
}

/* The sums take carbon that comes from all sides: a thin layer is spent, and burns through first.
 */
static void look_at_boxes(hs_result *r, const hs_job *job) {
    int inch = job->inch_first;
    for (size_t i = 0; i < r->packs; i++) {
        const hs_result_pack *p = &r->pack[i];
        if (!p->thin_cover) continue;
        double least_m = p->box_m[0] - 2 * p->cover_m + 2 * HS_K_PACK_COVER_LEAST;
        add(r, 0, 0,
            "The box is too small: %s of compound between part and wall, and %s is the least. The "
            "case will come out thinner and less even than reckoned here. Take a box of %s inside "
            "or more.",
            hs_word_about(fmax(0, p->cover_m), inch, HS_DOWN).text,
            hs_word_about(HS_K_PACK_COVER_LEAST, inch, HS_UP).text,
            hs_word_about(least_m, inch, HS_UP).text);
    }
}

static void look_at_bakes(hs_result *r, const hs_job *job) {
    double bears_K, hold_s;
    const hs_step *temper;
    int inch = job->inch_first;
    size_t i = hs_bake_too_hot(&bears_K, &hold_s, &temper, job);
    if (i == job->steps) return;
    add(r, 0, 0,
        "The bake at %s draws the case further than its temper at %s did. Bake at %s at most, for "
        "%.0f h; hardness and case here are those after the hot bake.",
        hs_word_temp(job->step[i].temp_K.value, inch).text,
        hs_word_temp(temper->temp_K.value, inch).text, hs_word_temp(bears_K, inch).text,
        fmax(job->step[i].hold_s.value, hold_s) / 3600);
}

static void look_at_wheel(hs_result *r, const hs_job *job) {
    double burn_J_m3;
    int inch = job->inch_first;
    hs_feeds feeds = hs_grind_feeds(&burn_J_m3, job);
    hs_word infeed = hs_word_length(job->shop.grinding.rough_infeed_m, inch, HS_NEAREST);
    hs_word most = hs_word_length(HS_K_GRINDING_ROUGH_INFEED_MOST, inch, HS_DOWN);
    hs_word usual = hs_word_length(HS_K_GRINDING_ROUGH_INFEED, inch, HS_DOWN);
    if (feeds == HS_FEEDS_BURN)
        add(r, 1, 1,
            "Rough infeed %s: any wheel, however sharp, burns and cracks a hardened face at it, "
            "and "
            "can break. %s is usual, %s the most.",
            infeed.text, usual.text, most.text);
    else if (feeds == HS_FEEDS_MUCH)
        add(r, 0, 1,
            "Rough infeed %s is more than a hardened face bears: burn and cracks. %s is usual, %s "
            "the most.",
            infeed.text, usual.text, most.text);
}

void hs_put_right(hs_result *r, const hs_job *job) {
    r->rights = 0;
    look_at_boxes(r, job);
    look_at_bakes(r, job);
    if (r->grind != HS_NONE) look_at_wheel(r, job);
    for (size_t i = 0; i < r->rights; i++) {
        if (!r->right[i].stop) continue;
        r->grind = HS_STOP;
        if (r->measured_verdict != HS_WHEEL_NONE)
            r->measured_verdict = r->measured.verdict = HS_WHEEL_NO;
    }
}
