#include "hardskin/model/hardenability.h"
#include "hardskin/model/martensite.h"
#include "hardskin/tables/table.h"

#include "constants.h"
#include "model/carbon_factor.h"

#include <math.h>

static const double INCH_M = 0.0254;

/* Content used for a factor: its end when there is more, which is then told. */
static double upto(double content_pct, double last_pct, int *beyond) {
    if (content_pct <= last_pct) return content_pct;
    *beyond = 1;
    return last_pct;
}

static double manganese_factor(double Mn, int *beyond) {
    if (Mn <= HS_K_HARDENABILITY_MN_FIRST) return 1 + HS_K_HARDENABILITY_MN * Mn;
    return HS_K_HARDENABILITY_MN_HIGH * upto(Mn, HS_K_HARDENABILITY_MN_LAST, beyond) -
           HS_K_HARDENABILITY_MN_HIGH_LESS;
}

hs_status hs_ideal_diameter(double *di_m, int *at_least, const hs_composition *s, double carbon_pct,
                            hs_error *err) {
    double inches = carbon_pct >= 0.01 ? hs_carbon_factor_in(carbon_pct) : NAN;
    if (isnan(inches))
        return hs_fail(err, HS_E_RANGE, "0.01 to 0.90 %", "ASTM A255 has no carbon factor at %g %%",
                       carbon_pct);
    int beyond = 0;
    inches *= manganese_factor(s->Mn, &beyond);
    inches *= 1 + HS_K_HARDENABILITY_SI * upto(s->Si, HS_K_HARDENABILITY_SI_LAST, &beyond);
    inches *= 1 + HS_K_HARDENABILITY_CR * upto(s->Cr, HS_K_HARDENABILITY_CR_LAST, &beyond);
    inches *= 1 + HS_K_HARDENABILITY_MO * upto(s->Mo, HS_K_HARDENABILITY_MO_LAST, &beyond);
    inches *= 1 + HS_K_HARDENABILITY_NI * upto(s->Ni, HS_K_HARDENABILITY_NI_LAST, &beyond);
    inches *= 1 + HS_K_HARDENABILITY_CU * upto(s->Cu, HS_K_HARDENABILITY_CU_LAST, &beyond);
    inches *= 1 + HS_K_HARDENABILITY_V * upto(s->V, HS_K_HARDENABILITY_V_LAST, &beyond);
    *di_m = inches * INCH_M;
    if (at_least) *at_least = beyond;
    return HS_OK;
}

static hs_status check_quenched(const hs_quenched *q, hs_error *err) {
    if (q->size_m > 0 && isfinite(q->size_m) && q->severity_1_m > 0) return HS_OK;
    return hs_fail(err, HS_E_IMPOSSIBLE, "a size and a severity above 0",
                   "a section of %g m in a quench of severity %g /m", q->size_m, q->severity_1_m);
}

hs_status hs_case_hardens(double *margin, double *spread, const hs_composition *steel,
                          const hs_quenched *quenched, double from_K, hs_error *err) {
    static const double surface = 1;
    const double carbon_pct = HS_K_HARDENABILITY_CASE_CARBON;
    double di_m = 0, rate_K_s = 0;
    hs_status status = check_quenched(quenched, err);
    if (status == HS_OK) status = hs_ideal_diameter(&di_m, NULL, steel, carbon_pct, err);
    if (status != HS_OK) return status;
    hs_quench_rates(&rate_K_s, &surface, 1, quenched, from_K);
    if (isnan(rate_K_s))
        return hs_fail(err, HS_E_RANGE, "above 700 C", "no quench hardens from %g K", from_K);
    double by_diameter =
        HS_K_HARDENABILITY_FULL_SHARE * di_m / hs_ideal_diameter_needed(quenched, 1);
    double by_rate = sqrt(rate_K_s / hs_rate_for_martensite(steel, carbon_pct, from_K));
    *margin = sqrt(by_diameter * by_rate);
    if (spread) *spread = 0.5 * fabs(log(by_rate / by_diameter));
    return HS_OK;
}

/* Martensite of a lean core with the little austenite it keeps. */
static double as_quenched_HV(const hs_composition *steel, double carbon_pct) {
    double austenite = hs_retained_austenite(hs_ms_K(steel, carbon_pct), HS_K_MARTENSITE_ALPHA,
                                             HS_K_HARDENABILITY_BATH_TEMP);
    return (1 - austenite) * hs_lath_martensite_HV(carbon_pct) +
           austenite * HS_K_MARTENSITE_AUSTENITE_HV;
}

hs_status hs_core_at_rate(double *hardness_HV, hs_structure *structure, const hs_composition *steel,
                          double core_pct, double rate_K_s, double from_K, hs_error *err) {
    double martensite = as_quenched_HV(steel, core_pct);
    if (isnan(martensite))
        return hs_fail(err, HS_E_RANGE, "0.02 to 0.70 %",
                       "the hardness of martensite with %g %% of carbon is not known", core_pct);
    if (!(rate_K_s > 0))
        return hs_fail(err, HS_E_RANGE, "above 700 C", "no quench hardens from %g K", from_K);
    hs_structure found = {1, 0, 0};
    if (isfinite(rate_K_s)) found = hs_structure_of(steel, core_pct, from_K, rate_K_s);
    *hardness_HV =
        found.martensite * martensite + hs_soft_part_HV(&found, steel, core_pct, rate_K_s);
    if (structure) *structure = found;
    return HS_OK;
}

hs_status hs_core_HV(double *hardness_HV, hs_structure *structure, const hs_composition *steel,
                     double core_pct, const hs_quenched *quenched, double from_K, hs_error *err) {
    static const double centre = 0;
    double rate_K_s = INFINITY;
    if (quenched) {
        hs_status status = check_quenched(quenched, err);
        if (status != HS_OK) return status;
        hs_quench_rates(&rate_K_s, &centre, 1, quenched, from_K);
    }
    return hs_core_at_rate(hardness_HV, structure, steel, core_pct, rate_K_s, from_K, err);
}
