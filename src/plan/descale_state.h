/* How hard the part is when it comes to a descale step. */
#ifndef HS_PLAN_DESCALE_STATE_H
#define HS_PLAN_DESCALE_STATE_H

#include "plan/chain.h"
#include "plan/descale.h"

/** State of the part before step `step`: hard after the quench, whatever hardness comes out; after
 * a slow cooling as hard as the steel becomes at that rate (hs_structure_of, the hardest carbon of
 *  the case counts), and a stress relieve after it softens it again. */
hs_descale_at hs_descale_state(const hs_chain *chain, size_t step);

/** Rate of cooling (K/s) as a path passes 700 C, or of its last piece where it ends above; 0 where
 *  it does not cool. */
double hs_descale_rate(const hs_heat_point *point, size_t n);

#endif
