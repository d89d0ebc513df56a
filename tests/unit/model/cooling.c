/* Cooling of a plate, a bar and a square against exact series and a textbook. */
#include "hardskin/model/cooling.h"
#include "hardskin/model/quench_material.h"
#include "support/check.h"

static hs_cooling_work work;
static double centre_C, surface_C;

static hs_status cool(hs_cooling_shape shape, double size_m, double h, double k, double heat,
                      double from_C, double to_C, double time_s) {
    hs_cooling c = {.shape = shape,
                    .size_m = size_m,
                    .film = hs_curve_flat(h),
                    .conductivity_W_mK = k,
                    .heat_J_m3K = heat,
                    .from_K = from_C + 273.15,
                    .to_K = to_C + 273.15,
                    .time_s = time_s};
    hs_status status = hs_cooling_run(&centre_C, &surface_C, &c, &work, NULL);
    centre_C -= 273.15;
    surface_C -= 273.15;
    return status;
}

static void model_cooling__plate__keeps_exact_series(void) {
    /* exact: plate series of 400 terms, steel 20 mm, 850 to 60 C, k 28, rho c 4.7e6, h 1500 */
    CHECK(cool(HS_COOL_PLATE, 0.02, 1500, 28, 4.7e6, 850, 60, 1) == HS_OK);
    NEAR(centre_C, 849.7, 0.06);
    NEAR(surface_C, 745.7, 0.06);
    CHECK(cool(HS_COOL_PLATE, 0.02, 1500, 28, 4.7e6, 850, 60, 5) == HS_OK);
    NEAR(centre_C, 798.8, 0.06);
    NEAR(surface_C, 642.9, 0.06);
    CHECK(cool(HS_COOL_PLATE, 0.02, 1500, 28, 4.7e6, 850, 60, 20) == HS_OK);
    NEAR(centre_C, 555.0, 0.06);
    NEAR(surface_C, 447.2, 0.06);
}

static void model_cooling__square__keeps_exact_product(void) {
    /* exact: product of two plate series, 5 s: middle 751.0, middle of a side 605.2 C */
    CHECK(cool(HS_COOL_SQUARE, 0.02, 1500, 28, 4.7e6, 850, 60, 5) == HS_OK);
    NEAR(centre_C, 751.0, 0.1);
    NEAR(surface_C, 605.2, 0.1);
}

static void model_cooling__first_term_alone__is_kept_late(void) {
    /* exact: at Bi = 1 the first terms .86033, 1.11913 (plate) and 1.25578, 1.20709 (bar) rule:
     * R = 10 mm, k = 30, h = 3000, a = 6e-6, Fo = 1.2 */
    double seconds = 1.2 * 1e-4 / 6e-6;
    CHECK(cool(HS_COOL_PLATE, 0.02, 3000, 30, 5e6, 1000, 0, seconds) == HS_OK);
    NEAR(centre_C, 1000 * 1.11913 * exp(-0.86033 * 0.86033 * 1.2), 0.05);
    CHECK(cool(HS_COOL_BAR, 0.02, 3000, 30, 5e6, 1000, 0, seconds) == HS_OK);
    NEAR(centre_C, 1000 * 1.20709 * exp(-1.25578 * 1.25578 * 1.2), 0.05);
}

static void model_cooling__textbook__is_matched(void) {
    /* published: wall 40 mm wet on one side (here 80 mm on both), h 500, k 63.9, rho 7832, c 434,
     * -20 to 60 C, 8 min: printed 42.9 and 45.2 C from memory, exact 43.02 and 45.36 */
    CHECK(cool(HS_COOL_PLATE, 0.08, 500, 63.9, 7832.0 * 434, -20, 60, 480) == HS_OK);
    NEAR(centre_C, 43.02, 0.02);
    NEAR(surface_C, 45.36, 0.02);
    /* published: shaft 200 mm, k 14.9, a 3.95e-6, h 80, 600 in 200 C, 45 min: printed 360 from
     * memory (chart), exact 364.3 */
    CHECK(cool(HS_COOL_BAR, 0.2, 80, 14.9, 14.9 / 3.95e-6, 600, 200, 2700) == HS_OK);
    NEAR(centre_C, 364.3, 0.1);
}

static void model_cooling__nothing_to_cool__is_refused(void) {
    CHECK(cool(HS_COOL_PLATE, 0, 1500, 28, 4.7e6, 850, 60, 1) == HS_E_IMPOSSIBLE);
    CHECK(cool(HS_COOL_PLATE, 0.02, -1, 28, 4.7e6, 850, 60, 1) == HS_E_IMPOSSIBLE);
    CHECK(cool(HS_COOL_PLATE, 0.02, 1500, 0, 4.7e6, 850, 60, 1) == HS_E_IMPOSSIBLE);
    CHECK(cool(HS_COOL_PLATE, 0.02, 1500, 28, 4.7e6, 850, 60, -1) == HS_E_IMPOSSIBLE);
    CHECK(cool(HS_COOL_PLATE, 0.02, 1500, 28, 4.7e6, 850, 60, 0) == HS_OK);
    NEAR(centre_C, 850, 1e-9);
}

HS_TEST_MAIN("model_cooling", TEST(model_cooling__plate__keeps_exact_series),
             TEST(model_cooling__square__keeps_exact_product),
             TEST(model_cooling__first_term_alone__is_kept_late),
             TEST(model_cooling__textbook__is_matched),
             TEST(model_cooling__nothing_to_cool__is_refused))
