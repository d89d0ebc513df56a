/* What would help a part that came out of the tank too warped or too thin in the case: each way is
 * judged again with the same sums. */
#include "plan/measured.h"

#include "base/text.h"
#include "constants.h"
#include "plan/words.h"

#include <math.h>

static hs_verdict as_verdict(hs_wheel wheel) {
    return wheel == HS_WHEEL_GRIND ? HS_GO : wheel == HS_WHEEL_CARE ? HS_TIGHT : HS_STOP;
}

/* How much room is left before the nearest limit, in the middle; negative when it fails. */
static double room(const hs_bench *b) {
    hs_shape_limits l = b->limit[0];
    return fmin(fmin(l.clean_m, l.case_m), l.face_m) - b->shape_m[0];
}

/* Judge the changed bench and keep the way if it gains anything. Gain per side. */
static hs_remedy *keep(hs_result_measured_dimension *out, hs_bench *changed, const hs_bench *before,
                       const char *what) {
    hs_wheel wheel = hs_bench_judge(changed);
    double gain_m = (room(changed) - room(before)) / 2;
    if (out->remedies >= HS_MAX_REMEDIES || !(gain_m > 0)) return NULL;
    hs_remedy *r = &out->remedy[out->remedies++];
    hs_text text = hs_text_start(r->what, sizeof r->what);
    hs_text_add(&text, "%s", what);
    r->text[0] = '\0';
    r->gain_m = gain_m;
    r->verdict = as_verdict(wheel);
    return r;
}

static void say(hs_remedy *r, const char *a, hs_word word, const char *b) {
    hs_text text = hs_text_start(r->text, sizeof r->text);
    hs_text_add(&text, "%s%s%s", a, word.text, b);
}

static int cleans(const hs_bench *b) {
    return b->limit[0].clean_m >= b->shape_m[0];
}

static void other_end(hs_result_measured_dimension *out, const hs_bench *b, int inch) {
    hs_bench c = *b;
    double part_m = HS_K_MEASURED_DOUBT_AIM_SHARE * (b->finish.high_m - b->finish.low_m);
    int to_low = cleans(b) == b->bore; /* not clean: grind on; too deep: stop earlier */
    if (to_low)
        c.finish.high_m = c.finish.low_m + part_m;
    else
        c.finish.low_m = c.finish.high_m - part_m;
    hs_remedy *r = keep(out, &c, b, "finish to the other end of the tolerance");
    double end_m = to_low ? c.finish.high_m : c.finish.low_m;
    if (r)
        say(r, to_low ? "Finish at or below " : "Finish at or above ",
            hs_word_length(end_m, inch, to_low ? HS_DOWN : HS_UP), ", still inside the tolerance.");
}

static void remake_centres(hs_result_measured_dimension *out, const hs_bench *b, const hs_job *job,
                           size_t i) {
    if (job->part.form != HS_BAR || job->part.held != HS_OLD_CENTRES) return;
    if (job->dimension[i].across != HS_ACROSS_OUTSIDE) return;
    hs_bench c = *b;
    for (int k = 0; k < 2; k++)
        c.shape_m[k] /= 2;
    hs_remedy *r = keep(out, &c, b, "remake the centres to halve the run-out");
    if (r)
        say(r, "Set the bar so that middle and ends run out alike and grind new centres: run-out ",
            hs_word_length(c.shape_m[0], job->inch_first, HS_UP), ".");
}

/* A patch that may stay black or soft at the lowest spot: the shape is a parabola over the length,
 * so the spot is as long as the root of what is missing. */
static void leave_patch(hs_result_measured_dimension *out, const hs_bench *b, const hs_job *job,
                        size_t i) {
    double over_m = b->shape_m[0] - b->limit[0].clean_m;
    hs_across across = job->dimension[i].across;
    int chuck = job->part.form == HS_BAR && job->part.held == HS_CHUCK;
    if (cleans(b) || chuck || across == HS_ACROSS_ENDS || job->part.form == HS_RING) return;
    double one_side_m = over_m / 2; /* by which each ground side falls short at its lowest */
    double deep_m = across == HS_ACROSS_FACES ? b->shape_m[0] : b->shape_m[0] / 2;
    if (one_side_m >= deep_m || b->limit[0].clean_m < 0) return;
    hs_bench c = *b;
    for (int k = 0; k < 2; k++)
        for (int f = 0; f < 2; f++)
            c.face[k][f].clean_up_m -= one_side_m + 1e-9;
    hs_remedy *r = keep(out, &c, b, "let a patch stay black or soft");
    if (!r) return;
    if (r->verdict == HS_GO) r->verdict = HS_TIGHT; /* it is not what the drawing asks */
    say(r, "If the drawing's owner agrees: middle of the hollow side, up to about ",
        hs_word_about(job->part.length_m * sqrt(one_side_m / deep_m), job->inch_first), " long.");
}

static double last_temper_K(const hs_job *job) {
    double temp_K = 0;
    for (size_t i = 0; i < job->steps; i++)
        if (job->step[i].kind == HS_TEMPER) temp_K = job->step[i].temp_K.value;
    return temp_K;
}

static void straighten(hs_result_measured_dimension *out, const hs_bench *b, const hs_job *job,
                       size_t i) {
    double left_m = fmin(fmin(b->limit[1].clean_m, b->limit[1].case_m), b->limit[1].face_m);
    /* it is measured again, with the same doubt */
    left_m = fmin(left_m - HS_K_MEASURED_DOUBT_BOW, left_m / (1 + HS_K_MEASURED_DOUBT_BOW_SHARE));
    if (job->part.form == HS_RING || !(left_m > 0) || left_m >= b->shape_m[0]) return;
    hs_bench c = *b;
    c.shape_m[0] = left_m;
    c.shape_m[1] = left_m + fmax(HS_K_MEASURED_DOUBT_BOW, HS_K_MEASURED_DOUBT_BOW_SHARE * left_m);
    hs_remedy *r = keep(out, &c, b, "straighten warm and temper again");
    double temp_K = last_temper_K(job);
    hs_word below = temp_K > 0 ? hs_word_temp(temp_K, job->inch_first) : (hs_word){"the temper"};
    const char *what = job->dimension[i].across == HS_ACROSS_FACES ? "bow" : "run-out";
    if (!r) return;
    hs_text text = hs_text_start(r->text, sizeof r->text);
    hs_text_add(&text,
                "Warm, below %s, to a %s of %s or less, then temper again. A hard case can crack: "
                "press slowly, stand clear, look for cracks.",
                below.text, what, hs_word_length(left_m, job->inch_first, HS_DOWN).text);
}

static void case_again(hs_result_measured_dimension *out, const hs_bench *b, const hs_job *job,
                       size_t i, const hs_measured_input *in) {
    double deep_m = b->shape_m[0] - hs_bench_deep(b->limit[0]);
    double worse_m = b->shape_m[1] - hs_bench_deep(b->limit[1]);
    double more_m = fmax(deep_m, worse_m) / 2;
    if (!(deep_m > 0)) return;
    hs_bench c = *b;
    double sign = b->bore ? 1 : -1;
    /* a new bow may take more than the old one did */
    more_m += fmax(0, in->shape_high_m[i] - b->shape_m[1]) / 2 + in->lost_m;
    for (int k = 0; k < 2; k++) {
        c.shape_m[k] = k ? in->shape_high_m[i] : in->shape_m[i];
        c.size[k].low_m += sign * 2 * in->lost_m;
        c.size[k].high_m += sign * 2 * in->lost_m;
        for (int f = 0; f < 2; f++)
            c.face[k][f].budget_m += more_m;
    }
    hs_remedy *r = keep(out, &c, b, "case and harden again");
    if (!r) return;
    hs_text text = hs_text_start(r->text, sizeof r->text);
    hs_text_add(&text,
                "Case deeper by %s; the new hardening brings its own shape, up to %s, and "
                "takes %s a side as scale.",
                hs_word_length(more_m, job->inch_first, HS_UP).text,
                hs_word_length(in->shape_high_m[i], job->inch_first, HS_UP).text,
                hs_word_length(in->lost_m, job->inch_first, HS_UP).text);
}

/* Any finished size that this part, as it lies there, still holds with the doubt against us. */
static void other_size(hs_result_measured_dimension *out, const hs_bench *b, int inch) {
    const hs_face_sum *f = b->face[1];
    double need = hs_face_need(&f[0], b->shape_m[1]) + hs_face_need(&f[1], b->shape_m[1]);
    double may = hs_face_may(&f[0], b->shape_m[1]) + hs_face_may(&f[1], b->shape_m[1]);
    hs_limits size = b->size[1];
    hs_limits ok = {size.high_m - may, size.low_m - need};
    if (b->bore) ok = (hs_limits){size.high_m + need, size.low_m + may};
    double middle_m = (ok.low_m + ok.high_m) / 2;
    if (!(ok.high_m - ok.low_m >= b->finish.high_m - b->finish.low_m)) return;
    hs_bench c = *b;
    double half_m = (b->finish.high_m - b->finish.low_m) / 2;
    c.finish = (hs_limits){middle_m - half_m, middle_m + half_m};
    hs_remedy *r = keep(out, &c, b, "use it for another size");
    if (!r) return;
    hs_text text = hs_text_start(r->text, sizeof r->text);
    hs_text_add(&text, "As it is, it holds a finished size with limits between %s and %s.",
                hs_word_length(ok.low_m, inch, HS_UP).text,
                hs_word_length(ok.high_m, inch, HS_DOWN).text);
}

void hs_measured_remedies(hs_result_measured_dimension *out, const hs_bench *bench,
                          const hs_job *job, size_t dimension, const hs_measured_input *in) {
    other_end(out, bench, job->inch_first);
    remake_centres(out, bench, job, dimension);
    leave_patch(out, bench, job, dimension);
    straighten(out, bench, job, dimension);
    case_again(out, bench, job, dimension, in);
    other_size(out, bench, job->inch_first);
}
