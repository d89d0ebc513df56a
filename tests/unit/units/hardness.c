#include "hardskin/units/hardness.h"
#include "support/check.h"

static double to(double value, hs_scale from, hs_scale scale) {
    double out = NAN;
    hs_hardness_convert(&out, value, from, scale, NULL);
    return out;
}

static void hardness__printed_pairs__come_out(void) {
    /* published: ASTM E140 table 1, read */
    NEAR(to(60, HS_HRC, HS_HV), 697, 1e-9);
    NEAR(to(50, HS_HRC, HS_HV), 513, 1e-9);
    NEAR(to(20, HS_HRC, HS_HV), 238, 1e-9);
    NEAR(to(68, HS_HRC, HS_HV), 940, 1e-9);
    NEAR(to(653, HS_HV, HS_HRC), 58, 1e-9);
    NEAR(to(65, HS_HRC, HS_HRA), 83.9, 1e-9);
    NEAR(to(60.5, HS_HRA, HS_HRC), 20, 1e-9);
    /* published: ASTM A370, 50 HRC in steps of five read; 55 and 60 from memory */
    NEAR(to(50, HS_HRC, HS_HBW), 481, 1e-9);
    NEAR(to(30, HS_HRC, HS_HBW), 286, 1e-9);
    NEAR(to(60, HS_HRC, HS_HBW), 654, 1e-9);
    NEAR(to(226, HS_HBW, HS_HRC), 20, 1e-9);
    /* exact: linear between 544 HV (52) and 560 HV (53): 52 + 6/16 */
    NEAR(to(550, HS_HV, HS_HRC), 52.375, 1e-12);
    NEAR(hs_hardness_HRC_of_HV(550), 52.375, 1e-12);
    NEAR(hs_hardness_HV_of_HRC(52.375), 550, 1e-9);
}

/* published: in the printed E140 column HV the steps from row to row never grow on the way down; a
 * wrong digit in any row breaks that. */
static void hardness__steps_of_the_column__never_grow_downwards(void) {
    double step = 1e9;
    for (int hrc = 67; hrc >= 20; hrc--) {
        double next = to(hrc + 1, HS_HRC, HS_HV) - to(hrc, HS_HRC, HS_HV);
        CHECK(next > 0 && next <= step + 1e-9);
        step = next;
    }
}

/* independent: DIN 50150 as printed by a hardening shop: within 0.3 HRC of E140 */
static void hardness__another_standard__differs_by_tenths(void) {
    NEAR(to(240, HS_HV, HS_HRC), 20.3, 0.3);
    NEAR(to(250, HS_HV, HS_HRC), 22.2, 0.3);
    NEAR(to(260, HS_HV, HS_HRC), 24.0, 0.3);
    NEAR(to(275, HS_HV, HS_HRC), 26.4, 0.3);
}

static void hardness__every_scale__rises_and_comes_back(void) {
    static const hs_scale scales[] = {HS_HV, HS_HBW, HS_HRA, HS_HR15N, HS_HR30N};
    for (size_t s = 0; s < 5; s++) {
        double before = -1;
        for (int i = 0; i <= 450; i++) {
            double hrc = 20 + 0.1 * i, there = to(hrc, HS_HRC, scales[s]);
            CHECK(there > before);
            NEAR(to(there, scales[s], HS_HRC), hrc, 1e-9);
            before = there;
        }
    }
}

static void hardness__outside_the_table__is_refused(void) {
    static const struct {
        double value;
        hs_scale from, to;
    } rows[] = {{19.9, HS_HRC, HS_HV},  {68.1, HS_HRC, HS_HV},  {237.9, HS_HV, HS_HRC},
                {940.1, HS_HV, HS_HRC}, {225.9, HS_HBW, HS_HV}, {739.1, HS_HBW, HS_HV},
                {66, HS_HRC, HS_HBW},   {900, HS_HV, HS_HRA},   {60.4, HS_HRA, HS_HRC},
                {84, HS_HRA, HS_HRC},   {19, HS_HRC, HS_HRC},   {NAN, HS_HV, HS_HRC}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        double out = 7;
        hs_error err = {0};
        CHECK(hs_hardness_convert(&out, rows[i].value, rows[i].from, rows[i].to, &err) ==
              HS_E_RANGE);
        CHECK(out == 7 && err.message[0] && err.help[0]);
    }
    double out = 7;
    CHECK(hs_hardness_convert(&out, 50, HS_SCALE_NONE, HS_HRC, NULL) == HS_E_WORD);
    CHECK(hs_hardness_convert(&out, 50, HS_HRC, HS_SCALE_NONE, NULL) == HS_E_WORD);
    CHECK(isnan(hs_hardness_HRC_of_HV(237)) && isnan(hs_hardness_HV_of_HRC(69)));
    NEAR(to(61.3, HS_HRC, HS_HRC), 61.3, 0);
}

static void hardness__above_650_HBW__is_a_caution(void) {
    CHECK(!hs_hardness_beyond_ball(650) && hs_hardness_beyond_ball(650.5));
}

HS_TEST_MAIN("units_hardness", TEST(hardness__printed_pairs__come_out),
             TEST(hardness__steps_of_the_column__never_grow_downwards),
             TEST(hardness__another_standard__differs_by_tenths),
             TEST(hardness__every_scale__rises_and_comes_back),
             TEST(hardness__outside_the_table__is_refused),
             TEST(hardness__above_650_HBW__is_a_caution))
