#include "hardskin/model/pack.h"
#include "support/check.h"

static const double BOX[3] = {.300, .200, .150}, PART[3] = {.240, .100, .060};
static const double FIRE_K = 925 + 273.15;

static void pack__box__is_filled_round_the_part(void) {
    hs_pack_plan p = {0};
    CHECK(hs_pack(&p, BOX, PART, .05, FIRE_K, NULL) == HS_OK);
    NEAR(p.compound_m3 * 1000, 9 - 1.44, 1e-9); /* exact */
    NEAR(p.compound_kg, .4 * 7.56, 1e-9);       /* judgement: .4 kg/L loose */
    NEAR(p.cover_m, .030, 1e-12);
    CHECK(p.cover_ok == 1);
    const double lying[3] = {.060, .240, .100}; /* the same part, sizes in another order */
    hs_pack_plan q = {0};
    CHECK(hs_pack(&q, BOX, lying, .05, FIRE_K, NULL) == HS_OK);
    NEAR(q.cover_m, p.cover_m, 0);
    NEAR(q.compound_m3, p.compound_m3, 1e-15);
}

static void pack__thin_cover__is_noticed(void) {
    const double wide[3] = {.260, .100, .060};
    hs_pack_plan p = {0};
    CHECK(hs_pack(&p, BOX, wide, .05, FIRE_K, NULL) == HS_OK);
    NEAR(p.cover_m, .020, 1e-12);
    CHECK(p.cover_ok == 0); /* published: 25 mm (shop practice of 1912, read) */
}

static void pack__volume_alone__leaves_the_cover_open(void) {
    const double volume[3] = {.001, 0, 0};
    hs_pack_plan p = {0};
    CHECK(hs_pack(&p, BOX, volume, .05, FIRE_K, NULL) == HS_OK);
    NEAR(p.compound_m3, .008, 1e-12);
    CHECK(isnan(p.cover_m) && p.cover_ok == -1);
}

static void pack__heat_up__matches_the_twelve_inch_box(void) {
    /* published: The Working of Steel 1921 (read): 5 to 6 h to the centre of a 12 in box */
    double t = NAN;
    CHECK(hs_pack_heat_up(&t, 12 * .0254, NULL) == HS_OK);
    CHECK(t >= 5 * 3600 && t <= 6 * 3600);
    NEAR(t / 3600, 5.56, .006);
    CHECK(hs_pack_heat_up(&t, 1.1, NULL) == HS_E_RANGE);
    CHECK(hs_pack_heat_up(&t, 0, NULL) == HS_E_RANGE);
    /* exact: the least inner size counts */
    hs_pack_plan p = {0};
    CHECK(hs_pack(&p, BOX, PART, .05, FIRE_K, NULL) == HS_OK);
    NEAR(p.heat_up_s / 3600, 1 + .38 * 150 / 25.4, 1e-9);
}

static void pack__moisture__becomes_a_box_full_of_gas_many_times(void) {
    /* exact: ideal gas, 1 mol of steam per 18.015 g; hot charcoal doubles it (C + H2O = CO + H2) */
    hs_pack_plan p = {0};
    CHECK(hs_pack(&p, BOX, PART, .05, FIRE_K, NULL) == HS_OK);
    double mol = .4 * 7.56 * .05 / .018015;
    NEAR(p.gas_m3, mol * 8.31446261815324 * FIRE_K / 101325, 1e-9);
    NEAR(p.water_gas_m3 / p.gas_m3, 2, 1e-15);
    CHECK(p.must_vent && p.gas_ratio > 10);
    NEAR(p.co_m3, mol * 8.31446261815324 * 293.15 / 101325,
         1e-9); /* a mol of CO per mol of water */
}

static void pack__dry_box__must_vent_as_well(void) {
    /* exact: Gay-Lussac: shut at 20 C, what is in the voids (.45 of the compound, judgement) comes
     * to T/T0 times the pressure, or drives T/T0 - 1 times its volume out */
    hs_pack_plan p = {0};
    CHECK(hs_pack(&p, BOX, PART, 0, FIRE_K, NULL) == HS_OK);
    NEAR(p.gas_m3, 0, 0);
    NEAR(p.co_m3, 0, 0);
    NEAR(p.sealed_Pa / 101325, FIRE_K / 293.15, 1e-9);
    NEAR(p.heating_m3, .45 * 7.56e-3 * (FIRE_K / 293.15 - 1), 1e-12);
    CHECK(p.must_vent); /* a box at four times the air's pressure is no box */
    /* exact: with moisture the same voids hold two mol of gas more for each mol of water */
    hs_pack_plan wet = {0};
    CHECK(hs_pack(&wet, BOX, PART, .05, FIRE_K, NULL) == HS_OK);
    double mol = 2 * .4 * 7.56 * .05 / .018015;
    NEAR(wet.sealed_Pa - p.sealed_Pa, mol * 8.31446261815324 * FIRE_K / (.45 * 7.56e-3), 1);
    CHECK(wet.sealed_Pa > 100e5);
}

static void pack__what_does_not_fit__is_refused(void) {
    const double big[3] = {.310, .1, .05}, flat[3] = {0, .1, .05}, much[3] = {.01, 0, 0};
    const double no_box[3] = {.3, 0, .1};
    hs_pack_plan p = {.gas_m3 = 7};
    CHECK(hs_pack(&p, BOX, big, .05, FIRE_K, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_pack(&p, BOX, flat, .05, FIRE_K, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_pack(&p, BOX, much, .05, FIRE_K, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_pack(&p, no_box, PART, .05, FIRE_K, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_pack(&p, BOX, PART, .6, FIRE_K, NULL) == HS_E_RANGE);
    CHECK(hs_pack(&p, BOX, PART, NAN, FIRE_K, NULL) == HS_E_RANGE);
    CHECK(hs_pack(&p, BOX, PART, .05, 500, NULL) == HS_E_RANGE);
    NEAR(p.gas_m3, 7, 0);
}

HS_TEST_MAIN("model pack", TEST(pack__box__is_filled_round_the_part),
             TEST(pack__thin_cover__is_noticed), TEST(pack__volume_alone__leaves_the_cover_open),
             TEST(pack__heat_up__matches_the_twelve_inch_box),
             TEST(pack__moisture__becomes_a_box_full_of_gas_many_times),
             TEST(pack__dry_box__must_vent_as_well), TEST(pack__what_does_not_fit__is_refused))
