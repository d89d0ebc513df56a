#include "hardskin/units/kinds.h"
#include "hardskin/units/quantity.h"
#include "units/reading.h"

#include <string.h>

typedef struct kind_row {
    const char *words, *unit, *forms;
} kind_row;

static const kind_row rows[HS_KIND_COUNT] = {
#define X(id, name, words, unit, forms) {words, unit, forms},
    HS_KIND_LIST(X)
#undef X
};

static const char *const scales[] = {"", "HRC", "HV", "HBW", "HRA", "HR15N", "HR30N"};

static const kind_row *row_of(hs_kind kind) {
    return &rows[(unsigned)kind < HS_KIND_COUNT ? kind : HS_NUMBER];
}

const char *hs_kind_words(hs_kind kind) {
    return row_of(kind)->words;
}

const char *hs_kind_forms(hs_kind kind) {
    return row_of(kind)->forms;
}

const char *hs_kind_unit(hs_kind kind) {
    return row_of(kind)->unit;
}

const char *hs_scale_name(hs_scale scale) {
    return (unsigned)scale < sizeof scales / sizeof *scales ? scales[scale] : "";
}

hs_scale hs_scale_named(const char *name) {
    for (unsigned i = 1; i < sizeof scales / sizeof *scales; i++)
        if (!strcmp(name, scales[i])) return (hs_scale)i;
    return HS_SCALE_NONE;
}
