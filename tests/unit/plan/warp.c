/* Bow as a vector: it belongs to the part, not to the way its outline is written down. */
#include "plan/warp.h"

#include "base/random.h"
#include "plan/chain.h"
#include "plan/warp_frame.h"
#include "support/check.h"
#include "unit/plan/job.h"

#include <math.h>
#include <string.h>

static const double degree = 3.14159265358979323846 / 180;

static void warp__outline_turned__has_the_same_shape_at_each_face(void) {
    /* exact: turning the whole drawing moves nothing in the part */
    static test_job t;
    static hs_history_work work;
    static hs_chain straight, turned;
    static const double angles[] = {30, 45, 90, 135, 200, -45};
    test_job_profile(&t, "16MnCr5", 0);
    CHECK(hs_chain_make(&straight, &t.job, &work, NULL) == HS_OK);
    CHECK(hypot(straight.warp.one_sided_x_m, straight.warp.one_sided_y_m) > 5e-6);
    for (size_t k = 0; k < sizeof angles / sizeof *angles; k++) {
        static test_job u;
        test_job_profile(&u, "16MnCr5", angles[k] * degree);
        CHECK(hs_chain_make(&turned, &u.job, &work, NULL) == HS_OK);
        for (uint32_t i = 0; i < 50; i++) {
            double z[HS_INPUTS];
            for (uint32_t n = 0; n < HS_INPUTS; n++)
                z[n] = hs_random_normal(9, i, n);
            hs_part_draw a = hs_chain_draw(&straight, z), b = hs_chain_draw(&turned, z);
            double v = hs_warp_shape(&straight.warp, &t.job, t.dimension, a.bow_x_m, a.bow_y_m, z);
            double w = hs_warp_shape(&turned.warp, &u.job, u.dimension, b.bow_x_m, b.bow_y_m, z);
            NEAR(w, v, 1e-9); /* a thousandth of what a bench reads */
            hs_dimension ends = {.across = HS_ACROSS_ENDS, .size = {0.24, 0.2399, 0.24, ""}};
            v = hs_warp_shape(&straight.warp, &t.job, &ends, a.bow_x_m, a.bow_y_m, z);
            w = hs_warp_shape(&turned.warp, &u.job, &ends, b.bow_x_m, b.bow_y_m, z);
            NEAR(w, v, 1e-9);
        }
    }
}

static void warp__one_sided_bow_across_a_slanted_face__adds_with_its_signs(void) {
    /* exact: n (fx, fy) with the normal at 45 degrees: (fx + fy) / sqrt 2, both of one sign here
     * and both turned round together */
    static test_job t;
    hs_warp warp = {.one_sided_x_m = 0.1e-3, .one_sided_y_m = -0.1e-3, .left_m = INFINITY};
    test_job_profile(&t, "16MnCr5", 45 * degree); /* face under has its normal along (1, -1) */
    for (int sign = -1; sign <= 1; sign += 2) {
        double z[HS_INPUTS] = {0}, x_m, y_m;
        z[HS_IN_ONE_SIGN] = sign;
        hs_warp_bow(&x_m, &y_m, &warp, z);
        double factor = fabs(x_m) / 0.1e-3;
        double v = hs_warp_shape(&warp, &t.job, t.dimension, x_m, y_m, z);
        NEAR(v, factor * 0.1e-3 * sqrt(2), 1e-12);
    }
}

static void frame__square__turns_with_its_first_edge(void) {
    static const hs_point square[] = {{0, 0}, {0.02, 0}, {0.02, 0.02}, {0, 0.02}};
    for (int k = 0; k < 8; k++) {
        hs_point turned[4];
        double a = (45 * k - 170) * degree, axis_rad;
        for (int i = 0; i < 4; i++)
            turned[i] = (hs_point){square[i].x_m * cos(a) - square[i].y_m * sin(a),
                                   square[i].x_m * sin(a) + square[i].y_m * cos(a)};
        hs_section section = {.outline = {turned, 4}};
        CHECK(hs_warp_frame(&axis_rad, &section, NULL) == HS_OK);
        NEAR(cos(axis_rad - a), 1, 1e-12);
        NEAR(hs_warp_extent(&section.outline, cos(axis_rad), sin(axis_rad)), 0.02, 1e-12);
    }
}

static void frame__flat_section__bends_easiest_along_its_second_axis(void) {
    /* exact: a rectangle bends easiest across its thickness, here y, or x where it stands */
    static const hs_point flat[] = {{0, 0}, {0.06, 0}, {0.06, 0.02}, {0, 0.02}};
    static const hs_point tall[] = {{0, 0}, {0.02, 0}, {0.02, 0.06}, {0, 0.06}};
    const hs_section lies = {.outline = {flat, 4}}, stands = {.outline = {tall, 4}};
    double axis_rad, x_m, y_m;
    CHECK(hs_warp_frame(&axis_rad, &lies, NULL) == HS_OK);
    NEAR(axis_rad, 0, 1e-12);
    hs_part part = {.form = HS_PROFILE, .section = stands};
    CHECK(hs_warp_frame(&axis_rad, &stands, NULL) == HS_OK);
    hs_warp_heights(&x_m, &y_m, &part, axis_rad);
    NEAR(x_m, 0.06, 1e-12);
    NEAR(y_m, 0.02, 1e-12);
}

HS_TEST_MAIN("plan warp", TEST(warp__outline_turned__has_the_same_shape_at_each_face),
             TEST(warp__one_sided_bow_across_a_slanted_face__adds_with_its_signs),
             TEST(frame__flat_section__bends_easiest_along_its_second_axis),
             TEST(frame__square__turns_with_its_first_edge))
