/* A part whose case does not last for the wheel: how long a second soak would have to be, run
 * through the chain from the case it has. */
#ifndef HS_PLAN_SECOND_H
#define HS_PLAN_SECOND_H

#include "plan/bench.h"
#include "plan/remedy.h"

/** The shortest second soak, to the next half hour, in the same medium and at the same heat, after
 *  which every measured dimension may be ground; where none does that with the doubt against us,
 * the shortest that does with care. The case is counted on from what is left: the computed profile,
 * or where the case was read the profile drawn out to that, less the scale the first fire took.
 *
 *    second  out  not present where no measured dimension's case falls short, or no soak helps
 *    in      in   all but `second`
 *    work, scratch, decide  work  chain, variant and columns are overwritten */
void hs_second_find(hs_second *second, const hs_measured_input *in, const hs_chain *chain,
                    const hs_draws *draws, hs_remedy_work *work, hs_chain_work *scratch,
                    hs_decide_work *decide);

/** What a second soak of that length makes of the part.  Returns as hs_chain_recase;
 *  HS_E_TOO_LARGE where the route cannot be gone twice. */
hs_status hs_second_make(hs_second *second, double hold_s, const hs_chain *chain,
                         const hs_draws *draws, hs_remedy_work *work, hs_chain_work *scratch,
                         hs_decide_work *decide);

#endif
