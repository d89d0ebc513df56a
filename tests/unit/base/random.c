#include "base/random.h"
#include "support/check.h"

static void random__normal_quantile__inverts_the_error_function(void) {
    /* exact: p = erfc(-x / sqrt 2) / 2 */
    for (int i = 1; i < 400; i++) {
        double x = -7 + 0.035 * i;
        if (x > 5) break;
        double p = 0.5 * erfc(-x / sqrt(2));
        NEAR(hs_normal_quantile(p), x, 1e-9 + 1e-15 / exp(-0.5 * x * x));
    }
    NEAR(hs_normal_quantile(0.975), 1.959963984540054, 1e-14); /* published: any normal table */
}

static void random__uniform__has_the_moments_of_a_uniform(void) {
    double sum = 0, square = 0;
    enum { N = 200000 };
    for (unsigned i = 0; i < N; i++) {
        double u = hs_random_uniform(7, i, 3);
        CHECK(u > 0 && u < 1);
        sum += u;
        square += u * u;
    }
    NEAR(sum / N, 0.5, 5 * sqrt(1.0 / 12 / N)); /* five standard errors */
    NEAR(square / N, 1.0 / 3, 5 * sqrt(4.0 / 45 / N));
}

static void random__inputs_of_one_sample__are_not_correlated(void) {
    enum { N = 100000 };
    double sum = 0;
    for (unsigned i = 0; i < N; i++)
        sum += hs_random_normal(1, i, 0) * hs_random_normal(1, i, 1);
    NEAR(sum / N, 0, 5 / sqrt(N));
}

static void random__tails__hold_what_normal_tables_say(void) {
    /* published: process capability of 1: 2699.8 of a million lie beyond three standard
     * deviations; within four standard errors of the draws */
    enum { N = 1600000 };
    unsigned beyond = 0;
    for (unsigned i = 0; i < N; i++)
        beyond += fabs(hs_random_normal(11, i, 2)) > 3;
    NEAR(1e6 * beyond / N, 2699.8, 4 * 1e6 * sqrt(2.6998e-3 / N));
}

static void random__same_key__same_number(void) {
    CHECK(hs_random_uniform(1, 2, 3) == hs_random_uniform(1, 2, 3));
    CHECK(hs_random_uniform(1, 2, 3) != hs_random_uniform(1, 3, 2));
    CHECK(hs_random_uniform(2, 2, 3) != hs_random_uniform(1, 2, 3));
}

HS_TEST_MAIN("base random", TEST(random__normal_quantile__inverts_the_error_function),
             TEST(random__uniform__has_the_moments_of_a_uniform),
             TEST(random__inputs_of_one_sample__are_not_correlated),
             TEST(random__tails__hold_what_normal_tables_say), TEST(random__same_key__same_number))
