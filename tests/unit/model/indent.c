#include "hardskin/model/indent.h"

#include "hardskin/units/hardness.h"
#include "support/check.h"

#include <math.h>
#include <string.h>

static double layer_mm(hs_hardness_test test, double hardness_HRC) {
    double layer_m = NAN;
    hs_test_layer(&layer_m, test, hs_hardness_HV_of_HRC(hardness_HRC), NULL);
    return layer_m * 1e3;
}

static void indent__rockwell__ten_times_the_depth(void) {
    /* exact: ISO 6508-1, h = (100 - 60) x .002 mm = .08 mm; the E140 row 60 HRC = 81.2 HRA = 77.5
     * HR30N = 90.2 HR15N */
    NEAR(layer_mm(HS_TEST_HRC, 60), 0.80, 1e-9);
    NEAR(layer_mm(HS_TEST_HRA, 60), 0.376, 1e-9);
    NEAR(layer_mm(HS_TEST_HR30N, 60), 0.225, 1e-9);
    NEAR(layer_mm(HS_TEST_HR15N, 60), 0.098, 1e-9);
    /* practice: the trade's tables give .76 mm (.030 in) of case for the C scale at 60 HRC and
     * more, about .35 to .40 for A, from memory */
    NEAR(layer_mm(HS_TEST_HRC, 62), 0.76, 1e-9);
}

static void indent__vickers__one_and_a_half_diagonals(void) {
    /* exact: d = sqrt(.1891 F/HV); 697 HV at 98.07 N: .16312 mm */
    NEAR(layer_mm(HS_TEST_HV10, 60), 1.5 * sqrt(0.1891 * 98.07 / 697), 1e-9);
    NEAR(layer_mm(HS_TEST_HV10, 60), 0.2447, 1e-4);
    /* exact: ten times the force, root of ten times the diagonal */
    NEAR(layer_mm(HS_TEST_HV10, 60) / layer_mm(HS_TEST_HV1, 60), sqrt(10), 1e-3);
    /* published: ISO 6507-1 figure A.1 (from memory): HV1 at 800 HV needs about .07 mm */
    NEAR(layer_mm(HS_TEST_HV1, 64), 0.07, 0.005);
}

static void indent__softer__presses_deeper_and_lighter_less(void) {
    for (int t = 0; t < HS_TESTS; t++) {
        CHECK(hs_test_name((hs_hardness_test)t)[0]);
        for (int hrc = 30; hrc < 65; hrc++)
            CHECK(layer_mm((hs_hardness_test)t, hrc) > layer_mm((hs_hardness_test)t, hrc + 1));
        if (t > 0) /* the order of the table, at case hardness */
            CHECK(layer_mm((hs_hardness_test)t, 60) <
                  layer_mm((hs_hardness_test)(t - 1), 60) * 1.2);
    }
    CHECK(!strcmp(hs_test_name(HS_TEST_HR30N), "HR30N") && !hs_test_name(HS_TESTS)[0]);
}

static void indent__case_of_half_a_millimetre__no_C_but_30N(void) {
    double hardness_HV = hs_hardness_HV_of_HRC(58);
    CHECK(!hs_test_fits(HS_TEST_HRC, 0.5e-3, hardness_HV));
    CHECK(hs_test_fits(HS_TEST_HR30N, 0.5e-3, hardness_HV));
    CHECK(hs_test_fits(HS_TEST_HV10, 0.5e-3, hardness_HV));
    CHECK(hs_test_fits(HS_TEST_HRC, 0.85e-3, hardness_HV)); /* .84 */
    CHECK(!hs_test_fits(HS_TEST_HR15N, NAN, hardness_HV));
    CHECK(!hs_test_fits(HS_TEST_HR15N, 1e-3, 200) && !hs_test_fits(HS_TESTS, 1e-3, 700));
    double layer_m = 7;
    hs_error err = {0};
    CHECK(hs_test_layer(&layer_m, HS_TEST_HRC, 200, &err) == HS_E_RANGE && err.message[0]);
    CHECK(hs_test_layer(&layer_m, HS_TESTS, 700, &err) == HS_E_WORD && layer_m == 7);
}

static void files__one_slides_the_next_bites__band_with_its_doubt(void) {
    /* published: SAE J864, file 55: cuts 53, does not cut 57 (secondary page); practice: 60 +-2 */
    double low = 0, high = 0;
    CHECK(hs_files_tell(&low, &high, 55, 60, NULL) == HS_OK);
    NEAR(hs_hardness_HRC_of_HV(low), 53, 1e-9);
    NEAR(hs_hardness_HRC_of_HV(high), 62, 1e-9);
    CHECK(hs_files_tell(&low, &high, 60, 0, NULL) == HS_OK);
    NEAR(hs_hardness_HRC_of_HV(low), 58, 1e-9);
    NEAR(hs_hardness_HRC_of_HV(high), 68, 1e-9);
    CHECK(hs_files_tell(&low, &high, 0, 40, NULL) == HS_OK);
    NEAR(hs_hardness_HRC_of_HV(low), 20, 1e-9);
    NEAR(hs_hardness_HRC_of_HV(high), 42, 1e-9);
}

static void files__what_cannot_be__is_refused(void) {
    double low = 7, high = 7;
    CHECK(hs_files_tell(&low, &high, 0, 0, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_files_tell(&low, &high, 60, 55, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_files_tell(&low, &high, 55, 55, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_files_tell(&low, &high, 57, 60, NULL) == HS_E_RANGE);
    CHECK(hs_files_tell(&low, &high, NAN, 60, NULL) == HS_E_RANGE);
    CHECK(low == 7 && high == 7);
}

HS_TEST_MAIN("model_indent", TEST(indent__rockwell__ten_times_the_depth),
             TEST(indent__vickers__one_and_a_half_diagonals),
             TEST(indent__softer__presses_deeper_and_lighter_less),
             TEST(indent__case_of_half_a_millimetre__no_C_but_30N),
             TEST(files__one_slides_the_next_bites__band_with_its_doubt),
             TEST(files__what_cannot_be__is_refused))
