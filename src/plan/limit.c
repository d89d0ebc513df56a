#include "plan/limit.h"

#include "constants.h"
#include "hardskin/model/austenite.h"

#include <math.h>

enum { MIDDLE, MS_LOW, MS_HIGH, SOFTER, HARDER, NODES };

/* Carbon above the least at which the hardness falls below the limit again. */
static double falls_below(const hs_hardening *h, double least_pct, double limit_HV) {
    double cap = hs_acm_pct(h->dissolve_K);
    if (!(cap > least_pct) || hs_hardened_HV(h, cap, NULL) >= limit_HV) return HS_LIMIT_NEVER;
    double low = least_pct, high = cap;
    for (int i = 0; i < 40; i++) {
        double mid = 0.5 * (low + high);
        if (hs_hardened_HV(h, mid, NULL) >= limit_HV)
            low = mid;
        else
            high = mid;
    }
    return low;
}

void hs_limit_make(hs_limit *limit, const hs_hardening *h, double hardness_HV) {
    static const double ms[NODES] = {0, -1, 1, 0, 0}, hardness[NODES] = {0, 0, 0, -1, 1};
    limit->hardness_HV = hardness_HV;
    for (int k = 0; k < NODES; k++) {
        hs_hardening shifted = *h;
        shifted.ms_shift_K = ms[k] * HS_K_PLAN_DOUBT_MS_BOUND;
        shifted.hardness_shift_HRC = hardness[k] * HS_K_PLAN_DOUBT_HARDNESS_BOUND;
        double least = hs_hardened_carbon(&shifted, hardness_HV);
        limit->least_pct[k] = isnan(least) ? HS_LIMIT_NEVER : least;
        limit->most_pct[k] =
            isnan(least) ? HS_LIMIT_NEVER : falls_below(&shifted, least, hardness_HV);
    }
}

/* Straight from the middle to the bound on each side; the two inputs add. */
static double between(const double node[NODES], const double z[HS_INPUTS]) {
    double ms = hs_draw_share(z[HS_IN_MS]), hard = hs_draw_share(z[HS_IN_HARDNESS]);
    double by_ms = fabs(ms) * (node[ms < 0 ? MS_LOW : MS_HIGH] - node[MIDDLE]);
    double by_hard = fabs(hard) * (node[hard < 0 ? SOFTER : HARDER] - node[MIDDLE]);
    return node[MIDDLE] + by_ms + by_hard;
}

double hs_limit_least(const hs_limit *limit, const double z[HS_INPUTS]) {
    return between(limit->least_pct, z);
}

double hs_limit_most(const hs_limit *limit, const double z[HS_INPUTS]) {
    return between(limit->most_pct, z);
}
