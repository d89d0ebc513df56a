/* What would open a window that is closed or too narrow: each candidate is a changed job, run
 * through the chain again with the same draws; nothing is offered that this does not confirm. */
#ifndef HS_PLAN_REMEDY_H
#define HS_PLAN_REMEDY_H

#include "plan/decide.h"
#include "plan/variant.h"

enum { HS_FEW_DRAWS = 512, HS_SOAK_DRAWS = 2048 };

typedef struct hs_remedy_work {
    hs_draws few; /* the first of the draws: enough to find a size of change, not to confirm it */
    hs_variant variant, first;
    hs_chain chain;
    hs_window_found found[HS_MAX_DIMENSIONS];
} hs_remedy_work;

/** Fill the remedies of every dimension that is tight or stop, best gain first. All changes are run
 *  with few draws and a coarse quench; those that open a window, or nearly, are confirmed, pairs
 * are tried where none opens all, and what only helps is confirmed where that is cheap or nothing
 *  opens.
 *    dimension  result dimensions  in/out  only remedy and remedies are written
 *    found      in   the windows of the job as it stands
 *  Returns  how many changed jobs were run. */
size_t hs_remedy_find(hs_result_dimension *dimension, const hs_window_found *found,
                      const hs_chain *chain, hs_draws *draws, hs_remedy_work *work,
                      hs_chain_work *scratch, hs_decide_work *decide);

#endif
