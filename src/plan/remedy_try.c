#include "plan/remedy_try.h"

#include "plan/remedy_offer.h"

#include <math.h>

/* Run one size with few draws; 0 where it does not apply, or cannot be run. */
static int run(hs_search *s, const hs_change *change, int size) {
    hs_variant *v = &s->work->variant;
    hs_variant_start(v, s->job);
    return change->change(v, size) && hs_search_run(s, v, change->fire) == HS_OK;
}

/* The same with all draws and a whole quench. */
static int run_whole(hs_search *s, const hs_change *change, int size) {
    if (!run(s, change, size)) return 0;
    hs_search_confirm(s, &s->work->variant);
    return 1;
}

static void keep(hs_tried *t, const hs_search *s, int size) {
    size_t opens = hs_search_opens(s);
    double width_m = hs_search_total(s);
    if (t->ran && (opens < t->opens || (opens == t->opens && (opens > 0 || width_m <= t->width_m))))
        return;
    t->ran = 1;
    t->size = size;
    t->opens = opens;
    t->near = hs_search_near(s);
    t->width_m = width_m;
    t->gain_m = hs_search_gain(s);
    hs_search_widths(t->each_m, s);
    t->costly = s->work->chain.warp.bend.coarse;
    t->quench = s->work->variant.quench;
}

void hs_try(hs_tried *out, hs_search *s, const hs_change *change) {
    *out = (hs_tried){.change = change};
    size_t all = hs_search_wants(s);
    for (int size = 0; size < change->sizes && out->opens < all; size++)
        if (run(s, change, size)) keep(out, s, size);
}

int hs_try_opens(const hs_tried *t) {
    return t->ran && (t->opens > 0 || t->near);
}

int hs_try_helps(const hs_tried *t) {
    return t->ran && !t->taken && t->gain_m > HS_SEARCH_SEEN_M / 2;
}

int hs_try_confirm_opening(hs_tried *t, hs_search *s) {
    int stands = -1, last = -1; /* a size confirmed that opens nothing; the one in the work space */
    for (int size = t->size; size < t->change->sizes; size++) {
        last = size;
        if (!run(s, t->change, size)) continue;
        stands = -1;
        if (hs_search_opens(s) == 0 && !hs_search_near(s)) continue;
        hs_search_confirm(s, &s->work->variant);
        if (hs_search_opens(s) > 0 && hs_remedy_offer(s)) return t->taken = 1;
        stands = size;
    }
    if (stands < 0 || (stands != last && !run_whole(s, t->change, stands))) return t->taken = 0;
    return t->taken = hs_remedy_offer(s);
}

void hs_try_confirm_help(hs_tried *t, hs_search *s) {
    for (int size = t->size; size >= 0 && !t->taken; size--)
        t->taken = run_whole(s, t->change, size) && hs_remedy_offer(s);
}
