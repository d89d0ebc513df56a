/* A flat that the magnetic chuck pulls flat: no shape under the wheel, and its bow comes back. */
#include "constants.h"
#include "hardskin/plan/plan.h"
#include "job.h"
#include "measured_bench.h"
#include "plan/chuck.h"
#include "plan/warp.h"
#include "support/check.h"

#include <string.h>

static hs_result result;

static const hs_result_dimension *plan(const test_job *t) {
    test_job_plan(&result, &t->job);
    return &result.dimension[0];
}

/* 10 mm thick, 300 long, soaked so that there is room. */
static void thin(test_job *t, hs_held held, double flatness_m) {
    test_job_plate(t, "16MnCr5");
    t->job.part.thickness_m = 10e-3;
    t->dimension[0].size = (hs_size){10e-3, 9.985e-3, 10e-3, "h7"};
    t->face[0].case_m = t->face[1].case_m = 0.3e-3;
    t->face[0].flatness_m = t->face[1].flatness_m = flatness_m;
    t->job.part.held = held;
}

static const hs_remedy *offered(const hs_result_dimension *d, const char *word) {
    for (size_t i = 0; i < d->remedies; i++)
        if (strstr(d->remedy[i].what, word)) return &d->remedy[i];
    return NULL;
}

/* exact: V = 0 under the wheel; the flatness asked must allow the bow, else it is refused */
static void pulled__flatness__allows_or_refuses_it(void) {
    static test_job t;
    thin(&t, (hs_held)0, 0);
    const hs_result_dimension *d = plan(&t);
    CHECK(!d->pulled.present);
    double shimmed_need_m = d->need_m, bow_m = d->shape_m, bow_high_m = d->shape_high_m;
    hs_verdict shimmed = d->verdict;
    thin(&t, HS_PULLED_FLAT, 2e-3);
    d = plan(&t);
    CHECK(d->pulled.present && !d->pulled.refused[0] && d->verdict != HS_STOP);
    NEAR(d->shape_m, 0, 0);
    NEAR(d->pulled.sprung_m, bow_m, 0.05 * bow_m); /* another number of draws */
    NEAR(d->pulled.sprung_high_m, bow_high_m, 0.05 * bow_high_m);
    CHECK(d->need_m < shimmed_need_m - bow_m / 2);
    CHECK(!d->bench.present);
    thin(&t, HS_PULLED_FLAT, 0);
    d = plan(&t);
    CHECK(d->verdict == HS_STOP && strstr(d->pulled.refused, "no flatness is asked"));
    if (shimmed == HS_GO) CHECK(offered(d, "shim the hollow") != NULL);
    thin(&t, HS_PULLED_FLAT, bow_m / 2);
    CHECK(plan(&t)->verdict == HS_STOP && strstr(result.dimension[0].pulled.refused, "is 0."));
}

/* exact: the chuck's least pull .5 MPa flattens 6.4 E h^3 f / L^4 = .5e6 */
static void pulled__shape_limit__is_flatness_or_what_the_chuck_flattens(void) {
    static test_job t;
    double h = 10e-3, L = 0.3, E = HS_K_GRINDING_YOUNGS_MODULUS;
    double most_m = 0.5e6 * pow(L, 4) / (6.4 * E * h * h * h);
    NEAR(most_m, 3.087e-3, 1e-6); /* exact: .5e6 * .0081/(6.4 * 205e9 * 1e-6) */
    thin(&t, HS_PULLED_FLAT, 10e-3);
    NEAR(plan(&t)->shape_limit_m, floor(most_m * 1e6) * 1e-6, 1e-9);
    thin(&t, HS_PULLED_FLAT, 2e-3);
    NEAR(plan(&t)->shape_limit_m, 2e-3, 1e-9);
    test_job_plate(&t, "16MnCr5"); /* 40 mm thick: .048 mm at most */
    t.job.part.thickness_m = 40e-3;
    t.dimension[0].size = (hs_size){40e-3, 39.975e-3, 40e-3, "h7"};
    t.job.part.condition = HS_COLD_DRAWN;
    t.job.part.held = HS_PULLED_FLAT;
    t.face[0].flatness_m = t.face[1].flatness_m = 2e-3;
    CHECK(plan(&t)->verdict == HS_STOP);
    CHECK(strstr(result.dimension[0].pulled.refused, "does not surely press") != NULL);
}

/* What a flatness allows is offered where shimming leaves the window shut; without one it is not.
 */
static void pulled__remedy__only_where_a_flatness_is_asked(void) {
    static test_job t;
    thin(&t, (hs_held)0, 2e-3);
    t.job.part.condition = HS_COLD_DRAWN;
    t.step[0].hold_s = (hs_span){4 * 3600, 4 * 3600, 4 * 3600};
    const hs_result_dimension *d = plan(&t);
    CHECK(d->verdict == HS_STOP && offered(d, "pull it flat") != NULL);
    t.face[0].flatness_m = t.face[1].flatness_m = 0;
    CHECK(!offered(plan(&t), "pull it flat"));
}

/* exact, mm: at the bench bow .2 against a flatness of .15, then .25 */
static void pulled__measured__bow_against_the_flatness(void) {
    bench_job b;
    worked_plate(&b);
    b.job.part.held = HS_PULLED_FLAT;
    b.job.part.thickness_m = 20e-3;
    b.face[0].flatness_m = b.face[1].flatness_m = 0.15e-3;
    const hs_result_measured_dimension *d = judge(&b);
    NEAR(d->shape_m, 0, 0);
    CHECK(d->verdict == HS_WHEEL_NO && strstr(d->note, "0.200 mm comes back"));
    CHECK(remedy(d, "shim the hollow") && remedy(d, "shim the hollow")->verdict == HS_GO);
    b.face[0].flatness_m = b.face[1].flatness_m = 0.25e-3;
    CHECK(judge(&b)->verdict == HS_WHEEL_GRIND);
    b.face[0].flatness_m = 0.21e-3; /* .2 holds, with its doubt of .02 it does not */
    CHECK(judge(&b)->verdict == HS_WHEEL_CARE);
    /* of 20.66 mm the chuck flattens 3.087/2.066^3 = .350 mm, whatever flatness is asked */
    b.face[0].flatness_m = b.face[1].flatness_m = 2e-3;
    b.job.measured.dimension[0].bow_m = 0.31e-3;
    CHECK(judge(&b)->verdict == HS_WHEEL_GRIND);
    b.job.measured.dimension[0].bow_m = 0.34e-3;
    CHECK(judge(&b)->verdict == HS_WHEEL_CARE);
    b.job.measured.dimension[0].bow_m = 0.36e-3;
    CHECK(judge(&b)->verdict == HS_WHEEL_NO);
}

/* A flat of 60 x h as a profile, its top and bottom the one dimension, h from the plate's. */
static void as_profile(test_job *t, hs_point point[4]) {
    double w = 60e-3, h = t->job.part.thickness_m;
    const hs_point corner[4] = {{0, 0}, {w, 0}, {w, h}, {0, h}};
    memcpy(point, corner, sizeof corner);
    t->job.part.form = HS_PROFILE;
    t->job.part.section.outline = (hs_outline){point, 4};
    t->job.faces = 2;
    t->face[0].edge = 3;
    t->face[1].edge = 1;
}

/* exact: a flat drawn as a profile is the flat; a chuck that pulls .5 MPa on its 60 mm */
static void pulled__profile__a_rectangle_is_a_plate(void) {
    static test_job t;
    hs_point point[4];
    thin(&t, HS_PULLED_FLAT, 2e-3);
    t.job.dimensions = 1;
    t.job.part.width_m = 60e-3;
    double plate_m = hs_chuck_flattens_m(&t.job, &t.dimension[0], 10e-3);
    const hs_result_dimension *d = plan(&t);
    double need_m = d->need_m, limit_m = d->shape_limit_m, sprung_m = d->pulled.sprung_high_m;
    as_profile(&t, point);
    CHECK(hs_dimension_pulled(&t.job, &t.dimension[0]));
    NEAR(hs_chuck_flattens_m(&t.job, &t.dimension[0], 0), plate_m, 1e-9 * plate_m);
    d = plan(&t);
    CHECK(d->pulled.present && !d->pulled.refused[0]);
    NEAR(d->shape_m, 0, 0);
    NEAR(d->shape_limit_m, limit_m, 1e-6);
    NEAR(d->pulled.sprung_high_m, sprung_m, 0.1 * sprung_m); /* another mesh, other draws */
    NEAR(d->need_m, need_m, 0.1 * need_m);
    t.face[0].flatness_m = t.face[1].flatness_m = 0;
    CHECK(plan(&t)->verdict == HS_STOP && d->pulled.refused[0]);
}

/* exact, by the principal moments of the reference page's L: a load along n meets
 * cos^2/I2 + sin^2/I1, n at that angle from the weak way. published values: see the page, section 3
 */
static void pulled__angle__gives_by_both_principal_moments(void) {
    static const hs_point corner[] = {{0, 0},       {60e-3, 0},    {60e-3, 8e-3},
                                      {8e-3, 8e-3}, {8e-3, 40e-3}, {0, 40e-3}};
    static test_job t;
    thin(&t, HS_PULLED_FLAT, 2e-3);
    t.job.part.form = HS_PROFILE;
    t.job.part.section.outline = (hs_outline){corner, 6};
    t.job.dimensions = 2;
    t.dimension[1] = t.dimension[0];
    t.dimension[1].face[0] = 2;
    t.dimension[1].face[1] = 3;
    t.face[0].edge = 3; /* the flange, square to y: edges 52 and 60 mm long */
    t.face[1].edge = 1;
    t.face[2].edge = 4; /* the leg, square to x: 32 and 40 mm */
    t.face[3].edge = 6;
    const double Ix = 91187.94e-12, I1 = 295177.23e-12, I2 = 54238.65e-12;
    double E = HS_K_GRINDING_YOUNGS_MODULUS, L = t.job.part.length_m, f = 0.1e-3;
    /* Ix = I1 cos^2 + I2 sin^2 of the angle of the strong axis from x */
    double cos2 = (Ix - I2) / (I1 - I2), y_m4 = 1 / (cos2 / I1 + (1 - cos2) / I2);
    double x_m4 = 1 / ((1 - cos2) / I1 + cos2 / I2);
    double y_Pa = 76.8 * E * y_m4 * f / (52e-3 * pow(L, 4));
    double x_Pa = 76.8 * E * x_m4 * f / (32e-3 * pow(L, 4));
    NEAR(hs_chuck_pull_Pa(&t.job, &t.dimension[0], 0, f), y_Pa, 1e-5 * y_Pa);
    NEAR(hs_chuck_pull_Pa(&t.job, &t.dimension[1], 0, f), x_Pa, 1e-5 * x_Pa);
    CHECK(hs_dimension_pulled(&t.job, &t.dimension[0])); /* the weaker of both ways */
    CHECK(!hs_dimension_pulled(&t.job, &t.dimension[1]));
    t.job.part.held = (hs_held)0;
    CHECK(!hs_dimension_pulled(&t.job, &t.dimension[0]));
}

/* A bar lies on no flat, and what stands square to the chuck is not pulled. */
static void pulled__bar_slot_and_width__are_not(void) {
    static const hs_point corner[] = {{0, 0},         {60e-3, 0},     {60e-3, 30e-3},
                                      {40e-3, 30e-3}, {40e-3, 10e-3}, {20e-3, 10e-3},
                                      {20e-3, 30e-3}, {0, 30e-3}};
    static test_job t;
    test_job_bar(&t, "16MnCr5");
    t.job.part.held = HS_PULLED_FLAT;
    CHECK(!hs_dimension_pulled(&t.job, &t.dimension[0]));
    CHECK(isnan(hs_chuck_pull_Pa(&t.job, &t.dimension[0], 30e-3, 1e-4)));
    thin(&t, HS_PULLED_FLAT, 2e-3);
    t.job.part.form = HS_PROFILE;
    t.job.part.section.outline = (hs_outline){corner, 8};
    t.job.dimensions = 1;
    t.face[0].edge = 4; /* walls of the slot */
    t.face[1].edge = 6;
    CHECK(!hs_dimension_pulled(&t.job, &t.dimension[0]));
    t.face[0].edge = 2; /* its outsides */
    t.face[1].edge = 8;
    CHECK(hs_dimension_pulled(&t.job, &t.dimension[0]));
}

HS_TEST_MAIN("plan_pulled", TEST(pulled__flatness__allows_or_refuses_it),
             TEST(pulled__shape_limit__is_flatness_or_what_the_chuck_flattens),
             TEST(pulled__remedy__only_where_a_flatness_is_asked),
             TEST(pulled__measured__bow_against_the_flatness),
             TEST(pulled__profile__a_rectangle_is_a_plate),
             TEST(pulled__angle__gives_by_both_principal_moments),
             TEST(pulled__bar_slot_and_width__are_not))
