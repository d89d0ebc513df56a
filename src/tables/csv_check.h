/* The checks on one table file; each prints what it finds and counts it in the reader. */
#ifndef HS_TABLES_CSV_CHECK_H
#define HS_TABLES_CSV_CHECK_H

#include "tables/csv_table.h"

#if defined(__GNUC__)
#define CSV_PRINTF __attribute__((format(printf, 3, 4)))
#else
#define CSV_PRINTF
#endif

/* "path:line: message" to stderr. */
void csv_fault(const csv_table *table, int line, const char *format, ...) CSV_PRINTF;

/* Name and unit of column c as just read from the line of columns. */
void csv_check_column(const csv_table *table, size_t c, int line);

/* One cell of the row that is being read. */
void csv_check_cell(const csv_table *table, const char *cell, size_t c);

/* What only shows when the whole table is there. */
void csv_check_table(csv_table *table);

#endif
