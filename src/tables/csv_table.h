/* A table file as read, and the run of the generator it is read in. */
#ifndef HS_TABLES_CSV_TABLE_H
#define HS_TABLES_CSV_TABLE_H

#include <stddef.h>

enum { CSV_COLUMNS = 24, CSV_ROWS = 512, CSV_SOURCES = 256, CSV_TABLES = 256 };

/* What one run of the generator knows and has found so far. Start it with csv_start. */
typedef struct csv_reader {
    const char *source[CSV_SOURCES]; /* keys that SOURCES.md explains */
    const char *source_text[CSV_SOURCES];
    size_t sources;
    const char *table[CSV_TABLES]; /* ids read */
    size_t tables;
    int faults;              /* how many were printed */
    unsigned long long hash; /* over the bytes of all tables read (FNV-1a) */
} csv_reader;

typedef struct csv_table {
    csv_reader *reader;
    char id[64];
    const char *path;
    const char *title, *source, *basis, *range, *note, *order;
    int order_line;
    size_t rows, columns;
    char column_name[CSV_COLUMNS][48], column_unit[CSV_COLUMNS][24];
    int optional[CSV_COLUMNS];
    int line[CSV_ROWS];
    const char *cell[CSV_ROWS][CSV_COLUMNS];
} csv_table;

const char *csv_cell(const csv_table *table, size_t row, size_t column);

/* NaN for words and empty cells. */
double csv_number(const csv_table *table, size_t row, size_t column);

/* Column of that name, -1 if there is none. */
int csv_column(const csv_table *table, const char *name);

#endif
