/* The grammar of quantities, from tokens to numbers in SI. Used by quantity, size and split. */
#ifndef HS_UNITS_READING_H
#define HS_UNITS_READING_H

#include "units/fold.h"
#include "units/unit_row.h"

/* What the place allows besides a plain quantity. */
typedef struct hs_reading_rules {
    hs_kind expected;
    const char *bare_unit; /* a text without any unit is taken in this one; NULL = refused */
} hs_reading_rules;

typedef enum hs_form { HS_FORM_SINGLE, HS_FORM_RANGE, HS_FORM_TOLERANCE } hs_form;

typedef struct hs_reading {
    double value, low, high; /* SI */
    hs_form form;
    hs_unit_row unit; /* of the last number */
} hs_reading;

hs_status hs_read(hs_reading *out, const hs_units *units, const char *text,
                  const hs_reading_rules *rules, hs_error *err);

/** As hs_read for a text that is only a plus-or-minus tolerance: value = half width. */
hs_status hs_read_plus_minus(hs_reading *out, const hs_units *units, const char *text,
                             const hs_reading_rules *rules, hs_error *err);

/** Unit in which values of that kind are kept. */
const char *hs_kind_unit(hs_kind kind);

#endif
