/* How deep the carbon of an axis reaches as its doubtful inputs move: five runs of the history, and
 * from them any draw. Depth goes with the root of the diffusivity (quadratic through three runs,
 * exact where the section is thick) and with the carbon at the surface (quadratic through three).
 * Where the surface transfer limits, two more runs: quadratic in its logarithm. */
#ifndef HS_PLAN_RESPONSE_H
#define HS_PLAN_RESPONSE_H

#include "plan/draw.h"
#include "plan/history.h"

enum { HS_LEVELS = 50 };

typedef struct hs_response {
    double core_pct;              /* of the runs */
    double surface_pct[3];        /* lean, middle, rich: of the medium */
    double root[3];               /* root of the factor on D: slow, 1, fast */
    double transfer_log;          /* ln of the factor on the surface transfer; 0: none limits */
    double depth_m[7][HS_LEVELS]; /* middle, slow, fast, lean, rich, sluggish, brisk; at level k of
                                     y */
    double model_log, temp_log;   /* standard deviations of ln D */
    double heat_log;              /* of ln of D times time: heat-up and cooling of the box */
    double end_m;                 /* depth of the mesh: the fronts meet there */
    hs_carbon_accuracy accuracy;  /* of the middle run; the others are run on its mesh */
    hs_case_profile typical;      /* the middle run, hardness filled by the caller */
} hs_response;

/** How much of a response is run: all of it, or its middle, which is enough to refuse by. */
typedef enum hs_response_extent { HS_RESPONSE_WHOLE, HS_RESPONSE_MIDDLE } hs_response_extent;

/** Run the axis five times, seven with a surface transfer; the middle alone: once, and all draws
 *  are as the middle one.  Returns as hs_history_run. */
hs_status hs_response_make(hs_response *response, const hs_axis *axis, const hs_route *route,
                           const hs_steel *steel, hs_response_extent extent, hs_history_work *work,
                           hs_error *err);

/** What a draw means for every axis alike. */
typedef struct hs_response_draw {
    double core_pct, surface_pct; /* carbon of the steel, of the surface */
    double root;                  /* of D's factor */
    double transfer_log;          /* ln of the factor on the surface transfer */
} hs_response_draw;

hs_response_draw hs_response_at(const hs_response *response, const hs_steel *steel,
                                const double z[HS_INPUTS]);

/** Deepest place with at least `carbon_pct` in a draw (m): 0 where the surface has less,
 *  end_m where the whole wall has more. */
double hs_response_depth(const hs_response *response, double carbon_pct,
                         const hs_response_draw *draw);

/** Standard deviations of ln D for a steel and route: spread of the models, and the temperature's
 *  bound through the activation of D. */
void hs_response_spread(double *model_log, double *temp_log, const hs_route *route,
                        const hs_steel *steel);

#endif
