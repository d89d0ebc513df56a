/* The grid laid over a section, in a frame turned so that the longest edge runs along x. */
#ifndef HS_MODEL_QUENCH_GRID_H
#define HS_MODEL_QUENCH_GRID_H

#include "hardskin/model/quench_mesh.h"
#include "model/quench_clip.h"

typedef struct hs_quench_grid {
    hs_point centre;      /* centroid of the section, in its own frame */
    double c, s;          /* cosine and sine of the turn from grid to section */
    size_t columns, rows; /* of cells */
    double x[HS_QUENCH_LINES + 1], y[HS_QUENCH_LINES + 1];
    hs_clip whole; /* the section in the grid's frame, loops anticlockwise */
    unsigned short first[HS_QUENCH_LINES + 1]; /* of the mesh's cells in each row, and all */
    unsigned short column[HS_QUENCH_CELLS];    /* of each cell, rising in a row */
} hs_quench_grid;

/** Lay the grid. Returns HS_OK; HS_E_TOO_LARGE; HS_E_OUTLINE. */
hs_status hs_quench_grid_lay(hs_quench_grid *grid, const hs_section *section, double spacing_m,
                             double skin_m, hs_error *err);

/** Sizes of the cells of a gap: skin_m at its start (both: at its end too), each further one twice
 *  as thick up to the spacing.  Returns how many; 0: more than HS_QUENCH_LINES. */
size_t hs_quench_grid_graded(double size_m[HS_QUENCH_LINES], double gap_m, double spacing_m,
                             double skin_m, int both);

/** A point of the grid's frame in the section's, from its centroid. */
hs_point hs_quench_grid_back(const hs_quench_grid *grid, hs_point p);

/** Pieces of the true edges, two Gauss points each; first and column are filled.
 *  Returns HS_OK; HS_E_TOO_LARGE. */
hs_status hs_quench_grid_edges(hs_quench_mesh *mesh, const hs_quench_grid *grid,
                               const hs_section *section, hs_error *err);

#endif
