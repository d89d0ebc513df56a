/* A walk over the tokens of one text, and the smallest things read on it: a number as the trade
 * writes it, and an amount (numbers with their units). */
#ifndef HS_UNITS_CURSOR_H
#define HS_UNITS_CURSOR_H

#include "units/pattern.h"
#include "units/unit_row.h"

typedef struct hs_cursor {
    const hs_folded *text;
    hs_token token[TOKENS];
    size_t count, at;
    hs_kind expected;
    hs_error *err;
} hs_cursor;

/* One or more numbers with units: "5", "5 mm", "1 ft 2 1/2 in". */
typedef struct hs_amount {
    size_t first;  /* its first token */
    double number; /* of the last part */
    double before; /* SI value of the parts before it */
    int parts;
    int has_unit;
    int fraction; /* written with a fraction bar */
    hs_unit_row unit;
} hs_amount;

const hs_token *hs_cursor_token(const hs_cursor *c);
const hs_token *hs_cursor_after(const hs_cursor *c, size_t steps);
const char *hs_cursor_bytes(const hs_cursor *c, const hs_token *token);
int hs_cursor_column(const hs_cursor *c, size_t token);

/** A decimal number, digits, point and exponent, correctly rounded up to 15 digits. 0 when it has
 *  more digits or a larger exponent than any measurement. */
int hs_decimal(double *out, const char *text, size_t length);

/** Decimal, fraction or mixed number without a sign. */
hs_status hs_number_read(double *out, int *fraction, hs_cursor *c);

/** An amount without a sign; the unit may be missing (has_unit = 0). */
hs_status hs_amount_read(hs_amount *out, hs_cursor *c);

/** With its unit known: refuses fractions of a thou that were meant as inches. */
hs_status hs_amount_check(const hs_amount *a, const hs_cursor *c);

#endif
