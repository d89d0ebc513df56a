#include "hardskin/model/hardenability.h"
#include "hardskin/model/martensite.h"
#include "hardskin/tables/table.h"

#include "constants.h"
#include "model/e140.h"

#include <math.h>

static const double INCH_M = 0.0254, HOUR_S = 3600;

/* Content used for a factor: its end when there is more, which is then told. */
static double upto(double content_pct, double last_pct, int *beyond) {
    if (content_pct <= last_pct) return content_pct;
    *beyond = 1;
    return last_pct;
}

static double carbon_factor_in(double carbon_pct) {
    const hs_table *t = hs_table_get(HS_TABLE_HARDENABILITY_CARBON);
    for (size_t r = 0; r < t->rows; r++)
        if (carbon_pct <= hs_table_number(t, r, HS_HARDENABILITY_CARBON_UPTO))
            return hs_table_number(t, r, HS_HARDENABILITY_CARBON_CONSTANT) +
                   carbon_pct *
                       (hs_table_number(t, r, HS_HARDENABILITY_CARBON_LINEAR) +
                        carbon_pct * hs_table_number(t, r, HS_HARDENABILITY_CARBON_SQUARE));
    return NAN;
}

static double manganese_factor(double Mn, int *beyond) {
    if (Mn <= HS_K_HARDENABILITY_MN_FIRST) return 1 + HS_K_HARDENABILITY_MN * Mn;
    return HS_K_HARDENABILITY_MN_HIGH * upto(Mn, HS_K_HARDENABILITY_MN_LAST, beyond) -
           HS_K_HARDENABILITY_MN_HIGH_LESS;
}

hs_status hs_ideal_diameter(double *di_m, int *at_least, const hs_composition *s, double carbon_pct,
                            hs_error *err) {
    double inches = carbon_pct >= 0.01 ? carbon_factor_in(carbon_pct) : NAN;
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

double hs_ferrite_pearlite_HV(const hs_composition *s, double carbon_pct, double rate_K_s) {
    double by_rate = HS_K_HARDENABILITY_FP_RATE_0 + HS_K_HARDENABILITY_FP_RATE_SI * s->Si +
                     HS_K_HARDENABILITY_FP_RATE_NI * s->Ni + HS_K_HARDENABILITY_FP_RATE_CR * s->Cr +
                     HS_K_HARDENABILITY_FP_RATE_V * s->V;
    return HS_K_HARDENABILITY_FP_0 + HS_K_HARDENABILITY_FP_C * carbon_pct +
           HS_K_HARDENABILITY_FP_SI * s->Si + HS_K_HARDENABILITY_FP_MN * s->Mn +
           HS_K_HARDENABILITY_FP_NI * s->Ni + HS_K_HARDENABILITY_FP_CR * s->Cr +
           HS_K_HARDENABILITY_FP_MO * s->Mo + by_rate * log10(rate_K_s * HOUR_S);
}

static hs_status check_quenched(const hs_quenched *q, hs_error *err) {
    if (q->size_m > 0 && isfinite(q->size_m) && q->severity_1_m > 0) return HS_OK;
    return hs_fail(err, HS_E_IMPOSSIBLE, "a size and a severity above 0",
                   "a section of %g m in a quench of severity %g /m", q->size_m, q->severity_1_m);
}

hs_status hs_case_hardens(double *margin, const hs_composition *steel, const hs_quenched *quenched,
                          double depth_m, hs_error *err) {
    double di_m = 0, half = 0.5 * quenched->size_m;
    hs_status status = check_quenched(quenched, err);
    if (status != HS_OK) return status;
    if (!(depth_m >= 0 && depth_m <= half))
        return hs_fail(err, HS_E_IMPOSSIBLE, "", "a depth of %g m in a section of %g m", depth_m,
                       quenched->size_m);
    status = hs_ideal_diameter(&di_m, NULL, steel, HS_K_HARDENABILITY_CASE_CARBON, err);
    if (status != HS_OK) return status;
    *margin = HS_K_HARDENABILITY_FULL_SHARE * di_m /
              hs_ideal_diameter_needed(quenched, 1 - depth_m / half);
    return HS_OK;
}

/* K/s at 700 C in the middle of the section, which falls exponentially towards the bath. */
static double centre_rate(const hs_quenched *q) {
    double half = 0.5 * q->size_m, biot = 2 * q->severity_1_m * half;
    double seconds =
        hs_half_time(q->shape, biot, 0) * half * half / HS_K_HARDENABILITY_AUSTENITE_DIFFUSIVITY;
    return log(2) / seconds * (HS_K_HARDENABILITY_FP_RATE_TEMP - HS_K_HARDENABILITY_BATH_TEMP);
}

hs_status hs_core_HV(double *hardness_HV, int *hardened, const hs_composition *steel,
                     double core_pct, const hs_quenched *quenched, hs_error *err) {
    int hard = 1;
    if (quenched) {
        double di_m = 0;
        hs_status status = check_quenched(quenched, err);
        if (status == HS_OK) status = hs_ideal_diameter(&di_m, NULL, steel, core_pct, err);
        if (status != HS_OK) return status;
        hard = di_m >= hs_ideal_diameter_needed(quenched, 0);
    }
    double martensite = hs_e140_HV(hs_a255_HRC(core_pct));
    if (hard && isnan(martensite))
        return hs_fail(err, HS_E_RANGE, "0.10 to 0.70 %",
                       "ASTM A255 has no martensite hardness at %g %% of carbon", core_pct);
    *hardness_HV =
        hard ? martensite : hs_ferrite_pearlite_HV(steel, core_pct, centre_rate(quenched));
    if (hardened) *hardened = hard;
    return HS_OK;
}
