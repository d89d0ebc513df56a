#include "plan/measured.h"

#include "base/text.h"
#include "constants.h"
#include "plan/words.h"

#include <math.h>
#include <string.h>

/* Lengths of a few digits, summed: equal to this. */
static const double NOISE_M = 1e-12;

static int holds(hs_shape_limits limit, double shape_m) {
    double v = shape_m - NOISE_M;
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
        ok[k] = holds(b->limit[k], b->shape_m[k]);
    }
    if (!ok[0]) return HS_WHEEL_NO;
    return ok[1] ? HS_WHEEL_GRIND : HS_WHEEL_CARE;
}

/* Bow over the whole length; it goes with the square of the length. */
static double whole_bow(const hs_job *job, const hs_measured_dimension *m) {
    double share = m->over_m > 0 ? job->part.length_m / m->over_m : 1;
    return fabs(m->bow_m) * share * share;
}

static double measured_shape(const hs_job *job, size_t i) {
    const hs_measured_dimension *m = &job->measured.dimension[i];
    switch (job->dimension[i].across) {
    case HS_ACROSS_FACES:
        return hs_shape_flat(whole_bow(job, m), m->corner_lift_m);
    case HS_ACROSS_ENDS:
        return hs_shape_set_by_other(m->run_out_m);
    default: /* run-out as it will be held is V itself, on centres or set by the other wall */
        return fmax(hs_shape_set_by_other(m->run_out_m), hs_shape_ring(m->ovality_m));
    }
}

/* By how much the case was found deeper than computed, and with what doubt (0: not measured). */
static double case_shift(double *doubt_m, const hs_measured *m, const hs_measured_input *in) {
    *doubt_m = 0;
    if (!(m->case_m > 0) || !(in->case_there_m > 0)) return 0;
    *doubt_m = m->on_part ? HS_K_MEASURED_DOUBT_CASE_ON_PART : HS_K_MEASURED_DOUBT_CASE_TEST_PIECE;
    return m->case_m - in->case_there_m;
}

/* Case of a face from the hardened surface, in the middle (k 0) or at its bad side (k 1). */
static double case_of(const hs_job *job, const hs_measured_input *in, size_t face, int k) {
    double doubt_m, shift_m = case_shift(&doubt_m, &job->measured, in);
    const hs_measured_face *f = &in->face[face];
    if (doubt_m > 0) return f->case_m + shift_m - (k ? doubt_m : 0);
    return k ? f->case_low_m : f->case_m;
}

static hs_face_sum face_at(const hs_job *job, const hs_measured_input *in, size_t dimension,
                           size_t face, int k) {
    double doubt_m, shift_m = case_shift(&doubt_m, &job->measured, in);
    const hs_measured_face *f = &in->face[face];
    double hard_to_m = k && !(doubt_m > 0) ? f->hard_to_low_m : f->hard_to_m;
    hard_to_m += shift_m - (k ? doubt_m : 0);
    double budget_m = case_of(job, in, face, k) - job->face[face].case_m;
    return (hs_face_sum){.ground = job->face[face].finish == HS_GROUND,
                         .clean_up_m = k ? f->clean_up_high_m : f->clean_up_m,
                         .budget_m = hard_to_m < budget_m ? hard_to_m : budget_m,
                         .split_m = in->split_m[dimension]};
}

static void set_bench(hs_bench *b, const hs_job *job, size_t i, const hs_measured_input *in) {
    const hs_dimension *d = &job->dimension[i];
    const hs_measured_dimension *m = &job->measured.dimension[i];
    double size_m = m->size_m, doubt_m = HS_K_MEASURED_DOUBT_SIZE;
    if (m->how == HS_OVER_THE_BOW) size_m -= whole_bow(job, m);
    memset(b, 0, sizeof *b);
    b->bore = d->across == HS_ACROSS_BORE;
    b->finish = (hs_limits){d->size.lower_m, d->size.upper_m};
    b->size[0] = (hs_limits){size_m, size_m};
    b->size[1] = (hs_limits){size_m - doubt_m, size_m + doubt_m};
    b->shape_m[0] = m->shape_given ? measured_shape(job, i) : in->shape_m[i];
    double rough = fmax(HS_K_MEASURED_DOUBT_BOW, HS_K_MEASURED_DOUBT_BOW_SHARE * b->shape_m[0]);
    b->shape_m[1] = m->shape_given ? b->shape_m[0] + rough : in->shape_high_m[i];
    for (int k = 0; k < 2; k++)
        for (int f = 0; f < 2; f++)
            b->face[k][f] = face_at(job, in, i, d->face[f], k);
}

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
        left = fmin(left, case_of(job, in, index, 0) - hs_face_deepest(&face[f], v, z));
    }
    int inch = job->inch_first;
    out->removal_min_m = hs_window_round(low, inch, HS_DOWN);
    out->removal_max_m = hs_window_round(high, inch, HS_UP);
    out->case_left_min_m = hs_window_round(left, inch, HS_DOWN);
}

/* Where to turn a flat over; NaN when nothing is turned. */
static double turn_at(const hs_bench *b, const hs_job *job, size_t i) {
    const hs_dimension *d = &job->dimension[i];
    const hs_face_sum *face = b->face[0];
    if (d->across != HS_ACROSS_FACES || !face[0].ground || !face[1].ground) return NAN;
    int crown_second = job->measured.dimension[i].crown == (int)d->face[1];
    double total_m = b->size[0].low_m - (b->finish.low_m + b->finish.high_m) / 2;
    double first_m = hs_window_share(total_m, face, b->shape_m[0]);
    if (crown_second) first_m = total_m - first_m;
    return hs_window_turn_at(b->size[0].low_m, first_m, b->shape_m[0]);
}

static void add_term(hs_result_measured_dimension *out, const char *term, double value_m) {
    if (out->terms >= HS_MAX_TERMS) return;
    hs_term *t = &out->because[out->terms++];
    hs_text text = hs_text_start(t->term, sizeof t->term);
    hs_text_add(&text, "%s", term);
    t->value_m = value_m;
}

/* The sum behind the clean-up limit; it adds up to that limit before rounding. */
static void set_terms(hs_result_measured_dimension *out, const hs_bench *b) {
    int grounds = b->face[0][0].ground + b->face[0][1].ground;
    double clean_m = 0, split_m = 0, stock_m = b->size[0].low_m - b->finish.high_m;
    if (b->bore) stock_m = b->finish.low_m - b->size[0].low_m;
    for (int f = 0; f < 2; f++) {
        clean_m += b->face[0][f].ground ? b->face[0][f].clean_up_m : 0;
        split_m += b->face[0][f].ground ? b->face[0][f].split_m : 0;
    }
    double share = grounds > 0 ? 2.0 / grounds : 0;
    add_term(out, "stock left after hardening, over the size", stock_m * share);
    add_term(out, "clean-up of the ground faces", -clean_m * share);
    add_term(out, "split and set-up", -split_m * share);
}

static void set_stop_if(hs_result_measured_dimension *out, const hs_job *job, size_t i) {
    static const char *const why[2] = {"the lowest spot would not clean up",
                                       "the wheel would go too deep into the case"};
    double limit_m[2] = {out->limit_clean_m, out->limit_case_m};
    for (int k = 0; k < 2; k++) {
        double reading_m;
        const char *word = hs_word_shape(&reading_m, job, i, limit_m[k]);
        hs_text text = hs_text_start(out->stop_if[k], sizeof out->stop_if[k]);
        if (!(limit_m[k] > 0))
            hs_text_add(&text, "STOP at any shape: %s.", why[k]);
        else if (isfinite(limit_m[k]))
            hs_text_add(&text, "STOP IF %s more than %s: %s.", word,
                        hs_word_length(reading_m, job->inch_first, HS_DOWN).text, why[k]);
    }
}

static void set_note(hs_result_measured_dimension *out, const hs_bench *b, const hs_job *job,
                     size_t i, int case_used) {
    hs_text text = hs_text_start(out->note, sizeof out->note);
    double v = b->shape_m[0] - NOISE_M;
    double clean_m = v - b->limit[0].clean_m;
    double deep_m = v - hs_bench_deep(b->limit[0]);
    if (clean_m > 0)
        hs_text_add(&text, "Does not clean up: %s of shape too much. ",
                    hs_word_length(clean_m, job->inch_first, HS_UP).text);
    if (deep_m > 0)
        hs_text_add(&text, "Goes too deep into the case: %s of shape too much. ",
                    hs_word_length(deep_m, job->inch_first, HS_UP).text);
    if (!job->measured.dimension[i].shape_given)
        hs_text_add(&text, "Shape not measured: the computed one is used. ");
    if (!case_used) hs_text_add(&text, "Case not measured: the computed one is used.");
}

/* A surface that reads soft: no wheel helps, unless a soft rim lies over hard case. */
static void mind_hardness(hs_result_measured_dimension *out, const hs_job *job, size_t i,
                          const hs_measured_input *in) {
    const hs_measured *m = &job->measured;
    double asked = 0, rim_m = 0, middle = (m->hardness_low_HV + m->hardness_high_HV) / 2;
    if (!(m->hardness_high_HV > 0)) return;
    for (int f = 0; f < 2; f++) {
        size_t index = job->dimension[i].face[f];
        if (job->face[index].finish != HS_GROUND) continue;
        asked = fmax(asked, job->face[index].hardness_HV);
        rim_m = fmax(rim_m, in->face[index].soft_rim_m);
    }
    if (m->hardness_low_HV >= asked) return;
    int rim = rim_m >= HS_K_MEASURED_DOUBT_RIM_SHOWS;
    hs_wheel worst = middle < asked && !rim ? HS_WHEEL_NO : HS_WHEEL_CARE;
    if (worst > out->verdict) out->verdict = worst;
    hs_text text = hs_text_start(out->note, sizeof out->note);
    if (rim)
        hs_text_add(&text,
                    "Reads softer than asked; a soft rim of %s may be the cause: clean a "
                    "spot that deep and try again before grinding.",
                    hs_word_length(rim_m, job->inch_first, HS_UP).text);
    else
        hs_text_add(&text, "Reads softer than asked, and grinding makes no steel harder: try "
                           "other spots; if it is so, harden again.");
}

static void judge_dimension(hs_result_measured_dimension *out, const hs_job *job, size_t i,
                            const hs_measured_input *in) {
    int inch = job->inch_first;
    hs_bench bench;
    set_bench(&bench, job, i, in);
    out->verdict = hs_bench_judge(&bench);
    out->size_m = bench.size[0].low_m;
    out->shape_m = bench.shape_m[0];
    double deep_m = hs_bench_deep(bench.limit[0]);
    out->limit_clean_m = hs_window_round(bench.limit[0].clean_m, inch, HS_DOWN);
    out->limit_case_m = hs_window_round(deep_m, inch, HS_DOWN);
    out->turn_at_m = hs_window_round(turn_at(&bench, job, i), inch, HS_NEAREST);
    set_removal(out, &bench, job, in, i);
    set_terms(out, &bench);
    set_stop_if(out, job, i);
    double doubt_m;
    (void)case_shift(&doubt_m, &job->measured, in);
    set_note(out, &bench, job, i, doubt_m > 0);
    if (out->verdict != HS_WHEEL_GRIND) hs_measured_remedies(out, &bench, job, i, in);
    mind_hardness(out, job, i, in);
}

static int any_ground(const hs_job *job, size_t i) {
    const size_t *face = job->dimension[i].face;
    return job->face[face[0]].finish == HS_GROUND || job->face[face[1]].finish == HS_GROUND;
}

void hs_measured_judge(hs_result_measured *out, const hs_job *job, const hs_measured_input *in) {
    memset(out, 0, sizeof *out);
    out->case_m = out->case_low_m = INFINITY;
    for (size_t i = 0; i < job->dimensions && i < HS_MAX_DIMENSIONS; i++) {
        const hs_measured_dimension *m = &job->measured.dimension[i];
        hs_result_measured_dimension *d = &out->dimension[i];
        if (!m->size_given && !m->shape_given) continue;
        d->present = 1;
        hs_text text = hs_text_start(d->note, sizeof d->note);
        d->turn_at_m = NAN;
        if (!m->size_given || !any_ground(job, i)) {
            hs_text_add(&text, m->size_given ? "No face of it is ground."
                                             : "No size measured: compare the shape with the "
                                               "plan's shape limit.");
            continue;
        }
        judge_dimension(d, job, i, in);
        if (d->verdict > out->verdict) out->verdict = d->verdict;
        for (int f = 0; f < 2; f++) {
            size_t face = job->dimension[i].face[f];
            if (job->face[face].finish != HS_GROUND) continue;
            out->case_m = fmin(out->case_m, case_of(job, in, face, 0));
            out->case_low_m = fmin(out->case_low_m, case_of(job, in, face, 1));
        }
    }
    if (!isfinite(out->case_m)) out->case_m = out->case_low_m = NAN;
}
