#include "plan/batch.h"

#include "constants.h"
#include "plan/aim.h"

#include <math.h>
#include <string.h>

/* Follow one box: parts 1 to most - 1 until one fails. */
static void follow(hs_batch_good good, void *of, size_t box, size_t most, hs_batch_work *work) {
    for (size_t part = 1; part < most; part++) {
        work->at_risk[part]++;
        if (good(of, box, part)) continue;
        work->failed[part]++;
        return;
    }
}

/* The product over the parts, and Greenwood's variance of its logarithm. */
static void multiply(hs_batch *out, size_t n, double *variance, const hs_batch_work *work) {
    double failures = 0, asked = 0;
    size_t part = 1;
    for (; part < n && part < HS_BATCH_PARTS && work->at_risk[part] > 0; part++) {
        double at_risk = work->at_risk[part], failed = work->failed[part];
        out->all *= 1 - failed / at_risk;
        if (failed < at_risk) *variance += failed / (at_risk * (at_risk - failed));
        failures += failed;
        asked += at_risk;
    }
    out->floor_only = part < n && out->all > 0;
    out->none_failed &= failures <= 0;
    /* N trials without a failure prove only p < 3/N, at 95 % */
    out->error = failures > 0 || part == 1 ? 0 : 3 * (double)(part - 1) / asked;
}

hs_batch hs_batch_of(hs_batch_good good, void *of, size_t boxes, size_t followed, size_t n,
                     hs_batch_work *work) {
    const double bound_95 = 1.96;
    size_t first = 0, most = n < HS_BATCH_PARTS ? n : HS_BATCH_PARTS;
    memset(work, 0, sizeof *work);
    for (size_t box = 0; box < boxes; box++) {
        if (!good(of, box, 0)) continue;
        first++;
        if (box >= followed) continue;
        double turns = (double)followed / (double)(box + 1);
        follow(good, of, box, (size_t)fmin(turns * turns + 1, (double)most), work);
    }
    double one = (double)first / (double)boxes, variance = 0;
    hs_batch out = {.one = one, .all = one, .none_failed = first == boxes};
    multiply(&out, n, &variance, work);
    if (first > 0) variance += (1 - one) / (double)first;
    double floor = pow(one, (double)n);
    if (out.floor_only || out.all < floor) out.all = floor;
    out.error = out.all * hypot(out.error, bound_95 * sqrt(variance));
    return out;
}

/* The box at hand, and what is alike in it. */
typedef struct box {
    const hs_window_found *found;
    const hs_chain *chain;
    const hs_draws *draws;
    const hs_decide_work *work;
    size_t opened; /* whose `alike` stands here; draws->n: none */
    hs_face_draw alike[HS_MAX_DIMENSIONS][2];
} box;

static void open_box(box *b, size_t index) {
    const hs_job *job = b->chain->job;
    for (size_t i = 0; i < job->dimensions; i++)
        for (int k = 0; k < 2 && b->found[i].verdict != HS_NONE; k++)
            b->alike[i][k] = k == 1 && job->dimension[i].face[1] == job->dimension[i].face[0]
                                 ? b->alike[i][0]
                                 : hs_chain_face_draw(b->chain, job->dimension[i].face[k],
                                                      &b->work->part[index]);
    b->opened = index;
}

static double slack_of(const box *b, size_t i, const hs_part_draw *part, double place) {
    const hs_chain *chain = b->chain;
    const hs_dimension *d = &chain->job->dimension[i];
    double growth_m = hs_warp_growth(&chain->warp, chain->job, d, part->z);
    double shape_m =
        hs_warp_shape(&chain->warp, chain->job, d, part->bow_x_m, part->bow_y_m, part->z);
    double need_m[2], may_m[2];
    for (int k = 0; k < 2; k++) {
        hs_trial t = hs_chain_trial_of(chain, d->face[k], &b->alike[i][k], growth_m, part);
        need_m[k] = hs_face_need(&t.sum, shape_m);
        may_m[k] = hs_face_may(&t.sum, shape_m);
    }
    return hs_aim_room(&b->found[i], need_m, may_m, &d->size,
                       b->found[i].aim_m + place * chain->job->shop.rough_tolerance_m);
}

static int good_part(void *of, size_t index, size_t part) {
    box *b = of;
    double z[HS_INPUTS], rough[HS_MAX_DIMENSIONS];
    if (part == 0) return b->work->margin_m[index] >= 0;
    if (b->opened != index) open_box(b, index);
    memcpy(z, b->draws->z[index], sizeof z);
    hs_draws_own(z, rough, b->draws->seed, index, part);
    hs_part_draw draw = b->work->part[index];
    hs_chain_draw_own(&draw, b->chain, z);
    for (size_t i = 0; i < b->chain->job->dimensions; i++)
        if (b->found[i].verdict != HS_NONE && !(slack_of(b, i, &draw, rough[i]) >= 0)) return 0;
    return 1;
}

hs_batch hs_batch_find(const hs_window_found *found, const hs_chain *chain, const hs_draws *draws,
                       const hs_decide_work *work, hs_batch_work *scratch) {
    box b = {.found = found, .chain = chain, .draws = draws, .work = work, .opened = draws->n};
    return hs_batch_of(good_part, &b, draws->n, (size_t)HS_K_PLAN_DOUBT_BATCH_BOXES,
                       chain->job->part.quantity, scratch);
}
