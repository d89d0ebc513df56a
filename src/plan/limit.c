#include "plan/limit.h"

#include "constants.h"
#include "hardskin/model/austenite.h"

#include <math.h>

/* Carbon above the least at which the hardness falls below the limit again. */
static double falls_below(const hs_hardening *h, double least_pct, double limit_HV) {
    double cap = hs_acm_pct(h->dissolve_K);
    if (!(cap > least_pct) || hs_hardened_HV(h, cap, NULL) >= limit_HV) return HS_LIMIT_NEVER;
    double low = least_pct, high = cap;
    for (int i = 0; i < 16; i++) { /* to 1e-5 % carbon */
        double mid = 0.5 * (low + high);
        if (hs_hardened_HV(h, mid, NULL) >= limit_HV)
            low = mid;
        else
            high = mid;
    }
    return low;
}

void hs_limit_make(hs_limit *limit, const hs_hardening *h, double hardness_HV) {
    limit->hardness_HV = hardness_HV;
    const int middle = HS_LIMIT_NODES / 2;
    for (int i = 0; i < HS_LIMIT_NODES; i++)
        for (int k = 0; k < HS_LIMIT_NODES; k++) {
            hs_hardening shifted = *h;
            shifted.ms_shift_K = (i - middle) * HS_K_PLAN_DOUBT_MS_BOUND;
            shifted.hardness_shift_HRC = (k - middle) * HS_K_PLAN_DOUBT_HARDNESS_BOUND;
            double least = hs_hardened_carbon(&shifted, hardness_HV);
            limit->least_pct[i][k] = isnan(least) ? HS_LIMIT_NEVER : least;
            limit->most_pct[i][k] =
                isnan(least) ? HS_LIMIT_NEVER : falls_below(&shifted, least, hardness_HV);
        }
}

typedef struct place {
    int node;
    double share; /* from the node to the next, 0 to 1 */
} place;

static place place_of(double z) {
    double at = hs_draw_share(z) + HS_LIMIT_NODES / 2;
    at = fmin(fmax(at, 0), HS_LIMIT_NODES - 1);
    int node = (int)at < HS_LIMIT_NODES - 1 ? (int)at : HS_LIMIT_NODES - 2;
    return (place){node, at - node};
}

static double between(const double grid[HS_LIMIT_NODES][HS_LIMIT_NODES],
                      const double z[HS_INPUTS]) {
    place ms = place_of(z[HS_IN_MS]), hard = place_of(z[HS_IN_HARDNESS]);
    const double *low = &grid[ms.node][hard.node], *high = &grid[ms.node + 1][hard.node];
    double most = fmax(fmax(low[0], low[1]), fmax(high[0], high[1]));
    if (most >= HS_LIMIT_NEVER) return (ms.share < 0.5 ? low : high)[hard.share < 0.5 ? 0 : 1];
    double at_low = low[0] + hard.share * (low[1] - low[0]);
    double at_high = high[0] + hard.share * (high[1] - high[0]);
    return at_low + ms.share * (at_high - at_low);
}

double hs_limit_least(const hs_limit *limit, const double z[HS_INPUTS]) {
    return between(limit->least_pct, z);
}

double hs_limit_most(const hs_limit *limit, const double z[HS_INPUTS]) {
    return between(limit->most_pct, z);
}
