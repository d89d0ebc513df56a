/* The drawn window: columns counted by hand, 61 columns = 60 steps. */
#include "report/bar.h"
#include "support/check.h"

#include <string.h>

static char bar[HS_BAR_WIDTH + 1];

static int at(char c) {
    const char *p = strchr(bar, c);
    return p ? (int)(p - bar) : -1;
}

/* exact: a window of 60 units, one column a unit */
static void bar__inside__marks_stand_where_the_sizes_are(void) {
    hs_bar_window(bar, 100, 160, 130, 10);
    CHECK(strlen(bar) == HS_BAR_WIDTH);
    CHECK(bar[0] == '|' && bar[60] == '|');
    CHECK(at('[') == 20);
    CHECK(at('O') == 30);
    CHECK(at(']') == 40);
    CHECK(bar[19] == '.' && bar[21] == '#' && bar[41] == '.');
}

static void bar__offer_wider_than_the_window__shows_both_ends(void) {
    hs_bar_window(bar, 100, 160, 130, 31);
    CHECK(bar[0] == '<' && bar[60] == '>');
    hs_bar_window(bar, 100, 160, 150, 20);
    CHECK(bar[0] == '|' && bar[60] == '>');
    CHECK(at('[') == 30);
}

static void bar__offer_that_just_fits__is_inside(void) {
    hs_bar_window(bar, 20.55, 20.65, 20.60, 0.05);
    CHECK(bar[0] == '[' && bar[60] == ']');
}

static void bar__no_window__draws_no_offer(void) {
    hs_bar_window(bar, 1, 1, 1, 0.1);
    CHECK(at('#') == -1 && at('O') == -1);
    hs_bar_window(bar, 1, 2, NAN, 0.1);
    CHECK(at('#') == -1 && at('O') == -1);
    hs_bar_crossed(bar);
    CHECK(strlen(bar) == HS_BAR_WIDTH);
    CHECK(at('x') == 1 && at('#') == -1);
}

HS_TEST_MAIN("report_bar", TEST(bar__inside__marks_stand_where_the_sizes_are),
             TEST(bar__offer_wider_than_the_window__shows_both_ends),
             TEST(bar__offer_that_just_fits__is_inside), TEST(bar__no_window__draws_no_offer))
