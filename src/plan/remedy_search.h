/* The search for remedies: a changed job is run with few draws while its size is sought, and with
 * all of them, on all dimensions, before it is offered. */
#ifndef HS_PLAN_REMEDY_SEARCH_H
#define HS_PLAN_REMEDY_SEARCH_H

#include "plan/remedy.h"

typedef struct hs_search {
    hs_result_dimension *dimension;
    const hs_window_found *before; /* windows of the job as it stands */
    const hs_job *job;
    const hs_chain *chain; /* of the job as it stands */
    hs_draws *draws;
    hs_remedy_work *work; /* work->found: windows of the last run */
    hs_chain_work *scratch;
    hs_decide_work *decide;
    int opened; /* some single change opens every window */
    int best_is_soak;
    double best_width_m;
} hs_search;

/** Is this dimension one that a remedy is sought for? */
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

/** What ends the search for a longer soak. */
typedef enum hs_soak_end {
    HS_SOAK_OPENS,     /* every window wanted */
    HS_SOAK_THROUGH,   /* the case would take more than half a wall */
    HS_SOAK_AUSTENITE, /* the window narrows again */
    HS_SOAK_LONGEST,   /* the longest reckoned with */
    HS_SOAK_NO_USE     /* depth is not what is missing */
} hs_soak_end;

/** The shortest soak, to the next half hour, that opens as many windows as any does; confirmed.
 *    end    out
 *    base   in    the job, or a changed one
 *  Leaves the changed job in work->variant and its windows in work->found.
 *  Returns 0 where no other soak can be run. */
int hs_search_soak(hs_soak_end *end, hs_search *search, const hs_job *base);

/** Why no longer soak opens a window, in words. */
const char *hs_search_soak_words(hs_soak_end end);

#endif
