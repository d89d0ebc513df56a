/* The bar to buy for a part. */
#ifndef HS_PLAN_BLANK_H
#define HS_PLAN_BLANK_H

#include "hardskin/plan/result.h"

/** The smallest listed bar with
 *      size - tolerance below - straightness share over the part - 2 * rolled skin >= rough size,
 *  hot rolled or bright by the part's condition, metric or inch by the shop; and the length to saw.
 *
 *    out      out  present 0 only when the part has no sizes; size "" when nothing listed fits,
 *                  why then says up to what the list goes
 *    result   in   result->dimension[].rough_high_m; NaN or 0 (stop): finished size and the
 *                  handbook's allowance
 *  Source   tables/stock_*.csv, rolled_skin.csv */
void hs_blank_choose(hs_result_blank *out, const hs_job *job, const hs_result *result);

/** Rolled skin per side of hot-rolled bar of a size (m); NaN above the table (6 in). */
double hs_blank_skin_m(double size_m);

#endif
