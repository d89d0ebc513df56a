/* What comes before and after a descaling, and what may wait. */
#include "plan/descale_work.h"

#include "constants.h"
#include "hardskin/units/format.h"
#include "plan/words.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>

static void line(hs_result_descale *out, const char *format, ...) HS_PRINTF(2, 3);

static void line(hs_result_descale *out, const char *format, ...) {
    if (out->orders == HS_MAX_DESCALE_ORDER) return;
    va_list args;
    va_start(args, format);
    vsnprintf(out->order[out->orders++], sizeof out->order[0], format, args);
    va_end(args);
}

static int heat_follows(const hs_descale_work *w) {
    for (size_t i = w->at->step + 1; i < w->job->steps; i++) {
        hs_step_kind kind = w->job->step[i].kind;
        if (kind == HS_CARBURISE || kind == HS_REHEAT || kind == HS_STRESS_RELIEVE) return 1;
    }
    return 0;
}

static int traps_liquid(const hs_job *job) {
    for (size_t i = 0; i < job->features; i++)
        if (job->feature[i].thread || job->feature[i].blind) return 1;
    return 0;
}

static int quenched(const hs_descale_work *w) {
    return w->at->hardened && !w->at->self_hard;
}

static void say_before(const hs_descale_work *w, int wet) {
    hs_result_descale *out = w->out;
    if (quenched(w) && !w->at->tempered)
        line(out, "before: temper, within the hour of the quench; an untempered part can crack by "
                  "itself and waits for nothing");
    if (wet)
        line(out, "before: wash off oil and grease%s; the bath does not work through them",
             traps_liquid(w->job) ? ", plug threads and blind holes" : "");
}

static void say_leads(const hs_descale_work *w) {
    if (w->step->by == HS_BY_ELECTROLYSIS)
        line(w->out,
             "switch on last: the part on the NEGATIVE lead, the anode on the positive, the "
             "two not touching");
    if (w->step->by == HS_BY_ANODIC_ELECTROLYSIS)
        line(w->out, "switch on last: the part on the POSITIVE lead, the other plate on the "
                     "negative, the two not touching");
}

/* Out of the tub: nothing of it stays on the part. */
static void say_rinse(const hs_descale_work *w) {
    if (w->step->by == HS_BY_ACID)
        line(w->out, "straight after: rinse, dip in 2 to 5 %% soda until it stops fizzing, rinse "
                     "hot, dry warm");
    else
        line(w->out, "straight after: supply off at the mains, wait, unclip, brush, rinse hot, dry "
                     "warm");
}

static void say_rust(const hs_descale_work *w, int charged) {
    line(w->out,
         "%s: bare steel rusts above %.0f %% humidity (%.0f %% with a trace of salt), wet steel in "
         "minutes",
         charged ? "oil it as it comes out of the bake, not before" : "oil it at once",
         (double)HS_K_DESCALE_RUST_HUMIDITY, (double)HS_K_DESCALE_RUST_HUMIDITY_SALT);
}

static void say_charged(const hs_descale_work *w) {
    char within[48], latest[48];
    hs_format_time(within, sizeof within, w->judged.plan.start_within_s, HS_DOWN);
    hs_format_time(latest, sizeof latest, w->judged.plan.latest_s, HS_DOWN);
    line(w->out,
         "then the bake, begun within %s, %s at most: have the oven hot before the part goes into "
         "the bath",
         within, latest);
    if (w->job->part.quantity > 1)
        line(w->out, "each part into the oven as it comes out: the first does not wait for the "
                     "last");
    line(w->out, "not before the bake: straighten, clamp, strike, load or grind it");
}

static void say_after(const hs_descale_work *w, int charged) {
    hs_result_descale *out = w->out;
    if (heat_follows(w)) {
        line(out, "before the next fire: wash the oil off, it smokes and burns");
        return;
    }
    const char *bake = charged ? ", both after the bake" : "";
    if (!(w->at->scale_m > 0)) {
        line(out, "then measure, then grind%s", bake);
        return;
    }
    int inch = w->job->inch_first;
    line(out,
         "then measure, then grind%s: scale of %s a side reads as %s on the size, clogs the wheel "
         "and hides cracks",
         bake, hs_word_length(w->at->scale_m, inch, HS_NEAREST).text,
         hs_word_length(2 * w->at->scale_m, inch, HS_NEAREST).text);
}

static void say_wait(const hs_descale_work *w, int charged, int wet) {
    hs_result_descale *out = w->out;
    line(out,
         "may wait overnight: the part still in its scale%s, and the clean part when dry and "
         "oiled",
         quenched(w) ? ", once tempered" : "");
    if (charged)
        line(out, "may not wait overnight: the part between bath and bake. Start so that bath, "
                  "rinse and the start of the bake fall on the same day");
    else if (wet)
        line(out, "may not wait overnight: the part in the bath unwatched, or wet out of it");
}

void hs_descale_say_order(hs_descale_work *w) {
    hs_descale_method by = w->step->by;
    int wet = by == HS_BY_ACID || by == HS_BY_ELECTROLYSIS || by == HS_BY_ANODIC_ELECTROLYSIS;
    int charged = w->judged.bake;
    if (w->out->verdict == HS_CLEAN_STOP) return; /* no recipe for what is not done */
    say_before(w, wet);
    say_leads(w);
    if (wet) say_rinse(w);
    if (charged) say_charged(w);
    say_rust(w, charged);
    say_after(w, charged);
    say_wait(w, charged, wet);
}
