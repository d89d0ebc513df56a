/* What the plan knows, as the bench needs it. */
#ifndef HS_PLAN_MEASURED_INPUT_H
#define HS_PLAN_MEASURED_INPUT_H

#include "plan/bench.h"
#include "plan/decide.h"

/** From the chain, its windows and what stands in the result of case, scale and faces. */
void hs_measured_input_make(hs_measured_input *in, const hs_chain *chain,
                            const hs_window_found *found, const hs_result *result);

#endif
