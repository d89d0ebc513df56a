#include "hardskin/model/section.h"
#include "base/random.h"
#include "support/check.h"

#include <string.h>

static const double PI = 3.14159265358979323846;

static hs_section from_mm(hs_point *point, const double *mm, size_t n) {
    for (size_t i = 0; i < n; i++)
        point[i] = (hs_point){mm[2 * i] / 1000, mm[2 * i + 1] / 1000};
    hs_section section = {{point, n}, NULL, 0};
    return section;
}

static const double RECTANGLE[] = {0, 0, 40, 0, 40, 20, 0, 20};
static const double CHANNEL[] = {0, 0, 60, 0, 60, 40, 50, 40, 50, 10, 10, 10, 10, 40, 0, 40};
static const double ANGLE[] = {0, 0, 60, 0, 60, 8, 8, 8, 8, 40, 0, 40};

/* A, xc, yc, Ix, Iy, Ixy, V/A in mm. */
static void expect_mm(const double *mm, size_t n, const double *want) {
    hs_point point[16];
    hs_section section = from_mm(point, mm, n);
    hs_section_properties p = {0};
    CHECK(hs_section_measure(&p, &section, NULL) == HS_OK);
    NEAR(p.area_m2 * 1e6, want[0], 1e-9);
    NEAR(p.x_m * 1e3, want[1], .00006);
    NEAR(p.y_m * 1e3, want[2], .00006);
    NEAR(p.Ix_m4 * 1e12, want[3], .006);
    NEAR(p.Iy_m4 * 1e12, want[4], .006);
    NEAR(p.Ixy_m4 * 1e12, want[5], .006);
    NEAR(p.cooling_size_m * 1e3, want[6], .00006);
}

static void section__table__matches_to_the_printed_digits(void) {
    /* exact: three sections by hand (rectangles added up) */
    const double rectangle[] = {800, 20, 10, 26666.67, 106666.67, 0, 6.6667};
    const double channel[] = {1200, 30, 15, 170000, 560000, 0, 4.6154};
    const double angle[] = {736, 20.9565, 10.9565, 91187.94, 258227.94, -86817.39, 3.6800};
    expect_mm(RECTANGLE, 4, rectangle);
    expect_mm(CHANNEL, 8, channel);
    expect_mm(ANGLE, 6, angle);
}

static void section__angle__has_its_principal_moments(void) {
    hs_point point[16];
    hs_section section = from_mm(point, ANGLE, 6);
    hs_section_properties p = {0};
    CHECK(hs_section_measure(&p, &section, NULL) == HS_OK);
    NEAR(p.I1_m4 * 1e12, 295177.23, .006); /* exact: Mohr's circle */
    NEAR(p.I2_m4 * 1e12, 54238.65, .006);
    /* exact: about the axis at that angle the moment is I1 */
    double c = cos(p.axis1_rad), s = sin(p.axis1_rad);
    NEAR((p.Ix_m4 * c * c + p.Iy_m4 * s * s - 2 * p.Ixy_m4 * s * c) / p.I1_m4, 1, 1e-12);
}

static void section__round_and_plate__match_closed_forms(void) {
    hs_section_properties p = {0};
    CHECK(hs_section_round(&p, .030, 0, NULL) == HS_OK);
    NEAR(p.cooling_size_m, .030 / 4, 1e-15); /* exact: cylinder D/4 */
    NEAR(p.Ix_m4, PI * pow(.030, 4) / 64, 1e-18);
    CHECK(hs_section_round(&p, .030, .020, NULL) == HS_OK);
    NEAR(p.cooling_size_m, .005 / 2, 1e-15); /* exact: a ring's wall cools like a plate */
    CHECK(hs_section_plate(&p, .040, .040, NULL) == HS_OK);
    NEAR(p.cooling_size_m, .010, 1e-15); /* exact: square s/4 */
    NEAR(p.I1_m4, p.I2_m4, 1e-18);
    CHECK(hs_section_plate(&p, 1e4, .020, NULL) == HS_OK);
    NEAR(p.cooling_size_m, .010, 1e-7); /* limiting case: wide plate t/2 */
    CHECK(hs_section_round(&p, .030, .030, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_section_round(&p, NAN, 0, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_section_plate(&p, .02, 0, NULL) == HS_E_IMPOSSIBLE);
}

static void section__polygon_of_many_sides__tends_to_the_circle(void) {
    hs_point point[180];
    for (int i = 0; i < 180; i++)
        point[i] = (hs_point){1 + .015 * cos(2 * PI * i / 180), 2 + .015 * sin(2 * PI * i / 180)};
    hs_section section = {{point, 180}, NULL, 0};
    hs_section_properties polygon = {0}, disc = {0};
    CHECK(hs_section_measure(&polygon, &section, NULL) == HS_OK);
    CHECK(hs_section_round(&disc, .030, 0, NULL) == HS_OK);
    NEAR(polygon.area_m2 / disc.area_m2, 1, 1e-3);
    NEAR(polygon.Ix_m4 / disc.Ix_m4, 1, 1e-3);
    NEAR(polygon.x_m, 1, 1e-12);
    NEAR(polygon.y_m, 2, 1e-12);
}

static void section__hole__is_taken_out_whichever_way_it_turns(void) {
    hs_point point[4], hole_point[2][4] = {{{.01, .005}, {.03, .005}, {.03, .015}, {.01, .015}},
                                           {{.01, .005}, {.01, .015}, {.03, .015}, {.03, .005}}};
    for (int turn = 0; turn < 2; turn++) {
        hs_section section = from_mm(point, RECTANGLE, 4);
        hs_outline hole = {hole_point[turn], 4};
        section.holes = &hole;
        section.n_holes = 1;
        hs_section_properties p = {0};
        CHECK(hs_section_measure(&p, &section, NULL) == HS_OK);
        NEAR(p.area_m2 * 1e6, 600, 1e-9);                          /* exact */
        NEAR(p.Ix_m4 * 1e12, (40 * 8000 - 20 * 1000) / 12., 1e-6); /* exact */
        NEAR(p.perimeter_m, .120 + .060, 1e-12);                   /* the hole's walls count */
        double wall = NAN;
        CHECK(hs_section_wall(&wall, &section, 1, NULL) == HS_OK);
        NEAR(wall, .005, 1e-12); /* from the lower edge up to the hole */
    }
}

/* A random star-shaped section round (0, 0). */
static size_t star(hs_point *point, uint32_t sample) {
    size_t n = 3 + (size_t)(hs_random_uniform(11, sample, 0) * 20);
    for (size_t i = 0; i < n; i++) {
        double radius = .01 + .03 * hs_random_uniform(11, sample, 1 + (uint32_t)i);
        double angle =
            2 * PI * ((double)i + .8 * hs_random_uniform(12, sample, (uint32_t)i)) / (double)n;
        point[i] = (hs_point){radius * cos(angle), radius * sin(angle)};
    }
    return n;
}

/* Turn, mirror if asked, scale and shift a section. */
static void moved(hs_point *out, const hs_point *in, size_t n, double angle, int mirror,
                  double scale) {
    for (size_t i = 0; i < n; i++) {
        double x = mirror ? -in[i].x_m : in[i].x_m, y = in[i].y_m;
        out[i].x_m = scale * (x * cos(angle) - y * sin(angle)) + 3.7;
        out[i].y_m = scale * (x * sin(angle) + y * cos(angle)) - 1.2;
    }
}

static void section__random_polygons__keep_their_measures_when_moved(void) {
    hs_point a[24], b[24];
    for (uint32_t sample = 0; sample < 3000; sample++) {
        size_t n = star(a, sample);
        double angle = 7 * hs_random_uniform(13, sample, 0), scale = .1 + sample % 7;
        moved(b, a, n, angle, sample % 2, scale);
        hs_section first = {{a, n}, NULL, 0}, second = {{b, n}, NULL, 0};
        hs_section_properties p = {0}, q = {0};
        CHECK(hs_section_measure(&p, &first, NULL) == HS_OK);
        CHECK(hs_section_measure(&q, &second, NULL) == HS_OK);
        double s2 = scale * scale;
        NEAR(q.area_m2 / (s2 * p.area_m2), 1, 1e-9);
        NEAR(q.I1_m4 / (s2 * s2 * p.I1_m4), 1, 1e-8);
        NEAR(q.I2_m4 / (s2 * s2 * p.I1_m4), p.I2_m4 / p.I1_m4, 1e-8);
        NEAR(q.cooling_size_m / (scale * p.cooling_size_m), 1, 1e-9);
        NEAR(q.reach_m / (scale * p.reach_m), 1, 1e-9);
        CHECK(p.I1_m4 >= p.I2_m4 && p.I2_m4 > 0);
    }
}

/* Half the width and the middle of the section on a line y, star-shaped ones cut anywhere: all
 * crossings in order along x. */
static void scan(double *sum, const hs_point *point, size_t n, double y, double dy) {
    double x[32];
    size_t m = 0;
    for (size_t i = 0; i < n; i++) {
        hs_point a = point[i], b = point[(i + 1) % n];
        if ((a.y_m > y) != (b.y_m > y))
            x[m++] = a.x_m + (y - a.y_m) / (b.y_m - a.y_m) * (b.x_m - a.x_m);
    }
    for (size_t i = 0; i < m; i++)
        for (size_t j = i + 1; j < m; j++)
            if (x[j] < x[i]) {
                double t = x[i];
                x[i] = x[j], x[j] = t;
            }
    for (size_t i = 0; i + 1 < m; i += 2) {
        double l = x[i], r = x[i + 1];
        sum[0] += (r - l) * dy;
        sum[1] += (r - l) * y * y * dy;
        sum[2] += (r * r * r - l * l * l) / 3 * dy;
        sum[3] += (r * r - l * l) / 2 * y * dy;
    }
}

static void section__random_polygons__agree_with_a_scan(void) {
    /* independent: the section cut into 4000 lines; its error is of the order of one line */
    hs_point point[24];
    for (uint32_t sample = 0; sample < 60; sample++) {
        size_t n = star(point, sample);
        double sum[4] = {0}, dy = .1 / 4000;
        for (int i = 0; i < 4000; i++)
            scan(sum, point, n, -.05 + (i + .5) * dy, dy);
        hs_section section = {{point, n}, NULL, 0};
        hs_section_properties p = {0};
        CHECK(hs_section_measure(&p, &section, NULL) == HS_OK);
        double A = p.area_m2, size4 = p.I1_m4 + A * (p.x_m * p.x_m + p.y_m * p.y_m);
        NEAR(sum[0] / A, 1, 2e-3);
        NEAR((p.Ix_m4 + A * p.y_m * p.y_m - sum[1]) / size4, 0, 2e-3);
        NEAR((p.Iy_m4 + A * p.x_m * p.x_m - sum[2]) / size4, 0, 2e-3);
        NEAR((p.Ixy_m4 + A * p.x_m * p.y_m - sum[3]) / size4, 0, 2e-3);
    }
}

static void expect_refused(const double *mm, size_t n, const char *named) {
    hs_point point[16];
    hs_section section = from_mm(point, mm, n);
    hs_error err = {0};
    hs_section_properties p = {.area_m2 = 7};
    CHECK(hs_section_measure(&p, &section, &err) == HS_E_OUTLINE);
    CHECK(strstr(err.message, named) != NULL);
    NEAR(p.area_m2, 7, 0);
}

static void section__outlines_that_are_none__name_the_vertex(void) {
    const double bow_tie[] = {0, 0, 10, 10, 10, 0, 0, 10};
    const double two[] = {0, 0, 10, 0};
    const double flat[] = {0, 0, 10, 0, 20, 0};
    const double repeated[] = {0, 0, 10, 0, 10, 0, 10, 10};
    const double closed[] = {0, 0, 10, 0, 10, 10, 0, 0};
    const double spike[] = {0, 0, 10, 0, 10, 10, 10, 20, 10, 10, 0, 10};
    const double back[] = {0, 0, 20, 0, 10, 0, 10, 10};
    const double touch[] = {0, 0, 20, 0, 20, 20, 10, 0, 0, 20};
    const double nothing[] = {0, 0, NAN, 0, 10, 10};
    expect_refused(bow_tie, 4, "vertex 1 and from vertex 3");
    expect_refused(two, 2, "fewer than three");
    expect_refused(flat, 3, "vertex");
    expect_refused(repeated, 4, "vertex 3");
    expect_refused(closed, 4, "vertex 1");
    expect_refused(spike, 6, "vertex");
    expect_refused(back, 4, "vertex 2");
    expect_refused(touch, 5, "vertex");
    expect_refused(nothing, 3, "vertex 2");
}

static hs_status with_holes(const double *first_mm, const double *second_mm) {
    hs_point outline[4], a[4], b[4];
    hs_section section = from_mm(outline, RECTANGLE, 4);
    hs_outline hole[2] = {from_mm(a, first_mm, 4).outline, from_mm(b, second_mm, 4).outline};
    section.holes = hole;
    section.n_holes = 2;
    return hs_section_check(&section, NULL);
}

static void section__holes_that_meet__are_refused(void) {
    const double left[] = {5, 5, 10, 5, 10, 10, 5, 10}, right[] = {20, 5, 25, 5, 25, 10, 20, 10};
    const double over[] = {8, 6, 15, 6, 15, 9, 8, 9}, inside[] = {6, 6, 8, 6, 8, 8, 6, 8};
    const double outside[] = {50, 5, 60, 5, 60, 10, 50, 10}, edge[] = {20, 0, 25, 0, 25, 5, 20, 5};
    const double around[] = {-5, -5, 45, -5, 45, 25, -5, 25},
                 beside[] = {10, 5, 15, 5, 15, 10, 10, 10};
    CHECK(with_holes(left, right) == HS_OK);
    CHECK(with_holes(left, over) == HS_E_OUTLINE);
    CHECK(with_holes(left, inside) == HS_E_OUTLINE);
    CHECK(with_holes(inside, left) == HS_E_OUTLINE);
    CHECK(with_holes(left, outside) == HS_E_OUTLINE);
    CHECK(with_holes(left, edge) == HS_E_OUTLINE);
    CHECK(with_holes(left, around) == HS_E_OUTLINE);
    CHECK(with_holes(left, beside) == HS_E_OUTLINE);
    CHECK(with_holes(left, left) == HS_E_OUTLINE);
}

static void section__edges_of_a_channel__have_walls_and_pairs(void) {
    /* exact: edges of the U by hand. 1 bottom, 2 right, 3 right rim, 4 inner right, 5 floor,
     * 6 inner left, 7 left rim, 8 left. Forward and backward outline must agree. */
    hs_point point[16], reverse[16];
    hs_section u = from_mm(point, CHANNEL, 8);
    double wall = NAN, distance = NAN, extent = NAN;
    hs_edge_pair pair = HS_EDGES_OBLIQUE;
    CHECK(hs_section_wall(&wall, &u, 1, NULL) == HS_OK);
    NEAR(wall, .010, 1e-12);
    CHECK(hs_section_wall(&wall, &u, 3, NULL) == HS_OK);
    NEAR(wall, .040, 1e-12);
    CHECK(hs_section_wall(&wall, &u, 4, NULL) == HS_OK);
    NEAR(wall, .010, 1e-12);
    CHECK(hs_section_pair(&pair, &distance, &u, 2, 8, NULL) == HS_OK);
    CHECK(pair == HS_EDGES_OUTSIDE);
    NEAR(distance, .060, 1e-12);
    CHECK(hs_section_pair(&pair, &distance, &u, 4, 6, NULL) == HS_OK);
    CHECK(pair == HS_EDGES_INSIDE);
    NEAR(distance, .040, 1e-12);
    CHECK(hs_section_pair(&pair, &distance, &u, 3, 5, NULL) == HS_OK);
    CHECK(pair == HS_EDGES_STEP);
    NEAR(distance, .030, 1e-12);
    CHECK(hs_section_pair(&pair, &distance, &u, 1, 2, NULL) == HS_OK);
    CHECK(pair == HS_EDGES_OBLIQUE);
    NEAR(distance, 0, 0);
    CHECK(hs_section_extent(&extent, &u, 5, NULL) == HS_OK);
    NEAR(extent, .040, 1e-12);
    for (size_t i = 0; i < 8; i++)
        reverse[i] = point[7 - i];
    hs_section back = {{reverse, 8}, NULL, 0};
    hs_section_edge edge = {{0, 0}, 0, 0, 0};
    CHECK(hs_section_edge_at(&edge, &back, 7, NULL) == HS_OK); /* the bottom again */
    NEAR(edge.nx, 0, 1e-15);
    NEAR(edge.ny, -1, 1e-15);
    NEAR(edge.length_m, .060, 1e-15);
    CHECK(hs_section_wall(&wall, &back, 7, NULL) == HS_OK);
    NEAR(wall, .010, 1e-12);
}

static void section__edges_that_are_not_there__are_refused(void) {
    hs_point point[16];
    hs_section u = from_mm(point, CHANNEL, 8);
    double out = 7;
    hs_edge_pair pair = HS_EDGES_STEP;
    CHECK(hs_section_wall(&out, &u, 0, NULL) == HS_E_OUTLINE);
    CHECK(hs_section_wall(&out, &u, 9, NULL) == HS_E_OUTLINE);
    CHECK(hs_section_extent(&out, &u, 9, NULL) == HS_E_OUTLINE);
    CHECK(hs_section_pair(&pair, &out, &u, 2, 2, NULL) == HS_E_OUTLINE);
    CHECK(hs_section_pair(&pair, &out, &u, 2, 9, NULL) == HS_E_OUTLINE);
    NEAR(out, 7, 0);
    CHECK(pair == HS_EDGES_STEP);
}

static void section__corners__add_up_and_know_inner_from_outer(void) {
    hs_point point[16];
    hs_section section = from_mm(point, CHANNEL, 8);
    double sum = 0, angle = NAN;
    for (size_t k = 1; k <= 8; k++) {
        CHECK(hs_section_corner(&angle, &section, k, NULL) == HS_OK);
        NEAR(angle, (k == 5 || k == 6 ? 1.5 : 0.5) * PI, 1e-12); /* exact: its two inner corners */
        sum += angle;
    }
    NEAR(sum, 6 * PI, 1e-12);        /* exact: n - 2 half turns */
    for (size_t k = 0; k < 4; k++) { /* the other sense of rotation, and turned */
        hs_point swap = point[k];
        point[k] = point[7 - k];
        point[7 - k] = swap;
    }
    for (size_t k = 0; k < 8; k++) {
        double x = point[k].x_m, y = point[k].y_m;
        point[k] = (hs_point){0.6 * x - 0.8 * y, 0.8 * x + 0.6 * y};
    }
    CHECK(hs_section_corner(&angle, &section, 3, NULL) == HS_OK);
    NEAR(angle, 1.5 * PI, 1e-12);
    CHECK(hs_section_corner(&angle, &section, 2, NULL) == HS_OK);
    NEAR(angle, 0.5 * PI, 1e-12);
    const double wedge[] = {0, 0, 40, 0, 40, 40}; /* exact: 45, 90, 45 degrees */
    section = from_mm(point, wedge, 3);
    CHECK(hs_section_corner(&angle, &section, 1, NULL) == HS_OK);
    NEAR(angle, PI / 4, 1e-12);
    angle = 7;
    CHECK(hs_section_corner(&angle, &section, 0, NULL) == HS_E_OUTLINE);
    CHECK(hs_section_corner(&angle, &section, 4, NULL) == HS_E_OUTLINE && angle == 7);
}

HS_TEST_MAIN("model section", TEST(section__table__matches_to_the_printed_digits),
             TEST(section__angle__has_its_principal_moments),
             TEST(section__round_and_plate__match_closed_forms),
             TEST(section__polygon_of_many_sides__tends_to_the_circle),
             TEST(section__hole__is_taken_out_whichever_way_it_turns),
             TEST(section__random_polygons__keep_their_measures_when_moved),
             TEST(section__random_polygons__agree_with_a_scan),
             TEST(section__outlines_that_are_none__name_the_vertex),
             TEST(section__holes_that_meet__are_refused),
             TEST(section__edges_of_a_channel__have_walls_and_pairs),
             TEST(section__edges_that_are_not_there__are_refused),
             TEST(section__corners__add_up_and_know_inner_from_outer))
