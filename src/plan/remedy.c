#include "plan/remedy.h"

#include "plan/fill.h"
#include "plan/harden.h"
#include "plan/remedy_offer.h"
#include "plan/remedy_pair.h"
#include "plan/remedy_try.h"

#include <assert.h>
#include <math.h>
#include <string.h>

enum { MOST = 24 }; /* changes, the soak among them */

/* So many that open every window are enough: no whole quench is run for more. */
enum { ENOUGH = 3 };

static void say_no_soak(hs_search *s, hs_soak_end end, int spoils) {
    for (size_t i = 0; i < s->job->dimensions; i++) {
        if (!hs_search_wanted(&s->before[i]) || s->before[i].grounds == 0) continue;
        if (s->before[i].refused) continue; /* it is not the case that shuts it */
        if (s->work->found[i].verdict == HS_GO && !spoils) continue;
        hs_fill_note(&s->dimension[i], "no longer soak opens it by itself: %s",
                     spoils ? "it would close another dimension" : hs_search_soak_words(end));
    }
}

static void try_soak(hs_search *s, hs_tried *soak) {
    hs_soak_end end;
    soak->change = NULL;
    if (!hs_search_soak(&end, soak, s, s->job)) return;
    if (!hs_try_opens(soak)) {
        say_no_soak(s, end, 0);
        return;
    }
    if (!hs_search_soak_confirm(soak, s, s->job)) return;
    int all = hs_search_opens(s) == hs_search_wants(s);
    int spoils = hs_search_spoils(s);
    if (!all || spoils) say_no_soak(s, end == HS_SOAK_OPENS ? HS_SOAK_LONGEST : end, spoils);
    soak->taken = hs_remedy_offer(s);
}

static void help_soak(hs_search *s, hs_tried *soak) {
    if (!hs_try_helps(soak) || !hs_search_soak_confirm(soak, s, s->job)) return;
    soak->taken = hs_remedy_offer(s);
}

/* Of what helps and takes a whole quench to confirm, that which gains most. */
static hs_tried *best_costly(hs_tried *tried, size_t n) {
    hs_tried *best = NULL;
    for (size_t i = 0; i < n; i++)
        if (hs_try_helps(&tried[i]) && tried[i].costly && (!best || tried[i].gain_m > best->gain_m))
            best = &tried[i];
    return best;
}

/* What does not open the window by itself: all that is cheap to confirm; of the rest the two that
 * gain most, and none once something opens every window. */
static void confirm_helps(hs_search *s, hs_tried *tried, size_t n) {
    enum { COSTLY = 2 };
    for (int k = 0; k < COSTLY && !s->opened; k++) {
        hs_tried *t = best_costly(tried, n);
        if (!t) break;
        if (t->change)
            hs_try_confirm_help(t, s);
        else
            help_soak(s, t);
        t->taken = 1; /* once is enough */
    }
    for (size_t i = 1; i < n; i++)
        if (hs_try_helps(&tried[i]) && !tried[i].costly) hs_try_confirm_help(&tried[i], s);
}

/* What opens a window by few draws, first what is cheap to confirm. What only nearly opens it waits
 * for the others. */
static void confirm_openings(hs_search *s, hs_tried *tried, size_t n) {
    for (int costly = 0; costly < 2; costly++)
        for (int near = 0; near < 2; near++)
            for (size_t i = 1; i < n; i++) {
                hs_tried *t = &tried[i];
                if (t->taken || !hs_try_opens(t)) continue;
                if (t->costly != costly || (t->opens == 0) != near) continue;
                if (costly && s->opened >= ENOUGH) continue;
                if (hs_try_confirm_opening(t, s)) continue;
                t->near = 0; /* few draws were too hopeful: it may still help */
                t->opens = 0;
            }
}

/* Case and core harden surely: no other quench makes them harder. */
static int through_hard(const hs_chain *chain) {
    const double half = 0.5;
    return hs_harden_margin(chain).low >= 1 && chain->core.martensite >= half;
}

static void start(hs_search *s) {
    hs_remedy_work *work = s->work;
    hs_draws *few = &work->few;
    few->made = s->draws->n < HS_SOAK_DRAWS ? s->draws->n : HS_SOAK_DRAWS;
    few->n = few->made < HS_FEW_DRAWS ? few->made : HS_FEW_DRAWS;
    memcpy(few->z, s->draws->z, few->made * sizeof few->z[0]);
    memcpy(few->rough, s->draws->rough, few->made * sizeof few->rough[0]);
    memcpy(work->found, s->before, s->job->dimensions * sizeof work->found[0]);
    s->before_m = hs_search_total(s);
    hs_decide_again(work->found, s->before, s->chain, few, 0, s->decide);
    for (size_t i = 0; i < s->job->dimensions; i++)
        s->few_m[i] = hs_search_width(&work->found[i]);
}

size_t hs_remedy_find(hs_result_dimension *dimension, const hs_window_found *found,
                      const hs_chain *chain, hs_draws *draws, hs_remedy_work *work,
                      hs_chain_work *scratch, hs_decide_work *decide) {
    const hs_job *job = chain->job;
    hs_search s = {.dimension = dimension,
                   .before = found,
                   .job = job,
                   .chain = chain,
                   .draws = draws,
                   .work = work,
                   .scratch = scratch,
                   .decide = decide};
    hs_tried tried[MOST] = {{0}};
    size_t n, as_before = draws->n;
    const hs_change *changes = hs_changes(&n);
    assert(n < MOST);
    if (hs_search_wants(&s) == 0) return 0;
    start(&s);
    try_soak(&s, &tried[0]);
    int hard = through_hard(chain);
    for (int dear = 0; dear < 2 && s.opened < ENOUGH; dear++) {
        for (size_t i = 1; i <= n; i++)
            if (changes[i - 1].dear == dear && !(hard && changes[i - 1].soft))
                hs_try(&tried[i], &s, &changes[i - 1]);
        confirm_openings(&s, tried, n + 1);
    }
    if (!s.opened) hs_remedy_pairs(&s, tried, n + 1);
    confirm_helps(&s, tried, n + 1);
    for (size_t i = 0; i < job->dimensions; i++)
        hs_remedy_keep_best(&dimension[i]);
    hs_draws_take(draws, as_before);
    return s.ran;
}
