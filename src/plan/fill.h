/* From what was found to the numbers of the result. */
#ifndef HS_PLAN_FILL_H
#define HS_PLAN_FILL_H

#include "plan/batch.h"

/** Sizes, sums and faces of every dimension, rounded to the safe side. */
void hs_fill_dimensions(hs_result *result, const hs_window_found *found, const hs_chain *chain,
                        const hs_draws *draws, hs_decide_work *work);

/** Add a sentence to a dimension's note; what does not fit is cut off. */
void hs_fill_note(hs_result_dimension *dimension, const char *format, ...) HS_PRINTF(2, 3);

/** What the wheel does to the ground face `k` of dimension `index` at its aim, over all draws:
 * rough size anywhere in its tolerance, finished size at its bad end. */
void hs_fill_face(hs_result_face *out, const hs_window_found *found, const hs_chain *chain,
                  size_t index, int k, const hs_draws *draws, hs_decide_work *work);

/** Case, scale and distortion. */
void hs_fill_case(hs_result *result, const hs_chain *chain, const hs_draws *draws,
                  hs_decide_work *work);

/** Metal lost and scale, heat by heat, and what it does to holes; `column` holds draws->n numbers.
 */
void hs_fill_scale(hs_result_scale *out, const hs_chain *chain, const hs_draws *draws,
                   double *column);

/** Bow, its causes and growth; `column` holds draws->n numbers. */
void hs_fill_distortion(hs_result_distortion *out, const hs_chain *chain, const hs_draws *draws,
                        double *column);

/** Edges of the ground faces; after hs_fill_dimensions and hs_fill_case. */
void hs_fill_edges(hs_result *result, const hs_chain *chain);

/** What the finished faces may be tested with, and the case as a drawing would ask for it; after
 *  hs_fill_dimensions and hs_fill_case. */
void hs_fill_readings(hs_result *result, const hs_chain *chain);

/** Confidence reached and what it hangs on, from work->margin_m. */
void hs_fill_confidence(hs_result *result, const hs_chain *chain, const hs_draws *draws,
                        const hs_batch *batch, const hs_decide_work *work);

/** What makes the doubt of need and may of every dimension. */
void hs_fill_drivers(hs_result *result, const hs_window_found *found, const hs_chain *chain,
                     const hs_draws *draws, hs_decide_work *work);

/** Times and states along the route. Runs the history once a heat. */
hs_status hs_fill_route(hs_result *result, const hs_chain *chain, hs_history_work *work,
                        hs_error *err);

/** What the answer does not cover, and what was assumed; after hs_web_find. */
void hs_fill_limits(hs_result *result, const hs_chain *chain);

/** How far along a face its worst end is felt: its case is shallower by HS_K_EDGE_CASE_FELT there
 *  (m); NaN where nothing lowers it, or that is not known. */
double hs_fill_edge_felt_m(const hs_chain *chain, size_t face);

#endif
