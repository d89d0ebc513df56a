#include "hardskin/units/hardness.h"
#include "hardskin/tables/table.h"

#include "constants.h"

#include <math.h>

static size_t column_of(hs_scale scale) {
    switch (scale) {
    case HS_HV:
        return HS_E140_HV;
    case HS_HBW:
        return HS_E140_HBW;
    case HS_HRA:
        return HS_E140_HRA;
    case HS_HR15N:
        return HS_E140_HR15N;
    case HS_HR30N:
        return HS_E140_HR30N;
    default:
        return HS_E140_HRC;
    }
}

static double convert(double value, hs_scale from, hs_scale to) {
    const hs_table *e140 = hs_table_get(HS_TABLE_E140);
    double hrc = hs_table_interpolate(e140, column_of(from), HS_E140_HRC, value);
    if (isnan(hrc)) return NAN;
    return from == to ? value : hs_table_interpolate(e140, HS_E140_HRC, column_of(to), hrc);
}

double hs_hardness_HRC_of_HV(double hardness_HV) {
    return convert(hardness_HV, HS_HV, HS_HRC);
}

double hs_hardness_HV_of_HRC(double hardness_HRC) {
    return convert(hardness_HRC, HS_HRC, HS_HV);
}

int hs_hardness_beyond_ball(double hardness_HBW) {
    return hardness_HBW > HS_K_HARDNESS_LIMITS_BALL_LIMIT;
}

/* Lowest and highest value of a scale's column, for the message. */
static void limits(double *low, double *high, hs_scale scale) {
    const hs_table *e140 = hs_table_get(HS_TABLE_E140);
    *low = INFINITY;
    *high = -INFINITY;
    for (size_t r = 0; r < e140->rows; r++) {
        double value = hs_table_number(e140, r, column_of(scale));
        *low = fmin(*low, value);
        *high = fmax(*high, value);
    }
}

hs_status hs_hardness_convert(double *out, double value, hs_scale from, hs_scale to,
                              hs_error *err) {
    if (!*hs_scale_name(from) || !*hs_scale_name(to))
        return hs_fail(err, HS_E_WORD, "name HRC, HV, HBW, HRA, HR15N or HR30N",
                       "no such hardness scale");
    double result = convert(value, from, to);
    if (!isnan(result)) {
        *out = result;
        return HS_OK;
    }
    double low, high;
    limits(&low, &high, from);
    if (value >= low && value <= high)
        return hs_fail(err, HS_E_RANGE, "HBW and HRA end at 65 HRC; stay with HRC or HV",
                       "%g %s has no value in the column %s of ASTM E140", value,
                       hs_scale_name(from), hs_scale_name(to));
    return hs_fail(err, HS_E_RANGE, "a conversion is made only inside its table",
                   "%g %s lies outside ASTM E140 (%g to %g %s)", value, hs_scale_name(from), low,
                   high, hs_scale_name(from));
}
