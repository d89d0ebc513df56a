/* The size to aim at inside a window: the one with the greatest share of good draws, written so
 * that a bench can read it. */
#ifndef HS_PLAN_AIM_H
#define HS_PLAN_AIM_H

#include "plan/found.h"

/** Nearest number that reads well and lies in low..high, in the unit of the arguments: with
 *  `coarse_places` decimals where the nearest such one lies inside, else with `places`; NaN where
 *  none does. */
double hs_aim_readable(double size, double low, double high, int coarse_places, int places);

/** Slack of a part at a rough size: positive when both faces clean up and keep their case.
 *    need_m, may_m   in  of both faces */
double hs_aim_room(const hs_window_found *found, const double need_m[2], const double may_m[2],
                   const hs_size *finish, double rough_m);

/** The same for one of the draws. */
double hs_aim_slack(const hs_window_found *found, const hs_dimension_draws *d,
                    const hs_size *finish, double rough_m, size_t draw);

/** Set found->aim_m and found->joint. The aim is a size that can be printed in the unit of the job;
 *  a window in which none lies with the whole rough tolerance is tight, one in which none lies at
 *  all is stop. */
void hs_aim_find(hs_window_found *found, const hs_chain *chain, size_t dimension,
                 const hs_draws *draws, hs_decide_work *work);

#endif
