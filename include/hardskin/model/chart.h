/* The case-depth chart of the trade. */
#ifndef HARDSKIN_MODEL_CHART_H
#define HARDSKIN_MODEL_CHART_H

#include "hardskin/base/status.h"

/** Total case (m) under a saturated surface, F. E. Harris 1943.
 *
 *    depth_m  double  out
 *    temp_K   double  in   1500 to 1800 F (815 to 983 C)
 *    hold_s   double  in   .25 to 48 h at heat
 *
 *  Returns  HS_OK; HS_E_RANGE.
 *  Source   d (in) = 31.6 sqrt(h) / 10^(6700 / (F + 460)), Metal Progress 1943 (tables/chart.csv)
 */
HS_API hs_status hs_chart_total_case(double *depth_m, double temp_K, double hold_s, hs_error *err);

#endif
