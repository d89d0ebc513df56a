/* What the draws of a job came to, dimension by dimension: decide fills it, aim chooses in it. */
#ifndef HS_PLAN_FOUND_H
#define HS_PLAN_FOUND_H

#include "plan/chain.h"

/** Least and most stock of both faces of a dimension, and V, one number a draw. */
typedef struct hs_dimension_draws {
    double need_m[2][HS_MAX_SAMPLES], may_m[2][HS_MAX_SAMPLES], shape_m[HS_MAX_SAMPLES];
} hs_dimension_draws;

typedef struct hs_decide_work {
    hs_part_draw part[HS_MAX_SAMPLES];
    hs_dimension_draws dimension[HS_MAX_DIMENSIONS];
    double column[8][HS_MAX_SAMPLES]; /* scratch of one face at a time */
    double margin_m[HS_MAX_SAMPLES];  /* of the worst face of the part, at the aims */
    unsigned char good[HS_MAX_SAMPLES];
} hs_decide_work;

/** One dimension before rounding. Sums over both faces. */
typedef struct hs_window_found {
    hs_verdict verdict;
    int inside;                 /* bore or slot */
    int grounds;                /* how many of its two faces are ground (a diameter: 2) */
    double need_m[2], may_m[2]; /* at the confidence asked */
    hs_limits rough;
    double aim_m;        /* best size; also at stop, for the record */
    double joint;        /* share of draws good at the aim inside the rough tolerance */
    double joint_middle; /* the same at the middle of the window */
    hs_face_sum bad[2];  /* each letter at its bad side */
    double shape_typical_m, shape_high_m;
    int pulled;                                        /* flat by the chuck: V is 0 */
    double sprung_m, sprung_high_m, sprung_at_worst_m; /* bow that comes back: typical, 1 in 20, at
                                                          the confidence asked */
    double flatness_m;                                 /* least asked of its ground faces, 0 none */
    double flattens_m; /* largest bow that the chuck surely flattens */
    int stiff;         /* less than what may come */
    int refused;       /* to be held so: stop */
    double
        error_m; /* 95 % bound on the error of the ends of the rough size, of the number of draws */
} hs_window_found;

/** Stock of the faces of a dimension at a rough size: the sum, then shared by need and room. */
void hs_found_share(double stock_m[2], const hs_window_found *found, double total_m);

#endif
