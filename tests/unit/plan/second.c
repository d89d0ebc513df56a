/* A second soak for a part whose case does not last: against laws of diffusion, and against the
 * chain of the same two fires written as one route. */
#include "plan/second.h"
#include "hardskin/tables/table.h"
#include "job.h"
#include "plan/measured_input.h"
#include "plan/reading_make.h"
#include "plan/variant.h"
#include "support/check.h"

#include <stdlib.h>
#include <string.h>

typedef struct run {
    hs_chain chain;
    hs_chain_work scratch;
    hs_draws draws;
    hs_remedy_work work;
    hs_decide_work decide;
    hs_measured_input in;
    hs_second second;
} run_t;

static test_job t;

static run_t *start(void) {
    run_t *r = calloc(1, sizeof *r);
    if (!r || hs_chain_make(&r->chain, &t.job, &r->scratch, NULL) != HS_OK) abort();
    hs_draws_fill(&r->draws, 512, 4);
    return r;
}

/* The plate read as `read_m`, its size measured so that the case falls short. */
static void measure(run_t *r, double read_m, double size_m) {
    hs_measured *m = &t.job.measured;
    *m = (hs_measured){.stated = 1,
                       .case_m = read_m,
                       .case_limit_HV = 550,
                       .case_way = HS_CASE_TRAVERSE,
                       .case_checked = 1};
    m->dimension[0] = (hs_measured_dimension){
        .size_given = 1, .shape_given = 1, .size_m = size_m, .bow_m = 0.1e-3, .crown = 0};
    hs_reading reading;
    if (hs_reading_make(&reading, &r->chain, NULL) != HS_OK) abort();
    r->chain.reading = reading;
    r->in = (hs_measured_input){.case_read = read_m > 0};
    for (size_t i = 0; i < t.job.faces; i++)
        r->in.face[i] = (hs_measured_face){.clean_up_m = 30e-6,
                                           .clean_up_high_m = 40e-6,
                                           .case_m = read_m,
                                           .case_low_m = read_m - 0.1e-3,
                                           .hard_to_m = read_m,
                                           .hard_to_low_m = read_m - 0.1e-3};
    r->in.split_m[0] = 10e-6;
}

static hs_status make(run_t *r, double hold_s) {
    return hs_second_make(&r->second, hold_s, &r->chain, &r->draws, &r->work, &r->scratch,
                          &r->decide);
}

/* independent: the same two fires written as one route, nothing cut off between them */
static void second__nothing_taken_off__is_the_long_route(void) {
    test_job_plate(&t, "16MnCr5");
    run_t *r = start();
    static hs_chain once, twice;
    hs_variant_start(&r->work.variant, &t.job);
    CHECK(hs_variant_twice(&r->work.variant, 6 * 3600));
    CHECK(r->work.variant.job.steps == 2 * t.job.steps);
    const hs_job *both = &r->work.variant.job;
    CHECK(hs_chain_fire(&once, &r->chain, both, &r->scratch, NULL) == HS_OK);
    hs_route_left left = {.heats = r->chain.route.heats, .stretch = 1, .speed = 1};
    CHECK(hs_chain_recase(&twice, &r->chain, both, &left, &r->scratch, NULL) == HS_OK);
    NEAR(hs_chain_depth_to(&twice, 0, 550), hs_chain_depth_to(&once, 0, 550), 1e-9);
    CHECK(twice.loss.n == once.loss.n - r->chain.loss.n);
    left.cut_m = 0.1e-3; /* less than is cut off is missing: the new soak makes good for a part */
    CHECK(hs_chain_recase(&twice, &r->chain, both, &left, &r->scratch, NULL) == HS_OK);
    double shallower = hs_chain_depth_to(&once, 0, 550) - hs_chain_depth_to(&twice, 0, 550);
    CHECK(shallower > 0.02e-3 && shallower < 0.1e-3);
    free(r);
}

/* exact: read as deep as f of what was computed, the case of a fire as slow as that is f times that
 * of both soaks together: depths go with the root of D t. What the heats up and down add to each
 * soak, and the carbon's own pull on D, are in both. */
static void second__a_slow_fire__stays_as_slow(void) {
    test_job_plate(&t, "16MnCr5");
    run_t *r = start();
    const double share = 0.7, hold_s = 20 * 3600;
    double computed_m = hs_chain_depth_to(&r->chain, 0, 550);
    hs_variant_start(&r->work.variant, &t.job);
    CHECK(hs_variant_twice(&r->work.variant, hold_s));
    static hs_chain both;
    CHECK(hs_chain_fire(&both, &r->chain, &r->work.variant.job, &r->scratch, NULL) == HS_OK);
    double both_m = hs_chain_depth_to(&both, 0, 550);
    static const double middle[HS_INPUTS] = {0};
    double taken_m = hs_chain_draw(&r->chain, middle).lost_m;
    measure(r, share * computed_m - taken_m, 20.6e-3);
    NEAR(r->chain.reading.factor, share, 1e-9);
    CHECK(make(r, hold_s) == HS_OK);
    NEAR(r->second.speed, share, 1e-9);
    /* what came off as scale is gone, and the soak makes a part of it good: within it */
    double least_m = share * both_m - taken_m - r->second.lost_m;
    CHECK(r->second.face[0].case_m > least_m - 5e-6);
    CHECK(r->second.face[0].case_m < share * both_m - r->second.lost_m + 5e-6);
    CHECK(r->second.face[0].case_low_m < r->second.face[0].case_m - 0.05e-3);
    measure(r, 1.3 * computed_m - taken_m, 20.6e-3); /* faster: not trusted twice */
    CHECK(make(r, hold_s) == HS_OK);
    NEAR(r->second.speed, 1, 0);
    free(r);
}

static void second__longer__deeper_and_the_size_moves_by_its_own_sum(void) {
    test_job_plate(&t, "16MnCr5");
    run_t *r = start();
    double before_m = 0;
    measure(r, 0.8e-3, 20.6e-3);
    for (double hours = 1; hours <= 16; hours *= 2) {
        CHECK(make(r, hours * 3600) == HS_OK);
        CHECK(r->second.face[0].case_m > before_m);
        before_m = r->second.face[0].case_m;
        CHECK(r->second.lost_m > 0 && r->second.lost_high_m > r->second.lost_m);
        CHECK(r->second.shape_high_m[0] > r->second.shape_m[0] && r->second.shape_m[0] > 0);
        /* exact: .1 % of half of 20 mm */
        NEAR(r->second.growth_bound_m[0], 10e-6, 1e-9);
        CHECK(fabs(r->second.growth_m[0]) < 5e-6); /* it is martensite already */
    }
    hs_bench now, then;
    hs_bench_make(&now, &t.job, 0, &r->in);
    hs_bench_second(&then, &now, &t.job, 0, &r->in, &r->second);
    double moved_m = 2 * (r->second.growth_m[0] - r->second.lost_m); /* exact: both sides */
    double doubt_m = 20e-6 + 2 * (r->second.lost_high_m - r->second.lost_m);
    NEAR(then.size[0].low_m, now.size[0].low_m + moved_m, 1e-12);
    NEAR(then.size[1].low_m, now.size[1].low_m + moved_m - doubt_m, 1e-12);
    NEAR(then.size[1].high_m, now.size[1].high_m + moved_m + doubt_m, 1e-12);
    now.bore = 1;
    hs_bench_second(&then, &now, &t.job, 0, &r->in, &r->second);
    NEAR(then.size[0].low_m, now.size[0].low_m - moved_m, 1e-12);
    free(r);
}

/* What is ground off is gone with its carbon; the new soak makes a part of it good. */
static void second__ground_off_already__starts_from_what_is_left(void) {
    test_job_plate(&t, "16MnCr5");
    run_t *r = start();
    measure(r, 0.8e-3, 20.6e-3);
    CHECK(make(r, 4 * 3600) == HS_OK);
    double whole_m = r->second.face[0].case_m;
    t.job.measured.dimension[0].ground_m = 0.1e-3;
    CHECK(make(r, 4 * 3600) == HS_OK);
    double short_m = whole_m - r->second.face[0].case_m;
    CHECK(make(r, 16 * 3600) == HS_OK);
    double later_m = r->second.face[0].case_m;
    t.job.measured.dimension[0].ground_m = 0;
    CHECK(make(r, 16 * 3600) == HS_OK);
    CHECK(short_m > 0.02e-3 && short_m < 0.1e-3);
    CHECK(r->second.face[0].case_m - later_m < short_m); /* ever less of it is missing */
    /* exact: at the bench all of it is missing */
    static hs_window_found found[HS_MAX_DIMENSIONS];
    static hs_result result;
    hs_measured_input now, then;
    hs_measured_input_make(&now, &r->chain, found, &result);
    t.job.measured.dimension[0].ground_m = 0.1e-3;
    hs_measured_input_make(&then, &r->chain, found, &result);
    NEAR(now.face[0].case_m - then.face[0].case_m, 0.1e-3, 1e-12);
    NEAR(now.face[1].hard_to_low_m - then.face[1].hard_to_low_m, 0.1e-3, 1e-12);
    NEAR(now.face[0].clean_up_m, then.face[0].clean_up_m, 0);
    free(r);
}

/* exact: the scale of the first fire has taken its metal before the second soak begins */
static void second__scaled_already__starts_from_what_is_left(void) {
    static const double middle[HS_INPUTS] = {0};
    static hs_chain twice;
    double case_m[2];
    test_job_plate(&t, "16MnCr5");
    t.step[2].medium = "electric furnace in air";
    t.step[2].medium_row =
        (size_t)hs_table_row(hs_table_get(HS_TABLE_ATMOSPHERE), 0, "electric furnace in air");
    run_t *r = start();
    double lost_m = hs_chain_draw(&r->chain, middle).lost_m;
    for (int cut = 0; cut < 2; cut++) {
        hs_variant_start(&r->work.variant, &t.job);
        CHECK(hs_variant_twice(&r->work.variant, 6 * 3600));
        hs_route_left left = {
            .heats = r->chain.route.heats, .cut_m = cut * lost_m, .stretch = 1, .speed = 1};
        CHECK(hs_chain_recase(&twice, &r->chain, &r->work.variant.job, &left, &r->scratch, NULL) ==
              HS_OK);
        hs_part_draw draw = hs_chain_draw(&twice, middle);
        case_m[cut] = hs_chain_trial(&twice, 0, 0, &draw).case_m - draw.lost_m;
    }
    CHECK(make(r, 6 * 3600) == HS_OK);
    printf("lost %.1f um, second case %.1f um shallower for it\n", 1e6 * lost_m,
           1e6 * (case_m[0] - case_m[1]));
    CHECK(lost_m > 5e-6 && case_m[0] - case_m[1] > 1e-6);
    NEAR(r->second.face[0].case_m, case_m[1], 1e-9);
    free(r);
}

static void find(run_t *r) {
    hs_second_find(&r->second, &r->in, &r->chain, &r->draws, &r->work, &r->scratch, &r->decide);
}

static hs_wheel then_of(const run_t *r) {
    hs_bench now, then;
    hs_bench_make(&now, &t.job, 0, &r->in);
    hs_bench_second(&then, &now, &t.job, 0, &r->in, &r->second);
    return hs_bench_judge(&then);
}

static void second__found__is_the_shortest_that_does(void) {
    test_job_plate(&t, "16MnCr5");
    run_t *r = start();
    measure(r, 0.8e-3, 20.6e-3);
    find(r);
    CHECK(r->second.present && then_of(r) == HS_WHEEL_GRIND);
    double hold_s = r->second.hold_s;
    printf("second soak %.1f h: case %.3f mm, low %.3f mm\n", hold_s / 3600,
           1e3 * r->second.face[0].case_m, 1e3 * r->second.face[0].case_low_m);
    NEAR(fmod(hold_s, 1800), 0, 1e-9);
    CHECK(make(r, hold_s - 1800) == HS_OK && then_of(r) > HS_WHEEL_GRIND);
    free(r);
}

static void second__not_asked_or_no_use__not_there(void) {
    test_job_plate(&t, "16MnCr5");
    run_t *r = start();
    measure(r, 1.5e-3, 20.4e-3); /* to be ground as it is */
    find(r);
    CHECK(!r->second.present && !r->second.why[0]);
    t.step[0].log_points = 1; /* a log cannot be gone once more */
    hs_variant_start(&r->work.variant, &t.job);
    CHECK(!hs_variant_twice(&r->work.variant, 3600));
    free(r);
    test_job_plate(&t, "16MnCr5"); /* a wall that cannot hold the case asked */
    t.job.part.thickness_m = 5e-3;
    t.dimension[0].size.nominal_m = 5e-3;
    t.dimension[0].size.upper_m = 5e-3;
    t.dimension[0].size.lower_m = 4.98e-3;
    for (size_t i = 0; i < t.job.faces; i++)
        if (t.face[i].finish == HS_GROUND) t.face[i].case_m = 1.2e-3;
    t.step[0].hold_s = (hs_span){14400, 14400, 14400};
    r = start();
    measure(r, 0.8e-3, 5.6e-3);
    find(r);
    CHECK(!r->second.present && r->second.why[0]);
    free(r);
}

static void second__not_to_be_run__says_why(void) {
    /* a case that falls short; the soak a log, which has no length to be solved for */
    test_job_plate(&t, "16MnCr5");
    run_t *r = start();
    measure(r, 0.7e-3, 20.4e-3);
    t.step[0].log_points = 1;
    find(r);
    CHECK(!r->second.present && strstr(r->second.why, "log") != NULL);
    t.step[0].log_points = 0;
    find(r);
    CHECK(r->second.present && !r->second.why[0]);
    free(r);
}

HS_TEST_MAIN("plan_second", TEST(second__nothing_taken_off__is_the_long_route),
             TEST(second__a_slow_fire__stays_as_slow),
             TEST(second__longer__deeper_and_the_size_moves_by_its_own_sum),
             TEST(second__ground_off_already__starts_from_what_is_left),
             TEST(second__scaled_already__starts_from_what_is_left),
             TEST(second__found__is_the_shortest_that_does),
             TEST(second__not_asked_or_no_use__not_there),
             TEST(second__not_to_be_run__says_why))
