/* What open heats take along a route: sums, flames, oxygen, holes, rust. */
#include "plan/loss.h"

#include "constants.h"
#include "hardskin/model/oxide.h"
#include "hardskin/tables/table.h"
#include "support/check.h"
#include "support/flames.h"

#include <string.h>

static const double middle[HS_INPUTS] = {0};

typedef struct bench {
    hs_step step[HS_MAX_STEPS];
    hs_job job;
    hs_route route;
    hs_loss loss;
} bench;

static size_t row_of(const char *atmosphere) {
    int row = hs_table_row(hs_table_get(HS_TABLE_ATMOSPHERE), 0, atmosphere);
    CHECK(row >= 0);
    return row < 0 ? 0 : (size_t)row;
}

static void start(bench *b) {
    memset(b, 0, sizeof *b);
    b->job.step = b->step;
}

/* One more reheat, as hs_route_read would make it. */
static void heat(bench *b, double celsius, double minutes, size_t row, double oxygen) {
    const hs_table *t = hs_table_get(HS_TABLE_ATMOSPHERE);
    hs_route_heat *h = &b->route.heat[b->route.heats++];
    double K = celsius + 273.15;
    h->step = b->job.steps++;
    b->step[h->step] = (hs_step){.kind = HS_REHEAT, .medium_row = row, .oxygen = oxygen};
    h->multiplier_low = hs_table_number(t, row, HS_ATMOSPHERE_LOW);
    h->multiplier = hs_table_number(t, row, HS_ATMOSPHERE_MULTIPLIER);
    h->multiplier_high = hs_table_number(t, row, HS_ATMOSPHERE_HIGH);
    h->open = h->multiplier_high > 0;
    h->point[0] = (hs_heat_point){0, K};
    h->point[1] = (hs_heat_point){60 * minutes, K};
    h->n = 2;
}

static void descale(bench *b, hs_descale_method by) {
    b->step[b->job.steps++] = (hs_step){.kind = HS_DESCALE, .by = by};
}

static void make(bench *b) {
    CHECK(hs_loss_make(&b->loss, &b->job, &b->route, 0.8, NULL) == HS_OK);
}

static double lost(bench *b, const double z[HS_INPUTS]) {
    make(b);
    return hs_loss_metal(&b->loss, b->job.steps, z);
}

static double one_heat(double celsius, double minutes, size_t row, double oxygen,
                       const double z[HS_INPUTS]) {
    static bench b;
    start(&b);
    heat(&b, celsius, minutes, row, oxygen);
    return lost(&b, z);
}

static void loss__brushed_four_times__doubles_the_hour(void) {
    /* exact: 4 sqrt(1/4) = 2; left on, the squares add to the hour's */
    static bench b;
    size_t air = row_of("electric furnace in air");
    double hour = one_heat(950, 60, air, 0, middle);
    start(&b);
    for (int i = 0; i < 4; i++) {
        heat(&b, 950, 15, air, 0);
        descale(&b, HS_BY_BRUSH);
    }
    NEAR(lost(&b, middle) / hour, 2, 1e-12);
    double mass = hs_loss_mass_kg_m2(&b.loss);
    start(&b);
    for (int i = 0; i < 4; i++)
        heat(&b, 950, 15, air, 0);
    NEAR(lost(&b, middle) / hour, 1, 1e-12);
    NEAR(mass / hs_loss_mass_kg_m2(&b.loss), 2, 1e-12);
    /* exact: by hand, kp of the model, iron per oxygen of the layers */
    double kp = 0;
    CHECK(hs_oxide_kp(&kp, 950 + 273.15, 0.8, NULL) == HS_OK);
    NEAR(hour, 3.437 * sqrt(kp * 3600) / 7874, 1e-12);
}

/* own contract: no sheet may gain metal by a hotter, longer or leaner fire, at any draw */
static void loss__hotter_longer_leaner__never_loses_less(void) {
    const double side[] = {-4, -1.96, 0, 1.96, 4};
    size_t tried = 0;
    for (int s = 0; s < 5; s++) {
        double z[HS_INPUTS] = {0}, leaner[96] = {0};
        z[HS_IN_ATMOSPHERE] = side[s];
        for (size_t a = 0; a < TEST_FLAMES; a++) {
            double cooler = 0;
            size_t n = 0;
            for (double T = 760; T <= 1200; T += 5, n++, tried++) {
                double now = one_heat(T, 20, row_of(test_flames[a]), 0, z);
                CHECK(now >= cooler && now >= leaner[n]);
                CHECK(one_heat(T, 23, row_of(test_flames[a]), 0, z) >= now);
                cooler = leaner[n] = now;
            }
        }
    }
    CHECK(tried > 2000);
    NEAR(one_heat(900, 30, row_of("coated"), 0, middle),
         one_heat(900, 30, row_of("wrapped"), 0, middle), 0);
}

static void loss__oxygen_given__slows_the_start_only(void) {
    size_t lean = row_of("open lean flame");
    double whole = one_heat(900, 20, lean, 0, middle), before = 0;
    for (double oxygen = .002; oxygen <= .21; oxygen *= 1.3) {
        double now = one_heat(900, 20, lean, oxygen, middle);
        CHECK(now > before && now < whole);
        before = now;
    }
    /* exact: one hold is the closed form of hs_oxide_film_limited */
    double kp = 0, W = 0;
    CHECK(hs_oxide_kp(&kp, 1173.15, 0.8, NULL) == HS_OK);
    CHECK(hs_oxide_film_limited(&W, kp, .03, 1173.15, 1200, NULL) == HS_OK);
    NEAR(one_heat(900, 20, lean, .03, middle) / hs_oxide_lost_m(W), 1, 1e-12);
    /* the slower start matters less the longer the heat */
    CHECK(one_heat(900, 600, lean, .03, middle) / one_heat(900, 600, lean, 0, middle) >
          one_heat(900, 20, lean, .03, middle) / whole);
    double low[HS_INPUTS] = {0}, high[HS_INPUTS] = {0};
    low[HS_IN_ATMOSPHERE] = -1.96, high[HS_IN_ATMOSPHERE] = 1.96; /* doubt of the film */
    CHECK(one_heat(900, 20, lean, .03, low) < one_heat(900, 20, lean, .03, middle));
    CHECK(one_heat(900, 20, lean, .03, high) > one_heat(900, 20, lean, .03, middle));
}

static void loss__in_a_hole__only_acid_and_tank_clean_it(void) {
    static bench b;
    size_t air = row_of("electric furnace in air");
    double quarter = one_heat(950, 15, air, 0, middle), hour = one_heat(950, 60, air, 0, middle);
    static const hs_descale_method by[] = {HS_BY_BRUSH, HS_BY_BLAST, HS_BY_ACID, HS_BY_ELECTROLYSIS,
                                           HS_BY_ANODIC_ELECTROLYSIS};
    for (int k = 0; k < 5; k++) {
        start(&b);
        for (int i = 0; i < 4; i++) {
            heat(&b, 950, 15, air, 0);
            descale(&b, by[k]);
        }
        make(&b);
        hs_loss_wall wall = hs_loss_in_hole(&b.loss, middle);
        int washed = k >= 2;
        /* exact: stays on: the hour's scale; washed: a quarter's at a time, four times the metal */
        NEAR(wall.in_all_m / (washed ? 4 * quarter : hour), 1, 1e-12);
        NEAR(hs_oxide_lost_m(wall.W_kg_m2) / (washed ? quarter : hour), 1, 1e-12);
        NEAR(wall.lost_m, wall.in_all_m, 1e-15);
    }
}

static void loss__rust__lasts_until_fire_or_descale(void) {
    static bench b;
    start(&b);
    b.job.part.rust = HS_RUST_HEAVY;
    b.step[0] = (hs_step){.kind = HS_DESCALE};
    b.step[1] = (hs_step){.kind = HS_CARBURISE};
    CHECK(hs_loss_rust_at(&b.job, 0) == HS_RUST_HEAVY && hs_loss_rust_at(&b.job, 1) == HS_NO_RUST);
    b.step[0] = (hs_step){.kind = HS_CARBURISE};
    b.step[1] = (hs_step){.kind = HS_DESCALE};
    CHECK(hs_loss_rust_at(&b.job, 0) == HS_RUST_HEAVY && hs_loss_rust_at(&b.job, 1) == HS_NO_RUST);
    b.step[0] = (hs_step){.kind = HS_STRESS_RELIEVE}; /* leaves rust as oxide where it was */
    CHECK(hs_loss_rust_at(&b.job, 1) == HS_RUST_HEAVY);
    b.job.part.rust = HS_NO_RUST;
    CHECK(hs_loss_rust_at(&b.job, 0) == HS_NO_RUST);
}

HS_TEST_MAIN("plan_loss", TEST(loss__brushed_four_times__doubles_the_hour),
             TEST(loss__hotter_longer_leaner__never_loses_less),
             TEST(loss__oxygen_given__slows_the_start_only),
             TEST(loss__in_a_hole__only_acid_and_tank_clean_it),
             TEST(loss__rust__lasts_until_fire_or_descale))
