#include "base/nearest.h"
#include "cli/commands.h"
#include "cli/fault.h"
#include "cli/out.h"
#include "hardskin/tables/table.h"

#include <stdio.h>

static int list(void) {
    hs_out out = {0};
    hs_out_add(&out, "Tables (hash %s); hardskin tables NAME shows one.\n", hs_table_hash());
    for (size_t i = 0; i < HS_TABLE_COUNT; i++) {
        const hs_table *t = hs_table_get((hs_table_id)i);
        hs_out_add(&out, "  %-22s %s [%s]\n", t->id, t->title, t->basis);
    }
    return hs_out_write(&out);
}

/* Tab-separated, so that it can be read by eye and by a spreadsheet alike. */
static int show(const hs_table *t) {
    hs_out out = {0};
    hs_out_add(&out, "%s: %s\nsource: %s\nbasis: %s\n", t->id, t->title, t->source, t->basis);
    if (t->range[0]) hs_out_add(&out, "range: %s\n", t->range);
    if (t->note[0]) hs_out_add(&out, "note: %s\n", t->note);
    for (size_t c = 0; c < t->columns; c++)
        hs_out_add(&out, "%s%s [%s]", c ? "\t" : "\n", t->column[c].name, t->column[c].unit);
    hs_out_add(&out, "\n");
    for (size_t r = 0; r < t->rows; r++)
        for (size_t c = 0; c < t->columns; c++)
            hs_out_add(&out, "%s%s", hs_table_text(t, r, c), c + 1 < t->columns ? "\t" : "\n");
    return hs_out_write(&out);
}

int hs_command_tables(int count, char **words) {
    if (count == 0) return list();
    if (count > 1)
        return hs_fault_usage("one table at a time, not", words[1],
                              "hardskin tables, alone, lists them");
    const hs_table *table = hs_table_find(words[0]);
    if (table) return show(table);
    const char *names[HS_TABLE_COUNT];
    char text[160] = "hardskin tables, alone, lists them";
    for (size_t i = 0; i < HS_TABLE_COUNT; i++)
        names[i] = hs_table_get((hs_table_id)i)->id;
    const char *near = hs_nearest(words[0], names, HS_TABLE_COUNT);
    if (near) snprintf(text, sizeof text, "did you mean %s?", near);
    return hs_fault_usage("no such table:", words[0], text);
}
