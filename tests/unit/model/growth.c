#include "hardskin/model/growth.h"
#include "support/check.h"

static double linear_pct(double dissolved_pct, double carbide_pct, double austenite_pct) {
    double strain = NAN;
    hs_growth_layer layer = {1, dissolved_pct, carbide_pct, austenite_pct, 0};
    CHECK(hs_growth_linear(&strain, &layer, 1, NULL) == HS_OK);
    return 100 * strain;
}

static void growth__retained_austenite__matches_the_lement_set(void) {
    /* published: Lement 1959 (from memory); .8 %C, retained austenite 0, 10, 20, 30 % */
    NEAR(linear_pct(.8, 0, 0), .4480, .00006);
    NEAR(linear_pct(.8, 0, 10), .3075, .00006);
    NEAR(linear_pct(.8, 0, 20), .1669, .00006);
    NEAR(linear_pct(.8, 0, 30), .0264, .00006);
}

static void growth__the_set__closes_on_itself(void) {
    /* exact: to austenite and on to martensite = to martensite (1.68 C = -4.64+2.21C + 4.64-.53C)
     */
    for (double C = 0; C <= 1.2; C += .2) {
        double whole = 3 * linear_pct(C, 0, 0), austenite = 3 * linear_pct(C, 0, 100);
        NEAR(austenite + 4.64 - .53 * C, whole, 1e-12);
    }
}

static void growth__carbide_and_soft_share__do_not_grow(void) {
    double all_soft = NAN;
    hs_growth_layer soft = {2, .2, 0, 0, 100};
    CHECK(hs_growth_linear(&all_soft, &soft, 1, NULL) == HS_OK);
    NEAR(all_soft, 0, 1e-15);
    NEAR(linear_pct(.8, 5, 0), .95 * linear_pct(.8, 0, 0), 1e-12);
}

static void growth__layers__weigh_by_their_area(void) {
    /* exact: case .8 % with 20 % austenite on a tenth, core .18 % on nine tenths */
    hs_growth_layer layers[2] = {{1, .8, 0, 20, 0}, {9, .18, 0, 0, 0}};
    double strain = NAN;
    CHECK(hs_growth_linear(&strain, layers, 2, NULL) == HS_OK);
    NEAR(100 * strain, (linear_pct(.8, 0, 20) + 9 * linear_pct(.18, 0, 0)) / 10, 1e-12);
}

static void growth__undissolved_carbon__makes_cementite(void) {
    NEAR(hs_growth_carbide_pct(.8, .8), 0, 0);
    NEAR(hs_growth_carbide_pct(.8, .9), 0, 0);
    /* published: pearlite of .77 %C holds about 12 % of cementite (textbook lever rule, from
     * memory) */
    NEAR(hs_growth_carbide_pct(.77, .02), 11.5, .5);
    NEAR(hs_growth_carbide_pct(6.67, 0), 100, 1e-9); /* limiting case: all cementite */
}

static void growth__impossible_shares__are_refused(void) {
    double out = 7;
    hs_growth_layer over = {1, .8, 60, 60, 0}, minus = {1, .8, 0, -1, 0}, nan = {1, NAN, 0, 0, 0};
    hs_growth_layer weightless = {0, .8, 0, 0, 0};
    CHECK(hs_growth_linear(&out, &over, 1, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_growth_linear(&out, &minus, 1, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_growth_linear(&out, &nan, 1, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_growth_linear(&out, &weightless, 1, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_growth_linear(&out, &over, 0, NULL) == HS_E_IMPOSSIBLE);
    NEAR(out, 7, 0);
}

HS_TEST_MAIN("model growth", TEST(growth__retained_austenite__matches_the_lement_set),
             TEST(growth__the_set__closes_on_itself),
             TEST(growth__carbide_and_soft_share__do_not_grow),
             TEST(growth__layers__weigh_by_their_area),
             TEST(growth__undissolved_carbon__makes_cementite),
             TEST(growth__impossible_shares__are_refused))
