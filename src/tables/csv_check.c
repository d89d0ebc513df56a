#include "tables/csv_check.h"

#include <ctype.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

/* Words a unit may be made of, without exponent: "kg2/(m4 s)" is made of kg, m and s. */
static const char *const unit_words[] = {
    "text", "1", "100", "%",   "wt",  "per", "m",   "mm",  "um",  "cm",  "dm",    "in",    "kg",
    "g",    "s", "h",   "min", "K",   "C",   "F",   "Pa",  "MPa", "J",   "W",     "V",     "A",
    "Ah",   "S", "ohm", "mol", "cal", "L",   "HRC", "HRA", "HV",  "HBW", "HR15N", "HR30N", "N",
};

static const char *const bases[] = {"read",      "from memory",     "computed",
                                    "judgement", "common practice", "mixed"};

void csv_fault(const csv_table *t, int line, const char *format, ...) {
    va_list args;
    va_start(args, format);
    fprintf(stderr, "%s:%d: ", t->path, line);
    vfprintf(stderr, format, args);
    fputc('\n', stderr);
    va_end(args);
    t->reader->faults++;
}

static int among(const char *word, const char *const *list, size_t n) {
    for (size_t i = 0; i < n; i++)
        if (!strcmp(word, list[i])) return 1;
    return 0;
}

/* One key, or several parted by spaces. */
static void check_sources(const csv_table *t, const char *keys, int line) {
    char copy[512];
    if (strlen(keys) >= sizeof copy) csv_fault(t, line, "too many source keys");
    snprintf(copy, sizeof copy, "%s", keys);
    if (!*keys) csv_fault(t, line, "a source key is missing");
    for (char *key = strtok(copy, " "); key; key = strtok(NULL, " "))
        if (!among(key, t->reader->source, t->reader->sources))
            csv_fault(t, line, "source key '%s' is not in SOURCES.md", key);
}

static void check_basis(const csv_table *t, const char *basis, int line) {
    if (!among(basis, bases, sizeof bases / sizeof *bases))
        csv_fault(t, line,
                  "basis '%s' is none of read, from memory, computed, judgement, "
                  "common practice, mixed",
                  basis);
}

/* A word is a listed one, with an exponent at most: "m2", "%^.5". */
static int known_word(const char *word) {
    if (among(word, unit_words, sizeof unit_words / sizeof *unit_words)) return 1;
    char bare[24];
    snprintf(bare, sizeof bare, "%s", word);
    size_t end = strlen(bare);
    while (end > 1 && strchr("0123456789.^-", bare[end - 1]))
        end--;
    bare[end] = '\0';
    return !isdigit((unsigned char)bare[0]) &&
           among(bare, unit_words, sizeof unit_words / sizeof *unit_words);
}

static void check_unit(const csv_table *t, const char *unit, int line) {
    char copy[64];
    snprintf(copy, sizeof copy, "%s", unit);
    if (!*unit || strlen(unit) >= sizeof copy) csv_fault(t, line, "unit '%s' is no unit", unit);
    for (char *word = strtok(copy, " /()"); word; word = strtok(NULL, " /()"))
        if (!known_word(word)) csv_fault(t, line, "unknown unit '%s' in '%s'", word, unit);
}

/* What becomes part of a name in C. */
static int is_name(const char *text) {
    if (!isalpha((unsigned char)*text)) return 0;
    while (isalnum((unsigned char)*text) || *text == '_')
        text++;
    return !*text;
}

/* Names become macros and enums in capitals, so letter case does not tell them apart. */
void csv_check_column(const csv_table *t, size_t c, int line) {
    const char *name = t->column_name[c];
    if (!is_name(name))
        csv_fault(t, line, "column '%s' is not made of letters, digits and _", name);
    for (size_t k = 0; k < c; k++)
        if (!strcasecmp(t->column_name[k], name))
            csv_fault(t, line, "column '%s' stands twice", name);
    check_unit(t, t->column_unit[c], line);
}

void csv_check_cell(const csv_table *t, const char *cell, size_t c) {
    int number = t->line[t->rows], text = !strcmp(t->column_unit[c], "text");
    if (!strcmp(t->column_name[c], "source")) check_sources(t, cell, number);
    if (!strcmp(t->column_name[c], "basis")) check_basis(t, cell, number);
    if (text) return;
    if (!*cell) {
        if (!t->optional[c]) csv_fault(t, number, "column '%s' is empty", t->column_name[c]);
        return;
    }
    char *end;
    double value = strtod(cell, &end);
    if (*end || !isfinite(value) || strspn(cell, "0123456789+-.eE") != strlen(cell))
        csv_fault(t, number, "'%s' in column '%s' is not a finite number", cell, t->column_name[c]);
}

/* "COLUMN rising|falling [in GROUP]" */
static void check_order(const csv_table *t) {
    char name[48], way[16], group[48] = "";
    int words = sscanf(t->order, "%47s %15s in %47s", name, way, group);
    int c = words >= 2 ? csv_column(t, name) : -1, g = words == 3 ? csv_column(t, group) : -1;
    if (c < 0 || (words == 3 && g < 0) || (strcmp(way, "rising") && strcmp(way, "falling"))) {
        csv_fault(t, t->order_line, "order '%s' is not 'COLUMN rising|falling [in GROUP]'",
                  t->order);
        return;
    }
    double sign = strcmp(way, "rising") ? -1 : 1;
    for (size_t r = 1; r < t->rows; r++) {
        if (g >= 0 && strcmp(csv_cell(t, r, (size_t)g), csv_cell(t, r - 1, (size_t)g))) continue;
        if (!(sign * (csv_number(t, r, (size_t)c) - csv_number(t, r - 1, (size_t)c)) > 0))
            csv_fault(t, t->line[r], "column '%s' is not %s here", name, way);
    }
}

static void check_pair(const csv_table *t, int low, int high, int value) {
    for (size_t r = 0; low >= 0 && r < t->rows; r++) {
        double least = csv_number(t, r, (size_t)low);
        double most = high >= 0 ? csv_number(t, r, (size_t)high) : NAN;
        double v = value >= 0 ? csv_number(t, r, (size_t)value) : NAN;
        if (least > most) csv_fault(t, t->line[r], "its low bound is above its high bound");
        if (v < least) csv_fault(t, t->line[r], "value is below its low bound");
        if (v > most) csv_fault(t, t->line[r], "value is above its high bound");
    }
}

/* Columns low and high hold the bounds of column value; NAME_low and NAME_high those of NAME. */
static void check_bounds(const csv_table *t) {
    for (size_t c = 0; c < t->columns; c++) {
        char base[48], high[56];
        snprintf(base, sizeof base, "%s", t->column_name[c]);
        size_t length = strlen(base);
        if (!strcmp(base, "low")) {
            check_pair(t, (int)c, csv_column(t, "high"), csv_column(t, "value"));
        } else if (length > 4 && !strcmp(base + length - 4, "_low")) {
            base[length - 4] = '\0';
            snprintf(high, sizeof high, "%s_high", base);
            check_pair(t, (int)c, csv_column(t, high), csv_column(t, base));
        }
    }
}

/* Each becomes a macro: a name, only once, and with a unit. */
static void check_constants(const csv_table *t) {
    if (csv_column(t, "value") != 1 || csv_column(t, "unit") != 2) {
        csv_fault(t, 1, "a table of constants has the columns constant, value, unit, ...");
        return;
    }
    for (size_t r = 0; r < t->rows; r++) {
        const char *name = csv_cell(t, r, 0);
        if (!is_name(name))
            csv_fault(t, t->line[r], "constant '%s' is not made of letters, digits and _", name);
        check_unit(t, csv_cell(t, r, 2), t->line[r]);
        for (size_t k = 0; k < r; k++)
            if (!strcasecmp(csv_cell(t, k, 0), name))
                csv_fault(t, t->line[r], "constant '%s' stands twice", name);
    }
}

void csv_check_table(csv_table *t) {
    if (!is_name(t->id))
        csv_fault(t, 1, "table name '%s' is not made of letters, digits and _", t->id);
    for (size_t i = 0; i < t->reader->tables; i++)
        if (!strcasecmp(t->reader->table[i], t->id))
            csv_fault(t, 1, "table '%s' is read twice", t->id);
    if (!t->title || !t->source || !t->basis) {
        csv_fault(t, 1, "the header needs title, source and basis");
    } else {
        check_sources(t, t->source, 1);
        check_basis(t, t->basis, 1);
    }
    if (t->rows == 0) csv_fault(t, 1, "no rows");
    if (t->order) check_order(t);
    check_bounds(t);
    if (!strcmp(t->column_name[0], "constant")) check_constants(t);
}
