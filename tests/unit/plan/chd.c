#include "plan/chd.h"

#include "support/check.h"

#include <math.h>
#include <string.h>

static int writes(double depth_mm, double limit_HV, const char *expected) {
    char text[96] = "x";
    hs_chd_write(text, sizeof text, depth_mm * 1e-3, limit_HV);
    return !strcmp(text, expected);
}

static void chd__the_usual_limit__bare_symbol_and_deviation(void) {
    /* published: ISO 15787:2001 after DIN 6773: .5 +.3 (read), .8 +.4 (from memory) */
    CHECK(writes(0.5, 550, "CHD = 0.5 +0.3 mm"));
    CHECK(writes(0.8, 550, "CHD = 0.8 +0.4 mm"));
    CHECK(writes(0.05, 550, "CHD = 0.05 +0.03 mm"));
    CHECK(writes(3.0, 550, "CHD = 3.0 +1.2 mm"));
}

static void chd__between__rounds_up_and_takes_the_row_below(void) {
    CHECK(writes(0.6, 550, "CHD = 0.6 +0.3 mm"));
    CHECK(writes(0.635, 550, "CHD = 0.64 +0.3 mm")); /* .025 in */
    CHECK(writes(0.796, 550, "CHD = 0.8 +0.4 mm"));
}

static void chd__another_limit__only_in_the_steps_of_the_standard(void) {
    /* published: ISO 18203: other limits above 550 HV in steps of 25; a maker writes CHD 610 */
    CHECK(writes(0.8, 600, "CHD 600 = 0.8 +0.4 mm"));
    CHECK(writes(0.8, 513, "") && writes(0.8, 560, "") && writes(0.8, 610, ""));
    CHECK(hs_chd_limit(550) && hs_chd_limit(575) && !hs_chd_limit(525) && !hs_chd_limit(NAN));
    CHECK(writes(0.04, 550, "") && writes(3.1, 550, "") && writes(NAN, 550, ""));
}

HS_TEST_MAIN("plan_chd", TEST(chd__the_usual_limit__bare_symbol_and_deviation),
             TEST(chd__between__rounds_up_and_takes_the_row_below),
             TEST(chd__another_limit__only_in_the_steps_of_the_standard))
