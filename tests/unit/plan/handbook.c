#include "plan/handbook.h"
#include "support/check.h"

#include <string.h>

static const double TIGHT = 1e-12;

static void handbook__round__spot_values(void) {
    /* published: handbook table of grinding allowances, on diameter, from memory */
    NEAR(hs_handbook_round_m(30e-3, 0.2), 0.2e-3, TIGHT);    /* 18-30, to 250: .4 */
    NEAR(hs_handbook_round_m(30.1e-3, 0.3), 0.25e-3, TIGHT); /* 30-50, to 500: .5 */
    NEAR(hs_handbook_round_m(9e-3, 0.05), 0.15e-3, TIGHT);
    NEAR(hs_handbook_round_m(180e-3, 2.0), 0.5e-3, TIGHT);
    CHECK(isnan(hs_handbook_round_m(9e-3, 0.6))); /* empty cell */
    CHECK(isnan(hs_handbook_round_m(181e-3, 0.6)));
    CHECK(isnan(hs_handbook_round_m(30e-3, 2.1)));
    /* independent: a standard by diameter alone (30-50: .4, 50-120: .5) agrees to .1 mm */
    NEAR(2 * hs_handbook_round_m(40e-3, 0.3), 0.4e-3, 0.1e-3 + TIGHT);
    NEAR(2 * hs_handbook_round_m(100e-3, 0.3), 0.5e-3, 0.1e-3 + TIGHT);
}

static void handbook__plane__spot_values(void) {
    /* published: handbook table of planes per side, x 1.2 heat-treated, from memory */
    NEAR(hs_handbook_plane_m(60e-3, 0.3, 0), 0.36e-3, TIGHT);
    NEAR(hs_handbook_plane_m(250e-3, 0.5, 0), 0.60e-3, TIGHT);
    NEAR(hs_handbook_plane_m(60e-3, 0.3, 1), 0.20e-3, TIGHT);
    CHECK(isnan(hs_handbook_plane_m(400e-3, 0.3, 0)));
    CHECK(isnan(hs_handbook_plane_m(60e-3, 2.5, 0)));
}

typedef struct bench {
    hs_job job;
    hs_dimension dimension[1];
    hs_face face[2];
    hs_result *result;
    hs_handbook out;
} bench;

static hs_result result; /* large: not on the stack */

static void plate(bench *b, double need_m, double may_m, hs_verdict verdict) {
    memset(b, 0, sizeof *b);
    memset(&result, 0, sizeof result);
    b->face[0] = (hs_face){.name = "top", .finish = HS_GROUND, .case_m = 0.6e-3};
    b->face[1] = (hs_face){.name = "bottom", .finish = HS_GROUND, .case_m = 0.6e-3};
    b->dimension[0] = (hs_dimension){.name = "thickness",
                                     .across = HS_ACROSS_FACES,
                                     .size = {20e-3, 19.979e-3, 20e-3, "h7"},
                                     .face = {0, 1}};
    b->job =
        (hs_job){.part = {.form = HS_PLATE, .length_m = 0.3, .width_m = 0.06, .thickness_m = 0.02},
                 .dimensions = 1,
                 .faces = 2};
    b->result = &result;
    result.hard.present = 1;
    result.hard.depth_m = 1.2e-3;
    result.dimension[0].need_m = need_m;
    result.dimension[0].may_m = may_m;
    result.dimension[0].verdict = verdict;
}

static void look(bench *b) {
    b->job.dimension = b->dimension;
    b->job.face = b->face;
    hs_handbook_compare(&b->out, &b->job, b->result, 0);
}

static void handbook__thin_case__collision_is_said(void) {
    bench b;
    plate(&b, 0.15e-3, 0.25e-3, HS_GO);
    look(&b);
    CHECK(b.out.present && !b.out.governs);
    NEAR(b.out.value_m, 0.36e-3, TIGHT);
    CHECK(strstr(b.out.why, "0.110 mm too deep") != NULL);
    CHECK(strstr(b.out.why, "30 %") != NULL); /* .36 of 1.2 */
}

static void handbook__each_case__says_which_governs(void) {
    bench b;
    plate(&b, 0.40e-3, 0.60e-3, HS_GO);
    look(&b);
    CHECK(!b.out.governs && strstr(b.out.why, "0.040 mm short") != NULL);
    plate(&b, 0.30e-3, 0.60e-3, HS_GO);
    look(&b);
    CHECK(!b.out.governs && strstr(b.out.why, "both fit") != NULL);
    plate(&b, 0.30e-3, 0.20e-3, HS_STOP);
    look(&b);
    CHECK(!b.out.governs && strstr(b.out.why, "shut") != NULL);
    plate(&b, 0.30e-3, 0.60e-3, HS_GO);
    b.face[0].case_m = b.face[1].case_m = 0;
    look(&b);
    CHECK(b.out.governs && strstr(b.out.why, "table governs") != NULL);
}

/* exact: one ground face carries the whole stock, need .30 to may .40, told as .15 and .20 */
static void handbook__one_ground_face__is_compared_with_all_of_it(void) {
    bench b;
    plate(&b, 0.15e-3, 0.20e-3, HS_GO);
    b.face[1].finish = HS_AS_HARDENED;
    look(&b);
    NEAR(b.out.value_m, 0.36e-3, TIGHT);
    CHECK(strstr(b.out.why, "both fit") != NULL);
    plate(&b, 0.10e-3, 0.15e-3, HS_GO);
    b.face[1].finish = HS_AS_HARDENED;
    look(&b);
    CHECK(strstr(b.out.why, "0.060 mm too deep") != NULL);
}

static void handbook__no_row__not_present(void) {
    bench b;
    plate(&b, 0.2e-3, 0.6e-3, HS_GO);
    b.dimension[0].across = HS_ACROSS_BORE;
    look(&b);
    CHECK(!b.out.present && !b.out.source[0]);
    plate(&b, 0.2e-3, 0.6e-3, HS_GO);
    b.face[0].finish = b.face[1].finish = HS_AS_HARDENED;
    look(&b);
    CHECK(!b.out.present);
}

static double plane_of(bench *b, const char *face, size_t edge) {
    b->face[0].name = b->face[1].name = face;
    b->face[0].edge = b->face[1].edge = edge;
    look(b);
    return b->out.present ? b->out.value_m : NAN;
}

static void handbook__each_face__by_its_own_length_and_width(void) {
    /* published: as above; 350 x 120 x 50 mm */
    bench b;
    plate(&b, 0.3e-3, 0.9e-3, HS_GO);
    b.job.part.length_m = 0.35;
    b.job.part.width_m = 0.12;
    b.job.part.thickness_m = 0.05;
    NEAR(plane_of(&b, "top", 0), 0.60e-3, TIGHT);
    NEAR(plane_of(&b, "bottom", 0), 0.60e-3, TIGHT);
    NEAR(plane_of(&b, "front", 0), 0.48e-3, TIGHT);
    NEAR(plane_of(&b, "left", 0), 0.36e-3, TIGHT);
    NEAR(plane_of(&b, "right", 0), 0.36e-3, TIGHT);
    static const hs_point corner[3] = {{0.05, 0.05}, {0.10, 0.09}, {0.06, 0.20}};
    b.job.part.form = HS_PROFILE; /* edges of 64, 117 and 150 mm */
    b.job.part.section.outline = (hs_outline){corner, 3};
    NEAR(plane_of(&b, "way", 1), 0.48e-3, TIGHT);
    NEAR(plane_of(&b, "way", 2), 0.60e-3, TIGHT);
    NEAR(plane_of(&b, "way", 3), 0.60e-3, TIGHT);
    CHECK(isnan(plane_of(&b, "way", 0)) && isnan(plane_of(&b, "way", 4)));
}

static void handbook__round_parts__bars_only(void) {
    bench b;
    plate(&b, 0.1e-3, 0.9e-3, HS_GO);
    b.dimension[0].across = HS_ACROSS_OUTSIDE;
    b.job.part.form = HS_BAR;
    look(&b);
    CHECK(b.out.present);
    NEAR(b.out.value_m, 0.2e-3, TIGHT); /* 18-30, to 500: .4 on diameter */
    b.job.part.form = HS_RING;
    look(&b);
    CHECK(!b.out.present);
}

static void handbook__text__rounds_up_what_is_missing(void) {
    bench b;
    for (int k = 0; k < 2; k++) {              /* one ground face is enough */
        plate(&b, 0.18025e-3, 0.30e-3, HS_GO); /* half the sum */
        b.face[k].finish = HS_AS_HARDENED;
        look(&b);
        CHECK(b.out.present && strstr(b.out.why, "0.001 mm short"));
        CHECK(strchr(b.out.why, '%') == NULL);
    }
    plate(&b, 0.1e-3, 0.3595e-3, HS_GO);
    result.hard.present = 0;
    look(&b);
    CHECK(strstr(b.out.why, "0.001 mm too deep") && strchr(b.out.why, '%') == NULL);
}

HS_TEST_MAIN("plan_handbook", TEST(handbook__round__spot_values),
             TEST(handbook__plane__spot_values), TEST(handbook__thin_case__collision_is_said),
             TEST(handbook__each_case__says_which_governs),
             TEST(handbook__one_ground_face__is_compared_with_all_of_it),
             TEST(handbook__no_row__not_present),
             TEST(handbook__each_face__by_its_own_length_and_width),
             TEST(handbook__round_parts__bars_only),
             TEST(handbook__text__rounds_up_what_is_missing))
