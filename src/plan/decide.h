/* From the chain and its draws to windows, sizes and verdicts. */
#ifndef HS_PLAN_DECIDE_H
#define HS_PLAN_DECIDE_H

#include "plan/chain.h"

/** Least and most stock of both faces of a dimension, and V, one number a draw. */
typedef struct hs_dimension_draws {
    double need_m[2][HS_MAX_SAMPLES], may_m[2][HS_MAX_SAMPLES], shape_m[HS_MAX_SAMPLES];
} hs_dimension_draws;

typedef struct hs_decide_work {
    hs_part_draw part[HS_MAX_SAMPLES];
    hs_dimension_draws dimension[HS_MAX_DIMENSIONS];
    double column[8][HS_MAX_SAMPLES]; /* scratch of one face at a time */
    double margin_m[HS_MAX_SAMPLES];  /* of the worst face of the part, at the aims */
    unsigned char good[HS_MAX_SAMPLES];
} hs_decide_work;

/** One dimension before rounding. Sums over both faces. */
typedef struct hs_window_found {
    hs_verdict verdict;
    int inside;                 /* bore or slot */
    int grounds;                /* how many of its two faces are ground (a diameter: 2) */
    double need_m[2], may_m[2]; /* at the confidence asked */
    hs_limits rough;
    double aim_m;       /* best size; also at stop, for the record */
    double joint;       /* share of draws good at the aim inside the rough tolerance */
    hs_face_sum bad[2]; /* each letter at its bad side */
    double shape_typical_m, shape_high_m;
    int pulled;                                        /* flat by the chuck: V is 0 */
    double sprung_m, sprung_high_m, sprung_at_worst_m; /* bow that comes back: typical, 1 in 20, at
                                                          the confidence asked */
    double flatness_m;                                 /* least asked of its ground faces, 0 none */
    double flattens_m; /* largest bow that the chuck surely flattens */
    int stiff;         /* less than what may come */
    int refused;       /* to be held so: stop */
    double
        error_m; /* 95 % bound on the error of the ends of the rough size, of the number of draws */
} hs_window_found;

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
 *  bad sides are not found again (found->bad keeps `before`'s) unless no face is ground. */
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

/** Stock of the faces of a dimension at a rough size: the sum, then shared by need and room. */
void hs_decide_share(double stock_m[2], const hs_window_found *found, double total_m);

#endif
