/* Changes of the part, its drawing and its rough machining that may open a window. */
#ifndef HS_PLAN_VARIANT_PART_H
#define HS_PLAN_VARIANT_PART_H

#include "plan/variant.h"

/** Each an hs_variant_change. */
int hs_variant_remade_centres(hs_variant *variant, int size);
int hs_variant_less_case(hs_variant *variant, int size);
int hs_variant_narrower_tolerance(hs_variant *variant, int size);
int hs_variant_stress_relief(hs_variant *variant, int size);
int hs_variant_finish_end(hs_variant *variant, int size);
int hs_variant_shim(hs_variant *variant, int size);
int hs_variant_pull_flat(hs_variant *variant, int size);
int hs_variant_mask(hs_variant *variant, int size);
int hs_variant_relief(hs_variant *variant, int size);

#endif
