/* A hardness limit as limits of carbon: the least carbon that is hard enough, and the most before
 * retained austenite makes the surface soft again; both as Ms and hardness are drawn. */
#ifndef HS_PLAN_LIMIT_H
#define HS_PLAN_LIMIT_H

#include "hardskin/model/martensite.h"
#include "plan/draw.h"

enum { HS_LIMIT_NODES = 5 };

/** Nodes at -2, -1, 0, 1, 2 times the 95 % bound, of Ms (first index) and of hardness. */
typedef struct hs_limit {
    double hardness_HV;
    double least_pct[HS_LIMIT_NODES][HS_LIMIT_NODES]; /* HS_LIMIT_NEVER: no carbon is hard enough */
    double most_pct[HS_LIMIT_NODES][HS_LIMIT_NODES];  /* HS_LIMIT_NEVER: none is too soft again */
    double by_rate_pct[HS_LIMIT_NODES]; /* what a rate of cooling at the same nodes adds to the
                                           least */
} hs_limit;

#define HS_LIMIT_NEVER 9.0 /* more carbon than any steel holds */

/** Find the limits for one hardness. `h` as for hs_hardened_HV, its shifts are ignored; rate_bound
 *  is the 95 % bound on ln of its rate. */
void hs_limit_make(hs_limit *limit, const hs_hardening *h, double rate_bound, double hardness_HV);

/** Least and most carbon in a draw: between the nodes, at most at the outermost ones. Where one of
 *  the four nodes around is `never`, the nearest decides. */
double hs_limit_least(const hs_limit *limit, const double z[HS_INPUTS]);
double hs_limit_most(const hs_limit *limit, const double z[HS_INPUTS]);

#endif
