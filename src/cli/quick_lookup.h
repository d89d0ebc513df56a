/* A row of an embedded table by the word in its first column. */
#ifndef HS_CLI_QUICK_LOOKUP_H
#define HS_CLI_QUICK_LOOKUP_H

#include "hardskin/base/status.h"
#include "hardskin/tables/table.h"

typedef struct quick_row {
    const hs_table *table;
    size_t row;
} quick_row;

/** HS_E_WORD with the words that would do; `key` is named in the message. */
hs_status quick_row_find(quick_row *row, const char *table, const char *word, const char *key,
                         hs_error *err);

/** Number in a column by name; NaN where there is none. */
double quick_cell(const quick_row *row, const char *column);

#endif
