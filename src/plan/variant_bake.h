/* Changes of the tempers and bakes after the last quench: what was drawn too far is drawn less. */
#ifndef HS_PLAN_VARIANT_BAKE_H
#define HS_PLAN_VARIANT_BAKE_H

#include "plan/variant.h"

/** The hottest bake after the last quench that is hotter than a surface-hardened part bears after
 *  its last temper; the number of steps where none is. What it bears: the bake's temperature, a
 *  whole degree of the sheet's unit, and its least time (out).
 *    temper   out   that temper; NULL where there is none */
size_t hs_bake_too_hot(double *bears_K, double *hold_s, const hs_step **temper, const hs_job *job);

/** Each an hs_variant_change.
 *    cooler_bake    a bake hotter than hs_bake allows after its temper, at what it allows
 *    no_acid        acid or the negative lead, with the bake right after it: a brush, and no bake
 *    cooler_temper  a temper hotter than the usual range, at its top, middle or foot, and no bake
 *                   hotter than is safe after it */
int hs_variant_cooler_bake(hs_variant *variant, int size);
int hs_variant_no_acid(hs_variant *variant, int size);
int hs_variant_cooler_temper(hs_variant *variant, int size);

#endif
