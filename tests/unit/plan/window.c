/* The sums of the reference page on windows, against the figures printed there (section 6) and
 * against what follows from the definitions. */
#include "plan/window.h"
#include "support/check.h"

static const double UM = 1e-6, TIGHT = 1e-12; /* TIGHT: sums of decimal fractions of a metre */

/* One face of the worked plate: B .62, c .08, d .02, m .01, g 0 .. +.01 mm. */
static hs_face_sum worked_face(void) {
    return (hs_face_sum){.ground = 1,
                         .clean_up_m = 80e-6,
                         .budget_m = 620e-6,
                         .split_m = 20e-6,
                         .lost_low_m = 10e-6,
                         .lost_high_m = 10e-6,
                         .growth_high_m = 10e-6};
}
static const hs_limits H7_20 = {19.979e-3, 20.000e-3}, H7_30 = {29.979e-3, 30.000e-3};

static void window__plate_20_h7__printed_figures(void) {
    /* exact: reference page on windows, section 6, first line */
    hs_face_sum face = worked_face();
    double need = hs_face_need(&face, 330e-6), may = hs_face_may(&face, 330e-6);
    NEAR(need, 275e-6, TIGHT);
    NEAR(may, 425e-6, TIGHT);
    NEAR(hs_window_need(80e-6, 10e-6, 330e-6, 20e-6, 0), need, TIGHT);
    NEAR(hs_window_may(620e-6, 330e-6, 20e-6, 10e-6), may, TIGHT);
    hs_limits rough = hs_window_rough(0, H7_20, 2 * need, 2 * may);
    NEAR(hs_window_round(rough.low_m, 0, HS_UP), 20.550e-3, TIGHT);
    NEAR(hs_window_round(rough.high_m, 0, HS_DOWN), 20.829e-3, TIGHT);
    CHECK(hs_window_verdict(rough, 100e-6) == HS_GO);
    double middle = (rough.low_m + rough.high_m) / 2;
    hs_face_sum both[2] = {face, face};
    hs_limits offered = {middle - 50e-6, middle + 50e-6};
    double limit = hs_window_shape_limit(0, H7_20, offered, both);
    NEAR(limit, 330e-6 + (279e-6 - 100e-6) / 2, TIGHT);
    NEAR(hs_window_round(limit, 0, HS_DOWN), 0.419e-3, TIGHT);
}

static void window__bar_30_h7_on_old_centres__printed_figures(void) {
    /* exact: section 6, second line */
    hs_face_sum face = worked_face();
    double shape = hs_shape_old_centres(150e-6);
    NEAR(shape, 300e-6, TIGHT);
    double need = hs_face_need(&face, shape), may = hs_face_may(&face, shape);
    NEAR(need, 260e-6, TIGHT);
    NEAR(may, 440e-6, TIGHT);
    hs_limits rough = hs_window_rough(0, H7_30, 2 * need, 2 * may);
    NEAR(hs_window_round(rough.low_m, 0, HS_UP), 30.520e-3, TIGHT);
    NEAR(hs_window_round(rough.high_m, 0, HS_DOWN), 30.859e-3, TIGHT);
}

static void window__half_of_the_bow_by_mistake__leaves_the_rim_in_the_hollow(void) {
    /* exact: section 6, third line: need .185 would leave .005 at the hollow, rim .08 */
    hs_face_sum face = worked_face();
    double wrong = hs_face_need(&face, 150e-6);
    NEAR(wrong, 185e-6, TIGHT);
    double hollow = hs_face_least_removal(&face, hs_shape_old_centres(150e-6), wrong);
    NEAR(hollow, 5e-6, TIGHT);
    CHECK(hollow < face.clean_up_m);
    double right = hs_face_need(&face, hs_shape_old_centres(150e-6));
    NEAR(hs_face_least_removal(&face, 300e-6, right), face.clean_up_m, TIGHT);
}

static void window__plate_measured__printed_figures(void) {
    /* exact: section 6, fourth line: H 20.66, bow .20, c .08, d .02, B' .61 */
    hs_face_sum face = {.ground = 1, .clean_up_m = 80e-6, .budget_m = 610e-6, .split_m = 20e-6};
    hs_face_sum both[2] = {face, face};
    hs_limits size = {20.66e-3, 20.66e-3};
    hs_shape_limits limit = hs_window_shape_limits(0, H7_20, size, both);
    NEAR(hs_window_round(limit.clean_m, 0, HS_DOWN), 0.460e-3, TIGHT);
    NEAR(hs_window_round(limit.case_m, 0, HS_DOWN), 0.499e-3, TIGHT);
    double total = 20.66e-3 - (H7_20.low_m + H7_20.high_m) / 2;
    double first = hs_window_share(total, both, 200e-6);
    NEAR(first, total / 2, TIGHT); /* equal faces share alike */
    double turn = hs_window_turn_at(20.66e-3, first, 200e-6);
    NEAR(hs_window_round(turn, 0, HS_NEAREST), 20.225e-3, TIGHT);
}

static void window__need_and_may__differ_by_what_the_budget_leaves(void) {
    /* exact: may - need = B - c - m - V - 2 d, growth cancels */
    double need = hs_window_need(81e-6, 13e-6, 207e-6, 17e-6, 29e-6);
    double may = hs_window_may(733e-6, 207e-6, 17e-6, 29e-6);
    NEAR(may - need, 733e-6 - 81e-6 - 13e-6 - 207e-6 - 2 * 17e-6, TIGHT);
}

static void window__stock_at_need_and_at_may__just_meets_each_limit(void) {
    hs_face_sum face = worked_face();
    double V = 210 * UM;
    NEAR(hs_face_least_removal(&face, V, hs_face_need(&face, V)), face.clean_up_m, TIGHT);
    NEAR(hs_face_deepest(&face, V, hs_face_may(&face, V)), face.budget_m, TIGHT);
    /* removal over the face: V + 2 d and the range of growth between the ends */
    NEAR(hs_face_most_removal(&face, V, 0.3e-3) - hs_face_least_removal(&face, V, 0.3e-3),
         V + 40e-6 + 10e-6, TIGHT);
}

static void window__bore__is_the_outside_turned_over(void) {
    /* exact: F_hi - 2 may <= R <= F_lo - 2 need */
    hs_limits finish = {40.000e-3, 40.025e-3};
    hs_limits rough = hs_window_rough(1, finish, 2 * 200e-6, 2 * 430e-6);
    NEAR(rough.low_m, 39.165e-3, TIGHT);
    NEAR(rough.high_m, 39.600e-3, TIGHT);
    hs_face_sum face = worked_face();
    hs_face_sum both[2] = {face, face};
    double V = hs_window_shape_limit(1, finish, (hs_limits){39.3e-3, 39.4e-3}, both);
    hs_limits edge =
        hs_window_rough(1, finish, 2 * hs_face_need(&face, V), 2 * hs_face_may(&face, V));
    CHECK(edge.low_m <= 39.3e-3 + TIGHT && edge.high_m >= 39.4e-3 - TIGHT);
    double slack = fmin(39.3e-3 - edge.low_m, edge.high_m - 39.4e-3);
    NEAR(slack, 0, TIGHT); /* the shape limit just closes the window on the offered sizes */
}

static void window__shape_limit__just_closes_the_window_outside(void) {
    hs_face_sum both[2] = {worked_face(), worked_face()};
    both[1].budget_m = 500e-6; /* two faces of different demand */
    both[1].clean_up_m = 40e-6;
    hs_limits offered = {20.52e-3, 20.62e-3};
    double V = hs_window_shape_limit(0, H7_20, offered, both);
    hs_limits edge =
        hs_window_rough(0, H7_20, hs_face_need(&both[0], V) + hs_face_need(&both[1], V),
                        hs_face_may(&both[0], V) + hs_face_may(&both[1], V));
    NEAR(fmin(offered.low_m - edge.low_m, edge.high_m - offered.high_m), 0, TIGHT);
}

static void window__one_face_too_thin__the_other_cannot_lend(void) {
    /* face 1: need .275, may .225; face 2 has .3 to spare: the sums alone would say go */
    hs_face_sum both[2] = {worked_face(), worked_face()};
    both[0].budget_m = 420e-6;
    both[1].budget_m = 920e-6;
    double V = 330e-6, need = 2 * hs_face_need(&both[0], V);
    hs_limits sums =
        hs_window_rough(0, H7_20, need, hs_face_may(&both[0], V) + hs_face_may(&both[1], V));
    CHECK(hs_window_verdict(sums, 100e-6) == HS_GO);
    hs_limits faces = hs_window_faces(0, H7_20, both, V);
    CHECK(hs_window_verdict(faces, 100e-6) == HS_STOP);
    NEAR(faces.low_m - faces.high_m, 50e-6, TIGHT);
    /* shape limit of face 1 alone: B - c - m - 2 d - (g range) = .42 - .08 - .01 - .04 - .01 */
    NEAR(hs_window_shape_limit(0, H7_20, sums, both), 280e-6, TIGHT);
    both[0] = both[1] = worked_face();
    faces = hs_window_faces(0, H7_20, both, V);
    NEAR(faces.high_m, 20.829e-3, TIGHT);
}

static void window__one_face_as_hardened__moves_by_growth_and_scale(void) {
    /* exact: H = R + 2 g - 2 m after the fire; grinding one face by r leaves F = H - r. With the
     * stock s1 = F_x + ... solved from that: R = F + s1 + (m - g). */
    hs_face_sum both[2] = {worked_face(), worked_face()};
    both[1].ground = 0;
    both[0].growth_low_m = both[0].growth_high_m = 7e-6;
    both[1].growth_low_m = both[1].growth_high_m = 7e-6;
    double V = 100e-6, need = hs_face_need(&both[0], V) + hs_face_need(&both[1], V);
    double R = H7_20.high_m + need;
    double hardened = R + 2 * 7e-6 - 2 * 10e-6, removal = hardened - H7_20.high_m;
    NEAR(removal, 80e-6 + V / 2 + 20e-6, TIGHT); /* c + V/2 + d, all off the one face */
    NEAR(hs_face_may(&both[1], V), hs_face_need(&both[1], V), TIGHT);
    /* only one face carries V */
    hs_limits at = {R, R};
    NEAR(hs_window_shape_limits(0, H7_20, at, both).clean_m, V, TIGHT);
}

static void window__both_faces_as_hardened__size_after_the_fire_lies_inside(void) {
    hs_face_sum both[2] = {
        {.lost_low_m = 5e-6, .lost_high_m = 15e-6, .growth_low_m = 2e-6, .growth_high_m = 20e-6},
        {.lost_low_m = 5e-6, .lost_high_m = 15e-6, .growth_low_m = 2e-6, .growth_high_m = 20e-6}};
    hs_limits finish = {9.9e-3, 10.1e-3}, rough = hs_window_as_hardened(0, finish, both);
    NEAR(rough.low_m + 2 * 2e-6 - 2 * 15e-6, finish.low_m, TIGHT);
    NEAR(rough.high_m + 2 * 20e-6 - 2 * 5e-6, finish.high_m, TIGHT);
    hs_limits bore =
        hs_window_as_hardened(1, finish, both); /* a bore shrinks by 2 g, opens by 2 m */
    NEAR(bore.low_m - 2 * 20e-6 + 2 * 5e-6, finish.low_m, TIGHT);
    NEAR(bore.high_m - 2 * 2e-6 + 2 * 15e-6, finish.high_m, TIGHT);
}

static void window__ranges__each_limit_takes_its_own_bad_side(void) {
    /* exact: need with the most scale and least growth, may with the most growth, and the other
     * ends where a face moves by m - g */
    hs_face_sum f = {.ground = 1,
                     .clean_up_m = 50e-6,
                     .budget_m = 700e-6,
                     .split_m = 10e-6,
                     .lost_low_m = 5e-6,
                     .lost_high_m = 17e-6,
                     .growth_low_m = 3e-6,
                     .growth_high_m = 22e-6};
    NEAR(hs_face_need(&f, 100e-6), 50e-6 + 17e-6 + 50e-6 + 10e-6 - 3e-6, TIGHT);
    NEAR(hs_face_may(&f, 100e-6), 700e-6 - 50e-6 - 10e-6 - 22e-6, TIGHT);
    NEAR(hs_face_least_removal(&f, 100e-6, 300e-6), 300e-6 + 3e-6 - 17e-6 - 50e-6 - 10e-6, TIGHT);
    NEAR(hs_face_most_removal(&f, 100e-6, 300e-6), 300e-6 + 22e-6 - 5e-6 + 50e-6 + 10e-6, TIGHT);
    NEAR(hs_face_deepest(&f, 100e-6, 300e-6), 300e-6 + 22e-6 + 50e-6 + 10e-6, TIGHT);
    f.ground = 0;
    NEAR(hs_face_need(&f, 100e-6), 17e-6 - 3e-6, TIGHT);
    NEAR(hs_face_may(&f, 100e-6), 5e-6 - 22e-6, TIGHT);
}

static void window__shape_limits__each_by_itself(void) {
    /* exact: V <= F_lo - R_hi - 2(c + m + d - g_lo) and V <= R_lo - F_hi + 2(B - d - g_hi) */
    hs_face_sum both[2] = {worked_face(), worked_face()};
    hs_limits finish = {40.000e-3, 40.025e-3}, offered = {39.3e-3, 39.4e-3};
    hs_shape_limits bore = hs_window_shape_limits(1, finish, offered, both);
    NEAR(bore.clean_m, 0.600e-3 - 2 * 110e-6, TIGHT);
    NEAR(bore.case_m, -0.725e-3 + 2 * 590e-6, TIGHT);
    NEAR(bore.face_m, 620e-6 - 80e-6 - 10e-6 - 40e-6 - 10e-6, TIGHT);
    /* one ground face of two carries V/2 once: both its limits count double */
    both[1].ground = 0;
    hs_limits size = {20.4e-3, 20.5e-3};
    hs_shape_limits one = hs_window_shape_limits(0, H7_20, size, both);
    NEAR(one.clean_m, 2 * (0.4e-3 - 110e-6 - 10e-6), TIGHT);
    NEAR(one.case_m, 2 * (590e-6 + 0 - 0.521e-3), TIGHT);
    both[0].ground = 0;
    CHECK(isinf(hs_window_shape_limit(0, H7_20, size, both)));
}

/* The bench's sums are the limits of V written for any measured size. */
static void window__bench__sums_are_the_shape_limits(void) {
    /* exact, mm, the measured plate of section 6: 20 + 2(.08 + .02), 19.979 + 2(.61 - .02) */
    const hs_face_sum measured = {1, 80e-6, 610e-6, 20e-6, 0, 0, 0, 0};
    const hs_face_sum plate[2] = {measured, measured};
    hs_limits finish = {19.979e-3, 20e-3};
    hs_result_bench b = hs_window_bench(0, finish, plate);
    NEAR(b.clean_from_m, 20.2e-3, TIGHT);
    NEAR(b.case_to_m, 21.159e-3, TIGHT);
    NEAR(b.times * (20.66e-3 - b.clean_from_m), 0.46e-3, TIGHT);
    NEAR(b.times * (b.case_to_m - 20.66e-3), 0.499e-3, TIGHT);
    NEAR(b.most_m, 610e-6 - 80e-6 - 2 * 20e-6, TIGHT);
    for (int n = 0; n < 4; n++) { /* independent: hs_window_shape_limits */
        int bore = n & 1;
        hs_face_sum face[2] = {measured, {.ground = n < 2, 50e-6, 900e-6, 10e-6, 0, 0, 0, 0}};
        double H = bore ? 19.7e-3 : 20.3e-3;
        b = hs_window_bench(bore, finish, face);
        hs_shape_limits limit = hs_window_shape_limits(bore, finish, (hs_limits){H, H}, face);
        double sign = bore ? -1 : 1;
        NEAR(b.times * sign * (H - b.clean_from_m), limit.clean_m, TIGHT);
        NEAR(b.times * sign * (b.case_to_m - H), limit.case_m, TIGHT);
        NEAR(b.most_m, limit.face_m, TIGHT);
    }
    hs_face_sum left[2] = {{0}, {0}};
    CHECK(!hs_window_bench(0, finish, left).present);
}

static void window__share__without_room(void) {
    hs_face_sum both[2] = {worked_face(), worked_face()};
    both[0].budget_m = both[1].budget_m = 0; /* neither has room: what is over is halved */
    double need = hs_face_need(&both[0], 100e-6);
    NEAR(hs_window_share(2 * need + 40e-6, both, 100e-6), need + 20e-6, TIGHT);
    both[1].budget_m = 620e-6; /* only the second has room: it takes all that is over */
    NEAR(hs_window_share(2 * need + 40e-6, both, 100e-6), need, TIGHT);
}

static void window__shapes__as_the_table_says(void) {
    /* exact: table of section 2 */
    NEAR(hs_shape_flat(-200e-6, 60e-6), 230e-6, TIGHT);
    NEAR(hs_shape_remade(-150e-6), 150e-6, TIGHT);
    NEAR(hs_shape_chuck(0.02, 0.1), 2 * 0.02 * 0.01 / 2, TIGHT);
    NEAR(hs_shape_ring(50e-6), 25e-6, TIGHT);
    NEAR(hs_shape_set_by_other(30e-6), 30e-6, TIGHT);
    NEAR(hs_shape_ends(150e-6, 30e-3, 300e-3, 10e-6), 70e-6, TIGHT);
}

static void window__verdict__tolerance_decides_and_nan_is_stop(void) {
    hs_limits rough = {20.55e-3, 20.65e-3};
    CHECK(hs_window_verdict(rough, 100e-6) == HS_GO); /* just fits, though not to the last bit */
    CHECK(hs_window_verdict(rough, 100.1e-6) == HS_TIGHT);
    CHECK(hs_window_verdict((hs_limits){20.55e-3, 20.55e-3}, 1e-6) == HS_TIGHT);
    CHECK(hs_window_verdict((hs_limits){20.551e-3, 20.55e-3}, 1e-6) == HS_STOP);
    CHECK(hs_window_verdict((hs_limits){NAN, 20.55e-3}, 1e-6) == HS_STOP);
    hs_face_sum both[2] = {worked_face(), worked_face()};
    both[0].budget_m = NAN;
    CHECK(isnan(hs_window_shape_limit(0, H7_20, rough, both)));
    both[0] = worked_face();
    both[0].clean_up_m = NAN;
    CHECK(isnan(hs_window_shape_limit(0, H7_20, rough, both)));
}

static void window__share__gives_each_face_at_least_its_need(void) {
    hs_face_sum both[2] = {worked_face(), worked_face()};
    both[0].budget_m = 500e-6;
    both[1].clean_up_m = 150e-6;
    double V = 120e-6;
    double least = hs_face_need(&both[0], V) + hs_face_need(&both[1], V);
    double most = hs_face_may(&both[0], V) + hs_face_may(&both[1], V);
    for (int i = 0; i <= 10; i++) {
        double total = least + (most - least) * i / 10, first = hs_window_share(total, both, V);
        CHECK(first >= hs_face_need(&both[0], V) - TIGHT);
        CHECK(first <= hs_face_may(&both[0], V) + TIGHT);
        CHECK(total - first >= hs_face_need(&both[1], V) - TIGHT);
        CHECK(total - first <= hs_face_may(&both[1], V) + TIGHT);
    }
}

static void window__rounding__to_the_safe_side_without_losing_a_printable_size(void) {
    NEAR(hs_window_round(20.5500001e-3, 0, HS_UP), 20.551e-3, TIGHT);
    NEAR(hs_window_round(19.979e-3 + 2 * 285.5e-6, 0, HS_UP), 20.550e-3, TIGHT);
    NEAR(hs_window_round_in(25.4e-3, HS_UP), 1.0, TIGHT);
    NEAR(hs_window_round_in(25.401e-3, HS_UP), 1.0001, TIGHT);
    NEAR(hs_window_round(25.401e-3, 1, HS_DOWN), 25.4e-3, TIGHT);
    /* exact: .12341 and .12349 in, either way to the ten-thousandth; the same in thousandths of a
     * millimetre */
    static const double unit_m[] = {1e-3, 25.4e-3}, step[] = {1e-3, 1e-4};
    for (int inch = 0; inch < 2; inch++)
        for (int k = 1; k < 10; k++) {
            double m = unit_m[inch], low = 1234 * step[inch], at = (1234 + 0.1 * k) * step[inch];
            NEAR(hs_window_round(at * m, inch, HS_DOWN), low * m, TIGHT);
            NEAR(hs_window_round(at * m, inch, HS_UP), (low + step[inch]) * m, TIGHT);
            if (k == 5) continue;
            NEAR(hs_window_round(at * m, inch, HS_NEAREST), (low + (k > 5) * step[inch]) * m,
                 TIGHT);
        }
}

HS_TEST_MAIN("plan_window", TEST(window__plate_20_h7__printed_figures),
             TEST(window__bar_30_h7_on_old_centres__printed_figures),
             TEST(window__half_of_the_bow_by_mistake__leaves_the_rim_in_the_hollow),
             TEST(window__plate_measured__printed_figures),
             TEST(window__need_and_may__differ_by_what_the_budget_leaves),
             TEST(window__stock_at_need_and_at_may__just_meets_each_limit),
             TEST(window__bore__is_the_outside_turned_over),
             TEST(window__shape_limit__just_closes_the_window_outside),
             TEST(window__one_face_too_thin__the_other_cannot_lend),
             TEST(window__one_face_as_hardened__moves_by_growth_and_scale),
             TEST(window__both_faces_as_hardened__size_after_the_fire_lies_inside),
             TEST(window__ranges__each_limit_takes_its_own_bad_side),
             TEST(window__shape_limits__each_by_itself),
             TEST(window__bench__sums_are_the_shape_limits), TEST(window__share__without_room),
             TEST(window__shapes__as_the_table_says),
             TEST(window__verdict__tolerance_decides_and_nan_is_stop),
             TEST(window__share__gives_each_face_at_least_its_need),
             TEST(window__rounding__to_the_safe_side_without_losing_a_printable_size))
