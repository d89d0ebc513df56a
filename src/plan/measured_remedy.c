/* What would help a part that came out of the tank too warped or too thin in the case: each way is
 * judged again with the same sums, and what still is not to be ground is not offered. Where no
 * single way is enough, finishing to the other end of the tolerance is combined with each. */
#include "plan/measured_remedy.h"

#include "base/text.h"
#include "constants.h"
#include "hardskin/units/format.h"
#include "plan/route.h"
#include "plan/words.h"

#include <math.h>

typedef struct ways {
    hs_result_measured_dimension *out;
    const hs_bench *as_is; /* the part as it lies there: gains count from it */
    hs_bench from;         /* where a way starts */
    const hs_job *job;
    size_t dimension;
    const hs_measured_input *in;
    int last;          /* after all others that do as well, whatever it gains */
    const char *first; /* "" or what was done before, for pairs */
    char first_text[120];
} ways;

static hs_verdict as_verdict(hs_wheel wheel) {
    return wheel == HS_WHEEL_GRIND ? HS_GO : wheel == HS_WHEEL_CARE ? HS_TIGHT : HS_STOP;
}

/* How much room is left before the nearest limit, in the middle; negative when it fails. */
static double room(const hs_bench *b) {
    hs_shape_limits l = b->limit[0];
    return fmin(fmin(l.clean_m, l.case_m), l.face_m) - b->shape_m[0];
}

/* Ahead of all that are worse, or as good and gain less. */
static hs_remedy *insert(hs_result_measured_dimension *out, hs_verdict verdict, double gain_m) {
    if (out->remedies == HS_MAX_REMEDIES) return NULL;
    size_t at = out->remedies++;
    for (; at > 0; at--) {
        const hs_remedy *before = &out->remedy[at - 1];
        if (before->verdict < verdict || (before->verdict == verdict && before->gain_m >= gain_m))
            break;
        out->remedy[at] = *before;
    }
    return &out->remedy[at];
}

/* Judge the changed bench and keep the way if the part may then be ground, and it gains anything.
 * Gain per side. */
static hs_remedy *keep(const ways *w, hs_bench *changed, const char *what) {
    hs_wheel wheel = hs_bench_judge(changed);
    double gain_m = (room(changed) - room(w->as_is)) / 2;
    if (wheel == HS_WHEEL_NO || !(gain_m > 0)) return NULL;
    hs_remedy *r = insert(w->out, as_verdict(wheel), w->last ? -INFINITY : gain_m);
    if (!r) return NULL;
    hs_text text = hs_text_start(r->what, sizeof r->what);
    hs_text_add(&text, "%s%s%s", w->first, w->first[0] ? ", and " : "", what);
    r->text[0] = '\0';
    r->gain_m = gain_m;
    r->verdict = as_verdict(wheel);
    return r;
}

static hs_text say(const ways *w, hs_remedy *r) {
    hs_text text = hs_text_start(r->text, sizeof r->text);
    hs_text_add(&text, "%s", w->first_text);
    return text;
}

static int cleans(const hs_bench *b) {
    return b->limit[0].clean_m >= b->shape_m[0];
}

/* The finished limits left when the wheel stops at the end that helps; what is said of it. */
static void to_other_end(hs_bench *c, char *said, size_t size, int inch) {
    double part_m = HS_K_MEASURED_DOUBT_AIM_SHARE * (c->finish.high_m - c->finish.low_m);
    int to_low = cleans(c) == c->bore; /* not clean: grind on; too deep: stop earlier */
    if (to_low)
        c->finish.high_m = c->finish.low_m + part_m;
    else
        c->finish.low_m = c->finish.high_m - part_m;
    double end_m = to_low ? c->finish.high_m : c->finish.low_m;
    hs_text text = hs_text_start(said, size);
    hs_text_add(&text, "Finish at or %s %s, still inside the tolerance.",
                to_low ? "below" : "above",
                hs_word_length(end_m, inch, to_low ? HS_DOWN : HS_UP).text);
}

static const char other_end_words[] = "finish to the other end of the tolerance";

static void other_end(const ways *w) {
    hs_bench c = w->from;
    char said[100];
    to_other_end(&c, said, sizeof said, w->job->inch_first);
    hs_remedy *r = keep(w, &c, other_end_words);
    hs_text text;
    if (!r) return;
    text = say(w, r);
    hs_text_add(&text, "%s", said);
}

/* Not pulled flat: the bow then lies under the wheel, and is gone afterwards. */
static void shim(const ways *w) {
    hs_bench c = w->from;
    if (!isfinite(c.bow_most_m)) return;
    for (int k = 0; k < 2; k++)
        c.shape_m[k] += c.bow_m[k];
    c.bow_most_m = INFINITY;
    c.shape_m[1] = fmax(c.shape_m[1], c.shape_m[0]);
    if (hs_bench_judge(&c) == HS_WHEEL_NO || w->out->remedies == HS_MAX_REMEDIES) return;
    hs_remedy *r = insert(w->out, as_verdict(hs_bench_judge(&c)), 0); /* it gains no room */
    if (!r) return;
    *r = (hs_remedy){.verdict = as_verdict(hs_bench_judge(&c))};
    hs_text text = hs_text_start(r->what, sizeof r->what);
    hs_text_add(&text, "shim the hollow, do not pull it flat");
    text = hs_text_start(r->text, sizeof r->text);
    hs_text_add(&text,
                "Crown up, packed underneath, held by stops: the wheel takes %s of bow away.",
                hs_word_length(c.bow_m[0], w->job->inch_first, HS_UP).text);
}

static void remake_centres(const ways *w) {
    const hs_job *job = w->job;
    if (job->part.form != HS_BAR || job->part.held != HS_OLD_CENTRES) return;
    if (job->dimension[w->dimension].across != HS_ACROSS_OUTSIDE) return;
    hs_bench c = w->from;
    for (int k = 0; k < 2; k++)
        c.shape_m[k] /= 2;
    hs_remedy *r = keep(w, &c, "remake the centres to halve the run-out");
    if (!r) return;
    hs_text text = say(w, r);
    hs_text_add(&text,
                "Set the bar so that middle and ends run out alike and grind new centres: run-out "
                "%s.",
                hs_word_length(c.shape_m[0], job->inch_first, HS_UP).text);
}

/* A patch that may stay black or soft at the lowest spot: the shape is a parabola over the length,
 * so the spot is as long as the root of what is missing. */
static void leave_patch(const ways *w) {
    const hs_bench *b = &w->from;
    const hs_job *job = w->job;
    double over_m = b->shape_m[0] - b->limit[0].clean_m;
    hs_across across = job->dimension[w->dimension].across;
    int chuck = job->part.form == HS_BAR && job->part.held == HS_CHUCK;
    if (cleans(b) || chuck || across == HS_ACROSS_ENDS || job->part.form == HS_RING) return;
    double one_side_m = over_m / 2; /* by which each ground side falls short at its lowest */
    double deep_m = across == HS_ACROSS_FACES ? b->shape_m[0] : b->shape_m[0] / 2;
    double share = sqrt(one_side_m / deep_m); /* of the length */
    if (!(share <= HS_K_MEASURED_DOUBT_PATCH_SHARE) || b->limit[0].clean_m < 0) return;
    hs_bench c = *b;
    for (int k = 0; k < 2; k++)
        for (int f = 0; f < 2; f++)
            c.face[k][f].clean_up_m -= one_side_m + 1e-9;
    hs_remedy *r = keep(w, &c, "let a patch stay black or soft");
    if (!r) return;
    if (r->verdict == HS_GO) r->verdict = HS_TIGHT; /* it is not what the drawing asks */
    hs_text text = say(w, r);
    hs_text_add(&text,
                "If the drawing's owner agrees: middle of the hollow side, up to about %s long.",
                hs_word_about(job->part.length_m * share, job->inch_first, HS_NEAREST).text);
}

static void straighten(const ways *w) {
    const hs_bench *b = &w->from;
    const hs_job *job = w->job;
    double left_m = fmin(fmin(b->limit[1].clean_m, b->limit[1].case_m), b->limit[1].face_m);
    /* it is measured again, with the same doubt */
    left_m = fmin(left_m - HS_K_MEASURED_DOUBT_BOW, left_m / (1 + HS_K_MEASURED_DOUBT_BOW_SHARE));
    if (job->part.form == HS_RING || !(left_m > 0) || left_m >= b->shape_m[0]) return;
    hs_bench c = *b;
    c.shape_m[0] = left_m;
    c.shape_m[1] = left_m + fmax(HS_K_MEASURED_DOUBT_BOW, HS_K_MEASURED_DOUBT_BOW_SHARE * left_m);
    hs_remedy *r = keep(w, &c, "straighten warm and temper again");
    const hs_step *temper = hs_route_last_temper(job);
    hs_word below =
        temper ? hs_word_temp(temper->temp_K.value, job->inch_first) : (hs_word){"the temper"};
    const char *what = job->dimension[w->dimension].across == HS_ACROSS_FACES ? "bow" : "run-out";
    if (!r) return;
    hs_text text = say(w, r);
    hs_text_add(&text,
                "Warm, below %s, to a %s of %s or less, then temper again. A hard case can crack: "
                "press slowly, stand clear, look for cracks.",
                below.text, what, hs_word_length(left_m, job->inch_first, HS_DOWN).text);
}

/* Least case of its ground faces after the second time, in the middle (k 0) or on the low side. */
static double case_then(const ways *w, int k) {
    double least_m = INFINITY;
    for (int f = 0; f < 2; f++) {
        size_t face = w->job->dimension[w->dimension].face[f];
        const hs_measured_face *m = &w->in->second.face[face];
        if (w->job->face[face].finish == HS_GROUND && w->job->face[face].case_m > 0)
            least_m = fmin(least_m, k ? m->case_low_m : m->case_m);
    }
    return least_m;
}

/* What it does to the part besides. */
static void say_second(const ways *w, hs_remedy *r, double moved_m) {
    const hs_second *second = &w->in->second;
    size_t i = w->dimension;
    int inch = w->job->inch_first;
    hs_text text = say(w, r);
    hs_text_add(&text,
                "Same medium and heat, from the case as it is: then %s, low side %s. Quenched anew "
                "it warps anew, typical %s, up to %s; size %s%s by growth and scale. Measure and "
                "plan anew.",
                hs_word_length(case_then(w, 0), inch, HS_DOWN).text,
                hs_word_length(case_then(w, 1), inch, HS_DOWN).text,
                hs_word_length(second->shape_m[i], inch, HS_UP).text,
                hs_word_length(second->shape_high_m[i], inch, HS_UP).text, moved_m < 0 ? "-" : "+",
                hs_word_length(fabs(moved_m), inch, HS_NEAREST).text);
    if (second->speed < HS_K_MEASURED_DOUBT_SLOW_SHOWS)
        hs_text_add(&text,
                    " The first soak went only %.2f as deep as computed; this one is reckoned as "
                    "slow: find out why before.",
                    second->speed);
}

/* Cased and hardened once more, as the chain was run on from the case there is. */
static void case_again(const ways *w) {
    const hs_second *second = &w->in->second;
    if (!second->present || !hs_bench_too_deep(&w->from)) return;
    hs_bench c;
    hs_bench_second(&c, &w->from, w->job, w->dimension, w->in, second);
    char time[48], what[80];
    hs_format_time(time, sizeof time, second->hold_s, HS_NEAREST);
    hs_text name = hs_text_start(what, sizeof what);
    hs_text_add(&name, "case and harden again, soak %s", time);
    hs_remedy *r = keep(w, &c, what);
    if (r) say_second(w, r, c.size[0].low_m - w->from.size[0].low_m);
}

/* Any finished size that this part, as it lies there, still holds with the doubt against us. */
static void other_size(const ways *w) {
    const hs_bench *b = &w->from;
    int inch = w->job->inch_first;
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
    hs_remedy *r = keep(w, &c, "use it for another size");
    if (!r) return;
    hs_text text = say(w, r);
    hs_text_add(&text, "As it is, it holds a finished size with limits between %s and %s.",
                hs_word_length(ok.low_m, inch, HS_UP).text,
                hs_word_length(ok.high_m, inch, HS_DOWN).text);
}

/* What the drawing asks, each by itself. */
static void single(const ways *w) {
    remake_centres(w);
    leave_patch(w);
    straighten(w);
    case_again(w);
}

/* The other end of the tolerance first, and each other way from there. */
static void in_pairs(const ways *single_ways) {
    ways w = *single_ways;
    char said[100];
    to_other_end(&w.from, said, sizeof said, w.job->inch_first);
    hs_text text = hs_text_start(w.first_text, sizeof w.first_text);
    hs_text_add(&text, "%s ", said);
    w.first = "finish to the other end";
    (void)hs_bench_judge(&w.from);
    single(&w);
}

void hs_measured_remedies(hs_result_measured_dimension *out, const hs_bench *bench,
                          const hs_job *job, size_t dimension, const hs_measured_input *in) {
    ways w = {.out = out,
              .as_is = bench,
              .from = *bench,
              .job = job,
              .dimension = dimension,
              .in = in,
              .first = ""};
    other_end(&w);
    shim(&w);
    single(&w);
    if (out->remedies == 0) in_pairs(&w);
    w.last = 1; /* the part is lost to this job */
    other_size(&w);
}
