/* The grinding order: what to do after what, to which size, and when to stop. */
#ifndef HS_PLAN_GRIND_H
#define HS_PLAN_GRIND_H

#include "plan/window.h"

/** Fill the order, strokes and time from result->dimension, face, scale and measured.
 *
 *  Measured sizes and shapes are used where there are any, else those to expect at the aim. A
 *  dimension whose window is shut (or whose measured verdict is no) gets no steps but a note.
 *  Flats: crown up and shimmed, first face clean, turn, equal removals, spark out. Bars: centres,
 *  outside, ends. Rings: one end, bore, outside. `to_m` is the middle of the finish tolerance at
 * the last step of a dimension. Strokes and time are of the flat faces and 0 where the shop's feeds
 * are not known. Source   windows page section 5; tables/grinding.csv for passes and chuck pull */
void hs_grind_plan(hs_result_grind *out, const hs_job *job, const hs_result *result);

#endif
