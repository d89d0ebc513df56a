/* Carbon through the whole route on one axis: the chain's longest link. */
#ifndef HS_PLAN_HISTORY_H
#define HS_PLAN_HISTORY_H

#include "hardskin/model/case.h"
#include "plan/axis.h"
#include "plan/route.h"

/** Where in the doubt of its inputs a history is run. */
typedef struct hs_history_point {
    double diffusivity_factor; /* on D; 1 */
    double surface;            /* -1 low end of the medium's range, 0 middle, +1 high end */
} hs_history_point;

/** Scratch of hs_history_run. */
typedef struct hs_history_work {
    hs_carbon_mesh mesh;
    hs_carbon_work carbon;
    double carbon_pct[HS_CARBON_CELLS];
    hs_heat heat[HS_MAX_HEATS];
} hs_history_work;

/** Carbon profile of an axis after the route's first `heats` heats (all: route->heats).
 *
 *    profile   hs_case_profile  out  carbon over depth from the face; hardness is set by the caller
 *    core_pct  double           in   carbon of the steel
 *
 *  Returns  as hs_carbon_run and hs_carbon_mesh_make. */
hs_status hs_history_run(hs_case_profile *profile, const hs_axis *axis, const hs_route *route,
                         size_t heats, hs_history_point at, double core_pct, hs_history_work *work,
                         hs_error *err);

/** Surface carbon of the medium at a point of its range. */
double hs_history_surface(const hs_route_heat *heat, double position);

#endif
