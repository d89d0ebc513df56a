/* The clock of a heat: not the hours but the diffusion done in them. Ramps shrink to what they are
 * worth, and a hold after a slow rise gets its steps where they count. */
#ifndef HS_MODEL_CARBON_CLOCK_H
#define HS_MODEL_CARBON_CLOCK_H

#include "hardskin/model/carbon.h"

typedef struct hs_carbon_clock {
    const hs_heat *heat;
    const hs_diffusivity *d;
    double carbon_pct;       /* the carbon at which the clock counts */
    double cold_K;           /* below: stands still */
    size_t segment;          /* between point segment and segment + 1 */
    int part;                /* of the parts the segment is cut into */
    double start_m2;         /* reading at the beginning of that part */
    double width_m2;         /* what the part is worth */
    double temp0_K, temp1_K; /* at its ends */
    double D0, D1;           /* diffusivity there, m2/s */
} hs_carbon_clock;

/** Set to the start of a heat. */
void hs_carbon_clock_start(hs_carbon_clock *clock, const hs_heat *heat, const hs_diffusivity *d,
                           double carbon_pct);

/** Temperature (K) when the clock reads `spread_m2`; readings must not fall from call to call. */
double hs_carbon_clock_temp(hs_carbon_clock *clock, double spread_m2);

#endif
