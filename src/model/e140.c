#include "model/e140.h"

#include "hardskin/tables/table.h"

#include "constants.h"

#include <math.h>

/* Both columns fall and have no gaps. */
static double convert(double at, size_t from, size_t to) {
    const hs_table *t = hs_table_get(HS_TABLE_E140);
    const double *cell = t->number;
    size_t width = t->columns, low = 0, high = t->rows - 1;
    if (!(at <= cell[from] && at >= cell[high * width + from])) return NAN;
    while (high - low > 1) {
        size_t mid = (low + high) / 2;
        if (cell[mid * width + from] >= at)
            low = mid;
        else
            high = mid;
    }
    const double *a = cell + low * width, *b = cell + high * width;
    return a[to] + (b[to] - a[to]) * (at - a[from]) / (b[from] - a[from]);
}

double hs_e140_HV(double hardness_HRC) {
    return convert(hardness_HRC, HS_E140_HRC, HS_E140_HV);
}

double hs_e140_HRC(double hardness_HV) {
    return convert(hardness_HV, HS_E140_HV, HS_E140_HRC);
}
