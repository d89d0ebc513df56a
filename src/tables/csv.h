/* Reads and checks one table file for the generator. A build tool: it never frees. */
#ifndef HS_TABLES_CSV_H
#define HS_TABLES_CSV_H

#include <stddef.h>

enum { CSV_COLUMNS = 24, CSV_ROWS = 512 };

typedef struct csv_table {
    char id[64];
    const char *path;
    const char *title, *source, *basis, *range, *note, *order;
    size_t rows, columns;
    char column_name[CSV_COLUMNS][48], column_unit[CSV_COLUMNS][24];
    int optional[CSV_COLUMNS];
    int line[CSV_ROWS];
    const char *cell[CSV_ROWS][CSV_COLUMNS];
} csv_table;

/* Remember the source keys: every line of SOURCES.md that starts with "- KEY:". */
void csv_sources(const char *path);

/* Read and check a table; faults are printed as file:line: message and counted. */
void csv_read(csv_table *table, const char *path);

const char *csv_cell(const csv_table *table, size_t row, size_t column);

/* NaN for words and empty cells. */
double csv_number(const csv_table *table, size_t row, size_t column);

/* How many faults were printed so far. */
int csv_faults(void);

/* Hash over the bytes of all tables read. */
unsigned long long csv_hash(void);

#endif
