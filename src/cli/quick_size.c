/* fit, limit: sizes and what a warped part leaves of them. */
#include "cli/quick_topics.h"

#include <math.h>

static const quick_key fit_keys[] = {{"size", QUICK_SIZE, HS_LENGTH, NULL, 1, NULL}};

static hs_status run_fit(quick_answer *answer, const quick_value *v, const hs_units *units,
                         hs_error *err) {
    const hs_size *s = &v[0].size;
    (void)units;
    (void)err;
    quick_number(answer, "nominal_mm", s->nominal_m * 1e3);
    quick_number(answer, "lower_mm", s->lower_m * 1e3);
    quick_number(answer, "upper_mm", s->upper_m * 1e3);
    quick_number(answer, "tolerance_um", (s->upper_m - s->lower_m) * 1e6);
    return HS_OK;
}

const quick_topic quick_fit = {
    "fit",
    "limits of size of a fit or a written tolerance",
    fit_keys,
    1,
    "nominal_mm, lower_mm, upper_mm, tolerance_um",
    "limits = nominal + deviations of ISO 286-1, or as written",
    "ISO 286-1 and -2 (tables: iso286_it, iso286_deviations)",
    "partly read, partly from memory (see the table)",
    "up to 500 mm; d e f g h js k m n p, D E F G H JS K M N P",
    run_fit,
    0,
};

enum { BUDGET, CLEAN_UP, SCALE_LOST, SPLIT, GROWTH, ROUGH, FINISH, MEASURED };
static const quick_key limit_keys[] = {
    {"budget", QUICK_QUANTITY, HS_LENGTH, NULL, 1, NULL},
    {"clean_up", QUICK_QUANTITY, HS_LENGTH, NULL, 1, NULL},
    {"scale_lost", QUICK_QUANTITY, HS_LENGTH, NULL, 0, "0 mm"},
    {"split", QUICK_QUANTITY, HS_LENGTH, NULL, 0, "0 mm"},
    {"growth", QUICK_QUANTITY, HS_LENGTH, NULL, 0, "0 mm"},
    {"rough", QUICK_SIZE, HS_LENGTH, NULL, 0, NULL},
    {"finish", QUICK_SIZE, HS_LENGTH, NULL, 1, NULL},
    {"measured", QUICK_QUANTITY, HS_LENGTH, NULL, 0, NULL},
};

/* After hardening growth and scale are in the measured size already. */
static void limits_measured(double *clean_m, double *case_m, const quick_value *v) {
    double c = v[CLEAN_UP].q.value, d = v[SPLIT].q.value;
    *clean_m = v[MEASURED].q.low - v[FINISH].size.upper_m - 2 * (c + d);
    *case_m = v[FINISH].size.lower_m - v[MEASURED].q.high + 2 * (v[BUDGET].q.value - d);
}

static void limits_planned(double *clean_m, double *case_m, const quick_value *v) {
    double c = v[CLEAN_UP].q.value, d = v[SPLIT].q.value, m = v[SCALE_LOST].q.high;
    const hs_size *rough = &v[ROUGH].size, *finish = &v[FINISH].size;
    *clean_m = rough->lower_m - finish->upper_m - 2 * (c + m + d - v[GROWTH].q.low);
    *case_m = finish->lower_m - rough->upper_m + 2 * (v[BUDGET].q.value - d - v[GROWTH].q.high);
}

static hs_status run_limit(quick_answer *answer, const quick_value *v, const hs_units *units,
                           hs_error *err) {
    double clean_m = 0, case_m = 0;
    (void)units;
    if (!v[ROUGH].text == !v[MEASURED].text)
        return hs_fail(err, HS_E_ARGUMENT, "rough before the fire, measured after it",
                       "give either rough or measured");
    if (v[MEASURED].text)
        limits_measured(&clean_m, &case_m, v);
    else
        limits_planned(&clean_m, &case_m, v);
    quick_number(answer, "shape_limit_mm", fmin(clean_m, case_m) * 1e3);
    quick_number(answer, "clean_up_limit_mm", clean_m * 1e3);
    quick_number(answer, "case_limit_mm", case_m * 1e3);
    quick_note(answer, "limit on V, the removal the part's shape forces: for a plate the bow, for "
                       "a bar between its old centres the run-out");
    if (v[MEASURED].text && (v[SCALE_LOST].given || v[GROWTH].given))
        quick_note(answer, "a measured size holds scale and growth already: both are left out");
    if (fmin(clean_m, case_m) < 0)
        quick_note(answer, "below zero: not even a straight part can be ground");
    return HS_OK;
}

const quick_topic quick_limit = {
    "limit",
    "the largest shape error with which an outside size can still be ground",
    limit_keys,
    8,
    "shape_limit_mm, clean_up_limit_mm, case_limit_mm",
    "min( R_lo - F_hi - 2(c + m + d - g_lo), F_lo - R_hi + 2(B - d - g_hi) ); measured: "
    "min( H - F_hi - 2(c + d), F_lo - H + 2(B - d) )",
    "bookkeeping of removals, no outside source",
    "computed",
    "an outside size; per side: budget, clean-up, scale lost, split, growth",
    run_limit,
    0,
};
