#include "plan/aim.h"

#include <math.h>

enum { AIMS = 25 };

static const double INCH_M = 0.0254; /* exact: the international inch */

double hs_aim_readable(double size, double low, double high, int coarse_places, int places) {
    const double noise = 1e-9; /* of sums of printed numbers */
    double coarse = hs_round_to(size, coarse_places, HS_NEAREST);
    if (coarse >= low - noise && coarse <= high + noise) return coarse;
    double fine = hs_round_to(size, places, HS_NEAREST);
    if (fine < low - noise) fine = hs_round_to(low, places, HS_UP);
    if (fine > high + noise) fine = hs_round_to(high, places, HS_DOWN);
    return fine >= low - noise && fine <= high + noise ? fine : NAN;
}

double hs_aim_slack(const hs_window_found *f, const hs_dimension_draws *d, const hs_size *finish,
                    double rough_m, size_t i) {
    double low_m = f->inside ? finish->lower_m - rough_m : rough_m - finish->upper_m;
    double high_m = f->inside ? finish->upper_m - rough_m : rough_m - finish->lower_m;
    double need = d->need_m[0][i] + d->need_m[1][i], may = d->may_m[0][i] + d->may_m[1][i];
    if (f->grounds == 0) /* the size as hardened must lie inside the finished limits */
        return fmin(high_m - need, need - low_m);
    if (f->grounds == 1) return fmin(low_m - need, may - high_m);
    double clean[2], keep[2], best = INFINITY;
    hs_decide_share(clean, f, low_m);
    hs_decide_share(keep, f, high_m);
    for (int k = 0; k < 2; k++)
        best = fmin(best, fmin(clean[k] - d->need_m[k][i], d->may_m[k][i] - keep[k]));
    return best;
}

static double share_good(const hs_window_found *f, const hs_dimension_draws *d,
                         const hs_size *finish, const hs_draws *draws, size_t dimension,
                         double rough_m, double tolerance_m) {
    size_t good = 0;
    for (size_t i = 0; i < draws->n; i++) {
        double size_m = rough_m + tolerance_m * draws->rough[i][dimension];
        good += hs_aim_slack(f, d, finish, size_m, i) >= 0;
    }
    return (double)good / (double)draws->n;
}

typedef struct aim {
    double rough_m, joint, shape_limit_m;
} aim;

/* Of sizes as good as the best but for chance, and none short of what is asked where one reaches
 * it: the least stock whose shape limit still allows the shape that one part in 20 has; where none
 * does, the one with the widest shape limit. */
static const aim *choose(const aim *aims, double shape_high_m, double plateau, double asked) {
    const aim *best = aims, *widest = NULL;
    for (int k = 1; k < AIMS; k++)
        if (aims[k].joint > best->joint) best = &aims[k];
    for (int k = 0; k < AIMS; k++) {
        if (aims[k].joint < best->joint - plateau) continue;
        if (aims[k].joint < asked && best->joint >= asked) continue;
        if (aims[k].shape_limit_m >= shape_high_m) return &aims[k];
        if (!widest || aims[k].shape_limit_m > widest->shape_limit_m) widest = &aims[k];
    }
    return widest;
}

/* Printed sizes are whole thousandths of a millimetre, or ten-thousandths of an inch; a rounder one
 * reads better. */
static double printable(const hs_window_found *f, double size_m, double slack_m, int inch,
                        int round) {
    double low_m = hs_window_round(f->rough.low_m, inch, HS_UP) + slack_m;
    double high_m = hs_window_round(f->rough.high_m, inch, HS_DOWN) - slack_m;
    double unit_m = inch ? INCH_M : 1e-3;
    int places = inch ? 4 : 3;
    return hs_aim_readable(size_m / unit_m, low_m / unit_m, high_m / unit_m, places - round,
                           places) *
           unit_m;
}

static void make_printable(hs_window_found *f, double size_m, double tolerance_m, int inch,
                           int round) {
    f->aim_m = size_m;
    if (f->verdict == HS_STOP) return;
    double aim_m = printable(f, size_m, f->verdict == HS_GO ? tolerance_m : 0, inch, round);
    if (isnan(aim_m) && f->verdict == HS_GO) {
        f->verdict = HS_TIGHT;
        aim_m = printable(f, size_m, 0, inch, round);
    }
    if (isnan(aim_m) || isnan(printable(f, size_m, 0, !inch, 0)))
        f->verdict = HS_STOP; /* no size of it can be written down, in one unit or the other */
    else
        f->aim_m = aim_m;
}

void hs_aim_find(hs_window_found *f, const hs_chain *chain, size_t dimension, const hs_draws *draws,
                 const hs_decide_work *work) {
    const hs_size *size = &chain->job->dimension[dimension].size;
    const hs_dimension_draws *d = &work->dimension[dimension];
    const hs_limits finish = {size->lower_m, size->upper_m};
    double t = chain->job->shop.rough_tolerance_m;
    double low = fmin(f->rough.low_m, f->rough.high_m),
           high = fmax(f->rough.low_m, f->rough.high_m);
    if (f->verdict == HS_GO) {
        low += t;
        high -= t;
    }
    aim aims[AIMS];
    for (int k = 0; k < AIMS; k++) { /* least stock first; with nothing to grind the middle only */
        double share = f->grounds > 0 ? (double)k / (AIMS - 1) : 0.5;
        double rough = f->inside ? high - share * (high - low) : low + share * (high - low);
        aims[k].rough_m = rough;
        aims[k].joint = k > 0 && f->grounds == 0
                            ? aims[0].joint
                            : share_good(f, d, size, draws, dimension, rough, t);
        hs_limits offered = {rough - t, rough + t};
        aims[k].shape_limit_m = hs_window_shape_limit(f->inside, finish, offered, f->bad);
    }
    double asked = chain->job->shop.confidence;
    int inch = chain->job->inch_first;
    const aim *chosen = choose(aims, f->shape_high_m, 2.0 / (double)draws->n, asked);
    make_printable(f, chosen->rough_m, t, inch, 1);
    f->joint = share_good(f, d, size, draws, dimension, f->aim_m, t);
    if (f->verdict != HS_GO || f->joint >= asked || chosen->joint < asked) return;
    make_printable(f, chosen->rough_m, t, inch, 0); /* the rounder size would cost the go */
    f->joint = share_good(f, d, size, draws, dimension, f->aim_m, t);
}
