/* Sizes, fits by ISO 286-1, general tolerances by ISO 2768-1. */
#include "hardskin/units/size.h"
#include "support/check.h"

#include <string.h>

static hs_units *units;

typedef struct fit_row {
    double nominal_mm;
    const char *zone;
    int grade;
    double lower_um, upper_um;
} fit_row;

/* published: ISO 286-2 limit deviations as printed in shop tables, from memory, unless another
 * source stands beside the row. Whole micrometres. */
static const fit_row fits[] = {
    /* published: reference sheet distortion-and-stock, section 8, read */
    {25, "H", 7, 0, 21},
    {25, "f", 6, -33, -20},
    {25, "k", 6, 2, 15},
    {20, "h", 7, -21, 0},
    {25, "h", 6, -13, 0},
    {25, "h", 9, -52, 0},
    {50, "H", 8, 0, 39},
    {50, "g", 6, -25, -9},
    {50, "f", 7, -50, -25},
    {50, "e", 8, -89, -50},
    {50, "d", 9, -142, -80},
    {50, "m", 6, 9, 25},
    {50, "n", 6, 17, 33},
    {50, "p", 6, 26, 42},
    {30, "h", 6, -13, 0},
    {30.001, "h", 6, -16, 0},
    {3, "h", 6, -6, 0},
    {3, "k", 6, 0, 6},
    {3, "p", 6, 6, 12},
    {10, "js", 6, -4.5, 4.5},
    {100, "js", 7, -17.5, 17.5},
    {100, "JS", 7, -17.5, 17.5},
    {40, "k", 8, 0, 39},
    {40, "k", 7, 2, 27},
    {25, "k", 3, 0, 4},
    {25, "k", 4, 2, 8},
    {25, "D", 10, 65, 149},
    {25, "E", 9, 40, 92},
    {25, "F", 8, 20, 53},
    {25, "G", 7, 7, 28},
    {25, "K", 7, -15, 6},
    {25, "K", 6, -11, 2},
    {25, "M", 7, -21, 0},
    {25, "N", 7, -28, -7},
    {25, "P", 7, -35, -14},
    {50, "K", 7, -18, 7},
    {50, "M", 7, -25, 0},
    {50, "N", 7, -33, -8},
    {50, "P", 7, -42, -17},
    {100, "N", 7, -45, -10},
    {8, "K", 7, -10, 5},
    {8, "M", 6, -12, -3},
    {2, "N", 7, -14, -4},
    {2, "M", 7, -12, -2},
    {2, "K", 7, -10, 0},
    {25, "K", 8, -23, 10},
    {25, "M", 8, -29, 4},
    {25, "N", 8, -36, -3},
    {300, "M", 6, -41, -9},
    {280, "M", 7, -52, 0},
    {200, "K", 7, -33, 13},
    {500, "H", 7, 0, 63},
    {500, "h", 14, -1550, 0},
    {0.5, "h", 5, -4, 0},
    /* published: DIN 6885 keyways, from memory: width 8: N9 0/-36, P9 -15/-51; width 2: N9 -4/-29
     */
    {8, "N", 9, -36, 0},
    {8, "P", 9, -51, -15},
    {2, "N", 9, -29, -4},
    {25, "P", 9, -74, -22},
    {25, "P", 8, -55, -22},
};

static void size__fits_of_the_standard__come_out_to_the_micrometre(void) {
    for (size_t i = 0; i < sizeof fits / sizeof *fits; i++) {
        const fit_row *f = &fits[i];
        double lower = NAN, upper = NAN;
        CHECK(!hs_fit_limits(&lower, &upper, f->nominal_mm / 1e3, f->zone, f->grade, NULL));
        if (!(fabs(lower * 1e6 - f->lower_um) <= 1e-6))
            printf("%g %s%d\n", f->nominal_mm, f->zone, f->grade);
        NEAR(lower * 1e6, f->lower_um, 1e-6);
        NEAR(upper * 1e6, f->upper_um, 1e-6);
    }
}

/* exact: a hole D to H is the mirror of its shaft; the width is the grade's, whatever the zone */
static void size__holes_and_shafts__mirror_and_share_the_width(void) {
    static const char *const zones[][2] = {{"d", "D"}, {"e", "E"}, {"f", "F"},
                                           {"g", "G"}, {"h", "H"}, {"js", "JS"}};
    static const char *const all[] = {"k", "m", "n", "p", "K", "M", "N", "P"};
    for (double mm = 1; mm <= 500; mm += 7.3)
        for (int grade = 5; grade <= 8; grade++) {
            double a, b, c, d, width;
            CHECK(!hs_fit_limits(&a, &b, mm / 1e3, "h", grade, NULL));
            width = b - a;
            for (size_t z = 0; z < sizeof zones / sizeof *zones; z++) {
                CHECK(!hs_fit_limits(&a, &b, mm / 1e3, zones[z][0], grade, NULL));
                CHECK(!hs_fit_limits(&c, &d, mm / 1e3, zones[z][1], grade, NULL));
                NEAR(c, -b, 1e-15);
                NEAR(d, -a, 1e-15);
                NEAR(b - a, width, 1e-15);
            }
            for (size_t z = 0; z < sizeof all / sizeof *all; z++) {
                CHECK(!hs_fit_limits(&a, &b, mm / 1e3, all[z], grade, NULL));
                NEAR(b - a, width, 1e-15);
            }
        }
}

static void size__classes_that_are_not_held__are_named(void) {
    double a = 5, b = 5;
    hs_error err;
    CHECK(hs_fit_limits(&a, &b, 0.025, "r", 6, &err) == HS_E_WORD && strstr(err.help, "js"));
    CHECK(hs_fit_limits(&a, &b, 0.025, "Js", 6, &err) == HS_E_WORD);
    CHECK(hs_fit_limits(&a, &b, 0.025, "h", 15, &err) == HS_E_WORD);
    CHECK(hs_fit_limits(&a, &b, 0.025, "h", 0, &err) == HS_E_WORD);
    CHECK(hs_fit_limits(&a, &b, 0.5001, "h", 7, &err) == HS_E_RANGE);
    CHECK(hs_fit_limits(&a, &b, 0, "h", 7, &err) == HS_E_RANGE);
    CHECK(hs_fit_limits(&a, &b, NAN, "h", 7, &err) == HS_E_RANGE);
    CHECK(hs_fit_limits(&a, &b, 0.025, "K", 9, &err) == HS_E_RANGE);
    CHECK(hs_fit_limits(&a, &b, 0.025, "M", 9, &err) == HS_E_RANGE);
    CHECK(a == 5 && b == 5);
}

typedef struct size_row {
    const char *text;
    double nominal_mm, lower_mm, upper_mm;
    const char *fit;
} size_row;

/* exact: nominal and deviations as written; fits as above; inches of 25.4 mm */
static const size_row sizes[] = {
    {"20 h7", 20, 19.979, 20, "h7"},
    {"20h7", 20, 19.979, 20, "h7"},
    {" 20 h7 ", 20, 19.979, 20, "h7"},
    {"20 mm h7", 20, 19.979, 20, "h7"},
    {"20mm h7", 20, 19.979, 20, "h7"},
    {"Ø20 h7", 20, 19.979, 20, "h7"},
    {"Ø 20 h7", 20, 19.979, 20, "h7"},
    {"⌀20h7", 20, 19.979, 20, "h7"},
    {"20 H7", 20, 20, 20.021, "H7"},
    {"20 js6", 20, 19.9935, 20.0065, "js6"},
    {"20 JS6", 20, 19.9935, 20.0065, "JS6"},
    {"20 m6", 20, 20.008, 20.021, "m6"},
    {"12.5 h11", 12.5, 12.39, 12.5, "h11"},
    {"25 ±0.02 mm", 25, 24.98, 25.02, ""},
    {"Ø25 ±0.02 mm", 25, 24.98, 25.02, ""},
    {"25 +0.03/-0.01 mm", 25, 24.99, 25.03, ""},
    {"60 -0.05/-0.10 mm", 60, 59.9, 59.95, ""},
    {"60 −0.05/−0.10 mm", 60, 59.9, 59.95, ""},
    {"60 +0/-0.05 mm", 60, 59.95, 60, ""},
    {"60 +0.05 mm", 60, 60, 60.05, ""},
    {"0.7874 ±0.0005 in", 19.99996, 19.98726, 20.01266, ""},
    {"1 +0/-0.001 in", 25.4, 25.3746, 25.4, ""},
    {"1 +0/-1 thou", 0.0254, 0, 0, "refused"}, /* the nominal would be one thou, the low limit 0 */
    {"1 in +0/-1 thou", 25.4, 25.3746, 25.4, ""},
    {"3/4 ±0.001 in", 19.05, 19.0246, 19.0754, ""},
    {"19.97..20.00 mm", 19.985, 19.97, 20, ""},
    {"19.97-20.00 mm", 19.985, 19.97, 20, ""},
};

static void size__texts__give_the_limits(void) {
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
        const size_row *row = &sizes[i];
        hs_size size = {NAN, NAN, NAN, ""};
        hs_error err = {0};
        hs_status status = hs_size_read(&size, units, row->text, &err);
        if (!strcmp(row->fit, "refused")) {
            CHECK(status == HS_E_IMPOSSIBLE && isnan(size.nominal_m));
            continue;
        }
        if (status) printf("'%s': %s\n", row->text, err.message);
        CHECK(status == HS_OK && !strcmp(size.fit, row->fit));
        NEAR(size.nominal_m * 1e3, row->nominal_mm, 1e-12 * row->nominal_mm);
        NEAR(size.lower_m * 1e3, row->lower_mm, 1e-12 * row->nominal_mm);
        NEAR(size.upper_m * 1e3, row->upper_mm, 1e-12 * row->nominal_mm);
    }
}

static void size__bad_texts__say_why(void) {
    static const struct {
        const char *text;
        hs_status status;
        int column;
    } rows[] = {
        {"20 mm", HS_E_NUMBER, 1},
        {"20", HS_E_NO_UNIT, 1},
        {"1 in", HS_E_NUMBER, 1},
        {"20 r6", HS_E_WORD, 4},
        {"20 h15", HS_E_WORD, 4},
        {"20 h0", HS_E_WORD, 4},
        {"20 h07", HS_E_WORD, 4},
        {"600 h7", HS_E_RANGE, 1},
        {"0 h7", HS_E_RANGE, 1},
        {"-20 h7", HS_E_UNIT, 5},
        {"20,5 h7", HS_E_NUMBER, 3},
        {"3/4 in h7", HS_E_UNIT, 8},
        {"20 h7 h8", HS_E_UNIT, 4},
        {"20 H7/h6", HS_E_UNIT, 4},
        {"20 ±0.02", HS_E_NO_UNIT, 6},
        {"20 -0.05 mm", HS_E_AMBIGUOUS, 4},
        {"0.01 ±0.02 mm", HS_E_IMPOSSIBLE, 1},
        {"", HS_E_NUMBER, 1},
        {"20 hh7", HS_E_WORD, 4},
        {"20.00000000000000001 h7", HS_E_NUMBER, 1},
        {"1 1/2 h7", HS_E_UNIT, 7},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        hs_size size = {7, 7, 7, "x"};
        hs_error err = {0};
        hs_status status = hs_size_read(&size, units, rows[i].text, &err);
        if (status != rows[i].status || err.column != rows[i].column)
            printf("'%s': %s at %d: %s\n", rows[i].text, hs_status_code(status), err.column,
                   err.message);
        CHECK(status == rows[i].status && err.column == rows[i].column && err.help[0]);
        CHECK(size.nominal_m == 7 && !strcmp(size.fit, "x"));
    }
}

/* published: ISO 2768-1 table 1 (reference sheet, section 8) */
static void size__general_tolerances__follow_the_ranges(void) {
    static const struct {
        double mm;
        char grade;
        double tolerance_mm;
    } rows[] = {{0.5, 'f', .05}, {3, 'm', .1},   {3.1, 'c', .3},   {6, 'f', .05},
                {6.1, 'm', .2},  {30, 'c', .5},  {30.1, 'f', .15}, {120, 'm', .3},
                {400, 'c', 1.2}, {1000, 'm', .8}};
    double t = NAN;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        CHECK(!hs_size_general(&t, rows[i].mm / 1e3, rows[i].grade, NULL));
        NEAR(t * 1e3, rows[i].tolerance_mm, 1e-12);
    }
    CHECK(hs_size_general(&t, 0.0004, 'm', NULL) == HS_E_RANGE);
    CHECK(hs_size_general(&t, 1.001, 'm', NULL) == HS_E_RANGE);
    CHECK(hs_size_general(&t, 0.1, 'v', NULL) == HS_E_WORD);
}

int main(void) {
    static const hs_test tests[] = {
        TEST(size__fits_of_the_standard__come_out_to_the_micrometre),
        TEST(size__holes_and_shafts__mirror_and_share_the_width),
        TEST(size__classes_that_are_not_held__are_named),
        TEST(size__texts__give_the_limits),
        TEST(size__bad_texts__say_why),
        TEST(size__general_tolerances__follow_the_ranges),
    };
    units = hs_units_new();
    if (!units) return 1;
    int code = hs_tests_run("units_size", tests, sizeof tests / sizeof *tests);
    hs_units_free(units);
    return code;
}
