#include "hardskin/model/chart.h"
#include "support/check.h"

static double inches(double hours, double fahrenheit) {
    double depth_m = NAN;
    CHECK(hs_chart_total_case(&depth_m, (fahrenheit + 459.67) / 1.8, hours * 3600, NULL) == HS_OK);
    return depth_m / 0.0254;
}

/* published: F. E. Harris 1943, table as reprinted; printed to .001 in, and read off there with
 * the same error once more. */
static void chart__harris__matches_its_table(void) {
    static const double fahrenheit[] = {1500, 1600, 1650, 1700, 1800};
    static const double hours[] = {1, 2, 4, 8, 12, 24};
    static const double table[6][5] = {
        {.012, .018, .021, .025, .034}, {.017, .025, .030, .035, .048},
        {.024, .035, .042, .050, .069}, {.034, .050, .060, .071, .097},
        {.042, .061, .073, .087, .119}, {.059, .086, .103, .122, .168}};
    for (size_t h = 0; h < 6; h++)
        for (size_t f = 0; f < 5; f++)
            NEAR(inches(hours[h], fahrenheit[f]), table[h][f], 0.001);
}

/* practice: 950 C, 8 h at heat gives a little over 2 mm; common practice, no source */
static void chart__a_workshop_soak__gives_about_two_millimetres(void) {
    double depth_m = NAN;
    CHECK(hs_chart_total_case(&depth_m, 950 + 273.15, 8 * 3600, NULL) == HS_OK);
    CHECK(depth_m > 1.9e-3 && depth_m < 2.3e-3);
}

/* own contract: quick.md, ranges: 815 to 983 C, .25 to 48 h */
static void chart__outside__is_refused_and_leaves_the_output(void) {
    double depth_m = 7;
    static const double out[][2] = {{814.9, 8}, {983.1, 8}, {900, 0.249}, {900, 48.1},
                                    {NAN, 8},   {900, NAN}, {700, 8}};
    for (size_t i = 0; i < sizeof out / sizeof *out; i++) {
        hs_error err = {0};
        CHECK(hs_chart_total_case(&depth_m, out[i][0] + 273.15, out[i][1] * 3600, &err) ==
              HS_E_RANGE);
        CHECK(err.message[0] && err.help[0]);
    }
    NEAR(depth_m, 7, 0);
    CHECK(hs_chart_total_case(&depth_m, 815 + 273.15, 0.25 * 3600, NULL) == HS_OK);
    CHECK(hs_chart_total_case(&depth_m, 983 + 273.15, 48 * 3600, NULL) == HS_OK);
}

HS_TEST_MAIN("model chart", TEST(chart__harris__matches_its_table),
             TEST(chart__a_workshop_soak__gives_about_two_millimetres),
             TEST(chart__outside__is_refused_and_leaves_the_output))
