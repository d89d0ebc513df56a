/* The links between models and windows: route, carbon response, losses, warp, draws. */
#include "plan/chain.h"
#include "base/num.h"
#include "base/random.h"
#include "constants.h"
#include "hardskin/tables/table.h"
#include "support/check.h"
#include "unit/plan/job.h"

#include <stdlib.h>
#include <string.h>

static const double middle[HS_INPUTS] = {0};

static double depth_to(const hs_case_profile *p, double carbon) {
    double depth = 0;
    for (size_t k = 1; k < p->n; k++)
        if (p->carbon_pct[k - 1] >= carbon && p->carbon_pct[k] < carbon)
            depth = p->depth_m[k - 1] + (p->depth_m[k] - p->depth_m[k - 1]) *
                                            (p->carbon_pct[k - 1] - carbon) /
                                            (p->carbon_pct[k - 1] - p->carbon_pct[k]);
    return depth;
}

/* By how much the response misses the solver run anew at random draws: the worst share of a depth,
 * and the largest root mean square over the spread of the depth itself. */
static void misses(double *worst, double *of_doubt, double transfer_m_s) {
    enum { DRAWS = 60, LEVELS = 4 };
    double direct[LEVELS][DRAWS], error[LEVELS][DRAWS];
    static test_job t;
    static hs_history_work work;
    static hs_response r;
    hs_route route;
    hs_axes axes;
    test_job_plate(&t, "16MnCr5");
    for (size_t i = 0; i < t.job.steps; i++)
        if (t.step[i].kind == HS_CARBURISE) t.step[i].transfer_m_s = transfer_m_s;
    CHECK(hs_route_read(&route, &t.job, NULL) == HS_OK);
    CHECK(hs_axes_of(&axes, &t.job, NULL) == HS_OK && axes.n == 1);
    CHECK(hs_response_make(&r, &axes.axis[0], &route, &t.job.part.steel, &work, NULL) == HS_OK);
    for (unsigned i = 0; i < DRAWS; i++) {
        double z[HS_INPUTS] = {0};
        z[HS_IN_DIFFUSIVITY] = hs_random_normal(5, i, 0);
        z[HS_IN_SURFACE] = 0.8 * hs_random_normal(5, i, 1);
        z[HS_IN_CORE] = hs_random_normal(5, i, 2);
        z[HS_IN_TRANSFER] = hs_random_normal(5, i, 3);
        hs_response_draw draw = hs_response_at(&r, &t.job.part.steel, z);
        hs_history_point at = {.diffusivity_factor = draw.root * draw.root,
                               .surface = hs_draw_share(z[HS_IN_SURFACE]),
                               .core_pct = draw.core_pct,
                               .transfer_factor = exp(draw.transfer_log)};
        hs_case_profile p;
        CHECK(hs_history_run(&p, &axes.axis[0], &route, route.heats, at, &work, NULL) == HS_OK);
        for (int k = 0; k < LEVELS; k++) {
            double carbon = 0.3 + 0.1 * k;
            direct[k][i] = depth_to(&p, carbon);
            error[k][i] = hs_response_depth(&r, carbon, &draw) - direct[k][i];
        }
    }
    *worst = *of_doubt = 0;
    for (int k = 0; k < LEVELS; k++) {
        double sum = 0, square = 0, miss = 0;
        for (int i = 0; i < DRAWS; i++) {
            *worst = fmax(*worst, fabs(error[k][i]) / direct[k][i]);
            sum += direct[k][i];
            square += direct[k][i] * direct[k][i];
            miss += error[k][i] * error[k][i];
        }
        double spread = sqrt(square / DRAWS - sum * sum / DRAWS / DRAWS);
        *of_doubt = fmax(*of_doubt, sqrt(miss / DRAWS) / spread);
    }
}

static void response__random_draws__agree_with_the_history_run_directly(void) {
    /* independent: the carbon solver run anew at each draw, without the response surface. The
     * tolerance is 2 % of the depth, and a quarter of the doubt as the contract asks: the only one
     * with a surface transfer, where single rare draws miss by more. */
    double worst, of_doubt;
    misses(&worst, &of_doubt, 0);
    printf("response against direct runs: worst %.2f %%, %.3f of the doubt\n", 100 * worst,
           of_doubt);
    NEAR(worst, 0, 0.02);
    NEAR(of_doubt, 0, 0.25);
    misses(&worst, &of_doubt, 1e-7);
    printf("with a surface transfer: worst %.1f %%, %.3f of the doubt\n", 100 * worst, of_doubt);
    NEAR(of_doubt, 0, 0.25);
}

static void route__counted_from_box_red__takes_the_lag_off(void) {
    /* practice: common practice, no source: counting starts about an hour after a small box is
     * red; planning fit heat-up = 1 + .38 h per inch, from memory */
    static test_job t;
    hs_route at_heat, red;
    test_job_plate(&t, "C15E");
    t.step[0].box_m = 0.075;
    CHECK(hs_route_read(&at_heat, &t.job, NULL) == HS_OK);
    t.step[0].from_box_red = 1;
    CHECK(hs_route_read(&red, &t.job, NULL) == HS_OK);
    NEAR(red.red_lag_s / 3600, 1.12, 0.01);
    CHECK(red.red_lag_s > 0.7 * 3600 && red.red_lag_s < 1.3 * 3600);
    NEAR(at_heat.heat[0].point[1].time_s - red.heat[0].point[1].time_s, red.red_lag_s, 1e-6);
}

static void route__without_a_quench__is_refused(void) {
    static test_job t;
    hs_route route;
    test_job_plate(&t, "C15E");
    t.job.steps = 3;
    CHECK(hs_route_read(&route, &t.job, NULL) == HS_E_ORDER);
}

static hs_status losses(hs_loss *loss, test_job *t) {
    hs_route route;
    hs_status status = hs_route_read(&route, &t->job, NULL);
    return status == HS_OK ? hs_loss_make(loss, &t->job, &route, 0.2, NULL) : status;
}

static void loss__four_quarters_brushed__lose_twice_one_hour(void) {
    /* exact: parabolic law, scale-and-descaling section 1: 4 x 15 min brushed = 2.0 x one hour */
    static test_job t;
    hs_loss once, brushed, standing;
    size_t air;
    test_job_plate(&t, "C15E");
    for (air = 0; strcmp(hs_table_text(hs_table_get(HS_TABLE_ATMOSPHERE), air, 0),
                         "electric furnace in air");)
        air++;
    hs_step heat = {.kind = HS_REHEAT,
                    .pointer = "",
                    .temp_K = {1173.15, 1173.15, 1173.15},
                    .hold_s = {3600, 3600, 3600},
                    .medium = "electric furnace in air",
                    .medium_row = air};
    hs_step brush = {.kind = HS_DESCALE, .pointer = "", .by = HS_BY_BRUSH};
    hs_step quench = t.step[3], carburise = t.step[0];
    t.job.steps = 3;
    t.step[1] = heat;
    t.step[2] = quench;
    CHECK(losses(&once, &t) == HS_OK);
    hs_step many[10] = {carburise};
    heat.hold_s = (hs_span){900, 900, 900};
    for (size_t i = 0; i < 4; i++) {
        many[1 + 2 * i] = heat;
        many[2 + 2 * i] = brush;
    }
    many[9] = quench;
    t.job.step = many;
    t.job.steps = 10;
    CHECK(losses(&brushed, &t) == HS_OK);
    for (size_t i = 0; i < 4; i++) /* the same without brushing: as one hour */
        many[2 + 2 * i] =
            (hs_step){.kind = HS_COOL, .medium = "box", .pointer = "", .log_points = 0};
    CHECK(losses(&standing, &t) == HS_OK);
    double hour = hs_loss_metal(&once, 99, middle);
    NEAR(hs_loss_metal(&brushed, 99, middle) / hour, 2.0, 1e-9);
    NEAR(hs_loss_metal(&standing, 99, middle) / hour, 1.0, 1e-9);
}

static void warp__plate_masked_on_one_face__bows_by_the_one_sided_formula(void) {
    /* exact: kappa = 6 e d (h - d) / h^3, f = kappa L^2 / 8 (distortion section 4) */
    static test_job t;
    static hs_history_work work;
    static hs_chain both, one;
    test_job_plate(&t, "16MnCr5");
    CHECK(hs_chain_make(&both, &t.job, &work, NULL) == HS_OK);
    NEAR(both.warp.one_sided_y_m, 0, 1e-12);
    NEAR(both.warp.one_sided_x_m, 0, 1e-12);
    t.face[1].finish = HS_SOFT;
    CHECK(hs_chain_make(&one, &t.job, &work, NULL) == HS_OK);
    CHECK(one.warp.one_sided_y_m > 0.02e-3 && one.warp.one_sided_y_m < 1e-3);
    NEAR(one.warp.one_sided_x_m, 0, 1e-12);
}

static void warp__random_bow__has_the_spread_of_its_medium(void) {
    /* own formula of the contract: beta .03 oil at 10 %: 20 mm, 300 mm: .169 mm one sigma */
    static test_job t;
    static hs_history_work work;
    static hs_chain chain;
    test_job_plate(&t, "16MnCr5");
    CHECK(hs_chain_make(&chain, &t.job, &work, NULL) == HS_OK);
    NEAR(chain.warp.sigma_y_m, 0.03 * 0.010 / 0.020 * 0.09 / 8, 1e-12);
    NEAR(chain.warp.sigma_x_m, 0.03 * 0.010 / 0.060 * 0.09 / 8, 1e-12);
    t.step[3].uneven = 0.05;
    CHECK(hs_chain_again(&chain, &chain, &t.job, NULL) == HS_OK);
    NEAR(chain.warp.sigma_y_m, 0.5 * 0.03 * 0.010 / 0.020 * 0.09 / 8, 1e-12);
}

static void draws__sum_of_four_normals__has_the_interval_of_jcgm_101(void) {
    /* published: JCGM 101:2008 section 9.2.2: four N(0,1) summed, 95 % interval +-3.92 */
    static hs_draws draws;
    hs_draws_fill(&draws, HS_MAX_SAMPLES, 3);
    static double sum[HS_MAX_SAMPLES];
    for (size_t i = 0; i < draws.n; i++)
        sum[i] = draws.z[i][0] + draws.z[i][3] + draws.z[i][7] + draws.z[i][11];
    /* five standard errors of the quantile at this number of draws */
    NEAR(hs_quantile_of(sum, draws.n, 0.975), 3.92, 5 * 2 * 0.059);
    NEAR(hs_quantile_of(sum, draws.n, 0.025), -3.92, 5 * 2 * 0.059);
}

static void chain__case_through_half_the_wall__is_refused(void) {
    static test_job t;
    static hs_history_work work;
    static hs_chain chain;
    hs_error err = {0};
    test_job_plate(&t, "16MnCr5");
    t.job.part.thickness_m = 0.005;
    CHECK(hs_chain_make(&chain, &t.job, &work, &err) == HS_E_THROUGH);
    CHECK(strstr(err.message, "half") != NULL);
}

HS_TEST_MAIN("plan chain", TEST(response__random_draws__agree_with_the_history_run_directly),
             TEST(route__counted_from_box_red__takes_the_lag_off),
             TEST(route__without_a_quench__is_refused),
             TEST(loss__four_quarters_brushed__lose_twice_one_hour),
             TEST(warp__plate_masked_on_one_face__bows_by_the_one_sided_formula),
             TEST(warp__random_bow__has_the_spread_of_its_medium),
             TEST(draws__sum_of_four_normals__has_the_interval_of_jcgm_101),
             TEST(chain__case_through_half_the_wall__is_refused))
