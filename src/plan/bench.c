#include "plan/bench.h"

#include "constants.h"
#include "plan/chain.h"
#include "plan/chuck.h"
#include "plan/warp.h"

#include <math.h>
#include <string.h>

static int holds(hs_shape_limits limit, double shape_m) {
    double v = shape_m - HS_BENCH_NOISE_M;
    return limit.clean_m >= v && limit.case_m >= v && limit.face_m >= v;
}

double hs_bench_deep(hs_shape_limits limit) {
    int one_face = limit.face_m < limit.clean_m && limit.face_m < limit.case_m;
    return one_face ? limit.face_m : limit.case_m;
}

hs_wheel hs_bench_judge(hs_bench *b) {
    int ok[2];
    for (int k = 0; k < 2; k++) {
        b->limit[k] = hs_window_shape_limits(b->bore, b->finish, b->size[k], b->face[k]);
        ok[k] = holds(b->limit[k], b->shape_m[k]) && !(b->bow_m[k] > b->bow_most_m);
    }
    if (!ok[0]) return HS_WHEEL_NO;
    return ok[1] ? HS_WHEEL_GRIND : HS_WHEEL_CARE;
}

/* Bow over the whole length; it goes with the square of the length. */
static double whole_bow(const hs_job *job, const hs_measured_dimension *m) {
    double share = m->over_m > 0 ? job->part.length_m / m->over_m : 1;
    return fabs(m->bow_m) * share * share;
}

double hs_bench_size(const hs_job *job, size_t dimension) {
    const hs_measured_dimension *m = &job->measured.dimension[dimension];
    return m->how == HS_OVER_THE_BOW ? m->size_m - whole_bow(job, m) : m->size_m;
}

static double measured_shape(const hs_job *job, size_t i) {
    const hs_measured_dimension *m = &job->measured.dimension[i];
    switch (job->dimension[i].across) {
    case HS_ACROSS_FACES:
        if (hs_dimension_pulled(job, &job->dimension[i])) return hs_shape_flat(0, m->corner_lift_m);
        /* a plate's ends run out instead of bowing */
        return fmax(hs_shape_flat(whole_bow(job, m), m->corner_lift_m),
                    hs_shape_set_by_other(m->run_out_m));
    case HS_ACROSS_ENDS:
        return hs_shape_set_by_other(m->run_out_m);
    default: /* run-out as it will be held is V itself, on centres or set by the other wall */
        return fmax(hs_shape_set_by_other(m->run_out_m), hs_shape_ring(m->ovality_m));
    }
}

/* In the middle (k 0) or at its bad side (k 1). */
static hs_face_sum face_at(const hs_job *job, const hs_measured_face *f, size_t face,
                           double split_m, int k) {
    double case_m = k ? f->case_low_m : f->case_m, hard_to_m = k ? f->hard_to_low_m : f->hard_to_m;
    double budget_m = case_m - job->face[face].case_m;
    if (f->free_m > 0) budget_m = hard_to_m = f->free_m;
    return (hs_face_sum){.ground = job->face[face].finish == HS_GROUND,
                         .clean_up_m = k ? f->clean_up_high_m : f->clean_up_m,
                         .budget_m = hard_to_m < budget_m ? hard_to_m : budget_m,
                         .split_m = split_m};
}

static void set_faces(hs_bench *b, const hs_job *job, size_t i, const hs_measured_face *face,
                      double split_m) {
    for (int k = 0; k < 2; k++)
        for (int f = 0; f < 2; f++) {
            size_t index = job->dimension[i].face[f];
            b->face[k][f] = face_at(job, &face[index], index, split_m, k);
        }
}

/* Pulled flat, the bow is not under the wheel but comes back. */
static void set_pulled(hs_bench *b, const hs_job *job, size_t i, const hs_measured_input *in) {
    const hs_dimension *d = &job->dimension[i];
    const hs_measured_dimension *m = &job->measured.dimension[i];
    double bow_m = m->shape_given ? whole_bow(job, m) : in->sprung_m[i];
    b->bow_most_m = INFINITY;
    if (!hs_dimension_pulled(job, d)) return;
    b->bow_m[0] = bow_m;
    b->bow_m[1] = m->shape_given
                      ? bow_m + fmax(HS_K_MEASURED_DOUBT_BOW, HS_K_MEASURED_DOUBT_BOW_SHARE * bow_m)
                      : in->sprung_high_m[i];
    for (int f = 0; f < 2; f++)
        if (job->face[d->face[f]].finish == HS_GROUND)
            b->bow_most_m = fmin(b->bow_most_m, job->face[d->face[f]].flatness_m);
    b->bow_most_m = fmin(b->bow_most_m, hs_chuck_flattens_m(job, d, b->size[0].low_m));
}

void hs_bench_make(hs_bench *b, const hs_job *job, size_t i, const hs_measured_input *in) {
    const hs_dimension *d = &job->dimension[i];
    const hs_measured_dimension *m = &job->measured.dimension[i];
    double size_m = hs_bench_size(job, i), doubt_m = HS_K_MEASURED_DOUBT_SIZE;
    memset(b, 0, sizeof *b);
    b->bore = hs_dimension_inside(job, d);
    b->finish = (hs_limits){d->size.lower_m, d->size.upper_m};
    b->size[0] = (hs_limits){size_m, size_m};
    b->size[1] = (hs_limits){size_m - doubt_m, size_m + doubt_m};
    b->shape_m[0] = m->shape_given ? measured_shape(job, i) : in->shape_m[i];
    double rough = fmax(HS_K_MEASURED_DOUBT_BOW, HS_K_MEASURED_DOUBT_BOW_SHARE * b->shape_m[0]);
    b->shape_m[1] = m->shape_given ? b->shape_m[0] + rough : in->shape_high_m[i];
    set_pulled(b, job, i, in);
    set_faces(b, job, i, in->face, in->split_m[i]);
}

void hs_bench_second(hs_bench *b, const hs_bench *now, const hs_job *job, size_t i,
                     const hs_measured_input *in, const hs_second *second) {
    double outwards = now->bore ? -1 : 1;
    double moved_m = outwards * 2 * (second->growth_m[i] - second->lost_m);
    double doubt_m = 2 * (second->growth_bound_m[i] + second->lost_high_m - second->lost_m);
    *b = *now;
    for (int k = 0; k < 2; k++) {
        b->size[k].low_m += moved_m - k * doubt_m;
        b->size[k].high_m += moved_m + k * doubt_m;
        b->shape_m[k] = k ? second->shape_high_m[i] : second->shape_m[i];
        if (isfinite(now->bow_most_m)) b->bow_m[k] = k ? in->sprung_high_m[i] : in->sprung_m[i];
    }
    set_faces(b, job, i, second->face, in->split_m[i]);
}

int hs_bench_too_deep(const hs_bench *b) {
    return b->shape_m[0] - hs_bench_deep(b->limit[0]) > 0;
}
