/* The analyses of all steels, row by row, as the standards print them. */
#include "hardskin/tables/steel.h"
#include "support/check.h"

#include <string.h>

typedef struct range {
    double low, high; /* low 0: a maximum; both 0: not named */
} range;

typedef struct row {
    const char *name;
    range C, Mn, Si, Cr, Ni, Mo, S, Pb;
    double Cu_most;
} row;

/* published: EN 10025-2, EN 10084, ASTM A29, BS 970 (read; 18CrNiMo7-6, A36 and 070M20 from
 * memory). Si of the ASTM bars is the usual one, no limit of the standard. */
static const row rows[] = {
    {.name = "S235JR", .C = {0, .17}, .Mn = {0, 1.40}, .Cu_most = .55},
    {.name = "S275JR", .C = {0, .21}, .Mn = {0, 1.50}},
    {.name = "C10E", .C = {.07, .13}, .Mn = {.30, .60}, .Si = {0, .40}},
    {.name = "C15E", .C = {.12, .18}, .Mn = {.30, .60}, .Si = {0, .40}},
    {.name = "16MnCr5", .C = {.14, .19}, .Mn = {1.00, 1.30}, .Si = {0, .40}, .Cr = {.80, 1.10}},
    {.name = "20MnCr5", .C = {.17, .22}, .Mn = {1.10, 1.40}, .Si = {0, .40}, .Cr = {1.00, 1.30}},
    {.name = "18CrNiMo7-6",
     .C = {.15, .21},
     .Mn = {.50, .90},
     .Si = {0, .40},
     .Cr = {1.50, 1.80},
     .Ni = {1.40, 1.70},
     .Mo = {.25, .35}},
    {.name = "1010", .C = {.08, .13}, .Mn = {.30, .60}, .Si = {.10, .30}},
    {.name = "1018", .C = {.15, .20}, .Mn = {.60, .90}, .Si = {.10, .30}},
    {.name = "1020", .C = {.18, .23}, .Mn = {.30, .60}, .Si = {.10, .30}},
    {.name = "1117", .C = {.14, .20}, .Mn = {1.00, 1.30}, .Si = {.10, .30}, .S = {.08, .13}},
    {.name = "8620",
     .C = {.18, .23},
     .Mn = {.70, .90},
     .Si = {.15, .35},
     .Cr = {.40, .60},
     .Ni = {.40, .70},
     .Mo = {.15, .25}},
    {.name = "9310",
     .C = {.08, .13},
     .Mn = {.45, .65},
     .Si = {.15, .35},
     .Cr = {1.00, 1.40},
     .Ni = {3.00, 3.50},
     .Mo = {.08, .15}},
    {.name = "A36", .C = {.25, .29}, .Mn = {.60, 1.20}, .Si = {0, .40}},
    {.name = "070M20", .C = {.16, .24}, .Mn = {.50, .90}},
    {.name = "EN32B", .C = {.10, .18}, .Mn = {.60, 1.00}, .Si = {.05, .35}},
    {.name = "12L14", .C = {0, .15}, .Mn = {.85, 1.15}, .S = {.26, .35}, .Pb = {.15, .35}}};

/* Of a maximum only the high end is printed; what is not named is not looked at. */
static void compare(double low, double high, range printed) {
    if (printed.high > 0) NEAR(high, printed.high, 1e-12);
    if (printed.low > 0) NEAR(low, printed.low, 1e-12);
}

static void steel_table__analyses__as_printed(void) {
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const row *r = &rows[i];
        hs_steel s;
        CHECK(hs_steel_find(&s, r->name, NULL) == HS_OK && !strcmp(s.name, r->name));
        compare(s.low.C, s.high.C, r->C);
        compare(s.low.Mn, s.high.Mn, r->Mn);
        compare(s.low.Si, s.high.Si, r->Si);
        compare(s.low.Cr, s.high.Cr, r->Cr);
        compare(s.low.Ni, s.high.Ni, r->Ni);
        compare(s.low.Mo, s.high.Mo, r->Mo);
        compare(s.low.S, s.high.S, r->S);
        compare(s.low.Pb, s.high.Pb, r->Pb);
        if (r->Cu_most > 0) NEAR(s.high.Cu, r->Cu_most, 1e-12);
    }
}

static void steel_table__what_no_standard_names__is_not_there(void) {
    /* published: the same; an element without an entry has no content that is reckoned with */
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        hs_steel s;
        CHECK(hs_steel_find(&s, rows[i].name, NULL) == HS_OK);
        CHECK(rows[i].Cr.high > 0 || s.mid.Cr == 0);
        CHECK(rows[i].Ni.high > 0 || s.mid.Ni == 0);
        CHECK(rows[i].Mo.high > 0 || s.mid.Mo == 0);
        CHECK(rows[i].Pb.high > 0 || s.mid.Pb == 0);
    }
}

HS_TEST_MAIN("tables_steel_table", TEST(steel_table__analyses__as_printed),
             TEST(steel_table__what_no_standard_names__is_not_there))
