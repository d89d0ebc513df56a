/* Conductivity and resistance of the soda bath. The cell itself: bath_cell.c. */
#include "hardskin/model/bath.h"

#include "constants.h"
#include "hardskin/tables/table.h"

#include <math.h>

static const double PI = 3.14159265358979323846;

hs_status hs_bath_percent(double *soda_pct, double soda_kg_m3, hs_error *err) {
    if (!(soda_kg_m3 >= 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "give grams of anhydrous soda per litre",
                       "a bath of %g g/L", soda_kg_m3);
    /* strength w: w/100 * (density_0 + density_1 w) = soda_kg_m3 */
    double a = HS_K_BATH_DENSITY_1 / 100, b = HS_K_BATH_DENSITY_0 / 100;
    double w = 2 * soda_kg_m3 / (b + sqrt(b * b + 4 * a * soda_kg_m3));
    if (!(w <= HS_K_BATH_SODA_HIGH))
        return hs_fail(err, HS_E_RANGE, "50 g/L is usual", "%g g/L is more than 15 %% of soda",
                       soda_kg_m3);
    *soda_pct = w;
    return HS_OK;
}

static double conductivity_at_20(double w) {
    const hs_table *t = hs_table_get(HS_TABLE_CONDUCTIVITY);
    size_t row = 1;
    while (row + 1 < t->rows && w > hs_table_number(t, row, HS_CONDUCTIVITY_SODA))
        row++;
    double w0 = hs_table_number(t, row - 1, HS_CONDUCTIVITY_SODA);
    double w1 = hs_table_number(t, row, HS_CONDUCTIVITY_SODA);
    double k0 = hs_table_number(t, row - 1, HS_CONDUCTIVITY_CONDUCTIVITY);
    double k1 = hs_table_number(t, row, HS_CONDUCTIVITY_CONDUCTIVITY);
    return k0 * exp(log(k1 / k0) * log(w / w0) / log(w1 / w0));
}

hs_status hs_bath_conductivity(double *conductivity_S_m, double soda_pct, double temp_K,
                               hs_error *err) {
    if (!(soda_pct >= HS_K_BATH_SODA_LOW && soda_pct <= HS_K_BATH_SODA_HIGH))
        return hs_fail(err, HS_E_RANGE, "50 g/L (4.8 %) is usual",
                       "%.3g %% of soda is outside .5 to 15 %%", soda_pct);
    /* a hair of slack: 10 C in kelvin is not a round number in binary */
    if (!(temp_K >= HS_K_BATH_TEMP_LOW - 1e-9 && temp_K <= HS_K_BATH_TEMP_HIGH + 1e-9))
        return hs_fail(err, HS_E_RANGE, "a bath works at 20 to 40 C",
                       "a bath at %.0f C is outside 10 to 50 C",
                       temp_K - HS_K_PHYSICAL_ZERO_CELSIUS);
    *conductivity_S_m =
        conductivity_at_20(soda_pct) * (1 + HS_K_BATH_TEMP_SLOPE * (temp_K - HS_K_BATH_TEMP_BASE));
    return HS_OK;
}

hs_status hs_bath_solubility(double *kg_per_kg, double temp_K, hs_error *err) {
    double at_C = temp_K - HS_K_PHYSICAL_ZERO_CELSIUS;
    double per_100 = hs_table_interpolate(hs_table_get(HS_TABLE_SOLUBILITY), HS_SOLUBILITY_TEMP,
                                          HS_SOLUBILITY_SODA, at_C);
    if (isnan(per_100))
        return hs_fail(err, HS_E_RANGE, "a bath of 0 to 40 C",
                       "how much soda dissolves at %.0f C is not in the table", at_C);
    *kg_per_kg = per_100 / 100;
    return HS_OK;
}

static hs_status wrong_size(hs_error *err) {
    return hs_fail(err, HS_E_IMPOSSIBLE, "sizes and conductivity above 0, rods apart",
                   "no resistance can be computed from these sizes");
}

hs_status hs_bath_plates_ohm(double *ohm, double conductivity_S_m, double gap_m, double area_m2,
                             hs_error *err) {
    if (!(conductivity_S_m > 0 && gap_m > 0 && area_m2 > 0)) return wrong_size(err);
    *ohm = gap_m / (conductivity_S_m * area_m2);
    return HS_OK;
}

hs_status hs_bath_rods_ohm(double *ohm, double conductivity_S_m, double apart_m, double radius1_m,
                           double radius2_m, double length_m, hs_error *err) {
    int possible = conductivity_S_m > 0 && radius1_m > 0 && radius2_m > 0 && length_m > 0;
    if (!possible || !(apart_m > radius1_m + radius2_m)) return wrong_size(err);
    double ratio = (apart_m * apart_m - radius1_m * radius1_m - radius2_m * radius2_m) /
                   (2 * radius1_m * radius2_m);
    *ohm = acosh(ratio) / (2 * PI * conductivity_S_m * length_m);
    return HS_OK;
}

hs_status hs_bath_far_ohm(double *ohm, double conductivity_S_m, double radius_m, hs_error *err) {
    if (!(conductivity_S_m > 0 && radius_m > 0)) return wrong_size(err);
    *ohm = 1 / (4 * PI * conductivity_S_m * radius_m);
    return HS_OK;
}

hs_status hs_bath_compact_ohm(double *ohm, double conductivity_S_m, double apart_m,
                              double radius1_m, double radius2_m, hs_error *err) {
    int possible = conductivity_S_m > 0 && radius1_m > 0 && radius2_m > 0;
    if (!possible || !(apart_m > radius1_m + radius2_m)) return wrong_size(err);
    *ohm = (1 / radius1_m + 1 / radius2_m - 2 / apart_m) / (4 * PI * conductivity_S_m);
    return HS_OK;
}
