/* Which hardness test a thin case can bear. An indentation that reaches more than a tenth of its
 * depth rule into the case feels the soft core, and reads low. */
#ifndef HARDSKIN_MODEL_INDENT_H
#define HARDSKIN_MODEL_INDENT_H

#include "hardskin/base/status.h"

/** Rows of tables/hardness_tests.csv, the deepest first. */
typedef enum hs_hardness_test {
    HS_TEST_HRC,
    HS_TEST_HRA,
    HS_TEST_HV30,
    HS_TEST_HR30N,
    HS_TEST_HV10,
    HS_TEST_HV5,
    HS_TEST_HR15N,
    HS_TEST_HV1,
    HS_TESTS
} hs_hardness_test;

/** "HRC", "HV10"; "" for no test. */
HS_API const char *hs_test_name(hs_hardness_test test);

/** Least thickness of an evenly hard layer on which a test reads that layer alone.
 *
 *    layer_m      double  out  m: 10 times the permanent depth (Rockwell with the cone), 1.5 times
 *                              the diagonal (Vickers)
 *    hardness_HV  double  in   of the layer; 238 to 940 HV, HRA to 832 HV
 *
 *  Returns  HS_OK; HS_E_RANGE outside the conversion table; HS_E_WORD no such test. Output
 *           untouched on failure.
 *  Source   ISO 6508-1, ISO 6507-1 (tables/hardness_tests.csv) */
HS_API hs_status hs_test_layer(double *layer_m, hs_hardness_test test, double hardness_HV,
                               hs_error *err);

/** Does the test read a case of this depth and hardness truly? 1 or 0; 0 for NaN. A test with 0
 *  reads low: as high as asked it proves the face, lower it proves nothing. */
HS_API int hs_test_fits(hs_hardness_test test, double case_m, double hardness_HV);

/** What a set of hardness files tells: the hardest file that bites not, and the softest that bites.
 *
 *    low_HV, high_HV  double  out  hardness of the face with the doubt of the files
 *    slides_HRC       double  in   class of the file that slides; 0: even the softest bites
 *    bites_HRC        double  in   class of the file that bites; 0: none does
 *
 *  An open end is that of the conversion table.
 *  Returns  HS_OK; HS_E_IMPOSSIBLE when both are 0, or the file that bites is not the harder one;
 *           HS_E_RANGE a class no set has. Output untouched on failure.
 *  Source   tables/hardness_files.csv */
HS_API hs_status hs_files_tell(double *low_HV, double *high_HV, double slides_HRC, double bites_HRC,
                               hs_error *err);

#endif
