/* Carbon through a route on one wall: both of its sides, its doubts. */
#include "plan/history.h"

#include "hardskin/model/austenite.h"
#include "plan/response.h"
#include "support/check.h"
#include "unit/plan/job.h"

static test_job t;
static hs_route route;
static hs_history_work work;

static void run(hs_case_profile *p, const hs_axis *axis, double transfer_factor) {
    const hs_history_point at = {.diffusivity_factor = 1,
                                 .core_pct = t.job.part.steel.mid.C,
                                 .transfer_factor = transfer_factor,
                                 .cells = 300};
    CHECK(hs_history_run(p, axis, &route, route.heats, at, &work, NULL) == HS_OK);
}

static void soak(double transfer_m_s) {
    test_job_plate(&t, "16MnCr5");
    t.step[0].transfer_m_s = transfer_m_s;
    CHECK(hs_route_read(&route, &t.job, NULL) == HS_OK);
}

static void history__thin_wall__has_carbon_from_both_sides(void) {
    /* exact: a wall open on both sides is two halves, each shut in the middle; a tube of a large
     * radius is a flat wall (3 mm in 1 m: carbon crowds together by 3 in 2000) */
    const hs_axis whole = {HS_SLAB, 3e-3, 0, 3e-3, 1}, half = {HS_SLAB, 1.5e-3, 0, 1.5e-3, 0};
    const hs_axis tube = {HS_TUBE, 1, 1 - 3e-3, 3e-3, 1}, alone = {HS_TUBE, 1, 1 - 3e-3, 3e-3, 0};
    hs_case_profile a, b, c, d;
    soak(0);
    run(&a, &whole, 1);
    run(&b, &half, 1);
    run(&c, &tube, 1);
    run(&d, &alone, 1);
    double core_pct = t.job.part.steel.mid.C, middle_pct = hs_case_carbon_at(&b, 1.5e-3);
    CHECK(middle_pct > core_pct + 0.3);
    for (double depth_m = 0; depth_m < 1.45e-3; depth_m += 0.25e-3) {
        double C = hs_case_carbon_at(&b, depth_m);
        NEAR(hs_case_carbon_at(&a, depth_m), C, 2e-3);
        NEAR(hs_case_carbon_at(&c, depth_m), C, 4e-3);
    }
    CHECK(hs_case_carbon_at(&d, 1.4e-3) < middle_pct - 0.1); /* nothing comes from the bore */
}

static void history__walls__are_those_of_the_part(void) {
    /* exact: radius of a round, both radii of a ring, thickness of a plate; a masked face lets no
     * carbon in on its side */
    hs_axis a;
    test_job_bar(&t, "16MnCr5");
    CHECK(hs_axis_of_face(&a, &t.job, 0, NULL) == HS_OK && a.shape == HS_CYLINDER);
    NEAR(a.size_m, 15e-3, 1e-15);
    NEAR(a.wall_m, 30e-3, 1e-15);
    test_job_ring(&t, "16MnCr5");
    CHECK(hs_axis_of_face(&a, &t.job, 0, NULL) == HS_OK && a.shape == HS_TUBE && a.far_exposed);
    NEAR(a.size_m, 35e-3, 1e-15);
    NEAR(a.inner_m, 22.5e-3, 1e-15);
    NEAR(a.wall_m, 12.5e-3, 1e-15);
    t.face[1].finish = HS_SOFT;
    CHECK(hs_axis_of_face(&a, &t.job, 0, NULL) == HS_OK && !a.far_exposed);
    test_job_plate(&t, "16MnCr5");
    CHECK(hs_axis_of_face(&a, &t.job, 0, NULL) == HS_OK && a.shape == HS_SLAB && a.far_exposed);
    NEAR(a.size_m, 20e-3, 1e-15);
    t.face[1].finish = HS_SOFT;
    CHECK(hs_axis_of_face(&a, &t.job, 0, NULL) == HS_OK && !a.far_exposed);
}

static void history__transfer__goes_by_its_factor(void) {
    /* exact: twice the coefficient is the coefficient times two; a slow one leaves less carbon */
    const hs_axis axis = {HS_SLAB, 20e-3, 0, 20e-3, 1};
    hs_case_profile one, twice, as_two;
    soak(2e-8);
    run(&one, &axis, 1);
    run(&twice, &axis, 2);
    soak(4e-8);
    run(&as_two, &axis, 1);
    CHECK(twice.carbon_pct[0] > one.carbon_pct[0] + 0.02);
    for (double depth_m = 0; depth_m < 2e-3; depth_m += 0.4e-3)
        NEAR(hs_case_carbon_at(&twice, depth_m), hs_case_carbon_at(&as_two, depth_m), 1e-9);
}

static void history__spread__is_the_steel_s_and_the_fire_s(void) {
    /* judgement: one standard deviation of D .10 on plain steel, .25 on alloyed; exact: the fire's
     * 95 % bound through the diffusivity at .6 %C, printed by Agren 1986 */
    double model, temp;
    const hs_diffusivity agren = {.model = HS_D_AGREN, .factor = 1};
    static const double bound_K[] = {10, 25};
    for (int k = 0; k < 2; k++) {
        test_job_plate(&t, k ? "C15E" : "16MnCr5");
        t.step[0].temp_given = k;
        t.step[0].temp_K = (hs_span){1198.15 - 15, 1198.15, 1198.15 + 25};
        CHECK(hs_route_read(&route, &t.job, NULL) == HS_OK);
        hs_response_spread(&model, &temp, &route, &t.job.part.steel);
        NEAR(model, k ? 0.10 : 0.25, 1e-12);
        double hot = hs_diffusivity_value(&agren, 0.6, route.hottest_K + bound_K[k]);
        double mid = hs_diffusivity_value(&agren, 0.6, route.hottest_K);
        NEAR(temp, log(hot / mid) / 1.959963984540054, 1e-9);
    }
}

static void history__medium__has_a_low_and_a_high_side(void) {
    /* exact: the surface's range is walked from its low end to its high one */
    const hs_route_heat heat = {
        .surface_low_pct = 0.8, .surface_pct = 1.0, .surface_high_pct = 1.1};
    NEAR(hs_history_surface(&heat, -1), 0.8, 1e-15);
    NEAR(hs_history_surface(&heat, -0.5), 0.9, 1e-15);
    NEAR(hs_history_surface(&heat, 0), 1.0, 1e-15);
    NEAR(hs_history_surface(&heat, 0.5), 1.05, 1e-15);
    NEAR(hs_history_surface(&heat, 1), 1.1, 1e-15);
}

HS_TEST_MAIN("plan_history", TEST(history__thin_wall__has_carbon_from_both_sides),
             TEST(history__walls__are_those_of_the_part),
             TEST(history__transfer__goes_by_its_factor),
             TEST(history__spread__is_the_steel_s_and_the_fire_s),
             TEST(history__medium__has_a_low_and_a_high_side))
