/* The chance that all parts of a box come out good. They share one heat of steel, box, fire, bath
 * and temper and differ in stock, place in the box, bow in the tank and set-up, so their luck is
 * neither one nor each its own:
 *
 *     P(all n good) = E[ p(shared)^n ],  p(shared) the chance of a part in that box.
 *
 * Boxes are drawn, and in each box one part after the other until one fails. The later a part in
 * its box, the fewer boxes are followed that far (with the root of its place); what of the boxes
 * that stood so far stands on is multiplied up. So every further part can only lower the chance.
 * Source   E. L. Kaplan, P. Meier, J. Am. Stat. Assoc. 53 (1958) 457: the product, and Greenwood's
 *          variance of it (tables/SOURCES.md: kaplan-meier) */
#ifndef HS_PLAN_BATCH_H
#define HS_PLAN_BATCH_H

#include "plan/decide.h"

enum { HS_BATCH_PARTS = 8192 }; /* no box is followed further */

/** Is part `part` (0 the first) of box `box` good? Asked box by box, parts in order. */
typedef int (*hs_batch_good)(void *of, size_t box, size_t part);

typedef struct hs_batch_work {
    unsigned at_risk[HS_BATCH_PARTS], failed[HS_BATCH_PARTS];
} hs_batch_work;

typedef struct hs_batch {
    double one, all; /* chance of the first part, and of all */
    double error;    /* half width of 95 % of `all`, of the number of boxes */
    int floor_only;  /* no box was followed so far: `all` is the least it can be */
    int none_failed; /* in any of the boxes */
} hs_batch;

/** The estimate from any law.
 *    boxes     in  all of them draw the first part
 *    followed  in  so many of them draw a second part, and a part r after it followed/sqrt r
 *    n         in  parts, at least 1
 *  `all` is never above `one`, nor below one^n: what parts share can only help them stand together
 *  (Jensen), so an estimate below that is chance and is not told. */
hs_batch hs_batch_of(hs_batch_good good, void *of, size_t boxes, size_t followed, size_t n,
                     hs_batch_work *work);

/** All parts of a job at the aims found; after hs_decide_joint (work->margin_m). */
hs_batch hs_batch_find(const hs_window_found *found, const hs_chain *chain, const hs_draws *draws,
                       const hs_decide_work *work, hs_batch_work *scratch);

#endif
