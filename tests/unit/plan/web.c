/* What holes and slots leave of a section, by hand. */
#include "plan/web.h"

#include "support/check.h"

#include <math.h>
#include <string.h>

static const double PI = 3.14159265358979323846;

typedef struct bench {
    hs_face face[6];
    hs_feature feature[1];
    hs_point outline[8];
    hs_job job;
    hs_result_section found;
} bench;

static void start(bench *b, hs_form form, const char *const *faces, size_t n) {
    *b = (bench){.job = {.part = {.form = form}, .features = 1}};
    for (size_t i = 0; i < n; i++)
        b->face[i].name = faces[i];
    b->job.face = b->face;
    b->job.faces = n;
    b->job.feature = b->feature;
}

static hs_result_left drill(bench *b, double hole_m, int face) {
    b->feature[0] = (hs_feature){.kind = HS_HOLE, .size_m = hole_m, .through_face = face};
    hs_web_find(&b->found, &b->job);
    CHECK(b->found.lefts == 1);
    return b->found.left[0];
}

static void plate(bench *b) {
    static const char *const faces[] = {"top", "bottom", "front", "back", "left", "right"};
    start(b, HS_PLATE, faces, 6);
    b->job.part.length_m = .3;
    b->job.part.width_m = .06;
    b->job.part.thickness_m = .02;
}

static void web__plate__by_rectangles(void) {
    bench b;
    plate(&b);
    hs_result_left l = drill(&b, .012, 0); /* exact: 60 - 12 of 60 wide are left */
    NEAR(l.web_m, .024, 1e-15);
    NEAR(l.stiffness, .8, 1e-12);
    CHECK(!l.thin && !l.weak && !l.guessed);
    NEAR(b.found.thick_m, .02, 1e-15);
    l = drill(&b, .016, 0); /* exact: 44 of 60, below three quarters */
    CHECK(l.weak && !l.thin);
    l = drill(&b, .008, 3); /* exact: (20 - 8) / 2 = 6, below 20 / 3; 12 of 20 */
    NEAR(l.web_m, .006, 1e-15);
    NEAR(l.stiffness, .6, 1e-12);
    CHECK(l.thin && l.weak);
    l = drill(&b, .006, 2); /* exact: 7 is above 20 / 3 */
    CHECK(!l.thin && l.weak);
    l = drill(&b, .010, 4); /* exact: a disc out of b t^3 / 12 */
    NEAR(l.stiffness, 1 - PI * 1e-8 / 64 / (.06 * 8e-6 / 12), 1e-12);
    l = drill(&b, .006, -1); /* no face named: the worst, across the thickness */
    CHECK(l.guessed && l.face == 2);
    NEAR(l.web_m, .007, 1e-15);
    l = drill(&b, .030, -1); /* fits through the top only */
    CHECK(l.face == 0);
    NEAR(l.web_m, .015, 1e-15);
    b.feature[0].kind = HS_STEP_FEATURE;
    hs_web_find(&b.found, &b.job);
    CHECK(b.found.lefts == 0);
}

/* independent: midpoint sum of y^2 over the disc outside the strip |x| < a. */
static double disc_left(double a) {
    double sum = 0;
    enum { N = 200000 };
    for (int i = 0; i < N; i++) {
        double x = a + (1 - a) * (i + .5) / N;
        sum += 2 * 2.0 / 3 * pow(1 - x * x, 1.5) * (1 - a) / N;
    }
    return sum / (PI / 4);
}

static void web__bar_and_ring__by_hand(void) {
    static const char *const bar_faces[] = {"outside", "ends"};
    static const char *const ring_faces[] = {"outside", "bore", "ends"};
    bench b;
    start(&b, HS_BAR, bar_faces, 2);
    b.job.part.diameter_m = .03;
    hs_result_left l = drill(&b, .006, 0);
    NEAR(l.stiffness, disc_left(.2), 1e-7);
    NEAR(l.web_m, .012, 1e-15);
    CHECK(!l.thin);
    l = drill(&b, .024, 0);
    NEAR(l.stiffness, disc_left(.8), 1e-7);
    CHECK(l.thin && l.weak); /* exact: 3 is below 30 / 3 */
    l = drill(&b, .015, 1);
    NEAR(l.stiffness, 1 - 1. / 16, 1e-12); /* exact: tube, 1 - (d / D)^4 */
    start(&b, HS_RING, ring_faces, 3);
    b.job.part.length_m = .05, b.job.part.outside_m = .07, b.job.part.bore_m = .045;
    l = drill(&b, .006, 0); /* exact: 44 of 50 along the ring */
    NEAR(l.stiffness, .88, 1e-12);
    NEAR(l.web_m, .022, 1e-15);
    l = drill(&b, .006, 2); /* exact: along the wall of 12.5: 3.25 a side, below a third */
    NEAR(l.web_m, .00325, 1e-12);
    CHECK(l.thin);
}

/* A rectangle as an outline, turned: the same as a plate; and a U whose web is drilled. */
static void web__profile__by_parts(void) {
    static const char *const faces[] = {"under", "right", "top", "left", "ends"};
    static const double U[] = {0, 0, 60, 0, 60, 40, 50, 40, 50, 10, 10, 10, 10, 40, 0, 40};
    bench b;
    for (int turn = 0; turn < 7; turn++) {
        start(&b, HS_PROFILE, faces, 5);
        double c = cos(turn), s = sin(turn);
        const double mm[] = {0, 0, 60, 0, 60, 20, 0, 20};
        for (size_t i = 0; i < 4; i++) {
            double x = mm[2 * i] / 1000, y = mm[2 * i + 1] / 1000;
            b.outline[i] = (hs_point){.1 + c * x - s * y, c * y + s * x};
            b.face[i].edge = i + 1;
        }
        b.job.part.section.outline = (hs_outline){b.outline, 4};
        hs_result_left l = drill(&b, .012, 0);
        NEAR(l.stiffness, .8, 1e-9);
        NEAR(l.web_m, .024, 1e-12);
        l = drill(&b, .008, 1);
        NEAR(l.stiffness, .6, 1e-9);
        CHECK(l.thin);
    }
    start(&b, HS_PROFILE, faces, 5);
    for (size_t i = 0; i < 8; i++)
        b.outline[i] = (hs_point){U[2 * i] / 1000, U[2 * i + 1] / 1000};
    b.job.part.section.outline = (hs_outline){b.outline, 8};
    b.face[0].edge = 1;
    hs_result_left l = drill(&b, .020, 0);
    /* exact: parts left: two legs 10 x 40 and two pieces of web 10 x 10; area 1000, middle at
     * (800 x 20 + 200 x 5) / 1000 = 17; about x 2 (10 x 40^3 / 12 + 400 x 3^2) + 2 (10^4 / 12 +
     * 100 x 12^2) of 170000; about y nothing but 20^3 x 10 / 12 of 560000 is lost */
    double about_x = 2 * (53333.3333333 + 3600) + 2 * (833.3333333 + 14400);
    NEAR(l.stiffness, about_x / 170000, 1e-9);
    NEAR(l.web_m, .020, 1e-12);
    NEAR(b.found.thin_m, .010, 1e-12);
}

HS_TEST_MAIN("plan_web", TEST(web__plate__by_rectangles), TEST(web__bar_and_ring__by_hand),
             TEST(web__profile__by_parts))
