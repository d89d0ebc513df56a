/* A cross-section in the quench: temperature in two dimensions, straight fibres along the part
 * (generalised plane strain), elastic and perfectly plastic, with transformation strain and
 * transformation plasticity. What is left when all is cold is the bow.
 *
 * strain = e0 + kappa_x y + kappa_y x, no axial force, no moment; hs_bow_sag_m turns a curvature
 * into a bow. Twist and stress across the section are not in it. */
#ifndef HARDSKIN_MODEL_QUENCH_H
#define HARDSKIN_MODEL_QUENCH_H

#include "hardskin/model/quench_mesh.h"

enum {
    HS_CURVE_POINTS = 12,
    HS_QUENCH_PLASTICITIES = 6, /* most values of K in one run */
    HS_QUENCH_KEPT = 1024,      /* points of a table of exp(-x), so many to a unit of x */
    HS_QUENCH_KEPT_PER_1 = 128,
    HS_QUENCH_GRID_K = 256      /* points of the tables a run makes of its curves */
};

typedef enum hs_phase { HS_AUSTENITE, HS_MARTENSITE, HS_FERRITE, HS_PHASES } hs_phase;

/** A figure over temperature, linear between the points, held beyond the ends. */
typedef struct hs_curve {
    size_t n;
    double temp_K[HS_CURVE_POINTS], value[HS_CURVE_POINTS];
} hs_curve;

HS_API double hs_curve_at(const hs_curve *curve, double temp_K);

/** What all of the section has in common. */
typedef struct hs_quench_steel {
    hs_curve conductivity[HS_PHASES]; /* W/(m K) */
    hs_curve heat[HS_PHASES];         /* J/(m3 K) */
    hs_curve yield[HS_PHASES];        /* Pa; of martensite: as a share of the point's strength */
    hs_curve modulus;                 /* Pa */
    double expansion[HS_PHASES];      /* 1/K */
    double latent_J_m3[HS_PHASES];    /* given off when austenite turns into it; [0] unused */
    double soft_start_K, soft_end_K;  /* between these the soft share turns into ferrite */
} hs_quench_steel;

/** What a place has for itself: its carbon and its hardenability. */
typedef struct hs_quench_point {
    double ms_K, alpha_1_K;   /* Koistinen and Marburger; ms_K 0: no martensite */
    double share;             /* of martensite that can form; the rest turns soft */
    double strain[HS_PHASES]; /* linear, austenite to the phase, at 20 C; [0] unused */
    double strength_Pa;       /* of martensite at 20 C */
    double carbon_pct;        /* dissolved; the quench itself does not ask for it */
} hs_quench_point;

/** A side in the bath: the medium's film times a factor, for each edge. */
typedef struct hs_quench_bath {
    hs_curve film; /* W/(m2 K) over the surface temperature */
    double bath_K;
    double factor;             /* on the film, everywhere */
    double uneven, ax, ay;     /* edges of outward normal n: times 1 + uneven/2 * (n . a) */
    double hole_factor;        /* on the film in holes */
    const double *edge_factor; /* of each outline edge, or NULL */
} hs_quench_bath;

typedef struct hs_quench_case {
    const hs_quench_mesh *mesh;
    const hs_quench_steel *steel;
    const hs_quench_point *node, *fibre; /* mesh->nodes, mesh->fibres of them */
    hs_quench_bath bath;
    double start_K;
    size_t n;                                       /* values of K; 0: the heat alone */
    double plasticity_1_Pa[HS_QUENCH_PLASTICITIES]; /* 2 K (1 - z) dz sigma */
    double substep_K;                               /* while martensite forms; 0: 5 K */
    double tolerance_K;                             /* of the heat; 0: 1 K */
    double end_s;                                   /* stop here; 0: when all is cold */
    int fold_x, fold_y; /* mesh, places and bath are their own mirror image across x = 0 (y = 0):
                           the fibres of one half stand for both */
} hs_quench_case;

typedef struct hs_quench_left {
    double e0, kappa_x_1_m, kappa_y_1_m;       /* when cold, or at end_s */
    double peak_kappa_x_1_m, peak_kappa_y_1_m; /* largest in size on the way, with sign */
    double peak_1_m;    /* largest resultant of both at one moment, whichever way */
    double peak_time_s; /* of the larger of the two */
    double surface_Pa, surface_low_Pa, surface_high_Pa; /* stress in the fibres at the edges: mean
                                                            over the edge, least, most */
} hs_quench_left;

/** One moment, for drawing. */
typedef struct hs_quench_moment {
    double time_s, hottest_K, coldest_K, mean_K;
    double kappa_x_1_m[HS_QUENCH_PLASTICITIES], kappa_y_1_m[HS_QUENCH_PLASTICITIES];
} hs_quench_moment;

/** Called after each step of the heat; may be NULL. */
typedef void (*hs_quench_watch)(void *context, const hs_quench_moment *moment,
                                const double *node_K);

typedef struct hs_quench_net_cell {
    unsigned short node[4];
    double link[6], thin_m; /* as hs_quench_cell */
} hs_quench_net_cell;

typedef struct hs_quench_net_film {
    unsigned short node[4];
    double weight[2][4]; /* as hs_quench_segment */
    double width_m;      /* at each of its points, times the bath's factor on the film */
} hs_quench_net_film;

/** The section as the heat sees it: the mesh, or the half of it that stands for both. */
typedef struct hs_quench_net {
    size_t nodes, cells, segments;
    unsigned short node_of[HS_QUENCH_NODES];   /* of the mesh's node */
    unsigned short mesh_node[HS_QUENCH_NODES]; /* of a node here */
    double area_m2[HS_QUENCH_NODES];
    hs_quench_net_cell cell[HS_QUENCH_CELLS];
    hs_quench_net_film film[HS_QUENCH_SEGMENTS];
} hs_quench_net;

typedef struct hs_quench_work {
    hs_quench_net net; /* the temperatures are those of its nodes */
    double temp_K[HS_QUENCH_NODES + 1], next_K[HS_QUENCH_NODES + 1]; /* and the heat that left */
    double mesh_K[HS_QUENCH_NODES];                                  /* shown to who watches */
    double coldest_K[HS_QUENCH_NODES], held_K[HS_QUENCH_NODES], stage[5 * (HS_QUENCH_NODES + 1)];
    double conductivity[HS_QUENCH_NODES], capacity[HS_QUENCH_NODES], bound[HS_QUENCH_NODES];
    double sensible[HS_QUENCH_NODES]; /* capacity without latent heat */
    double kept[HS_QUENCH_KEPT];
    double table[2 * HS_PHASES + HS_PHASES + 2][HS_QUENCH_GRID_K];
    unsigned short index[HS_QUENCH_FIBRES]; /* of the fibres in the sums, in the mesh */
    double from_K[HS_QUENCH_FIBRES], to_K[HS_QUENCH_FIBRES]; /* over a step of the heat */
    double fibre_K[HS_QUENCH_FIBRES], hard[HS_QUENCH_FIBRES], soft[HS_QUENCH_FIBRES];
    double free[HS_QUENCH_FIBRES], compliance[HS_QUENCH_FIBRES], yield[HS_QUENCH_FIBRES],
        creep[HS_QUENCH_FIBRES];
    double was_compliance[HS_QUENCH_FIBRES], was_yield[HS_QUENCH_FIBRES], moved[HS_QUENCH_FIBRES];
    double x_m[HS_QUENCH_FIBRES], y_m[HS_QUENCH_FIBRES], area_m2[HS_QUENCH_FIBRES];
    double base[HS_QUENCH_PLASTICITIES][HS_QUENCH_FIBRES],
        tangent[HS_QUENCH_PLASTICITIES][HS_QUENCH_FIBRES];
    double stress_Pa[HS_QUENCH_PLASTICITIES][HS_QUENCH_FIBRES];
    double strain[HS_QUENCH_PLASTICITIES][3], change[HS_QUENCH_PLASTICITIES][3];
} hs_quench_work;

/** What a run cost and how well it kept the heat. */
typedef struct hs_quench_cost {
    size_t steps, rejected, evaluations, substeps, iterations;
    double heat_error; /* |heat lost by the section - heat through the edges| over the first */
} hs_quench_cost;

/** Quench a section.
 *
 *    left     c->n x hs_quench_left  out  for each value of K
 *    cost     hs_quench_cost         out  may be NULL
 *    c        hs_quench_case         in
 *    work     hs_quench_work              scratch; stress_Pa holds the residual stress afterwards,
 *                                            NaN in fibres another one stood for
 *    watch, context                  in   may be NULL
 *
 *  Returns  HS_OK; HS_E_IMPOSSIBLE for a case that makes no sense; HS_E_CONVERGE. */
HS_API hs_status hs_quench_run(hs_quench_left *left, hs_quench_cost *cost, const hs_quench_case *c,
                               hs_quench_work *work, hs_quench_watch watch, void *context,
                               hs_error *err);

#endif
