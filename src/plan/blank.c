#include "plan/blank.h"

#include "base/text.h"
#include "constants.h"
#include "hardskin/tables/table.h"
#include "plan/blank_list.h"
#include "plan/handbook.h"
#include "plan/warp_frame.h"
#include "plan/words.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* The rough size the part's windows ask; where a window is shut, the larger of need and the
 * handbook's allowance: a bar below need would be too small whatever opens the window. */
static double rough_m(const hs_job *job, const hs_result *result, size_t d) {
    const hs_result_dimension *r = &result->dimension[d];
    double finished_m = job->dimension[d].size.upper_m;
    if (r->rough_high_m > 0) return r->rough_high_m; /* NaN at stop */
    double allowance_m = r->handbook.present ? r->handbook.value_m : NAN;
    if (isnan(allowance_m) && job->dimension[d].across == HS_ACROSS_OUTSIDE)
        allowance_m = hs_handbook_round_m(finished_m, job->part.length_m);
    if (isnan(allowance_m)) allowance_m = hs_handbook_plane_m(finished_m, job->part.length_m, 0);
    return finished_m + 2 * fmax(fmax(allowance_m, r->need_m), 0);
}

/* Rough size over the faces of that name; the part's own size where no dimension is ground. */
static double over_face(const hs_job *job, const hs_result *result, const char *face,
                        double plain_m) {
    double size_m = plain_m;
    for (size_t d = 0; d < job->dimensions; d++)
        for (int side = 0; side < 2; side++)
            if (!result->dimension[d].inside &&
                !strcmp(job->face[job->dimension[d].face[side]].name, face))
                size_m = fmax(size_m, rough_m(job, result, d));
    return size_m;
}

/* Most stock on both sides together of any dimension: for a profile's bounding box. */
static double most_stock_m(const hs_job *job, const hs_result *result) {
    double most_m = 0;
    for (size_t d = 0; d < job->dimensions; d++)
        if (job->dimension[d].across == HS_ACROSS_FACES && !result->dimension[d].inside)
            most_m = fmax(most_m, rough_m(job, result, d) - job->dimension[d].size.nominal_m);
    return most_m;
}

static int is_round(const hs_part *part) {
    return part->form == HS_BAR || part->form == HS_RING;
}

static void ask(hs_bar_asked *out, const hs_job *job, const hs_result *result) {
    const hs_part *part = &job->part;
    double w = 0, t = 0;
    const char *ends = part->form == HS_PLATE ? "left" : "ends";
    double length_m = over_face(job, result, ends, part->length_m);
    if (part->form == HS_PLATE) {
        w = over_face(job, result, "front", part->width_m);
        t = over_face(job, result, "top", part->thickness_m);
    } else if (part->form == HS_PROFILE) {
        w = hs_warp_extent(&part->section.outline, 1, 0);
        t = hs_warp_extent(&part->section.outline, 0, 1);
        w += most_stock_m(job, result);
        t += most_stock_m(job, result);
    } else {
        w = over_face(job, result, "outside",
                      part->form == HS_BAR ? part->diameter_m : part->outside_m);
    }
    *out = (hs_bar_asked){.width_m = fmax(w, t),
                          .thickness_m = fmin(w, t),
                          .length_m = length_m + 2 * HS_K_PLAN_DOUBT_SAW_ALLOWANCE,
                          .inch = job->shop.stock == HS_STOCK_INCH,
                          .bright = part->condition == HS_COLD_DRAWN};
}

static hs_word size_word(double size_m, int inch) {
    hs_word word = {""};
    if (inch)
        hs_format_inch_fraction(word.text, sizeof word.text, size_m);
    else
        snprintf(word.text, sizeof word.text, "%g", size_m * 1e3);
    return word;
}

static void tell_size(hs_result_blank *out, const hs_bar *bar, const hs_bar_asked *asked) {
    hs_word w = size_word(bar->width_m, asked->inch), t = size_word(bar->thickness_m, asked->inch);
    const char *unit = asked->inch ? "" : " mm";
    hs_text size = hs_text_start(out->size, sizeof out->size);
    hs_text_add(&size, "%s", w.text);
    if (!strcmp(bar->form, "flat")) hs_text_add(&size, " x %s", t.text);
    hs_text_add(&size, "%s", unit);
}

static void tell_why(hs_result_blank *out, const hs_bar *bar, const hs_bar_asked *asked) {
    hs_text why = hs_text_start(out->why, sizeof out->why);
    hs_round near = HS_NEAREST;
    hs_text_add(&why, "%s", hs_word_length(bar->thickness_m, asked->inch, near).text);
    hs_text_add(&why, " less %s below nominal%s",
                hs_word_length(bar->under_thickness_m, asked->inch, near).text,
                bar->skin_m > 0 ? "," : " and");
    hs_text_add(&why, " %s bow", hs_word_length(bar->bow_m, asked->inch, HS_UP).text);
    if (bar->skin_m > 0)
        hs_text_add(&why, " and twice %s rolled skin",
                    hs_word_length(bar->skin_m, asked->inch, near).text);
    double left_m = bar->thickness_m - bar->under_thickness_m - bar->bow_m - 2 * bar->skin_m;
    hs_text_add(&why, " leaves %s", hs_word_length(left_m, asked->inch, HS_DOWN).text);
    int flat = !strcmp(bar->form, "flat");
    double asked_m = flat ? asked->thickness_m : asked->width_m;
    hs_text_add(&why, " for %s.", hs_word_length(asked_m, asked->inch, HS_UP).text);
    if (flat) hs_text_add(&why, " Ask whether this pairing is rolled.");
}

/* The rules for the skin disagree: the size by the least of them, a share of the bar per side. */
static void tell_mill_rule(hs_text *why, const hs_bar_asked *asked) {
    const hs_table *t = hs_table_get(HS_TABLE_ROLLED_SKIN_OTHER);
    for (size_t row = 0; row < t->rows && !asked->bright; row++) {
        double share_pct = hs_table_number(t, row, HS_ROLLED_SKIN_OTHER_SHARE);
        if (isnan(share_pct)) continue;
        double size_m = asked->width_m / (1 - 2 * share_pct / 100);
        hs_text_add(why, " By the %s's rule, %g %% of the bar per side, %s would do.",
                    hs_table_text(t, row, HS_ROLLED_SKIN_OTHER_RULE), share_pct,
                    hs_word_length(size_m, asked->inch, HS_UP).text);
    }
}

static void tell_nothing(hs_result_blank *out, const hs_bar_asked *asked, int round) {
    double w_m, t_m;
    hs_text why = hs_text_start(out->why, sizeof out->why);
    hs_bar_largest(&w_m, &t_m, asked, round);
    hs_text_add(&why, "Not in stock up to %s", hs_word_about(w_m, asked->inch, HS_NEAREST).text);
    if (!round) hs_text_add(&why, " by %s", hs_word_about(t_m, asked->inch, HS_NEAREST).text);
    hs_text_add(&why,
                "%s. Have a piece forged or sawn from plate (EN 10029), and ask the dealer for its "
                "skin.",
                asked->bright ? "" : "; the rolled skin is known to 6 in");
    tell_mill_rule(&why, asked);
}

void hs_blank_choose(hs_result_blank *out, const hs_job *job, const hs_result *result) {
    hs_bar_asked asked;
    hs_bar bar;
    int round = is_round(&job->part);
    *out = (hs_result_blank){0};
    ask(&asked, job, result);
    if (!(asked.width_m > 0 && asked.length_m > 0)) return;
    out->present = 1;
    out->saw_length_m = asked.length_m;
    hs_bar_choose(&bar, &asked, round);
    if (!bar.found) {
        snprintf(out->form, sizeof out->form, "%s", round ? "round" : "flat");
        tell_nothing(out, &asked, round);
        return;
    }
    snprintf(out->form, sizeof out->form, "%s", bar.form);
    snprintf(out->standard, sizeof out->standard, "%s", bar.standard);
    out->rolled_skin_m = bar.skin_m;
    out->straightness_m = bar.bow_m;
    tell_size(out, &bar, &asked);
    tell_why(out, &bar, &asked);
}
