#include "plan/decide.h"

#include "base/num.h"
#include "constants.h"
#include "plan/aim.h"
#include "plan/chuck.h"

#include <math.h>
#include <string.h>

/* One face twice (a diameter), or two faces that ask and get the same. */
static int same_demand(const hs_chain *chain, const hs_dimension *dimension) {
    size_t i = dimension->face[0], k = dimension->face[1];
    const hs_face *a = &chain->job->face[i], *b = &chain->job->face[k];
    return i == k || (chain->face[i].axis == chain->face[k].axis &&
                      chain->edge[i].angle_rad == chain->edge[k].angle_rad &&
                      chain->edge[i].land == chain->edge[k].land && a->finish == b->finish &&
                      a->case_m == b->case_m && a->limit_HV == b->limit_HV &&
                      a->hardness_HV == b->hardness_HV);
}

static void draw_dimension(hs_dimension_draws *out, const hs_chain *chain,
                           const hs_dimension *dimension, const hs_part_draw *parts, size_t from,
                           size_t n) {
    int alike = same_demand(chain, dimension);
    for (size_t i = from; i < n; i++) {
        const hs_part_draw *part = &parts[i];
        double growth_m = hs_warp_growth(&chain->warp, chain->job, dimension, part->z);
        double shape_m = hs_warp_shape(&chain->warp, chain->job, dimension, part->bow_x_m,
                                       part->bow_y_m, part->z);
        out->shape_m[i] = shape_m;
        for (int k = 0; k < 2; k++) {
            if (k == 1 && alike) {
                out->need_m[1][i] = out->need_m[0][i];
                out->may_m[1][i] = out->may_m[0][i];
                break;
            }
            hs_trial t = hs_chain_trial(chain, dimension->face[k], growth_m, part);
            out->need_m[k][i] = hs_face_need(&t.sum, shape_m);
            out->may_m[k][i] = hs_face_may(&t.sum, shape_m);
        }
    }
}

static double quantile_of(const double *values, size_t n, double q, double *scratch) {
    memcpy(scratch, values, n * sizeof *values);
    return hs_quantile_of(scratch, n, q);
}

/* Each letter of a face at its bad side. */
static hs_face_sum bad_side(const hs_chain *chain, const hs_dimension *dimension, int k,
                            const hs_draws *draws, double q, hs_decide_work *work) {
    enum { CLEAN, BUDGET, SPLIT, LOST, GROWTH, SORTED };
    hs_face_sum out = {0};
    for (size_t i = 0; i < draws->n; i++) {
        double growth_m = hs_warp_growth(&chain->warp, chain->job, dimension, draws->z[i]);
        hs_trial t = hs_chain_trial(chain, dimension->face[k], growth_m, &work->part[i]);
        out.ground = t.sum.ground;
        work->column[CLEAN][i] = t.sum.clean_up_m;
        work->column[BUDGET][i] = t.sum.budget_m;
        work->column[SPLIT][i] = t.sum.split_m;
        work->column[LOST][i] = t.sum.lost_high_m;
        work->column[GROWTH][i] = growth_m;
    }
    double *sorted = work->column[SORTED];
    out.clean_up_m = quantile_of(work->column[CLEAN], draws->n, q, sorted);
    out.budget_m = quantile_of(work->column[BUDGET], draws->n, 1 - q, sorted);
    out.split_m = quantile_of(work->column[SPLIT], draws->n, q, sorted);
    out.lost_low_m = quantile_of(work->column[LOST], draws->n, 1 - q, sorted);
    out.lost_high_m = quantile_of(work->column[LOST], draws->n, q, sorted);
    out.growth_low_m = quantile_of(work->column[GROWTH], draws->n, 1 - q, sorted);
    out.growth_high_m = quantile_of(work->column[GROWTH], draws->n, q, sorted);
    return out;
}

static void find_bad_sides(hs_window_found *f, const hs_chain *chain, const hs_dimension *dimension,
                           const hs_draws *draws, double q, hs_decide_work *work) {
    for (int k = 0; k < 2; k++)
        f->bad[k] = k == 1 && same_demand(chain, dimension)
                        ? f->bad[0]
                        : bad_side(chain, dimension, k, draws, q, work);
    f->grounds = f->bad[0].ground + f->bad[1].ground;
}

static double least_flatness(const hs_job *job, const hs_dimension *dimension) {
    double least_m = INFINITY;
    for (int k = 0; k < 2; k++) {
        const hs_face *face = &job->face[dimension->face[k]];
        if (face->finish == HS_GROUND) least_m = fmin(least_m, face->flatness_m);
    }
    return isfinite(least_m) ? least_m : 0;
}

/* Pulled flat the part is ground true and springs back: the flatness asked must allow the bow, and
 * the chuck must surely flatten it; else to hold it so is refused. */
static void judge_pulled(hs_window_found *f, const hs_chain *chain, size_t index, size_t n,
                         hs_decide_work *work) {
    const hs_job *job = chain->job;
    const hs_dimension *d = &job->dimension[index];
    double *bow = work->column[1];
    f->pulled = hs_dimension_pulled(job, d) && f->grounds > 0;
    f->refused = 0;
    if (!f->pulled) return;
    for (size_t i = 0; i < n; i++)
        bow[i] = hs_warp_sprung(job, d, work->part[i].bow_x_m, work->part[i].bow_y_m);
    f->sprung_m = quantile_of(bow, n, 0.5, work->column[0]);
    f->sprung_high_m = quantile_of(bow, n, 0.95, work->column[0]);
    f->sprung_at_worst_m = quantile_of(bow, n, job->shop.confidence, work->column[0]);
    f->flatness_m = least_flatness(job, d);
    f->flattens_m = hs_chuck_flattens_m(job, d, d->size.nominal_m);
    f->stiff = f->sprung_at_worst_m > f->flattens_m;
    f->refused = f->stiff || f->sprung_at_worst_m > f->flatness_m;
}

/* aimless: a window that is shut needs no aim. */
static void find_window(hs_window_found *f, const hs_chain *chain, size_t index,
                        const hs_draws *draws, int aimless, hs_decide_work *work) {
    const hs_dimension *dimension = &chain->job->dimension[index];
    double q = chain->job->shop.confidence;
    hs_dimension_draws *d = &work->dimension[index];
    hs_limits finish = {dimension->size.lower_m, dimension->size.upper_m};
    const int ground[2] = {f->bad[0].ground, f->bad[1].ground};
    double *sorted = work->column[0];
    f->inside = hs_dimension_inside(chain->job, dimension);
    for (int k = 0; k < 2; k++) {
        f->need_m[k] = quantile_of(d->need_m[k], draws->n, q, sorted);
        f->may_m[k] = quantile_of(d->may_m[k], draws->n, 1 - q, sorted);
    }
    f->shape_typical_m = quantile_of(d->shape_m, draws->n, 0.5, sorted);
    f->shape_high_m = quantile_of(d->shape_m, draws->n, 0.95, sorted);
    if (f->grounds == 0)
        f->rough = hs_window_as_hardened(f->inside, finish, f->bad);
    else
        f->rough = hs_window_two(f->inside, finish, f->need_m, f->may_m, ground);
    f->verdict = hs_window_verdict(f->rough, 2 * chain->job->shop.rough_tolerance_m);
    judge_pulled(f, chain, index, draws->n, work);
    if (f->refused) f->verdict = HS_STOP;
    if (aimless && f->verdict == HS_STOP) return;
    hs_aim_find(f, chain, index, draws, work);
    if (f->refused) f->joint = 0;
    if (f->verdict == HS_GO && f->joint < q) f->verdict = HS_TIGHT;
}

/* Needs and mays of both faces go up and down together: their errors add. */
static double ends_error(const hs_dimension_draws *d, size_t n, double q, double *scratch) {
    double need_m = 0, may_m = 0;
    for (int k = 0; k < 2; k++) {
        need_m += hs_draws_error(d->need_m[k], n, q, scratch);
        may_m += hs_draws_error(d->may_m[k], n, 1 - q, scratch);
    }
    return fmax(need_m, may_m);
}

static void set_error(hs_window_found *f, const hs_chain *chain, size_t index,
                      const hs_draws *draws, hs_decide_work *work) {
    if (f->grounds > 0)
        f->error_m = ends_error(&work->dimension[index], draws->n, chain->job->shop.confidence,
                                work->column[0]);
}

/* Ground, and not shut by so much that no number of draws could open it. */
static int counts(const hs_window_found *f) {
    return f->verdict != HS_NONE && f->grounds > 0 &&
           f->rough.low_m - f->rough.high_m <= f->error_m;
}

double hs_decide_error(const hs_window_found *found, size_t dimensions) {
    double most_m = 0;
    for (size_t i = 0; i < dimensions; i++)
        if (counts(&found[i])) most_m = fmax(most_m, found[i].error_m);
    return most_m;
}

double hs_decide_error_asked_m(const hs_job *job) {
    return HS_K_PLAN_DOUBT_QUANTILE_SHARE * 2 * job->shop.rough_tolerance_m;
}

size_t hs_decide_draws(const hs_window_found *found, const hs_job *job, size_t n) {
    const double margin = 1.15, most = 2.5; /* the error found is itself known to a tenth or so */
    double ratio = hs_decide_error(found, job->dimensions) / hs_decide_error_asked_m(job);
    double wanted = margin * ratio * ratio * (double)n; /* errors fall with the root of n */
    if (ratio < 1) return n;
    wanted = fmin(wanted, most * (double)n);
    return wanted < HS_MAX_SAMPLES ? (size_t)ceil(wanted) : HS_MAX_SAMPLES;
}

static void draw_parts(hs_decide_work *work, const hs_chain *chain, const hs_draws *draws,
                       size_t from) {
    for (size_t i = from; i < draws->n; i++)
        work->part[i] = hs_chain_draw(chain, draws->z[i]);
}

void hs_decide_windows(hs_window_found *found, const hs_chain *chain, const hs_draws *draws,
                       double confidence, hs_decide_work *work) {
    hs_decide_more(found, chain, draws, 0, confidence, work);
}

void hs_decide_more(hs_window_found *found, const hs_chain *chain, const hs_draws *draws,
                    size_t from, double confidence, hs_decide_work *work) {
    const hs_job *job = chain->job;
    draw_parts(work, chain, draws, from);
    for (size_t i = 0; i < job->dimensions; i++) {
        const hs_dimension *d = &job->dimension[i];
        found[i] = (hs_window_found){.verdict = HS_NONE};
        if (job->face[d->face[0]].finish == HS_SOFT && job->face[d->face[1]].finish == HS_SOFT)
            continue; /* cut to size after the fire */
        draw_dimension(&work->dimension[i], chain, d, work->part, from, draws->n);
        find_bad_sides(&found[i], chain, d, draws, confidence, work);
        find_window(&found[i], chain, i, draws, 0, work);
        set_error(&found[i], chain, i, draws, work);
    }
}

/* Do the letters of before tell of the same faces? A remedy may have masked one. */
static int grinds_alike(const hs_window_found *f, const hs_job *job, const hs_dimension *d) {
    for (int k = 0; k < 2; k++)
        if (f->bad[k].ground != (job->face[d->face[k]].finish == HS_GROUND)) return 0;
    return 1;
}

void hs_decide_again(hs_window_found *found, const hs_window_found *before, const hs_chain *chain,
                     const hs_draws *draws, int all, hs_decide_work *work) {
    const hs_job *job = chain->job;
    double confidence = job->shop.confidence;
    draw_parts(work, chain, draws, 0);
    for (size_t i = 0; i < job->dimensions; i++) {
        int open = before[i].verdict == HS_GO;
        found[i] = before[i];
        if (before[i].verdict == HS_NONE || (open && !all)) continue;
        draw_dimension(&work->dimension[i], chain, &job->dimension[i], work->part, 0, draws->n);
        if (all || found[i].grounds == 0 || !grinds_alike(&found[i], job, &job->dimension[i]))
            find_bad_sides(&found[i], chain, &job->dimension[i], draws, confidence, work);
        find_window(&found[i], chain, i, draws, 1, work);
        if (all) set_error(&found[i], chain, i, draws, work);
    }
}

double hs_decide_joint(const hs_window_found *found, const hs_chain *chain, const hs_draws *draws,
                       hs_decide_work *work) {
    const hs_job *job = chain->job;
    size_t good = 0;
    for (size_t i = 0; i < draws->n; i++) {
        double worst = INFINITY;
        for (size_t k = 0; k < job->dimensions; k++) {
            if (found[k].verdict == HS_NONE) continue;
            double rough = found[k].aim_m + job->shop.rough_tolerance_m * draws->rough[i][k];
            worst = fmin(worst, hs_aim_slack(&found[k], &work->dimension[k],
                                             &job->dimension[k].size, rough, i));
        }
        work->margin_m[i] = worst;
        good += worst >= 0;
    }
    return (double)good / (double)draws->n;
}

hs_verdict hs_decide_part(const hs_window_found *found, size_t dimensions, double reached,
                          double confidence) {
    hs_verdict worst = HS_NONE;
    for (size_t i = 0; i < dimensions; i++)
        if (found[i].verdict > worst) worst = found[i].verdict;
    return worst == HS_GO && reached < confidence ? HS_TIGHT : worst;
}
