/* Carbon in the plane around an edge, by finite volumes on squares: an answer to compare the wedge
 * with, for a D that rises with carbon, for carbon handed over slowly, and for masked faces. */
#ifndef HS_TESTS_EDGE_PLANE_H
#define HS_TESTS_EDGE_PLANE_H

#include <stddef.h>

enum { PLANE_SIDE = 112, PLANE_EDGE = 62 }; /* cells; the edge lies at the corner of this one */

typedef enum plane_shape {
    PLANE_OUTER,      /* 90 degrees: metal where both coordinates are below the edge */
    PLANE_INNER,      /* 270 degrees: air where both are above */
    PLANE_HALF_MASK,  /* a flat, masked on one side of the edge: counts as 360 degrees */
    PLANE_INNER_MASK, /* 270 degrees, one face masked: counts as 540 */
    PLANE_FLAT        /* 180 degrees */
} plane_shape;

typedef struct plane {
    plane_shape shape;
    int agren;         /* D of Agren at 925 C; else constant */
    double transfer;   /* carbon handed over: transfer x sqrt(t / D); 0: the faces are fixed */
    double closed;     /* spread after the faces are closed, as a share of that before */
    double core, face; /* wt % */
    double carbon[PLANE_SIDE][PLANE_SIDE];
} plane;

/** Carry a plane from its core carbon to a spread of `cells` = sqrt(D t) / cell at the face's D. */
void plane_run(plane *p, double cells);

/** Depths, in cells, at which carbon level y stands: from the edge straight down (along the normal
 *  of the face beside it), and from the edge along the bisector. */
double plane_below(const plane *p, double carbon_pct);
double plane_inward(const plane *p, double carbon_pct);

#endif
