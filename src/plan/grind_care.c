#include "plan/grind_care.h"

#include "base/text.h"
#include "constants.h"
#include "hardskin/model/bow.h"
#include "hardskin/model/grind.h"
#include "plan/route.h"
#include "plan/warp.h"
#include "plan/words.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>

/* Free strain e of a case of depth d on both faces that stands under the pressure p: the core's
 * share of the section takes up the rest, p = E e (1 - 2 d/h). */
static double free_strain(double pressure_Pa, double depth_m, double size_m) {
    return pressure_Pa / (HS_K_GRINDING_YOUNGS_MODULUS * (1 - 2 * depth_m / size_m));
}

double hs_grind_release_m(const hs_job *job, const hs_result *result, size_t dimension,
                          double size_m, double ground_m) {
    const hs_dimension *d = &job->dimension[dimension];
    const hs_result_case *hard = &result->hard;
    double depth_m = hard->depth_m - result->scale.lost_m, kappa_1_m;
    int cased = job->face[d->face[0]].finish != HS_SOFT && job->face[d->face[1]].finish != HS_SOFT;
    if (job->part.form != HS_PLATE || hs_dimension_along(job, d) || !hard->present || !cased)
        return 0;
    if (!(result->distortion.skin_Pa < 0 && depth_m > 0 && 2 * depth_m < size_m)) return 0;
    double strain = free_strain(-result->distortion.skin_Pa, depth_m, size_m);
    if (hs_bow_release(&kappa_1_m, strain, depth_m, ground_m, size_m, NULL) != HS_OK) return 0;
    return fabs(hs_bow_sag_m(kappa_1_m, job->part.length_m));
}

static void add(hs_result_grind *out, const char *format, ...) HS_PRINTF(2, 3);

static void add(hs_result_grind *out, const char *format, ...) {
    if (out->cares == HS_MAX_CARES) return;
    va_list args;
    va_start(args, format);
    vsnprintf(out->care[out->cares++], sizeof out->care[0], format, args);
    va_end(args);
}

static void care_of_steel(hs_result_grind *out, const hs_job *job, const hs_result *r) {
    const hs_result_case *c = &r->hard;
    if (!c->present || !c->hardens) return;
    if (!hs_route_tempered(job))
        add(out, "STOP: not tempered after the quench. An untempered case cracks under the wheel: "
                 "temper first.");
    if (c->retained_austenite_pct > HS_K_CAUTION_LIMITS_RETAINED_AUSTENITE)
        add(out,
            "Retained austenite %.0f %%: heat and pressure of the wheel turn it to fresh "
            "martensite, which cracks: open wheel, small infeed, much coolant.",
            c->retained_austenite_pct);
    if (c->surface_carbon_pct > c->dissolved_pct + HS_K_CAUTION_LIMITS_NETWORK_CARBON)
        add(out,
            "Carbide left at the surface (%.2f %% carbon, the reheat dissolves %.2f %%): a net of "
            "it cracks under the wheel: open wheel, small infeed.",
            c->surface_carbon_pct, c->dissolved_pct);
}

/* What is known of the wheel is its width, so its diameter is assumed; a round turns about as fast
 * as a table travels. */
hs_feeds hs_grind_feeds(double *burn_J_m3, const hs_job *job) {
    const hs_grinding *g = &job->shop.grinding;
    *burn_J_m3 = NAN;
    if (!(g->rough_infeed_m > 0)) return HS_FEEDS_GOOD;
    if (g->table_speed_m_s > 0 &&
        hs_grind_burn_J_m3(burn_J_m3, g->rough_infeed_m, HS_K_GRINDING_WHEEL_ASSUMED,
                           g->table_speed_m_s, NULL) == HS_OK &&
        *burn_J_m3 < HS_K_GRINDING_CHIP_ENERGY)
        return HS_FEEDS_BURN;
    if (g->rough_infeed_m > HS_K_GRINDING_ROUGH_INFEED_MOST * (1 + 1e-9)) return HS_FEEDS_MUCH;
    return HS_FEEDS_GOOD;
}

/* "15 m/min" or "50 ft/min": as the table's dial has it. */
static hs_word speed_word(double speed_m_s, int inch) {
    const double foot_m = 0.3048, min_s = 60;
    hs_word word = {""};
    if (inch)
        snprintf(word.text, sizeof word.text, "%.3g ft/min", min_s / foot_m * speed_m_s);
    else
        snprintf(word.text, sizeof word.text, "%.3g m/min", min_s * speed_m_s);
    return word;
}

static void care_of_burn(hs_result_grind *out, const hs_job *job, double burn_J_m3) {
    const hs_grinding *g = &job->shop.grinding;
    const double J_mm3 = 1e-9;
    hs_word infeed = hs_word_length(g->rough_infeed_m, job->inch_first, HS_NEAREST);
    if (burn_J_m3 < HS_K_GRINDING_CHIP_ENERGY)
        add(out,
            "STOP: at %s infeed and %s a surface burns from about %.0f J/mm3 on, and "
            "forming the chip alone takes %.0f: every wheel burns and cracks it.",
            infeed.text, speed_word(g->table_speed_m_s, job->inch_first).text, J_mm3 * burn_J_m3,
            J_mm3 * HS_K_GRINDING_CHIP_ENERGY);
    else
        add(out,
            "At %s infeed and %s a wheel of %s burns the surface from about %.0f "
            "J/mm3 on, and softens it well below that: a dull or loaded wheel gets there. Dress "
            "when sparks or sound change.",
            infeed.text, speed_word(g->table_speed_m_s, job->inch_first).text,
            hs_word_about(HS_K_GRINDING_WHEEL_ASSUMED, job->inch_first, HS_NEAREST).text,
            J_mm3 * burn_J_m3);
}

static void care_of_feeds(hs_result_grind *out, const hs_job *job) {
    const hs_grinding *g = &job->shop.grinding;
    double burn_J_m3, rate_m2_s = hs_grind_rate_m2_s(g->rough_infeed_m, g->table_speed_m_s);
    const double mm2 = 1e6;
    hs_feeds feeds = hs_grind_feeds(&burn_J_m3, job);
    int flat = job->part.form == HS_PLATE || job->part.form == HS_PROFILE;
    hs_word infeed = hs_word_length(g->rough_infeed_m, job->inch_first, HS_NEAREST);
    if ((flat && isfinite(burn_J_m3)) || feeds == HS_FEEDS_BURN) care_of_burn(out, job, burn_J_m3);
    if (g->rough_infeed_m > HS_K_GRINDING_ROUGH_INFEED_MOST * (1 + 1e-9))
        add(out, "Rough infeed %s is more than a hardened face bears, at most %s: burn and cracks.",
            infeed.text,
            hs_word_length(HS_K_GRINDING_ROUGH_INFEED_MOST, job->inch_first, HS_DOWN).text);
    if (flat && rate_m2_s > HS_K_GRINDING_RATE_MOST * (1 + 1e-9))
        add(out,
            "%s at %s takes %.1f mm3/s per mm of wheel, and 1 to %.0f is usual on hardened "
            "steel: less infeed or a slower table.",
            infeed.text, speed_word(g->table_speed_m_s, job->inch_first).text, mm2 * rate_m2_s,
            mm2 * HS_K_GRINDING_RATE_MOST);
}

/* What the finest roughness asked takes. */
static void care_of_finish(hs_result_grind *out, const hs_job *job) {
    double finest_m = INFINITY;
    for (size_t i = 0; i < job->faces; i++)
        if (job->face[i].finish == HS_GROUND && job->face[i].roughness_m > 0)
            finest_m = fmin(finest_m, job->face[i].roughness_m);
    if (finest_m > HS_K_GRINDING_FINE_ROUGHNESS * (1 + 1e-9)) return;
    add(out,
        "%s is asked: dress the wheel finely before the last cuts, finish infeed, %d "
        "passes to spark out.",
        hs_word_roughness(finest_m, job->inch_first).text, (int)HS_K_GRINDING_SPARK_OUTS_FINE);
}

void hs_grind_care(hs_result_grind *out, const hs_job *job, const hs_result *result) {
    if (out->steps == 0) return;
    care_of_steel(out, job, result);
    care_of_feeds(out, job);
    care_of_finish(out, job);
}
