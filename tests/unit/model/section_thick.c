/* Thickest and thinnest walls: circles and ways across by hand. */
#include "hardskin/model/section.h"
#include "support/check.h"
#include "support/outline.h"

#include <math.h>

/* thick_m is found to a thousandth and never too large. */
static const double CLOSE = 1e-3;

static void expect_mm(const hs_section *section, double thick_mm, double thin_mm) {
    double thick_m = NAN, thin_m = NAN;
    CHECK(hs_section_thickness(&thick_m, &thin_m, section, NULL) == HS_OK);
    NEAR(thick_m * 1e3, thick_mm * (1 - CLOSE / 2), thick_mm * CLOSE / 2 * (1 + 1e-9));
    NEAR(thin_m * 1e3, thin_mm, thin_mm == thick_mm ? thick_mm * CLOSE : 1e-9);
}

static void expect_outline(const double *mm, size_t n, double thick_mm, double thin_mm) {
    hs_point point[2][16];
    for (size_t i = 0; i < n; i++) {
        point[0][i] = (hs_point){mm[2 * i] / 1000, mm[2 * i + 1] / 1000};
        point[1][n - 1 - i] = point[0][i];
    }
    for (int turn = 0; turn < 2; turn++) { /* either sense of rotation */
        hs_section section = {{point[turn], n}, NULL, 0};
        expect_mm(&section, thick_mm, thin_mm);
    }
}

static void thickness__solid_sections__are_one_wall(void) {
    static const double rectangle[] = {0, 0, 60, 0, 60, 20, 0, 20};
    static const double square[] = {0, 0, 20, 0, 20, 20, 0, 20};
    static const double chamfered[] = {1, 0, 39, 0, 40, 1, 40, 19, 39, 20, 1, 20, 0, 19, 0, 1};
    expect_outline(rectangle, 4, 20, 20); /* exact: all three */
    expect_outline(square, 4, 20, 20);
    expect_outline(chamfered, 8, 20, 20); /* its chamfers are edges, no walls */
}

/* A circle of radius r that touches both outer sides and an inner corner (a, b) away from them:
 * (a - r)^2 + (b - r)^2 = r^2. */
static double corner_circle(double a, double b) {
    return 2 * (a + b - sqrt(2 * a * b));
}

static void thickness__branched_sections__are_thick_where_walls_meet(void) {
    static const double L[] = {0, 0, 60, 0, 60, 8, 8, 8, 8, 40, 0, 40};
    static const double U[] = {0, 0, 60, 0, 60, 40, 50, 40, 50, 10, 10, 10, 10, 40, 0, 40};
    static const double heavy_U[] = {0, 0, 60, 0, 60, 60, 50, 60, 50, 30, 10, 30, 10, 60, 0, 60};
    static const double T[] = {0, 0, 60, 0, 60, 10, 35, 10, 35, 50, 25, 50, 25, 10, 0, 10};
    expect_outline(L, 6, corner_circle(8, 8), 8);           /* exact: 9.373 */
    expect_outline(U, 8, corner_circle(10, 10), 10);        /* exact: 11.716 */
    expect_outline(heavy_U, 8, 30, 10);                     /* exact: the web's own 30, ratio 3 */
    expect_outline(T, 8, 2 * (10 * 10 + 5 * 5) / 20.0, 10); /* exact: (10 - r)^2 + 25 = r^2 */
}

static void thickness__holes__leave_webs(void) {
    hs_point outer[] = {{0, 0}, {.04, 0}, {.04, .02}, {0, .02}};
    hs_point square[] = {{.01, .005}, {.03, .005}, {.03, .015}, {.01, .015}};
    hs_point left[] = {{.006, .01}, {.01, .006}, {.014, .01}, {.01, .014}};
    hs_point right[] = {{.017, .01}, {.021, .006}, {.025, .01}, {.021, .014}};
    hs_outline one = {square, 4}, two[] = {{left, 4}, {right, 4}};
    hs_section section = {{outer, 4}, &one, 1};
    expect_mm(&section, 10, 5); /* exact: ends 10 wide, webs 5; ratio 2 */
    section.holes = two;
    section.n_holes = 2;
    double thick_m = NAN, thin_m = NAN;
    CHECK(hs_section_thickness(&thick_m, &thin_m, &section, NULL) == HS_OK);
    NEAR(thin_m, .003, 1e-12); /* exact: point to point, 17 - 14 */
}

static void thickness__random_sections__keep_it_when_moved(void) {
    test_section a, b;
    for (uint32_t i = 0; i < 400; i++) {
        test_section_random(&a, i, .03, 1);
        test_section_moved(&b, &a, i % 3 ? 2 : -2, 2, .37 * i, .3, -.2);
        double thick_a = NAN, thin_a = NAN, thick_b = NAN, thin_b = NAN;
        CHECK(hs_section_thickness(&thick_a, &thin_a, &a.section, NULL) == HS_OK);
        CHECK(hs_section_thickness(&thick_b, &thin_b, &b.section, NULL) == HS_OK);
        NEAR(thick_b / thick_a, 2, 2 * 1.1 * CLOSE);
        NEAR(thin_b / thin_a, 2, 2 * 1.1 * CLOSE); /* the circle's doubt where it is the thinnest */
        CHECK(thin_a > 0 && thin_a <= thick_a);
        hs_section_properties p = {0};
        CHECK(hs_section_measure(&p, &a.section, NULL) == HS_OK);
        /* exact: the circle lies inside; area <= perimeter x radius of the largest circle */
        CHECK(thick_a * thick_a * .785398 <= p.area_m2);
        CHECK(thick_a * (1 + CLOSE) >= 2 * p.cooling_size_m);
    }
}

static void thickness__sections_that_are_none__are_refused(void) {
    hs_point tie[] = {{0, 0}, {.01, .01}, {.01, 0}, {0, .01}};
    hs_section section = {{tie, 4}, NULL, 0};
    double thick_m = 1, thin_m = 1;
    CHECK(hs_section_thickness(&thick_m, &thin_m, &section, NULL) == HS_E_OUTLINE);
    CHECK(thick_m == 1 && thin_m == 1);
}

HS_TEST_MAIN("model_section_thick", TEST(thickness__solid_sections__are_one_wall),
             TEST(thickness__branched_sections__are_thick_where_walls_meet),
             TEST(thickness__holes__leave_webs),
             TEST(thickness__random_sections__keep_it_when_moved),
             TEST(thickness__sections_that_are_none__are_refused))
