/* Counter-based random numbers: the same (seed, sample, input) gives the same number on every
 * machine, in any order, on any thread. */
#ifndef HS_BASE_RANDOM_H
#define HS_BASE_RANDOM_H

#include <stdint.h>

/** Uniform number in the open interval (0, 1), keyed by seed, sample and input.
 *  Mixing by three rounds of SplitMix64 (Steele, Lea, Flood, OOPSLA 2014). */
double hs_random_uniform(uint64_t seed, uint32_t sample, uint32_t input);

/** Standard normal quantile of p in (0, 1); relative error below 1e-15.
 *  Source: M. J. Wichura, Algorithm AS 241 (PPND16), Applied Statistics 37 (1988) 477. */
double hs_normal_quantile(double p);

/** Standard normal number, keyed like hs_random_uniform. */
double hs_random_normal(uint64_t seed, uint32_t sample, uint32_t input);

#endif
