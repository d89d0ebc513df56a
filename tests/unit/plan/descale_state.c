/* How hard the part comes to a descale step, in whole plans. */
#include "plan/descale_state.h"

#include "hardskin/plan/plan.h"
#include "support/check.h"
#include "unit/plan/job.h"

#include <string.h>

static hs_result run(const test_job *t) {
    static hs_result r;
    test_job_plan(&r, &t->job);
    return r;
}

/* The plate of 20 mm with a tank step right after its cooling (and a stress relieve, if asked). */
static void with_tank(test_job *t, const char *steel, const char *cool, int relieve) {
    static const hs_span at = {923.15, 923.15, 923.15}, hold = {7200, 7200, 7200};
    test_job_plate(t, steel);
    t->step[1].medium = cool;
    size_t more = relieve ? 2 : 1;
    memmove(t->step + 2 + more, t->step + 2, 3 * sizeof *t->step);
    t->step[2] = (hs_step){.kind = HS_STRESS_RELIEVE, .pointer = "", .temp_K = at, .hold_s = hold};
    t->step[1 + more] = (hs_step){.kind = HS_DESCALE,
                                  .pointer = "",
                                  .by = HS_BY_ELECTROLYSIS,
                                  .tank = {.room_m3 = 100, .air_changes_1_s = 2. / 3600}};
    t->job.steps = 5 + more;
}

static void state__box_cooled__is_soft_in_lean_steel_only(void) {
    static test_job t;
    /* own contract: soft after the box cool, by computation */
    with_tank(&t, "16MnCr5", "box", 0);
    hs_result r = run(&t);
    CHECK(r.descale_verdict == HS_CLEAN_OK && r.descale.step == 2);
    CHECK(!(r.descale.hardness_HRC >= 31));
    /* published: the nickel steels of case hardening are bought soft annealed because they harden
     * in air (EN 10084, as delivered, from memory); the structure is Maynier's: by both a box is
     * no annealing for 18CrNiMo7-6, and 650 C is */
    with_tank(&t, "18CrNiMo7-6", "box", 0);
    r = run(&t);
    CHECK(r.descale_verdict == HS_CLEAN_STOP && r.descale.hardness_HRC >= 31);
    CHECK(strstr(r.descale.text, "so slow a cooling") && strstr(r.descale.alternative[0], "650 C"));
    with_tank(&t, "18CrNiMo7-6", "box", 1);
    r = run(&t);
    CHECK(r.descale_verdict == HS_CLEAN_OK && r.descale.step == 3);
}

static void state__air_cooled__may_be_hard(void) {
    static test_job t;
    with_tank(&t, "16MnCr5", "air", 0);
    hs_result r = run(&t);
    CHECK(r.descale_verdict == HS_CLEAN_STOP && r.descale.hardness_HRC >= 31);
    /* own contract: the table of the steps says the same as the tank */
    NEAR(r.step[1].cooled_HRC, r.descale.hardness_HRC, 0);
    CHECK(isnan(r.step[1].hardness_HRC) && isnan(r.step[3].cooled_HRC));
    t.step[2].by = HS_BY_BRUSH;
    r = run(&t);
    CHECK(r.descale_verdict == HS_CLEAN_OK);
    for (size_t i = 0; i < r.descale.orders; i++) /* it was not quenched: nothing of its temper */
        CHECK(!strstr(r.descale.order[i], "temper"));
}

static void state__every_step__is_told_the_worst_first(void) {
    static test_job t;
    with_tank(&t, "16MnCr5", "box", 0);
    t.step[6] = (hs_step){.kind = HS_DESCALE, .by = HS_BY_BRUSH, .pointer = ""};
    t.job.steps = 7;
    hs_result r = run(&t);
    CHECK(r.descale.step == 6 && r.other_descales == 1 && r.other_descale[0].step == 2);
    CHECK(r.other_descale[0].tank.present && r.other_descale[0].hydrogen_m3_s > 0);
    t.step[6].by = HS_BY_ELECTROLYSIS; /* hard, on the negative lead */
    r = run(&t);
    CHECK(r.descale_verdict == HS_CLEAN_STOP && r.descale.step == 6 && r.other_descales == 1);
    t.step[6].by = HS_BY_BRUSH;
    t.step[2].by = HS_BY_ACID;
    t.step[2].tank = (hs_tank){.acid = "citric", .tub_m3 = 4e-4}; /* enough: of equals the last */
    t.step[0].medium = "charcoal";
    r = run(&t);
    CHECK(r.descale.step == 6 && r.descale_verdict == HS_CLEAN_OK);
    t.step[2].by = HS_BY_ELECTROLYSIS; /* soft, but its room has no air: care comes first */
    t.step[2].tank = (hs_tank){.acid = "", .anode = "", .accepted = "", .room_m3 = 5};
    r = run(&t);
    CHECK(r.descale.step == 2 && r.descale_verdict == HS_CLEAN_CARE);
}

static void state__a_brief_temper__is_none_for_the_tank_either(void) {
    /* own contract: untempered martensite never takes hydrogen; judgement: a temper of less than
     * half an hour or 100 C was none, at the wheel and in the tank */
    static const double K[] = {443.15, 443.15, 443.15, 368.15}, s[] = {7200, 1800, 1200, 7200};
    static test_job t;
    for (int i = 0; i < 4; i++) {
        test_job_plate(&t, "16MnCr5");
        t.step[4].temp_K = (hs_span){K[i], K[i], K[i]};
        t.step[4].hold_s = (hs_span){s[i], s[i], s[i]};
        t.step[5].by = HS_BY_ACID;
        t.step[5].tank = (hs_tank){.acid = "citric", .tub_m3 = 40e-3};
        hs_result r = run(&t);
        CHECK(r.descale_verdict == HS_CLEAN_STOP); /* the others for want of a bake */
        CHECK((strstr(r.descale.text, "untempered") != NULL) == (i > 1));
        CHECK(r.untempered == (i > 1) || r.grind == HS_NONE);
    }
}

static void state__what_a_flap_disc_takes__comes_off_the_stock(void) {
    /* own: tables/descale_takes.csv, 20 to 100 um against 0 to 2 um of the brush, per side; need
     * grows by the middle of it at least, by its high end at most (and rounding of 1 um) */
    static test_job t;
    test_job_plate(&t, "16MnCr5");
    hs_result brush = run(&t);
    t.step[5].by = HS_BY_FLAP_DISC;
    hs_result disc = run(&t);
    double more = disc.dimension[0].need_m - brush.dimension[0].need_m;
    CHECK(more > 50e-6 && more < 101e-6);
    CHECK(disc.dimension[0].may_m <= brush.dimension[0].may_m + 1e-9);
    NEAR(disc.descale.stock_taken_low_m, 20e-6, 0);
    NEAR(disc.descale.stock_taken_high_m, 100e-6, 0);
    t.step[5].by = HS_BY_BLAST;
    hs_result blast = run(&t);
    CHECK(blast.dimension[0].need_m > brush.dimension[0].need_m);
    CHECK(blast.dimension[0].need_m < disc.dimension[0].need_m);
}

static void state__rate__is_the_slope_at_700_C(void) {
    /* exact: Newton's law, dT/dt = -(T - T0)/tau; 200 pieces of 5 s, the slope within half of one
     */
    hs_heat_point p[200];
    for (size_t i = 0; i < 200; i++) {
        double t = 5.0 * (double)i;
        p[i] = (hs_heat_point){t, 293.15 + 900 * exp(-t / 600)};
    }
    NEAR(hs_descale_rate(p, 200) / (680. / 600), 1, .005);
    NEAR(hs_descale_rate(p, 20), 900 * exp(-92.5 / 600) / 600, .002); /* ends above: its last */
    const hs_heat_point up[] = {{0, 300}, {3600, 1200}};
    NEAR(hs_descale_rate(up, 2), 0, 0);
    NEAR(hs_descale_rate(up, 1), 0, 0);
}

HS_TEST_MAIN("descale state", TEST(state__box_cooled__is_soft_in_lean_steel_only),
             TEST(state__air_cooled__may_be_hard), TEST(state__every_step__is_told_the_worst_first),
             TEST(state__a_brief_temper__is_none_for_the_tank_either),
             TEST(state__what_a_flap_disc_takes__comes_off_the_stock),
             TEST(state__rate__is_the_slope_at_700_C))
