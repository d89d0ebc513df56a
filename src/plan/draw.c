#include "plan/draw.h"

#include "base/num.h"
#include "base/random.h"
#include "constants.h"

#include <math.h>
#include <string.h>

static const double bound_95 = 1.959963984540054; /* standard normal quantile of .975 */

static const char *const names[HS_INPUTS] = {
#define X(id, own, name) name,
    HS_INPUT_LIST(X)
#undef X
};

static const int owned[HS_INPUTS] = {
#define X(id, own, name) own,
    HS_INPUT_LIST(X)
#undef X
};

const char *hs_input_name(hs_input input) {
    return names[input];
}

int hs_input_own(hs_input input) {
    return owned[input];
}

size_t hs_draws_wanted(double confidence) {
    const double proves = 3.0 / HS_K_PLAN_DOUBT_SAMPLES;
    return (size_t)(1 - confidence < proves ? HS_K_PLAN_DOUBT_SAMPLES_HIGH
                                            : HS_K_PLAN_DOUBT_SAMPLES);
}

double hs_draws_error(const double *values, size_t n, double q, double *scratch) {
    double aside = bound_95 * sqrt(q * (1 - q) / (double)n), at[2];
    const double place[2] = {fmax(0, q - aside), fmin(1, q + aside)};
    for (int k = 0; k < 2; k++) {
        memcpy(scratch, values, n * sizeof *values);
        at[k] = hs_quantile_of(scratch, n, place[k]);
    }
    double error = (at[1] - at[0]) / 2;
    return isfinite(error) ? error : 0;
}

/* Rough sizes hold the keys from here on; inputs added later take keys past them, so that a new one
 * moves no other draw. */
enum { ROUGH_KEY = 21 };

static uint32_t key_of(uint32_t input) {
    return input < ROUGH_KEY ? input : input + HS_MAX_DIMENSIONS;
}

void hs_draws_take(hs_draws *draws, size_t n) {
    draws->n = n < HS_MAX_SAMPLES ? n : HS_MAX_SAMPLES;
    for (uint32_t i = (uint32_t)draws->made; i < draws->n; i++) {
        for (uint32_t k = 0; k < HS_INPUTS; k++)
            draws->z[i][k] = hs_random_normal(draws->seed, i, key_of(k));
        for (uint32_t k = 0; k < HS_MAX_DIMENSIONS; k++)
            draws->rough[i][k] = 2 * hs_random_uniform(draws->seed, i, ROUGH_KEY + k) - 1;
    }
    if (draws->made < draws->n) draws->made = draws->n;
}

void hs_draws_own(double z[HS_INPUTS], double rough[HS_MAX_DIMENSIONS], uint64_t seed,
                  size_t sample, size_t part) {
    uint64_t own = seed + part; /* the seed is mixed: neighbours have nothing in common */
    for (uint32_t k = 0; k < HS_INPUTS; k++)
        if (owned[k]) z[k] = hs_random_normal(own, (uint32_t)sample, key_of(k));
    for (uint32_t k = 0; k < HS_MAX_DIMENSIONS; k++)
        rough[k] = 2 * hs_random_uniform(own, (uint32_t)sample, ROUGH_KEY + k) - 1;
}

void hs_draws_fill(hs_draws *draws, size_t n, uint64_t seed) {
    draws->seed = seed;
    draws->made = 0;
    hs_draws_take(draws, n);
}

double hs_draw_share(double z) {
    return z / bound_95;
}

double hs_draw_between(double low, double value, double high, double z) {
    double share = hs_draw_share(z);
    return value + share * (share < 0 ? value - low : high - value);
}

double hs_draw_factor(double bound, double z) {
    return exp(log(bound) * hs_draw_share(z));
}
