/* What a shop buys and quenches in: media, atmospheres, bars, skin, allowances. Expected figures
 * are those of the reference pages; their own sources are named beside them. */
#include "constants.h"
#include "hardskin/tables/table.h"
#include "support/check.h"

#include <string.h>

static double of(hs_table_id id, const char *row, size_t column) {
    const hs_table *t = hs_table_get(id);
    int at = hs_table_row(t, 0, row);
    return at < 0 ? NAN : hs_table_number(t, (size_t)at, column);
}

static void shop__compounds__surface_carbon(void) {
    /* judgement (plain charcoal), from memory (with carbonate) */
    NEAR(of(HS_TABLE_SURFACE_CARBON, "charcoal", HS_SURFACE_CARBON_VALUE), 0.85, 0);
    NEAR(of(HS_TABLE_SURFACE_CARBON, "charcoal", HS_SURFACE_CARBON_LOW), 0.6, 0);
    NEAR(of(HS_TABLE_SURFACE_CARBON, "charcoal with carbonate", HS_SURFACE_CARBON_VALUE), 1.0, 0);
    NEAR(of(HS_TABLE_SURFACE_CARBON, "charcoal with carbonate", HS_SURFACE_CARBON_HIGH), 1.2, 0);
}

static void shop__media__six_in_order_of_violence(void) {
    static const char *const media[] = {"air", "oil", "polymer", "brine", "water", "still water"};
    double before = 0;
    for (size_t i = 0; i < 6; i++) {
        double beta = of(HS_TABLE_QUENCH, media[i], HS_QUENCH_SIGMA_BETA);
        CHECK(beta > before);
        before = beta;
    }
    CHECK(hs_table_get(HS_TABLE_QUENCH)->rows == 6);
    /* judgement: random bow of the first form, oil and water */
    NEAR(of(HS_TABLE_QUENCH, "oil", HS_QUENCH_SIGMA_BETA), 0.03, 0);
    NEAR(of(HS_TABLE_QUENCH, "water", HS_QUENCH_SIGMA_BETA), 0.06, 0);
    /* published: Grossmann's severities, 1/in, from memory: still to good oil, still water */
    NEAR(of(HS_TABLE_QUENCH, "oil", HS_QUENCH_GROSSMANN_LOW), 0.25, 0);
    NEAR(of(HS_TABLE_QUENCH, "still water", HS_QUENCH_GROSSMANN_HIGH), 1.0, 0);
}

static void shop__atmospheres__no_scale_in_the_box(void) {
    NEAR(of(HS_TABLE_ATMOSPHERE, "box", HS_ATMOSPHERE_HIGH), 0, 0);
    NEAR(of(HS_TABLE_ATMOSPHERE, "wrapped", HS_ATMOSPHERE_MULTIPLIER), 0.1, 0);
    NEAR(of(HS_TABLE_ATMOSPHERE, "open rich flame", HS_ATMOSPHERE_MULTIPLIER), 0.3, 0);
    NEAR(of(HS_TABLE_ATMOSPHERE, "open neutral flame", HS_ATMOSPHERE_LOW), 0.3, 0);
    NEAR(of(HS_TABLE_ATMOSPHERE, "open lean flame", HS_ATMOSPHERE_MULTIPLIER), 1, 0);
    NEAR(of(HS_TABLE_ATMOSPHERE, "electric furnace in air", HS_ATMOSPHERE_MULTIPLIER), 1, 0);
}

static double film(const char *medium, double temp_C) {
    const hs_table *t = hs_table_get(HS_TABLE_QUENCH_FILM);
    for (size_t i = 0; i < t->rows; i++)
        if (!strcmp(hs_table_text(t, i, HS_QUENCH_FILM_MEDIUM), medium) &&
            hs_table_number(t, i, HS_QUENCH_FILM_TEMP) == temp_C)
            return hs_table_number(t, i, HS_QUENCH_FILM_COEFFICIENT);
    return NAN;
}

static void shop__films__anchors_that_were_read(void) {
    /* published: Buczek and Telejko 2013: polymer peak 7400, at 150 C 2000; oil at 800 C 500, in
     * the table the row of 850 C */
    NEAR(film("polymer", 450), 7400, 0);
    NEAR(film("polymer", 150), 2000, 0);
    NEAR(film("oil", 850), 500, 0);
    /* from memory and judgement: the steam film of still water against moved water */
    NEAR(film("still water", 850), 250, 0);
    NEAR(film("water", 850), 2500, 0);
    NEAR(film("water", 700), 6000, 0);
    NEAR(film("water", 450), film("still water", 450), 0);
}

static double under_mm(const char *list, double size_mm) {
    const hs_table *t = hs_table_get(HS_TABLE_STOCK_EN);
    for (size_t i = 0; i < t->rows; i++)
        if (!strcmp(hs_table_text(t, i, HS_STOCK_EN_LIST), list) &&
            hs_table_number(t, i, HS_STOCK_EN_SIZE) == size_mm)
            return hs_table_number(t, i, HS_STOCK_EN_UNDER);
    return NAN;
}

static void shop__metric_bars__limits_that_were_read(void) {
    /* published: EN 10058:2018 (secondary page) */
    NEAR(under_mm("EN flat width", 40), 0.75, 0);
    NEAR(under_mm("EN flat width", 80), 1, 0);
    NEAR(under_mm("EN flat width", 100), 1.5, 0);
    NEAR(under_mm("EN flat width", 120), 2, 0);
    NEAR(under_mm("EN flat width", 150), 2.5, 0);
    NEAR(under_mm("EN flat thickness", 20), 0.5, 0);
    NEAR(under_mm("EN flat thickness", 25), 1, 0);
    NEAR(under_mm("EN flat thickness", 50), 1.5, 0);
    /* published: EN 10060, EN 10059 (secondary pages) */
    NEAR(under_mm("EN round size", 15), 0.4, 0);
    NEAR(under_mm("EN round size", 25), 0.5, 0);
    NEAR(under_mm("EN round size", 35), 0.6, 0);
    NEAR(under_mm("EN round size", 50), 0.8, 0);
    NEAR(under_mm("EN round size", 80), 1.0, 0);
    NEAR(under_mm("EN square size", 50), 0.8, 0);
    NEAR(under_mm("EN square size", 100), 1.3, 0);
    /* published: EN 10278 to h11: IT11 of ISO 286-1, 18 to 30 mm 130 um, 30 to 50 mm 160 um */
    NEAR(under_mm("EN bright round size", 25), 0.13, 1e-12);
    NEAR(under_mm("EN bright round size", 50), 0.16, 1e-12);
    CHECK(isnan(under_mm("EN round size", 29)));
}

static void shop__rolled_skin__per_side_by_size(void) {
    /* published: AISI Steel Products Manual 1986 (secondary page), in */
    static const double rows[][2] = {{.5, .030},  {.75, .045}, {1, .060},   {1.5, .075}, {2, .090},
                                     {2.5, .125}, {3.5, .156}, {4.5, .187}, {6, .250}};
    const hs_table *t = hs_table_get(HS_TABLE_ROLLED_SKIN);
    CHECK(t->rows == 9);
    for (size_t i = 0; i < 9; i++) {
        NEAR(hs_table_number(t, i, HS_ROLLED_SKIN_SIZE), rows[i][0], 0);
        NEAR(hs_table_number(t, i, HS_ROLLED_SKIN_SKIN), rows[i][1], 0);
    }
}

static void shop__roughness__layer_under_it(void) {
    /* published: Kovan 1953, from memory, um */
    NEAR(of(HS_TABLE_ROUGHNESS_LAYER, "turned, rough", HS_ROUGHNESS_LAYER_RZ_HIGH), 63, 0);
    NEAR(of(HS_TABLE_ROUGHNESS_LAYER, "ground, finish", HS_ROUGHNESS_LAYER_LAYER_HIGH), 12, 0);
}

HS_TEST_MAIN("tables_shop", TEST(shop__compounds__surface_carbon),
             TEST(shop__media__six_in_order_of_violence),
             TEST(shop__atmospheres__no_scale_in_the_box),
             TEST(shop__films__anchors_that_were_read),
             TEST(shop__metric_bars__limits_that_were_read),
             TEST(shop__rolled_skin__per_side_by_size), TEST(shop__roughness__layer_under_it))
