/* The sampler against the two sums of JCGM 101:2008 (Monte Carlo supplement to the GUM), section
 * 9.2: additive model Y = X1 + X2 + X3 + X4. */
#include "base/num.h"
#include "base/random.h"
#include "plan/draw.h"
#include "support/check.h"

#include <stdlib.h>

enum { TRIALS = 1000000 };

typedef double (*input_value)(uint32_t trial, uint32_t input);

static double normal(uint32_t trial, uint32_t input) {
    return hs_random_normal(101, trial, input);
}

/* Rectangular of standard deviation 1: half width sqrt 3. */
static double rectangular(uint32_t trial, uint32_t input) {
    return sqrt(3) * (2 * hs_random_uniform(102, trial, input) - 1);
}

typedef struct answer {
    double mean, u, low, high;
} answer;

static answer sum_of_four(input_value value) {
    double *y = malloc(TRIALS * sizeof *y), sum = 0, square = 0;
    if (!y) return (answer){NAN, NAN, NAN, NAN};
    for (uint32_t i = 0; i < TRIALS; i++) {
        y[i] = 0;
        for (uint32_t k = 0; k < 4; k++)
            y[i] += value(i, k);
        sum += y[i];
        square += y[i] * y[i];
    }
    answer out = {sum / TRIALS, sqrt(square / TRIALS), 0, 0};
    out.low = hs_quantile_of(y, TRIALS, 0.025);
    out.high = hs_quantile_of(y, TRIALS, 0.975);
    free(y);
    return out;
}

/* Standard error of a quantile q: sqrt(q (1 - q) / N) / density: at +-3.92 of N(0, 2) the density
 * is .0292, at 3.88 of four rectangulars .0328: 5.4e-3 and 4.8e-3. The printed digits carry 5e-3.
 */
static void sampler__four_normals__have_the_guide_s_interval(void) {
    answer y = sum_of_four(normal);
    printf("four N(0, 1): u %.4f, %.3f to %.3f\n", y.u, y.low, y.high);
    NEAR(y.mean, 0, 4 * 2e-3);
    NEAR(y.u, 2, 4 * 2 / sqrt(2.0 * TRIALS)); /* published: JCGM 101, 9.2.2: u 2.00 */
    NEAR(y.high, 3.92, 4 * 5.4e-3);           /* published: JCGM 101, 9.2.2 */
    NEAR(y.low, -3.92, 4 * 5.4e-3);
    NEAR(y.high, 2 * 1.959963984540054, 4 * 5.4e-3); /* exact */
}

static void sampler__four_rectangulars__have_the_guide_s_interval(void) {
    answer y = sum_of_four(rectangular);
    printf("four rectangular, u = 1: u %.4f, %.3f to %.3f\n", y.u, y.low, y.high);
    NEAR(y.mean, 0, 4 * 2e-3);
    NEAR(y.u, 2, 4 * 2 / sqrt(2.0 * TRIALS));
    NEAR(y.high, 3.88, 4 * 4.8e-3 + 5e-3); /* published: JCGM 101, 9.2.3 */
    NEAR(y.low, -3.88, 4 * 4.8e-3 + 5e-3);
    /* exact: near its end the sum of four U(0, 1) has P(S > 4 - t) = t^4 / 24, t <= 1 */
    double end = 2 * sqrt(3) * (2 - pow(24 * 0.025, 0.25));
    NEAR(y.high, end, 4 * 4.8e-3);
}

/* What a plan draws: the 95 % quantile of a normal input from the usual number of draws, over
 * repeated seeds, spreads as theory says and lies on the true one. */
static void sampler__plan_quantile__spreads_as_it_says(void) {
    enum { SEEDS = 200 };
    static hs_draws draws;
    static double column[HS_MAX_SAMPLES];
    double sum = 0, square = 0;
    size_t n = hs_draws_wanted(0.95);
    for (uint64_t seed = 1; seed <= SEEDS; seed++) {
        hs_draws_fill(&draws, n, seed);
        for (size_t i = 0; i < draws.n; i++)
            column[i] = draws.z[i][HS_IN_PACK];
        double q = hs_quantile_of(column, draws.n, 0.95);
        sum += q;
        square += q * q;
    }
    double mean = sum / SEEDS, spread = sqrt(square / SEEDS - mean * mean);
    /* exact: sqrt(q (1 - q) / N) / density, density of N(0, 1) at 1.6449 is .10314 */
    double theory = sqrt(0.95 * 0.05 / (double)n) / 0.103135640;
    printf("95 %% quantile of %zu draws, %d seeds: %.4f, spread %.4f (theory %.4f)\n", n, SEEDS,
           mean, spread, theory);
    NEAR(mean, 1.644853627, 4 * theory / sqrt(SEEDS) + 2e-3); /* and a bias of the order 1 / N */
    NEAR(spread / theory, 1, 4 / sqrt(2.0 * SEEDS));
}

HS_TEST_MAIN("plan_sampler", TEST(sampler__four_normals__have_the_guide_s_interval),
             TEST(sampler__four_rectangulars__have_the_guide_s_interval),
             TEST(sampler__plan_quantile__spreads_as_it_says))
