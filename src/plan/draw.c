#include "plan/draw.h"

#include "base/random.h"
#include "constants.h"

#include <math.h>

static const double bound_95 = 1.959963984540054; /* standard normal quantile of .975 */

static const char *const names[HS_INPUTS] = {
#define X(id, name) name,
    HS_INPUT_LIST(X)
#undef X
};

const char *hs_input_name(hs_input input) {
    return names[input];
}

size_t hs_draws_wanted(double confidence) {
    const double proves = 3.0 / HS_K_PLAN_DOUBT_SAMPLES;
    return (size_t)(1 - confidence < proves ? HS_K_PLAN_DOUBT_SAMPLES_HIGH
                                            : HS_K_PLAN_DOUBT_SAMPLES);
}

/* Rough sizes hold the keys from here on; inputs added later take keys past them, so that a new one
 * moves no other draw. */
enum { ROUGH_KEY = 21 };

static uint32_t key_of(uint32_t input) {
    return input < ROUGH_KEY ? input : input + HS_MAX_DIMENSIONS;
}

void hs_draws_fill(hs_draws *draws, size_t n, uint64_t seed) {
    draws->n = n < HS_MAX_SAMPLES ? n : HS_MAX_SAMPLES;
    for (uint32_t i = 0; i < draws->n; i++) {
        for (uint32_t k = 0; k < HS_INPUTS; k++)
            draws->z[i][k] = hs_random_normal(seed, i, key_of(k));
        for (uint32_t k = 0; k < HS_MAX_DIMENSIONS; k++)
            draws->rough[i][k] = 2 * hs_random_uniform(seed, i, ROUGH_KEY + k) - 1;
    }
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
