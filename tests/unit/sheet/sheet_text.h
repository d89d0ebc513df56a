/* A good sheet with one place changed: what the table of refused sheets is made of. */
#ifndef HS_TESTS_SHEET_TEXT_H
#define HS_TESTS_SHEET_TEXT_H

#include <stddef.h>

enum { SHEET_BYTES = 8192 };

/** The good sheet `base` with the first `find` in it replaced; length, 0 when `find` is not there
 *  or stands there twice. */
size_t sheet_with(char out[SHEET_BYTES], const char *base, const char *find, const char *replace);

/** Line and column (from 1) of the first byte of `mark` in `text`; 0, 0 when it is not there. */
void sheet_place(int *line, int *column, const char *text, const char *mark);

/** Good sheets of the four forms. */
extern const char sheet_plate[], sheet_bar[], sheet_ring[], sheet_profile[];

#endif
