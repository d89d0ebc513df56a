#include "base/nearest.h"
#include "cli/commands.h"
#include "cli/fault.h"
#include "cli/out.h"
#include "hardskin/tables/caution.h"
#include "hardskin/tables/table.h"

#include <stdio.h>
#include <string.h>

static const char *cell(const hs_table *table, size_t row, const char *column) {
    int c = table ? hs_table_column(table, column) : -1;
    return c < 0 ? "" : hs_table_text(table, row, (size_t)c);
}

static int list(void) {
    const hs_table *cautions = hs_table_find("cautions");
    hs_out out = {0};
    hs_out_add(&out, "Errors, with the exit code:\n");
    for (int s = 0; s < HS_STATUS_COUNT; s++)
        hs_out_add(&out, "  %-20s %2d  %s\n", hs_status_code((hs_status)s),
                   hs_status_exit((hs_status)s), hs_status_meaning((hs_status)s));
    if (cautions) hs_out_add(&out, "\nCautions:\n");
    for (size_t i = 0; cautions && i < cautions->rows; i++)
        hs_out_add(&out, "  %-24s %s\n", cell(cautions, i, "code"), cell(cautions, i, "level"));
    return hs_out_write(&out);
}

/* What a sheet may not hold, and why. */
static void add_forbidden(hs_out *out) {
    const hs_table *t = hs_table_find("forbidden");
    for (size_t i = 0; t && i < t->rows; i++)
        hs_out_add(out, "  %s: %s; instead %s (source: %s)\n", cell(t, i, "hazard"),
                   cell(t, i, "reason"), cell(t, i, "instead"), cell(t, i, "source"));
}

static int show_status(hs_status s) {
    hs_out out = {0};
    hs_out_add(&out, "%s (exit %d): %s.\n", hs_status_code(s), hs_status_exit(s),
               hs_status_meaning(s));
    const char *fails = hs_status_example(s, 0), *works = hs_status_example(s, 1);
    if (fails[0]) hs_out_add(&out, "  fails:  %s\n", fails);
    if (works[0]) hs_out_add(&out, "  works:  %s\n", works);
    if (s == HS_E_FORBIDDEN) add_forbidden(&out);
    return hs_out_write(&out);
}

/* Each key with what it stands for. */
static void add_sources(hs_out *out, const char *keys, const char *basis) {
    char copy[128];
    snprintf(copy, sizeof copy, "%s", keys);
    for (char *key = strtok(copy, " "); key; key = strtok(NULL, " "))
        hs_out_add(out, "  source:       %s: %s\n", key, hs_source_text(key));
    hs_out_add(out, "  basis:        %s\n", basis);
}

static int show_caution(const hs_caution *c) {
    hs_out out = {0};
    hs_out_add(&out, "%s: %s\n", c->code, c->level);
    hs_out_add(&out, "  level:        %s %s (ANSI Z535.4)\n", c->level,
               hs_caution_meaning(c->level));
    hs_out_add(&out, "  hazard:       %s\n", c->hazard);
    hs_out_add(&out, "  consequence:  %s\n", c->consequence);
    hs_out_add(&out, "  avoidance:    %s\n", c->avoidance);
    hs_out_add(&out, "  shown for:    %s\n", c->when);
    add_sources(&out, c->source, c->basis);
    hs_out_add(&out, "Local codes and licensed practice come first.\n");
    return hs_out_write(&out);
}

static int unknown(const char *code, const hs_table *cautions) {
    const char *names[400];
    char text[160] = "hardskin why, alone, lists the codes";
    size_t n = 0;
    for (int s = 0; s < HS_STATUS_COUNT; s++)
        names[n++] = hs_status_code((hs_status)s);
    for (size_t i = 0; cautions && i < cautions->rows && n < 400; i++)
        names[n++] = cell(cautions, i, "code");
    const char *near = hs_nearest(code, names, n);
    if (near) snprintf(text, sizeof text, "did you mean %s?", near);
    return hs_fault_usage("no such code:", code, text);
}

int hs_command_why(int count, char **words) {
    const hs_table *cautions = hs_table_find("cautions");
    if (count == 0) return list();
    if (count > 1)
        return hs_fault_usage("one code at a time, not", words[1],
                              "hardskin why, alone, lists them");
    for (int s = 0; s < HS_STATUS_COUNT; s++)
        if (!strcmp(words[0], hs_status_code((hs_status)s))) return show_status((hs_status)s);
    hs_caution caution;
    if (hs_caution_find(&caution, words[0], NULL) == HS_OK) return show_caution(&caution);
    return unknown(words[0], cautions);
}
