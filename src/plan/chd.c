#include "plan/chd.h"

#include "constants.h"
#include "hardskin/model/case.h"

#include <math.h>
#include <stdio.h>

int hs_chd_limit(double limit_HV) {
    double steps = (limit_HV - HS_K_CHD_LIMIT) / HS_K_CHD_LIMIT_STEP;
    return steps >= 0 && fabs(steps - round(steps)) < 1e-9;
}

void hs_chd_write(char *out, size_t size, double depth_m, double limit_HV) {
    const double hundredth_m = 1e-5, noise = 1e-6; /* 0.6 mm read as .6000000001 stays 0.6 */
    double rounded_m = ceil(depth_m / hundredth_m - noise) * hundredth_m;
    double upper_m = hs_case_tolerance(rounded_m + noise * hundredth_m);
    char symbol[24] = "CHD";
    out[0] = '\0';
    if (!hs_chd_limit(limit_HV) || isnan(upper_m)) return;
    if (limit_HV > HS_K_CHD_LIMIT) snprintf(symbol, sizeof symbol, "CHD %.0f", limit_HV);
    int tenths = fabs(rounded_m * 1e4 - round(rounded_m * 1e4)) < noise;
    int upper_tenths = fabs(upper_m * 1e4 - round(upper_m * 1e4)) < noise;
    snprintf(out, size, "%s = %.*f +%.*f mm", symbol, tenths ? 1 : 2, rounded_m * 1e3,
             upper_tenths ? 1 : 2, upper_m * 1e3);
}
