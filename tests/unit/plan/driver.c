/* Shares of a doubt: exact in designs whose columns are uncorrelated, and against freezing an input
 * in the whole chain. */
#include "plan/driver.h"
#include "job.h"
#include "plan/decide.h"
#include "support/check.h"

#include <stdlib.h>
#include <string.h>

static hs_draws draws;
static double value[HS_MAX_SAMPLES];

/* Every combination of the levels in the inputs 0 .. inputs - 1; all others 0. */
static void design(size_t inputs, const double *level, size_t levels) {
    memset(draws.z, 0, sizeof draws.z);
    draws.n = 1;
    for (size_t k = 0; k < inputs; k++)
        draws.n *= levels;
    for (size_t i = 0; i < draws.n; i++)
        for (size_t k = 0, rest = i; k < inputs; k++, rest /= levels)
            draws.z[i][k] = level[rest % levels];
}

static double share_of(const hs_driver *d, size_t n, hs_input input) {
    for (size_t i = 0; i < n; i++)
        if (!strcmp(d[i].name, hs_input_name(input))) return d[i].share_pct;
    return 0;
}

/* exact: of y = sum a z the variances add, and freezing z takes a^2 of sum a^2 */
static void drivers__linear__squares_of_the_factors(void) {
    static const double sign[] = {-1, 1}, a[] = {3, -2, 1, 0.5, 0};
    hs_driver d[HS_MAX_DRIVERS];
    design(12, sign, 2); /* more than matter: 4096 draws */
    for (size_t i = 0; i < draws.n; i++) {
        value[i] = 7;
        for (int k = 0; k < 5; k++)
            value[i] += a[k] * draws.z[i][k];
    }
    size_t n = hs_drivers_find(d, HS_MAX_DRIVERS, &draws, value);
    double sum = 0;
    CHECK(n == 4);
    for (size_t i = 0; i < n; i++)
        sum += d[i].share_pct;
    for (int k = 0; k < 4; k++)
        NEAR(share_of(d, n, (hs_input)k), 100 * a[k] * a[k] / 14.25, 1e-9);
    NEAR(sum, 100, 1e-9);
    CHECK(!strcmp(d[0].name, hs_input_name((hs_input)0)) && d[0].share_pct > d[1].share_pct);
    hs_driver two[2]; /* the first of them, their shares as of all */
    CHECK(hs_drivers_find(two, 2, &draws, value) == 2);
    NEAR(two[0].share_pct, d[0].share_pct, 0);
    NEAR(two[1].share_pct, d[1].share_pct, 0);
}

/* exact: |z| of -2 -1 1 2 has the variance 1/4, z 2.5; z and |z| have nothing in common */
static void drivers__by_size__add_to_the_straight(void) {
    static const double level[] = {-2, -1, 1, 2};
    hs_driver d[HS_MAX_DRIVERS];
    design(6, level, 4);
    for (size_t i = 0; i < draws.n; i++)
        value[i] = 4 * fabs(draws.z[i][0]) + draws.z[i][1] - 2 * fabs(draws.z[i][1]);
    size_t n = hs_drivers_find(d, HS_MAX_DRIVERS, &draws, value);
    double first = 16 * 0.25, second = 2.5 + 4 * 0.25;
    CHECK(n == 2);
    NEAR(share_of(d, n, (hs_input)0), 100 * first / (first + second), 1e-9);
    NEAR(share_of(d, n, (hs_input)1), 100 * second / (first + second), 1e-9);
}

static void drivers__nothing_to_tell__none(void) {
    hs_driver d[3];
    hs_draws_fill(&draws, 2048, 9);
    for (size_t i = 0; i < draws.n; i++)
        value[i] = 4;
    CHECK(hs_drivers_find(d, 3, &draws, value) == 0);
    value[0] = INFINITY;
    CHECK(hs_drivers_find(d, 3, &draws, value) == 0);
    hs_draws_fill(&draws, 2048, 9);
    for (size_t i = 0; i < draws.n; i++)
        value[i] = sin(12.9898 * (double)i) * 43758.5453; /* of no input */
    CHECK(hs_drivers_find(d, 3, &draws, value) == 0);
}

static double variance(const hs_dimension_draws *d, size_t n, int may) {
    double sum = 0, square = 0;
    for (size_t i = 0; i < n; i++) {
        double y = may ? d->may_m[0][i] : d->need_m[0][i];
        sum += y;
        square += y * y;
    }
    return square / (double)n - sum * sum / (double)n / (double)n;
}

/* independent: an input held at its middle in the whole chain. May is close to a sum, so that
 * freezing takes the share told, to what N draws and the curved rest leave. Need holds the size of
 * a sum of bows, of which each takes less by itself than with the others: only the order is the
 * same. */
static void drivers__plate__as_freezing_shows(void) {
    enum { N = 4000 };
    static test_job t;
    static hs_chain chain;
    static hs_chain_work scratch;
    static hs_decide_work work;
    static hs_window_found found[HS_MAX_DIMENSIONS];
    test_job_plate(&t, "16MnCr5");
    if (hs_chain_make(&chain, &t.job, &scratch, NULL) != HS_OK) abort();
    for (int may = 0; may < 2; may++) {
        hs_driver d[3];
        hs_draws_fill(&draws, N, 21);
        hs_decide_windows(found, &chain, &draws, 0.95, &work);
        const hs_dimension_draws *drawn = &work.dimension[0];
        size_t n = hs_drivers_find(d, 3, &draws, may ? drawn->may_m[0] : drawn->need_m[0]);
        double whole = variance(drawn, N, may);
        double worst_taken = 0, first_taken = -1;
        CHECK(n == 3);
        for (int k = 0; k < HS_INPUTS; k++) {
            double share = share_of(d, n, (hs_input)k);
            if (share <= 0) continue;
            hs_draws_fill(&draws, N, 21);
            for (size_t i = 0; i < N; i++)
                draws.z[i][k] = 0;
            hs_decide_windows(found, &chain, &draws, 0.95, &work);
            double taken = 100 * (1 - variance(drawn, N, may) / whole);
            printf("%s: %s %.1f %%, frozen %.1f %%\n", may ? "may" : "need",
                   hs_input_name((hs_input)k), share, taken);
            if (may) NEAR(taken, share, 3);
            worst_taken = fmax(worst_taken, taken);
            if (!strcmp(d[0].name, hs_input_name((hs_input)k))) first_taken = taken;
        }
        NEAR(first_taken, worst_taken, 0); /* the first is what freezing takes most by */
    }
}

HS_TEST_MAIN("plan_driver", TEST(drivers__linear__squares_of_the_factors),
             TEST(drivers__by_size__add_to_the_straight), TEST(drivers__nothing_to_tell__none),
             TEST(drivers__plate__as_freezing_shows))
