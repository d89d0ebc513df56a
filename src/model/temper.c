#include "hardskin/model/martensite.h"
#include "hardskin/tables/table.h"

#include "constants.h"

#include <math.h>

static const double HOUR_S = 3600;

static double hottest_K(const hs_temper *temper, size_t tempers) {
    double hottest = 0;
    for (size_t i = 0; i < tempers; i++)
        hottest = fmax(hottest, temper[i].temp_K);
    return hottest;
}

double hs_temper_equivalent_K(const hs_temper *temper, size_t tempers) {
    double hot = hottest_K(temper, tempers), hours = 0, c = HS_K_TEMPER_LIMITS_HOLLOMON_C;
    if (!(hot > 0)) return 0;
    for (size_t i = 0; i < tempers; i++) {
        double parameter = temper[i].temp_K * (c + log10(temper[i].hold_s / HOUR_S));
        hours += pow(10, parameter / hot - c);
    }
    return hot * (c + log10(hours)) / c;
}

double hs_temper_drop_HRC(double one_hour_K, double carbon_pct) {
    const hs_table *t = hs_table_get(HS_TABLE_TEMPER);
    double share = (carbon_pct - HS_K_TEMPER_LIMITS_CARBON_NONE) / HS_K_TEMPER_LIMITS_CARBON_SPAN;
    double first_C = hs_table_number(t, 0, HS_TEMPER_TEMPER);
    double temp_C = fmax(first_C, one_hour_K - HS_K_PHYSICAL_ZERO_CELSIUS);
    return fmin(1, fmax(0, share)) *
           hs_table_interpolate(t, HS_TEMPER_TEMPER, HS_TEMPER_DROP, temp_C);
}

hs_status hs_temper_check(const hs_temper *temper, size_t tempers, hs_error *err) {
    for (size_t i = 0; i < tempers; i++) {
        double celsius = temper[i].temp_K - HS_K_PHYSICAL_ZERO_CELSIUS;
        if (!(temper[i].temp_K >= HS_K_TEMPER_LIMITS_LOW - 1e-9 &&
              temper[i].temp_K <= HS_K_TEMPER_LIMITS_HIGH + 1e-9))
            return hs_fail(err, HS_E_RANGE, "150 to 200 C is usual for a case",
                           "the temper table covers 50 to 300 C, not %g C", celsius);
        if (!(temper[i].hold_s > 0 && isfinite(temper[i].hold_s)))
            return hs_fail(err, HS_E_IMPOSSIBLE, "1 to 4 h is usual", "a temper of %g s",
                           temper[i].hold_s);
    }
    if (tempers && isnan(hs_temper_drop_HRC(hs_temper_equivalent_K(temper, tempers), 1)))
        return hs_fail(err, HS_E_RANGE, "shorter or cooler",
                       "so long a temper goes beyond the temper table");
    return HS_OK;
}
