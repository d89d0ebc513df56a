/* Carbon through the whole route on one axis: the chain's longest link. */
#ifndef HS_PLAN_HISTORY_H
#define HS_PLAN_HISTORY_H

#include "hardskin/model/carbon_course.h"
#include "hardskin/model/case.h"
#include "plan/axis.h"
#include "plan/route.h"

/** Where in the doubt of its inputs a history is run. */
typedef struct hs_history_point {
    double diffusivity_factor; /* on D; 1 */
    double surface;            /* -1 low end of the medium's range, 0 middle, +1 high end */
    double core_pct;           /* carbon of the steel */
    double transfer_factor;    /* on the surface transfer of the heats that have one; 1 */
    size_t cells;              /* of the mesh; 0: as many as the depths need */
} hs_history_point;

/** Scratch of hs_history_run. */
typedef struct hs_history_work {
    hs_carbon_end end;
    hs_carbon_accuracy accuracy; /* of the last run that chose its cells */
    hs_heat heat[HS_MAX_HEATS];
    hs_case_profile other; /* of the runs a response does not keep */
} hs_history_work;

/** Carbon profile of an axis after the route's first `heats` heats (all: route->heats).
 *
 *    profile   hs_case_profile  out  carbon over depth from the face; hardness is set by the caller
 *
 *  Returns  as hs_carbon_course_run and hs_carbon_course_refine. */
hs_status hs_history_run(hs_case_profile *profile, const hs_axis *axis, const hs_route *route,
                         size_t heats, hs_history_point at, hs_history_work *work, hs_error *err);

/** Can carbon be followed through one heat of the route? Returns as hs_carbon_course_run. */
hs_status hs_history_heat_check(const hs_route_heat *heat, hs_error *err);

/** Surface carbon of the medium at a point of its range. */
double hs_history_surface(const hs_route_heat *heat, double position);

#endif
