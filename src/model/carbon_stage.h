/* One implicit stage of the carbon march: volume (c - base) = weight * (fluxes at the new level).
 */
#ifndef HS_MODEL_CARBON_STAGE_H
#define HS_MODEL_CARBON_STAGE_H

#include "model/carbon_clock.h"
#include "model/diffusivity.h"

/* Where a march stands. Fluxes and transfers are per unit of the clock (m2), not of time. */
typedef struct hs_carbon_march {
    const hs_carbon_mesh *mesh;
    const hs_heat *heat;
    const hs_diffusivity *d;
    hs_carbon_work *work;
    hs_carbon_clock clock;
    hs_diffusivity_at at;   /* over the diffusivity at the clock's carbon */
    double target_pct[2];   /* surface carbon or potential, capped */
    double transfer_1_m[2]; /* 0 closed, INFINITY fixed */
    double flux[2];         /* into the part at the last stage, % m of carbon per m2 of clock */
    double surface_pct[2];
    double place_m2, last_m2; /* where on the clock, and the length of the step that led there */
    double gained[2];         /* through the faces so far, % m of carbon per m2 of face 1 */
    size_t steps;             /* taken so far */
    double settled_pct;       /* the iteration on D(C) ends when no cell moves by more; conservation
                                 does not depend on it */
} hs_carbon_march;

/** Set diffusivity and sides for a reading of the clock. */
void hs_carbon_stage_place(hs_carbon_march *march, double spread_m2);

/** Solve the stage; `now` in work holds the first guess and becomes the solution, `base` the right
 *  side. Fluxes and face values are those of the solution, to rounding.
 *  Returns HS_OK; HS_E_CONVERGE. */
hs_status hs_carbon_stage_solve(hs_carbon_march *march, double weight_m2, hs_error *err);

#endif
