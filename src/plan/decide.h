/* From the chain and its draws to windows, sizes and verdicts. */
#ifndef HS_PLAN_DECIDE_H
#define HS_PLAN_DECIDE_H

#include "plan/found.h"

/** Draw every dimension and find its window.
 *    found      job->dimensions of them, out
 *    chain, draws, confidence   in */
void hs_decide_windows(hs_window_found *found, const hs_chain *chain, const hs_draws *draws,
                       double confidence, hs_decide_work *work);

/** The same where `from` of the draws stand in `work` from the call before, of the same chain. */
void hs_decide_more(hs_window_found *found, const hs_chain *chain, const hs_draws *draws,
                    size_t from, double confidence, hs_decide_work *work);

/** The largest error_m of the windows that are ground and not shut by more than it; 0: none. */
double hs_decide_error(const hs_window_found *found, size_t dimensions);

/** What that error is to stay below: a share of the whole rough tolerance. */
double hs_decide_error_asked_m(const hs_job *job);

/** How many draws would bring it there, by what n of them showed: n itself where it is there
 *  already, never more than two and a half times as many, nor than HS_MAX_SAMPLES. */
size_t hs_decide_draws(const hs_window_found *found, const hs_job *job, size_t n);

/** The same again for a changed job, at its own confidence: for all dimensions that have a verdict,
 *  or (all = 0) only for those that are tight or stop in `before`, the others copied. The letters'
 *  bad sides, by which a size is aimed at, are found again where all are asked for, no face is
 *  ground or others than before; else found->bad keeps `before`'s. */
void hs_decide_again(hs_window_found *found, const hs_window_found *before, const hs_chain *chain,
                     const hs_draws *draws, int all, hs_decide_work *work);

/** Share of draws in which every dimension is good at its aim; fills work->margin_m. */
double hs_decide_joint(const hs_window_found *found, const hs_chain *chain, const hs_draws *draws,
                       hs_decide_work *work);

/** Verdict of the whole part: the worst of its dimensions, and not go where less than the
 *  confidence is reached; `reached` is the share of good draws, or what no failure at all proves.
 */
hs_verdict hs_decide_part(const hs_window_found *found, size_t dimensions, double reached,
                          double confidence);

#endif
