/* What must be put right in sheet or shop before the answer holds. */
#ifndef HS_PLAN_PUT_RIGHT_H
#define HS_PLAN_PUT_RIGHT_H

#include "hardskin/plan/result.h"

/** Look for it; one that is stop makes the answer stop, at the plan and at the bench. After all
 *  else of the result is known. */
void hs_put_right(hs_result *result, const hs_job *job);

#endif
