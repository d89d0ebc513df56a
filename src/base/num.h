/* Small numerics without allocation: tridiagonal solve, root, interpolation, order statistics. */
#ifndef HS_BASE_NUM_H
#define HS_BASE_NUM_H

#include "hardskin/base/status.h"

#include <stddef.h>

/** As fmin and fmax, of numbers; those are calls, and these are for the innermost loops. */
static inline double hs_least(double a, double b) {
    return b < a ? b : a;
}

static inline double hs_most(double a, double b) {
    return b > a ? b : a;
}

/** Solve a tridiagonal system in place (Thomas; the matrix must be diagonally dominant).
 *
 *    x        n doubles  in/out  right-hand side in, solution out
 *    lower    n doubles  in      lower[i] multiplies x[i-1]; lower[0] unused
 *    diag     n doubles  in      main diagonal
 *    upper    n doubles  in      upper[i] multiplies x[i+1]; upper[n-1] unused
 *    work     n doubles          scratch */
void hs_tridiagonal(double *x, const double *lower, const double *diag, const double *upper,
                    double *work, size_t n);

/** A function of one variable with a context. */
typedef double (*hs_function)(double x, const void *context);

/** Root of f in [a, b] by Brent's method (R. P. Brent, Algorithms for Minimization without
 *  Derivatives, 1973, ch. 4). f(a) and f(b) must differ in sign.
 *  Returns HS_OK, or HS_E_CONVERGE when they do not or 200 steps do not reach `tolerance`. */
hs_status hs_root(double *x, hs_function f, const void *context, double a, double b,
                  double tolerance);

/** Linear interpolation of y over rising x at `at`; outside the ends: NaN. n >= 2. */
double hs_interpolate(const double *x, const double *y, size_t n, double at);

/** Value at the share q (0..1) of n values in rising order, linear between neighbours
 *  (Hyndman & Fan 1996, type 7). */
double hs_quantile(const double *sorted, size_t n, double q);

/** The same of n values in any order, which it partly reorders (Hoare's FIND, 1961: no full sort).
 */
double hs_quantile_of(double *values, size_t n, double q);

/** Sort n doubles into rising order, in place. No NaN allowed. */
void hs_sort(double *values, size_t n);

/** 64-bit FNV-1a hash of `size` bytes, carried on from `hash` (start with HS_HASH_START). */
#define HS_HASH_START 14695981039346656037ULL
unsigned long long hs_hash(unsigned long long hash, const void *data, size_t size);

#endif
