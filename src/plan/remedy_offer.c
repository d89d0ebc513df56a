#include "plan/remedy_offer.h"

#include "constants.h"
#include "plan/fill.h"
#include "plan/harden.h"
#include "plan/words.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* Better by a margin a bench can see, or the verdict itself is better. */
static int helps(const hs_window_found *before, const hs_window_found *after) {
    if (after->refused) return 0; /* as it is held, nothing else matters */
    if (after->verdict < before->verdict) return 1;
    return after->verdict == before->verdict &&
           hs_search_width(after) - hs_search_width(before) >= HS_SEARCH_SEEN_M;
}

static void put_in(hs_result_dimension *d, const hs_remedy *remedy) {
    size_t at = d->remedies;
    if (at == HS_MAX_REMEDIES) {
        at--;
        if (d->remedy[at].verdict < remedy->verdict) return;
    } else {
        d->remedies++;
    }
    while (at > 0 && (d->remedy[at - 1].verdict > remedy->verdict ||
                      (d->remedy[at - 1].verdict == remedy->verdict &&
                       d->remedy[at - 1].gain_m < remedy->gain_m))) {
        d->remedy[at] = d->remedy[at - 1];
        at--;
    }
    d->remedy[at] = *remedy;
}

/* What the margin of the changed job itself allows to be said. */
static void say_hardening(hs_remedy *remedy, const hs_variant *variant, const hs_chain *changed) {
    if (!variant->quench) return;
    hs_band margin = hs_harden_margin(changed);
    snprintf(remedy->text, sizeof remedy->text, "%.330s; %s", variant->text,
             margin.low >= 1    ? "the case hardens, also in a lean heat and a slow bath"
             : margin.mid >= 1  ? "the case hardens, if not in a lean heat and a slow bath"
             : margin.high >= 1 ? "whether the case hardens fully is in doubt"
                                : "the case does not harden");
}

/* How far a groove must reach along the faces, by the case of the job as it stands. */
static void say_relief(hs_remedy *remedy, const hs_variant *variant, const hs_chain *chain) {
    double felt_m = 0;
    if (!variant->relief) return;
    for (size_t i = 0; i < variant->job.faces; i++)
        if (variant->face[i].relieved) felt_m = fmax(felt_m, hs_fill_edge_felt_m(chain, i));
    if (!(felt_m > 0)) return;
    snprintf(remedy->text, sizeof remedy->text,
             "before the fire cut a groove %s wide along each face, deeper than the stock, or let "
             "the drawing free that strip: beside it the case is the flat's but for %.0f %%",
             hs_word_about(felt_m, variant->job.inch_first, HS_UP).text, 100 * HS_K_EDGE_CASE_FELT);
}

int hs_remedy_offer(hs_search *s) {
    const hs_variant *variant = &s->work->variant;
    if (hs_search_spoils(s)) return 0;
    s->opened += hs_search_opens(s) == hs_search_wants(s);
    for (size_t i = 0; i < s->job->dimensions; i++) {
        const hs_window_found *before = &s->before[i], *after = &s->work->found[i];
        if (!hs_search_wanted(before) || !helps(before, after)) continue;
        hs_remedy remedy = {.gain_m = hs_search_width(after) - hs_search_width(before),
                            .verdict = after->verdict};
        memcpy(remedy.what, variant->what, sizeof remedy.what);
        memcpy(remedy.text, variant->text, sizeof remedy.text);
        say_hardening(&remedy, variant, &s->work->chain);
        say_relief(&remedy, variant, s->chain);
        put_in(&s->dimension[i], &remedy);
    }
    return 1;
}

void hs_remedy_keep_best(hs_result_dimension *d) {
    enum { ENOUGH = 3 };
    while (d->remedies > ENOUGH && d->remedy[ENOUGH - 1].verdict < HS_STOP &&
           d->remedy[d->remedies - 1].verdict == HS_STOP)
        d->remedies--;
}
