/* The part's shape after the quench: bow about both axes, tilt, ovality, growth; drawn. First form
 * of the bow: a random curvature by medium and section height, and what a case on one side adds. */
#ifndef HS_PLAN_WARP_H
#define HS_PLAN_WARP_H

#include "hardskin/model/case.h"
#include "plan/axis.h"
#include "plan/draw.h"
#include "plan/route.h"

typedef struct hs_warp {
    double axis_rad; /* of the section's own frame, to whose axes the next four belong */
    double sigma_x_m, sigma_y_m;         /* one standard deviation of the bow along each axis */
    double one_sided_x_m, one_sided_y_m; /* elastic bow of an uneven case, signs to each other */
    double left_m;                       /* straightened to at most this; INFINITY: not */
    double sigma_ovality_m;              /* ring */
    double growth;                       /* linear strain against the soft state, middle */
    double beta;                         /* spread of the random curvature, unevenness in it */
} hs_warp;

/** Bow (across x, across y) and growth figures of a job.
 *    typical       hs_case_profile  in   carbon and hardness of the first axis
 *    core_hardens  int              in   0: the core stays ferrite and pearlite and does not grow
 *  Returns  HS_OK, or as the section functions. */
hs_status hs_warp_make(hs_warp *warp, const hs_job *job, const hs_route *route, const hs_axes *axes,
                       const hs_case_profile *typical, int core_hardens, hs_error *err);

/** Bow at mid-length in a draw (m) across the sheet's x and y, signed, straightening in it. */
void hs_warp_bow(double *x_m, double *y_m, const hs_warp *warp, const double z[HS_INPUTS]);

/** V of a dimension in a draw (m): what the wheel meets, for the bow of that draw. */
double hs_warp_shape(const hs_warp *warp, const hs_job *job, const hs_dimension *dimension,
                     double bow_x_m, double bow_y_m, const double z[HS_INPUTS]);

/** Growth per side of a dimension in a draw (m): negative on a bore or slot that opens. */
double hs_warp_growth(const hs_warp *warp, const hs_job *job, const hs_dimension *dimension,
                      const double z[HS_INPUTS]);

/** Does metal lie outside this dimension (a bore, a slot between two faces)? */
int hs_dimension_inside(const hs_job *job, const hs_dimension *dimension);

/** Does this dimension run along the part's length? */
int hs_dimension_along(const hs_job *job, const hs_dimension *dimension);

#endif
