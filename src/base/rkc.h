/* A stabilised explicit march for stiff heat and the like: RKC, second order (Sommeijer, Shampine
 * and Verwer, J. Comput. Appl. Math. 88 (1998) 315). No linear algebra; the stages grow with the
 * root of step times the fastest rate. */
#ifndef HS_BASE_RKC_H
#define HS_BASE_RKC_H

#include <stddef.h>

enum { HS_RKC_ARRAYS = 5, HS_RKC_STAGES = 200 };

/** dy/dt of n values. */
typedef void (*hs_rate)(double *rate, const double *y, void *context);

/** Stages that a step needs; may shorten the step to what the most stages bear.
 *    fastest  double  in  bound on the size of the (negative real) eigenvalues, 1/s */
size_t hs_rkc_stages(double *step, double fastest);

/** One step.
 *    next    n doubles  out
 *    y       n doubles  in
 *    work    HS_RKC_ARRAYS * n doubles; the first n hold the rate at y on entry; the first n are
 *            left as they are, the second n hold the rate at next on return
 *    stages  size_t     in   2 or more, hs_rkc_stages */
void hs_rkc_step(double *next, const double *y, size_t n, double step, size_t stages, hs_rate rate,
                 void *context, double *work);

/** Estimate of a step's error in component i, after hs_rkc_step. */
double hs_rkc_error(const double *next, const double *y, size_t n, double step, const double *work,
                    size_t i);

#endif
