/* What the measured branch says: the sum behind its limit, when to stop, what is missing. */
#include "plan/measured_say.h"

#include "base/text.h"
#include "constants.h"
#include "hardskin/model/indent.h"
#include "plan/route.h"
#include "plan/words.h"

#include <math.h>
#include <string.h>

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
            hs_text_add(&text, "STOP whatever the shape: even straight, %s.", why[k]);
        else if (isfinite(limit_m[k]))
            hs_text_add(&text, "STOP IF %s more than %s: %s.", word,
                        hs_word_length(reading_m, job->inch_first, HS_DOWN).text, why[k]);
    }
}

/* At the end of what the note says already. */
static hs_text note_on(hs_result_measured_dimension *out) {
    size_t used = strlen(out->note);
    if (used > 0 && used + 1 < sizeof out->note) out->note[used++] = ' ';
    return hs_text_start(out->note + used, sizeof out->note - used);
}

static void set_note(hs_result_measured_dimension *out, const hs_bench *b, const hs_job *job,
                     size_t i, const hs_measured_input *in) {
    hs_text text = note_on(out);
    double v = b->shape_m[0] - HS_BENCH_NOISE_M;
    double clean_m = v - b->limit[0].clean_m;
    double deep_m = v - hs_bench_deep(b->limit[0]);
    int inch = job->inch_first;
    const char *gap = "";
    if (clean_m > 0) {
        hs_text_add(&text, "Does not clean up: the lowest spot stays %s short.",
                    hs_word_length(clean_m / 2, inch, HS_UP).text);
        gap = " ";
    }
    if (deep_m > 0) {
        hs_text_add(&text, "%sGoes %s too deep into the case at the highest spot.", gap,
                    hs_word_length(deep_m / 2, inch, HS_UP).text);
        gap = " ";
    }
    if (b->bow_m[0] > b->bow_most_m) {
        hs_text_add(
            &text,
            "%sPulled flat, its bow of %s comes back when the chuck lets go; %s is the most "
            "that the flatness asked and the pull of the chuck allow.",
            gap, hs_word_length(b->bow_m[0], inch, HS_UP).text,
            hs_word_length(b->bow_most_m, inch, HS_DOWN).text);
        gap = " ";
    }
    if (deep_m > 0 && in->second.why[0]) {
        hs_text_add(&text, "%sTo case it again is not offered: %s.", gap, in->second.why);
        gap = " ";
    }
    if (!job->measured.dimension[i].shape_given) {
        hs_text_add(
            &text,
            "%sShape not measured: the computed one is used. Measure it before the wheel touches.",
            gap);
        gap = " ";
    }
    if (!in->case_read) hs_text_add(&text, "%sCase not measured: the computed one is used.", gap);
}

/* The Rockwell C, A or N reading cannot be true where the case is thinner than it needs. */
static int reads_low(const hs_measured *m, double case_m) {
    static const hs_hardness_test tests[] = {[HS_HRC] = HS_TEST_HRC,
                                             [HS_HRA] = HS_TEST_HRA,
                                             [HS_HR15N] = HS_TEST_HR15N,
                                             [HS_HR30N] = HS_TEST_HR30N};
    if (m->by_files || m->hardness_scale == HS_SCALE_NONE || m->hardness_scale == HS_HV ||
        m->hardness_scale == HS_HBW)
        return 0;
    return !hs_test_fits(tests[m->hardness_scale], case_m, m->hardness_low_HV);
}

/* Files tell a band and no middle: one wholly below what is asked condemns, whatever may explain
 * it, until a spot is cleaned and tried again. */
static hs_wheel soft_verdict(const hs_measured *m, double asked_HV, int doubtful) {
    double middle = (m->hardness_low_HV + m->hardness_high_HV) / 2;
    if (m->by_files) return m->hardness_high_HV < asked_HV ? HS_WHEEL_NO : HS_WHEEL_CARE;
    return middle < asked_HV && !doubtful ? HS_WHEEL_NO : HS_WHEEL_CARE;
}

/* whole: the band lies below what is asked from end to end. */
static void say_soft(hs_text *text, const hs_measured *m, double rim_m, int low, int whole,
                     int inch) {
    if (m->by_files && whole && rim_m >= HS_K_MEASURED_DOUBT_RIM_SHOWS)
        hs_text_add(
            text,
            "SOFT SKIN: every file that should skate bites. A soft rim of %s may lie over a "
            "hard case: clean a spot that deep and try again. If it skates there, write that "
            "band into the sheet; if it bites, no wheel makes it hard: harden again.",
            hs_word_length(rim_m, inch, HS_UP).text);
    else if (rim_m >= HS_K_MEASURED_DOUBT_RIM_SHOWS)
        hs_text_add(text,
                    "Reads softer than asked; a soft rim of %s may be the cause: clean a "
                    "spot that deep and try again before grinding.",
                    hs_word_length(rim_m, inch, HS_UP).text);
    else if (low)
        hs_text_add(text, "Reads softer than asked, but the case is too thin for this test and it "
                          "reads low: try HR15N, HR30N, HV or files.");
    else if (m->by_files && whole)
        hs_text_add(
            text,
            "SOFT SKIN: the files' band lies wholly below what is asked, and grinding makes no "
            "steel harder: try other spots, or a hardness tester; if it is so, "
            "harden again.");
    else if (m->by_files)
        hs_text_add(text,
                    "The files' band reaches below what is asked, and a file tells to about 2 HRC: "
                    "try other spots, or a hardness tester.");
    else
        hs_text_add(text, "Reads softer than asked, and grinding makes no steel harder: try "
                          "other spots; if it is so, harden again.");
}

/* A surface that reads soft: no wheel helps, unless a soft rim lies over hard case. */
static void mind_hardness(hs_result_measured_dimension *out, const hs_job *job, size_t i,
                          const hs_measured_input *in) {
    const hs_measured *m = &job->measured;
    double asked = 0, rim_m = 0, case_m = INFINITY;
    if (!(m->hardness_high_HV > 0)) return;
    for (int f = 0; f < 2; f++) {
        size_t index = job->dimension[i].face[f];
        if (job->face[index].finish != HS_GROUND) continue;
        asked = fmax(asked, job->face[index].hardness_HV);
        rim_m = fmax(rim_m, in->face[index].soft_rim_m);
        case_m = fmin(case_m, in->face[index].case_m);
    }
    if (m->hardness_low_HV >= asked) return;
    int low = reads_low(m, case_m);
    hs_wheel worst = soft_verdict(m, asked, low || rim_m >= HS_K_MEASURED_DOUBT_RIM_SHOWS);
    if (worst > out->verdict) out->verdict = worst;
    if (worst == HS_WHEEL_NO) out->remedies = 0; /* no way of grinding makes it hard */
    for (size_t k = 0; k < out->remedies; k++)
        if (out->remedy[k].verdict < HS_TIGHT) out->remedy[k].verdict = HS_TIGHT;
    hs_text text = note_on(out);
    say_soft(&text, m, rim_m, low, m->hardness_high_HV < asked, job->inch_first);
}

void hs_measured_soft(hs_result_measured_dimension *out, const hs_job *job, size_t dimension,
                      const hs_measured_input *in) {
    mind_hardness(out, job, dimension, in);
    if (out->verdict == HS_WHEEL_CARE) out->verdict = HS_WHEEL_NONE;
}

/* No wheel touches an untempered case; tempered, it is what it was judged to be. */
static void mind_temper(hs_result_measured_dimension *out, const hs_job *job) {
    hs_wheel tempered = out->verdict;
    if (hs_route_tempered(job)) return;
    out->verdict = HS_WHEEL_NO;
    out->remedies = tempered != HS_WHEEL_NO;
    hs_remedy *r = &out->remedy[0];
    *r = (hs_remedy){.verdict = tempered == HS_WHEEL_GRIND ? HS_GO : HS_TIGHT};
    hs_text what = hs_text_start(r->what, sizeof r->what), note = note_on(out);
    hs_text_add(&what, "temper it and measure again");
    hs_text_add(&note, "Not tempered after the quench: an untempered case cracks under the wheel.");
}

void hs_measured_say(hs_result_measured_dimension *out, const hs_bench *bench, const hs_job *job,
                     size_t dimension, const hs_measured_input *in) {
    set_terms(out, bench);
    set_stop_if(out, job, dimension);
    out->note[0] = '\0';
    mind_temper(out, job);
    mind_hardness(out, job, dimension, in);
    set_note(out, bench, job, dimension, in);
    size_t used = strlen(out->note);
    if (used > 0 && out->note[used - 1] == ' ') out->note[used - 1] = '\0';
}
