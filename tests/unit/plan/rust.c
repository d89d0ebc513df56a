/* Rust as the start of a part: what the tank needs for it. */
#include "descale_floor.h"
#include "support/check.h"

static shop_floor s;

/* Charge per dm2 in the tank, the part soft. */
static double charge_dm2(hs_rust rust, double scale_m, hs_step_kind before) {
    hs_result_descale d = {.verdict = HS_CLEAN_NONE};
    floor_make(&s, FLOOR_SOFT, HS_BY_ELECTROLYSIS, "", NEXT_NOTHING);
    s.step[0].kind = s.step[1].kind = before;
    s.step[2].tank.volts_V = 24;
    s.step[2].tank.amps_A = 50;
    s.job.part.rust = rust;
    s.at.scale_m = scale_m;
    CHECK(floor_plan(&d, &s, NULL) == HS_OK);
    return d.charge_Ah / (100 * d.area_m2);
}

static void rust__in_the_tank__takes_its_own_charge(void) {
    /* judgement: planner's figures of the reference page, Ah/dm2: light rust .5, heavy rust 3,
     * forge scale 4 + 20 a mm */
    NEAR(charge_dm2(HS_RUST_LIGHT, 0, HS_STRESS_RELIEVE), .5, 1e-9);
    NEAR(charge_dm2(HS_RUST_HEAVY, 0, HS_STRESS_RELIEVE), 3, 1e-9);
    NEAR(charge_dm2(HS_NO_RUST, 0, HS_STRESS_RELIEVE), 4, 1e-9);
    NEAR(charge_dm2(HS_RUST_HEAVY, .1e-3, HS_STRESS_RELIEVE), 6, 1e-9); /* scale takes more */
    /* a fire or a descale before it: the rust is gone, or scale like any other */
    NEAR(charge_dm2(HS_RUST_LIGHT, 0, HS_CARBURISE), 4, 1e-9);
    NEAR(charge_dm2(HS_RUST_LIGHT, 0, HS_DESCALE), 4, 1e-9);
}

HS_TEST_MAIN("plan_rust", TEST(rust__in_the_tank__takes_its_own_charge))
