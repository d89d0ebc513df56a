#include "tables/csv_table.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

const char *csv_cell(const csv_table *t, size_t row, size_t column) {
    return t->cell[row][column];
}

double csv_number(const csv_table *t, size_t row, size_t column) {
    const char *cell = t->cell[row][column];
    if (!*cell || !strcmp(t->column_unit[column], "text")) return NAN;
    return strtod(cell, NULL);
}

int csv_column(const csv_table *t, const char *name) {
    for (size_t c = 0; c < t->columns; c++)
        if (!strcmp(t->column_name[c], name)) return (int)c;
    return -1;
}
