/* Data of the quench, the flames and the bath, whole tables as the reference pages have them. */
#include "constants.h"
#include "hardskin/tables/table.h"
#include "support/check.h"

#include <string.h>

static void heat_data__phases__each_cell_as_printed(void) {
    /* published: set common in quench papers for C60 (from memory), at 0, 300, 600 and 900 C. For
     * martensite none is known at 900: the last one is held. */
    static const struct {
        size_t column;
        double at[4];
    } rows[] = {
        {HS_QUENCH_STEEL_CONDUCTIVITY_AUSTENITE, {15.0, 18.0, 21.7, 25.1}},
        {HS_QUENCH_STEEL_CONDUCTIVITY_FERRITE, {49.0, 41.7, 34.3, 27.0}},
        {HS_QUENCH_STEEL_CONDUCTIVITY_MARTENSITE, {43.1, 36.7, 30.1, 30.1}},
        {HS_QUENCH_STEEL_HEAT_AUSTENITE, {4.15e6, 4.40e6, 4.67e6, 4.90e6}},
        {HS_QUENCH_STEEL_HEAT_FERRITE, {3.78e6, 4.46e6, 5.09e6, 5.74e6}},
        {HS_QUENCH_STEEL_HEAT_MARTENSITE, {3.76e6, 4.45e6, 5.07e6, 5.07e6}},
        {HS_QUENCH_STEEL_MODULUS, {210e3, 193e3, 165e3, 120e3}},
    };
    const hs_table *t = hs_table_get(HS_TABLE_QUENCH_STEEL);
    CHECK(t->rows == 4);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        for (size_t r = 0; r < 4; r++) {
            NEAR(hs_table_number(t, r, HS_QUENCH_STEEL_TEMP), 300.0 * (double)r, 0);
            NEAR(hs_table_number(t, r, rows[i].column), rows[i].at[r], 0);
        }
}

enum { ROWS = 9 };

static void heat_data__films__each_cell_as_printed(void) {
    /* own: the synthesis of the reference page, cell by cell; published and read of it are oil and
     * polymer at 800 C, at the peak and at 150 C, water is from memory. Moved water: judgement, the
     * film stage alone. */
    static const double at_C[ROWS] = {20, 150, 250, 350, 450, 530, 600, 700, 850};
    static const struct {
        const char *medium;
        double h[ROWS];
    } rows[] = {{"still water", {4300, 7200, 9000, 11000, 13000, 11500, 7800, 2500, 250}},
                {"water", {4300, 7200, 9000, 11000, 13000, 11500, 9000, 6000, 2500}},
                {"oil", {250, 450, 600, 1000, 2600, 4500, 2500, 900, 500}},
                {"polymer", {1200, 2000, 3500, 6000, 7400, 6500, 5000, 4000, 3000}}};
    const hs_table *t = hs_table_get(HS_TABLE_QUENCH_FILM);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        size_t k = 0;
        for (size_t r = 0; r < t->rows; r++) {
            if (strcmp(hs_table_text(t, r, HS_QUENCH_FILM_MEDIUM), rows[i].medium)) continue;
            CHECK(k < ROWS);
            if (k == ROWS) break;
            NEAR(hs_table_number(t, r, HS_QUENCH_FILM_TEMP), at_C[k], 0);
            NEAR(hs_table_number(t, r, HS_QUENCH_FILM_COEFFICIENT), rows[i].h[k], 0);
            k++;
        }
        CHECK(k == ROWS);
    }
}

static void heat_data__flames__share_of_the_scale_in_air(void) {
    /* judgement of the reference page: share of the oxygen taken up in air, with its range */
    static const struct {
        const char *name;
        double low, mid, high;
    } rows[] = {{"box", 0, 0, 0},
                {"wrapped", 0, .1, .3},
                {"coated", 0, .1, .3},
                {"open lean flame", 1, 1, 1},
                {"open neutral flame", .3, .5, .8},
                {"open rich flame", .1, .3, .6},
                {"electric furnace in air", 1, 1, 1}};
    const hs_table *t = hs_table_get(HS_TABLE_ATMOSPHERE);
    CHECK(t->rows == sizeof rows / sizeof *rows);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        int r = hs_table_row(t, HS_ATMOSPHERE_ATMOSPHERE, rows[i].name);
        CHECK(r >= 0);
        if (r < 0) continue;
        NEAR(hs_table_number(t, (size_t)r, HS_ATMOSPHERE_LOW), rows[i].low, 0);
        NEAR(hs_table_number(t, (size_t)r, HS_ATMOSPHERE_MULTIPLIER), rows[i].mid, 0);
        NEAR(hs_table_number(t, (size_t)r, HS_ATMOSPHERE_HIGH), rows[i].high, 0);
    }
}

static void heat_data__severities__as_printed(void) {
    /* published: Grossmann's severities, 1/in (from memory): oil still .25-.30 to good .40-.50,
     * water still .9-1.0, moderate 1.2-1.3 to strong 1.6-2.0, brine 2-5 */
    static const struct {
        const char *medium;
        double low[2], high[2];
    } rows[] = {{"oil", {.25, .30}, {.40, .50}},
                {"still water", {.9, .9}, {1.0, 1.0}},
                {"water", {1.0, 1.3}, {1.6, 2.0}},
                {"brine", {2, 2}, {5, 5}}};
    const hs_table *t = hs_table_get(HS_TABLE_QUENCH);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        int r = hs_table_row(t, HS_QUENCH_MEDIUM, rows[i].medium);
        CHECK(r >= 0);
        if (r < 0) continue;
        double low = hs_table_number(t, (size_t)r, HS_QUENCH_GROSSMANN_LOW);
        double high = hs_table_number(t, (size_t)r, HS_QUENCH_GROSSMANN_HIGH);
        CHECK(low >= rows[i].low[0] && low <= rows[i].low[1]);
        CHECK(high >= rows[i].high[0] && high <= rows[i].high[1]);
    }
}

static void heat_data__soda_and_leads__each_cell_as_printed(void) {
    /* published: solubility of sodium carbonate, g per 100 g (read); ampacity of copper leads (from
     * memory) */
    static const double dissolves[][2] = {{0, 7.0}, {10, 12.2}, {20, 21.8}, {30, 39.7}, {40, 48.8}};
    static const double carries[][2] = {{1.5, 19.5}, {2.5, 27}, {4, 36}, {6, 46}};
    const hs_table *soda = hs_table_get(HS_TABLE_SOLUBILITY), *lead = hs_table_get(HS_TABLE_CABLE);
    CHECK(soda->rows == 5 && lead->rows == 4);
    for (size_t r = 0; r < 5; r++) {
        NEAR(hs_table_number(soda, r, HS_SOLUBILITY_TEMP), dissolves[r][0], 0);
        NEAR(hs_table_number(soda, r, HS_SOLUBILITY_SODA), dissolves[r][1], 0);
    }
    for (size_t r = 0; r < 4; r++) {
        NEAR(hs_table_number(lead, r, HS_CABLE_AREA), carries[r][0], 0);
        NEAR(hs_table_number(lead, r, HS_CABLE_AMPS), carries[r][1], 0);
    }
}

HS_TEST_MAIN("tables_heat_data", TEST(heat_data__phases__each_cell_as_printed),
             TEST(heat_data__films__each_cell_as_printed),
             TEST(heat_data__flames__share_of_the_scale_in_air),
             TEST(heat_data__severities__as_printed),
             TEST(heat_data__soda_and_leads__each_cell_as_printed))
