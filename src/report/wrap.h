/* Lines of at most 80 columns, counted by code point. */
#ifndef HS_REPORT_WRAP_H
#define HS_REPORT_WRAP_H

#include "base/text.h"

enum { HS_COLUMNS = 80 };

/** Columns a UTF-8 text takes: one per code point (the report uses no wide characters). */
size_t hs_wrap_columns(const char *text);

/** Append a text as one or more lines.
 *
 *  A text that fits is kept as it is, inner spaces too. One that does not is broken at spaces, runs
 *  of spaces become one, later lines are indented by `hang`; a word longer than a line is cut;
 *  a number stays with its unit.
 *
 *    indent, hang  columns of spaces before the first and the later lines, below HS_COLUMNS / 2
 *    text          one paragraph; a line feed in it counts as a space */
void hs_wrap_add(hs_text *out, size_t indent, size_t hang, const char *text);

#endif
