/* A section of edges along x and y as one slice of quadratic bricks, and its input deck. */
#ifndef HS_TESTS_QUENCH_DECK_H
#define HS_TESTS_QUENCH_DECK_H

#include "hardskin/model/section.h"

#include <stdio.h>

#define CCX_FROM_C 850.0
#define CCX_FILM 1500.0
#define CCX_PLAIN_S 120.0 /* all stages of the deck together; all yielding is over */
#define CCX_HARD_S 200.0

enum { CCX_LINES = 80 };

typedef struct ccx_case {
    const char *name;
    hs_section section, whole;                /* without holes; half of the whole where `half` */
    const double *edge_factor, *whole_factor; /* on the film */
    int hard; /* turns to martensite on the way, without transformation plasticity */
    int half; /* the last edge of x is a plane of symmetry: edge_factor 0 there */
    double spacing_m;
    double peak_share, residual_share; /* solid against fibres, shares of the peak */
} ccx_case;

typedef struct ccx_grid {
    const ccx_case *c;
    size_t columns, rows;
    double x_m[CCX_LINES], y_m[CCX_LINES];
    double slice_m, box_x_m, box_y_m;
    unsigned far_corner[3]; /* nodes of the far face at (0, 0), (box, 0), (0, box) */
} ccx_grid;

double ccx_bath_C(const ccx_case *c);

/** Returns 0 when it does not fit. */
int ccx_grid_lay(ccx_grid *g, const ccx_case *c);

/** Returns 0 when it does not fit. */
int ccx_deck_write(FILE *out, const ccx_case *c);

#endif
