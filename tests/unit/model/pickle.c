#include "hardskin/model/pickle.h"
#include "support/check.h"

static double demand(const char *acid) {
    double out = NAN;
    CHECK(hs_pickle_demand(&out, acid, NULL) == HS_OK);
    return out;
}

static void pickle__demand__is_stoichiometric(void) {
    /* exact: FeO + 2 H+, g of acid per g of FeO */
    NEAR(demand("hydrochloric"), 1.015, .0006);
    NEAR(demand("sulphuric"), 1.365, .0006);
    NEAR(demand("citric"), 1.783, .0006);
    NEAR(demand("acetic"), 1.672, .0006);
    NEAR(demand("phosphoric"), 2 * 97.994 / 71.844, .0006); /* to the primary phosphate */
    NEAR(demand("vinegar"), demand("acetic"), 0);
    double out = 7;
    CHECK(hs_pickle_demand(&out, "battery", NULL) == HS_E_WORD);
    NEAR(out, 7, 0);
}

static void pickle__litre_of_vinegar__matches_the_check_values(void) {
    /* computed: 1 L of 5 % vinegar dissolves at most 29.9 g of FeO and needs 44 g of soda */
    hs_pickle_plan p = {0};
    CHECK(hs_pickle(&p, "acetic", 5, .001, .01, 1e-4, NULL) == HS_OK);
    NEAR(p.capacity_kg * 1000, 29.9, .06);
    NEAR(p.soda_kg * 1000, 44, .6);
    /* computed: .1 mm on 1 dm2 = 5.67 g of scale */
    NEAR(p.scale_kg * 1000, 5.67, .006);
    NEAR(p.acid_kg, p.scale_kg * demand("acetic"), 1e-15);
    NEAR(p.time_low_s, 12 * 3600, 0); /* common practice: overnight to five days */
    NEAR(p.time_high_s, 5 * 24 * 3600, 0);
    CHECK(!p.spent);
}

static void pickle__soda__neutralises_every_proton(void) {
    /* exact: 100 g of citric acid, 3 protons each, against Na2CO3 105.988 g/mol */
    hs_pickle_plan p = {0};
    CHECK(hs_pickle(&p, "citric", 10, .001, 0, 0, NULL) == HS_OK);
    NEAR(p.soda_kg * 1000, 100 / 192.123 * 1.5 * 105.988, .01);
    CHECK(hs_pickle(&p, "sulphuric", 10, .001, 0, 0, NULL) == HS_OK);
    NEAR(p.soda_kg * 1000, 100 / 98.072 * 105.988, .01);
    CHECK(hs_pickle(&p, "hydrochloric", 15, .001, 0, 0, NULL) == HS_OK);
    NEAR(p.time_low_s, 1200, 1e-6); /* common practice: 20 min to 3 h cold */
    NEAR(p.time_high_s, 3 * 3600, 1e-6);
}

static void pickle__small_bath__is_spent(void) {
    hs_pickle_plan p = {0};
    CHECK(hs_pickle(&p, "citric", 5, .0001, .1, 1e-4, NULL) == HS_OK);
    CHECK(p.spent); /* 5 g of acid, 100 g wanted */
    CHECK(p.acid_kg > .09 && p.capacity_kg < .003);
}

static void pickle__wrong_baths__are_refused(void) {
    hs_pickle_plan p = {.acid_kg = 7};
    CHECK(hs_pickle(&p, "nitric", 5, .001, .01, 1e-4, NULL) == HS_E_WORD);
    CHECK(hs_pickle(&p, "citric", 60, .001, .01, 1e-4, NULL) == HS_E_RANGE);
    CHECK(hs_pickle(&p, "citric", NAN, .001, .01, 1e-4, NULL) == HS_E_RANGE);
    CHECK(hs_pickle(&p, "citric", 5, 0, .01, 1e-4, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_pickle(&p, "citric", 5, .001, -1, 1e-4, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_pickle(&p, "citric", 5, .001, .01, NAN, NULL) == HS_E_IMPOSSIBLE);
    NEAR(p.acid_kg, 7, 0);
}

HS_TEST_MAIN("model pickle", TEST(pickle__demand__is_stoichiometric),
             TEST(pickle__litre_of_vinegar__matches_the_check_values),
             TEST(pickle__soda__neutralises_every_proton), TEST(pickle__small_bath__is_spent),
             TEST(pickle__wrong_baths__are_refused))
