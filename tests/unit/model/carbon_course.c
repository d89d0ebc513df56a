#include "hardskin/model/carbon_course.h"
#include "support/check.h"

static hs_carbon_end end;
static const hs_diffusivity CONSTANT = {.model = HS_D_CONSTANT, .D0_m2_s = 1.28e-11, .factor = 1};
static const hs_heat_point four_hours[2] = {{0, 1200}, {14400, 1200}};

static hs_heat heat_of(double surface_pct) {
    return (hs_heat){.point = four_hours, .n = 2, .side = {{HS_SIDE_FIXED, surface_pct, 0}}};
}

static hs_carbon_course course_of(const hs_heat *heat, double core_pct, double thickness_m) {
    return (hs_carbon_course){.size_m = thickness_m,
                              .reach_m = hs_carbon_reach(heat, 1, &CONSTANT, 1),
                              .core_pct = core_pct,
                              .heat = heat,
                              .heats = 1,
                              .d = &CONSTANT};
}

/* x with erfc(x / 2 sqrt(Dt)) = share, by bisection */
static double exact_depth(double share) {
    double low = 0, high = 6;
    for (int i = 0; i < 60; i++) {
        double middle = .5 * (low + high);
        if (erfc(middle) > share)
            low = middle;
        else
            high = middle;
    }
    return low * 2 * sqrt(1.28e-11 * 14400);
}

/* exact: erfc; carburising and decarburising; the promise of the header */
static void course__half_space__is_as_good_as_it_says(void) {
    static const double core[2] = {.2, .9}, surface[2] = {.9, .0};
    for (int k = 0; k < 2; k++) {
        hs_heat heat = heat_of(surface[k]);
        hs_carbon_course course = course_of(&heat, core[k], 1);
        hs_carbon_levels levels = {.n = HS_CARBON_LEVELS};
        for (size_t i = 0; i < levels.n; i++)
            levels.carbon_pct[i] = core[k] + .1 * (double)(i + 1) * (surface[k] - core[k]);
        hs_carbon_accuracy accuracy;
        CHECK(hs_carbon_course_refine(&end, &accuracy, &course, &levels, NULL) == HS_OK);
        CHECK(accuracy.cells >= HS_CARBON_CELLS_USUAL && end.mesh.n == accuracy.cells);
        for (size_t i = 0; i < levels.n; i++) {
            double depth = hs_carbon_course_depth(&end, &course, levels.carbon_pct[i]);
            double exact = exact_depth(.1 * (double)(i + 1));
            NEAR(depth, exact, .005 * exact + 1e-6);
            NEAR(depth, exact, accuracy.error_m[i] + 1e-6);
            CHECK(accuracy.error_m[i] > 0);
        }
    }
}

/* exact: nothing above the surface's carbon, all of a wall above its least */
static void course__depth__ends_at_the_faces(void) {
    hs_heat heat = heat_of(.9);
    heat.side[1] = heat.side[0];
    hs_carbon_course course = course_of(&heat, .2, 1e-3);
    course.reach_m = 0;
    CHECK(hs_carbon_course_run(&end, &course, 0, NULL) == HS_OK);
    NEAR(hs_carbon_course_depth(&end, &course, .95), 0, 0);
    NEAR(hs_carbon_course_depth(&end, &course, .3), 1e-3, 0);
    double one = hs_carbon_course_depth(&end, &course, .8);
    CHECK(one > 0 && one < .4e-3);
    course.heats = 0;
    CHECK(hs_carbon_course_run(&end, &course, 30, NULL) == HS_OK);
    NEAR(end.carbon_pct[29], .2, 0);
    NEAR(hs_carbon_course_depth(&end, &course, .3), 0, 0);
    NEAR(end.uptake.gained_pct_m[0], 0, 0);
}

/* exact: carbon gained in several heats adds up to what the section holds more */
static void course__several_heats__add_their_gains(void) {
    hs_heat heats[3] = {heat_of(.9), heat_of(.9), heat_of(.9)};
    heats[1].side[0].kind = HS_SIDE_CLOSED;
    hs_carbon_course course = course_of(heats, .2, 4e-3);
    course.heats = 3;
    course.shape = HS_CYLINDER;
    course.reach_m = 0;
    CHECK(hs_carbon_course_run(&end, &course, 60, NULL) == HS_OK);
    double content = hs_carbon_content(&end.mesh, end.carbon_pct);
    NEAR(content - .2 * 2e-3, end.uptake.gained_pct_m[0], 1e-15);
    CHECK(end.uptake.gained_pct_m[0] > 3e-4);
}

static void course__what_cannot_be__is_refused(void) {
    hs_heat heat = heat_of(.9);
    hs_carbon_course course = course_of(&heat, .2, 0);
    hs_carbon_levels levels = hs_carbon_levels_usual(.2, .9);
    hs_carbon_accuracy accuracy = {.cells = 7};
    NEAR(levels.carbon_pct[0], .27, 1e-12);
    NEAR(levels.carbon_pct[7], .83, 1e-12);
    CHECK(hs_carbon_course_refine(&end, &accuracy, &course, &levels, NULL) == HS_E_IMPOSSIBLE);
    course.size_m = 1;
    CHECK(hs_carbon_course_run(&end, &course, HS_CARBON_CELLS + 1, NULL) == HS_E_TOO_LARGE);
    heat.side[0].carbon_pct = -1;
    CHECK(hs_carbon_course_refine(&end, &accuracy, &course, &levels, NULL) == HS_E_IMPOSSIBLE);
    CHECK(accuracy.cells == 7);
}

/* exact: C after a second hold on what is left f of the first: the surface's own erfc, and f above
 * the surface's carbon carried on by the images of the half space. */
static double twice(double depth_m, double cut_m, double stretch, double core, double surface) {
    enum { STEPS = 20000 };
    const double spread = 1.28e-11 * 14400, end_m = 6e-3, h = end_m / STEPS;
    double sum = 0;
    for (int i = 0; i <= STEPS; i++) { /* Simpson over the left profile, less the core */
        double at = i * h, weight = i == 0 || i == STEPS ? 1 : i % 2 ? 4 : 2;
        double f = (surface - core) * erfc((at + cut_m) / stretch / (2 * sqrt(spread)));
        double near = depth_m - at, image = depth_m + at;
        sum += weight * f * (exp(-near * near / (4 * spread)) - exp(-image * image / (4 * spread)));
    }
    sum *= h / 3 / sqrt(4 * acos(-1) * spread);
    return core + sum + (surface - core) * erfc(depth_m / (2 * sqrt(spread)));
}

/* Two holds of four hours; between them a layer comes off, and what was there is drawn out. */
static void course__cut_between_two_holds__is_the_half_space(void) {
    static const double cut_m[] = {0, .15e-3, .4e-3, .15e-3}, stretch[] = {1, 1, 1, .8};
    hs_heat heat[2] = {heat_of(.9), heat_of(.9)};
    for (int k = 0; k < 4; k++) {
        hs_carbon_course course = course_of(heat, .2, 1);
        course.heats = 2;
        course.reach_m = 6e-3;
        course.left = (hs_carbon_left){1, cut_m[k], stretch[k], NULL};
        CHECK(hs_carbon_course_run(&end, &course, 192, NULL) == HS_OK);
        for (double depth_m = .1e-3; depth_m < 2.2e-3; depth_m += .3e-3) {
            double carbon_pct =
                hs_carbon_at(&end.mesh, end.carbon_pct, end.uptake.surface_pct, depth_m);
            NEAR(carbon_pct, twice(depth_m, cut_m[k], stretch[k], .2, .9), 5e-4);
        }
    }
}

/* exact: nothing cut, nothing drawn out: the same numbers as without; cut after the last heat: the
 * erfc from there on, its surface with it */
static void course__cut_of_nothing__changes_nothing(void) {
    hs_heat heat[2] = {heat_of(.9), heat_of(.9)};
    hs_carbon_course course = course_of(heat, .2, 1);
    course.heats = 2;
    CHECK(hs_carbon_course_run(&end, &course, 48, NULL) == HS_OK);
    double before = hs_carbon_course_depth(&end, &course, .4);
    course.left = (hs_carbon_left){1, 0, 1, &CONSTANT};
    CHECK(hs_carbon_course_run(&end, &course, 48, NULL) == HS_OK);
    NEAR(hs_carbon_course_depth(&end, &course, .4), before, 1e-15);
    course.heats = 1;
    course.left.cut_m = .3e-3;
    CHECK(hs_carbon_course_run(&end, &course, 192, NULL) == HS_OK);
    double length_m = 2 * sqrt(1.28e-11 * 14400);
    NEAR(end.uptake.surface_pct[0], .2 + .7 * erfc(.3e-3 / length_m), 1e-3);
    NEAR(hs_carbon_course_depth(&end, &course, .2 + .7 * .2), exact_depth(.2) - .3e-3, 2e-6);
}

/* exact by symmetry: a wall that carbon enters from both sides loses the same on both */
static void course__cut_wall__is_alike_from_both_sides(void) {
    hs_heat heat[2] = {heat_of(.9), heat_of(.9)};
    for (int k = 0; k < 2; k++)
        heat[k].side[1] = heat[k].side[0];
    hs_carbon_course course = course_of(heat, .2, 4e-3);
    course.heats = 2;
    course.reach_m = 0;
    course.left = (hs_carbon_left){1, .2e-3, 1, NULL};
    CHECK(hs_carbon_course_run(&end, &course, 96, NULL) == HS_OK);
    for (size_t i = 0; i < end.mesh.n; i++)
        NEAR(end.carbon_pct[i], end.carbon_pct[end.mesh.n - 1 - i], 1e-9);
}

HS_TEST_MAIN("model carbon_course", TEST(course__half_space__is_as_good_as_it_says),
             TEST(course__depth__ends_at_the_faces), TEST(course__several_heats__add_their_gains),
             TEST(course__what_cannot_be__is_refused),
             TEST(course__cut_between_two_holds__is_the_half_space),
             TEST(course__cut_of_nothing__changes_nothing),
             TEST(course__cut_wall__is_alike_from_both_sides))
