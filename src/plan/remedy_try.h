/* One change of the job while remedies are sought: tried with few draws, confirmed with all. */
#ifndef HS_PLAN_REMEDY_TRY_H
#define HS_PLAN_REMEDY_TRY_H

#include "plan/remedy_search.h"

/** Run the sizes of a change with few draws. */
void hs_try(hs_tried *out, hs_search *search, const hs_change *change);

/** Is it worth whole runs? It opens a window, or nearly all; or it gains what a bench can see. */
int hs_try_opens(const hs_tried *tried);
int hs_try_helps(const hs_tried *tried);

/** Confirm a change that opens windows, larger where few draws were too hopeful, and offer it.
 *  Returns 0 where no size of it opens one with all draws, or each breaks another dimension. */
int hs_try_confirm_opening(hs_tried *tried, hs_search *search);

/** Confirm one that helps, less of it where it breaks another dimension, and offer it. */
void hs_try_confirm_help(hs_tried *tried, hs_search *search);

#endif
