/* Steels by name, and what is reckoned with where the standard gives a maximum only. */
#include "hardskin/tables/steel.h"

#include "support/check.h"

#include <string.h>
#include <strings.h>

static void steel__a_range__its_middle(void) {
    hs_steel s;
    CHECK(hs_steel_find(&s, "16MnCr5", NULL) == HS_OK);
    /* published: EN 10084, 16MnCr5: C .14-.19 Mn 1.00-1.30 Cr .80-1.10, Si at most .40 */
    NEAR(s.low.C, 0.14, 0);
    NEAR(s.high.C, 0.19, 0);
    NEAR(s.mid.C, 0.165, 1e-12);
    NEAR(s.mid.Mn, 1.15, 1e-12);
    NEAR(s.mid.Cr, 0.95, 1e-12);
    NEAR(s.high.Si, 0.40, 0);
    NEAR(s.mid.Si, 0.25, 0); /* own rule: only a maximum is known */
    NEAR(s.mid.Ni, 0, 0);
    CHECK(!s.only_maxima);
    CHECK(s.alloyed);
    CHECK(!strcmp(s.standard, "EN 10084"));
    CHECK(!strcmp(s.basis, "read"));
}

static void steel__an_american_bar__its_middle(void) {
    hs_steel s;
    CHECK(hs_steel_find(&s, "1018", NULL) == HS_OK);
    /* published: ASTM A29, 1018: C .15-.20 Mn .60-.90; Si .10-.30 is usual, no limit */
    NEAR(s.mid.C, 0.175, 1e-12);
    NEAR(s.mid.Mn, 0.75, 1e-12);
    NEAR(s.mid.Si, 0.20, 1e-12);
    CHECK(!s.alloyed && !s.only_maxima);
    CHECK(hs_steel_find(&s, "8620", NULL) == HS_OK);
    /* published: ASTM A29, 8620 */
    NEAR(s.mid.Ni, 0.55, 1e-12);
    NEAR(s.mid.Cr, 0.50, 1e-12);
    NEAR(s.mid.Mo, 0.20, 1e-12);
    CHECK(s.alloyed);
}

static void steel__maxima_only__the_stated_rule(void) {
    hs_steel s;
    CHECK(hs_steel_find(&s, "S235JR", NULL) == HS_OK);
    /* published: EN 10025-2, S235JR: C at most .17, Mn 1.40, Cu .55 */
    NEAR(s.high.C, 0.17, 0);
    NEAR(s.high.Mn, 1.40, 0);
    /* own rule: C the maximum less .03, Mn two thirds, Si .25 */
    NEAR(s.mid.C, 0.14, 1e-12);
    NEAR(s.mid.Mn, 1.40 * 2 / 3, 1e-12);
    NEAR(s.mid.Si, 0.25, 0);
    CHECK(s.only_maxima);
    CHECK(!s.alloyed);
    CHECK(hs_steel_find(&s, "12L14", NULL) == HS_OK);
    NEAR(s.mid.C, 0.12, 1e-12);
    NEAR(s.mid.Pb, 0.25, 1e-12); /* published: ASTM A29, Pb .15-.35 */
    CHECK(s.only_maxima);
}

static void steel__other_names_and_letter_case__the_same_steel(void) {
    static const struct {
        const char *typed, *name;
    } pairs[] = {{"s235", "S235JR"},     {"EN3B", "070M20"},   {"en3b", "070M20"},
                 {"AISI 1018", "1018"},  {"sae 8620", "8620"}, {"1.7131", "16MnCr5"},
                 {"16mncr5", "16MnCr5"}, {"c15e", "C15E"},     {"18crnimo7-6", "18CrNiMo7-6"}};
    for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
        hs_steel s;
        CHECK(hs_steel_find(&s, pairs[i].typed, NULL) == HS_OK && !strcmp(s.name, pairs[i].name));
    }
}

static void steel__no_such_name__nearest_one_in_the_help(void) {
    hs_error err = {0};
    hs_steel s = {.name = "kept"};
    CHECK(hs_steel_find(&s, "16MnCr6", &err) == HS_E_STEEL);
    CHECK(strstr(err.help, "16MnCr5") != NULL);
    CHECK(strstr(err.message, "16MnCr6") != NULL);
    CHECK(!strcmp(s.name, "kept"));
    CHECK(hs_steel_find(&s, "cheese", &err) == HS_E_STEEL);
    CHECK(strstr(err.help, "did you mean") == NULL);
    CHECK(hs_steel_find(&s, "", &err) == HS_E_STEEL);
    CHECK(hs_steel_find(&s, "1018|AISI 1018", &err) == HS_E_STEEL);
}

static int ordered(double low, double mid, double high) {
    return low >= 0 && low <= mid && mid <= high && high < 5;
}

static void steel__each_row__in_order_and_told_apart(void) {
    CHECK(hs_steel_count() >= 17);
    for (size_t i = 0; i < hs_steel_count(); i++) {
        hs_steel s, found;
        hs_steel_at(&s, i);
        CHECK(hs_steel_find(&found, s.name, NULL) == HS_OK && !strcmp(found.name, s.name));
        CHECK(ordered(s.low.C, s.mid.C, s.high.C) && s.mid.C > 0.05 && s.high.C < 0.30);
        CHECK(ordered(s.low.Mn, s.mid.Mn, s.high.Mn) && s.mid.Mn > 0.3);
        CHECK(ordered(s.low.Si, s.mid.Si, s.high.Si) && s.mid.Si > 0);
        CHECK(ordered(s.low.Cr, s.mid.Cr, s.high.Cr));
        CHECK(ordered(s.low.Ni, s.mid.Ni, s.high.Ni));
        CHECK(ordered(s.low.Mo, s.mid.Mo, s.high.Mo));
        CHECK(ordered(s.low.Pb, s.mid.Pb, s.high.Pb));
        CHECK(s.alloyed == (s.mid.Cr > 0 || s.mid.Ni > 0));
        CHECK(s.basis[0] && s.source[0]);
        for (size_t k = 0; k < i; k++) {
            hs_steel other;
            hs_steel_at(&other, k);
            CHECK(strcasecmp(other.name, s.name) != 0);
        }
    }
}

HS_TEST_MAIN("tables_steel", TEST(steel__a_range__its_middle),
             TEST(steel__an_american_bar__its_middle), TEST(steel__maxima_only__the_stated_rule),
             TEST(steel__other_names_and_letter_case__the_same_steel),
             TEST(steel__no_such_name__nearest_one_in_the_help),
             TEST(steel__each_row__in_order_and_told_apart))
