/* Sizes that cannot have been measured on this part are asked back. */
#ifndef HS_PLAN_MEASURED_ASK_H
#define HS_PLAN_MEASURED_ASK_H

#include "plan/bench.h"

/** Ask back a size that leaves nothing to finish, or more a side than the whole case is deep.
 *    total_m   in   total case from the hardened surface, typical; 0 not known
 *  Returns  HS_OK; HS_E_DISAGREE, with the sheet's place, unless it was said to be checked. */
hs_status hs_measured_ask(const hs_job *job, double total_m, hs_error *err);

#endif
