/* Between scan.c and scan_token.c only. */
#ifndef HS_SHEET_SCAN_STATE_H
#define HS_SHEET_SCAN_STATE_H

#include "sheet/scan.h"

typedef struct hs_scanner {
    const char *text;
    size_t size, at;
    int line;
    size_t line_start;
    int depth;
    hs_spot *spots;
    size_t n, room;
    hs_error *err;
} hs_scanner;

/** Fill the error with the place reached. */
hs_status hs_scan_fail(hs_scanner *s, hs_status status, const char *help, const char *what);

/** Pass over a string that starts at s->at; sets the flags of `spot`. */
hs_status hs_scan_string(hs_scanner *s, hs_spot *spot);

/** Pass over a number that starts at s->at; sets the flags of `spot`. */
hs_status hs_scan_number(hs_scanner *s, hs_spot *spot);

#endif
