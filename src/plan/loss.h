/* What the open heats take: metal as scale, carbon as a soft rim, and metal by descaling. */
#ifndef HS_PLAN_LOSS_H
#define HS_PLAN_LOSS_H

#include "hardskin/model/oxide.h"
#include "plan/draw.h"
#include "plan/route.h"

enum { HS_MAX_LOSSES = HS_MAX_HEATS };

/** One open heat: its integral of kp and the carbon-lean layer it leaves. */
typedef struct hs_loss_heat {
    double integral_kg2_m4;
    double low, multiplier, high; /* of its atmosphere, on the oxygen uptake */
    int knocked_off;              /* the scale of the heats before is gone */
    int washed;                   /* ... also out of holes: by acid or in the tank */
    double surface_pct;           /* carbon at the surface before */
    double rim_m, depth50_m, depth90_m;
    size_t step;
    int film; /* the oxygen of its gas is given: the heat goes in pieces */
    hs_oxide_piece piece[HS_OXIDE_PIECES];
} hs_loss_heat;

typedef struct hs_loss {
    size_t n;
    hs_loss_heat heat[HS_MAX_LOSSES];
    double taken_low_m, taken_high_m; /* by blasting, brushing, flap disc; per side */
} hs_loss;

/** Losses of a route whose surface carbon is `surface_pct`.
 *  Returns  HS_OK; HS_E_RANGE for heats outside the scaling or decarburisation models. */
hs_status hs_loss_make(hs_loss *loss, const hs_job *job, const hs_route *route, double surface_pct,
                       hs_error *err);

/** Leave out what `first`, of the first steps of the same route, lost: it is gone and measured. */
void hs_loss_since(hs_loss *loss, const hs_loss *first);

/** Metal lost per side in a draw, by scale after the first `steps` steps, without descaling. */
double hs_loss_metal(const hs_loss *loss, size_t steps, const double z[HS_INPUTS]);

/** Metal taken by descaling in a draw. */
double hs_loss_taken(const hs_loss *loss, const double z[HS_INPUTS]);

/** Thickness of the scale that stands on the part after the first `steps` steps (middle values). */
double hs_loss_standing_m(const hs_loss *loss, size_t steps);

/** Masking keeps carbon out, not oxygen: scale counts on every face. Mass of it per area over the
 * whole route (middle values), kg/m2. */
double hs_loss_mass_kg_m2(const hs_loss *loss);

/** The wall of a hole, where brush and blast do not reach: scale that stands there at its thickest
 *  (oxygen, kg/m2), and the metal lost under it and before it, in a draw. */
typedef struct hs_loss_wall {
    double W_kg_m2;
    double lost_m;   /* up to then */
    double in_all_m; /* over the whole route */
} hs_loss_wall;

hs_loss_wall hs_loss_in_hole(const hs_loss *loss, const double z[HS_INPUTS]);

/** Rust that is still on the part when step `step` begins: no descale and no fire before it. */
hs_rust hs_loss_rust_at(const hs_job *job, size_t step);

/** Depth below the new surface at which the carbon is back at `carbon_pct`, in a draw. */
double hs_loss_rim(const hs_loss *loss, double carbon_pct, const double z[HS_INPUTS]);

#endif
