/* What a confirmed change is worth, written into the list of each dimension it helps. */
#ifndef HS_PLAN_REMEDY_OFFER_H
#define HS_PLAN_REMEDY_OFFER_H

#include "plan/remedy_search.h"

/** Offer the last run, confirmed, to every dimension it helps, the best gain first. Nothing is
 *  offered that breaks another dimension: then 0. */
int hs_remedy_offer(hs_search *search);

/** Where several things open the window, what leaves it shut is not worth reading. */
void hs_remedy_keep_best(hs_result_dimension *dimension);

#endif
