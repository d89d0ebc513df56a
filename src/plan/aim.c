#include "plan/aim.h"

#include "constants.h"

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
    hs_found_share(clean, f, low_m);
    hs_found_share(keep, f, high_m);
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
    hs_found_share(stock, f, need_m + 1); /* how a metre more would be shared */
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

/* One dimension while its aim is sought. */
typedef struct search {
    hs_window_found *f;
    const hs_draws *draws;
    size_t dimension;
    const double *low_m, *high_m; /* of each draw, from good_rough */
    hs_limits finish;
    double tolerance_m, asked;
    double each; /* asked of each dimension, so that the part reaches `asked` however they hang
                    together */
    int inch;
} search;

static double share_good(const search *s, double rough_m) {
    size_t good = 0;
    for (size_t i = 0; i < s->draws->n; i++) {
        double size_m = rough_m + s->tolerance_m * s->draws->rough[i][s->dimension];
        good += size_m >= s->low_m[i] && size_m <= s->high_m[i];
    }
    return (double)good / (double)s->draws->n;
}

typedef struct aim {
    double rough_m, joint, shape_limit_m;
} aim;

static aim aim_at(const search *s, double rough_m) {
    hs_limits offered = {rough_m - s->tolerance_m, rough_m + s->tolerance_m};
    return (aim){rough_m, share_good(s, rough_m),
                 hs_window_shape_limit(s->f->inside, s->finish, offered, s->f->bad)};
}

static int bears(const search *s, const aim *a) {
    return a->shape_limit_m >= s->f->shape_high_m;
}

/* Least share of good parts that is as good as the best: what chance leaves open, or half as many
 * bad parts again for less to grind, but never more than a bench would notice, nor what all
 * dimensions of the part together need. */
static double good_enough(const search *s, double best) {
    double least = best - fmin(HS_K_PLAN_DOUBT_AIM_SHARE, (1 - best) / 2);
    least = fmin(fmax(least, s->each), best - 2.0 / (double)s->draws->n);
    return best >= s->asked ? fmax(least, s->asked) : least;
}

/* Of sizes as good as the best: the least stock whose shape limit still allows the shape that one
 * part in 20 has; where none does, the one with the widest shape limit. */
static const aim *choose(const search *s, const aim *aims) {
    const aim *best = aims, *widest = NULL;
    for (int k = 1; k < AIMS; k++)
        if (aims[k].joint > best->joint) best = &aims[k];
    double least = good_enough(s, best->joint);
    for (int k = 0; k < AIMS; k++) {
        if (aims[k].joint < least) continue;
        if (bears(s, &aims[k])) return &aims[k];
        if (!widest || aims[k].shape_limit_m > widest->shape_limit_m) widest = &aims[k];
    }
    return widest;
}

/* Printed sizes are whole thousandths of a millimetre, or ten-thousandths of an inch. */
static double unit_of(int inch) {
    return inch ? INCH_M : 1e-3;
}

static int places_of(int inch) {
    return inch ? 4 : 3;
}

static hs_limits printed_window(const hs_window_found *f, double slack_m, int inch) {
    return (hs_limits){hs_window_round(f->rough.low_m, inch, HS_UP) + slack_m,
                       hs_window_round(f->rough.high_m, inch, HS_DOWN) - slack_m};
}

/* Any printable size inside, a rounder one where there is one; NaN: none. */
static double printable(const hs_window_found *f, double size_m, double slack_m, int inch,
                        int round) {
    hs_limits window = printed_window(f, slack_m, inch);
    double unit_m = unit_of(inch);
    int places = places_of(inch);
    return hs_aim_readable(size_m / unit_m, window.low_m / unit_m, window.high_m / unit_m,
                           places - round, places) *
           unit_m;
}

/* What was chosen, kept in writing: neither the confidence asked nor the shape it bears is lost to
 * a rounder number. */
static int keeps(const search *s, const aim *written, const aim *chosen) {
    if (chosen->joint >= s->asked && written->joint < s->asked) return 0;
    return !bears(s, chosen) || bears(s, written);
}

/* The roundest size next to the chosen one that keeps what it was chosen for; 0 where none does. */
static int write_down(aim *out, const search *s, const aim *chosen, double slack_m) {
    static const hs_round ways[] = {HS_NEAREST, HS_UP, HS_DOWN};
    const double noise_m = 1e-12;
    hs_limits window = printed_window(s->f, slack_m, s->inch);
    double unit_m = unit_of(s->inch);
    for (int fine = 0; fine < 2; fine++)
        for (int w = 0; w < 3; w++) {
            int places = places_of(s->inch) - !fine;
            double size_m = unit_m * hs_round_to(chosen->rough_m / unit_m, places, ways[w]);
            if (size_m < window.low_m - noise_m || size_m > window.high_m + noise_m) continue;
            *out = aim_at(s, size_m);
            if (keeps(s, out, chosen)) return 1;
        }
    return 0;
}

static void make_printable(const search *s, const aim *chosen) {
    hs_window_found *f = s->f;
    f->aim_m = chosen->rough_m;
    f->joint = chosen->joint;
    if (f->verdict == HS_STOP) return;
    double slack_m = f->verdict == HS_GO ? s->tolerance_m : 0;
    if (f->verdict == HS_GO && isnan(printable(f, chosen->rough_m, slack_m, s->inch, 1))) {
        f->verdict = HS_TIGHT;
        slack_m = 0;
    }
    double any_m = printable(f, chosen->rough_m, slack_m, s->inch, 1);
    if (isnan(any_m) || isnan(printable(f, chosen->rough_m, 0, !s->inch, 0))) {
        f->verdict = HS_STOP; /* no size of it can be written down, in one unit or the other */
        return;
    }
    aim written;
    if (!write_down(&written, s, chosen, slack_m)) written = aim_at(s, any_m);
    f->aim_m = written.rough_m;
    f->joint = written.joint;
}

/* Least stock first; with nothing to grind the middle only. */
static void spread(aim aims[AIMS], const search *s) {
    const hs_window_found *f = s->f;
    double slack_m = f->verdict == HS_GO ? s->tolerance_m : 0;
    double low = fmin(f->rough.low_m, f->rough.high_m) + slack_m;
    double high = fmax(f->rough.low_m, f->rough.high_m) - slack_m;
    for (int k = 0; k < AIMS; k++) {
        double share = f->grounds > 0 ? (double)k / (AIMS - 1) : 0.5;
        double rough = f->inside ? high - share * (high - low) : low + share * (high - low);
        aims[k] = k > 0 && f->grounds == 0 ? aims[0] : aim_at(s, rough);
    }
}

static double asked_of_each(const hs_job *job) {
    size_t n = 0;
    for (size_t i = 0; i < job->dimensions; i++)
        n += hs_dimension_ground(job, i) != 0;
    return 1 - (1 - job->shop.confidence) / (double)(n > 0 ? n : 1);
}

void hs_aim_find(hs_window_found *f, const hs_chain *chain, size_t dimension, const hs_draws *draws,
                 hs_decide_work *work) {
    const hs_size *size = &chain->job->dimension[dimension].size;
    const hs_dimension_draws *d = &work->dimension[dimension];
    double *low_m = work->column[1], *high_m = work->column[2];
    for (size_t i = 0; i < draws->n; i++) {
        hs_limits good = good_rough(f, d, size, i);
        low_m[i] = good.low_m;
        high_m[i] = good.high_m;
    }
    const search s = {.f = f,
                      .draws = draws,
                      .dimension = dimension,
                      .low_m = low_m,
                      .high_m = high_m,
                      .finish = {size->lower_m, size->upper_m},
                      .tolerance_m = chain->job->shop.rough_tolerance_m,
                      .asked = chain->job->shop.confidence,
                      .each = asked_of_each(chain->job),
                      .inch = chain->job->inch_first};
    aim aims[AIMS];
    spread(aims, &s);
    f->joint_middle = aims[AIMS / 2].joint;
    make_printable(&s, choose(&s, aims));
}
