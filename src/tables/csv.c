#include "tables/csv.h"

#include "tables/csv_check.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MAX_LINE = 8192 };

csv_reader csv_start(void) {
    return (csv_reader){.hash = 14695981039346656037ULL};
}

static char *keep(const char *text) {
    char *copy = malloc(strlen(text) + 1);
    if (!copy) exit(1);
    return strcpy(copy, text);
}

static FILE *open_in(const char *path) {
    FILE *file = fopen(path, "r");
    if (!file) {
        perror(path);
        exit(1);
    }
    return file;
}

void csv_sources(csv_reader *reader, const char *path) {
    FILE *file = open_in(path);
    char line[MAX_LINE];
    for (int number = 1; fgets(line, sizeof line, file); number++) {
        char *colon = strchr(line, ':');
        if (strncmp(line, "- ", 2) || !colon) continue;
        *colon = '\0';
        const csv_table here = {.reader = reader, .path = path};
        if (reader->sources == CSV_SOURCES) {
            csv_fault(&here, number, "more than %d sources", CSV_SOURCES);
            break;
        }
        for (size_t i = 0; i < reader->sources; i++)
            if (!strcmp(reader->source[i], line + 2))
                csv_fault(&here, number, "source key '%s' stands twice", line + 2);
        char *text = colon + 1 + strspn(colon + 1, " ");
        text[strcspn(text, "\r\n")] = '\0';
        reader->source_text[reader->sources] = keep(text);
        reader->source[reader->sources++] = keep(line + 2);
    }
    fclose(file);
}

static void read_header(csv_table *t, char *line, int number) {
    char *colon = strchr(line, ':');
    if (!colon) {
        csv_fault(t, number, "a header line is '# key: value'");
        return;
    }
    *colon = '\0';
    const char *key = line + 1 + strspn(line + 1, " ");
    const char *value = keep(colon + 1 + strspn(colon + 1, " "));
    const char **slot = !strcmp(key, "title")    ? &t->title
                        : !strcmp(key, "source") ? &t->source
                        : !strcmp(key, "basis")  ? &t->basis
                        : !strcmp(key, "range")  ? &t->range
                        : !strcmp(key, "note")   ? &t->note
                        : !strcmp(key, "order")  ? &t->order
                                                 : NULL;
    if (!slot) {
        csv_fault(t, number, "unknown header key '%s'", key);
        return;
    }
    if (*slot) csv_fault(t, number, "header key '%s' stands twice", key);
    if (slot == &t->order) t->order_line = number;
    *slot = value;
}

/* One cell from `in`, taken out of its quotes; returns where the next cell starts, or NULL after
 * the last. A cell in double quotes may hold commas and doubled quotes. */
static char *take_cell(const csv_table *t, char *in, const char **cell, int number) {
    char *out = in;
    const char *start = in;
    int quoted = *in == '"';
    if (quoted) in++;
    while (*in && (quoted || *in != ',')) {
        if (quoted && *in == '"' && in[1] != '"') {
            quoted = 0;
            in++;
            if (*in && *in != ',') csv_fault(t, number, "text after a closing quote");
            continue;
        }
        if (quoted && *in == '"') in++;
        *out++ = *in++;
    }
    if (quoted) csv_fault(t, number, "a quote is not closed");
    int more = *in == ',';
    *out = '\0';
    *cell = keep(start);
    return more ? in + 1 : NULL;
}

static size_t split(const csv_table *t, char *line, const char *cells[CSV_COLUMNS], int number) {
    size_t n = 0;
    for (char *in = line; in;) {
        if (n == CSV_COLUMNS) {
            csv_fault(t, number, "more than %d columns", CSV_COLUMNS);
            return n;
        }
        in = take_cell(t, in, &cells[n++], number);
    }
    return n;
}

static void read_columns(csv_table *t, char *line, int number) {
    const char *cells[CSV_COLUMNS];
    t->columns = split(t, line, cells, number);
    for (size_t c = 0; c < t->columns; c++) {
        int used = 0;
        if (sscanf(cells[c], "%47[^[][%23[^]]]%n", t->column_name[c], t->column_unit[c], &used) !=
                2 ||
            used == 0 || (cells[c][used] && strcmp(cells[c] + used, "?"))) {
            csv_fault(t, number, "column '%s' is not name[unit] or name[unit]?", cells[c]);
            continue;
        }
        t->optional[c] = cells[c][used] == '?';
        csv_check_column(t, c, number);
    }
}

static void read_row(csv_table *t, char *line, int number) {
    if (t->rows == CSV_ROWS) {
        csv_fault(t, number, "more than %d rows", CSV_ROWS);
        return;
    }
    t->line[t->rows] = number;
    size_t n = split(t, line, t->cell[t->rows], number);
    if (n != t->columns) {
        csv_fault(t, number, "%zu cells where %zu columns are named", n, t->columns);
        return;
    }
    for (size_t c = 0; c < n; c++)
        csv_check_cell(t, t->cell[t->rows][c], c);
    t->rows++;
}

static void read_line(csv_table *t, char *line, int number) {
    size_t length = strcspn(line, "\r\n");
    if (!line[length] && length + 1 == MAX_LINE) csv_fault(t, number, "the line is too long");
    line[length] = '\0';
    if (line[0] == '#' && t->columns > 0)
        csv_fault(t, number, "a header line below the line of columns");
    else if (line[0] == '#')
        read_header(t, line, number);
    else if (!line[0])
        return;
    else if (t->columns == 0)
        read_columns(t, line, number);
    else
        read_row(t, line, number);
}

static void name_table(csv_table *t, const char *path) {
    const char *slash = strrchr(path, '/');
    snprintf(t->id, sizeof t->id, "%s", slash ? slash + 1 : path);
    char *dot = strrchr(t->id, '.');
    if (dot) *dot = '\0';
    t->path = path;
}

void csv_read(csv_reader *reader, csv_table *t, const char *path) {
    t->reader = reader;
    name_table(t, path);
    FILE *file = open_in(path);
    char line[MAX_LINE];
    for (int number = 1; fgets(line, sizeof line, file); number++) {
        for (const unsigned char *p = (unsigned char *)line; *p; p++)
            reader->hash = (reader->hash ^ *p) * 1099511628211ULL;
        read_line(t, line, number);
    }
    fclose(file);
    csv_check_table(t);
    if (reader->tables < CSV_TABLES) reader->table[reader->tables++] = t->id;
    if (!t->range) t->range = "";
    if (!t->note) t->note = "";
}
