#include "hardskin/model/bake.h"
#include "support/check.h"

#include <string.h>

static double kelvin(double celsius) {
    return celsius + 273.15;
}

static hs_bake_plan bake(double HRC, int surface, double temper_C, double temper_h) {
    hs_bake_plan p = {.temp_K = NAN};
    CHECK(hs_bake(&p, HRC, surface, kelvin(temper_C), 3600 * temper_h, NULL) == HS_OK);
    return p;
}

static void bake__no_softening_limit__matches_hollomon_jaffe(void) {
    /* computed, c 20: 2 h at 180 C = 8 h at 166.9 C; 2 h at 150 C = 8 h at 137.8 C */
    NEAR(hs_bake_equal_temper_K(kelvin(180), 7200, 8 * 3600, 20), kelvin(166.9), .06);
    NEAR(hs_bake_equal_temper_K(kelvin(150), 7200, 8 * 3600, 20), kelvin(137.8), .06);
    NEAR(hs_bake_equal_temper_K(kelvin(150), 7200, 7200, 20), kelvin(150), 1e-9);
}

static void bake__surface_hardened__is_eight_hours_below_the_temper(void) {
    /* published: ASTM B850 ER-14/15 (from memory): at least 8 h at 130 to 160 C */
    hs_bake_plan p = bake(60, 1, 180, 2);
    CHECK(p.needed);
    NEAR(p.hold_s, 8 * 3600, 0);
    NEAR(p.temp_K, kelvin(150), 1e-9); /* temper - 30 */
    NEAR(bake(60, 1, 170, 2).temp_K, kelvin(140), 1e-9);
    NEAR(bake(60, 1, 250, 2).temp_K, kelvin(160), 1e-9); /* the table's upper figure */
    NEAR(p.start_within_s, 3600, 0);
    NEAR(p.latest_s, 3 * 3600, 0);
}

static void bake__short_temper__is_limited_by_softening(void) {
    /* exact: a temper of ten minutes softens so little that 8 h must stay cooler than - 30 K */
    double limit = hs_bake_equal_temper_K(kelvin(185), 600, 8 * 3600, 20);
    CHECK(limit < kelvin(155) && limit > kelvin(130));
    NEAR(bake(60, 1, 185, 1. / 6).temp_K, limit, 1e-9);
}

static void bake__of_a_range_of_hours__the_longest_may_not_soften(void) {
    /* exact: Hollomon-Jaffe, c = 20: 10 min at 250 C, held 12 to 14 h (36 to 43 HRC, published,
     * B850 as reprinted): 523.15 (20 + lg 1/6) / (20 + lg 14) = 475.6 K, not 477.1 of 12 h */
    hs_bake_plan p = bake(40, 0, 250, 1. / 6);
    NEAR(p.hold_s, 12 * 3600, 1e-6);
    NEAR(p.hold_high_s, 14 * 3600, 1e-6);
    NEAR(p.temp_K, 523.15 * (20 - log10(6)) / (20 + log10(14)), 1e-6);
    NEAR(p.temp_K, 475.6, .06);
}

static void bake__too_cool_a_bake__is_refused(void) {
    hs_bake_plan p = {.temp_K = 7};
    hs_error err = {0};
    CHECK(hs_bake(&p, 60, 1, kelvin(159), 7200, &err) == HS_E_RANGE);
    CHECK(strlen(err.help) > 0);
    NEAR(p.temp_K, 7, 0);
    CHECK(hs_bake(&p, 60, 1, kelvin(160.01), 7200, NULL) == HS_OK);
}

static void bake__through_hard__follows_the_rows(void) {
    /* published: ASTM B850 as reprinted (read): 31-36 HRC 8-10 h, 36-43 12-14, 43-51 16-22 */
    NEAR(bake(31, 0, 400, 2).hold_s, 8 * 3600, 0);
    NEAR(bake(33, 0, 400, 2).hold_high_s, 10 * 3600, 0);
    NEAR(bake(36, 0, 400, 2).hold_s, 12 * 3600, 0);
    NEAR(bake(43, 0, 400, 2).hold_s, 16 * 3600, 0);
    NEAR(bake(51, 0, 400, 2).hold_high_s, 22 * 3600, 0);
    NEAR(bake(40, 0, 400, 2).temp_K, kelvin(220), 1e-9);
    CHECK(!bake(40, 0, 400, 2).below_usual);
    CHECK(bake(50, 0, 200, 2).below_usual);
    hs_bake_plan p = {0};
    CHECK(hs_bake(&p, 52, 0, kelvin(200), 7200, NULL) == HS_E_RANGE);
    CHECK(!bake(30.9, 0, 400, 2).needed);
    CHECK(!bake(NAN, 0, 400, 2).needed);
    NEAR(bake(20, 0, 400, 2).hold_s, 0, 0);
}

static void bake__impossible_tempers__are_refused(void) {
    hs_bake_plan p = {0};
    CHECK(hs_bake(&p, 60, 1, kelvin(80), 7200, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_bake(&p, 60, 1, kelvin(180), 0, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_bake(&p, 60, 1, NAN, 7200, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_bake(&p, 99, 0, kelvin(180), 7200, NULL) == HS_E_IMPOSSIBLE);
}

static hs_hydrogen_verdict rule(double HRC, int surface, int tempered, hs_hydrogen_way way) {
    hs_hydrogen_verdict v = {HS_HYDROGEN_NEVER, HS_BECAUSE_UNTEMPERED, -1};
    CHECK(hs_hydrogen_rule(&v, HRC, surface, tempered, way, NULL) == HS_OK);
    CHECK(strlen(hs_hydrogen_text(v.reason)) > 20);
    return v;
}

static void bake__cathodic_on_hard_steel__is_barred(void) {
    /* published: ISO 9587:2007, ISO 27831-1:2008 (read in excerpts): from 31 HRC, and on
     * surface-hardened parts by the hardness of their layer */
    CHECK(rule(60, 1, 1, HS_HYDROGEN_CATHODIC).answer == HS_HYDROGEN_BARRED);
    CHECK(rule(60, 1, 1, HS_HYDROGEN_CATHODIC).reason == HS_BECAUSE_SURFACE_HARDENED);
    CHECK(rule(60, 1, 1, HS_HYDROGEN_CATHODIC).bake_after);
    CHECK(rule(31, 0, 1, HS_HYDROGEN_CATHODIC).answer == HS_HYDROGEN_BARRED);
    CHECK(rule(31, 0, 1, HS_HYDROGEN_CATHODIC).reason == HS_BECAUSE_HARD);
    CHECK(rule(30.9, 0, 1, HS_HYDROGEN_CATHODIC).answer == HS_HYDROGEN_ALLOWED);
    CHECK(rule(NAN, 0, 0, HS_HYDROGEN_CATHODIC).answer == HS_HYDROGEN_ALLOWED);
    CHECK(rule(NAN, 0, 0, HS_HYDROGEN_CATHODIC).reason == HS_BECAUSE_SOFT);
    CHECK(!rule(NAN, 0, 0, HS_HYDROGEN_CATHODIC).bake_after);
}

static void bake__untempered_martensite__never(void) {
    CHECK(rule(65, 1, 0, HS_HYDROGEN_CATHODIC).answer == HS_HYDROGEN_NEVER);
    CHECK(rule(45, 0, 0, HS_HYDROGEN_CATHODIC).answer == HS_HYDROGEN_NEVER);
    CHECK(rule(65, 1, 0, HS_HYDROGEN_ACID).answer == HS_HYDROGEN_NEVER);
}

static void bake__acid_and_ways_without_hydrogen__by_the_order_of_preference(void) {
    CHECK(rule(60, 1, 1, HS_HYDROGEN_ACID).answer == HS_HYDROGEN_WITH_BAKE);
    CHECK(rule(60, 1, 1, HS_HYDROGEN_ACID).bake_after);
    CHECK(rule(NAN, 0, 0, HS_HYDROGEN_ACID).answer == HS_HYDROGEN_ALLOWED);
    for (int tempered = 0; tempered < 2; tempered++) {
        CHECK(rule(60, 1, tempered, HS_HYDROGEN_NO_SOURCE).answer == HS_HYDROGEN_ALLOWED);
        CHECK(rule(60, 1, tempered, HS_HYDROGEN_ANODIC).answer == HS_HYDROGEN_ALLOWED);
        CHECK(!rule(60, 1, tempered, HS_HYDROGEN_ANODIC).bake_after);
    }
    hs_hydrogen_verdict v;
    CHECK(hs_hydrogen_rule(&v, 99, 0, 1, HS_HYDROGEN_ACID, NULL) == HS_E_IMPOSSIBLE);
}

static int passed(size_t row, double layer_HRC, double core_HRC) {
    int is = -1;
    CHECK(hs_hydrogen_limit(&is, NULL, row, layer_HRC, core_HRC, NULL) == HS_OK);
    return is;
}

static void bake__published_limits__are_passed_one_by_one(void) {
    /* published (read in excerpts): ISO 9587 and 27831-1 31 HRC, the latter again at 1800 MPa
     * = 51 HRC (conversion from memory); relief practice core 32, surface
     * 35 HRC; ISO 4042 320 and 365 HV = 32.22 and 37.22 HRC by ASTM E140 (318 to 327, 363 to 372)
     */
    enum { ISO9587, ISO27831, ISO27831_UPPER, CORE, SURFACE, TESTED, AGREED, ROWS };
    static const double limit_HRC[ROWS] = {31, 31, 51, 32, 35, 32.22, 37.22};
    for (size_t row = 0; row < ROWS; row++) {
        double limit = NAN;
        int is;
        CHECK(hs_hydrogen_limit(&is, &limit, row, NAN, NAN, NULL) == HS_OK && !is);
        NEAR(limit, limit_HRC[row], .006);
        double layer = row == CORE ? NAN : limit + .001, core = row == CORE ? limit + .001 : NAN;
        CHECK(passed(row, layer, core) == 1);
        CHECK(passed(row, layer - .002, core - .002) == 0);
    }
    CHECK(passed(CORE, 60, 20) == 0 && passed(CORE, 20, 40) == 1); /* each asks its own place */
    CHECK(passed(SURFACE, 36, 20) == 1 && passed(SURFACE, 34, 50) == 0);
    int is = 7;
    CHECK(hs_hydrogen_limit(&is, NULL, ROWS, 60, 40, NULL) == HS_E_RANGE);
    CHECK(hs_hydrogen_limit(&is, NULL, 0, 90, 40, NULL) == HS_E_IMPOSSIBLE);
    CHECK(is == 7);
}

static void bake__after_a_temper_of_150__is_refused_and_160_is_the_lowest(void) {
    /* computed: min(120, 137.8) = 120 C, below 130: refused (ASTM B850 window from memory) */
    hs_bake_plan p = {0};
    hs_error err = {0};
    CHECK(hs_bake(&p, 60, 1, kelvin(150), 7200, &err) == HS_E_RANGE);
    CHECK(strstr(err.message, "120 C") != NULL);
    double lowest = 0;
    for (double temper = 150; temper <= 170 && lowest == 0; temper += .5)
        if (hs_bake(&p, 60, 1, kelvin(temper), 7200, NULL) == HS_OK) lowest = temper;
    NEAR(lowest, 160, 0);
    NEAR(p.temp_K, kelvin(130), 1e-9);
}

HS_TEST_MAIN("model bake", TEST(bake__no_softening_limit__matches_hollomon_jaffe),
             TEST(bake__published_limits__are_passed_one_by_one),
             TEST(bake__after_a_temper_of_150__is_refused_and_160_is_the_lowest),
             TEST(bake__surface_hardened__is_eight_hours_below_the_temper),
             TEST(bake__short_temper__is_limited_by_softening),
             TEST(bake__of_a_range_of_hours__the_longest_may_not_soften),
             TEST(bake__too_cool_a_bake__is_refused), TEST(bake__through_hard__follows_the_rows),
             TEST(bake__impossible_tempers__are_refused),
             TEST(bake__cathodic_on_hard_steel__is_barred),
             TEST(bake__untempered_martensite__never),
             TEST(bake__acid_and_ways_without_hydrogen__by_the_order_of_preference))
