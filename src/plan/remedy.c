#include "plan/remedy.h"

#include "plan/variant.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static double width_m(const hs_window_found *f) {
    return 0.5 * (f->may_m[0] + f->may_m[1] - f->need_m[0] - f->need_m[1]);
}

static int wanted(const hs_window_found *f) {
    return f->verdict == HS_STOP || f->verdict == HS_TIGHT;
}

/* Better by a margin a bench can see, or the verdict itself is better. */
static int helps(const hs_window_found *before, const hs_window_found *after) {
    if (after->verdict < before->verdict) return 1;
    return after->verdict == before->verdict && width_m(after) - width_m(before) >= 20e-6;
}

/* All windows that were not open are now? */
static int opens_all(const hs_window_found *before, const hs_window_found *after, size_t n) {
    for (size_t i = 0; i < n; i++)
        if (wanted(&before[i]) && after[i].verdict != HS_GO) return 0;
    return 1;
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

static void offer(hs_result_dimension *dimension, const hs_window_found *before,
                  const hs_window_found *after, const hs_variant *variant) {
    for (size_t i = 0; i < variant->job.dimensions; i++) {
        if (!wanted(&before[i]) || !helps(&before[i], &after[i])) continue;
        hs_remedy remedy = {.gain_m = width_m(&after[i]) - width_m(&before[i]),
                            .verdict = after[i].verdict};
        memcpy(remedy.what, variant->what, sizeof remedy.what);
        memcpy(remedy.text, variant->text, sizeof remedy.text);
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

static double total_width(const hs_window_found *f, size_t n, const hs_window_found *before) {
    double sum = 0;
    for (size_t i = 0; i < n; i++)
        if (wanted(&before[i])) sum += fmin(width_m(&f[i]), 1e-3);
    return sum;
}

typedef struct search {
    hs_result_dimension *dimension;
    const hs_window_found *before;
    const hs_job *job;
    const hs_chain *chain; /* of the job as it stands */
    const hs_draws *draws;
    hs_remedy_work *work;
    hs_history_work *history;
    hs_decide_work *decide;
    int opened; /* some single change opens every window */
    double best_width_m;
} search;

static int run(search *s, const hs_variant *variant, int fire) {
    const hs_job *job = &variant->job;
    hs_chain *chain = &s->work->chain;
    hs_status status = fire ? hs_chain_make(chain, job, s->history, NULL)
                            : hs_chain_again(chain, s->chain, job, NULL);
    if (status != HS_OK) return 0;
    hs_decide_again(s->work->found, s->before, chain, &s->work->few, job->shop.confidence,
                    s->decide);
    return 1;
}

/* The chain of the last run, with all draws: what is offered is this. */
static void confirm(search *s, const hs_variant *variant) {
    hs_decide_again(s->work->found, s->before, &s->work->chain, s->draws,
                    variant->job.shop.confidence, s->decide);
}

static int apply(search *s, const hs_change *change, int size) {
    hs_variant *v = &s->work->variant;
    hs_variant_start(v, s->job);
    return change->change(v, size) && run(s, v, change->fire);
}

/* Remember the single change that opens most, for pairs. */
static void keep_if_best(search *s) {
    double width = total_width(s->work->found, s->job->dimensions, s->before);
    if (!(width > s->best_width_m)) return;
    s->best_width_m = width;
    hs_variant_start(&s->work->best, &s->work->variant.job);
    memcpy(s->work->best.what, s->work->variant.what, sizeof s->work->best.what);
}

/* The smallest size of a change that opens everything; else the largest that runs. */
static void try_change(search *s, const hs_change *change) {
    size_t n = s->job->dimensions;
    int ran = -1, opened = 0;
    for (int size = 0; size < change->sizes && !opened; size++) {
        if (!apply(s, change, size)) continue;
        ran = size;
        if (!opens_all(s->before, s->work->found, n)) continue;
        confirm(s, &s->work->variant);
        opened = opens_all(s->before, s->work->found, n);
    }
    if (ran < 0) return;
    if (!opened) {
        if (!apply(s, change, ran)) return;
        confirm(s, &s->work->variant);
    }
    s->opened |= opened;
    keep_if_best(s);
    offer(s->dimension, s->before, s->work->found, &s->work->variant);
}

/* No single change is enough: the best of them together with each other one. */
static void try_pairs(search *s) {
    size_t n_changes;
    const hs_change *changes = hs_changes(&n_changes);
    hs_variant best = s->work->best;
    for (size_t i = 0; i < n_changes; i++) {
        hs_variant *v = &s->work->variant;
        hs_variant_start(v, &best.job);
        if (!changes[i].change(v, changes[i].sizes - 1)) continue;
        char both[sizeof v->what];
        snprintf(both, sizeof both, "%.38s; %.38s", best.what, v->what);
        if (!strncmp(best.what, v->what, 8)) continue; /* the same change once more */
        memcpy(v->what, both, sizeof both);
        if (!run(s, v, 1) || !opens_all(s->before, s->work->found, s->job->dimensions)) continue;
        confirm(s, v);
        if (!opens_all(s->before, s->work->found, s->job->dimensions)) continue;
        offer(s->dimension, s->before, s->work->found, v);
        return;
    }
}

void hs_remedy_find(hs_result_dimension *dimension, const hs_window_found *found,
                    const hs_chain *chain, const hs_draws *draws, hs_remedy_work *work,
                    hs_history_work *history, hs_decide_work *decide) {
    const hs_job *job = chain->job;
    int any = 0;
    for (size_t i = 0; i < job->dimensions; i++)
        any |= wanted(&found[i]);
    if (!any) return;
    search s = {dimension, found, job, chain, draws, work, history, decide, 0, -INFINITY};
    hs_variant_start(&work->best, job);
    work->few.n = draws->n < HS_FEW_DRAWS ? draws->n : HS_FEW_DRAWS;
    memcpy(work->few.z, draws->z, work->few.n * sizeof draws->z[0]);
    memcpy(work->few.rough, draws->rough, work->few.n * sizeof draws->rough[0]);
    work->best.what[0] = '\0';
    size_t n;
    const hs_change *changes = hs_changes(&n);
    for (size_t i = 0; i < n; i++)
        try_change(&s, &changes[i]);
    if (!s.opened) try_pairs(&s);
    for (size_t i = 0; i < job->dimensions; i++)
        keep_the_best(&dimension[i]);
}
