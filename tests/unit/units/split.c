#include "hardskin/units/split.h"
#include "support/check.h"

#include <string.h>

static hs_units *units;

static void split__boxes__are_three_sizes(void) {
    static const char *const good[] = {"300 x 200 x 150 mm",      "300x200x150 mm",
                                       "300 × 200 × 150 mm",      "300 X 200 X 150 mm",
                                       "30 x 20 x 15 cm",         "300 mm x 20 cm x 0.15 m",
                                       "300 mm x 200 mm x 150 mm"};
    static const char *const bad[] = {"300 x 200 mm",
                                      "300 x 200 x 150",
                                      "300 x 200 x 150 x 1 mm",
                                      "",
                                      "300 x x 150 mm",
                                      "300 x 200 x 150 h",
                                      "300 mm",
                                      "300 x 2,5 x 150 mm",
                                      "300 x 0 x 150 mm",
                                      "x 200 x 150",
                                      "300 x 200 x 150..160 mm",
                                      "300 x 200 x 150 mm x"};
    double s[3];
    hs_error err;
    for (size_t i = 0; i < sizeof good / sizeof *good; i++) {
        s[0] = s[1] = s[2] = NAN;
        CHECK(!hs_box_read(s, units, good[i], &err));
        NEAR(s[0], 0.3, 1e-15);
        NEAR(s[1], 0.2, 1e-15);
        NEAR(s[2], 0.15, 1e-15);
    }
    CHECK(!hs_box_read(s, units, "12\" x 8\" x 6 1/2\"", &err));
    NEAR(s[2], 0.1651, 1e-15); /* exact: 6.5 x 25.4 mm */
    s[0] = 7;
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        err = (hs_error){0};
        CHECK(hs_box_read(s, units, bad[i], &err) != HS_OK);
        CHECK(s[0] == 7 && err.column >= 1 && err.help[0]);
    }
    CHECK(hs_box_read(s, units, "300 x 2,5 x 150 mm", &err) == HS_E_NUMBER && err.column == 8);
}

static void split__test_pieces__are_round_and_long(void) {
    double d = NAN, l = NAN;
    hs_error err;
    CHECK(!hs_test_piece_read(&d, &l, units, "12 mm round, 40 mm long", &err));
    NEAR(d, 0.012, 1e-16);
    NEAR(l, 0.040, 1e-16);
    CHECK(!hs_test_piece_read(&d, &l, units, "1/2 in round, 1 1/2 in long  ", &err));
    NEAR(d, 0.0127, 1e-16);
    CHECK(hs_test_piece_read(&d, &l, units, "12 mm square, 40 mm long", &err) == HS_E_WORD);
    CHECK(hs_test_piece_read(&d, &l, units, "12 mm round, 40 mm", &err) == HS_E_WORD);
    CHECK(hs_test_piece_read(&d, &l, units, "12 mm round", &err) == HS_E_NUMBER);
    CHECK(hs_test_piece_read(&d, &l, units, "12 round, 40 mm long", &err) == HS_E_NO_UNIT);
    CHECK(hs_test_piece_read(&d, &l, units, "12 mm round, 40 long", &err) == HS_E_NO_UNIT);
    CHECK(err.column == 14);
    CHECK(hs_test_piece_read(&d, &l, units, "12,5 mm round, 40 mm long", &err) == HS_E_NUMBER);
    NEAR(d, 0.0127, 1e-16);
}

static void split__supplies__are_volts_and_amps(void) {
    double v = NAN, a = NAN;
    hs_error err;
    CHECK(!hs_supply_read(&v, &a, units, "12 V 10 A", &err));
    NEAR(v, 12, 0);
    NEAR(a, 10, 0);
    CHECK(!hs_supply_read(&v, &a, units, "12V, 500mA", &err));
    NEAR(a, 0.5, 1e-16);
    CHECK(hs_supply_read(&v, &a, units, "12 V", &err) == HS_E_NUMBER);
    CHECK(hs_supply_read(&v, &a, units, "10 A 12 V", &err) != HS_OK);
    CHECK(hs_supply_read(&v, &a, units, "12 V 10", &err) == HS_E_NO_UNIT && err.column == 6);
    CHECK(hs_supply_read(&v, &a, units, "12 V 0 A", &err) == HS_E_IMPOSSIBLE);
    CHECK(hs_supply_read(&v, &a, units, "", &err) == HS_E_NUMBER);
    NEAR(v, 12, 0);
}

static void split__acids__have_a_name_and_a_strength(void) {
    const char *name = NULL;
    double pct = NAN;
    hs_error err;
    CHECK(!hs_acid_read(&name, &pct, units, "citric 10 %", &err) && !strcmp(name, "citric"));
    NEAR(pct, 10, 0);
    CHECK(!hs_acid_read(&name, &pct, units, "vinegar 5%", &err) && !strcmp(name, "vinegar"));
    CHECK(!hs_acid_read(&name, &pct, units, "sulphuric 8 %", &err));
    CHECK(hs_acid_read(&name, &pct, units, "nitric 10 %", &err) == HS_E_WORD);
    CHECK(hs_acid_read(&name, &pct, units, "citric", &err) == HS_E_WORD);
    CHECK(hs_acid_read(&name, &pct, units, "citric 10", &err) == HS_E_NO_UNIT && err.column == 8);
    CHECK(hs_acid_read(&name, &pct, units, "citric 110 %", &err) == HS_E_IMPOSSIBLE);
    CHECK(hs_acid_read(&name, &pct, units, "citric 0 %", &err) == HS_E_IMPOSSIBLE);
    CHECK(hs_acid_read(&name, &pct, units, "Citric 10 %", &err) == HS_E_WORD);
    CHECK(!strcmp(name, "sulphuric"));
    NEAR(pct, 8, 0);
}

static void split__long_texts__are_refused(void) {
    char text[300];
    double s[3];
    const char *name;
    memset(text, '1', sizeof text);
    text[299] = '\0';
    CHECK(hs_box_read(s, units, text, NULL) == HS_E_NUMBER);
    CHECK(hs_test_piece_read(s, s + 1, units, text, NULL) == HS_E_NUMBER);
    CHECK(hs_supply_read(s, s + 1, units, text, NULL) == HS_E_NUMBER);
    CHECK(hs_acid_read(&name, s, units, text, NULL) == HS_E_NUMBER);
}

int main(void) {
    static const hs_test tests[] = {
        TEST(split__boxes__are_three_sizes),       TEST(split__test_pieces__are_round_and_long),
        TEST(split__supplies__are_volts_and_amps), TEST(split__acids__have_a_name_and_a_strength),
        TEST(split__long_texts__are_refused),
    };
    units = hs_units_new();
    if (!units) return 1;
    int code = hs_tests_run("units_split", tests, sizeof tests / sizeof *tests);
    hs_units_free(units);
    return code;
}
