/* The bar to buy: the smallest listed size out of which the rough part can be machined. */
#ifndef HS_PLAN_BLANK_H
#define HS_PLAN_BLANK_H

#include "hardskin/plan/result.h"

/** Choose bar stock for a job whose windows are known.
 *
 *    blank    out  whole; `present` is 0 with the reason in `why` when no rough size is open (stop)
 *                  or no listed size is large enough ("not in stock up to ...")
 *    job      in
 *    result   in   its dimension[i] filled
 *
 *  Smallest listed section with  size_least - straightness over the length - 2 * rolled skin >=
 *  rough size  in every direction. Cold-drawn parts are cut from bright bar, which has no rolled
 *  skin; all others from hot-rolled bar. A plate, and the box round a profile, from flats or
 *  squares; a bar or a ring (bore not counted) from rounds.
 *  Source   tables/stock_*.csv, rolled_skin.csv; rule: own, reference page on stock section 9 */
void hs_blank_choose(hs_result_blank *blank, const hs_job *job, const hs_result *result);

/** Metal to take off each side of hot-rolled bar to be under its skin (m), by its size across; NaN
 *  above the largest size listed.  Source   tables/rolled_skin.csv */
double hs_blank_skin_m(double size_m);

#endif
