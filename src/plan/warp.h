/* The part's shape after the quench: bow about both axes, tilt, ovality, growth; drawn. The bow is
 * the sum of what the quench of the section computes to (plan/bend), of stress that was in the
 * stock, and of what no section's sum holds (dipping, steam pockets, supports, handling). */
#ifndef HS_PLAN_WARP_H
#define HS_PLAN_WARP_H

#include "plan/bend.h"

typedef struct hs_warp {
    hs_bend bend;
    double length_m, axis_rad;   /* of the section's own frame, to whose axes the next belong */
    double other_x_m, other_y_m; /* one standard deviation of the bow: what the sum does not hold */
    double stock_x_m, stock_y_m; /* ... of stress in the stock */
    double left_m;               /* straightened to at most this; INFINITY: not */
    double ring_m2;              /* ovality (largest less smallest diameter) per curvature of the
                                    wall; 0: no ring, whose other_y and stock_y are ovalities */
    double weak_x, weak_y;       /* hs_chuck_weak: the way the chuck pulls it flat */
    double beta;                 /* the calibrated form, for comparison */
} hs_warp;

/** A dimension between flats that the chuck pulls flat (hs_chuck_pulls): no shape under the wheel,
 * and its bow comes back afterwards. */
int hs_dimension_pulled(const hs_job *job, const hs_dimension *dimension);

/** Bow of a flat dimension's faces when the part lies free (m). */
double hs_warp_sprung(const hs_job *job, const hs_dimension *dimension, double x_m, double y_m);

/** Bow (across x, across y) and growth figures of a job.
 *    like, coarse               in   hs_bend_make
 *    typical   hs_case_profile  in   carbon of the first axis; n = 0: none
 *    quenched  hs_quenched      in   the thinnest wall
 *  Returns  HS_OK, or as the section functions and hs_bend_make. */
hs_status hs_warp_make(hs_warp *warp, const hs_bend *like, const hs_job *job, const hs_route *route,
                       const hs_case_profile *typical, const hs_quenched *quenched, int coarse,
                       hs_bend_work *work, hs_error *err);

/** Bow at mid-length in a draw (m) across the sheet's x and y, signed, straightening in it. */
void hs_warp_bow(double *x_m, double *y_m, const hs_warp *warp, const double z[HS_INPUTS]);

/** Ovality of a ring in a draw (m, largest less smallest diameter, not negative). */
double hs_warp_ovality(const hs_warp *warp, const double z[HS_INPUTS]);

/** V of a dimension in a draw (m): what the wheel meets, for the bow of that draw. */
double hs_warp_shape(const hs_warp *warp, const hs_job *job, const hs_dimension *dimension,
                     double bow_x_m, double bow_y_m, const double z[HS_INPUTS]);

/** Growth per side of a dimension in a draw (m): negative on a bore or slot that opens. */
double hs_warp_growth(const hs_warp *warp, const hs_job *job, const hs_dimension *dimension,
                      const double z[HS_INPUTS]);

/** Does metal lie outside this dimension (a bore, a slot between two faces)? */
int hs_dimension_inside(const hs_job *job, const hs_dimension *dimension);

/** Is a face of the dimension ground? */
int hs_dimension_ground(const hs_job *job, size_t dimension);

/** Does this dimension run along the part's length? */
int hs_dimension_along(const hs_job *job, const hs_dimension *dimension);

#endif
