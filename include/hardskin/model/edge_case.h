/* Carbon at the edges of a section. At an outer edge it comes in from two faces and the case is
 * deeper than under the flat; at an inner (re-entrant) edge it spreads into more metal than one
 * face's worth and the case is shallower. Depths here are shares of the flat's at the same carbon,
 * so time and diffusivity fall out.
 *
 * The edge is sharp, both faces stand at one carbon, D is constant: the wedge has an exact solution
 * then. A radius or a chamfer lies between it and the flat, so sharp is the worst. A D that rises
 * with carbon brings the shares nearer to 1, at an inner edge by up to .04 (Agren, 925 C, tests). A
 * hand-over that is slow, or faces closed for a while, lower them: count y from the flat's own
 * surface then, twice over: y / S^2, S = (its surface - core) / (medium - core). The tests hold
 * that against a plane of finite volumes: the share is never the higher one.
 *
 * A face that is masked turns no carbon away and lets none in: it is a mirror. An edge between an
 * open and a masked face counts with twice its angle, up to two full turns. Angles are those of the
 * metal, from face to face: 90 degrees the edge of a bar, 270 degrees the corner of a step.
 *
 *    y   carbon level, (C - core) / (surface - core): 1 at the faces, 0 in the core */
#ifndef HARDSKIN_MODEL_EDGE_CASE_H
#define HARDSKIN_MODEL_EDGE_CASE_H

#include "hardskin/base/status.h"

enum { HS_EDGE_LEVELS = 13 };

/** Depths at one edge by carbon level, as shares of the flat's depth at that level. */
typedef struct hs_edge {
    double angle_rad;
    double below[HS_EDGE_LEVELS];  /* along a face's normal at the very edge; INFINITY below 180
                                      degrees: the normal leaves the metal or runs along its rim */
    double inward[HS_EDGE_LEVELS]; /* from the edge along the bisector */
} hs_edge;

/** Carbon level in a wedge.
 *
 *    y              double  out
 *    angle_rad      double  in   of the metal, pi/6 to 4 pi
 *    direction_rad  double  in   from one face, 0 to angle_rad
 *    distance       double  in   from the edge over 2 sqrt(D t), 0 to 8
 *
 *  Returns  HS_OK; HS_E_RANGE. Output untouched on failure.
 *  Source   Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed., 14.14 (heat in a wedge),
 *           from memory; its cases of 180 and 90 degrees are erf and erf x erf. */
HS_API hs_status hs_edge_carbon(double *y, double angle_rad, double direction_rad, double distance,
                                hs_error *err);

/** Tabulate an edge: some 2.4 ms; do it once.
 *  Returns  HS_OK; HS_E_RANGE for an angle outside pi/6 to 4 pi; HS_E_CONVERGE. */
HS_API hs_status hs_edge_make(hs_edge *edge, double angle_rad, hs_error *err);

/** Shares of the flat's depth at a level, linear between the tabulated ones.
 *  From 180 degrees: any y from 0 to 1; below level .02 the share at .02 (it rises to 1 there, so
 *  this is the safe side), 0 at level 1. Below 180 degrees: .02 to .98.  Outside: NaN. */
HS_API double hs_edge_below(const hs_edge *edge, double y);
HS_API double hs_edge_inward(const hs_edge *edge, double y);

/** How far along a face, in depths of the flat, the edge is felt: the depth along the face's
 *  normal differs from the flat's by `share` of it there, and by less beyond.
 *
 *    along      double  out  0 where it differs by less at the very edge
 *    angle_rad  double  in   pi/6 to 4 pi
 *    y          double  in   .02 to .98
 *    share      double  in   .01 to .5: deeper below 180 degrees, shallower above
 *
 *  Returns  HS_OK; HS_E_RANGE; HS_E_CONVERGE. Output untouched on failure. */
HS_API hs_status hs_edge_along(double *along, double angle_rad, double y, double share,
                               hs_error *err);

#endif
