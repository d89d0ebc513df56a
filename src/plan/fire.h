/* The box and the fire of a route: compound, gas, carbon monoxide, oil for the quench. */
#ifndef HS_PLAN_FIRE_H
#define HS_PLAN_FIRE_H

#include "hardskin/plan/result.h"

/** Does this step pack its parts into a box? Charcoal always does; what only a surface carbon is
 *  said of, where a box is named. */
int hs_fire_packs(const hs_step *step);

/** Fill result->pack and result->oil.
 *    result  in/out  its steps must be filled before (heat-up)
 *  Returns  HS_OK; HS_E_RANGE, HS_E_IMPOSSIBLE for a box hs_pack refuses. */
hs_status hs_fire_plan(hs_result *result, const hs_job *job, hs_error *err);

#endif
