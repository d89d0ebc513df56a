#include "plan/limit.h"

#include "base/num.h"
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

/* What the rate adds is found at the middle of Ms and hardness. Where a slow rate makes no carbon
 * hard enough, never; where a fast one has the limit below all carbons told, the node before it. */
static void move_by_rate(hs_limit *limit, const hs_hardening *h, double bound, double hardness_HV) {
    const int middle = HS_LIMIT_NODES / 2;
    double least = limit->least_pct[middle][middle];
    for (int i = 0; i < HS_LIMIT_NODES; i++)
        limit->by_rate_pct[i] = 0;
    if (!(h->rate_K_s > 0) || least == HS_LIMIT_NEVER) return;
    for (int i = 0; i < HS_LIMIT_NODES; i++) {
        hs_hardening moved = *h;
        moved.rate_K_s = h->rate_K_s * exp((i - middle) * bound);
        double there = hs_hardened_carbon(&moved, hardness_HV);
        if (!isnan(there))
            limit->by_rate_pct[i] = there - least;
        else
            limit->by_rate_pct[i] = i < middle ? HS_LIMIT_NEVER : limit->by_rate_pct[i - 1];
    }
}

void hs_limit_make(hs_limit *limit, const hs_hardening *h, double rate_bound, double hardness_HV) {
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
    move_by_rate(limit, h, rate_bound, hardness_HV);
}

typedef struct place {
    int node;
    double share; /* from the node to the next, 0 to 1 */
} place;

static place place_of(double z) {
    double at = hs_draw_share(z) + HS_LIMIT_NODES / 2;
    at = hs_least(hs_most(at, 0), HS_LIMIT_NODES - 1);
    int node = (int)at < HS_LIMIT_NODES - 1 ? (int)at : HS_LIMIT_NODES - 2;
    return (place){node, at - node};
}

static double between(const double grid[HS_LIMIT_NODES][HS_LIMIT_NODES],
                      const double z[HS_INPUTS]) {
    place ms = place_of(z[HS_IN_MS]), hard = place_of(z[HS_IN_HARDNESS]);
    const double *low = &grid[ms.node][hard.node], *high = &grid[ms.node + 1][hard.node];
    double most = hs_most(hs_most(low[0], low[1]), hs_most(high[0], high[1]));
    if (most >= HS_LIMIT_NEVER) return (ms.share < 0.5 ? low : high)[hard.share < 0.5 ? 0 : 1];
    double at_low = low[0] + hard.share * (low[1] - low[0]);
    double at_high = high[0] + hard.share * (high[1] - high[0]);
    return at_low + ms.share * (at_high - at_low);
}

/* Where one of two rates is too slow for any carbon, the nearer one decides. */
double hs_limit_least(const hs_limit *limit, const double z[HS_INPUTS]) {
    place rate = place_of(z[HS_IN_QUENCH]);
    const double *low = &limit->by_rate_pct[rate.node];
    double least = between(limit->least_pct, z);
    if (hs_most(low[0], low[1]) >= HS_LIMIT_NEVER) {
        double nearer = low[rate.share < 0.5 ? 0 : 1];
        return nearer >= HS_LIMIT_NEVER ? HS_LIMIT_NEVER : least + nearer;
    }
    return least + low[0] + rate.share * (low[1] - low[0]);
}

double hs_limit_most(const hs_limit *limit, const double z[HS_INPUTS]) {
    return between(limit->most_pct, z);
}
