/* A part's cross-section as a polygon with holes: what it measures, where its faces lie. Edge k
 * runs from vertex k to vertex k+1, counted from 1, the last edge back to vertex 1. Either sense of
 * rotation will do, for the outline and for each hole. */
#ifndef HARDSKIN_MODEL_SECTION_H
#define HARDSKIN_MODEL_SECTION_H

#include "hardskin/base/status.h"

#include <stddef.h>

typedef struct hs_point {
    double x_m, y_m;
} hs_point;

typedef struct hs_outline {
    const hs_point *point;
    size_t n; /* vertices; the first is not repeated at the end */
} hs_outline;

typedef struct hs_section {
    hs_outline outline;
    const hs_outline *holes;
    size_t n_holes;
} hs_section;

typedef struct hs_section_properties {
    double area_m2;
    double x_m, y_m;             /* centroid */
    double Ix_m4, Iy_m4, Ixy_m4; /* about the centroid: integrals of y^2, x^2, x y */
    double I1_m4, I2_m4;         /* principal, I1 >= I2 */
    double axis1_rad;      /* direction of the axis about which I1 is taken, from x, -pi/2..pi/2 */
    double perimeter_m;    /* holes included */
    double cooling_size_m; /* area / perimeter = volume / cooled surface of a long part */
    double reach_m;        /* largest distance of a vertex from the centroid */
} hs_section_properties;

/** Is the section simple: no edge crosses or touches another, no repeated vertex, some area, holes
 *  inside the outline, apart from each other and not nested?
 *  Lengths count as equal below 1e-9 of the section's size.
 *  Returns  HS_OK; HS_E_OUTLINE with the outline or hole and its vertex named. */
HS_API hs_status hs_section_check(const hs_section *section, hs_error *err);

/** Properties of a section (checked first).
 *  Returns  HS_OK; HS_E_OUTLINE as hs_section_check.
 *  Source   Green's theorem over the edges (closed form) */
HS_API hs_status hs_section_measure(hs_section_properties *out, const hs_section *section,
                                    hs_error *err);

/** Properties of a rectangle, width along x, height along y, centroid at 0. Both > 0, else
 *  HS_E_IMPOSSIBLE. */
HS_API hs_status hs_section_plate(hs_section_properties *out, double width_m, double height_m,
                                  hs_error *err);

/** Properties of a disc or ring, exact. 0 <= bore_m < outside_m (diameters), else
 *  HS_E_IMPOSSIBLE. */
HS_API hs_status hs_section_round(hs_section_properties *out, double outside_m, double bore_m,
                                  hs_error *err);

/** A circle as an outline of n corners and the same area; its first edge lies across x, so that
 * with n a multiple of 4 it is its own mirror image in both axes and a quarter turn changes
 * nothing. point  n hs_points  out  the corners */
HS_API hs_outline hs_section_circle(hs_point *point, size_t n, double diameter_m);

typedef struct hs_section_edge {
    hs_point middle;
    double nx, ny; /* outward normal, length 1 */
    double length_m;
} hs_section_edge;

/** Edge `edge` (from 1) of the outline. HS_E_OUTLINE if there is no such edge. */
HS_API hs_status hs_section_edge_at(hs_section_edge *out, const hs_section *section, size_t edge,
                                    hs_error *err);

/** Wall behind an edge: from its middle along the inward normal to the next edge of outline or
 *  hole (m). The section must be simple.
 *  Returns  HS_OK; HS_E_OUTLINE if there is no such edge. */
HS_API hs_status hs_section_wall(double *wall_m, const hs_section *section, size_t edge,
                                 hs_error *err);

/** Angle of the metal (rad, 0 to 2 pi) at a vertex of the outline, counted from 1: pi where the
 *  outline runs straight on, above pi at an inner (re-entrant) corner. The section must be simple.
 *  Returns  HS_OK; HS_E_OUTLINE if there is no such vertex. */
HS_API hs_status hs_section_corner(double *angle_rad, const hs_section *section, size_t vertex,
                                   hs_error *err);

/** How two edges lie to each other. */
typedef enum hs_edge_pair {
    HS_EDGES_OBLIQUE, /* not parallel: they bound no dimension */
    HS_EDGES_OUTSIDE, /* back to back: metal between, like a thickness */
    HS_EDGES_INSIDE,  /* face to face: a slot's width */
    HS_EDGES_STEP     /* same outward normal: a shoulder's height */
} hs_edge_pair;

/** Are edges j and k parallel (within 1e-6 rad), and how far apart are their lines?
 *    pair        hs_edge_pair  out
 *    distance_m  double        out  0 for oblique ones
 *  Returns  HS_OK; HS_E_OUTLINE if there is no such edge or j = k. */
HS_API hs_status hs_section_pair(hs_edge_pair *pair, double *distance_m, const hs_section *section,
                                 size_t j, size_t k, hs_error *err);

/** Extent of the whole outline along the normal of an edge (m). HS_E_OUTLINE: no such edge. */
HS_API hs_status hs_section_extent(double *extent_m, const hs_section *section, size_t edge,
                                   hs_error *err);

/** Thickest and thinnest wall of a section (m): the largest circle that fits into the metal, and
 *  the shortest way through metal from a corner square to an edge or between two inner corners,
 *  never more than that circle. thick / thin is 1 for a solid section of one thickness. The point
 *  of a wedge is a corner, no wall.
 *  thick_m is found to a thousandth, never too large.
 *  Returns  HS_OK; HS_E_OUTLINE as hs_section_check. */
HS_API hs_status hs_section_thickness(double *thick_m, double *thin_m, const hs_section *section,
                                      hs_error *err);

#endif
