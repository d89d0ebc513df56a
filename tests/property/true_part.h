/* Parts as they may really come out, drawn from the distributions a plan states, by other numbers
 * than the plan's own, for the virtual grinder. */
#ifndef HS_TESTS_TRUE_PART_H
#define HS_TESTS_TRUE_PART_H

#include "plan/decide.h"
#include "property/grinder.h"

/** One part of a dimension, roughed to the plan's aim somewhere inside the rough tolerance. */
vg_part true_part(const hs_chain *chain, const hs_result *r, size_t index, uint32_t sample,
                  vg_kind kind);

/** Ground to a finished size: the worst over where the wheel may be off. */
vg_result true_part_ground(vg_part p, double finish_m);

#endif
