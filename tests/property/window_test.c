/* What must hold of the sums, whatever goes in: 100 000 random dimensions.
 * `own:` relations between two answers, no outside figures. */
#include "base/random.h"
#include "plan/window.h"
#include "support/check.h"

enum { SHEETS = 100000 };

typedef struct sheet {
    int inside;
    hs_limits finish;
    hs_face_sum face[2];
    double shape_m, tolerance_m;
} sheet;

static double roll(uint32_t sample, uint32_t input, double low, double high) {
    return low + (high - low) * hs_random_uniform(31, sample, input);
}

static hs_face_sum roll_face(uint32_t n, uint32_t at) {
    hs_face_sum f = {.ground = roll(n, at, 0, 1) < 0.85,
                     .clean_up_m = roll(n, at + 1, 0, 0.15e-3),
                     .budget_m = roll(n, at + 2, 0.1e-3, 1.2e-3),
                     .split_m = roll(n, at + 3, 0, 40e-6),
                     .lost_low_m = roll(n, at + 4, 0, 30e-6),
                     .growth_low_m = roll(n, at + 5, -20e-6, 20e-6)};
    f.lost_high_m = f.lost_low_m + roll(n, at + 6, 0, 30e-6);
    f.growth_high_m = f.growth_low_m + roll(n, at + 7, 0, 30e-6);
    return f;
}

static sheet roll_sheet(uint32_t n) {
    double size_m = roll(n, 0, 5e-3, 100e-3);
    sheet s = {.inside = n % 3 == 0,
               .finish = {size_m - roll(n, 1, 5e-6, 100e-6), size_m},
               .shape_m = roll(n, 2, 0, 0.5e-3),
               .tolerance_m = roll(n, 3, 10e-6, 200e-6)};
    s.face[0] = roll_face(n, 10);
    s.face[1] = n % 2 ? s.face[0] : roll_face(n, 20);
    if (!s.face[1].ground) s.face[0].ground = 1;
    return s;
}

static hs_limits window_of(const sheet *s) {
    return hs_window_faces(s->inside, s->finish, s->face, s->shape_m);
}

/* One doubt of one face, or of both together, made wider. */
static void widen(sheet *s, uint32_t which, double by_m) {
    hs_face_sum *f = &s->face[which % 2];
    switch (which / 2) {
    case 0:
        f->clean_up_m += by_m;
        break;
    case 1:
        f->budget_m -= by_m;
        break;
    case 2:
        f->split_m += by_m;
        break;
    case 3:
        f->lost_high_m += by_m;
        break;
    case 4:
        f->lost_low_m -= by_m;
        break;
    case 5:
        f->growth_low_m -= by_m;
        break;
    case 6:
        f->growth_high_m += by_m;
        break;
    case 7:
        s->shape_m += by_m;
        break;
    case 8:
        s->tolerance_m += by_m;
        break;
    default:
        s->finish.low_m -= by_m;
        s->finish.high_m += by_m; /* the wheel may stop anywhere in it */
    }
}

static const double noise_m = 1e-12;

static void window__wider_doubt__never_helps(void) {
    long worse = 0;
    for (uint32_t n = 0; n < SHEETS; n++) {
        sheet s = roll_sheet(n), t = s;
        double room = s.finish.high_m - s.finish.low_m;
        widen(&t, n / 7 % 20, roll(n, 40, 0, room / 2));
        hs_limits a = window_of(&s), b = window_of(&t);
        hs_verdict before = hs_window_verdict(a, s.tolerance_m);
        hs_verdict after = hs_window_verdict(b, t.tolerance_m);
        CHECK(b.low_m >= a.low_m - noise_m);
        CHECK(b.high_m <= a.high_m + noise_m || b.high_m < b.low_m);
        CHECK(b.high_m - b.low_m <= a.high_m - a.low_m + noise_m);
        CHECK(after >= before);
        worse += after > before;
    }
    printf("%d sheets with one doubt widened: %ld verdicts fall, none rises\n", SHEETS, worse);
    CHECK(worse > SHEETS / 100); /* the relation is put to the test */
}

/* Clean-up gains what the case loses. */
static void window__more_stock__never_leaves_more_case(void) {
    for (uint32_t n = 0; n < SHEETS; n++) {
        sheet s = roll_sheet(n);
        double stock_m = roll(n, 50, 0, 1e-3), more_m = roll(n, 51, 1e-6, 1e-3);
        CHECK(hs_face_deepest(&s.face[0], s.shape_m, stock_m + more_m) >
                  hs_face_deepest(&s.face[0], s.shape_m, stock_m) ||
              !s.face[0].ground);
        double step = s.inside ? -more_m : more_m, at = s.finish.high_m + step;
        hs_limits lean = {at, at}, rich = {at + step, at + step};
        hs_shape_limits a = hs_window_shape_limits(s.inside, s.finish, lean, s.face);
        hs_shape_limits b = hs_window_shape_limits(s.inside, s.finish, rich, s.face);
        CHECK(b.case_m < a.case_m);
        CHECK(b.clean_m > a.clean_m);
    }
}

/* Both printed windows lie inside the true one, and end less than a printed digit from it. */
static void window__mm_and_inch_twins__agree_to_the_last_digit(void) {
    for (uint32_t n = 0; n < SHEETS; n++) {
        sheet s = roll_sheet(n);
        hs_limits w = window_of(&s);
        for (int inch = 0; inch < 2; inch++) {
            double low = hs_window_round(w.low_m, inch, HS_UP);
            double high = hs_window_round(w.high_m, inch, HS_DOWN);
            double digit = inch ? 2.54e-6 : 1e-6;
            /* a printable size but for 1e-9 of itself is kept */
            double guard_m = 1e-9 * s.finish.high_m * 2;
            CHECK(low >= w.low_m - guard_m && low < w.low_m + digit + guard_m);
            CHECK(high <= w.high_m + guard_m && high > w.high_m - digit - guard_m);
        }
    }
}

HS_TEST_MAIN("property_window", TEST(window__wider_doubt__never_helps),
             TEST(window__more_stock__never_leaves_more_case),
             TEST(window__mm_and_inch_twins__agree_to_the_last_digit))
