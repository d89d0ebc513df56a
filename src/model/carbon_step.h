/* One step of the carbon march, and how wrong it may be. */
#ifndef HS_MODEL_CARBON_STEP_H
#define HS_MODEL_CARBON_STEP_H

#include "model/carbon_stage.h"

/** Backward Euler from the march's place over h (m2 of the clock): the first step of a heat.
 *  The new level lies in `now`; nothing else moves until hs_carbon_step_accept. */
hs_status hs_carbon_step_first(hs_carbon_march *march, double h, hs_error *err);

/** TR-BDF2 over h. error_pct (may be NULL) is the largest local error of a cell, from the embedded
 *  third-order formula, damped as the stiff modes are (Hosea and Shampine 1996). */
hs_status hs_carbon_step(hs_carbon_march *march, double *error_pct, double h, hs_error *err);

/** Move the march to the end of the step just made. */
void hs_carbon_step_accept(hs_carbon_march *march, double h);

#endif
