/* case and soak as topics. */
#include "base/num.h"
#include "cli/quick_case.h"
#include "cli/quick_soak_low.h"
#include "cli/quick_topics.h"
#include "constants.h"

#include <math.h>

static const quick_key case_keys[] = {CASE_KEY_LIST,
                                      {"for", QUICK_QUANTITY, HS_TIME, NULL, 1, NULL}};
static const quick_key soak_keys[] = {CASE_KEY_LIST,
                                      {"want", QUICK_QUANTITY, HS_CASE_DEPTH, NULL, 1, NULL}};

/* With a thickness: how much of the hardenability that this quench asks for is there; 1 or more
 * hardens. Without one: fully hard. */
static hs_status find_margin(hs_band *margin, const quick_carburising *c, hs_error *err) {
    *margin = (hs_band){1, 1, 1};
    if (!(c->thickness_m > 0)) return HS_OK;
    const hs_steel one = {.low = c->steel, .mid = c->steel, .high = c->steel};
    return hs_case_margin_band(margin, &one, &c->quench, c->dissolve_K, err);
}

static hs_status add_core(quick_answer *answer, const quick_carburising *c, hs_error *err) {
    double HV = 0;
    hs_structure core;
    hs_status status = hs_core_HV(&HV, &core, &c->steel, c->steel.C,
                                  c->thickness_m > 0 ? &c->quench.mid : NULL, c->dissolve_K, err);
    if (status != HS_OK) return status;
    quick_number(answer, "core_HV", HV);
    if (core.martensite < 0.97)
        quick_note(answer,
                   "the core does not harden through: about %.0f %% martensite, %.0f %% bainite, "
                   "the rest ferrite and pearlite, estimated",
                   100 * core.martensite, 100 * core.bainite);
    return HS_OK;
}

static void note_thickness(quick_answer *answer, const quick_carburising *c, double depth_m) {
    if (c->thickness_m > 0 && depth_m * 2 > c->thickness_m / 3)
        quick_note(answer,
                   "caution: the cases of both faces take more than a third of the section");
}

/* A case that this quench leaves partly soft has no hardness this sum could vouch for. */
static void add_hardness(quick_answer *answer, const quick_case *hard, double rim_m,
                         hs_band margin) {
    double known = margin.high < 1 ? NAN : 1;
    quick_number(answer, "surface_HV", known * hard->surface_HV);
    quick_number(answer, "surface_HRC", known * hs_hardened_HRC(hard->surface_HV));
    quick_number(answer, "retained_austenite_pct", known * hard->retained * 100);
    quick_number(answer, "soft_rim_mm", known * rim_m * 1e3);
    if (margin.mid < 1)
        quick_note(answer,
                   "caution: this steel has %.2g of the hardenability that quench needs at "
                   "this thickness; %s",
                   margin.mid,
                   known > 0 ? "whether the case hardens fully is in doubt"
                             : "the case does not harden fully: no depth is counted");
}

static void note_accuracy(quick_answer *answer, const hs_carbon_accuracy *accuracy) {
    double worst_m = 0;
    for (size_t k = 0; k < HS_CARBON_LEVELS; k++)
        worst_m = fmax(worst_m, accuracy->error_m[k]);
    quick_note(answer, "solved on %zu cells: depths are good to %.1f um, the sum's own error alone",
               accuracy->cells, ceil(worst_m * 1e7) / 10);
}

static hs_status run_case(quick_answer *answer, const quick_value *v, const hs_units *units,
                          hs_error *err) {
    quick_carburising c;
    quick_case hard;
    double total_m = 0, rim_m = 0;
    hs_band margin = {1, 1, 1};
    (void)units;
    hs_status status = quick_carburising_read(&c, answer, v, err);
    if (status == HS_OK) status = find_margin(&margin, &c, err);
    if (status == HS_OK) status = quick_case_depth(&hard, &c, v[CASE_LAST].q.value, err);
    if (status == HS_OK) status = hs_case_total(&total_m, &hard.profile, c.steel.C, err);
    if (status == HS_OK) status = hs_case_soft_rim(&rim_m, &hard.profile, c.limit_HV, err);
    if (status != HS_OK) return status;
    quick_number(answer, "case_depth_mm", margin.high < 1 ? 0 : hard.depth_m * 1e3);
    quick_number(answer, "total_case_mm", total_m * 1e3);
    quick_number(answer, "surface_carbon_pct", hard.surface_pct);
    add_hardness(answer, &hard, rim_m, margin);
    note_thickness(answer, &c, hard.depth_m);
    note_accuracy(answer, &hard.accuracy);
    return add_core(answer, &c, err);
}

const quick_topic quick_case_topic = {
    "case",
    "carbon, hardness and depth of a case after soak, quench and temper",
    case_keys,
    CASE_KEYS,
    "case_depth_mm, total_case_mm, surface_carbon_pct, surface_HV, surface_HRC, "
    "retained_austenite_pct, core_HV, soft_rim_mm",
    "diffusion with D(C) after Agren, surface not above A_cm; hardness from the carbon the last "
    "heat dissolves; case depth = deepest fall through the limit; total = depth to core + 0.07 %C",
    "Agren 1986, ASTM A255, Koistinen and Marburger 1959, ISO 18203 (tables: diffusivity, "
    "austenite, martensite, temper, hardenability)",
    "mixed (see the tables)",
    "740 to 1050 C; core 0.10 to 0.70 %C; temper 50 to 300 C; hours at heat, the part's centre",
    run_case,
    0,
};

typedef struct wanted {
    const quick_carburising *c;
    double depth_m;
} wanted;

/* Too short a soak has no case at all: that counts as far too little. */
static double short_of(double log_time, const void *context) {
    const wanted *w = context;
    quick_case hard;
    if (quick_case_depth(&hard, w->c, exp(log_time), NULL) != HS_OK) return -w->depth_m;
    return hard.depth_m - w->depth_m;
}

/* The soak to plan with: the middle one leaves every other box short. */
static void add_low_side(quick_answer *answer, const quick_carburising *c, const quick_value *v,
                         double depth_m, double time_s, double longest_s) {
    double low_s = 0;
    hs_error why = {0};
    if (quick_soak_low_time(&low_s, c, v, depth_m, time_s, longest_s, &why) != HS_OK) {
        quick_note(answer, "%s", why.message);
        return;
    }
    quick_number(answer, "time_low_side_h", low_s / 3600);
    quick_note(answer, "plan with time_low_side_h: 19 boxes in 20 reach the depth then; after "
                       "time_h only every other one");
}

static hs_status run_soak(quick_answer *answer, const quick_value *v, const hs_units *units,
                          hs_error *err) {
    static const double shortest_s = 60, longest_s = 200 * 3600.;
    quick_carburising c;
    quick_case hard;
    hs_band margin = {1, 1, 1};
    double log_time = 0;
    (void)units;
    if (!(v[CASE_LAST].q.value > 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "want=\"0.8 mm\"", "a case has some depth");
    hs_status status = quick_carburising_read(&c, answer, v, err);
    if (status == HS_OK) status = find_margin(&margin, &c, err);
    if (status == HS_OK && margin.high < 1)
        return hs_fail(err, HS_E_RANGE, "a harsher quench, a thinner part or an alloyed steel",
                       "the case of this steel does not harden fully in that quench: it has %.2g "
                       "of the hardenability needed",
                       margin.mid);
    if (status == HS_OK) status = quick_case_depth(&hard, &c, longest_s, err);
    if (status != HS_OK) return status;
    wanted w = {&c, v[CASE_LAST].q.value};
    if (hs_root(&log_time, short_of, &w, log(shortest_s), log(longest_s), 1e-6) != HS_OK)
        return hs_fail(err, HS_E_CONVERGE, "another depth, heat or surface carbon",
                       "no soak between a minute and 200 h gives that depth");
    quick_number(answer, "time_h", exp(log_time) / 3600);
    if (answer->first_only) return HS_OK; /* the low side takes many more depths */
    add_low_side(answer, &c, v, w.depth_m, exp(log_time), longest_s);
    note_thickness(answer, &c, w.depth_m);
    quick_note(answer, "at heat, the part's centre; add the time the box takes to heat through "
                       "(hardskin quick pack)");
    return HS_OK;
}

const quick_topic quick_soak = {
    "soak",
    "how long to soak for a wanted case depth",
    soak_keys,
    CASE_KEYS,
    "time_h, time_low_side_h",
    "the time at which the case depth of `case` is the one wanted; low side: less the one-sided "
    "95 % of fire, medium, diffusivity and scatter, added as squares",
    "as case",
    "mixed (see the tables)",
    "as case; 1 min to 200 h",
    run_soak,
    0,
};
