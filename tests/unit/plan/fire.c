/* The box and the fire of a route. */
#include "plan/fire.h"

#include "support/check.h"
#include "unit/plan/job.h"

#include <string.h>

static test_job t;
static hs_result r;

static void plan(void) {
    memset(&r, 0, sizeof r);
    CHECK(hs_fire_plan(&r, &t.job, NULL) == HS_OK);
}

static void fire__the_plate__its_box_by_hand(void) {
    test_job_plate(&t, "16MnCr5"); /* 300 x 60 x 20 in a box of 150, 925 C, 16 h */
    t.job.part.quantity = 2;
    plan();
    CHECK(r.packs == 1 && r.pack[0].box_given && r.pack[0].step == 0 && !r.pack[0].thin_cover);
    /* exact: 150 x 150 x (300 + 2 x 25) mm less two plates */
    NEAR(r.pack[0].box_m[0] * r.pack[0].box_m[1] * r.pack[0].box_m[2], .15 * .15 * .35, 1e-12);
    double compound_m3 = .15 * .15 * .35 - 2 * .3 * .06 * .02;
    NEAR(r.pack[0].compound_m3, compound_m3, 1e-12);
    NEAR(r.pack[0].compound_kg, 400 * compound_m3, 1e-9); /* judgement: density */
    NEAR(r.pack[0].compound_low_kg, 250 * compound_m3, 1e-9);
    NEAR(r.pack[0].compound_high_kg, 600 * compound_m3, 1e-9);
    NEAR(r.pack[0].cover_m, .065, 1e-12);
    /* exact: 5 % of moisture as an ideal gas at 925 C; a mol of CO a mol of water, at 20 C; the
     * room at 1200 ppm (published: tables/SOURCES.md co-osha) */
    double mol = .05 * 400 * compound_m3 / .018015;
    NEAR(r.pack[0].steam_m3, mol * 8.31446261815324 * 1198.15 / 101325, 1e-8);
    NEAR(r.pack[0].water_gas_m3 / r.pack[0].steam_m3, 2, 1e-12);
    NEAR(r.pack[0].co_room_m3, mol * 8.31446261815324 * 293.15 / 101325 / 1200e-6, 1e-5);
    CHECK(r.pack[0].sealed_Pa > 50 * 101325);
    /* exact: a gallon to the pound for 2.83 kg of steel of 7850 kg/m3 */
    NEAR(r.oil.part_kg, 7850 * .3 * .06 * .02, 1e-9);
    NEAR(r.oil.part_m3, r.oil.part_kg / .45359237 * .003785411784, 1e-6);
    NEAR(r.oil.all_m3, 2 * r.oil.part_m3, 1e-12);
}

static void fire__no_box_in_the_sheet__the_least_that_covers(void) {
    test_job_plate(&t, "16MnCr5");
    t.step[0].box_m = 0;
    plan();
    CHECK(r.packs == 1 && !r.pack[0].box_given && !r.pack[0].thin_cover);
    NEAR(r.pack[0].box_m[0], .02 + .05, 1e-12); /* exact: thickness and 25 mm on both sides */
    NEAR(r.pack[0].cover_m, .025, 1e-12);
    CHECK(r.pack[0].heat_up_s > 3600);
    t.job.part.quantity = 5; /* five of 60 mm abreast do not fit: one behind the other */
    plan();
    NEAR(r.pack[0].box_m[2], r.pack[0].long_m, 1e-15);
    CHECK(r.pack[0].long_m > 5 * .3);
}

static void fire__thin_cover__is_said(void) {
    test_job_plate(&t, "16MnCr5");
    t.step[0].box_m = .06;
    plan();
    CHECK(r.packs == 1 && r.pack[0].thin_cover);
    NEAR(r.pack[0].cover_m, .02, 1e-12);
    t.step[0].box_m = .07;
    plan();
    CHECK(r.packs == 1 && !r.pack[0].thin_cover); /* 25 mm exactly */
}

static void fire__many_parts__need_a_longer_box(void) {
    test_job_plate(&t, "16MnCr5"); /* 300 x 60 x 20 */
    plan();
    NEAR(r.pack[0].long_m, .35, 1e-12); /* exact: 300 + 2 x 25 */
    /* exact: 150 mm hold three plates of 20 mm above each other (3 x 20 + 2 x 12.7 <= 100) and one
     * of 60 mm abreast (2 x 60 + 12.7 > 100): the fourth lies behind */
    t.job.part.quantity = 3;
    plan();
    NEAR(r.pack[0].long_m, .35, 1e-12);
    t.job.part.quantity = 4;
    plan();
    NEAR(r.pack[0].long_m, 2 * .3 + .0127 + .05, 1e-12);
}

static void fire__steps_that_pack_nothing__have_no_box(void) {
    test_job_plate(&t, "16MnCr5");
    t.step[0].box_m = 0;
    t.step[0].medium = ""; /* a surface carbon alone: gas */
    t.step[3].medium = "water";
    plan();
    CHECK(r.packs == 0 && !r.oil.present);
    CHECK(!hs_fire_packs(&t.step[0]) && !hs_fire_packs(&t.step[2]));
    t.step[0].box_m = .15; /* a named box is a pack whatever is in it */
    plan();
    CHECK(r.packs == 1);
}

static void fire__the_same_box_twice__is_told_once(void) {
    test_job_plate(&t, "16MnCr5");
    t.step[6] = t.step[0];
    t.job.steps = 7;
    plan();
    CHECK(r.packs == 1);
    t.step[6].box_m = .2;
    plan();
    CHECK(r.packs == 2 && r.pack[1].step == 6);
}

static void fire__a_box_out_of_range__is_refused_in_its_place(void) {
    hs_error err = {0};
    test_job_plate(&t, "16MnCr5");
    t.step[0].box_m = 1.2;
    t.step[0].pointer = "/route/0";
    memset(&r, 0, sizeof r);
    CHECK(hs_fire_plan(&r, &t.job, &err) == HS_E_RANGE);
    CHECK(!strcmp(err.pointer, "/route/0"));
}

HS_TEST_MAIN("plan_fire", TEST(fire__the_plate__its_box_by_hand),
             TEST(fire__no_box_in_the_sheet__the_least_that_covers),
             TEST(fire__thin_cover__is_said), TEST(fire__many_parts__need_a_longer_box),
             TEST(fire__steps_that_pack_nothing__have_no_box),
             TEST(fire__the_same_box_twice__is_told_once),
             TEST(fire__a_box_out_of_range__is_refused_in_its_place))
