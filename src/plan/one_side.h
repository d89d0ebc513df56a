/* A part cased on one side, its like opposite soft: it bows even in an even quench. */
#ifndef HS_PLAN_ONE_SIDE_H
#define HS_PLAN_ONE_SIDE_H

#include "plan/warp.h"

typedef struct hs_one_side {
    int present;
    double low_m, high_m; /* bow at mid-length of even quenches, over the bounds of film and
                             plasticity: above 0 the cased side is crowned, below it is hollow */
} hs_one_side;

/** Is more of a flat's or profile's outline soft on one side than opposite, and how do its even
 *  quenches bow it towards that? A ring's wall and a round do not count. */
hs_one_side hs_one_side_of(const hs_warp *warp, const hs_job *job);

#endif
