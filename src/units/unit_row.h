/* Look-up in tables/units.csv. */
#ifndef HS_UNITS_UNIT_ROW_H
#define HS_UNITS_UNIT_ROW_H

#include "hardskin/base/status.h"
#include "hardskin/units/kinds.h"

#include <stddef.h>

typedef struct hs_unit_row {
    const char *name, *kind;
    double multiply, divide, add; /* SI = (number + add) * multiply / divide */
} hs_unit_row;

/** Find a unit as folded ("m^2" is m2, dots and blanks inside are passed over, a load behind HV or
 *  HBW as well). 0 if there is none. */
int hs_unit_find(hs_unit_row *out, const char *text, size_t length);

/** A point on the unit's scale, or a difference on it, in SI. */
double hs_unit_point(const hs_unit_row *unit, double number);
double hs_unit_difference(const hs_unit_row *unit, double number);

/** Say why that text is no unit, with a suggestion where there is one. */
hs_status hs_unit_refuse(hs_error *err, int column, const char *text, size_t length,
                         hs_kind expected);

/** Is this unit one of the kind? */
int hs_unit_is(const hs_unit_row *unit, hs_kind kind);

#endif
