/* Which uncertain input makes the doubt of a drawn figure. */
#ifndef HS_PLAN_DRIVER_H
#define HS_PLAN_DRIVER_H

#include "plan/draw.h"

/** Shares of the variance of `value` over the draws that each input explains, alone or by its size:
 *  z and |z| of a normal number are uncorrelated, so the squares of both correlations add. Of a
 *  figure that is a sum of terms a z + b |z| they are exactly what freezing that input takes from
 *  its variance; they are told as shares of all that is explained, so that they add up to 100 %.
 *
 *    driver   out  up to `most`, biggest first; none that chance alone might show
 *    value    in   one number a draw
 *  Returns how many; 0 where the value is not finite or does not vary. */
size_t hs_drivers_find(hs_driver *driver, size_t most, const hs_draws *draws, const double *value);

#endif
