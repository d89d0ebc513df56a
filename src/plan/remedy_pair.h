/* Two changes together, where no single one is enough. */
#ifndef HS_PLAN_REMEDY_PAIR_H
#define HS_PLAN_REMEDY_PAIR_H

#include "plan/remedy_search.h"

/** The widest of the changes tried with each other one, then the next widest, until a pair opens
 *  every window; that one is confirmed and offered.
 *    tried   in   n of them, the soak among them */
void hs_remedy_pairs(hs_search *search, const hs_tried *tried, size_t n);

#endif
