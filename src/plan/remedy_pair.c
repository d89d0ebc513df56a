#include "plan/remedy_pair.h"

#include "plan/remedy_offer.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static void name_both(hs_variant *v, const hs_variant *first) {
    char both[sizeof v->what], text[sizeof v->text];
    snprintf(both, sizeof both, "%.62s; %.62s", first->what, v->what);
    snprintf(text, sizeof text, "%.196s; %.196s", first->text, v->text);
    memcpy(v->what, both, sizeof both);
    memcpy(v->text, text, sizeof text);
}

/* The change as it was tried, on top of what the variant holds. */
static int apply(hs_variant *v, const hs_tried *t) {
    return t->change ? t->change->change(v, t->size) : hs_search_soak_set(v, t->steps);
}

/* Could both together open all windows? Twice what the second gains by itself, and a tenth of a
 * millimetre, was never reached by two that hang together. Another steel or medium may mend what
 * shuts the first one, whatever it gains by itself. */
static int can_open(const hs_search *s, const hs_tried *first, const hs_tried *second) {
    const double slack_m = 0.1e-3, times = 2;
    if (first->quench || second->quench) return 1;
    for (size_t i = 0; i < s->job->dimensions; i++) {
        double gain_m = fmax(0, second->each_m[i] - s->few_m[i]);
        if (hs_search_wanted(&s->before[i]) &&
            first->each_m[i] + times * gain_m + slack_m < s->job->shop.rough_tolerance_m)
            return 0;
    }
    return 1;
}

/* Does the last run, confirmed, open every window and close none? Then it is offered. */
static int settle(hs_search *s) {
    return hs_search_opens(s) == hs_search_wants(s) && hs_remedy_offer(s);
}

/* One change at its largest, and the soak that is then enough. */
static int with_soak(hs_search *s, const hs_tried *t) {
    hs_variant *first = &s->work->first;
    hs_soak_end end;
    hs_tried soak;
    hs_variant_start(first, s->job);
    if (!apply(first, t) || !hs_search_soak(&end, &soak, s, &first->job)) return 0;
    if (end != HS_SOAK_OPENS || !hs_search_soak_confirm(&soak, s, &first->job)) return 0;
    name_both(&s->work->variant, first);
    return settle(s);
}

static int both(hs_search *s, const hs_tried *first, const hs_tried *second) {
    hs_variant *v = &s->work->variant, *one = &s->work->first;
    hs_variant_start(one, s->job);
    if (!apply(one, first)) return 0;
    hs_variant_start(v, &one->job);
    if (!apply(v, second)) return 0;
    name_both(v, one);
    v->quench = first->quench || second->quench;
    int fire = !first->change || first->change->fire || second->change->fire;
    if (hs_search_run(s, v, fire) != HS_OK) return 0;
    if (hs_search_opens(s) < hs_search_wants(s) && !hs_search_near(s)) return 0;
    if (!first->change) return with_soak(s, second);
    hs_search_confirm(s, v);
    return settle(s);
}

/* tried[0] is the soak. */
static int with_each(hs_search *s, const hs_tried *first, const hs_tried *tried, size_t n) {
    if (first->change && tried[0].ran && can_open(s, first, &tried[0]) && with_soak(s, first))
        return 1;
    for (size_t i = 1; i < n; i++)
        if (&tried[i] != first && tried[i].ran && can_open(s, first, &tried[i]) &&
            both(s, first, &tried[i]))
            return 1;
    return 0;
}

static const hs_tried *widest(const hs_tried *tried, size_t n, const hs_tried *but) {
    const hs_tried *best = NULL;
    for (size_t i = 0; i < n; i++)
        if (&tried[i] != but && tried[i].ran && tried[i].gain_m > 0 &&
            (!best || tried[i].width_m > best->width_m))
            best = &tried[i];
    return best;
}

void hs_remedy_pairs(hs_search *s, const hs_tried *tried, size_t n) {
    const hs_tried *first = widest(tried, n, NULL);
    if (!first || with_each(s, first, tried, n)) return;
    const hs_tried *next = widest(tried, n, first);
    if (next) (void)with_each(s, next, tried, n);
}
