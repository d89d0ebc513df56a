#include "plan/edge.h"
#include "plan/chain.h"
#include "support/check.h"
#include "unit/plan/job.h"

#include <string.h>

static const double PI = 3.14159265358979324;
static const double DEGREE = 3.14159265358979324 / 180;

typedef struct drawn {
    hs_job job;
    hs_face face[12];
    hs_point point[12];
} drawn;

/* An outline in mm with every edge a ground face, in the sense given or mirrored, turned. */
static void draw(drawn *d, const double *mm, size_t n, int mirrored, double turned) {
    memset(d, 0, sizeof *d);
    double c = cos(turned), s = sin(turned), sign = mirrored ? -1 : 1;
    for (size_t i = 0; i < n; i++) {
        double x = sign * mm[2 * i] * 1e-3, y = mm[2 * i + 1] * 1e-3;
        d->point[i] = (hs_point){c * x - s * y, s * x + c * y};
        d->face[i] = (hs_face){.name = "", .pointer = "", .finish = HS_GROUND, .edge = i + 1};
    }
    d->job.part.form = HS_PROFILE;
    d->job.part.section.outline = (hs_outline){d->point, n};
    d->job.face = d->face;
    d->job.faces = n;
}

static hs_face_edge found(const drawn *d, size_t edge, double flat_mm) {
    hs_face_edge e = {0};
    CHECK(hs_face_edge_find(&e, &d->job, edge - 1, flat_mm * 1e-3, 1, NULL) == HS_OK);
    return e;
}

static const double WAY[] = {0, 0, 60, 0, 60, 16, 16, 16, 16, 50, 0, 50};

static void edge__inner_corner__lowers_its_two_faces_only(void) {
    static drawn d;
    draw(&d, WAY, 6, 0, 0);
    for (size_t edge = 1; edge <= 6; edge++) {
        hs_face_edge e = found(&d, edge, 1.5);
        if (edge == 3 || edge == 4) {
            NEAR(e.angle_rad, 1.5 * PI, 1e-12); /* exact: by the drawing */
            CHECK(e.corner == 4 && e.wheel_in_corner && !e.land && !e.masked);
            NEAR(hs_face_edge_share(&e, 0.3), 0.777, 0.001); /* independent: model test */
            NEAR(hs_face_edge_steep(&e, 0.3), 0.777 / (0.662 * sqrt(0.5)), 0.005);
        } else {
            CHECK(e.angle_rad == 0 && hs_face_edge_share(&e, 0.3) == 1);
            CHECK(hs_face_edge_steep(&e, 0.3) == 1);
        }
    }
}

static void edge__outline_mirrored_or_turned__has_the_same_edges(void) {
    static drawn d, u;
    draw(&d, WAY, 6, 0, 0);
    for (int k = 0; k < 8; k++) {
        draw(&u, WAY, 6, k % 2, k * 50 * DEGREE);
        for (size_t edge = 1; edge <= 6; edge++) { /* exact: nothing in the part has moved */
            hs_face_edge a = found(&d, edge, 1.5), b = found(&u, edge, 1.5);
            NEAR(b.angle_rad, a.angle_rad, 1e-9);
            CHECK(a.corner == b.corner && a.land == b.land && a.masked == b.masked);
            NEAR(hs_face_edge_share(&b, 0.4), hs_face_edge_share(&a, 0.4), 1e-9);
        }
    }
}

static void edge__ends_swapped__count_alike(void) {
    /* a bed with one square and one slanting wall, and the same the other way round */
    static const double bed[] = {0, 0, 60, 0, 60, 30, 50, 30, 50, 10, 20, 10, 10, 30, 0, 30};
    static const double swapped[] = {0, 0, 60, 0, 60, 30, 50, 30, 40, 10, 10, 10, 10, 30, 0, 30};
    static drawn d, u;
    draw(&d, bed, 8, 0, 0);
    draw(&u, swapped, 8, 0, 0);
    hs_face_edge a = found(&d, 5, 1), b = found(&u, 5, 1);
    CHECK(a.corner == 5 && b.corner == 6);
    NEAR(a.angle_rad, 1.5 * PI, 1e-12); /* the square one is the worse */
    NEAR(b.angle_rad, a.angle_rad, 1e-12);
}

static void edge__floor_of_a_narrow_slot__counts_as_one_edge(void) {
    static const double slot[] = {0, 0, 60, 0, 60, 30, 32, 30, 32, 10, 28, 10, 28, 30, 0, 30};
    static drawn d;
    draw(&d, slot, 8, 0, 0);
    hs_face_edge wide = found(&d, 5, 1.3), narrow = found(&d, 5, 1.4); /* 4 mm: 3 depths */
    CHECK(!wide.land && narrow.land && !narrow.wheel_in_corner);
    NEAR(wide.angle_rad, 1.5 * PI, 1e-12);
    NEAR(narrow.angle_rad, 2 * PI, 1e-12); /* exact: the slot with no width is a slit */
    CHECK(hs_face_edge_share(&narrow, 0.3) < hs_face_edge_share(&wide, 0.3));
}

static void edge__corners_close_together__count_as_one(void) {
    /* a step whose corner is cut by a chamfer of 2 mm */
    static const double step[] = {0, 0, 60, 0, 60, 16, 18, 16, 16, 18, 16, 50, 0, 50};
    static drawn d;
    draw(&d, step, 7, 0, 0);
    NEAR(found(&d, 3, 1.5).angle_rad, 1.5 * PI, 1e-12);
    NEAR(found(&d, 3, 0.5).angle_rad, 1.25 * PI, 1e-12);
    CHECK(found(&d, 4, 1.5).land);
}

static void edge__mask__is_a_mirror(void) {
    static drawn d;
    draw(&d, WAY, 6, 0, 0);
    d.face[3].finish = HS_SOFT; /* the leg's inside: beyond the inner corner */
    hs_face_edge e = found(&d, 3, 1.5);
    CHECK(e.masked && !e.wheel_in_corner);
    NEAR(e.angle_rad, 3 * PI, 1e-12);
    d.face[3].finish = HS_GROUND;
    d.face[1].finish = HS_SOFT; /* the foot's end: beyond a square outer edge, now a flat */
    NEAR(found(&d, 3, 1.5).angle_rad, 1.5 * PI, 1e-12);
    CHECK(found(&d, 1, 1.5).angle_rad == 0);
    /* a blunt outer edge with a mask beyond it is an inner one */
    static const double blunt[] = {0, 0, 60, 0, 60, 10, 40, 30, 0, 30};
    draw(&d, blunt, 5, 0, 0);
    CHECK(found(&d, 4, 1.5).angle_rad == 0);
    d.face[2].finish = HS_SOFT;
    NEAR(found(&d, 4, 1.5).angle_rad, 2 * (PI - 45 * DEGREE), 1e-12);
}

static void edge__strip_between_masks__is_refused(void) {
    static const double slot[] = {0, 0, 60, 0, 60, 30, 32, 30, 32, 10, 28, 10, 28, 30, 0, 30};
    static drawn d;
    hs_error err = {0};
    hs_face_edge e = {.angle_rad = 7};
    draw(&d, slot, 8, 0, 0);
    d.face[3].finish = d.face[5].finish = HS_SOFT;
    CHECK(hs_face_edge_find(&e, &d.job, 4, 2e-3, 1, &err) == HS_E_RANGE);
    CHECK(e.angle_rad == 7 && strstr(err.message, "mask"));
}

static void edge__surface_that_lags__lowers_the_share(void) {
    static drawn d;
    draw(&d, WAY, 6, 0, 0);
    hs_face_edge e = found(&d, 3, 1.5);
    double before = hs_face_edge_share(&e, 0.4);
    for (e.lag = 0.95; e.lag > 0.45; e.lag -= 0.1) {
        CHECK(hs_face_edge_share(&e, 0.4) < before);
        before = hs_face_edge_share(&e, 0.4);
    }
    e.lag = 0.4;
    CHECK(hs_face_edge_share(&e, 0.4) == 0); /* the surface itself has no more than that */
}

static void edge__outer__is_the_sharpest_that_takes_carbon(void) {
    static const double keen[] = {0, 0, 60, 0, 20, 30, 0, 30};
    static drawn d;
    draw(&d, keen, 4, 0, 0);
    NEAR(hs_outer_edge(&d.job), atan2(30, 40), 1e-12); /* exact */
    d.face[1].finish = HS_SOFT;
    NEAR(hs_outer_edge(&d.job), 0.5 * PI, 1e-12);
    static test_job bar;
    test_job_bar(&bar, "16MnCr5");
    NEAR(hs_outer_edge(&bar.job), 0.5 * PI, 1e-12);
    CHECK(!hs_ground_faces_meet(&bar.job)); /* its ends are left */
    test_job_ring(&bar, "16MnCr5");
    CHECK(!hs_ground_faces_meet(&bar.job)); /* outside and bore lie behind each other */
    test_job_plate(&bar, "16MnCr5");
    CHECK(!hs_ground_faces_meet(&bar.job)); /* top and bottom */
    draw(&d, WAY, 6, 0, 0);
    CHECK(hs_ground_faces_meet(&d.job));
}

static void edge__chain__judges_the_face_beside_a_mask_and_no_plate(void) {
    static test_job t;
    static hs_chain_work work;
    static hs_chain chain;
    static const double middle[HS_INPUTS] = {0};
    test_job_profile(&t, "16MnCr5", 0.3); /* its cut is masked, a blunt edge beside the top */
    CHECK(hs_chain_make(&chain, &t.job, &work, NULL) == HS_OK);
    hs_part_draw part = hs_chain_draw(&chain, middle);
    size_t lowered = 0;
    for (size_t i = 0; i < t.job.faces; i++) {
        if (t.job.face[i].finish != HS_GROUND) continue;
        hs_trial trial = hs_chain_trial(&chain, i, 0, &part);
        lowered += trial.case_m < trial.flat_m;
        CHECK(trial.case_m <= trial.flat_m && trial.case_m > 0.5 * trial.flat_m);
        CHECK(trial.sum.budget_m <= trial.case_m - t.job.face[i].case_m);
        CHECK(hs_chain_as_flat(&chain, i, 0.3e-3) >= 0.3e-3);
    }
    CHECK(lowered == 1);
    test_job_plate(&t, "16MnCr5");
    CHECK(hs_chain_make(&chain, &t.job, &work, NULL) == HS_OK);
    part = hs_chain_draw(&chain, middle);
    hs_trial trial = hs_chain_trial(&chain, 0, 0, &part);
    CHECK(trial.case_m == trial.flat_m && trial.steep == 1);
}

/* exact: a face that ends where the corner takes a twentieth is judged as the flat less that */
static void edge__relieved_corner__is_the_flat_but_for_a_twentieth(void) {
    static drawn d;
    draw(&d, WAY, 6, 0, 0);
    for (size_t edge = 1; edge <= 6; edge++) {
        d.face[edge - 1].relieved = 1;
        hs_face_edge e = found(&d, edge, 1.5);
        NEAR(hs_face_edge_share(&e, 0.3), edge == 3 || edge == 4 ? 0.95 : 1, 1e-12);
        CHECK(hs_face_edge_steep(&e, 0.3) == 1);
        d.face[edge - 1].relieved = 0;
    }
    d.face[2].relieved = 1; /* a mask beyond the corner is not relieved by a groove */
    d.face[3].finish = HS_SOFT;
    hs_face_edge e = found(&d, 3, 1.5);
    CHECK(e.masked && hs_face_edge_share(&e, 0.3) < 0.9);
}

HS_TEST_MAIN("plan edge", TEST(edge__relieved_corner__is_the_flat_but_for_a_twentieth),
             TEST(edge__inner_corner__lowers_its_two_faces_only),
             TEST(edge__outline_mirrored_or_turned__has_the_same_edges),
             TEST(edge__ends_swapped__count_alike),
             TEST(edge__floor_of_a_narrow_slot__counts_as_one_edge),
             TEST(edge__corners_close_together__count_as_one), TEST(edge__mask__is_a_mirror),
             TEST(edge__strip_between_masks__is_refused),
             TEST(edge__surface_that_lags__lowers_the_share),
             TEST(edge__outer__is_the_sharpest_that_takes_carbon),
             TEST(edge__chain__judges_the_face_beside_a_mask_and_no_plate))
