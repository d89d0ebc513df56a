/* What would open a window that is closed or too narrow: each candidate is a changed job, run
 * through the chain again with the same draws; nothing is offered that this does not confirm. */
#ifndef HS_PLAN_REMEDY_H
#define HS_PLAN_REMEDY_H

#include "plan/decide.h"

/** A copy of a job whose steps and faces may be changed. */
typedef struct hs_variant {
    hs_job job;
    hs_step step[HS_MAX_STEPS];
    hs_face face[HS_MAX_FACES];
    hs_dimension dimension[HS_MAX_DIMENSIONS];
    char what[80], text[240];
    int quench; /* steel or quench is another: say how surely the case then hardens */
} hs_variant;

enum { HS_FEW_DRAWS = 512 };

typedef struct hs_remedy_work {
    hs_draws few; /* the first of the draws: enough to find a size of change, not to confirm it */
    hs_variant variant, best;
    hs_chain chain;
    hs_window_found found[HS_MAX_DIMENSIONS];
} hs_remedy_work;

/** Fill the remedies of every dimension that is tight or stop, best gain first.
 *    dimension  result dimensions  in/out  only remedy and remedies are written
 *    found      in   the windows of the job as it stands */
void hs_remedy_find(hs_result_dimension *dimension, const hs_window_found *found,
                    const hs_chain *chain, hs_draws *draws, hs_remedy_work *work,
                    hs_chain_work *scratch, hs_decide_work *decide);

#endif
