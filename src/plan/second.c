#include "plan/second.h"

#include "base/num.h"
#include "constants.h"
#include "plan/variant.h"

#include <math.h>
#include <stdio.h>

static const double half_hour_s = 1800;
static const double middle[HS_INPUTS] = {0};

enum { CLEAN, CASE, HARD, LOST, COLUMNS };

static hs_part_draw part_of(const hs_chain *then, const hs_reading *reading,
                            const double z[HS_INPUTS]) {
    hs_part_draw draw = hs_chain_draw(then, z);
    if (reading->present) draw.scatter_m += reading->doubt_here_m * hs_draw_share(z[HS_IN_READING]);
    return draw;
}

/* Everything counts from the surface after the second hardening. */
static void set_face(hs_measured_face *out, const hs_chain *then, const hs_reading *reading,
                     size_t face, const hs_draws *draws, hs_decide_work *work) {
    double q = then->job->shop.confidence;
    hs_part_draw draw = hs_chain_draw(then, middle);
    hs_trial t = hs_chain_trial(then, face, 0, &draw);
    *out = (hs_measured_face){.clean_up_m = t.sum.clean_up_m,
                              .clean_up_high_m = t.sum.clean_up_m,
                              .hard_to_m = INFINITY,
                              .hard_to_low_m = INFINITY};
    if (then->face[face].axis == HS_MAX_AXES) return;
    out->case_m = t.case_m - draw.lost_m;
    if (!hs_face_asks(&then->job->face[face])) out->free_m = t.sum.budget_m - draw.lost_m;
    int hard = then->job->face[face].hardness_HV > 0;
    if (hard) out->hard_to_m = hs_chain_hard_to(then, face, &draw) - draw.lost_m;
    for (size_t i = 0; i < draws->n; i++) {
        draw = part_of(then, reading, draws->z[i]);
        t = hs_chain_trial(then, face, 0, &draw);
        work->column[CLEAN][i] = t.sum.clean_up_m;
        work->column[CASE][i] = t.case_m - draw.lost_m;
        work->column[HARD][i] = hard ? hs_chain_hard_to(then, face, &draw) - draw.lost_m : INFINITY;
    }
    out->clean_up_high_m = hs_quantile_of(work->column[CLEAN], draws->n, q);
    out->case_low_m = hs_quantile_of(work->column[CASE], draws->n, 1 - q);
    if (hard) out->hard_to_low_m = hs_quantile_of(work->column[HARD], draws->n, 1 - q);
}

/* It has grown once; what it grows beyond that, and how far that may be wrong. */
static void set_growth(hs_second *out, const hs_chain *then, const hs_chain *chain, size_t i) {
    double bound[HS_INPUTS] = {0};
    const hs_dimension *d = &then->job->dimension[i];
    bound[HS_IN_GROWTH_ACROSS] = bound[HS_IN_GROWTH_ALONG] = 1 / hs_draw_share(1);
    double grown_m = hs_warp_growth(&then->warp, then->job, d, middle);
    out->growth_m[i] = grown_m - hs_warp_growth(&chain->warp, chain->job, d, middle);
    out->growth_bound_m[i] = fabs(hs_warp_growth(&then->warp, then->job, d, bound) - grown_m);
}

static void set_shape(hs_second *out, const hs_chain *then, size_t i, const hs_draws *draws,
                      hs_decide_work *work) {
    const hs_dimension *d = &then->job->dimension[i];
    double *shape = work->column[CLEAN];
    for (size_t k = 0; k < draws->n; k++) {
        double x_m, y_m;
        hs_warp_bow(&x_m, &y_m, &then->warp, draws->z[k]);
        shape[k] = hs_warp_shape(&then->warp, then->job, d, x_m, y_m, draws->z[k]);
    }
    out->shape_m[i] = hs_quantile_of(shape, draws->n, 0.5);
    out->shape_high_m[i] = hs_quantile_of(shape, draws->n, 0.95);
}

static void set_all(hs_second *out, const hs_chain *then, const hs_chain *chain,
                    const hs_draws *draws, hs_decide_work *work) {
    const hs_job *job = then->job;
    double *lost = work->column[LOST];
    for (size_t i = 0; i < draws->n; i++)
        lost[i] = hs_chain_draw(then, draws->z[i]).lost_m;
    out->lost_m = hs_chain_draw(then, middle).lost_m;
    out->lost_high_m = fmax(out->lost_m, hs_quantile_of(lost, draws->n, job->shop.confidence));
    for (size_t i = 0; i < job->faces; i++)
        set_face(&out->face[i], then, &chain->reading, i, draws, work);
    for (size_t i = 0; i < job->dimensions; i++) {
        set_growth(out, then, chain, i);
        set_shape(out, then, i, draws, work);
    }
}

/* Of the first time: less the scale and what is ground off already, and where it was read as deep
 * as that. What made it less deep than computed is taken to be there the second time as well, what
 * made it deeper not. */
static hs_route_left left_of(const hs_chain *chain) {
    const hs_reading *reading = &chain->reading;
    double ground_m = 0;
    for (size_t i = 0; i < chain->job->dimensions; i++)
        ground_m = fmax(ground_m, chain->job->measured.dimension[i].ground_m);
    int read = reading->present && reading->factor > 0;
    return (hs_route_left){.heats = chain->route.heats,
                           .cut_m = hs_chain_draw(chain, middle).lost_m + ground_m,
                           .stretch = read ? reading->factor : 1,
                           .speed = read ? fmin(1, reading->factor) : 1,
                           .known = read};
}

hs_status hs_second_make(hs_second *out, double hold_s, const hs_chain *chain,
                         const hs_draws *draws, hs_remedy_work *work, hs_chain_work *scratch,
                         hs_decide_work *decide) {
    const hs_route_left left = left_of(chain);
    hs_variant *v = &work->variant;
    hs_variant_start(v, chain->job);
    if (!hs_variant_twice(v, hold_s)) return HS_E_TOO_LARGE;
    hs_status status = hs_chain_recase(&work->chain, chain, &v->job, &left, scratch, NULL);
    if (status != HS_OK) return status;
    *out = (hs_second){.present = 1, .hold_s = hold_s, .speed = left.speed};
    set_all(out, &work->chain, chain, draws, decide);
    return HS_OK;
}

/* The search, in half hours. */
typedef struct search {
    hs_second *out;
    const hs_measured_input *in;
    const hs_chain *chain;
    const hs_draws *draws;
    hs_remedy_work *work;
    hs_chain_work *scratch;
    hs_decide_work *decide;
    hs_status ended; /* why the last one could not be run */
} search;

static int measured(const hs_job *job, size_t i) {
    return job->measured.dimension[i].size_given && hs_dimension_ground(job, i);
}

static hs_wheel worst(const search *s, const hs_second *second) {
    const hs_job *job = s->chain->job;
    hs_wheel worst = HS_WHEEL_NONE;
    for (size_t i = 0; i < job->dimensions; i++) {
        hs_bench now, then;
        if (!measured(job, i)) continue;
        hs_bench_make(&now, job, i, s->in);
        hs_bench_second(&then, &now, job, i, s->in, second);
        hs_wheel wheel = hs_bench_judge(&then);
        if (wheel > worst) worst = wheel;
    }
    return worst;
}

/* Verdict after so many half hours; HS_WHEEL_NONE: it cannot be run. */
static hs_wheel run(search *s, long steps) {
    hs_second second;
    hs_status status = hs_second_make(&second, (double)steps * half_hour_s, s->chain, s->draws,
                                      s->work, s->scratch, s->decide);
    s->ended = status;
    if (status != HS_OK) return HS_WHEEL_NONE;
    *s->out = second;
    return worst(s, &second);
}

/* The shortest with this verdict, between one that has not got it and one that has. */
static long shortest(search *s, hs_wheel wanted, long without, long with) {
    while (with - without > 1) {
        long mid = (without + with) / 2;
        hs_wheel wheel = run(s, mid);
        *(wheel != HS_WHEEL_NONE && wheel <= wanted ? &with : &without) = mid;
    }
    return with;
}

static long next_of(long steps, long longest) {
    return 2 * steps < longest ? 2 * steps : longest;
}

/* Doubling until it is good, or cannot be run. */
static int scan(search *s, long *without, long *with, hs_wheel *best) {
    const long longest = (long)(HS_K_PLAN_DOUBT_LONGEST_SOAK / half_hour_s);
    long before = 0;
    *best = HS_WHEEL_NO;
    for (long steps = 1; before < longest; steps = next_of(steps, longest)) {
        hs_wheel wheel = run(s, steps);
        if (wheel == HS_WHEEL_NONE) return 1;
        if (wheel < *best) {
            *best = wheel;
            *without = before;
            *with = steps;
        }
        if (wheel == HS_WHEEL_GRIND) return 0;
        before = steps;
    }
    return 0;
}

/* As fine as an answer: the bend of the case it then has. */
static int confirm(search *s, long steps, hs_wheel wanted) {
    if (run(s, steps) == HS_WHEEL_NONE) return 0;
    if (hs_chain_whole(&s->work->chain, s->scratch, NULL) != HS_OK) return 0;
    set_all(s->out, &s->work->chain, s->chain, s->draws, s->decide);
    return worst(s, s->out) <= wanted;
}

/* The search had a coarse bend: half an hour more or less until the fine one says the same. */
static int settle(search *s, long steps, hs_wheel wanted) {
    enum { MORE = 4 };
    int good = confirm(s, steps, wanted);
    for (int k = 0; k < MORE; k++) {
        long next = good ? steps - 1 : steps + 1;
        if (next < 1) return good;
        int now = confirm(s, next, wanted);
        if (good && !now) return confirm(s, steps, wanted);
        if (now && !good) return 1;
        steps = next;
    }
    return good;
}

static int any_short(const search *s) {
    const hs_job *job = s->chain->job;
    for (size_t i = 0; i < job->dimensions; i++) {
        hs_bench now;
        if (!measured(job, i)) continue;
        hs_bench_make(&now, job, i, s->in);
        if (hs_bench_judge(&now) == HS_WHEEL_NO && hs_bench_too_deep(&now)) return 1;
    }
    return 0;
}

static const char *why_not(int ended, hs_status status) {
    if (!ended) return "no second soak leaves enough under the shape it may then have";
    return status == HS_E_THROUGH
               ? "before it is deep enough the case of both sides takes half the wall"
           : status == HS_E_TOO_LARGE
               ? "a soak given as a log, or a route of so many steps, is not reckoned twice"
               : "what it would make of the part lies outside the models";
}

void hs_second_find(hs_second *second, const hs_measured_input *in, const hs_chain *chain,
                    const hs_draws *draws, hs_remedy_work *work, hs_chain_work *scratch,
                    hs_decide_work *decide) {
    search s = {second, in, chain, draws, work, scratch, decide, HS_OK};
    long without = 0, with = 0;
    hs_wheel best;
    *second = (hs_second){0};
    if (chain->axes.n == 0 || !any_short(&s)) return;
    int ended = scan(&s, &without, &with, &best);
    hs_status status = s.ended;
    if (best < HS_WHEEL_NO) with = shortest(&s, best, without, with);
    if (best < HS_WHEEL_NO && settle(&s, with, best)) return;
    *second = (hs_second){0};
    snprintf(second->why, sizeof second->why, "%s", why_not(ended, status));
}
