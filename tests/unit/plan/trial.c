/* What one draw means for one face: the letters of the reference page on windows, each by itself.
 */
#include "hardskin/model/case.h"
#include "hardskin/tables/table.h"
#include "plan/chain.h"
#include "support/check.h"
#include "unit/plan/job.h"

#include <string.h>

static const double BOUND = 1.959963984540054; /* where a 95 % bound stands, exact */
static const double middle[HS_INPUTS] = {0};
static test_job t;
static hs_chain chain;
static hs_chain_work work;

static void make(void) {
    hs_error err = {0};
    hs_status status = hs_chain_carbon(&chain, &t.job, HS_RESPONSE_WHOLE, &work, &err);
    if (status != HS_OK) printf("%s\n", err.message);
    CHECK(status == HS_OK);
    chain.warp = (hs_warp){.bend.surface.plasticities = 1, .left_m = INFINITY}; /* no bow here */
}

static hs_trial trial(size_t face, double growth_m, const double z[HS_INPUTS]) {
    hs_part_draw draw = hs_chain_draw(&chain, z);
    return hs_chain_trial(&chain, face, growth_m, &draw);
}

static double profile_depth(double limit_HV) {
    double depth_m = NAN;
    CHECK(hs_case_depth(&depth_m, &chain.response[0].typical, limit_HV, NULL) == HS_OK);
    return depth_m;
}

static void trial__case_and_hardness__are_two_limits(void) {
    /* exact: windows section 1, B is the smaller of x - w and the deepest z as hard as asked. The
     * profile itself says where each hardness stands: 5 %, for the limit takes one rate of cooling
     * and the profile its own at each depth. */
    test_job_plate(&t, "16MnCr5");
    t.face[0].hardness_HV = 680;
    t.face[1].hardness_HV = 0;
    make();
    hs_trial hard = trial(0, 0, middle), plain = trial(1, 0, middle);
    NEAR(hard.case_m / profile_depth(550), 1, 0.05);
    NEAR(plain.case_m, hard.case_m, 1e-12);
    NEAR(plain.sum.budget_m, plain.case_m - 0.6e-3, 1e-12);
    hs_part_draw draw = hs_chain_draw(&chain, middle);
    double hard_to_m = hs_chain_hard_to(&chain, 0, &draw);
    NEAR(hard_to_m / profile_depth(680), 1, 0.05);
    CHECK(hard_to_m < hard.case_m);
    NEAR(hard.sum.budget_m, fmin(hard_to_m, hard.case_m - 0.6e-3), 1e-12);
    t.face[0].case_m = 0.1e-3; /* now the hardness is what ends the stock */
    hard = trial(0, 0, middle);
    NEAR(hard.sum.budget_m, hard_to_m, 1e-12);
    CHECK(hard_to_m < hard.case_m - 0.1e-3);
}

static void trial__counted_to_another_hardness__moves_the_depth(void) {
    /* exact: the case is counted to the hardness named ("to"), whatever is asked of the face */
    static const double limits_HV[] = {513, 550, 610};
    test_job_plate(&t, "16MnCr5");
    for (int i = 0; i < 3; i++) {
        t.face[0].limit_HV = t.face[1].limit_HV = limits_HV[i];
        make();
        NEAR(trial(0, 0, middle).case_m / profile_depth(limits_HV[i]), 1, 0.05);
    }
}

static void trial__scatter_of_the_load__is_an_eighth_of_a_millimetre(void) {
    /* from memory: pack scatter .25 mm from most to least at 925 C: +-.125 mm at the bound */
    double z[HS_INPUTS] = {0};
    test_job_plate(&t, "16MnCr5");
    make();
    double case_m = trial(0, 0, middle).case_m;
    for (int side = -1; side <= 1; side += 2) {
        z[HS_IN_PACK] = side * BOUND;
        NEAR(trial(0, 0, z).case_m, case_m + side * 0.125e-3, 1e-9);
    }
}

static void trial__set_up_and_growth__enter_as_drawn(void) {
    /* own contract: the shop's set-up error is a 95 % bound, either way the same */
    double z[HS_INPUTS] = {0};
    test_job_plate(&t, "16MnCr5");
    make();
    NEAR(trial(0, 0, z).sum.split_m, 0, 0);
    for (int side = -1; side <= 1; side += 2) {
        z[HS_IN_SETUP] = side * BOUND;
        NEAR(trial(0, 0, z).sum.split_m, t.job.shop.setup_error_m, 1e-15);
    }
    hs_face_sum s = trial(0, -7e-6, z).sum;
    NEAR(s.growth_low_m, -7e-6, 0);
    NEAR(s.growth_high_m, -7e-6, 0);
    CHECK(s.ground && s.lost_low_m == s.lost_high_m);
}

static void in_flame(const char *name, double minutes) {
    int row = hs_table_row(hs_table_get(HS_TABLE_ATMOSPHERE), 0, name);
    CHECK(row >= 0);
    test_job_plate(&t, "16MnCr5");
    t.step[2].medium = name;
    t.step[2].medium_row = (size_t)row;
    t.step[2].hold_s = (hs_span){60 * minutes, 60 * minutes, 60 * minutes};
    make();
}

static void trial__soft_rim_or_marks__the_larger_is_cleaned_up(void) {
    /* exact: c is the larger of the soft rim to the asked hardness and the marks of cut and scale,
     * here 20 um of the cut and half of what the scale took */
    in_flame("box", 20);
    CHECK(hs_loss_metal(&chain.loss, t.job.steps, middle) == 0);
    NEAR(trial(0, 0, middle).sum.clean_up_m, 20e-6, 1e-12);
    in_flame("open lean flame", 30);
    hs_part_draw draw = hs_chain_draw(&chain, middle);
    double marks_m = 20e-6 + 0.5 * draw.scale_m;
    double asked_pct = hs_limit_least(&chain.face[0].asked, middle);
    double rim_m = hs_loss_rim(&chain.loss, asked_pct, middle);
    CHECK(rim_m > marks_m && draw.scale_m > 10e-6);
    NEAR(trial(0, 0, middle).sum.clean_up_m, rim_m, 1e-12);
    /* exact: more metal is lost by the brush only; both limits of the loss are the draw's own */
    NEAR(trial(0, 0, middle).sum.lost_high_m, draw.scale_m + hs_loss_taken(&chain.loss, middle),
         1e-15);
    CHECK(draw.lost_m > draw.scale_m);
    t.face[0].case_m = t.face[0].hardness_HV = 0; /* nothing asked, no rim to take off */
    NEAR(trial(0, 0, middle).sum.clean_up_m, marks_m, 1e-12);
}

static void trial__rim__stands_where_the_carbon_is_enough(void) {
    /* exact: straight from the rim's edge over half to nine tenths of the carbon */
    in_flame("open lean flame", 30);
    const hs_loss_heat *h = &chain.loss.heat[0];
    CHECK(chain.loss.n == 1 && h->rim_m < h->depth50_m && h->depth50_m < h->depth90_m);
    double c = h->surface_pct;
    NEAR(hs_loss_rim(&chain.loss, 0, middle), h->rim_m, 1e-12);
    NEAR(hs_loss_rim(&chain.loss, 0.25 * c, middle), 0.5 * (h->rim_m + h->depth50_m), 1e-12);
    NEAR(hs_loss_rim(&chain.loss, 0.5 * c, middle), h->depth50_m, 1e-12);
    NEAR(hs_loss_rim(&chain.loss, 0.7 * c, middle), 0.5 * (h->depth50_m + h->depth90_m), 1e-12);
    NEAR(hs_loss_rim(&chain.loss, 0.9 * c, middle), h->depth90_m, 1e-12);
    /* exact: what the fire eats and softens goes by the carbon of the case's own surface */
    NEAR(c, chain.response[0].typical.carbon_pct[0], 1e-12);
}

static void trial__scale_and_rim__have_their_bands(void) {
    /* exact: a band of kp from half to twice is a loss over or times the root of two; judgement:
     * the rim times or over 5/3, its own upper bound */
    in_flame("open lean flame", 30);
    double z[HS_INPUTS] = {0}, lost_m = hs_chain_draw(&chain, z).scale_m;
    double rim_m = hs_loss_rim(&chain.loss, 0.5, z);
    for (int side = -1; side <= 1; side += 2) {
        z[HS_IN_OXIDE] = z[HS_IN_RIM] = side * BOUND;
        NEAR(hs_chain_draw(&chain, z).scale_m, lost_m * pow(2, 0.5 * side), 1e-9 * lost_m);
        NEAR(hs_loss_rim(&chain.loss, 0.5, z), rim_m * pow(5. / 3, side), 1e-9 * rim_m);
    }
}

static void trial__too_much_austenite__goes_with_the_scale(void) {
    /* exact: where the surface is softened by austenite the wheel has to come to the place that is
     * hard enough, which counts from the blank; what the scale takes is gone already */
    int box = hs_table_row(hs_table_get(HS_TABLE_ATMOSPHERE), 0, "box");
    test_job_plate(&t, "16MnCr5");
    t.step[2].medium = "box"; /* no rim */
    t.step[2].medium_row = (size_t)box;
    t.step[2].temp_K = (hs_span){1223.15, 1223.15, 1223.15}; /* dissolves all of it */
    t.step[0].surface_carbon_pct = (hs_span){1.1, 1.2, 1.3};
    t.face[0].hardness_HV = 720;
    make();
    double most_pct = hs_limit_most(&chain.face[0].asked, middle);
    hs_part_draw draw = hs_chain_draw(&chain, middle);
    CHECK(most_pct < draw.carbon.surface_pct);
    double soft_m = hs_response_depth(&chain.response[0], most_pct, &draw.carbon);
    printf("softened by austenite to %.4f mm, lost %.4f mm\n", 1e3 * soft_m, 1e3 * draw.lost_m);
    CHECK(soft_m > 50e-6 && draw.lost_m > 0.9e-6);
    NEAR(trial(0, 0, middle).sum.clean_up_m, soft_m - draw.lost_m, 1e-12);
}

static void trial__faces_that_ask_nothing__have_no_case_to_keep(void) {
    test_job_plate(&t, "16MnCr5");
    t.face[0].case_m = t.face[0].hardness_HV = 0;
    t.face[1].finish = HS_SOFT;
    make();
    hs_trial open = trial(0, 0, middle), masked = trial(1, 0, middle);
    CHECK(isinf(masked.sum.budget_m) && !masked.sum.ground);
    /* own contract: the whole case, or 2 mm where that is less */
    double total_m = NAN;
    CHECK(hs_case_total(&total_m, &chain.response[0].typical, chain.response[0].core_pct, NULL) ==
          HS_OK);
    NEAR(open.sum.budget_m, fmax(total_m, 2e-3), 0.02 * total_m);
    CHECK(open.sum.ground && open.case_m > 0);
}

HS_TEST_MAIN("plan_trial", TEST(trial__case_and_hardness__are_two_limits),
             TEST(trial__counted_to_another_hardness__moves_the_depth),
             TEST(trial__scatter_of_the_load__is_an_eighth_of_a_millimetre),
             TEST(trial__set_up_and_growth__enter_as_drawn),
             TEST(trial__soft_rim_or_marks__the_larger_is_cleaned_up),
             TEST(trial__rim__stands_where_the_carbon_is_enough),
             TEST(trial__scale_and_rim__have_their_bands),
             TEST(trial__too_much_austenite__goes_with_the_scale),
             TEST(trial__faces_that_ask_nothing__have_no_case_to_keep))
