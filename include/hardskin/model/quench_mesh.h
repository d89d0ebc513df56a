/* A cross-section cut into cells for a quench: nodes carry temperature, fibres carry strain.
 *
 * A grid of straight lines is laid over the section, parallel to its longest edge and with a line
 * through every edge that runs along it or square to it; the section is clipped cell by cell, so an
 * oblique edge costs no accuracy. Bilinear elements on the clipped parts (their integrals are
 * polynomials over polygons: exact), lumped mass, surface film on the true edges. */
#ifndef HARDSKIN_MODEL_QUENCH_MESH_H
#define HARDSKIN_MODEL_QUENCH_MESH_H

#include "hardskin/model/section.h"

enum {
    HS_QUENCH_LINES = 160,     /* most grid lines either way */
    HS_QUENCH_CELLS = 1600,    /* most cells that hold metal */
    HS_QUENCH_NODES = 1900,    /* most corners of them */
    HS_QUENCH_SEGMENTS = 1200, /* most pieces of edge */
    HS_QUENCH_FIBRES = 10000   /* most fibres */
};

/** A cell's four corners run (0,0) (1,0) (1,1) (0,1) in the grid's frame. */
typedef struct hs_quench_cell {
    unsigned short node[4];
    unsigned short first, fibres; /* its fibres in the mesh */
    double link[6]; /* conduction between corners 01 12 23 30 02 13, times k: W/(m K) per K */
    double thin_m;  /* its shorter side */
} hs_quench_cell;

/** A piece of the section's edge inside one cell, with two Gauss points. */
typedef struct hs_quench_segment {
    unsigned short cell;
    double weight[2][4]; /* of the cell's corners at the Gauss points */
    double length_m;
    double nx, ny; /* outward normal, in the section's frame */
    size_t edge;   /* of the outline from 1; 0 on a hole */
} hs_quench_segment;

/** A fibre: a piece of a cell (a quarter, or less where there is a case), clipped; straight along
 *  the part. */
typedef struct hs_quench_fibre {
    unsigned short cell;
    double weight[4];
    double x_m, y_m; /* from the section's centroid, in its frame */
    double area_m2;
} hs_quench_fibre;

typedef struct hs_quench_mesh {
    size_t nodes, cells, segments, fibres;
    double spacing_m;                     /* widest, as asked for */
    int upright;                          /* its lines run along x and y */
    double radius_m;                      /* of a round cut into rings and sectors; else 0 */
    hs_point node[HS_QUENCH_NODES];       /* from the centroid, in the section's frame */
    double node_area_m2[HS_QUENCH_NODES]; /* lumped; all together the section's area */
    hs_quench_cell cell[HS_QUENCH_CELLS];
    hs_quench_segment segment[HS_QUENCH_SEGMENTS];
    hs_quench_fibre fibre[HS_QUENCH_FIBRES];
} hs_quench_mesh;

/** Cut a section into cells.
 *
 *    mesh       hs_quench_mesh  out
 *    section    hs_section      in   simple (hs_section_check)
 *    spacing_m  double          in   widest distance of the grid lines, > 0
 *    skin_m     double          in   the first cell at an edge along the grid, each further one
 *                                    twice as thick; 0, or not below the spacing: all alike
 *    case_m     double          in   total case: as deep as this below the edges the fibres are
 *                                    fine (eight to a cell either way at most); 0: quarters of
 *                                    cells everywhere
 *
 *  Returns  HS_OK; HS_E_OUTLINE; HS_E_IMPOSSIBLE for the spacing; HS_E_TOO_LARGE when the section
 *           needs more lines, cells or segments than there are: take a wider spacing. */
HS_API hs_status hs_quench_mesh_make(hs_quench_mesh *mesh, const hs_section *section,
                                     double spacing_m, double skin_m, double case_m, hs_error *err);

/** Cut a round into rings and sectors: its bend is the same about every axis of a quarter turn.
 *
 *    mesh        hs_quench_mesh  out  upright; its own mirror image across x and y
 *    diameter_m  double          in   > 0
 *    spacing_m, skin_m, case_m   in   as hs_quench_mesh_make, along the radius
 *
 *  Returns  HS_OK; HS_E_IMPOSSIBLE for a size; HS_E_TOO_LARGE. */
HS_API hs_status hs_quench_mesh_round(hs_quench_mesh *mesh, double diameter_m, double spacing_m,
                                      double skin_m, double case_m, hs_error *err);

#endif
