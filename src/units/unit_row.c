#include "units/unit_row.h"
#include "hardskin/tables/table.h"
#include "hardskin/units/quantity.h"
#include "units/fold.h"

#include "constants.h"

#include <ctype.h>
#include <stdio.h>
#include <string.h>

enum { NAME_SIZE = 48 };

/* What people write instead, and why it is not taken. */
typedef struct mistaken {
    const char *text;
    hs_status status;
    const char *why, *help;
} mistaken;

static const mistaken known_mistakes[] = {
    {"mil", HS_E_AMBIGUOUS, "'mil' is a thousandth of an inch to some, a millimetre to others",
     "write thou or mm"},
    {"mils", HS_E_AMBIGUOUS, "'mils' are thousandths of an inch to some, millimetres to others",
     "write thou or mm"},
    {"tenth", HS_E_AMBIGUOUS, "a tenth of what", "write 0.0001 in or 0.1 mm"},
    {"tenths", HS_E_AMBIGUOUS, "tenths of what", "write 0.0001 in or 0.1 mm"},
    {"gal", HS_E_AMBIGUOUS, "a gallon is US or imperial", "write litres: 3.8 L or 4.5 L"},
    {"ton", HS_E_AMBIGUOUS, "a ton is short, long or metric", "write kg"},
    {"micron", HS_E_UNIT, "'micron' is not a unit this program reads", "write um"},
    {"microns", HS_E_UNIT, "'microns' is not a unit this program reads", "write um"},
    {"HB", HS_E_UNIT, "'HB' does not say which ball", "write HBW (hard-metal ball)"},
    {"HBS", HS_E_UNIT, "'HBS' (steel ball) is no longer in use", "write HBW (hard-metal ball)"},
    {"Rc", HS_E_UNIT, "'Rc' is not a unit this program reads", "write HRC"},
    {"RC", HS_E_UNIT, "'RC' is not a unit this program reads", "write HRC"},
    {"VPN", HS_E_UNIT, "'VPN' is not a unit this program reads", "write HV"},
    {"M", HS_E_UNIT, "'M' is not a unit this program reads",
     "write m for metres or min for minutes"},
    {"MM", HS_E_UNIT, "'MM' is not a unit this program reads", "write mm"},
    {"cc", HS_E_UNIT, "'cc' is not a unit this program reads", "write cm3"},
    {"sfm", HS_E_UNIT, "'sfm' is not a unit this program reads", "write ft/min"},
    {"fpm", HS_E_UNIT, "'fpm' is not a unit this program reads", "write ft/min"},
    {"RMS", HS_E_UNIT, "an RMS roughness is another figure than Ra, about a tenth larger",
     "write it as Ra: Ra 32 uin"},
    {"percent", HS_E_UNIT, "'percent' is not a unit this program reads", "write %"},
};

static hs_unit_row row_at(const hs_table *table, size_t r) {
    double add = hs_table_number(table, r, HS_UNITS_ADD);
    return (hs_unit_row){hs_table_text(table, r, HS_UNITS_UNIT),
                         hs_table_text(table, r, HS_UNITS_KIND),
                         hs_table_number(table, r, HS_UNITS_MULTIPLY),
                         hs_table_number(table, r, HS_UNITS_DIVIDE), add == add ? add : 0};
}

/* The spelling of the table: degree sign in UTF-8, no ^, dots or blanks, no load behind a scale. */
static int canonical(char out[NAME_SIZE], const char *text, size_t length) {
    size_t n = 0;
    for (size_t i = 0; i < length; i++) {
        if (strchr("^ \7", text[i])) continue;
        if (n + 3 >= NAME_SIZE) return 0;
        if (text[i] == MARK_DEGREE) out[n++] = '\xC2';
        out[n++] = text[i] == MARK_DEGREE ? '\xB0' : text[i];
    }
    out[n] = '\0';
    if (!strncmp(out, "HV", 2) && isdigit((unsigned char)out[2])) out[2] = '\0';
    if (!strncmp(out, "HBW", 3) && isdigit((unsigned char)out[3])) out[3] = '\0';
    return 1;
}

int hs_unit_find(hs_unit_row *out, const char *text, size_t length) {
    char name[NAME_SIZE];
    if (!canonical(name, text, length)) return 0;
    const hs_table *table = hs_table_get(HS_TABLE_UNITS);
    int row = hs_table_row(table, HS_UNITS_UNIT, name);
    if (row < 0) return 0;
    *out = row_at(table, (size_t)row);
    return 1;
}

double hs_unit_point(const hs_unit_row *unit, double number) {
    return (number + unit->add) * unit->multiply / unit->divide;
}

double hs_unit_difference(const hs_unit_row *unit, double number) {
    return number * unit->multiply / unit->divide;
}

int hs_unit_is(const hs_unit_row *unit, hs_kind kind) {
    static const char *const names[] = {
#define X(id, name, words, si, forms) name,
        HS_KIND_LIST(X)
#undef X
    };
    return !strcmp(unit->kind, names[kind]);
}

static int same_letters(const char *a, const char *b) {
    while (*a && tolower((unsigned char)*a) == tolower((unsigned char)*b)) {
        a++;
        b++;
    }
    return *a == *b;
}

/* A unit of the wanted kind that differs only in capitals. */
static const char *other_capitals(const char *name, hs_kind expected) {
    const hs_table *table = hs_table_get(HS_TABLE_UNITS);
    for (size_t r = 0; r < table->rows; r++) {
        hs_unit_row row = row_at(table, r);
        if (hs_unit_is(&row, expected) && same_letters(name, row.name)) return row.name;
    }
    return NULL;
}

hs_status hs_unit_refuse(hs_error *err, int column, const char *text, size_t length,
                         hs_kind expected) {
    char name[NAME_SIZE], help[160];
    if (!canonical(name, text, length)) snprintf(name, sizeof name, "this");
    for (size_t i = 0; i < sizeof known_mistakes / sizeof *known_mistakes; i++) {
        const mistaken *m = &known_mistakes[i];
        if (!strcmp(name, m->text))
            return hs_fail_at(err, column, m->status, m->help, "%s", m->why);
    }
    const char *near = other_capitals(name, expected);
    if (near)
        snprintf(help, sizeof help, "write %s: capitals count", near);
    else
        snprintf(help, sizeof help, "%s is written %s", hs_kind_words(expected),
                 hs_kind_forms(expected));
    return hs_fail_at(err, column, HS_E_UNIT, help, "'%s' is not a unit this program reads", name);
}
