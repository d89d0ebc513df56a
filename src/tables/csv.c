#include "tables/csv.h"

#include <ctype.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MAX_SOURCES = 256, MAX_LINE = 8192 };

/* A build tool, one run a process: its running state is file-scope on purpose. */
static char *sources[MAX_SOURCES];
static size_t source_count;
static int fault_count;
static unsigned long long running_hash = 14695981039346656037ULL;

static void fault(const char *path, int line, const char *format, ...) {
    va_list args;
    va_start(args, format);
    fprintf(stderr, "%s:%d: ", path, line);
    vfprintf(stderr, format, args);
    fputc('\n', stderr);
    va_end(args);
    fault_count++;
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

void csv_sources(const char *path) {
    FILE *file = open_in(path);
    char line[MAX_LINE];
    while (fgets(line, sizeof line, file)) {
        char *colon = strchr(line, ':');
        if (strncmp(line, "- ", 2) || !colon || source_count == MAX_SOURCES) continue;
        *colon = '\0';
        sources[source_count++] = keep(line + 2);
    }
    fclose(file);
}

/* One key, or several parted by spaces. */
static void check_sources(const char *keys, const char *path, int line) {
    char copy[256];
    snprintf(copy, sizeof copy, "%s", keys);
    for (char *key = strtok(copy, " "); key; key = strtok(NULL, " ")) {
        size_t i = 0;
        while (i < source_count && strcmp(sources[i], key))
            i++;
        if (i == source_count) fault(path, line, "source key '%s' is not in SOURCES.md", key);
    }
}

static void check_basis(const char *basis, const char *path, int line) {
    static const char *const known[] = {"read",      "from memory",     "computed",
                                        "judgement", "common practice", "mixed"};
    for (size_t i = 0; i < sizeof known / sizeof *known; i++)
        if (!strcmp(known[i], basis)) return;
    fault(path, line,
          "basis '%s' is none of read, from memory, computed, judgement, "
          "common practice, mixed",
          basis);
}

static void read_header(csv_table *t, char *line, int number) {
    char *colon = strchr(line, ':');
    if (!colon) {
        fault(t->path, number, "a header line is '# key: value'");
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
    if (!slot)
        fault(t->path, number, "unknown header key '%s'", key);
    else
        *slot = value;
}

/* Split at commas; a cell in double quotes may hold commas and doubled quotes. */
static size_t split(csv_table *t, char *line, const char *cells[CSV_COLUMNS], int number) {
    size_t n = 0;
    char *in = line;
    for (;;) {
        char *out = in, *start = in;
        int quoted = *in == '"';
        if (quoted) in++;
        while (*in && (quoted || *in != ',')) {
            if (quoted && *in == '"' && in[1] != '"') {
                quoted = 0;
                in++;
                continue;
            }
            if (quoted && *in == '"') in++;
            *out++ = *in++;
        }
        int more = *in == ',';
        if (more) in++;
        *out = '\0';
        if (n == CSV_COLUMNS) {
            fault(t->path, number, "more than %d columns", CSV_COLUMNS);
            return n;
        }
        cells[n++] = keep(start);
        if (!more) return n;
    }
}

static void read_columns(csv_table *t, char *line, int number) {
    const char *cells[CSV_COLUMNS];
    t->columns = split(t, line, cells, number);
    for (size_t c = 0; c < t->columns; c++) {
        int used = 0;
        if (sscanf(cells[c], "%47[^[][%23[^]]]%n", t->column_name[c], t->column_unit[c], &used) !=
                2 ||
            used == 0)
            fault(t->path, number, "column '%s' is not name[unit]", cells[c]);
        t->optional[c] = used > 0 && cells[c][used] == '?';
    }
}

static void check_cell(const csv_table *t, const char *cell, size_t c) {
    int number = t->line[t->rows];
    if (!*cell) {
        if (!t->optional[c] && strcmp(t->column_unit[c], "text"))
            fault(t->path, number, "column '%s' is empty", t->column_name[c]);
        return;
    }
    if (!strcmp(t->column_name[c], "source")) check_sources(cell, t->path, number);
    if (!strcmp(t->column_name[c], "basis")) check_basis(cell, t->path, number);
    if (!strcmp(t->column_unit[c], "text")) return;
    char *end;
    double value = strtod(cell, &end);
    if (*end || !isfinite(value))
        fault(t->path, number, "'%s' in column '%s' is not a finite number", cell,
              t->column_name[c]);
}

static void read_row(csv_table *t, char *line, int number) {
    if (t->rows == CSV_ROWS) {
        fault(t->path, number, "more than %d rows", CSV_ROWS);
        return;
    }
    t->line[t->rows] = number;
    size_t n = split(t, line, t->cell[t->rows], number);
    if (n != t->columns) {
        fault(t->path, number, "%zu cells where %zu columns are named", n, t->columns);
        return;
    }
    for (size_t c = 0; c < n; c++)
        check_cell(t, t->cell[t->rows][c], c);
    t->rows++;
}

static int column_of(const csv_table *t, const char *name) {
    for (size_t c = 0; c < t->columns; c++)
        if (!strcmp(t->column_name[c], name)) return (int)c;
    return -1;
}

/* "COLUMN rising|falling [in GROUP]" */
static void check_order(const csv_table *t) {
    char name[48], way[16], group[48] = "";
    int words = sscanf(t->order, "%47s %15s in %47s", name, way, group);
    int c = words >= 2 ? column_of(t, name) : -1, g = words == 3 ? column_of(t, group) : -1;
    if (c < 0 || (words == 3 && g < 0) || (strcmp(way, "rising") && strcmp(way, "falling"))) {
        fault(t->path, 1, "order '%s' is not 'COLUMN rising|falling [in GROUP]'", t->order);
        return;
    }
    double sign = strcmp(way, "rising") ? -1 : 1;
    for (size_t r = 1; r < t->rows; r++) {
        if (g >= 0 && strcmp(csv_cell(t, r, (size_t)g), csv_cell(t, r - 1, (size_t)g))) continue;
        if (!(sign * (csv_number(t, r, (size_t)c) - csv_number(t, r - 1, (size_t)c)) > 0))
            fault(t->path, t->line[r], "column '%s' is not %s here", name, way);
    }
}

/* Scalars: the value lies inside low and high where these are given. */
static void check_constants(const csv_table *t) {
    int low = column_of(t, "low"), high = column_of(t, "high");
    if (column_of(t, "value") != 1 || column_of(t, "unit") != 2) {
        fault(t->path, 1, "a table of constants has the columns constant, value, unit, ...");
        return;
    }
    for (size_t r = 0; r < t->rows; r++) {
        double value = csv_number(t, r, 1);
        if (low >= 0 && value < csv_number(t, r, (size_t)low))
            fault(t->path, t->line[r], "value is below its low bound");
        if (high >= 0 && value > csv_number(t, r, (size_t)high))
            fault(t->path, t->line[r], "value is above its high bound");
        for (size_t k = 0; k < r; k++)
            if (!strcmp(csv_cell(t, k, 0), csv_cell(t, r, 0)))
                fault(t->path, t->line[r], "constant '%s' stands twice", csv_cell(t, r, 0));
    }
}

static void check_table(const csv_table *t) {
    if (!t->title || !t->source || !t->basis)
        fault(t->path, 1, "the header needs title, source and basis");
    else {
        check_sources(t->source, t->path, 1);
        check_basis(t->basis, t->path, 1);
    }
    if (t->rows == 0) fault(t->path, 1, "no rows");
    if (t->order) check_order(t);
    if (!strcmp(t->column_name[0], "constant")) check_constants(t);
}

static void name_table(csv_table *t, const char *path) {
    const char *slash = strrchr(path, '/');
    snprintf(t->id, sizeof t->id, "%s", slash ? slash + 1 : path);
    char *dot = strrchr(t->id, '.');
    if (dot) *dot = '\0';
    t->path = path;
}

void csv_read(csv_table *t, const char *path) {
    name_table(t, path);
    FILE *file = open_in(path);
    char line[MAX_LINE];
    for (int number = 1; fgets(line, sizeof line, file); number++) {
        for (const unsigned char *p = (unsigned char *)line; *p; p++)
            running_hash = (running_hash ^ *p) * 1099511628211ULL;
        line[strcspn(line, "\r\n")] = '\0';
        if (line[0] == '#')
            read_header(t, line, number);
        else if (!line[0])
            continue;
        else if (t->columns == 0)
            read_columns(t, line, number);
        else
            read_row(t, line, number);
    }
    fclose(file);
    check_table(t);
    if (!t->range) t->range = "";
    if (!t->note) t->note = "";
}

const char *csv_cell(const csv_table *t, size_t row, size_t column) {
    return t->cell[row][column];
}

double csv_number(const csv_table *t, size_t row, size_t column) {
    const char *cell = t->cell[row][column];
    if (!*cell || !strcmp(t->column_unit[column], "text")) return NAN;
    return strtod(cell, NULL);
}

int csv_faults(void) {
    return fault_count;
}

unsigned long long csv_hash(void) {
    return running_hash;
}
