/* As far as a job must be carried before nothing of it can be refused any more. */
#ifndef HS_PLAN_READY_H
#define HS_PLAN_READY_H

#include "hardskin/plan/result.h"
#include "plan/chain.h"

/** The chain of a job but for the bow of its quench, and the case that was read; what was measured
 *  is held against them.
 *
 *    reading   hs_reading   out   not yet in the chain: the caller puts it there
 *
 *  Returns  as hs_plan, with the sheet's place where there is one. */
hs_status hs_ready_make(hs_chain *chain, hs_reading *reading, const hs_job *job,
                        hs_response_extent extent, hs_chain_work *work, hs_error *err);

/** One descale step, of a chain that is ready; NULL: of a part of which nothing is known yet.
 *  Returns  as hs_descale_plan, with the sheet's place. */
hs_status hs_ready_descale(hs_result_descale *out, const hs_job *job, const hs_chain *chain,
                           size_t step, hs_error *err);

#endif
