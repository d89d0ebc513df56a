/* How much longer a soak must be: found by running the chain again, never read off a chart. */
#include "constants.h"
#include "plan/remedy_search.h"
#include "plan/variant.h"

#include <math.h>
#include <string.h>

static const double half_hour_s = 1800;

/* Steps are whole half hours; what is known of the soaks tried so far. */
typedef struct soak {
    hs_search *search;
    const hs_job *base;
    long from, longest; /* the soak as it is; the longest reckoned with */
    long last;          /* the last that ran */
    long closed, open;  /* opens fewer windows; the shortest known that opens `opens` */
    size_t opens;
    long widest;
    int near;                /* opens all, or nearly, at the widest */
    double first_m, width_m; /* total width at the first that ran, and at the widest */
    double each_m[HS_MAX_DIMENSIONS];
} soak;

int hs_search_soak_set(hs_variant *variant, long steps) {
    return hs_variant_soak(variant, (double)steps * half_hour_s);
}

/* Run a soak; its windows opened and its total width. */
static hs_status run(soak *s, long steps, size_t *opens, double *width_m) {
    hs_variant *v = &s->search->work->variant;
    hs_variant_start(v, s->base);
    if (!hs_search_soak_set(v, steps)) return HS_E_RANGE;
    hs_status status = hs_search_run(s->search, v, 1);
    if (status != HS_OK) return status;
    *opens = hs_search_opens(s->search);
    *width_m = hs_search_total(s->search);
    return HS_OK;
}

static hs_status note(soak *s, long steps, double *width_m) {
    size_t opens;
    hs_status status = run(s, steps, &opens, width_m);
    if (status != HS_OK) return status;
    if (isnan(s->first_m)) s->first_m = *width_m;
    if (opens > s->opens) {
        s->opens = opens;
        s->open = steps;
        s->closed = s->last;
    }
    s->last = steps;
    if (!(*width_m <= s->width_m)) {
        s->width_m = *width_m;
        s->widest = steps;
        s->near = hs_search_near(s->search);
        hs_search_widths(s->each_m, s->search);
    }
    return HS_OK;
}

/* The longest between one that runs and one that takes the case through. */
static void near_the_end(soak *s, long runs, long fails) {
    double width_m;
    while (fails - runs > 1) {
        long middle = (runs + fails) / 2;
        if (note(s, middle, &width_m) == HS_OK)
            runs = middle;
        else
            fails = middle;
    }
}

/* Rising by a quarter until every window is open, or it makes no sense to go on. */
static hs_soak_end scan(soak *s) {
    const size_t all = hs_search_wants(s->search);
    long ran = s->from;
    double before_m = -INFINITY, width_m;
    while (ran < s->longest) {
        long next = (long)ceil(1.25 * (double)ran);
        if (next <= ran) next = ran + 1;
        if (next > s->longest) next = s->longest;
        if (note(s, next, &width_m) != HS_OK) {
            near_the_end(s, ran, next);
            return s->opens == all ? HS_SOAK_OPENS : HS_SOAK_THROUGH;
        }
        if (s->opens == all) return HS_SOAK_OPENS;
        if (width_m < before_m - HS_SEARCH_SEEN_M) return HS_SOAK_AUSTENITE;
        before_m = width_m;
        ran = next;
    }
    return s->width_m - s->first_m < HS_SEARCH_SEEN_M ? HS_SOAK_NO_USE : HS_SOAK_LONGEST;
}

/* Between the longest that opens fewer and the shortest known that opens as many as any. */
static long shortest(soak *s) {
    long closed = s->closed, open = s->open;
    while (open - closed > 1) {
        long middle = (closed + open) / 2;
        size_t opens = 0;
        double width_m;
        if (run(s, middle, &opens, &width_m) == HS_OK && opens >= s->opens)
            open = middle;
        else
            closed = middle;
    }
    return open;
}

/* Run with few draws, then confirmed with all. */
static int confirmed(soak *s, long steps) {
    size_t opens;
    double width_m;
    if (run(s, steps, &opens, &width_m) != HS_OK) return 0;
    hs_search_confirm(s->search, &s->search->work->variant);
    return 1;
}

/* Few draws are a hair off, either way: half an hour more, or less, until all draws agree. */
static int settle(soak *s, long steps) {
    enum { MORE = 4 };
    hs_remedy_work *work = s->search->work;
    hs_window_found kept[HS_MAX_DIMENSIONS];
    if (!confirmed(s, steps)) return 0;
    int opens = hs_search_opens(s->search) >= s->opens;
    for (int k = 0; k < MORE && s->opens > 0; k++) {
        long next = opens ? steps - 1 : steps + 1;
        if (next <= s->from || next > s->longest) return 1;
        memcpy(kept, work->found, sizeof kept);
        int ran = confirmed(s, next);
        int now = ran && hs_search_opens(s->search) >= s->opens;
        if (!ran || (opens && !now)) { /* the one before was it */
            memcpy(work->found, kept, sizeof kept);
            hs_variant_start(&work->variant, s->base);
            return hs_search_soak_set(&work->variant, steps);
        }
        steps = next;
        if (!opens && now) return 1;
    }
    return 1;
}

static soak start(hs_search *search, const hs_job *base) {
    soak s = {.search = search, .base = base, .first_m = NAN, .width_m = NAN};
    s.from = s.last = (long)floor(hs_variant_soak_s(base) / half_hour_s);
    s.longest = (long)floor(HS_K_PLAN_DOUBT_LONGEST_SOAK / half_hour_s);
    return s;
}

int hs_search_soak(hs_soak_end *end, hs_tried *found, hs_search *search, const hs_job *base) {
    hs_draws *few = &search->work->few;
    *found = (hs_tried){.costly = 1};
    if (!(hs_variant_soak_s(base) > 0)) return 0;
    soak s = start(search, base);
    size_t usual = few->n;
    few->n = few->made; /* more of them than for a size of change: a soak is solved for */
    *end = scan(&s);
    if (!isnan(s.first_m)) {
        found->steps = s.opens > 0 ? shortest(&s) : s.widest;
        found->ran = 1;
        found->opens = s.opens;
        found->near = s.near;
        found->width_m = s.width_m;
        found->gain_m = s.width_m - search->before_m;
        memcpy(found->each_m, s.each_m, sizeof s.each_m);
    }
    few->n = usual;
    return found->ran;
}

int hs_search_soak_confirm(const hs_tried *found, hs_search *search, const hs_job *base) {
    soak s = start(search, base);
    s.opens = found->opens;
    return settle(&s, found->steps);
}

const char *hs_search_soak_words(hs_soak_end end) {
    switch (end) {
    case HS_SOAK_THROUGH:
        return "a longer one brings the case of both sides through half the wall";
    case HS_SOAK_AUSTENITE:
        return "retained austenite, or a case this quench may leave partly soft, takes back what "
               "it "
               "adds in depth";
    case HS_SOAK_LONGEST:
        return "the longest reckoned with is not enough";
    case HS_SOAK_NO_USE:
        return "depth is not what is missing";
    case HS_SOAK_OPENS:
        break;
    }
    return "";
}
