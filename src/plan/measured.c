#include "plan/measured.h"

#include "base/text.h"
#include "plan/chain.h"
#include "plan/measured_remedy.h"
#include "plan/measured_say.h"

#include <math.h>
#include <string.h>

/* Removal and case left at the worst spots, sizes and shape in the middle. */
static void set_removal(hs_result_measured_dimension *out, const hs_bench *b, const hs_job *job,
                        const hs_measured_input *in, size_t i) {
    const hs_face_sum *face = b->face[0];
    double sign = b->bore ? -1 : 1, v = b->shape_m[0];
    double least_m = sign * (b->size[0].low_m - (b->bore ? b->finish.low_m : b->finish.high_m));
    double most_m = sign * (b->size[0].low_m - (b->bore ? b->finish.high_m : b->finish.low_m));
    double first[2] = {hs_window_share(least_m, face, v), hs_window_share(most_m, face, v)};
    double low = INFINITY, high = -INFINITY, left = INFINITY;
    for (int f = 0; f < 2; f++) {
        if (!face[f].ground) continue;
        double a = f ? least_m - first[0] : first[0], z = f ? most_m - first[1] : first[1];
        size_t index = job->dimension[i].face[f];
        low = fmin(low, hs_face_least_removal(&face[f], v, a));
        high = fmax(high, hs_face_most_removal(&face[f], v, z));
        if (hs_face_asks(&job->face[index]))
            left = fmin(left, in->face[index].case_m - hs_face_deepest(&face[f], v, z));
    }
    int inch = job->inch_first;
    out->removal_min_m = hs_window_round(low, inch, HS_DOWN);
    out->removal_max_m = hs_window_round(high, inch, HS_UP);
    out->case_left_min_m = isfinite(left) ? hs_window_round(left, inch, HS_DOWN) : NAN;
}

/* Where to turn a flat over; NaN when nothing is turned. */
static double turn_at(const hs_bench *b, const hs_job *job, size_t i) {
    const hs_dimension *d = &job->dimension[i];
    const hs_face_sum *face = b->face[0];
    if (d->across != HS_ACROSS_FACES || b->bore || !face[0].ground || !face[1].ground) return NAN;
    int crown_second = job->measured.dimension[i].crown == (int)d->face[1];
    double total_m = b->size[0].low_m - (b->finish.low_m + b->finish.high_m) / 2;
    double first_m = hs_window_share(total_m, face, b->shape_m[0]);
    if (crown_second) first_m = total_m - first_m;
    return hs_window_turn_at(b->size[0].low_m, first_m, b->shape_m[0]);
}

static void judge_dimension(hs_result_measured_dimension *out, const hs_job *job, size_t i,
                            const hs_measured_input *in) {
    int inch = job->inch_first;
    hs_bench bench;
    hs_bench_make(&bench, job, i, in);
    out->verdict = hs_bench_judge(&bench);
    out->fits = out->verdict != HS_WHEEL_NO;
    out->size_m = bench.size[0].low_m;
    out->shape_m = bench.shape_m[0];
    double deep_m = hs_bench_deep(bench.limit[0]);
    out->limit_clean_m = hs_window_round(bench.limit[0].clean_m, inch, HS_DOWN);
    out->limit_case_m = hs_window_round(deep_m, inch, HS_DOWN);
    out->shape_high_m = bench.shape_m[1];
    out->limit_clean_low_m = hs_window_round(bench.limit[1].clean_m, inch, HS_DOWN);
    out->limit_case_low_m = hs_window_round(hs_bench_deep(bench.limit[1]), inch, HS_DOWN);
    if (out->verdict != HS_WHEEL_NO)
        out->turn_at_m = hs_window_round(turn_at(&bench, job, i), inch, HS_NEAREST);
    set_removal(out, &bench, job, in, i);
    if (out->verdict != HS_WHEEL_GRIND) hs_measured_remedies(out, &bench, job, i, in);
    if (out->verdict == HS_WHEEL_GRIND && !job->measured.dimension[i].shape_given)
        out->verdict = HS_WHEEL_CARE; /* nobody has looked at what decides most */
    hs_measured_say(out, &bench, job, i, in);
}

void hs_measured_judge(hs_result_measured *out, const hs_job *job, const hs_measured_input *in) {
    memset(out, 0, sizeof *out);
    out->case_m = out->case_low_m = INFINITY;
    for (size_t i = 0; i < job->dimensions && i < HS_MAX_DIMENSIONS; i++) {
        const hs_measured_dimension *m = &job->measured.dimension[i];
        hs_result_measured_dimension *d = &out->dimension[i];
        int hardness = job->measured.hardness_high_HV > 0 && hs_dimension_ground(job, i);
        if (!m->size_given && !m->shape_given && !hardness) continue;
        d->present = 1;
        hs_text text = hs_text_start(d->note, sizeof d->note);
        d->turn_at_m = NAN;
        if (!m->size_given || !hs_dimension_ground(job, i)) {
            hs_text_add(&text, m->size_given    ? "No face of it is ground."
                               : m->shape_given ? "No size measured: compare the shape with the "
                                                  "plan's shape limit."
                                                : "No size measured.");
            if (hs_dimension_ground(job, i)) hs_measured_soft(d, job, i, in);
            if (d->verdict > out->verdict) out->verdict = d->verdict;
            continue;
        }
        judge_dimension(d, job, i, in);
        if (d->verdict > out->verdict) out->verdict = d->verdict;
        for (int f = 0; f < 2; f++) {
            size_t face = job->dimension[i].face[f];
            if (job->face[face].finish != HS_GROUND) continue;
            out->case_m = fmin(out->case_m, in->face[face].case_m);
            out->case_low_m = fmin(out->case_low_m, in->face[face].case_low_m);
        }
    }
    if (!isfinite(out->case_m)) out->case_m = out->case_low_m = NAN;
}
