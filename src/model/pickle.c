#include "hardskin/model/pickle.h"

#include "constants.h"
#include "hardskin/tables/table.h"

#include <math.h>

static const double SECONDS_PER_HOUR = 3600;

static hs_status find_acid(size_t *row, const char *acid, hs_error *err) {
    const hs_table *t = hs_table_get(HS_TABLE_ACIDS);
    int found = hs_table_row(t, HS_ACIDS_ACID, acid);
    if (found < 0) found = hs_table_row(t, HS_ACIDS_ALIAS, acid);
    if (found < 0)
        return hs_fail(err, HS_E_WORD, "citric, acetic, phosphoric, hydrochloric or sulphuric",
                       "'%s' is no acid the table knows", acid);
    *row = (size_t)found;
    return HS_OK;
}

static double cell(size_t row, size_t column) {
    return hs_table_number(hs_table_get(HS_TABLE_ACIDS), row, column);
}

/* FeO + 2 H+ : acid per oxide by mass. */
static double demand(size_t row) {
    double oxide_kg_mol = HS_K_PHYSICAL_MASS_FE + HS_K_PHYSICAL_MASS_O;
    return 2 * cell(row, HS_ACIDS_MOLAR_MASS) / (cell(row, HS_ACIDS_PROTONS_SCALE) * oxide_kg_mol);
}

/* Na2CO3 + 2 H+ : soda per acid by mass. */
static double soda(size_t row) {
    double soda_kg_mol =
        2 * HS_K_PHYSICAL_MASS_NA + HS_K_PHYSICAL_MASS_C + 3 * HS_K_PHYSICAL_MASS_O;
    return soda_kg_mol * cell(row, HS_ACIDS_PROTONS_SODA) / (2 * cell(row, HS_ACIDS_MOLAR_MASS));
}

hs_status hs_pickle_demand(double *kg_per_kg, const char *acid, hs_error *err) {
    size_t row = 0;
    hs_status status = find_acid(&row, acid, err);
    if (!status) *kg_per_kg = demand(row);
    return status;
}

static hs_status check_bath(size_t row, double acid_pct, double volume_m3, hs_error *err) {
    double low = cell(row, HS_ACIDS_LOW), high = cell(row, HS_ACIDS_HIGH);
    if (!(volume_m3 > 0 && isfinite(volume_m3)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "a volume above 0", "a bath of %g L",
                       1000 * volume_m3);
    if (acid_pct >= low && acid_pct <= high) return HS_OK;
    return hs_fail(err, HS_E_RANGE, "use the strengths of `hardskin tables acids`",
                   "%g %% is outside %g to %g %% for this acid", acid_pct, low, high);
}

hs_status hs_pickle(hs_pickle_plan *out, const char *acid, double acid_pct, double volume_m3,
                    double area_m2, double scale_m, hs_error *err) {
    size_t row = 0;
    hs_status status = find_acid(&row, acid, err);
    if (!status) status = check_bath(row, acid_pct, volume_m3, err);
    if (status) return status;
    if (!(area_m2 >= 0 && scale_m >= 0 && isfinite(area_m2) && isfinite(scale_m)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "an area and a scale of 0 or more",
                       "no scale can be computed from these sizes");
    double bath_kg = acid_pct * 10 * volume_m3; /* 1 % = 10 kg/m3 */
    out->scale_kg = area_m2 * scale_m * HS_K_OXIDATION_SCALE_DENSITY;
    out->acid_kg = out->scale_kg * demand(row);
    out->capacity_kg = bath_kg / demand(row);
    out->soda_kg = bath_kg * soda(row);
    out->time_low_s = cell(row, HS_ACIDS_TIME_LOW) * SECONDS_PER_HOUR;
    out->time_high_s = cell(row, HS_ACIDS_TIME_HIGH) * SECONDS_PER_HOUR;
    out->temp_low_K = cell(row, HS_ACIDS_TEMP_LOW) + HS_K_PHYSICAL_ZERO_CELSIUS;
    out->temp_high_K = cell(row, HS_ACIDS_TEMP_HIGH) + HS_K_PHYSICAL_ZERO_CELSIUS;
    out->spent = out->acid_kg > bath_kg;
    return HS_OK;
}
