/* The embedded tables: every number of the program that is not mathematics, with source and basis.
 * tables/NAME.csv is turned into C by src/tables/generate.c, which also checks it. */
#ifndef HARDSKIN_TABLES_TABLE_H
#define HARDSKIN_TABLES_TABLE_H

#include "hardskin/base/status.h"

#include <stddef.h>

typedef struct hs_column {
    const char *name;
    const char *unit; /* "text" for words, "1" for pure numbers */
} hs_column;

typedef struct hs_table {
    const char *id, *title;
    const char
        *source; /* key into tables/SOURCES.md; rows may carry their own in a column `source` */
    const char *basis;        /* read | from memory | computed | judgement | common practice */
    const char *range, *note; /* in words; "" if none */
    size_t rows, columns;
    const hs_column *column;
    const double *number;    /* rows x columns; NaN where a cell is empty or words */
    const char *const *text; /* rows x columns, as typed in the file */
} hs_table;

typedef enum hs_table_id {
#define X(id, name) HS_TABLE_##id,
#include "tables_list.h"
#undef X
    HS_TABLE_COUNT
} hs_table_id;

/** The table of that number. Never NULL. */
HS_API const hs_table *hs_table_get(hs_table_id id);

/** The table of that name ("steels"), or NULL. */
HS_API const hs_table *hs_table_find(const char *name);

/** Hash over all tables as embedded, for reports: 16 hex digits. */
HS_API const char *hs_table_hash(void);

/** What a source key stands for, as tables/SOURCES.md has it; "" for a key that is none. */
HS_API const char *hs_source_text(const char *key);

/** Number in a cell; NaN when the cell is empty or words. Row and column must exist. */
HS_API double hs_table_number(const hs_table *table, size_t row, size_t column);

/** Text of a cell as typed. Row and column must exist. */
HS_API const char *hs_table_text(const hs_table *table, size_t row, size_t column);

/** Column of that name; -1 if there is none. */
HS_API int hs_table_column(const hs_table *table, const char *name);

/** Row whose text in `column` equals `key` (case counts); -1 if there is none. */
HS_API int hs_table_row(const hs_table *table, size_t column, const char *key);

/** Linear interpolation of column y over column x, over all rows; x may rise or fall, rows whose x
 *  or y is empty are passed over. NaN outside the table. */
HS_API double hs_table_interpolate(const hs_table *table, size_t x, size_t y, double at);

#endif
