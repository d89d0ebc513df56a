#include "hardskin/model/indent.h"

#include "hardskin/tables/table.h"
#include "hardskin/units/hardness.h"

#include "constants.h"

#include <math.h>

/* F = HV d2 / .1891, F in N and d in mm: two sides of the pyramid of 136 degrees and 1/9.80665. */
static const double vickers = 0.1891;

const char *hs_test_name(hs_hardness_test test) {
    if ((unsigned)test >= HS_TESTS) return "";
    return hs_table_text(hs_table_get(HS_TABLE_HARDNESS_TESTS), (size_t)test,
                         HS_HARDNESS_TESTS_TEST);
}

hs_status hs_test_layer(double *layer_m, hs_hardness_test test, double hardness_HV, hs_error *err) {
    if ((unsigned)test >= HS_TESTS)
        return hs_fail(err, HS_E_WORD, "name HRC, HR30N or HV10", "no such hardness test");
    const hs_table *t = hs_table_get(HS_TABLE_HARDNESS_TESTS);
    size_t row = (size_t)test;
    hs_scale scale = hs_scale_named(hs_table_text(t, row, HS_HARDNESS_TESTS_SCALE));
    double number;
    hs_status status = hs_hardness_convert(&number, hardness_HV, HS_HV, scale, err);
    if (status != HS_OK) return status;
    double unit_mm = hs_table_number(t, row, HS_HARDNESS_TESTS_UNIT);
    double force_N = hs_table_number(t, row, HS_HARDNESS_TESTS_FORCE);
    double size_mm = scale == HS_HV ? sqrt(vickers * force_N / number) : (100 - number) * unit_mm;
    *layer_m = hs_table_number(t, row, HS_HARDNESS_TESTS_FACTOR) * size_mm * 1e-3;
    return HS_OK;
}

int hs_test_fits(hs_hardness_test test, double case_m, double hardness_HV) {
    double layer_m;
    return hs_test_layer(&layer_m, test, hardness_HV, NULL) == HS_OK && case_m >= layer_m;
}

static hs_status file_row(size_t *row, double class_HRC, hs_error *err) {
    const hs_table *t = hs_table_get(HS_TABLE_HARDNESS_FILES);
    for (size_t r = 0; r < t->rows; r++)
        if (hs_table_number(t, r, HS_HARDNESS_FILES_CLASS) == class_HRC) {
            *row = r;
            return HS_OK;
        }
    return hs_fail(err, HS_E_RANGE, "files are marked 40, 45, 50, 55, 58, 60, 62 and 65 HRC",
                   "no file of a set is marked %g HRC", class_HRC);
}

hs_status hs_files_tell(double *low_HV, double *high_HV, double slides_HRC, double bites_HRC,
                        hs_error *err) {
    const hs_table *t = hs_table_get(HS_TABLE_HARDNESS_FILES);
    size_t slides = 0, bites = 0;
    hs_status status = HS_OK;
    double low_HRC = 20, high_HRC = 68; /* the ends of the conversion table */
    if (slides_HRC == 0 && bites_HRC == 0)
        return hs_fail(err, HS_E_IMPOSSIBLE, "name the file that slides or the one that bites",
                       "no file was tried");
    if (slides_HRC != 0) status = file_row(&slides, slides_HRC, err);
    if (status == HS_OK && bites_HRC != 0) status = file_row(&bites, bites_HRC, err);
    if (status != HS_OK) return status;
    if (slides_HRC != 0 && bites_HRC != 0 && bites <= slides)
        return hs_fail(err, HS_E_IMPOSSIBLE, "the harder file bites, the softer one slides",
                       "the file of %g HRC bites though the one of %g HRC slides", bites_HRC,
                       slides_HRC);
    if (slides_HRC != 0) low_HRC = hs_table_number(t, slides, HS_HARDNESS_FILES_BITES_TO);
    if (bites_HRC != 0) high_HRC = hs_table_number(t, bites, HS_HARDNESS_FILES_SLIDES_FROM);
    *low_HV = hs_hardness_HV_of_HRC(low_HRC);
    *high_HV = hs_hardness_HV_of_HRC(high_HRC);
    return HS_OK;
}
