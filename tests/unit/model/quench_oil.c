#include "hardskin/model/quench_oil.h"

#include "support/check.h"

static double kelvin(double celsius) {
    return celsius + 273.15;
}

static void oil__a_pound__takes_a_gallon(void) {
    /* exact: 1 lb = .45359237 kg, 1 US gal = 231 in3; the table rounds to five digits */
    hs_quench_oil oil = {0};
    CHECK(hs_quench_oil_for(&oil, .45359237, kelvin(820), NULL) == HS_OK);
    NEAR(oil.volume_m3, 231 * .0254 * .0254 * .0254, 1e-7);
}

static void oil__its_rise__is_near_the_published_one(void) {
    /* published: trade article on the rule of a gallon to the pound (tables/SOURCES.md:
     * quench-oil): about 38 K with a steel of .17 cal/(g K), which leaves the change of phase and
     * the rise of its heat capacity out: ours may be up to a quarter above */
    hs_quench_oil oil = {0};
    CHECK(hs_quench_oil_for(&oil, 2.8, kelvin(820), NULL) == HS_OK);
    CHECK(oil.rise_K > 36 && oil.rise_K < 38 * 1.25);
    /* exact: the same for any mass, and nothing from a cold part */
    hs_quench_oil other = {0};
    CHECK(hs_quench_oil_for(&other, 280, kelvin(820), NULL) == HS_OK);
    NEAR(other.rise_K, oil.rise_K, 1e-9);
    CHECK(hs_quench_oil_for(&other, 1, kelvin(20), NULL) == HS_OK);
    NEAR(other.rise_K, 0, 1e-9);
}

static void oil__hotter_part__warms_it_more(void) {
    double before = -1;
    for (double T = 20; T <= 1130; T += 5) {
        hs_quench_oil oil = {0};
        CHECK(hs_quench_oil_for(&oil, 1, kelvin(T), NULL) == HS_OK);
        CHECK(oil.rise_K > before);
        before = oil.rise_K;
    }
}

static void oil__outside__is_refused(void) {
    hs_quench_oil oil = {.rise_K = 7};
    CHECK(hs_quench_oil_for(&oil, 0, kelvin(820), NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_quench_oil_for(&oil, NAN, kelvin(820), NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_quench_oil_for(&oil, 1, kelvin(1140), NULL) == HS_E_RANGE);
    CHECK(hs_quench_oil_for(&oil, 1, kelvin(10), NULL) == HS_E_RANGE);
    NEAR(oil.rise_K, 7, 0);
}

HS_TEST_MAIN("model quench_oil", TEST(oil__a_pound__takes_a_gallon),
             TEST(oil__its_rise__is_near_the_published_one), TEST(oil__hotter_part__warms_it_more),
             TEST(oil__outside__is_refused))
