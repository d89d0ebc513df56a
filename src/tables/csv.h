/* Reads and checks table files for the generator. A build tool, one short run: it never frees. */
#ifndef HS_TABLES_CSV_H
#define HS_TABLES_CSV_H

#include "tables/csv_table.h"

csv_reader csv_start(void);

/* Remember the source keys: every line of SOURCES.md that starts with "- KEY:". */
void csv_sources(csv_reader *reader, const char *path);

/* Read and check a table; faults are printed as file:line: message and counted. */
void csv_read(csv_reader *reader, csv_table *table, const char *path);

#endif
