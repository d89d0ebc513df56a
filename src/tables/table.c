#include "hardskin/tables/table.h"

#include "tables_data.h"

#include <math.h>
#include <string.h>

const hs_table *hs_table_get(hs_table_id id) {
    return &hs_tables_data[(unsigned)id < HS_TABLE_COUNT ? id : 0];
}

const hs_table *hs_table_find(const char *name) {
    for (size_t i = 0; i < HS_TABLE_COUNT; i++)
        if (!strcmp(hs_tables_data[i].id, name)) return &hs_tables_data[i];
    return NULL;
}

const char *hs_table_hash(void) {
    return hs_tables_hash;
}

const char *hs_source_text(const char *key) {
    for (size_t i = 0; i < hs_sources_count; i++)
        if (!strcmp(hs_sources_data[i][0], key)) return hs_sources_data[i][1];
    return "";
}

double hs_table_number(const hs_table *table, size_t row, size_t column) {
    return table->number[row * table->columns + column];
}

const char *hs_table_text(const hs_table *table, size_t row, size_t column) {
    return table->text[row * table->columns + column];
}

int hs_table_column(const hs_table *table, const char *name) {
    for (size_t i = 0; i < table->columns; i++)
        if (!strcmp(table->column[i].name, name)) return (int)i;
    return -1;
}

int hs_table_row(const hs_table *table, size_t column, const char *key) {
    for (size_t i = 0; i < table->rows; i++)
        if (!strcmp(hs_table_text(table, i, column), key)) return (int)i;
    return -1;
}

double hs_table_interpolate(const hs_table *table, size_t x, size_t y, double at) {
    double x0 = NAN, y0 = NAN;
    for (size_t i = 0; i < table->rows; i++) {
        double x1 = hs_table_number(table, i, x), y1 = hs_table_number(table, i, y);
        if (isnan(x1) || isnan(y1)) continue;
        if (at == x1) return y1;
        if ((at > x0 && at < x1) || (at < x0 && at > x1))
            return y0 + (y1 - y0) * (at - x0) / (x1 - x0);
        x0 = x1;
        y0 = y1;
    }
    return NAN;
}
