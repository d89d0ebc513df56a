#include "cli/quick_lookup.h"

#include <stdio.h>
#include <string.h>

hs_status quick_row(size_t *row, hs_table_id table, const char *word, const char *key,
                    hs_error *err) {
    const hs_table *t = hs_table_get(table);
    char help[256] = "";
    int found = hs_table_row(t, 0, word);
    if (found >= 0) {
        *row = (size_t)found;
        return HS_OK;
    }
    for (size_t i = 0; i < t->rows; i++) {
        size_t used = strlen(help);
        snprintf(help + used, sizeof help - used, "%s%s", i ? ", " : "", hs_table_text(t, i, 0));
    }
    return hs_fail(err, HS_E_WORD, help, "%s: no such word: %s", key, word);
}
