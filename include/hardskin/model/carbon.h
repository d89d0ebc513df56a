/* Carbon moving in a part through one or several heats: plate, bar, tube wall, hole.
 *
 * Conservative finite volumes in depth, TR-BDF2 in time (second order, L-stable; Bank et al. 1985).
 * The clock of a heat is the diffusion it does, so ramps cost next to nothing. Below
 * hs_carbon_cold_K no carbon moves: no A_cm line is known there, and ferrite and pearlite form. Had
 * the clock gone on to 650 C, the depth to .35 % would grow by less than 10 um even when the box
 * cools at 60 K/h (tests/second: 8 um after 2 h at 850 C, 4 um after 6 h at 925 C).
 * All carbon in wt %, all depths from face 1. */
#ifndef HARDSKIN_MODEL_CARBON_H
#define HARDSKIN_MODEL_CARBON_H

#include "hardskin/model/austenite.h"

#include <stddef.h>

enum {
    HS_CARBON_CELLS = 384,      /* most cells of a mesh */
    HS_CARBON_CELLS_USUAL = 48, /* with these a case depth is commonly good to .5 % */
    HS_CARBON_MOST_STEPS = 10000
};

typedef enum hs_shape {
    HS_SLAB,     /* plate: size = thickness */
    HS_CYLINDER, /* solid bar: size = radius; there is no face 2 */
    HS_TUBE, /* wall between bore and outside, depth counted from the outside: size = outer radius
              */
    HS_BORE  /* the same wall, depth counted from the bore: size = outer radius */
} hs_shape;

/** Cells between face 1 (depth 0) and face 2 or the far side. All per m2 of face 1. */
typedef struct hs_carbon_mesh {
    size_t n;
    int cut;                            /* the far side lies inside the part: it is closed */
    double edge_m[HS_CARBON_CELLS + 1]; /* depth of the cell walls, rising from 0 */
    double centre_m[HS_CARBON_CELLS];
    double area[HS_CARBON_CELLS + 1]; /* of the walls, face 1 = 1; 0 on the axis of a bar */
    double volume_m[HS_CARBON_CELLS]; /* of the cells, m3 per m2 of face 1 */
} hs_carbon_mesh;

/** Mesh of a section, fine at the faces carbon goes through.
 *
 *    mesh            out
 *    shape           in
 *    size_m          in   slab: thickness; cylinder: radius; tube and bore: outer radius
 *    inner_radius_m  in   tube and bore: radius of the bore; else ignored
 *    reach_m         in   how deep carbon can go (hs_carbon_reach). When the part is deeper, only
 *                         that much below face 1 is meshed and the far side is closed: the way to
 *                         treat one face of a thick part. When it is not: the whole section, fine
 *                         at face 1. 0: the whole section, fine at both faces (slab, tube, bore)
 *                         or at the outside (cylinder).
 *    n               in   2 to HS_CARBON_CELLS cells; 0: the usual number
 *
 *  A plate alike on both faces is best meshed to its middle: half the thickness, reach = that half.
 *  Returns  HS_OK; HS_E_IMPOSSIBLE for sizes that make no section; HS_E_TOO_LARGE for n. */
HS_API hs_status hs_carbon_mesh_make(hs_carbon_mesh *mesh, hs_shape shape, double size_m,
                                     double inner_radius_m, double reach_m, size_t n,
                                     hs_error *err);

typedef enum hs_side_kind {
    HS_SIDE_CLOSED,  /* nothing passes: masked, in the air after the scale is gone, or an axis */
    HS_SIDE_FIXED,   /* the surface stands at carbon_pct */
    HS_SIDE_TRANSFER /* flux = transfer * (carbon_pct - surface) */
} hs_side_kind;

typedef struct hs_side {
    hs_side_kind kind;
    double carbon_pct;   /* surface carbon, or the carbon potential the steel would reach */
    double transfer_m_s; /* HS_SIDE_TRANSFER only */
} hs_side;

typedef struct hs_heat_point {
    double time_s, temp_K;
} hs_heat_point;

/** One heat: temperature piecewise linear over the points (times rising; one hold = two points of
 *  the same temperature), and what stands at each face. */
typedef struct hs_heat {
    const hs_heat_point *point;
    size_t n; /* 2 or more */
    hs_side side[2];
    int cap_at_acm; /* the surface (or potential) never above A_cm of the moment */
    size_t steps;   /* 0: as many as the error of each step asks for; else 1 to 10 000 */
} hs_heat;

/** What a heat did. Carbon as % x m: times density / 100 it is kg/m2. */
typedef struct hs_carbon_uptake {
    double gained_pct_m[2]; /* through each face, per m2 of that face; negative = lost */
    double surface_pct[2];  /* carbon at the very face at the end of the heat */
    double balance_error;   /* |content after - before - gained| over the content: rounding only */
    size_t steps;           /* taken */
} hs_carbon_uptake;

/** Scratch of hs_carbon_run; nothing in it needs setting. */
typedef struct hs_carbon_work {
    double before[HS_CARBON_CELLS], old[HS_CARBON_CELLS], middle[HS_CARBON_CELLS],
        now[HS_CARBON_CELLS], slope[HS_CARBON_CELLS], base[HS_CARBON_CELLS],
        spread[HS_CARBON_CELLS], right[HS_CARBON_CELLS], lower[HS_CARBON_CELLS],
        diag[HS_CARBON_CELLS], upper[HS_CARBON_CELLS], scratch[HS_CARBON_CELLS],
        late[HS_CARBON_CELLS];
} hs_carbon_work;

/** Carry a carbon profile through one heat.
 *
 *    carbon_pct  mesh->n doubles  in/out  carbon of each cell
 *    uptake      hs_carbon_uptake out     may be NULL
 *    mesh, heat, d                in      mesh->cut needs side[1] closed
 *    work        hs_carbon_work           scratch
 *
 *  The diffusivity's range is checked at the hottest point; on the way up and down its formula is
 *  carried on to hs_carbon_cold_K.
 *  Returns  HS_OK; HS_E_RANGE outside the range of the diffusivity or of A_cm; HS_E_IMPOSSIBLE for
 *           times that do not rise, negative carbon, or a far side that is not closed;
 *           HS_E_CONVERGE. carbon_pct is untouched on failure. */
HS_API hs_status hs_carbon_run(double *carbon_pct, hs_carbon_uptake *uptake,
                               const hs_carbon_mesh *mesh, const hs_heat *heat,
                               const hs_diffusivity *d, hs_carbon_work *work, hs_error *err);

/** Integral of D dt over a heat at one carbon (m2): 2 sqrt of it is the diffusion length. */
HS_API double hs_carbon_spread(const hs_heat *heat, const hs_diffusivity *d, double carbon_pct);

/** How deep carbon can go in a number of heats: six times the root of the summed spread, taken at
 *  the highest carbon at hand. Less than 3e-5 of the surface's carbon passes that depth. */
HS_API double hs_carbon_reach(const hs_heat *heat, size_t heats, const hs_diffusivity *d,
                              double carbon_high_pct);

/** Carbon at a depth, linear between centres and to the face values (pass the surface_pct of the
 *  last heat; NULL: the end cells' values hold to the faces). NaN outside the mesh. */
HS_API double hs_carbon_at(const hs_carbon_mesh *mesh, const double *carbon_pct,
                           const double surface_pct[2], double depth_m);

/** Carbon in the mesh, % x m per m2 of face 1. */
HS_API double hs_carbon_content(const hs_carbon_mesh *mesh, const double *carbon_pct);

/** Below this nothing moves (K): tables/austenite.csv, 740 C. */
HS_API double hs_carbon_cold_K(void);

#endif
