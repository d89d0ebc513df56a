#include "hardskin/tables/steel.h"

#include "base/nearest.h"
#include "constants.h"
#include "hardskin/tables/table.h"

#include <math.h>
#include <stdio.h>
#include <string.h>
#include <strings.h>

enum { MOST_NAMES = 96 };

static const hs_table *steels(void) {
    return hs_table_get(HS_TABLE_STEELS);
}

static double cell(size_t row, size_t column) {
    return hs_table_number(steels(), row, column);
}

typedef struct element {
    double low, mid, high;
} element;

/* Both limits known: their middle. Only a maximum: `guess`. Neither: none in the steel. */
static element range_of(size_t row, size_t low_column, double guess) {
    double low = cell(row, low_column), high = cell(row, low_column + 1);
    if (isnan(high)) return (element){0, 0, 0};
    if (isnan(low)) return (element){0, guess, high};
    return (element){low, 0.5 * (low + high), high};
}

static void put(hs_steel *steel, size_t offset, element e) {
    *(double *)(void *)((char *)&steel->low + offset) = e.low;
    *(double *)(void *)((char *)&steel->mid + offset) = e.mid;
    *(double *)(void *)((char *)&steel->high + offset) = e.high;
}

static void read_elements(hs_steel *steel, size_t row) {
    static const struct {
        size_t offset, column;
    } halves[] = {
        {offsetof(hs_composition, Cr), HS_STEELS_CR_LOW},
        {offsetof(hs_composition, Ni), HS_STEELS_NI_LOW},
        {offsetof(hs_composition, Mo), HS_STEELS_MO_LOW},
        {offsetof(hs_composition, Cu), HS_STEELS_CU_LOW},
        {offsetof(hs_composition, S), HS_STEELS_S_LOW},
        {offsetof(hs_composition, Pb), HS_STEELS_PB_LOW},
    };
    for (size_t i = 0; i < sizeof halves / sizeof *halves; i++)
        put(steel, halves[i].offset,
            range_of(row, halves[i].column, 0.5 * cell(row, halves[i].column + 1)));
    put(steel, offsetof(hs_composition, C),
        range_of(row, HS_STEELS_C_LOW,
                 cell(row, HS_STEELS_C_HIGH) - HS_K_STEEL_GUESS_C_BELOW_MAXIMUM));
    put(steel, offsetof(hs_composition, Mn),
        range_of(row, HS_STEELS_MN_LOW, cell(row, HS_STEELS_MN_HIGH) * HS_K_STEEL_GUESS_MN_SHARE));
    put(steel, offsetof(hs_composition, Si), range_of(row, HS_STEELS_SI_LOW, HS_K_STEEL_GUESS_SI));
    if (isnan(cell(row, HS_STEELS_SI_HIGH))) /* killed steel: silicon is in it, limit or not */
        put(steel, offsetof(hs_composition, Si),
            (element){0, HS_K_STEEL_GUESS_SI, 2 * HS_K_STEEL_GUESS_SI});
}

size_t hs_steel_count(void) {
    return steels()->rows;
}

void hs_steel_at(hs_steel *steel, size_t i) {
    *steel = (hs_steel){.basis = hs_table_text(steels(), i, HS_STEELS_BASIS),
                        .source = hs_table_text(steels(), i, HS_STEELS_SOURCE),
                        .note = hs_table_text(steels(), i, HS_STEELS_NOTE)};
    snprintf(steel->name, sizeof steel->name, "%s", hs_table_text(steels(), i, HS_STEELS_STEEL));
    snprintf(steel->standard, sizeof steel->standard, "%s",
             hs_table_text(steels(), i, HS_STEELS_STANDARD));
    read_elements(steel, i);
    steel->only_maxima = isnan(cell(i, HS_STEELS_C_LOW));
    steel->alloyed = !isnan(cell(i, HS_STEELS_CR_HIGH)) || !isnan(cell(i, HS_STEELS_NI_HIGH));
}

/* Is `name` one of the names in a list parted by '|'? */
static int listed(const char *list, const char *name) {
    size_t length = strlen(name);
    for (const char *at = list; *at;) {
        size_t one = strcspn(at, "|");
        if (one == length && !strncasecmp(at, name, length)) return 1;
        at += one + (at[one] == '|');
    }
    return 0;
}

hs_status hs_steel_find(hs_steel *steel, const char *name, hs_error *err) {
    const char *names[MOST_NAMES];
    size_t n = 0;
    for (size_t i = 0; i < hs_steel_count() && n < MOST_NAMES; i++) {
        const char *main_name = hs_table_text(steels(), i, HS_STEELS_STEEL);
        if (!strcasecmp(main_name, name) ||
            listed(hs_table_text(steels(), i, HS_STEELS_ALSO), name)) {
            hs_steel_at(steel, i);
            return HS_OK;
        }
        names[n++] = main_name;
    }
    const char *near = hs_nearest(name, names, n);
    char help[160];
    snprintf(help, sizeof help, "%s%s%s", near ? "did you mean " : "", near ? near : "",
             near ? "? `hardskin tables steels` lists them"
                  : "`hardskin tables steels` lists them; or give the analysis with \"like\"");
    return hs_fail(err, HS_E_STEEL, help, "no steel '%s' in the table", name);
}
