/* A diffusivity at one temperature, so that a value costs one exponential. */
#ifndef HS_MODEL_DIFFUSIVITY_H
#define HS_MODEL_DIFFUSIVITY_H

#include "hardskin/model/austenite.h"

/* Agren, with y = carbon atoms per iron atom:
 *     front (1 + y (1 - y) thermo) exp(power + power_C y)
 * Tibbetts and Lee:
 *     (front + front_C C) exp(power + power_C C + power_C2 C^2)
 * Constant: front. */
typedef struct hs_diffusivity_at {
    hs_diffusivity_model model;
    double front, front_C, thermo, power, power_C, power_C2;
} hs_diffusivity_at;

/** Fix the temperature (K). */
void hs_diffusivity_prepare(hs_diffusivity_at *at, const hs_diffusivity *d, double temp_K);

/** Its value (m2/s) at a carbon (wt %). */
double hs_diffusivity_of(const hs_diffusivity_at *at, double carbon_pct);

#endif
