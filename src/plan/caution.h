/* The cautions a job calls for: those of the steps and findings it really has, no others. */
#ifndef HS_PLAN_CAUTION_H
#define HS_PLAN_CAUTION_H

#include "hardskin/plan/result.h"

/** Fill result->caution and result->cautions, each code once, in the order of the route.
 *    result   in/out   its case, faces, section and descaling must be filled before; what is not
 * there (hard.present 0, NaN) calls nothing job      in       the sheet's route, steel, features */
void hs_caution_collect(hs_result *result, const hs_job *job);

#endif
