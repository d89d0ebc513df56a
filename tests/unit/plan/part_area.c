#include "plan/descale.h"
#include "support/check.h"

static const double PI = 3.14159265358979323846;

static void part__area__is_that_of_the_form(void) {
    /* exact: closed forms */
    double a;
    hs_part part = {.form = HS_PLATE, .length_m = 3, .width_m = 2, .thickness_m = 1};
    CHECK(hs_part_area(&a, &part, NULL) == HS_OK);
    NEAR(a, 22, 1e-12);
    NEAR(hs_part_largest(&part), 3, 0);
    part = (hs_part){.form = HS_BAR, .length_m = 2, .diameter_m = 1};
    CHECK(hs_part_area(&a, &part, NULL) == HS_OK);
    NEAR(a, 2.5 * PI, 1e-9);
    part = (hs_part){.form = HS_RING, .length_m = 1, .outside_m = 2, .bore_m = 1};
    CHECK(hs_part_area(&a, &part, NULL) == HS_OK);
    NEAR(a, 4.5 * PI, 1e-9); /* walls 3 pi, ends 2 x .75 pi */
    NEAR(hs_part_largest(&part), 2, 0);
    hs_point square[] = {{0, 0}, {4, 0}, {4, 1}, {0, 1}};
    part = (hs_part){.form = HS_PROFILE, .length_m = 3, .section = {.outline = {square, 4}}};
    CHECK(hs_part_area(&a, &part, NULL) == HS_OK);
    NEAR(a, 38, 1e-9);
    NEAR(hs_part_largest(&part), 4, 0);
    part.length_m = 0;
    part.form = HS_BAR;
    CHECK(hs_part_area(&a, &part, NULL) == HS_E_IMPOSSIBLE);
}

HS_TEST_MAIN("part area", TEST(part__area__is_that_of_the_form))
