/* Fits by ISO 286-1. Shafts from their fundamental deviation; holes by mirroring it, with the delta
 * rule for K, M, N and P. */
#include "hardskin/tables/table.h"
#include "hardskin/units/size.h"

#include "constants.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { LAST_GRADE = 14 };

/* How the two limits follow from the deviation e of the table and the grade's width. */
typedef enum rule { UPPER, LOWER, LOWER_K, MIDDLE, ZERO } rule;

typedef struct zone {
    const char *shaft, *hole;
    rule rule;
    size_t column; /* in iso286_deviations */
    int delta_to;  /* last grade of the hole that takes the delta */
} zone;

static const zone zones[] = {
    {"d", "D", UPPER, HS_ISO286_DEVIATIONS_D, 0},
    {"e", "E", UPPER, HS_ISO286_DEVIATIONS_E, 0},
    {"f", "F", UPPER, HS_ISO286_DEVIATIONS_F, 0},
    {"g", "G", UPPER, HS_ISO286_DEVIATIONS_G, 0},
    {"h", "H", ZERO, 0, 0},
    {"js", "JS", MIDDLE, 0, 0},
    {"k", "K", LOWER_K, HS_ISO286_DEVIATIONS_K, 8},
    {"m", "M", LOWER, HS_ISO286_DEVIATIONS_M, 8},
    {"n", "N", LOWER, HS_ISO286_DEVIATIONS_N, 8},
    {"p", "P", LOWER, HS_ISO286_DEVIATIONS_P, 7},
};

static const zone *zone_of(const char *name, int *hole) {
    for (size_t i = 0; i < sizeof zones / sizeof *zones; i++) {
        *hole = !strcmp(name, zones[i].hole);
        if (*hole || !strcmp(name, zones[i].shaft)) return &zones[i];
    }
    return NULL;
}

/* Row of a nominal size: above `over`, up to `upto`. The guard keeps 30 mm that came through metres
 * in the range that ends at 30. */
static int range_row(const hs_table *table, double nominal_mm, size_t over, size_t upto) {
    for (size_t r = 0; r < table->rows; r++) {
        double guard = 1e-9 * nominal_mm;
        if (nominal_mm > hs_table_number(table, r, over) + guard &&
            nominal_mm <= hs_table_number(table, r, upto) + guard)
            return (int)r;
    }
    return -1;
}

static double grade_um(size_t row, int grade) {
    return hs_table_number(hs_table_get(HS_TABLE_ISO286_IT), row,
                           HS_ISO286_IT_IT1 + (size_t)(grade - 1));
}

/* Classes the standard rounds otherwise than its rule; NaN for all others. */
static double exception_um(const char *name, int grade, double nominal_mm) {
    const hs_table *t = hs_table_get(HS_TABLE_ISO286_EXCEPTIONS);
    for (size_t r = 0; r < t->rows; r++)
        if (!strcmp(name, hs_table_text(t, r, HS_ISO286_EXCEPTIONS_ZONE)) &&
            grade == (int)hs_table_number(t, r, HS_ISO286_EXCEPTIONS_GRADE) &&
            range_row(t, nominal_mm, HS_ISO286_EXCEPTIONS_OVER, HS_ISO286_EXCEPTIONS_UPTO) ==
                (int)r)
            return hs_table_number(t, r, HS_ISO286_EXCEPTIONS_ES);
    return NAN;
}

/* Upper deviation of a hole K to P. Beyond the grades of the delta rule N is 0 (over 3 mm) and P is
 * the shaft's mirror. NaN where the standard holds no such class. */
static double hole_upper_um(const zone *z, int grade, size_t row, double e, double nominal_mm) {
    double special = exception_um(z->hole, grade, nominal_mm);
    if (!isnan(special)) return special;
    int small = row == 0;
    if (grade <= z->delta_to) {
        double delta = small || grade < 2 ? 0 : grade_um(row, grade) - grade_um(row, grade - 1);
        return grade < 3 && !small ? NAN : delta - e;
    }
    if (*z->hole == 'N') return small ? -e : 0;
    return *z->hole == 'P' ? -e : NAN;
}

/* Lower deviation; NaN where the standard holds no such class. */
static double lower_um(const zone *z, int hole, int grade, size_t row, double nominal_mm) {
    double width = grade_um(row, grade), e = 0;
    if (z->column) e = hs_table_number(hs_table_get(HS_TABLE_ISO286_DEVIATIONS), row, z->column);
    if (z->rule == MIDDLE) return -width / 2;
    if (z->rule == UPPER || z->rule == ZERO) return hole ? -e : e - width;
    if (hole) return hole_upper_um(z, grade, row, e, nominal_mm) - width;
    return z->rule == LOWER_K && (grade < 4 || grade > 7) ? 0 : e;
}

hs_status hs_fit_limits(double *lower_m, double *upper_m, double nominal_m, const char *name,
                        int grade, hs_error *err) {
    int hole = 0;
    const zone *z = zone_of(name, &hole);
    if (!z || grade < 1 || grade > LAST_GRADE)
        return hs_fail(err, HS_E_WORD,
                       "shafts d e f g h js k m n p, holes D E F G H JS K M N P, grades 1 to 14",
                       "the fit class %s%d is not in the table", name, grade);
    double nominal_mm = nominal_m * 1e3;
    int row = range_row(hs_table_get(HS_TABLE_ISO286_IT), nominal_mm, HS_ISO286_IT_OVER,
                        HS_ISO286_IT_UPTO);
    if (row < 0)
        return hs_fail(err, HS_E_RANGE, "write the deviations out: 600 +0/-0.07 mm",
                       "fits are held for sizes above 0 up to 500 mm, not %g mm", nominal_mm);
    double um = lower_um(z, hole, grade, (size_t)row, nominal_mm);
    if (isnan(um))
        return hs_fail(err, HS_E_RANGE, "write the deviations out: 25 +0.03/-0.01 mm",
                       "%s%d is not covered at %g mm", name, grade, nominal_mm);
    *lower_m = um / 1e6;
    *upper_m = (um + grade_um((size_t)row, grade)) / 1e6;
    return HS_OK;
}

hs_status hs_size_general(double *plus_minus_m, double nominal_m, char grade, hs_error *err) {
    const hs_table *t = hs_table_get(HS_TABLE_ISO2768);
    size_t column = grade == 'f'   ? HS_ISO2768_F
                    : grade == 'm' ? HS_ISO2768_M
                    : grade == 'c' ? HS_ISO2768_C
                                   : 0;
    if (!column)
        return hs_fail(err, HS_E_WORD, "write f, m or c",
                       "'%c' is not a class of ISO 2768-1 in the table", grade);
    double nominal_mm = nominal_m * 1e3, first = hs_table_number(t, 0, HS_ISO2768_OVER);
    int row = fabs(nominal_mm - first) <= 1e-9
                  ? 0
                  : range_row(t, nominal_mm, HS_ISO2768_OVER, HS_ISO2768_UPTO);
    if (row < 0)
        return hs_fail(err, HS_E_RANGE, "write the tolerance out: 20 ±0.1 mm",
                       "general tolerances are held for 0.5 to 1000 mm, not %g mm", nominal_mm);
    *plus_minus_m = hs_table_number(t, (size_t)row, column) * 1e-3;
    return HS_OK;
}
