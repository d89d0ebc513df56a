/* The search for remedies: a changed job is run with few draws while its size is sought, and with
 * all of them, on all dimensions, before it is offered. */
#ifndef HS_PLAN_REMEDY_SEARCH_H
#define HS_PLAN_REMEDY_SEARCH_H

#include "plan/remedy.h"
#include "plan/variant.h"

/** A gain per side smaller than this is none: a bench does not see it. */
#define HS_SEARCH_SEEN_M 20e-6

typedef struct hs_search {
    hs_result_dimension *dimension;
    const hs_window_found *before; /* windows of the job as it stands */
    const hs_job *job;
    const hs_chain *chain; /* of the job as it stands */
    hs_draws *draws;
    hs_remedy_work *work; /* work->found: windows of the last run */
    hs_chain_work *scratch;
    hs_decide_work *decide;
    double few_m[HS_MAX_DIMENSIONS]; /* half widths of the job as it stands, by few draws */
    double before_m;                 /* hs_search_total of it, by all draws */
    size_t ran;                      /* changed jobs */
    int opened;                      /* how much that was confirmed opens every window */
} hs_search;

/** One change of the job: what few draws and a coarse quench say of it. */
typedef struct hs_tried {
    const hs_change *change; /* NULL: the longer soak */
    int ran;                 /* some size of it can be run */
    int size; /* the smallest that opens as many windows as any; where none opens one, the widest */
    long steps;     /* of a soak: likewise, in its own steps */
    size_t opens;   /* windows */
    int near;       /* opens all that are wanted, or so nearly that few draws do not tell */
    double width_m; /* hs_search_total there */
    double each_m[HS_MAX_DIMENSIONS]; /* hs_search_width there */
    double gain_m;                    /* the most that one dimension gains, per side */
    int costly;                       /* another quench: to confirm it takes a whole one */
    int quench;                       /* medium or steel is another */
    int taken;
} hs_tried;

/** Is this dimension one that a remedy is sought for? Where nothing is ground the fire scatters the
 *  size, and no change of the route makes that less. */
int hs_search_wanted(const hs_window_found *before);

/** Half of the width of the rough sizes (m): may - need per side, less half of the finished
 *  tolerance; of unequal faces what the worse one leaves. Negative where shut. */
double hs_search_width(const hs_window_found *found);

/** Run a changed job with few draws on the dimensions wanted.
 *    fire   in   it changes what the carbon does; else the carbon of the job is taken over
 *  Returns  HS_OK, or why it cannot be run. */
hs_status hs_search_run(hs_search *search, const hs_variant *variant, int fire);

/** The chain of the last run on all dimensions, and on as many draws as its own plan would make. */
void hs_search_confirm(hs_search *search, const hs_variant *variant);

/** How many of the windows wanted the last run opened; how many are wanted. */
size_t hs_search_opens(const hs_search *search);
size_t hs_search_wants(const hs_search *search);

/** After a confirmation: is a dimension worse off than before? */
int hs_search_spoils(const hs_search *search);

/** Sum of the widths of the windows wanted, each counted up to a millimetre. */
double hs_search_total(const hs_search *search);

/** hs_search_width of every dimension in the last run. */
void hs_search_widths(double width_m[HS_MAX_DIMENSIONS], const hs_search *search);

/** The most that one of the dimensions wanted gained by the last run, per side. */
double hs_search_gain(const hs_search *search);

/** Are all windows wanted open in the last run, or so nearly that few draws do not tell? */
int hs_search_near(const hs_search *search);

/** What ends the search for a longer soak. */
typedef enum hs_soak_end {
    HS_SOAK_OPENS,     /* every window wanted */
    HS_SOAK_THROUGH,   /* the case would take more than half a wall */
    HS_SOAK_AUSTENITE, /* the window narrows again */
    HS_SOAK_LONGEST,   /* the longest reckoned with */
    HS_SOAK_NO_USE     /* depth is not what is missing */
} hs_soak_end;

/** By few draws, the shortest soak, to the next half hour, that opens as many windows as any does,
 *  or the one that opens them widest.
 *    end    out
 *    base   in    the job, or a changed one
 *  Returns 0 where no other soak can be run; the last run is not the one found. */
int hs_search_soak(hs_soak_end *end, hs_tried *found, hs_search *search, const hs_job *base);

/** That soak, or the next shorter or longer, run with all draws. Leaves the changed job in
 *  work->variant and its windows in work->found; 0 where it cannot be run. */
int hs_search_soak_confirm(const hs_tried *found, hs_search *search, const hs_job *base);

/** Why no longer soak opens a window, in words. */
const char *hs_search_soak_words(hs_soak_end end);

/** Set a variant to a soak of so many steps. */
int hs_search_soak_set(hs_variant *variant, long steps);

#endif
