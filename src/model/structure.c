#include "hardskin/model/structure.h"

#include "hardskin/tables/table.h"

#include "constants.h"
#include "model/carbon_factor.h"

#include <math.h>

enum { RATES = 8 };
static const double HOUR_S = 3600;

/* log10 of the critical rates, K/h; each at most the one before: the formulas cross a little. */
static void critical(double log_rate[RATES], const hs_table *t, const hs_composition *s,
                     double carbon_pct, double austenite_K) {
    double end = HS_K_HARDENABILITY_MAYNIER_C_HIGH, c = fmin(carbon_pct, end), richer = 0;
    double pa = austenite_K - HS_K_PHYSICAL_ZERO_CELSIUS, last = INFINITY;
    if (carbon_pct > end)
        richer = 2 * log10(hs_carbon_factor_in(fmin(carbon_pct, HS_CARBON_FACTOR_LAST)) /
                           hs_carbon_factor_in(end));
    for (size_t r = 0; r < RATES; r++) {
        double value = hs_table_number(t, r, HS_CRITICAL_RATE_CONSTANT) -
                       hs_table_number(t, r, HS_CRITICAL_RATE_C) * c -
                       hs_table_number(t, r, HS_CRITICAL_RATE_MN) * s->Mn -
                       hs_table_number(t, r, HS_CRITICAL_RATE_NI) * s->Ni -
                       hs_table_number(t, r, HS_CRITICAL_RATE_CR) * s->Cr -
                       hs_table_number(t, r, HS_CRITICAL_RATE_MO) * s->Mo -
                       hs_table_number(t, r, HS_CRITICAL_RATE_ROOT_MO) * sqrt(s->Mo) -
                       hs_table_number(t, r, HS_CRITICAL_RATE_PA) * pa - richer;
        last = log_rate[r] = fmin(value, last);
    }
}

/* A column of shares at a rate, linear in the logarithm. */
static double share(const hs_table *t, size_t column, const double log_rate[RATES], double at) {
    if (at >= log_rate[0]) return hs_table_number(t, 0, column);
    for (size_t r = 1; r < RATES; r++) {
        if (at < log_rate[r]) continue;
        double slow = hs_table_number(t, r, column), fast = hs_table_number(t, r - 1, column);
        return slow + (fast - slow) * (at - log_rate[r]) / (log_rate[r - 1] - log_rate[r]);
    }
    return hs_table_number(t, RATES - 1, column);
}

hs_structure hs_structure_of(const hs_composition *steel, double carbon_pct, double austenite_K,
                             double rate_K_s) {
    const hs_table *t = hs_table_get(HS_TABLE_CRITICAL_RATE);
    double log_rate[RATES], at = log10(rate_K_s * HOUR_S);
    hs_structure out = {NAN, NAN, NAN};
    if (isnan(at) || !(carbon_pct >= 0)) return out;
    critical(log_rate, t, steel, carbon_pct, austenite_K);
    out.martensite = share(t, HS_CRITICAL_RATE_MARTENSITE, log_rate, at);
    out.soft = share(t, HS_CRITICAL_RATE_SOFT, log_rate, at);
    out.bainite = 1 - out.martensite - out.soft;
    return out;
}

double hs_rate_for_martensite(const hs_composition *steel, double carbon_pct, double austenite_K) {
    enum { NINETY = 1 };
    double log_rate[RATES];
    critical(log_rate, hs_table_get(HS_TABLE_CRITICAL_RATE), steel, carbon_pct, austenite_K);
    return pow(10, log_rate[NINETY]) / HOUR_S;
}

double hs_ferrite_pearlite_HV(const hs_composition *s, double carbon_pct, double rate_K_s) {
    double by_rate = HS_K_HARDENABILITY_FP_RATE_0 + HS_K_HARDENABILITY_FP_RATE_SI * s->Si +
                     HS_K_HARDENABILITY_FP_RATE_NI * s->Ni + HS_K_HARDENABILITY_FP_RATE_CR * s->Cr +
                     HS_K_HARDENABILITY_FP_RATE_V * s->V;
    double c = fmin(carbon_pct, HS_K_HARDENABILITY_MAYNIER_C_HIGH);
    return HS_K_HARDENABILITY_FP_0 + HS_K_HARDENABILITY_FP_C * c +
           HS_K_HARDENABILITY_FP_SI * s->Si + HS_K_HARDENABILITY_FP_MN * s->Mn +
           HS_K_HARDENABILITY_FP_NI * s->Ni + HS_K_HARDENABILITY_FP_CR * s->Cr +
           HS_K_HARDENABILITY_FP_MO * s->Mo + by_rate * log10(rate_K_s * HOUR_S);
}

double hs_bainite_HV(const hs_composition *s, double carbon_pct, double rate_K_s) {
    double c = fmin(carbon_pct, HS_K_HARDENABILITY_MAYNIER_C_HIGH);
    double by_rate = HS_K_HARDENABILITY_B_RATE_0 + HS_K_HARDENABILITY_B_RATE_C * c +
                     HS_K_HARDENABILITY_B_RATE_SI * s->Si + HS_K_HARDENABILITY_B_RATE_MN * s->Mn +
                     HS_K_HARDENABILITY_B_RATE_NI * s->Ni + HS_K_HARDENABILITY_B_RATE_CR * s->Cr +
                     HS_K_HARDENABILITY_B_RATE_MO * s->Mo;
    return HS_K_HARDENABILITY_B_0 + HS_K_HARDENABILITY_B_C * c + HS_K_HARDENABILITY_B_SI * s->Si +
           HS_K_HARDENABILITY_B_MN * s->Mn + HS_K_HARDENABILITY_B_NI * s->Ni +
           HS_K_HARDENABILITY_B_CR * s->Cr + HS_K_HARDENABILITY_B_MO * s->Mo +
           by_rate * log10(rate_K_s * HOUR_S);
}

double hs_soft_part_HV(const hs_structure *structure, const hs_composition *steel,
                       double carbon_pct, double rate_K_s) {
    double sum = 0;
    if (structure->bainite > 0)
        sum += structure->bainite * hs_bainite_HV(steel, carbon_pct, rate_K_s);
    if (structure->soft > 0)
        sum += structure->soft * hs_ferrite_pearlite_HV(steel, carbon_pct, rate_K_s);
    return sum;
}
