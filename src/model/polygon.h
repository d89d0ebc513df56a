/* Plane geometry of straight edges, shared by the files of section. */
#ifndef HS_MODEL_POLYGON_H
#define HS_MODEL_POLYGON_H

#include "hardskin/model/section.h"

/** Twice the area of the triangle a b c, positive if it turns to the left. */
double hs_polygon_turn(hs_point a, hs_point b, hs_point c);

/** Signed area (m2), positive if the outline runs anticlockwise. */
double hs_polygon_area(const hs_outline *outline);

/** Vertex i (from 0, wrapping round). */
hs_point hs_polygon_vertex(const hs_outline *outline, size_t i);

/** Is the point inside? On the edge either answer may come. */
int hs_polygon_inside(const hs_outline *outline, hs_point point);

/** Smallest distance (m) of two straight edges a b and c d; 0 if they cross. */
double hs_polygon_gap(hs_point a, hs_point b, hs_point c, hs_point d);

/** Distance (m) of a point from the straight edge a b. */
double hs_polygon_point_gap(hs_point p, hs_point a, hs_point b);

#endif
