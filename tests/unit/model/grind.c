#include "hardskin/model/grind.h"
#include "support/check.h"

static hs_grind_face flat(void) {
    hs_grind_face f = {.stock_m = .15e-3,
                       .rough_infeed_m = .02e-3,
                       .finish_infeed_m = .005e-3,
                       .finish_stock_m = .04e-3,
                       .length_m = .300,
                       .width_m = .060,
                       .wheel_width_m = .025,
                       .cross_feed_m = .010,
                       .table_speed_m_s = .25,
                       .overrun_m = .025,
                       .spark_outs = 2};
    return f;
}

static void grind__passes__match_the_check_value(void) {
    /* computed: stock .15, finish .04, infeeds .02 and .005 -> 6 + 8 + 2 passes */
    hs_grind_face f = flat();
    hs_grind_time t = {0};
    CHECK(hs_grind_passes(&t, &f, NULL) == HS_OK);
    NEAR(t.rough_passes, 6, 0);
    NEAR(t.finish_passes, 8, 0);
    NEAR(t.spark_outs, 2, 0);
    NEAR(t.crossings, 9, 0); /* exact: (60 + 25)/10 rounded up */
    NEAR(t.strokes, 144, 0);
    NEAR(t.time_s, 144 * .350 / .25, 1e-9);
}

static void grind__whole_multiples__cost_no_extra_pass(void) {
    hs_grind_face f = flat();
    hs_grind_time t = {0};
    f.stock_m = .1e-3 + .04e-3; /* .1/.02 is 5 exactly, not 6 through rounding */
    CHECK(hs_grind_passes(&t, &f, NULL) == HS_OK);
    NEAR(t.rough_passes, 5, 0);
    f.stock_m = .03e-3; /* less than the finish stock */
    CHECK(hs_grind_passes(&t, &f, NULL) == HS_OK);
    NEAR(t.rough_passes, 0, 0);
    NEAR(t.finish_passes, 6, 0);
    f.stock_m = 0;
    CHECK(hs_grind_passes(&t, &f, NULL) == HS_OK);
    NEAR(t.strokes, 18, 0); /* spark-out alone */
}

static void grind__more_stock__never_takes_less_time(void) {
    hs_grind_face f = flat();
    double before = 0;
    for (f.stock_m = 0; f.stock_m < 1e-3; f.stock_m += 3e-6) {
        hs_grind_time t = {0};
        CHECK(hs_grind_passes(&t, &f, NULL) == HS_OK);
        CHECK(t.time_s >= before);
        before = t.time_s;
    }
}

static void grind__chuck__flattens_what_is_thin(void) {
    /* computed: L 300, f .3, h 6/10/20/40 -> .0105, .0486, .389, 3.11 MPa */
    const double h[] = {.006, .010, .020, .040}, MPa[] = {.0105, .0486, .389, 3.11};
    const double last_digit[] = {.00006, .00006, .0006, .006};
    const int answer[] = {1, 1, 1, -1}; /* against a pull of .5 to 1.2 MPa (from memory) */
    for (int i = 0; i < 4; i++) {
        double p = NAN;
        int flattens = 7;
        CHECK(hs_grind_flatten_Pa(&p, .3e-3, h[i], .300, NULL) == HS_OK);
        NEAR(p / 1e6, MPa[i], last_digit[i]);
        CHECK(hs_grind_chuck_flattens(&flattens, p, NULL) == HS_OK);
        CHECK(flattens == answer[i]);
    }
    /* exact: uniform load on a simple beam, f = 5 q L4 / (384 E I) */
    double p = NAN, I = .02 * .02 * .02 / 12;
    CHECK(hs_grind_flatten_Pa(&p, 1e-4, .02, .25, NULL) == HS_OK);
    NEAR(5 * p * pow(.25, 4) / (384 * 205e9 * I), 1e-4, 1e-12);
}

static void grind__burn__matches_the_check_value(void) {
    /* published: Malkin (from memory): wheel 200 mm, infeed .02 mm, 250 mm/s -> 39.4 J/mm3 */
    double u = NAN, faster = NAN, deeper = NAN, lc = NAN;
    CHECK(hs_grind_burn_J_m3(&u, .02e-3, .200, .250, NULL) == HS_OK);
    NEAR(u / 1e9, 39.4, .06);
    /* the same: u = 6.2 + 7.42 d^1/4 a^-3/4 v^-1/2 in J/mm3, mm and mm/s */
    NEAR((u / 1e9 - 6.2) / (pow(200, .25) * pow(.02, -.75) / sqrt(250)), 7.42, .006);
    CHECK(hs_grind_burn_J_m3(&faster, .02e-3, .200, .500, NULL) == HS_OK);
    CHECK(hs_grind_burn_J_m3(&deeper, .04e-3, .200, .250, NULL) == HS_OK);
    CHECK(faster < u && deeper < u);
    CHECK(hs_grind_contact_m(&lc, .02e-3, .200, NULL) == HS_OK);
    NEAR(lc, .002, 1e-12);                                 /* exact: sqrt(a d) */
    NEAR(hs_grind_rate_m2_s(.02e-3, .25) * 1e6, 5, 1e-12); /* mm3 per mm and s */
}

static void grind__impossible_settings__are_refused(void) {
    hs_grind_face f = flat();
    hs_grind_time t = {.time_s = 7};
    double out = 7;
    f.cross_feed_m = 0;
    CHECK(hs_grind_passes(&t, &f, NULL) == HS_E_IMPOSSIBLE);
    f = flat();
    f.stock_m = -1e-3;
    CHECK(hs_grind_passes(&t, &f, NULL) == HS_E_IMPOSSIBLE);
    f = flat();
    f.table_speed_m_s = NAN;
    CHECK(hs_grind_passes(&t, &f, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_grind_flatten_Pa(&out, .3e-3, 0, .3, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_grind_burn_J_m3(&out, 0, .2, .25, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_grind_contact_m(&out, NAN, .2, NULL) == HS_E_IMPOSSIBLE);
    NEAR(out, 7, 0);
    NEAR(t.time_s, 7, 0);
}

HS_TEST_MAIN("model grind", TEST(grind__passes__match_the_check_value),
             TEST(grind__whole_multiples__cost_no_extra_pass),
             TEST(grind__more_stock__never_takes_less_time),
             TEST(grind__chuck__flattens_what_is_thin), TEST(grind__burn__matches_the_check_value),
             TEST(grind__impossible_settings__are_refused))
