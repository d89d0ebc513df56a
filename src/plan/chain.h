/* The chain: a job carried through fire and quench once, with all that a draw needs afterwards. */
#ifndef HS_PLAN_CHAIN_H
#define HS_PLAN_CHAIN_H

#include "hardskin/model/hardenability_doubt.h"
#include "plan/edge.h"
#include "plan/limit.h"
#include "plan/loss.h"
#include "plan/reading.h"
#include "plan/response.h"
#include "plan/warp.h"
#include "plan/window.h"

/** What hardens of one face. */
typedef struct hs_face_chain {
    size_t axis;     /* HS_MAX_AXES: masked */
    hs_limit wanted; /* hardness to which the case is counted */
    hs_limit asked;  /* hardness asked of the finished face; the case's if none is asked */
    double wall_m;   /* behind it */
    hs_band margin;  /* of hardening, hs_case_margin_band: below 1 at its high end no hardness of
                        the case is promised */
    double rate_K_s, surface_rate_K_s; /* at 700 C, at the case depth and at the surface */
    double rate_bound;                 /* 95 % bound on its ln: quench, steel, formulas */
} hs_face_chain;

typedef struct hs_chain {
    const hs_job *job;
    hs_route route;
    hs_axes axes;
    hs_response response[HS_MAX_AXES];
    hs_face_chain face[HS_MAX_FACES];
    hs_face_edge edge[HS_MAX_FACES];
    hs_hardening hardening;
    hs_loss loss;
    hs_warp warp;
    hs_band core_HV;    /* at the middle of the thinnest section, with its doubt */
    hs_structure core;  /* there */
    hs_reading reading; /* absent until hs_reading_make */
} hs_chain;

/** Scratch of a chain. */
typedef struct hs_chain_work {
    hs_history_work history;
    hs_bend_work bend;
} hs_chain_work;

/** What a draw means for the whole part. */
typedef struct hs_part_draw {
    const double *z;
    hs_response_draw carbon;
    double scale_m, lost_m; /* metal lost as scale; with what descaling takes */
    double bow_x_m, bow_y_m;
    double set_up_m, scatter_m; /* of the wheel; of the case within the load */
} hs_part_draw;

/** One draw of the part. */
hs_part_draw hs_chain_draw(const hs_chain *chain, const double z[HS_INPUTS]);

/** Another part of the same box: `z` differs from draw->z in inputs of its own only. */
void hs_chain_draw_own(hs_part_draw *draw, const hs_chain *chain, const double z[HS_INPUTS]);

/** Run the chain at the middle of all inputs and at the points its responses need.
 *  Returns  HS_OK; HS_E_THROUGH when the case of both sides takes more than half a wall; else as
 *           the models. */
hs_status hs_chain_make(hs_chain *chain, const hs_job *job, hs_chain_work *work, hs_error *err);

/** Its two halves: all but the bow of the quench, in milliseconds, and that. Of a response's middle
 *  alone no draw can be made, but all is refused that the whole would refuse. */
hs_status hs_chain_carbon(hs_chain *chain, const hs_job *job, hs_response_extent extent,
                          hs_chain_work *work, hs_error *err);
hs_status hs_chain_bend(hs_chain *chain, hs_chain_work *work, hs_error *err);

/** The same for a job that differs from `base`'s only in quench, holding, shop and what is asked:
 *  the carbon of `base` is taken over. */
hs_status hs_chain_again(hs_chain *chain, const hs_chain *base, const hs_job *job,
                         hs_chain_work *work, hs_error *err);

/** The whole of it, but the bend of `base` taken over where quench, steel and masks are the same.
 *  This and hs_chain_again are for searches: another quench's bend is coarse until hs_chain_whole.
 */
hs_status hs_chain_fire(hs_chain *chain, const hs_chain *base, const hs_job *job,
                        hs_chain_work *work, hs_error *err);

/** The part of `base` cased and hardened once more: `job` has the steps of base's and those of the
 *  second time after them, `left` says what is left of the first. Depths and losses count from the
 *  surface the second time begins with; the bend is coarse until hs_chain_whole. */
hs_status hs_chain_recase(hs_chain *chain, const hs_chain *base, const hs_job *job,
                          const hs_route_left *left, hs_chain_work *work, hs_error *err);

/** The bend of a chain as fine as an answer wants it. */
hs_status hs_chain_whole(hs_chain *chain, hs_chain_work *work, hs_error *err);

/** What one face brings into the sums, in a draw. */
typedef struct hs_trial {
    hs_face_sum sum;
    double case_m; /* x: case depth to the hardness wanted, from the blank surface, at the face's
                      worst spot */
    double flat_m; /* the same away from edges */
    double steep;  /* of the case, per depth taken, where the wheel sinks an inner corner; else 1 */
} hs_trial;

/** Is a case or a hardness asked of a face? Of one that is not, the wheel may take all of it. */
int hs_face_asks(const hs_face *face);

/** What is alike on a face of all parts of a box, in a draw. */
typedef struct hs_face_draw {
    double wanted_m, asked_m;         /* the flat's depth to both hardnesses, without the load's
                                         scatter; 0: none */
    double wanted_share, asked_share; /* of it, at the worst spot */
    double steep;                     /* hs_trial */
    double marks_m, rim_m;            /* clean-up by marks and pits; by the soft rim */
    double austenite_m;               /* softened by austenite so deep; 0: not */
    double free_m;                    /* most stock where nothing is asked; 0: something is */
} hs_face_draw;

hs_face_draw hs_chain_face_draw(const hs_chain *chain, size_t face, const hs_part_draw *draw);

/** What one part of the box makes of it. */
hs_trial hs_chain_trial_of(const hs_chain *chain, size_t face, const hs_face_draw *alike,
                           double growth_m, const hs_part_draw *draw);

/** One draw of one face of a dimension whose growth per side in that draw is `growth_m`. */
hs_trial hs_chain_trial(const hs_chain *chain, size_t face, double growth_m,
                        const hs_part_draw *draw);

/** Share of the flat's depth to a limit that a face has at its worst end, in a draw. */
double hs_chain_edge_share(const hs_chain *chain, size_t face, const hs_limit *limit,
                           const hs_part_draw *draw);

/** Deepest place with the hardness asked of a face, in a draw (m, from the blank surface). */
double hs_chain_hard_to(const hs_chain *chain, size_t face, const hs_part_draw *draw);

/** Depth of the flat that is as hard, in the middle, as a face is at `depth_m` at its worst spot.
 */
double hs_chain_as_flat(const hs_chain *chain, size_t face, double depth_m);

/** Middle case depth of a face's flat, quenched as that face is, to any hardness (m); 0 where none
 * is that hard. */
double hs_chain_depth_to(const hs_chain *chain, size_t face, double limit_HV);

/** Hardness (HV) of the surface after the first `steps` steps; NaN where it is not hardened then.
 */
double hs_chain_surface_HV(const hs_chain *chain, size_t steps);

#endif
