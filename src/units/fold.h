/* UTF-8 as typed -> plain bytes the patterns can be short about, with the way back to the column.
 */
#ifndef HS_UNITS_FOLD_H
#define HS_UNITS_FOLD_H

#include "hardskin/base/status.h"
#include "hardskin/units/quantity.h"

#include <stddef.h>

/* Signs outside ASCII become one control byte each (raw control bytes are refused, so they cannot
 * be typed). A unicode fraction becomes MARK_FRACTION n/d MARK_FRACTION. The patterns in pattern.c
 * use the same numbers. */
enum {
    MARK_DEGREE = 1,
    MARK_DELTA = 2,
    MARK_DIAMETER = 3,
    MARK_PLUS_MINUS = 4,
    MARK_DASH = 5,
    MARK_FRACTION = 6,
    MARK_DOT = 7
};

enum { FOLD_SIZE = 3 * HS_QUANTITY_BYTES + 8 };

typedef struct hs_folded {
    size_t length;
    char text[FOLD_SIZE];            /* closed by NUL */
    unsigned char column[FOLD_SIZE]; /* byte in the typed text, from 1, of every folded byte */
} hs_folded;

/** Fold at most HS_QUANTITY_BYTES bytes. HS_E_ENCODING for text that is not UTF-8, HS_E_NUMBER for
 *  a text that is too long or empty, and for signs that have no place in a quantity. */
hs_status hs_fold(hs_folded *out, const char *text, hs_error *err);

/** hs_fail with the column set. */
hs_status hs_fail_at(hs_error *err, int column, hs_status status, const char *help,
                     const char *format, ...) HS_PRINTF(5, 6);

#endif
