/* Strict JSON (RFC 8259) over bytes: is it well formed, and where does each value stand? */
#ifndef HS_SHEET_SCAN_H
#define HS_SHEET_SCAN_H

#include "hardskin/base/status.h"
#include "sheet/node.h"

enum {
    HS_SCAN_DEPTH = 64,              /* deepest nesting */
    HS_SCAN_BYTES = 8 * 1024 * 1024, /* longest text */
    HS_SCAN_VALUES = 60000,          /* most values: every list of a sheet at its longest */
    HS_SCAN_DIGITS = 60              /* longest number that is read */
};

/** Check a text and list the places of its values in order of appearance (an object before its
 *  members). A byte-order mark at the start is passed over and not counted in columns.
 *
 *    spots       out  malloc'ed array of *n spots; NULL on failure; the caller frees it
 *    text, size  in
 *
 *  Returns  HS_OK; HS_E_TOO_LARGE; HS_E_ENCODING; HS_E_JSON; HS_E_MEMORY; err has line and column.
 *  Source   RFC 8259, RFC 3629 */
hs_status hs_scan(hs_spot **spots, size_t *n, const char *text, size_t size, hs_error *err);

/** 3 when the text starts with the UTF-8 byte-order mark, else 0. */
size_t hs_scan_mark(const char *text, size_t size);

#endif
