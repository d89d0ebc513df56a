/* Texts that hold more than one quantity. Faults as in quantity.h; outputs untouched on failure;
 * err->column counts in the whole text. */
#ifndef HARDSKIN_UNITS_SPLIT_H
#define HARDSKIN_UNITS_SPLIT_H

#include "hardskin/units/quantity.h"

/** "300 x 200 x 150 mm" (or U+00D7, or a unit behind each): the three sizes in m, as written. */
HS_API hs_status hs_box_read(double sizes_m[3], const hs_units *units, const char *text,
                             hs_error *err);

/** "12 mm round, 40 mm long". */
HS_API hs_status hs_test_piece_read(double *diameter_m, double *length_m, const hs_units *units,
                                    const char *text, hs_error *err);

/** "12 V 10 A". */
HS_API hs_status hs_supply_read(double *volts_V, double *amps_A, const hs_units *units,
                                const char *text, hs_error *err);

/** "citric 10 %": hydrochloric, sulphuric, phosphoric, citric, acetic or vinegar (HS_E_WORD else).
 *  *name is a constant text owned by the library. */
HS_API hs_status hs_acid_read(const char **name, double *acid_pct, const hs_units *units,
                              const char *text, hs_error *err);

#endif
