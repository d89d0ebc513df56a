/* What the quench makes of core and case: rates of cooling, margins, limits of carbon. */
#ifndef HS_PLAN_HARDEN_H
#define HS_PLAN_HARDEN_H

#include "plan/chain.h"

/** Hardness and structure of the core, in the middle of the thinnest section. */
hs_status hs_harden_core(hs_chain *chain, hs_error *err);

/** The thinnest section in the middle of the medium's severity. */
hs_quenched hs_harden_section(const hs_chain *chain);

/** Limits, rates and margin of one face; nothing for a masked one.
 *  Returns  HS_OK; HS_E_RANGE where the core is as hard as the case is counted to; HS_E_THROUGH. */
hs_status hs_harden_face(hs_chain *chain, size_t face, hs_error *err);

/** Hardness of a carbon profile on an axis, as the rate at each depth has it. */
hs_status hs_harden_profile(hs_case_profile *profile, const hs_chain *chain, const hs_axis *axis,
                            hs_error *err);

/** The least margin of hardening of the ground cases of a job, 1 at all three ends where there is
 *  none. */
hs_band hs_harden_margin(const hs_chain *chain);

#endif
