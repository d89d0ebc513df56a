/* The aim is a size that can be written down and lies on the safe side of both limits. */
#include "plan/aim.h"

#include "base/random.h"
#include "support/check.h"

#include <math.h>

/* exact: a printed number is a whole multiple of its last place; inside means inside */
static void aim__random_windows__lies_inside_or_is_refused(void) {
    long refused = 0, coarse = 0;
    for (uint32_t i = 0; i < 20000; i++) {
        double low = 5 + 95 * hs_random_uniform(3, i, 0);
        double width = pow(10, -5 + 5 * hs_random_uniform(3, i, 1));
        double size = low + width * (2 * hs_random_uniform(3, i, 2) - 0.5); /* also outside */
        double aim = hs_aim_readable(size, low, low + width, 2, 3);
        if (isnan(aim)) {
            refused++;
            CHECK(floor((low + width) * 1e3) < ceil(low * 1e3));
            continue;
        }
        CHECK(aim >= low - 1e-9 && aim <= low + width + 1e-9);
        NEAR(aim * 1e3, round(aim * 1e3), 1e-6);
        coarse += fabs(aim * 1e2 - round(aim * 1e2)) < 1e-7;
    }
    printf("aims in random windows: %ld refused, %ld to a hundredth\n", refused, coarse);
    CHECK(refused > 100 && coarse > 1000);
}

static void aim__best_size_a_step_outside__is_moved_in(void) {
    NEAR(hs_aim_readable(20.5004, 20.5006, 20.5049, 2, 3), 20.501, 1e-9);
    NEAR(hs_aim_readable(20.5048, 20.5006, 20.5044, 2, 3), 20.504, 1e-9);
    CHECK(isnan(hs_aim_readable(20.5004, 20.5002, 20.5008, 2, 3)));
    CHECK(isnan(hs_aim_readable(NAN, 20, 21, 2, 3)));
    CHECK(isnan(hs_aim_readable(20.5, 20.6, 20.4, 2, 3)));
}

HS_TEST_MAIN("plan aim", TEST(aim__random_windows__lies_inside_or_is_refused),
             TEST(aim__best_size_a_step_outside__is_moved_in))
