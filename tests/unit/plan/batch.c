/* The chance that all parts of a box come out good: against closed forms where every part's figure
 * is normal, a part of its variance shared; and against the whole chain run part by part. */
#include "plan/batch.h"
#include "base/random.h"
#include "job.h"
#include "support/check.h"

#include <stdlib.h>
#include <string.h>

/* A part is good where sqrt(rho) S + sqrt(1 - rho) O < limit, S its box's, O its own. */
typedef struct normal_law {
    double rho, limit;
    uint64_t seed;
} normal_law;

static int below(void *of, size_t box, size_t part) {
    const normal_law *law = of;
    double shared = hs_random_normal(law->seed, (uint32_t)box, 0);
    double own = hs_random_normal(law->seed, (uint32_t)box, (uint32_t)part + 1);
    return sqrt(law->rho) * shared + sqrt(1 - law->rho) * own < law->limit;
}

static double cdf(double x) {
    return 0.5 * erfc(-x / sqrt(2));
}

/* exact: the integral over S of phi(s) Phi((limit - sqrt(rho) s)/sqrt(1 - rho))^n, by Simpson */
static double all_below(double rho, double limit, size_t n) {
    enum { STEPS = 4000 };
    double sum = 0, h = 16.0 / STEPS;
    for (int i = 0; i <= STEPS; i++) {
        double s = -8 + i * h, weight = i == 0 || i == STEPS ? 1 : i % 2 ? 4 : 2;
        double p = cdf((limit - sqrt(rho) * s) / sqrt(1 - rho));
        sum += weight * exp(-s * s / 2) / sqrt(2 * acos(-1)) * pow(p, (double)n);
    }
    return sum * h / 3;
}

static hs_batch estimate(double rho, double limit, size_t n, uint64_t seed) {
    static hs_batch_work work;
    normal_law law = {rho, limit, seed};
    return hs_batch_of(below, &law, 8000, 4096, n, &work);
}

/* exact: with rho = 1/2 and the limit 0, S is to be the largest of n + 1 alike numbers: 1/(n + 1);
 * of two parts 1/4 + asin(rho)/(2 pi). Four standard deviations of the estimate's own. */
static void batch__equicorrelated_normals__closed_forms(void) {
    for (size_t n = 1; n <= 6; n++) {
        hs_batch b = estimate(0.5, 0, n, 11);
        NEAR(b.all, 1.0 / (double)(n + 1), b.error * 4 / 1.96);
        NEAR(all_below(0.5, 0, n), 1.0 / (double)(n + 1), 1e-9);
    }
    for (double rho = 0.1; rho < 0.95; rho += 0.2) {
        hs_batch b = estimate(rho, 0, 2, 12);
        NEAR(b.all, 0.25 + asin(rho) / (2 * acos(-1)), b.error * 4 / 1.96);
    }
}

/* exact: the quadrature above, where nearly all parts are good */
static void batch__good_parts__as_the_integral(void) {
    static const size_t parts[] = {2, 6, 25, 200};
    for (double rho = 0.2; rho < 0.9; rho += 0.3)
        for (size_t k = 0; k < 4; k++) {
            hs_batch b = estimate(rho, 2.05, parts[k], 13);
            double exact = all_below(rho, 2.05, parts[k]);
            printf("rho %.1f, %zu parts: %.4f +-%.4f, exact %.4f, apart %.4f\n", rho, parts[k],
                   b.all, b.error, exact, pow(b.one, (double)parts[k]));
            NEAR(b.all, exact, b.error * 4 / 1.96);
            CHECK(b.error < (parts[k] > 6 ? 0.1 : 0.02)); /* told to a per cent or so */
        }
}

/* exact: nothing shared p^n, all shared p */
static void batch__limits__apart_and_all_alike(void) {
    double p = cdf(2);
    for (size_t n = 2; n < 40; n *= 2) {
        hs_batch apart = estimate(0, 2, n, 14), alike = estimate(1, 2, n, 14);
        NEAR(apart.all, pow(p, (double)n), apart.error * 4 / 1.96);
        NEAR(alike.all, alike.one, 0);
    }
    hs_batch one = estimate(0.5, 2, 1, 14);
    NEAR(one.all, one.one, 0);
    NEAR(one.error, 1.96 * sqrt(one.one * (1 - one.one) / 8000), 1e-9); /* exact: binomial */
}

static void batch__more_parts__never_likelier_and_never_below_the_floor(void) {
    for (double rho = 0; rho <= 1; rho += 0.125) {
        double before = 1;
        for (size_t n = 1; n < 60; n++) {
            hs_batch b = estimate(rho, 1.5, n, 15);
            CHECK(b.all <= before && b.all <= b.one && b.all >= pow(b.one, (double)n));
            before = b.all;
        }
    }
}

/* independent: other seeds. 95 % of 300 intervals hold the exact value; that count is known to
 * sqrt(.95 * .05 / 300) = 1.3 %, three of those. */
static void batch__error__holds_the_exact_value_as_often_as_it_says(void) {
    enum { SEEDS = 300 };
    int held = 0;
    double exact = all_below(0.4, 1.8, 6);
    for (uint64_t seed = 100; seed < 100 + SEEDS; seed++) {
        hs_batch b = estimate(0.4, 1.8, 6, 1000 * seed);
        held += fabs(b.all - exact) <= b.error;
    }
    printf("%d of %d intervals hold the exact %.4f\n", held, SEEDS, exact);
    NEAR((double)held / SEEDS, 0.95, 3 * 0.0126);
}

static int always(void *of, size_t box, size_t part) {
    (void)of;
    return box < HS_MAX_SAMPLES && part < 5000;
}

static void batch__what_no_draw_shows__is_said_to_be_a_bound(void) {
    static hs_batch_work work;
    hs_batch b = hs_batch_of(always, NULL, 4096, 4096, 10, &work);
    CHECK(b.none_failed && !b.floor_only);
    b = estimate(0.5, 2, 100000, 16); /* no box is followed so far */
    CHECK(b.floor_only);
    NEAR(b.all, pow(b.one, 1e5), 0);
}

typedef struct bench {
    hs_chain chain;
    hs_chain_work scratch;
    hs_draws draws;
    hs_decide_work work;
    hs_batch_work batch;
    hs_window_found found[HS_MAX_DIMENSIONS];
} bench;

/* The draws with the parts' own inputs drawn anew. */
static void next_part(hs_draws *draws, size_t part) {
    for (size_t i = 0; i < draws->n; i++)
        hs_draws_own(draws->z[i], draws->rough[i], draws->seed, i, part);
}

/* independent: part by part through the whole chain, nothing taken over from the box; all boxes
 * followed, so that the counts are the same to the last one. */
static void batch__plan__as_the_whole_chain_part_by_part(void) {
    enum { N = 1000, PARTS = 2 };
    static test_job t;
    static bench b;
    static hs_window_found aims[HS_MAX_DIMENSIONS];
    static unsigned char good[N];
    for (int way = 0; way < 3; way++) {
        if (way == 0) test_job_plate(&t, "16MnCr5");
        if (way == 1) test_job_bar(&t, "16MnCr5");
        if (way == 2) test_job_ring(&t, "20MnCr5");
        t.job.part.quantity = PARTS;
        memset(&b, 0, sizeof b);
        if (hs_chain_make(&b.chain, &t.job, &b.scratch, NULL) != HS_OK) abort();
        for (size_t k = 0; k < t.job.faces; k++) /* so much that some fail */
            if (t.face[k].finish == HS_GROUND) t.face[k].case_m = 0.9e-3;
        hs_draws_fill(&b.draws, N, 5);
        hs_decide_windows(b.found, &b.chain, &b.draws, 0.95, &b.work);
        double one = hs_decide_joint(b.found, &b.chain, &b.draws, &b.work);
        hs_batch all = hs_batch_find(b.found, &b.chain, &b.draws, &b.work, &b.batch);
        NEAR(all.one, one, 1e-12);
        for (size_t i = 0; i < N; i++)
            good[i] = b.work.margin_m[i] >= 0;
        memcpy(aims, b.found, sizeof aims);
        next_part(&b.draws, 1);
        hs_decide_windows(b.found, &b.chain, &b.draws, 0.95, &b.work);
        (void)hs_decide_joint(aims, &b.chain, &b.draws, &b.work);
        size_t both = 0;
        for (size_t i = 0; i < N; i++)
            both += good[i] && b.work.margin_m[i] >= 0;
        printf("one %.3f, both %.3f\n", one, (double)both / N);
        CHECK(one > 0.1 && one < 1);
        CHECK((double)both / N > one * one); /* so that the count decides */
        NEAR(all.all, (double)both / N, 1e-12);
    }
}

/* exact: what a box shares is what its parts' own inputs do not move */
static void batch__own_inputs__leave_the_box_as_it_is(void) {
    static test_job t;
    static bench b;
    test_job_plate(&t, "16MnCr5");
    if (hs_chain_make(&b.chain, &t.job, &b.scratch, NULL) != HS_OK) abort();
    hs_draws_fill(&b.draws, 1, 6);
    hs_part_draw draw = hs_chain_draw(&b.chain, b.draws.z[0]);
    hs_face_draw before = hs_chain_face_draw(&b.chain, 0, &draw);
    size_t own = 0;
    for (int k = 0; k < HS_INPUTS; k++) {
        double z[HS_INPUTS];
        memcpy(z, b.draws.z[0], sizeof z);
        z[k] += 1;
        own += hs_input_own((hs_input)k) != 0;
        if (!hs_input_own((hs_input)k)) continue;
        hs_part_draw moved = hs_chain_draw(&b.chain, z);
        hs_face_draw after = hs_chain_face_draw(&b.chain, 0, &moved);
        CHECK(!memcmp(&after, &before, sizeof after));
        NEAR(moved.scale_m, draw.scale_m, 0);
    }
    CHECK(own == 10);
}

/* exact: of a box all that is shared is the same for every part, and nothing else is */
static void batch__a_part__draws_its_own_and_shares_the_rest(void) {
    static hs_draws draws;
    double z[2][HS_INPUTS], rough[2][HS_MAX_DIMENSIONS];
    hs_draws_fill(&draws, 1, 7);
    for (int part = 0; part < 2; part++) {
        memcpy(z[part], draws.z[0], sizeof z[part]);
        hs_draws_own(z[part], rough[part], draws.seed, 0, (size_t)part + 1);
    }
    for (int k = 0; k < HS_INPUTS; k++) {
        int own = hs_input_own((hs_input)k) != 0;
        CHECK((fabs(z[0][k] - draws.z[0][k]) > 0) == own);
        CHECK((fabs(z[0][k] - z[1][k]) > 0) == own);
    }
    CHECK(fabs(rough[0][0] - rough[1][0]) > 0 && fabs(rough[0][0] - draws.rough[0][0]) > 0);
}

HS_TEST_MAIN("plan_batch", TEST(batch__equicorrelated_normals__closed_forms),
             TEST(batch__good_parts__as_the_integral), TEST(batch__limits__apart_and_all_alike),
             TEST(batch__more_parts__never_likelier_and_never_below_the_floor),
             TEST(batch__error__holds_the_exact_value_as_often_as_it_says),
             TEST(batch__what_no_draw_shows__is_said_to_be_a_bound),
             TEST(batch__plan__as_the_whole_chain_part_by_part),
             TEST(batch__a_part__draws_its_own_and_shares_the_rest),
             TEST(batch__own_inputs__leave_the_box_as_it_is))
