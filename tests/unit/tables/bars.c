/* Bars and grinding allowances, whole tables as printed. */
#include "constants.h"
#include "hardskin/tables/table.h"
#include "hardskin/units/size.h"
#include "plan/handbook.h"
#include "support/check.h"

#include <string.h>

typedef struct upto {
    double size_mm, under_mm; /* to this size so much below nominal */
} upto;

typedef struct list {
    const char *name;
    size_t sizes;
    const double *size_mm;
    size_t limits;
    const upto *limit;
} list;

#define LIST(name, sizes, limits)                                                                  \
    { name, sizeof sizes / sizeof *sizes, sizes, sizeof limits / sizeof *limits, limits }

/* published: EN 10058, 10059 and 10060, limits read in secondary pages; sizes from memory but for
 * widths of 130 and 140, read */
static const double width[] = {10, 12, 15, 16, 20,  25,  30,  35,  40,  45, 50,
                               60, 70, 80, 90, 100, 110, 120, 130, 140, 150};
static const double thickness[] = {5, 6, 8, 10, 12, 15, 20, 25, 30, 35, 40, 50, 60, 80};
static const double rounds[] = {10, 12, 13, 14, 15, 16, 18, 19, 20, 22, 24, 25, 26,
                                27, 28, 30, 32, 35, 36, 38, 40, 42, 45, 48, 50, 52,
                                55, 60, 63, 65, 70, 73, 75, 80, 85, 90, 95, 100};
static const double squares[] = {14, 25, 35, 50, 90, 100}; /* where the limits change */
static const upto width_under[] = {{40, .75}, {80, 1}, {100, 1.5}, {120, 2}, {150, 2.5}};
static const upto thickness_under[] = {{20, .5}, {40, 1}, {80, 1.5}};
static const upto round_under[] = {{15, .4},  {25, .5},   {35, .6},   {50, .8},
                                   {80, 1.0}, {100, 1.3}, {120, 1.5}, {160, 2.0}};
static const upto square_under[] = {{14, .4}, {25, .5}, {35, .6}, {50, .8}, {90, 1.0}, {100, 1.3}};
static const list lists[] = {LIST("EN flat width", width, width_under),
                             LIST("EN flat thickness", thickness, thickness_under),
                             LIST("EN round size", rounds, round_under),
                             LIST("EN square size", squares, square_under)};

static double printed_under(const list *l, double size_mm) {
    for (size_t i = 0; i < l->limits; i++)
        if (size_mm <= l->limit[i].size_mm) return l->limit[i].under_mm;
    return NAN;
}

static int listed(const hs_table *t, const char *name, double size_mm) {
    for (size_t r = 0; r < t->rows; r++)
        if (!strcmp(hs_table_text(t, r, HS_STOCK_EN_LIST), name) &&
            hs_table_number(t, r, HS_STOCK_EN_SIZE) == size_mm)
            return 1;
    return 0;
}

static void bars__hot_rolled__every_row_within_the_printed_limits(void) {
    const hs_table *t = hs_table_get(HS_TABLE_STOCK_EN);
    for (size_t i = 0; i < sizeof lists / sizeof *lists; i++) {
        size_t rows = 0;
        for (size_t r = 0; r < t->rows; r++) {
            if (strcmp(hs_table_text(t, r, HS_STOCK_EN_LIST), lists[i].name)) continue;
            rows++;
            NEAR(hs_table_number(t, r, HS_STOCK_EN_UNDER),
                 printed_under(&lists[i], hs_table_number(t, r, HS_STOCK_EN_SIZE)), 0);
        }
        CHECK(rows >= lists[i].sizes);
        for (size_t k = 0; k < lists[i].sizes; k++)
            CHECK(listed(t, lists[i].name, lists[i].size_mm[k]));
    }
}

static void bars__bright__every_row_to_h11(void) {
    /* published: EN 10278, h11 by ISO 286-1, whose grades fit_table.c holds */
    const hs_table *t = hs_table_get(HS_TABLE_STOCK_EN);
    size_t rows = 0;
    for (size_t r = 0; r < t->rows; r++) {
        double low_m = NAN, high_m;
        if (strncmp(hs_table_text(t, r, HS_STOCK_EN_LIST), "EN bright", 9)) continue;
        rows++;
        double size_m = hs_table_number(t, r, HS_STOCK_EN_SIZE) / 1e3;
        CHECK(hs_fit_limits(&low_m, &high_m, size_m, "h", 11, NULL) == HS_OK);
        NEAR(hs_table_number(t, r, HS_STOCK_EN_UNDER), -1e3 * low_m, 1e-12);
    }
    CHECK(rows > 90);
}

static void bars__straightness__as_printed(void) {
    /* published: EN 10058 .4 % of the length below 1000 mm2, else .25 %; EN 10278 1.0 mm/m of
     * rounds, 1.5 of flats (read) */
    const hs_table *t = hs_table_get(HS_TABLE_STOCK_FORMS);
    static const struct {
        const char *kind;
        double section_mm2, mm_m;
    } rows[] = {{"EN flat", 0, 4},
                {"EN flat", 1000, 2.5},
                {"EN bright round", 0, 1},
                {"EN bright flat", 0, 1.5}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        double found = NAN;
        for (size_t r = 0; r < t->rows; r++)
            if (!strcmp(hs_table_text(t, r, HS_STOCK_FORMS_KIND), rows[i].kind) &&
                hs_table_number(t, r, HS_STOCK_FORMS_SECTION_FROM) == rows[i].section_mm2)
                found = hs_table_number(t, r, HS_STOCK_FORMS_STRAIGHTNESS);
        NEAR(found, rows[i].mm_m, 0);
    }
}

static void bars__allowance_of_rounds__each_cell_as_printed(void) {
    /* published: handbook table (from memory), hardened shafts between centres, on diameter, mm; 0:
     * an empty cell */
    static const double diameter[] = {10, 18, 30, 50, 80, 120, 180};
    static const double length[] = {100, 250, 500, 800, 1200, 2000};
    static const double printed[7][6] = {{.3, .3, .4, 0, 0, 0},    {.3, .3, .4, .5, 0, 0},
                                         {.3, .4, .4, .5, .6, 0},  {.4, .4, .5, .6, .7, .7},
                                         {.4, .5, .5, .6, .8, .9}, {.5, .5, .6, .6, .8, .9},
                                         {.5, .6, .7, .7, .8, 1.0}};
    for (int d = 0; d < 7; d++)
        for (int l = 0; l < 6; l++) {
            double side_m = hs_handbook_round_m(diameter[d] / 1e3, length[l] / 1e3);
            if (printed[d][l] > 0)
                NEAR(2e3 * side_m, printed[d][l], 1e-9);
            else
                CHECK(isnan(side_m));
        }
}

static void bars__allowance_of_rounds__near_the_standard_by_diameter(void) {
    /* published: OST 1.41512-86 (read), on diameter, no length: 6-30 .3, 30-50 .4, 50-120 .5,
     * 120-400 .8 mm. Agrees to .1 with the table at lengths of 250 and 500 mm but from 120 mm
     * up, where it does not at short ones. */
    static const double end[] = {10, 18, 30, 50, 80, 120}, by_diameter[] = {.3, .3, .3, .4, .5, .5};
    for (int d = 0; d < 6; d++)
        for (int l = 250; l <= 500; l += 250)
            NEAR(2e3 * hs_handbook_round_m(end[d] / 1e3, l / 1e3), by_diameter[d], .1 + 1e-9);
    NEAR(2e3 * hs_handbook_round_m(.18, .5), .8, .1 + 1e-9);
    CHECK(2e3 * hs_handbook_round_m(.18, .1) < .8 - .1);
}

static void bars__allowance_of_planes__each_cell_as_printed(void) {
    /* published: handbook table (from memory), per side, mm: not indicated x 1.2 where
     * heat-treated, indicated in a fixture */
    static const double length[] = {300, 1000, 2000}, wide[] = {100, 300, 1000};
    static const double plain[3][3] = {{.3, .4, 0}, {.4, .5, .6}, {.5, .6, .7}};
    static const double indicated[2][3] = {{.2, .25, 0}, {.25, .3, .4}};
    for (int l = 0; l < 3; l++)
        for (int w = 0; w < 3; w++) {
            double m = hs_handbook_plane_m(wide[w] / 1e3, length[l] / 1e3, 0);
            if (plain[l][w] > 0)
                NEAR(1e3 * m, 1.2 * plain[l][w], 1e-9);
            else
                CHECK(isnan(m));
            if (l == 2) continue;
            m = hs_handbook_plane_m(wide[w] / 1e3, length[l] / 1e3, 1);
            if (indicated[l][w] > 0)
                NEAR(1e3 * m, indicated[l][w], 1e-9);
            else
                CHECK(isnan(m));
        }
    /* published: a works standard (read), width to 200, per side: to 100 long .3, to 250 .45: ours
     * at the same lengths, not indicated, differ by less than a fourth */
    NEAR(1e3 * hs_handbook_plane_m(.1, .09, 0), .3, .3 / 4);
    NEAR(1e3 * hs_handbook_plane_m(.2, .25, 0), .45, .45 / 4);
}

HS_TEST_MAIN("tables_bars", TEST(bars__hot_rolled__every_row_within_the_printed_limits),
             TEST(bars__bright__every_row_to_h11), TEST(bars__straightness__as_printed),
             TEST(bars__allowance_of_rounds__each_cell_as_printed),
             TEST(bars__allowance_of_rounds__near_the_standard_by_diameter),
             TEST(bars__allowance_of_planes__each_cell_as_printed))
