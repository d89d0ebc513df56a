#include "hardskin/model/edge_case.h"

#include "constants.h"
#include "edge_plane.h"
#include "support/check.h"

static const double PI = 3.14159265358979324;
static const double DEGREE = 3.14159265358979324 / 180;

static hs_edge edge_of(double degrees) {
    hs_edge edge = {0};
    CHECK(hs_edge_make(&edge, degrees * DEGREE, NULL) == HS_OK);
    return edge;
}

static double carbon_of(double degrees, double direction, double distance) {
    double y = NAN;
    CHECK(hs_edge_carbon(&y, degrees * DEGREE, direction, distance, NULL) == HS_OK);
    return y;
}

static void edge__flat_and_bar_edge__are_error_functions(void) {
    for (double distance = 0; distance <= 8; distance += 0.37)
        for (double share = 0; share <= 1; share += 0.125) {
            double flat = share * PI, bar = share * PI / 2;
            /* exact: half-space, and the product solution of two of them */
            NEAR(carbon_of(180, flat, distance), erfc(distance * sin(flat)), 1e-12);
            NEAR(carbon_of(90, bar, distance),
                 1 - erf(distance * sin(bar)) * erf(distance * cos(bar)), 1e-12);
        }
    NEAR(carbon_of(270, 1, 0), 1, 0); /* exact: the edge belongs to the faces */
}

/* exact: a square wave of a third of the period is the wave, less itself turned by a third, plus
 * itself turned by two; what spreads it is linear and knows no direction. So the wedge of three
 * times an angle gives back the wedge of the angle: 270 degrees the bar's edge, 540 the flat. */
static void edge__wedge_of_three_times_an_angle__gives_back_the_angle(void) {
    for (double distance = 0.1; distance < 4; distance += 0.53)
        for (double share = 0.05; share < 1; share += 0.15)
            for (double third = 90; third <= 180; third += 30) {
                double all = third * DEGREE, p = share * all;
                double sum = 1 - carbon_of(3 * third, p, distance) + 1 -
                             carbon_of(3 * third, all - p, distance) - 1 +
                             carbon_of(3 * third, 2 * all - p, distance);
                NEAR(sum, 1 - carbon_of(third, p, distance), 1e-12);
            }
}

static void edge__range__is_refused(void) {
    hs_edge edge;
    double y = 7;
    CHECK(hs_edge_make(&edge, 29 * DEGREE, NULL) == HS_E_RANGE);
    CHECK(hs_edge_make(&edge, 721 * DEGREE, NULL) == HS_E_RANGE);
    CHECK(hs_edge_make(&edge, NAN, NULL) == HS_E_RANGE);
    CHECK(hs_edge_carbon(&y, PI, 3.2, 1, NULL) == HS_E_RANGE);
    CHECK(hs_edge_carbon(&y, PI, 1, 8.1, NULL) == HS_E_RANGE);
    CHECK(hs_edge_carbon(&y, PI, 1, -1, NULL) == HS_E_RANGE);
    CHECK(hs_edge_along(&y, PI / 2, 0.99, 0.1, NULL) == HS_E_RANGE);
    CHECK(hs_edge_along(&y, PI / 2, 0.5, 0.6, NULL) == HS_E_RANGE);
    CHECK(y == 7);
    edge = edge_of(90);
    CHECK(isnan(hs_edge_inward(&edge, 0.01)));
    CHECK(isnan(hs_edge_inward(&edge, 0.99)));
    edge = edge_of(270);
    CHECK(isnan(hs_edge_below(&edge, 1.01)));
    CHECK(isnan(hs_edge_below(&edge, -0.01)));
}

static void edge__angle__is_one_at_the_flat_and_falls_all_the_way(void) {
    static const double degrees[] = {30,  45,  60,  90,  120, 150, 179.9, 180, 180.1,
                                     200, 225, 270, 300, 330, 360, 450,   540, 720};
    hs_edge flat = edge_of(180), before = edge_of(degrees[0]);
    for (double y = 0.02; y <= 0.98; y += 0.08) { /* exact: there is no edge at 180 degrees */
        NEAR(hs_edge_below(&flat, y), 1, 1e-9);
        NEAR(hs_edge_inward(&flat, y), 1, 1e-9);
    }
    for (size_t i = 1; i < sizeof degrees / sizeof *degrees; i++) {
        hs_edge now = edge_of(degrees[i]);
        for (double y = 0.05; y < 0.97; y += 0.1) {
            CHECK(hs_edge_inward(&now, y) < hs_edge_inward(&before, y));
            if (degrees[i] > 180) CHECK(hs_edge_below(&now, y) < hs_edge_below(&before, y));
            if (degrees[i] > 180) CHECK(hs_edge_inward(&now, y) < hs_edge_below(&now, y));
            if (fabs(degrees[i] - 180) < 1) NEAR(hs_edge_inward(&now, y), 1, 0.01);
        }
        before = now;
    }
}

static void edge__level__lowers_the_share_to_nothing(void) {
    hs_edge edge = edge_of(270);
    double before = 2;
    for (double y = 0.03; y <= 1; y += 0.02) {
        CHECK(hs_edge_below(&edge, y) < before);
        before = hs_edge_below(&edge, y);
    }
    NEAR(hs_edge_below(&edge, 1), 0, 1e-12);
    CHECK(hs_edge_below(&edge, 0) == hs_edge_below(&edge, 0.02));
    /* exact: on the diagonal of a bar's edge erf squared = 1 - y; flat: inverse erf of 1/2 */
    double flat = 0.47693627620446987;
    hs_edge bar = edge_of(90);
    NEAR(pow(erf(hs_edge_inward(&bar, 0.5) * flat / sqrt(2)), 2), 0.5, 1e-8);
}

static void edge__along__ends_where_the_depth_is_the_flats_but_for_the_share(void) {
    /* exact: bar edge, level .5, a tenth deeper: erf(1.1 x) erf(a) = .5 with erf(x) = .5 */
    double along = NAN, x = 0.47693627620446987;
    CHECK(hs_edge_along(&along, PI / 2, 0.5, 0.1, NULL) == HS_OK);
    NEAR(erf(1.1 * x) * erf(along * x), 0.5, 1e-8);
    static const double degrees[] = {225, 270, 305, 360, 540};
    double before = 0;
    for (size_t i = 0; i < 5; i++) {
        CHECK(hs_edge_along(&along, degrees[i] * DEGREE, 0.3, 0.05, NULL) == HS_OK);
        CHECK(along > before && along < 0.5 * HS_K_EDGE_CASE_LAND);
        before = along;
        double flat = 0.73286907795921686; /* inverse erfc of .3 */
        double a = along * flat, depth = 0.95 * flat;
        NEAR(carbon_of(degrees[i], atan2(depth, a), hypot(depth, a)), 0.3, 1e-8);
    }
    CHECK(hs_edge_along(&along, 175 * DEGREE, 0.3, 0.1, NULL) == HS_OK);
    CHECK(along == 0);
}

static plane at, flat;

static double level(double y) {
    return at.core + y * (at.face - at.core);
}

/* The plane's own squares cost .005 of a share away from the singular edge of a slit. */
static void edge__constant_D__is_what_the_plane_says(void) {
    static const double degrees[] = {90, 270, 360, 540};
    plane start = {.agren = 0, .core = 0.16, .face = 0.9};
    flat = start;
    flat.shape = PLANE_FLAT;
    plane_run(&flat, 10);
    for (int i = 0; i < 4; i++) {
        hs_edge edge = edge_of(degrees[i]);
        at = start;
        at.shape = (plane_shape)i;
        plane_run(&at, 10);
        for (double y = 0.1; y < 0.45; y += 0.1) {
            double depth = plane_below(&flat, level(y));
            if (i < 2) /* independent: finite volumes */
                NEAR(plane_inward(&at, level(y)) / depth, hs_edge_inward(&edge, y), 0.008);
            if (i > 0) /* independent: the squares smear the end of a mask: .02 and .06 */
                NEAR(plane_below(&at, level(y)) / depth, hs_edge_below(&edge, y),
                     i == 1   ? 0.006
                     : i == 2 ? 0.025
                              : 0.06);
        }
    }
}

/* independent: with D of Agren, slow hand-over and closed faces the share at the level counted from
 * the square of the flat's surface share is never too high. */
static void edge__real_fire__has_at_least_the_share(void) {
    static const plane fires[] = {{.agren = 1, .core = 0.16, .face = 0.9},
                                  {.agren = 1, .core = 0.16, .face = 1.2},
                                  {.agren = 1, .core = 0.16, .face = 0.9, .closed = 0.2},
                                  {.agren = 1, .core = 0.16, .face = 1.0, .transfer = 4},
                                  {.agren = 1, .core = 0.16, .face = 1.2, .transfer = 1.5}};
    hs_edge inner = edge_of(270);
    const double squares = 0.003; /* what they cost with a constant D */
    for (size_t i = 0; i < sizeof fires / sizeof *fires; i++) {
        flat = at = fires[i];
        flat.shape = PLANE_FLAT;
        at.shape = PLANE_INNER;
        plane_run(&flat, 10);
        plane_run(&at, 10);
        double top = flat.carbon[PLANE_EDGE][PLANE_EDGE - 1];
        double surface = fmin(1, (top - at.core) / (at.face - at.core));
        for (double y = 0.1; y < 0.65; y += 0.1) {
            double counted = y / (surface * surface);
            if (counted > 0.9) break;
            double depth = plane_below(&flat, level(y));
            double below = plane_below(&at, level(y)) / depth;
            CHECK(hs_edge_below(&inner, counted) <= below + squares);
            CHECK(hs_edge_inward(&inner, counted) <= plane_inward(&at, level(y)) / depth + squares);
            if (i < 2 && y < 0.45) CHECK(hs_edge_below(&inner, counted) >= below - 0.06);
        }
    }
}

HS_TEST_MAIN("model/edge_case", TEST(edge__flat_and_bar_edge__are_error_functions),
             TEST(edge__wedge_of_three_times_an_angle__gives_back_the_angle),
             TEST(edge__range__is_refused),
             TEST(edge__angle__is_one_at_the_flat_and_falls_all_the_way),
             TEST(edge__level__lowers_the_share_to_nothing),
             TEST(edge__along__ends_where_the_depth_is_the_flats_but_for_the_share),
             TEST(edge__constant_D__is_what_the_plane_says),
             TEST(edge__real_fire__has_at_least_the_share))
