#include "hardskin/units/format.h"
#include "hardskin/units/quantity.h"
#include "support/check.h"

#include <string.h>

static hs_units *units;

static int mm(double length_m, int decimals, hs_round direction, const char *expected) {
    char text[48];
    size_t n = hs_format_mm(text, sizeof text, length_m, decimals, direction);
    int good = !strcmp(text, expected) && n == strlen(expected);
    if (!good) printf("%.17g: '%s', expected '%s'\n", length_m, text, expected);
    return good;
}

/* exact: decimal arithmetic done by hand */
static void format__safe_side__is_kept_and_noise_is_not_a_digit(void) {
    CHECK(mm(0.02055, 3, HS_UP, "20.550 mm") && mm(0.02055, 3, HS_DOWN, "20.550 mm"));
    CHECK(mm(0.020549999999999997, 3, HS_UP, "20.550 mm"));
    CHECK(mm(0.020549999999999997, 3, HS_DOWN, "20.550 mm"));
    CHECK(mm(0.020550000000000004, 3, HS_UP, "20.550 mm"));
    CHECK(mm(0.0205501, 3, HS_UP, "20.551 mm") && mm(0.0205501, 3, HS_DOWN, "20.550 mm"));
    CHECK(mm(0.0205499, 3, HS_UP, "20.550 mm") && mm(0.0205499, 3, HS_DOWN, "20.549 mm"));
    CHECK(mm(-0.0000014, 3, HS_UP, "-0.001 mm") && mm(-0.0000014, 3, HS_DOWN, "-0.002 mm"));
    CHECK(mm(-0.0000001, 3, HS_UP, "0.000 mm") && mm(-0.0000001, 3, HS_NEAREST, "0.000 mm"));
    CHECK(mm(0.0000005, 3, HS_NEAREST, "0.001 mm") && mm(1.0045e-3, 3, HS_NEAREST, "1.005 mm"));
    CHECK(mm(0.3, 0, HS_NEAREST, "300 mm") && mm(0, 2, HS_UP, "0.00 mm"));
    CHECK(mm(NAN, 3, HS_UP, "") && mm(INFINITY, 3, HS_UP, ""));
    CHECK(isnan(hs_round_to(NAN, 2, HS_UP)));
}

static void format__every_micrometre__survives_both_directions(void) {
    for (int i = 0; i <= 60000; i++) {
        double length_m = 0.015 + i * 1e-6; /* sums and products carry noise on purpose */
        double up = hs_round_to(length_m * 1e3, 3, HS_UP);
        double down = hs_round_to(length_m * 1e3, 3, HS_DOWN);
        NEAR(up, 15 + i / 1000.0, 1e-9);
        NEAR(down, up, 0);
    }
}

static void format__round_trip__loses_nothing_that_was_printed(void) {
    char text[48];
    for (int n = 1; n <= 24 * 64; n++) {
        hs_quantity q = {.value = NAN};
        double length_m = 0.0254 * n / 64;
        CHECK(hs_format_inch_fraction(text, sizeof text, length_m) > 0);
        CHECK(!hs_quantity_read(&q, units, text, HS_LENGTH, NULL));
        NEAR(q.value, length_m, 4e-16 * length_m);
        CHECK(hs_format_inch(text, sizeof text, length_m, 6, HS_UP) > 0);
        CHECK(!hs_quantity_read(&q, units, text, HS_LENGTH, NULL));
        NEAR(q.value, length_m, 4e-16 * length_m);
    }
    for (int min = 0; min < 3000; min += 7) {
        hs_quantity q = {.value = NAN};
        CHECK(hs_format_time(text, sizeof text, 60.0 * min, HS_NEAREST) > 0);
        CHECK(!hs_quantity_read(&q, units, text, HS_TIME, NULL));
        NEAR(q.value, 60.0 * min, 1e-9);
    }
    for (int C = -40; C < 1300; C += 3) {
        hs_quantity q = {.value = NAN};
        CHECK(hs_format_celsius(text, sizeof text, C + 273.15, 0) > 0);
        CHECK(!hs_quantity_read(&q, units, text, HS_TEMPERATURE, NULL));
        NEAR(q.value, C + 273.15, 1e-9);
        CHECK(hs_format_fahrenheit(text, sizeof text, C + 273.15, 1) > 0);
        CHECK(!hs_quantity_read(&q, units, text, HS_TEMPERATURE, NULL));
        NEAR(q.value, C + 273.15, 0.05 * 5 / 9 + 1e-9); /* half of the last place printed */
    }
}

static void format__words__are_those_of_the_trade(void) {
    char text[48];
    hs_format_time(text, sizeof text, 5400, HS_NEAREST);
    CHECK(!strcmp(text, "1 h 30 min"));
    hs_format_time(text, sizeof text, 7200, HS_NEAREST);
    CHECK(!strcmp(text, "2 h"));
    hs_format_time(text, sizeof text, 1200, HS_NEAREST);
    CHECK(!strcmp(text, "20 min"));
    hs_format_time(text, sizeof text, 45, HS_NEAREST);
    CHECK(!strcmp(text, "45 s"));
    hs_format_time(text, sizeof text, 3599, HS_NEAREST);
    CHECK(!strcmp(text, "1 h"));
    hs_format_time(text, sizeof text, 3601, HS_UP);
    CHECK(!strcmp(text, "1 h 1 min"));
    CHECK(hs_format_time(text, sizeof text, -1, HS_UP) == 0 && !text[0]);
    CHECK(hs_format_time(text, sizeof text, NAN, HS_UP) == 0 && !text[0]);
    hs_format_celsius(text, sizeof text, 1198.15, 0);
    CHECK(!strcmp(text, "925 C"));
    hs_format_fahrenheit(text, sizeof text, 1198.15, 0);
    CHECK(!strcmp(text, "1697 F")); /* exact: 925 x 9/5 + 32 */
    hs_format_inch_fraction(text, sizeof text, 0.0381);
    CHECK(!strcmp(text, "1 1/2 in"));
    hs_format_inch_fraction(text, sizeof text, 0.0508);
    CHECK(!strcmp(text, "2 in"));
    CHECK(hs_format_inch_fraction(text, sizeof text, 0.0382) == 0 && !text[0]);
    CHECK(hs_format_inch(text, sizeof text, 0.02055, 4, HS_UP) && !strcmp(text, "0.8091 in"));
    CHECK(hs_format_inch(text, sizeof text, 0.02055, 4, HS_DOWN) && !strcmp(text, "0.8090 in"));
}

static void format__no_room__leaves_nothing(void) {
    char text[8] = "x";
    CHECK(hs_format_mm(text, sizeof text, 0.02055, 3, HS_UP) == 0 && !text[0]);
    CHECK(hs_format_number(text, 6, 20.55, 2, HS_UP) == 5 && !strcmp(text, "20.55"));
    CHECK(hs_format_number(text, 5, 20.55, 2, HS_UP) == 0 && !text[0]);
    CHECK(hs_format_number(text, 0, 20.55, 2, HS_UP) == 0);
}

int main(void) {
    static const hs_test tests[] = {
        TEST(format__safe_side__is_kept_and_noise_is_not_a_digit),
        TEST(format__every_micrometre__survives_both_directions),
        TEST(format__round_trip__loses_nothing_that_was_printed),
        TEST(format__words__are_those_of_the_trade),
        TEST(format__no_room__leaves_nothing),
    };
    units = hs_units_new();
    if (!units) return 1;
    int code = hs_tests_run("units_format", tests, sizeof tests / sizeof *tests);
    hs_units_free(units);
    return code;
}
