/* Bars as listed, against sums done by hand and a plain walk down the lists:
 *   size - under nominal - straightness * length - 2 * rolled skin >= rough size */
#include "plan/blank_list.h"

#include "constants.h"
#include "hardskin/tables/table.h"
#include "plan/blank.h"
#include "support/check.h"

#include <string.h>

static const double IN = 0.0254;

/* exact: 306 mm of flat 25 mm thick (EN 10058): under 1, bow 2.5 mm/m * .306 m = .765 (section
 * above 1000 mm2), skin .060 in a side: 25 - 1 - .765 - 3.048 = 20.187 mm. */
static void list__flat__turns_at_the_size_worked_by_hand(void) {
    hs_bar_asked asked = {.width_m = 60e-3, .thickness_m = 20.18e-3, .length_m = 0.306};
    hs_bar bar;
    hs_bar_choose(&bar, &asked, 0);
    CHECK(bar.found && !strcmp(bar.form, "flat") && !strcmp(bar.standard, "EN 10058"));
    NEAR(bar.width_m, 70e-3, 1e-12);
    NEAR(bar.thickness_m, 25e-3, 1e-12);
    NEAR(bar.bow_m, 0.765e-3, 1e-12);
    NEAR(bar.skin_m, 0.060 * IN, 1e-12);
    asked.thickness_m = 20.19e-3;
    hs_bar_choose(&bar, &asked, 0);
    NEAR(bar.thickness_m, 30e-3, 1e-12);
    NEAR(bar.skin_m, 0.075 * IN, 1e-12);
}

/* exact: 166 mm of round 36 (EN 10060): 36 - .8 - .664 - 3.81 = 30.726; round 35: 35 - .6 - .664 -
 * 3.81 = 29.926; bright (EN 10278, h11): 32 - .16 - .166 = 31.674. */
static void list__round__hot_rolled_and_bright(void) {
    hs_bar_asked asked = {.width_m = 30.72e-3, .length_m = 0.166};
    hs_bar bar;
    hs_bar_choose(&bar, &asked, 1);
    NEAR(bar.width_m, 36e-3, 1e-12);
    asked.width_m = 30.73e-3;
    hs_bar_choose(&bar, &asked, 1);
    NEAR(bar.width_m, 38e-3, 1e-12);
    asked.bright = 1;
    hs_bar_choose(&bar, &asked, 1);
    NEAR(bar.width_m, 32e-3, 1e-12);
    NEAR(bar.skin_m, 0, 0);
    NEAR(bar.bow_m, 0.166e-3, 1e-12);
    asked.width_m = 31.68e-3;
    hs_bar_choose(&bar, &asked, 1);
    CHECK(bar.width_m > 32e-3);
}

/* exact: 1 in clean, 12 in and 6 mm long: 1 1/4 in: 1.25 - .011 - .0514 - .150 = 1.0376 in; 1 1/8
 * in: .914. A bar mill's rule (published, secondary page: 1.6 % of nominal a side) would take
 * 1/.968 = 1.033, so 1 1/8 in: it counts neither straightness nor tolerance. */
static void list__inch_round__larger_than_the_mill_s_rule(void) {
    hs_bar_asked asked = {.width_m = IN, .length_m = 12 * IN + 6e-3, .inch = 1};
    hs_bar bar;
    hs_bar_choose(&bar, &asked, 1);
    CHECK(bar.found && !strcmp(bar.standard, "ASTM A29"));
    NEAR(bar.width_m, 1.25 * IN, 1e-12);
    asked.width_m = 1.0377 * IN;
    hs_bar_choose(&bar, &asked, 1);
    NEAR(bar.width_m, 1.375 * IN, 1e-12);
}

static double left_m(const hs_table *list, size_t row, double length_m) {
    double size_m = hs_table_number(list, row, HS_STOCK_EN_SIZE) * 1e-3;
    double under_m = hs_table_number(list, row, HS_STOCK_EN_UNDER) * 1e-3;
    return size_m - under_m - 0.004 * length_m - 2 * hs_blank_skin_m(size_m);
}

/* exact: every half millimetre from 5 to 150, and 7 um so that none is a tie, against a plain walk
 * down the list */
static void list__rounds__the_smallest_that_holds(void) {
    const hs_table *list = hs_table_get(HS_TABLE_STOCK_EN);
    size_t found = 0, not_found = 0;
    for (int half = 10; half <= 300; half++) {
        hs_bar_asked asked = {.width_m = half * 0.5e-3 + 7e-6, .length_m = 0.2};
        hs_bar bar;
        double least_m = NAN;
        for (size_t r = 0; r < list->rows; r++)
            if (!strcmp(hs_table_text(list, r, HS_STOCK_EN_LIST), "EN round size") &&
                left_m(list, r, 0.2) >= asked.width_m && isnan(least_m))
                least_m = hs_table_number(list, r, HS_STOCK_EN_SIZE) * 1e-3;
        hs_bar_choose(&bar, &asked, 1);
        CHECK(bar.found == !isnan(least_m));
        if (bar.found) NEAR(bar.width_m, least_m, 1e-12);
        if (bar.found)
            found++;
        else
            not_found++;
    }
    CHECK(found > 150 && not_found > 0);
}

/* No flat as thick as it is wide: that is a square, of another standard. */
static void list__as_thick_as_wide__a_square(void) {
    size_t squares = 0;
    for (int mm = 8; mm <= 70; mm++) {
        hs_bar_asked asked = {.width_m = mm * 1e-3, .thickness_m = mm * 1e-3, .length_m = 0.1};
        hs_bar bar;
        hs_bar_choose(&bar, &asked, 0);
        if (!bar.found) continue;
        int equal = fabs(bar.width_m - bar.thickness_m) < 1e-9;
        CHECK(equal == !strcmp(bar.form, "square"));
        CHECK(bar.width_m >= bar.thickness_m);
        squares += (size_t)equal;
    }
    CHECK(squares > 30);
}

HS_TEST_MAIN("plan_blank_list", TEST(list__flat__turns_at_the_size_worked_by_hand),
             TEST(list__round__hot_rolled_and_bright),
             TEST(list__inch_round__larger_than_the_mill_s_rule),
             TEST(list__rounds__the_smallest_that_holds), TEST(list__as_thick_as_wide__a_square))
