#include "cli/quick_lookup.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

hs_status quick_row_find(quick_row *row, const char *table, const char *word, const char *key,
                         hs_error *err) {
    const hs_table *t = hs_table_find(table);
    char help[200] = "";
    if (!t) return hs_fail(err, HS_E_INTERNAL, "", "the table %s is missing", table);
    int found = hs_table_row(t, 0, word);
    if (found >= 0) {
        *row = (quick_row){t, (size_t)found};
        return HS_OK;
    }
    for (size_t i = 0; i < t->rows; i++) {
        size_t used = strlen(help);
        snprintf(help + used, sizeof help - used, "%s%s", i ? ", " : "", hs_table_text(t, i, 0));
    }
    return hs_fail(err, HS_E_WORD, help, "%s: no such word: %s", key, word);
}

double quick_cell(const quick_row *row, const char *column) {
    int c = hs_table_column(row->table, column);
    return c < 0 ? NAN : hs_table_number(row->table, row->row, (size_t)c);
}
