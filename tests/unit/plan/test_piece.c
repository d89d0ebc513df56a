#include "plan/test_piece.h"

#include "support/check.h"

#include <string.h>

static hs_job plate_job(void) {
    return (hs_job){.part = {.steel = {.name = "C15E"},
                             .form = HS_PLATE,
                             .length_m = .3,
                             .width_m = .06,
                             .thickness_m = .018,
                             .quantity = 1}};
}

static hs_result hard(void) {
    hs_result r = {.hard = {.present = 1, .depth_m = 1.2e-3, .depth_low_m = 1.0e-3}};
    r.scale.lost_m = .02e-3;
    r.scale.lost_high_m = .03e-3;
    return r;
}

static void test_piece__not_in_the_sheet__is_advised_as_thick_as_the_part(void) {
    hs_job job = plate_job();
    hs_result r = hard();
    hs_result_test_piece t;
    hs_test_piece_plan(&t, &job, &r);
    CHECK(!t.stated);
    NEAR(t.diameter_m, .018, 1e-12);
    NEAR(t.length_m, .054, 1e-12);
    CHECK(strstr(t.place, "beside the part") && strstr(t.text, "C15E"));
    job.part.thickness_m = .004;
    hs_test_piece_plan(&t, &job, &r);
    NEAR(t.diameter_m, .010, 1e-12);
    job.part.thickness_m = .05;
    job.part.quantity = 3;
    hs_test_piece_plan(&t, &job, &r);
    NEAR(t.diameter_m, .025, 1e-12);
    CHECK(strstr(t.place, "between the parts") != NULL);
    job.inch_first = 1; /* exact: .984 in to the next eighth */
    hs_test_piece_plan(&t, &job, &r);
    NEAR(t.diameter_m, .0254, 1e-12);
}

static void test_piece__of_the_sheet__is_kept(void) {
    hs_job job = plate_job();
    job.test_piece = (hs_test_piece){1, .012, .04, "box centre"};
    hs_result r = hard();
    hs_result_test_piece t;
    hs_test_piece_plan(&t, &job, &r);
    CHECK(t.stated && !strcmp(t.place, "box centre"));
    NEAR(t.diameter_m, .012, 1e-12);
    NEAR(t.length_m, .04, 1e-12);
}

static void test_piece__depth_expected__counts_from_the_hardened_surface(void) {
    /* exact: the scale's metal is gone from the piece as well: x - m (windows page, section 5) */
    hs_job job = plate_job();
    hs_result r = hard();
    hs_result_test_piece t;
    hs_test_piece_plan(&t, &job, &r);
    NEAR(t.case_expected_m, 1.18e-3, 1e-12);
    NEAR(t.case_low_m, .97e-3, 1e-12);
    r.hard.present = 0;
    hs_test_piece_plan(&t, &job, &r);
    CHECK(isnan(t.case_expected_m) && isnan(t.case_low_m) && t.text[0] && t.ways == 0);
}

static void test_piece__each_way__reads_its_own_depth_from_the_hardened_surface(void) {
    hs_job job = plate_job();
    hs_result r = hard();
    const double ways[HS_CASE_WAYS] = {1.2e-3, 1.2e-3, 1.7e-3, 1.25e-3, 0};
    memcpy(r.hard.way_m, ways, sizeof ways);
    r.hard.file_HRC[0] = 50;
    r.hard.file_HRC[1] = 55;
    r.hard.file_m[0] = 1.32e-3;
    r.hard.file_m[1] = 1.10e-3;
    hs_result_test_piece t;
    hs_test_piece_plan(&t, &job, &r);
    CHECK(t.ways == 3); /* a way that would find nothing is not offered */
    CHECK(t.way[0].way == HS_CASE_STEP_FILE && t.way[1].way == HS_CASE_ETCH &&
          t.way[2].way == HS_CASE_FRACTURE);
    NEAR(t.way[0].expected_m, 1.18e-3, 1e-12); /* exact: less the .02 of scale */
    NEAR(t.way[1].expected_m, 1.68e-3, 1e-12);
    NEAR(t.way[2].expected_m, 1.23e-3, 1e-12);
    CHECK(strstr(t.way[0].text, "about 14") != NULL); /* 1.18 mm in steps of .1, two beyond */
    CHECK(strstr(t.way[0].text, "55 HRC is to bite from 1.080 mm") != NULL);
    CHECK(strstr(t.way[0].text, "50 HRC is to bite from 1.300 mm") != NULL);
    CHECK(strstr(t.way[1].text, "nital") != NULL);
}

HS_TEST_MAIN("test_piece", TEST(test_piece__not_in_the_sheet__is_advised_as_thick_as_the_part),
             TEST(test_piece__of_the_sheet__is_kept),
             TEST(test_piece__depth_expected__counts_from_the_hardened_surface),
             TEST(test_piece__each_way__reads_its_own_depth_from_the_hardened_surface))
