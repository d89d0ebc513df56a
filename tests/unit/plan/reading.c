/* A case depth that was read takes the place of the computed one. */
#include "hardskin/plan/plan.h"
#include "job.h"
#include "support/check.h"

#include <math.h>
#include <string.h>

static hs_result run(const test_job *t) {
    hs_result r = {0};
    test_job_plan(&r, &t->job);
    return r;
}

static void read_case(test_job *t, double depth_m, hs_case_way way) {
    t->job.measured = (hs_measured){.stated = 1,
                                    .case_m = depth_m,
                                    .case_limit_HV = 550,
                                    .case_way = way,
                                    .case_pointer = "/c"};
}

static void reading__as_computed__same_depth_and_less_doubt(void) {
    /* exact: a reading that finds what was computed has the factor 1 and moves no typical depth */
    static test_job t;
    test_job_plate(&t, "16MnCr5");
    hs_result before = run(&t);
    for (int way = HS_CASE_STEP_FILE; way < HS_CASE_WAYS; way++) {
        read_case(&t, before.hard.way_m[way] - before.scale.lost_m, (hs_case_way)way);
        hs_result r = run(&t);
        CHECK(r.hard.reading.present && r.hard.reading.plan);
        NEAR(r.hard.reading.factor, 1, 1e-9);
        NEAR(r.hard.depth_m, before.hard.depth_m, 1e-9);
        NEAR(r.hard.total_m, before.hard.total_m, 1e-9);
        CHECK(r.hard.depth_low_m > before.hard.depth_low_m);
        CHECK(r.dimension[0].may_m > before.dimension[0].may_m);
        CHECK(r.measured_verdict == HS_WHEEL_NONE);
    }
}

static void reading__faces_quenched_unlike__tell_one_case(void) {
    /* exact: a way that reads to the limit finds the case depth told, 50 HRC (513 HV) lies below
     * 550 HV, and a reading of just that changes nothing, whichever face is the worst */
    static test_job t;
    for (int named = 0; named < 2; named++) {
        test_job_profile(&t, "8620", 0);
        t.face[named ? 0 : 1].case_m += 0.3e-3;
        hs_result before = run(&t);
        NEAR(before.hard.way_m[HS_CASE_TRAVERSE], before.hard.depth_m, 1e-9);
        CHECK(before.hard.effective_m > before.hard.depth_m);
        read_case(&t, before.hard.depth_m - before.scale.lost_m, HS_CASE_TRAVERSE);
        hs_result r = run(&t);
        NEAR(r.hard.reading.factor, 1, 1e-9);
        NEAR(r.hard.depth_m, before.hard.depth_m, 1e-9);
    }
}

static void reading__shallower__depths_and_may_shrink_in_proportion(void) {
    static test_job t;
    test_job_plate(&t, "16MnCr5");
    hs_result before = run(&t);
    double lost_m = before.scale.lost_m, total_m = before.hard.way_m[HS_CASE_ETCH];
    read_case(&t, 0.8 * total_m - lost_m, HS_CASE_ETCH);
    hs_result r = run(&t);
    NEAR(r.hard.reading.factor, 0.8, 1e-9);
    NEAR(r.hard.depth_m, 0.8 * before.hard.depth_m, 1e-9); /* exact: the ratio of the profile */
    NEAR(r.hard.total_m, 0.8 * before.hard.total_m, 1e-9);
    CHECK(r.dimension[0].may_m < before.dimension[0].may_m);
    NEAR(r.dimension[0].need_m, before.dimension[0].need_m, 10e-6); /* the case is not in need */
}

static void reading__wider_doubt__never_a_wider_window(void) {
    static test_job t;
    test_job_plate(&t, "16MnCr5");
    hs_result before = run(&t);
    double depth_m = before.hard.depth_m - before.scale.lost_m, last_m = INFINITY;
    static const hs_case_way ways[] = {HS_CASE_TRAVERSE, HS_CASE_STEP_FILE, HS_CASE_NOT_SAID};
    for (int i = 0; i < 3; i++) {
        read_case(&t, depth_m, ways[i]);
        hs_result r = run(&t);
        CHECK(r.dimension[0].may_m < last_m);
        last_m = r.dimension[0].may_m;
    }
}

static void reading__absurd__is_asked_back_unless_checked(void) {
    static test_job t;
    static hs_result r;
    test_job_plate(&t, "16MnCr5");
    hs_result before = run(&t);
    double total_m = before.hard.way_m[HS_CASE_ETCH] - before.scale.lost_m;
    double depth_m = before.hard.depth_m - before.scale.lost_m;
    const double absurd[] = {1.51 * total_m, 0.33 * depth_m};
    const double strange[] = {1.49 * total_m, 0.34 * depth_m};
    for (int i = 0; i < 2; i++) {
        hs_error err = {0};
        read_case(&t, absurd[i], HS_CASE_TRAVERSE);
        CHECK(test_job_try(&r, &t.job, &err) == HS_E_DISAGREE);
        CHECK(!strcmp(err.pointer, "/c") && err.help[0]);
        if (i == 0) continue; /* that deep the cases of both sides may meet */
        t.job.measured.case_checked = 1;
        CHECK(test_job_try(&r, &t.job, NULL) == HS_OK);
        NEAR(r.hard.depth_m - r.scale.lost_m, absurd[i], 1e-9);
        read_case(&t, strange[i], HS_CASE_TRAVERSE);
        CHECK(test_job_try(&r, &t.job, NULL) == HS_OK);
    }
}

static void reading__with_sizes__judges_the_bench_and_leaves_the_plan(void) {
    static test_job t;
    test_job_plate(&t, "16MnCr5");
    hs_result before = run(&t);
    double depth_m = 0.9 * before.hard.depth_m;
    read_case(&t, depth_m, HS_CASE_STEP_FILE);
    t.job.measured.dimension[0] = (hs_measured_dimension){.size_given = 1,
                                                          .shape_given = 1,
                                                          .size_m = before.dimension[0].rough_aim_m,
                                                          .crown = -1,
                                                          .pointer = ""};
    hs_result r = run(&t);
    NEAR(r.hard.depth_m, before.hard.depth_m, 1e-12);
    CHECK(!r.hard.reading.plan && r.hard.reading.present);
    NEAR(r.measured.case_m, depth_m, 1e-9); /* exact: same limit, so the reading itself */
    NEAR(r.measured.case_low_m, depth_m - 0.1e-3, 1e-9); /* contract: +-.1 on a test piece */
    t.job.measured.case_way = HS_CASE_FRACTURE;          /* a worse way counts with its own doubt */
    r = run(&t);
    NEAR(r.measured.case_m - r.measured.case_low_m, 0.2e-3, 1e-9);
    t.job.measured.case_m = 0; /* computed: the doubt of the metal lost is in it as well */
    r = run(&t);
    NEAR(r.measured.case_low_m, before.hard.depth_low_m - before.scale.lost_high_m, 1e-9);
}

HS_TEST_MAIN("plan_reading", TEST(reading__as_computed__same_depth_and_less_doubt),
             TEST(reading__faces_quenched_unlike__tell_one_case),
             TEST(reading__shallower__depths_and_may_shrink_in_proportion),
             TEST(reading__wider_doubt__never_a_wider_window),
             TEST(reading__absurd__is_asked_back_unless_checked),
             TEST(reading__with_sizes__judges_the_bench_and_leaves_the_plan))
