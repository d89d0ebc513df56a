#include "hardskin/model/chart.h"

#include "constants.h"

#include <math.h>

static const double INCH_M = 0.0254, HOUR_S = 3600;

hs_status hs_chart_total_case(double *depth_m, double temp_K, double hold_s, hs_error *err) {
    double fahrenheit = 1.8 * temp_K - 459.67, hours = hold_s / HOUR_S;
    if (!(temp_K >= HS_K_CHART_LOW - 1e-9 && temp_K <= HS_K_CHART_HIGH + 1e-9))
        return hs_fail(err, HS_E_RANGE, "815 to 983 C (1500 to 1800 F)",
                       "the chart has no curve for %g C", temp_K - HS_K_PHYSICAL_ZERO_CELSIUS);
    if (!(hours >= HS_K_CHART_HOLD_LOW - 1e-9 && hours <= HS_K_CHART_HOLD_HIGH + 1e-9))
        return hs_fail(err, HS_E_RANGE, "0.25 to 48 h", "the chart does not reach to %g h", hours);
    *depth_m = INCH_M * HS_K_CHART_FACTOR * sqrt(hours) /
               pow(10, HS_K_CHART_EXPONENT / (fahrenheit + HS_K_CHART_OFFSET));
    return HS_OK;
}
