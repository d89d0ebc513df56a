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

double hs_aim_room(const hs_window_found *f, const double need_m[2], const double may_m[2],
                   const hs_size *finish, double rough_m) {
    double low_m = f->inside ? finish->lower_m - rough_m : rough_m - finish->upper_m;
    double high_m = f->inside ? finish->upper_m - rough_m : rough_m - finish->lower_m;
    double need = need_m[0] + need_m[1], may = may_m[0] + may_m[1];
    if (f->grounds == 0) /* the size as hardened must lie inside the finished limits */
        return fmin(high_m - need, need - low_m);
    if (f->grounds == 1) return fmin(low_m - need, may - high_m);
    double clean[2], keep[2], best = INFINITY;
    hs_decide_share(clean, f, low_m);
    hs_decide_share(keep, f, high_m);
    for (int k = 0; k < 2; k++)
        best = fmin(best, fmin(clean[k] - need_m[k], may_m[k] - keep[k]));
    return best;
}

double hs_aim_slack(const hs_window_found *f, const hs_dimension_draws *d, const hs_size *finish,
                    double rough_m, size_t i) {
    const double need_m[2] = {d->need_m[0][i], d->need_m[1][i]};
    const double may_m[2] = {d->may_m[0][i], d->may_m[1][i]};
    return hs_aim_room(f, need_m, may_m, finish, rough_m);
}

/* Least and most stock over both faces that a draw bears: where hs_aim_slack changes its sign. */
static hs_limits good_stock(const hs_window_found *f, const hs_dimension_draws *d, size_t i) {
    double need_m = f->need_m[0] + f->need_m[1], stock[2];
    hs_limits good = {-INFINITY, INFINITY};
    if (f->grounds < 2)
        return (hs_limits){d->need_m[0][i] + d->need_m[1][i], d->may_m[0][i] + d->may_m[1][i]};
    hs_decide_share(stock, f, need_m + 1); /* how a metre more would be shared */
    for (int k = 0; k < 2; k++) {
        double share = k ? 1 - (stock[0] - f->need_m[0]) : stock[0] - f->need_m[0];
        double short_m = d->need_m[k][i] - f->need_m[k], spare_m = d->may_m[k][i] - f->need_m[k];
        if (share > 0) {
            good.low_m = fmax(good.low_m, need_m + short_m / share);
            good.high_m = fmin(good.high_m, need_m + spare_m / share);
        } else if (short_m > 0 || spare_m < 0) {
            return (hs_limits){INFINITY, -INFINITY}; /* more stock does not reach this face */
        }
    }
    return good;
}

/* Rough sizes that a draw bears: clean-up counts to one end of the finished size, case to the
 * other; where nothing is ground the size as hardened lies between them. */
static hs_limits good_rough(const hs_window_found *f, const hs_dimension_draws *d,
                            const hs_size *finish, size_t i) {
    hs_limits s = good_stock(f, d, i), end = {finish->lower_m, finish->upper_m};
    if (f->grounds == 0) end = (hs_limits){finish->upper_m, finish->lower_m};
    if (f->inside) return (hs_limits){end.high_m - s.high_m, end.low_m - s.low_m};
    return (hs_limits){end.high_m + s.low_m, end.low_m + s.high_m};
}

/* What counts the good draws of one dimension. */
typedef struct tally {
    const hs_draws *draws;
    size_t dimension;
    const double *low_m, *high_m; /* of each draw, from good_rough */
    double tolerance_m;
} tally;

static double share_good(const tally *t, double rough_m) {
    size_t good = 0;
    for (size_t i = 0; i < t->draws->n; i++) {
        double size_m = rough_m + t->tolerance_m * t->draws->rough[i][t->dimension];
        good += size_m >= t->low_m[i] && size_m <= t->high_m[i];
    }
    return (double)good / (double)t->draws->n;
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
                 hs_decide_work *work) {
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
    double *low_m = work->column[1], *high_m = work->column[2];
    for (size_t i = 0; i < draws->n; i++) {
        hs_limits good = good_rough(f, d, size, i);
        low_m[i] = good.low_m;
        high_m[i] = good.high_m;
    }
    const tally count = {draws, dimension, low_m, high_m, t};
    aim aims[AIMS];
    for (int k = 0; k < AIMS; k++) { /* least stock first; with nothing to grind the middle only */
        double share = f->grounds > 0 ? (double)k / (AIMS - 1) : 0.5;
        double rough = f->inside ? high - share * (high - low) : low + share * (high - low);
        aims[k].rough_m = rough;
        aims[k].joint = k > 0 && f->grounds == 0 ? aims[0].joint : share_good(&count, rough);
        hs_limits offered = {rough - t, rough + t};
        aims[k].shape_limit_m = hs_window_shape_limit(f->inside, finish, offered, f->bad);
    }
    double asked = chain->job->shop.confidence;
    int inch = chain->job->inch_first;
    const aim *chosen = choose(aims, f->shape_high_m, 2.0 / (double)draws->n, asked);
    make_printable(f, chosen->rough_m, t, inch, 1);
    f->joint = share_good(&count, f->aim_m);
    if (f->verdict != HS_GO || f->joint >= asked || chosen->joint < asked) return;
    make_printable(f, chosen->rough_m, t, inch, 0); /* the rounder size would cost the go */
    f->joint = share_good(&count, f->aim_m);
}
