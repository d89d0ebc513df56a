#include "plan/remedy.h"

#include "plan/fill.h"
#include "plan/harden.h"
#include "plan/remedy_search.h"
#include "plan/variant.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* Better by a margin a bench can see, or the verdict itself is better. */
static int helps(const hs_window_found *before, const hs_window_found *after) {
    if (after->refused) return 0; /* as it is held, nothing else matters */
    if (after->verdict < before->verdict) return 1;
    return after->verdict == before->verdict &&
           hs_search_width(after) - hs_search_width(before) >= 20e-6;
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
    snprintf(remedy->text, sizeof remedy->text, "%.170s; %s", variant->text,
             margin.low >= 1    ? "the case hardens, also in a lean heat and a slow bath"
             : margin.mid >= 1  ? "the case hardens, if not in a lean heat and a slow bath"
             : margin.high >= 1 ? "whether the case hardens fully is in doubt"
                                : "the case does not harden");
}

static void offer(hs_result_dimension *dimension, const hs_window_found *before,
                  const hs_window_found *after, const hs_variant *variant,
                  const hs_chain *changed) {
    for (size_t i = 0; i < variant->job.dimensions; i++) {
        if (!hs_search_wanted(&before[i]) || !helps(&before[i], &after[i])) continue;
        hs_remedy remedy = {.gain_m = hs_search_width(&after[i]) - hs_search_width(&before[i]),
                            .verdict = after[i].verdict};
        memcpy(remedy.what, variant->what, sizeof remedy.what);
        memcpy(remedy.text, variant->text, sizeof remedy.text);
        say_hardening(&remedy, variant, changed);
        put_in(&dimension[i], &remedy);
    }
}

/* Where several things open the window, what leaves it shut is not worth reading. */
static void keep_the_best(hs_result_dimension *d) {
    enum { ENOUGH = 3 };
    while (d->remedies > ENOUGH && d->remedy[ENOUGH - 1].verdict < HS_STOP &&
           d->remedy[d->remedies - 1].verdict == HS_STOP)
        d->remedies--;
}

static int apply(hs_search *s, const hs_change *change, int size) {
    hs_variant *v = &s->work->variant;
    hs_variant_start(v, s->job);
    return change->change(v, size) && hs_search_run(s, v, change->fire) == HS_OK;
}

/* Remember the single change that opens most, for pairs. */
static void keep_if_best(hs_search *s, int soak) {
    double width = hs_search_total(s);
    if (!(width > s->best_width_m)) return;
    s->best_width_m = width;
    s->best_is_soak = soak;
    hs_variant_start(&s->work->best, &s->work->variant.job);
    memcpy(s->work->best.what, s->work->variant.what, sizeof s->work->best.what);
}

/* What the last run, confirmed, is worth. */
static void take(hs_search *s, int soak) {
    if (hs_search_spoils(s)) return; /* no remedy that breaks another dimension */
    s->opened |= hs_search_opens(s) == hs_search_wants(s);
    keep_if_best(s, soak);
    offer(s->dimension, s->before, s->work->found, &s->work->variant, &s->work->chain);
}

/* Run one size and confirm it; 0 where it does not run. */
static int apply_whole(hs_search *s, const hs_change *change, int size) {
    if (!apply(s, change, size)) return 0;
    hs_search_confirm(s, &s->work->variant);
    return 1;
}

/* The smallest size of a change that opens as many windows as any does; where none opens one, the
 * largest that breaks nothing. */
static void try_change(hs_search *s, const hs_change *change) {
    size_t most = 0, all = hs_search_wants(s);
    int chosen = -1, standing = -1; /* the size whose confirmed windows stand in the work space */
    for (int size = 0; size < change->sizes && most < all; size++) {
        if (!apply(s, change, size)) continue;
        size_t opens = hs_search_opens(s);
        standing = -1;
        if (opens > 0 || size + 1 == change->sizes) { /* few draws are hopeful at times */
            hs_search_confirm(s, &s->work->variant);
            opens = hs_search_spoils(s) ? 0 : hs_search_opens(s);
            standing = size;
        }
        if (opens > most || most == 0) chosen = size;
        if (opens > most) most = opens;
    }
    for (; chosen >= 0; chosen--) {
        if (standing != chosen && !apply_whole(s, change, chosen)) continue;
        standing = -1;
        if (hs_search_spoils(s)) continue; /* less of it may break nothing */
        take(s, 0);
        return;
    }
}

static void say_no_soak(hs_search *s, hs_soak_end end) {
    for (size_t i = 0; i < s->job->dimensions; i++) {
        hs_result_dimension *d = &s->dimension[i];
        if (!hs_search_wanted(&s->before[i]) || s->before[i].grounds == 0) continue;
        if (s->before[i].refused) continue; /* it is not the case that shuts it */
        if (s->work->found[i].verdict == HS_GO && !hs_search_spoils(s)) continue;
        hs_fill_note(d, "no longer soak opens it by itself: %s",
                     hs_search_spoils(s) ? "it would close another dimension"
                                         : hs_search_soak_words(end));
    }
}

static void try_soak(hs_search *s) {
    hs_soak_end end;
    if (!hs_search_soak(&end, s, s->job)) return;
    if (end != HS_SOAK_OPENS || hs_search_spoils(s)) say_no_soak(s, end);
    take(s, 1);
}

static void name_both(hs_variant *v, const char *first) {
    char both[sizeof v->what];
    snprintf(both, sizeof both, "%.38s; %.38s", first, v->what);
    memcpy(v->what, both, sizeof both);
}

/* Does it open every window and close none? Then it is offered. */
static int settle(hs_search *s) {
    if (hs_search_opens(s) < hs_search_wants(s) || hs_search_spoils(s)) return 0;
    offer(s->dimension, s->before, s->work->found, &s->work->variant, &s->work->chain);
    return 1;
}

/* One change at its largest, and the soak that is then enough. */
static int with_soak(hs_search *s, const hs_variant *first) {
    hs_soak_end end;
    if (!hs_search_soak(&end, s, &first->job) || end != HS_SOAK_OPENS) return 0;
    name_both(&s->work->variant, first->what);
    return settle(s);
}

static int try_pair(hs_search *s, const hs_variant *best, const hs_change *change) {
    hs_variant *v = &s->work->variant;
    hs_variant_start(v, &best->job);
    if (!change->change(v, change->sizes - 1)) return 0;
    if (!strncmp(best->what, v->what, 8)) return 0; /* the same change once more */
    name_both(v, best->what);
    if (hs_search_run(s, v, 1) != HS_OK || hs_search_opens(s) < hs_search_wants(s)) return 0;
    if (!s->best_is_soak) {
        hs_search_confirm(s, v);
        return settle(s);
    }
    hs_variant other;
    hs_variant_start(&other, s->job);
    return change->change(&other, change->sizes - 1) && with_soak(s, &other);
}

/* No single change is enough: the best of them together with each other one. */
static void try_pairs(hs_search *s) {
    size_t n;
    const hs_change *changes = hs_changes(&n);
    hs_variant best;
    hs_variant_start(&best, &s->work->best.job);
    memcpy(best.what, s->work->best.what, sizeof best.what);
    if (!best.what[0]) return;
    if (!s->best_is_soak && with_soak(s, &best)) return;
    for (size_t i = 0; i < n; i++)
        if (try_pair(s, &best, &changes[i])) return;
}

void hs_remedy_find(hs_result_dimension *dimension, const hs_window_found *found,
                    const hs_chain *chain, hs_draws *draws, hs_remedy_work *work,
                    hs_chain_work *scratch, hs_decide_work *decide) {
    const hs_job *job = chain->job;
    hs_search s = {dimension, found, job, chain, draws, work, scratch, decide, 0, 0, -INFINITY};
    if (hs_search_wants(&s) == 0) return;
    size_t as_before = draws->n;
    hs_variant_start(&work->best, job);
    work->few.n = draws->n < HS_FEW_DRAWS ? draws->n : HS_FEW_DRAWS;
    memcpy(work->few.z, draws->z, work->few.n * sizeof draws->z[0]);
    memcpy(work->few.rough, draws->rough, work->few.n * sizeof draws->rough[0]);
    work->best.what[0] = '\0';
    size_t n;
    const hs_change *changes = hs_changes(&n);
    try_soak(&s);
    for (size_t i = 0; i < n; i++)
        try_change(&s, &changes[i]);
    if (!s.opened) try_pairs(&s);
    for (size_t i = 0; i < job->dimensions; i++)
        keep_the_best(&dimension[i]);
    hs_draws_take(draws, as_before);
}
