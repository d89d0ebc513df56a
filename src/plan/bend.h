/* What the quench makes of a job's section, computed: the surface its bow is drawn from, growth,
 * stress of the skin. */
#ifndef HS_PLAN_BEND_H
#define HS_PLAN_BEND_H

#include "hardskin/model/case.h"
#include "hardskin/model/quench_bow.h"
#include "hardskin/model/quench_layer.h"
#include "plan/draw.h"
#include "plan/route.h"

enum { HS_ROUND_CORNERS = 36, HS_BEND_POINTS = 2 * HS_ROUND_CORNERS };

/** What a surface was computed for. */
typedef struct hs_bend_key {
    hs_composition steel;
    size_t medium_row;
    double start_K;
    int closed[HS_MAX_OUTLINE]; /* of each outline edge: no carbon enters */
} hs_bend_key;

typedef struct hs_bend {
    hs_bend_key key;
    hs_bow_surface surface; /* curvatures over the section's x and y; of a ring: of its wall, x
                               along the ring, y outwards */
    double uneven;          /* of this job: 95 % bound */
    double growth;          /* linear strain of the length against the soft state */
    double case_m;          /* total case the runs had */
    hs_quench_trace trace;  /* one of its quenches, for drawing; not of a coarse one */
    int coarse;             /* good enough to search with, not to answer with */
} hs_bend;

/** A job's section as the quench sees it. */
typedef struct hs_bend_section {
    hs_section section;
    hs_point point[HS_BEND_POINTS];
    double edge_factor[4]; /* of a ring's wall: its bore is hardly washed */
    int ring, mirror_x, mirror_y, alike;
    double diameter_m; /* of a bar; else 0 */
} hs_bend_section;

enum { HS_BENDS_KNOWN = 16 };

/** Scratch, and what was computed before: known = 0 forgets it. */
typedef struct hs_bend_work {
    hs_bend bend[HS_BENDS_KNOWN];
    size_t known;
    hs_bow_work quench;
    hs_bend_section part;
    hs_quench_layer layer;
} hs_bend_work;

/** Compute the bend of a job; 3 to 15 quenches, some tenths of a second; coarse: a tenth of that.
 *
 *    bend      out
 *    like      in    may be NULL. One with the same key and case depth is taken over, as is one
 *                    known: another unevenness is a factor
 *    coarse    in    do so where none is known; one of another depth serves as well
 *    typical   in    carbon below the first ground face; n = 0: no carbon enters anywhere
 *    quenched  in    the thinnest wall, in the middle of the medium's severity
 *  Returns  HS_OK, or as hs_bow_surface_make and hs_quench_layer_of. */
hs_status hs_bend_make(hs_bend *bend, const hs_bend *like, const hs_job *job, const hs_route *route,
                       const hs_case_profile *typical, const hs_quenched *quenched, int coarse,
                       hs_bend_work *work, hs_error *err);

/** Can the bend of a job be computed?  Arguments as hs_bend_make's.
 *  Returns  as it; HS_E_RANGE for a section that no mesh is laid over. */
hs_status hs_bend_check(const hs_job *job, const hs_route *route, const hs_case_profile *typical,
                        const hs_quenched *quenched, hs_bend_work *work, hs_error *err);

/** Curvatures (1/m) of a draw: x that of a bow along the section's x. */
void hs_bend_draw(double *x_1_m, double *y_1_m, const hs_bend *bend, const double z[HS_INPUTS]);

/** Curvature (1/m) of a ring's wall in a draw that swings from one quarter to the next. */
double hs_bend_ring(const hs_bend *bend, const double z[HS_INPUTS]);

#endif
