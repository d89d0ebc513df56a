/* Conversion between hardness scales. They are scales, not units: only by a named table, only
 * inside it. */
#ifndef HARDSKIN_UNITS_HARDNESS_H
#define HARDSKIN_UNITS_HARDNESS_H

#include "hardskin/units/quantity.h"

/** Convert a hardness by ASTM E140 / A370, linear between the rows, through HRC.
 *
 *    out    double  out  in the scale `to`
 *    value  double  in   20 to 68 HRC, 238 to 940 HV, 226 to 739 HBW, 60.5 to 83.9 HRA,
 *                       69.4 to 93.2 HR15N, 41.5 to 84.4 HR30N
 *
 *  The columns HBW and HRA end at 65 HRC. From a scale to itself the value is returned as it is, if
 *  it lies inside that scale's column. A conversion carries about +-1 HRC.
 *  Returns  HS_OK; HS_E_RANGE outside the table; HS_E_WORD when a scale is HS_SCALE_NONE.
 *  Source   tables/e140.csv
 */
HS_API hs_status hs_hardness_convert(double *out, double value, hs_scale from, hs_scale to,
                                     hs_error *err);

/** HRC of a Vickers hardness, NaN outside 238 to 940 HV. */
HS_API double hs_hardness_HRC_of_HV(double hardness_HV);

/** HV of a Rockwell C hardness, NaN outside 20 to 68 HRC. */
HS_API double hs_hardness_HV_of_HRC(double hardness_HRC);

/** Nonzero when a Brinell value lies above what the ball is made for (650 HBW): a caution. */
HS_API int hs_hardness_beyond_ball(double hardness_HBW);

#endif
