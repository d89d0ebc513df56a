/* Sizes with their tolerance: limits from deviations, from ISO 286 fits, from ISO 2768. */
#ifndef HARDSKIN_UNITS_SIZE_H
#define HARDSKIN_UNITS_SIZE_H

#include "hardskin/units/quantity.h"

typedef struct hs_size {
    double nominal_m;
    double lower_m, upper_m; /* limits of size, not deviations */
    char fit[8];             /* "h7"; "" when the deviations were written out */
} hs_size;

/** Read a size with its tolerance.
 *
 *  20 h7, 20h7, U+00D8 20 h7, 20 mm H7 (fits are metric: a bare nominal means mm); 25 ±0.02 mm,
 *  25 +0.03/-0.01 mm, 60 -0.05/-0.10 mm, 1 +0/-0.001 in; 20.50..20.82 mm (nominal = middle).
 *
 *  Returns  HS_OK; HS_E_NUMBER when no tolerance is written (the help says how); HS_E_WORD for a
 * fit class the table does not hold (the help lists them); HS_E_RANGE for a fit above 500 mm or a
 * class that does not exist at that size; HS_E_IMPOSSIBLE when a limit is not above zero; else as
 * hs_quantity_read. Output untouched on failure. Source   tables/iso286_it.csv,
 * iso286_deviations.csv
 */
HS_API hs_status hs_size_read(hs_size *out, const hs_units *units, const char *text, hs_error *err);

/** Limits of a fit by ISO 286-1.
 *
 *    lower_m, upper_m  out  deviations from the nominal size (m)
 *    nominal_m         in   above 0, up to 0.5
 *    zone              in   d e f g h js k m n p (shafts), D E F G H JS K M N P (holes)
 *    grade             in   IT1 to IT14 as far as the zone goes
 *
 *  Returns  HS_OK; HS_E_WORD unknown zone or grade; HS_E_RANGE size outside, or a hole class the
 *           rule does not cover.
 */
HS_API hs_status hs_fit_limits(double *lower_m, double *upper_m, double nominal_m, const char *zone,
                               int grade, hs_error *err);

/** General tolerance (plus or minus) of ISO 2768-1 for a length. `grade` is 'f', 'm' or 'c'.
 *  Returns HS_OK; HS_E_WORD unknown grade; HS_E_RANGE outside 0.5 to 1000 mm. */
HS_API hs_status hs_size_general(double *plus_minus_m, double nominal_m, char grade, hs_error *err);

#endif
