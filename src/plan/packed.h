/* The packed box of a carburise step: what is in it, the part's path through its fire, and what
 * the doubt about both means for the carbon. */
#ifndef HS_PLAN_PACKED_H
#define HS_PLAN_PACKED_H

#include "plan/route.h"

/** Where in their doubt compound and fire are taken: factors on the compound's conductivity and on
 *  the fire's time of cooling. */
typedef struct hs_packing {
    double speed, cooling;
    const hs_route *like; /* a route with the same fires, whose paths are taken over; or NULL */
} hs_packing;

/** Sizes of one part, rising. */
void hs_packed_part_sizes(double size_m[3], const hs_part *part);

/** All parts of the job in one box of that least inner size; its other sizes are taken as the part
 *  with its cover, and longer where the parts would fill more than the table's usual share. */
void hs_packed_load(hs_box_load *load, const hs_job *job, double box_m);

/** Path of the part from fire on to fire off, times in heat->lag, the way down in box->cool.
 *  Returns  as hs_box_heat; HS_E_IMPOSSIBLE when the part is thicker than the box. */
hs_status hs_packed_heat(hs_route_heat *heat, hs_box_path *box, const hs_job *job,
                         const hs_step *step, const hs_packing *packing, hs_error *err);

/** The way down alone, of a heat that was logged; box->cool_n is 0 where it cannot be told. */
void hs_packed_cool(hs_box_path *box, const hs_job *job, const hs_step *step, double from_K,
                    double cooling);

/** Fill route->heat_log from the heats' own spread: how much carbon's D times time moves with the
 *  compound slow or fast, the fire late or early, its cooling slow or fast, the fire off at the
 *  same hour. */
void hs_packed_doubt(hs_route *route, const hs_job *job);

#endif
