/* The aim is a size that can be written down and lies on the safe side of both limits. */
#include "plan/aim.h"

#include "base/random.h"
#include "support/check.h"

#include <math.h>

enum { DRAWS = 1000 };

/* A flat of 20 mm, both faces ground alike, +-.05 mm: sizes from 20.199 to 20.799, every draw good
 * at each of them but the last `late` ones, which have case for no more than 20.36, and `never`. */
static const hs_window_found *found_with(double shape_high_m, int late, int never) {
    static hs_chain chain;
    static hs_job job;
    static hs_draws draws;
    static hs_decide_work work;
    static hs_window_found f;
    static const hs_dimension dimension = {.size = {20e-3, 20e-3, 20e-3, ""}};
    static const hs_face face = {.finish = HS_GROUND};
    job = (hs_job){.dimension = &dimension,
                   .face = &face,
                   .dimensions = 1,
                   .shop = {.rough_tolerance_m = 0.05e-3, .confidence = 0.95}};
    chain.job = &job;
    draws.n = DRAWS;
    for (int i = 0; i < DRAWS; i++)
        for (int k = 0; k < 2; k++) {
            work.dimension[0].need_m[k][i] = i < never ? 1e-3 : 0.05e-3;
            work.dimension[0].may_m[k][i] = i < DRAWS - late ? 0.45e-3 : 0.18e-3;
        }
    f = (hs_window_found){.verdict = HS_GO,
                          .grounds = 2,
                          .need_m = {0.0995e-3, 0.0995e-3},
                          .may_m = {0.3995e-3, 0.3995e-3},
                          .rough = {20.199e-3, 20.799e-3},
                          .shape_high_m = shape_high_m};
    for (int k = 0; k < 2; k++)
        f.bad[k] = (hs_face_sum){.ground = 1, .clean_up_m = 0.05e-3, .budget_m = 0.45e-3};
    hs_aim_find(&f, &chain, 0, &draws, &work);
    return &f;
}

/* What is left for the shape at an aim, by hand: aim - t - F - 2 c. */
static double limit_of(const hs_window_found *f) {
    return f->aim_m - 0.05e-3 - 20e-3 - 2 * 0.05e-3;
}

/* exact: a shape of .2235 mm needs 20.3735 mm; 20.37 reads better and does not bear it */
static void aim__rounder_size__does_not_lose_the_shape_it_was_chosen_for(void) {
    const hs_window_found *f = found_with(0.2235e-3, 0, 0);
    NEAR(f->aim_m, 20.38e-3, 1e-9);
    CHECK(limit_of(f) >= 0.2235e-3);
}

/* exact: 3 parts in 1000 are given for a shape limit that 19 parts in 20 meet where 6 fail anyhow,
 * 5 are not; nor are 3 where none fails else */
static void aim__few_good_parts__are_given_for_the_shape_limit(void) {
    const hs_window_found *f = found_with(0.2235e-3, 3, 6);
    CHECK(limit_of(f) >= 0.2235e-3);
    NEAR(f->joint, 0.991, 1e-12);
    f = found_with(0.2235e-3, 5, 6);
    CHECK(limit_of(f) < 0.2235e-3 && f->joint > 0.991);
    f = found_with(0.2235e-3, 3, 0);
    CHECK(limit_of(f) < 0.2235e-3);
}

/* exact: a printed number is a whole multiple of its last place; inside means inside */
static void aim__random_windows__lies_inside_or_is_refused(void) {
    long refused = 0, coarse = 0;
    for (uint32_t i = 0; i < 20000; i++) {
        double low = 5 + 95 * hs_random_uniform(3, i, 0);
        double width = pow(10, -5 + 5 * hs_random_uniform(3, i, 1));
        double size = low + width * (2 * hs_random_uniform(3, i, 2) - 0.5); /* also outside */
        double aim = hs_aim_readable(size, low, low + width, 2, 3);
        if (isnan(aim)) {
            refused++;
            CHECK(floor((low + width) * 1e3) < ceil(low * 1e3));
            continue;
        }
        CHECK(aim >= low - 1e-9 && aim <= low + width + 1e-9);
        NEAR(aim * 1e3, round(aim * 1e3), 1e-6);
        coarse += fabs(aim * 1e2 - round(aim * 1e2)) < 1e-7;
    }
    printf("aims in random windows: %ld refused, %ld to a hundredth\n", refused, coarse);
    CHECK(refused > 100 && coarse > 1000);
}

static void aim__best_size_a_step_outside__is_moved_in(void) {
    NEAR(hs_aim_readable(20.5004, 20.5006, 20.5049, 2, 3), 20.501, 1e-9);
    NEAR(hs_aim_readable(20.5048, 20.5006, 20.5044, 2, 3), 20.504, 1e-9);
    CHECK(isnan(hs_aim_readable(20.5004, 20.5002, 20.5008, 2, 3)));
    CHECK(isnan(hs_aim_readable(NAN, 20, 21, 2, 3)));
    CHECK(isnan(hs_aim_readable(20.5, 20.6, 20.4, 2, 3)));
}

HS_TEST_MAIN("plan aim", TEST(aim__rounder_size__does_not_lose_the_shape_it_was_chosen_for),
             TEST(aim__few_good_parts__are_given_for_the_shape_limit),
             TEST(aim__random_windows__lies_inside_or_is_refused),
             TEST(aim__best_size_a_step_outside__is_moved_in))
