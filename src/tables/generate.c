/* Turns tables/NAME.csv into C and checks them on the way:
 *     generate OUT_DIR SOURCES.md a.csv b.csv ...
 * writes tables_list.h (names), tables_data.h/.c (cells), constants.h (scalars as macros).
 * Any fault is printed as file:line: message and ends the build.
 *
 * A file starts with a header block of `# key: value` lines: title, source, basis, and optionally
 * range, note, order ("COLUMN rising" or "COLUMN falling", with "in GROUP" where the order holds
 * only inside rows of equal GROUP). Then one line of columns `name[unit]` (`name[unit]?` where a
 * cell may be empty, `name[text]` for words), then the rows. A cell with a comma is quoted. Units
 * are made of the words listed in csv_check.c. Where there are columns low and high (or X_low and
 * X_high), each row has low <= high, and value (or X) lies between.
 * Files whose first column is `constant[text]` hold scalars: columns constant, value, unit and
 * optionally low, high; each becomes a macro HS_K_<FILE>_<CONSTANT>. */
#include "tables/csv.h"

#include <ctype.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void upper(char *out, size_t size, const char *name) {
    size_t i = 0;
    for (; name[i] && i + 1 < size; i++)
        out[i] = isalnum((unsigned char)name[i]) ? (char)toupper((unsigned char)name[i]) : '_';
    out[i] = '\0';
}

static FILE *open_out(const char *dir, const char *name) {
    char path[4096];
    snprintf(path, sizeof path, "%s/%s", dir, name);
    FILE *file = fopen(path, "w");
    if (!file) {
        perror(path);
        exit(1);
    }
    return file;
}

static void close_out(FILE *file) {
    if (fclose(file)) {
        perror("generate");
        exit(1);
    }
}

static void put_string(FILE *out, const char *text) {
    fputc('"', out);
    for (; *text; text++) {
        if (*text == '"' || *text == '\\') fputc('\\', out);
        fputc(*text, out);
    }
    fputc('"', out);
}

static void write_list(const char *dir, const csv_table *tables, size_t n) {
    FILE *out = open_out(dir, "tables_list.h");
    for (size_t i = 0; i < n; i++) {
        char name[64];
        upper(name, sizeof name, tables[i].id);
        fprintf(out, "X(%s, \"%s\")\n", name, tables[i].id);
    }
    close_out(out);
}

static void write_columns_enum(FILE *out, const csv_table *t) {
    char table[64], column[64];
    upper(table, sizeof table, t->id);
    fprintf(out, "enum {");
    for (size_t c = 0; c < t->columns; c++) {
        upper(column, sizeof column, t->column_name[c]);
        fprintf(out, " HS_%s_%s,", table, column);
    }
    fprintf(out, " HS_%s__COLUMNS };\n", table);
}

static void write_constants(const char *dir, const csv_table *tables, size_t n) {
    FILE *out = open_out(dir, "constants.h");
    fprintf(out, "#ifndef HS_TABLES_CONSTANTS_H\n#define HS_TABLES_CONSTANTS_H\n");
    for (size_t i = 0; i < n; i++) {
        const csv_table *t = &tables[i];
        write_columns_enum(out, t);
        if (strcmp(t->column_name[0], "constant")) continue;
        char table[64], name[64];
        upper(table, sizeof table, t->id);
        for (size_t r = 0; r < t->rows; r++) {
            upper(name, sizeof name, csv_cell(t, r, 0));
            fprintf(out, "#define HS_K_%s_%s (%.17g) /* %s */\n", table, name, csv_number(t, r, 1),
                    csv_cell(t, r, 2));
        }
    }
    fprintf(out, "#endif\n");
    close_out(out);
}

static void write_cells(FILE *out, const csv_table *t) {
    fprintf(out, "static const hs_column columns_%s[] = {", t->id);
    for (size_t c = 0; c < t->columns; c++)
        fprintf(out, "{\"%s\", \"%s\"},", t->column_name[c], t->column_unit[c]);
    fprintf(out, "};\nstatic const double numbers_%s[] = {", t->id);
    for (size_t i = 0; i < t->rows * t->columns; i++) {
        double value = csv_number(t, i / t->columns, i % t->columns);
        if (isnan(value))
            fprintf(out, "NAN,");
        else
            fprintf(out, "%.17g,", value);
    }
    fprintf(out, "};\nstatic const char *const texts_%s[] = {", t->id);
    for (size_t i = 0; i < t->rows * t->columns; i++) {
        put_string(out, csv_cell(t, i / t->columns, i % t->columns));
        fputc(',', out);
    }
    fprintf(out, "};\n");
}

static void write_record(FILE *out, const csv_table *t) {
    const char *head[] = {t->id, t->title, t->source, t->basis, t->range, t->note};
    fprintf(out, "    {");
    for (size_t i = 0; i < sizeof head / sizeof *head; i++) {
        put_string(out, head[i]);
        fprintf(out, ", ");
    }
    fprintf(out, "%zu, %zu, columns_%s, numbers_%s, texts_%s},\n", t->rows, t->columns, t->id,
            t->id, t->id);
}

static void write_sources(FILE *out, const csv_reader *reader) {
    fprintf(out, "const char *const hs_sources_data[][2] = {\n");
    for (size_t i = 0; i < reader->sources; i++) {
        fprintf(out, "    {");
        put_string(out, reader->source[i]);
        fprintf(out, ", ");
        put_string(out, reader->source_text[i]);
        fprintf(out, "},\n");
    }
    fprintf(out, "};\nconst size_t hs_sources_count = %zu;\n", reader->sources);
}

static void write_data(const char *dir, const csv_table *tables, size_t n,
                       const csv_reader *reader) {
    FILE *head = open_out(dir, "tables_data.h");
    fprintf(head, "#ifndef HS_TABLES_DATA_H\n#define HS_TABLES_DATA_H\n"
                  "#include \"hardskin/tables/table.h\"\n"
                  "extern const hs_table hs_tables_data[];\n"
                  "extern const char hs_tables_hash[];\n"
                  "extern const char *const hs_sources_data[][2];\n"
                  "extern const size_t hs_sources_count;\n#endif\n");
    close_out(head);
    FILE *out = open_out(dir, "tables_data.c");
    fprintf(out, "#include \"tables_data.h\"\n#include <math.h>\n");
    for (size_t i = 0; i < n; i++)
        write_cells(out, &tables[i]);
    fprintf(out, "const hs_table hs_tables_data[] = {\n");
    for (size_t i = 0; i < n; i++)
        write_record(out, &tables[i]);
    fprintf(out, "};\nconst char hs_tables_hash[] = \"%016llx\";\n", reader->hash);
    write_sources(out, reader);
    close_out(out);
}

int main(int argc, char **argv) {
    if (argc < 4) {
        fprintf(stderr, "use: generate OUT_DIR SOURCES.md FILE.csv ...\n");
        return 2;
    }
    size_t n = (size_t)argc - 3;
    csv_table *tables = calloc(n, sizeof *tables);
    if (!tables) return 1;
    csv_reader reader = csv_start();
    csv_sources(&reader, argv[2]);
    for (size_t i = 0; i < n; i++)
        csv_read(&reader, &tables[i], argv[i + 3]);
    if (reader.faults) return 1;
    write_list(argv[1], tables, n);
    write_constants(argv[1], tables, n);
    write_data(argv[1], tables, n, &reader);
    return 0;
}
