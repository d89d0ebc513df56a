/* Is a heat one that can be run? */
#ifndef HS_MODEL_CARBON_CHECK_H
#define HS_MODEL_CARBON_CHECK_H

#include "hardskin/model/carbon.h"

/** Check a heat by itself: its path, its sides, and the diffusivity at the carbon of its sides, the
 *  highest of which it gives. Returns as hs_carbon_run. */
hs_status hs_carbon_heat_check(double *carbon_high_pct, const hs_heat *heat,
                               const hs_diffusivity *d, hs_error *err);

/** Check mesh, carbon, heat and diffusivity against each other; gives the highest carbon at hand.
 *  Returns as hs_carbon_run. */
hs_status hs_carbon_check(double *carbon_high_pct, const double *carbon_pct,
                          const hs_carbon_mesh *mesh, const hs_heat *heat, const hs_diffusivity *d,
                          hs_error *err);

#endif
