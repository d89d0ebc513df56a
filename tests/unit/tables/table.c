/* Looking things up in the embedded tables, and what every table must have. */
#include "hardskin/tables/table.h"

#include "constants.h"
#include "support/check.h"

#include <string.h>

/* exact: a made-up table, y = 2 x with a gap and a fall */
static const hs_column columns[] = {{"x", "mm"}, {"y", "1"}, {"word", "text"}};
static const double rising[] = {0, 0, NAN, 1, NAN, NAN, 2, 4, NAN, 4, 8, NAN};
static const double falling[] = {4, 8, NAN, 1, 2, NAN, 0, 0, NAN, -1, -2, NAN};
static const char *const words[] = {"0", "0", "a", "1", "", "b", "2", "4", "c", "4", "8", "d"};

static hs_table made(const double *number) {
    return (hs_table){
        .id = "made", .rows = 4, .columns = 3, .column = columns, .number = number, .text = words};
}

static void table__between_rows__a_straight_line(void) {
    hs_table up = made(rising), down = made(falling);
    NEAR(hs_table_interpolate(&up, 0, 1, 3), 6, 1e-15);
    NEAR(hs_table_interpolate(&up, 0, 1, 2), 4, 0);
    NEAR(hs_table_interpolate(&up, 0, 1, 0), 0, 0);
    NEAR(hs_table_interpolate(&up, 0, 1, 4), 8, 0);
    NEAR(hs_table_interpolate(&up, 0, 1, 1.5), 3, 1e-15); /* the row without y is passed over */
    NEAR(hs_table_interpolate(&down, 0, 1, 2.5), 5, 1e-15);
    NEAR(hs_table_interpolate(&down, 0, 1, -0.5), -1, 1e-15);
}

static void table__outside_the_rows__nothing(void) {
    hs_table up = made(rising), down = made(falling);
    CHECK(isnan(hs_table_interpolate(&up, 0, 1, -1e-9)));
    CHECK(isnan(hs_table_interpolate(&up, 0, 1, 4.000001)));
    CHECK(isnan(hs_table_interpolate(&up, 0, 1, NAN)));
    CHECK(isnan(hs_table_interpolate(&down, 0, 1, 4.1)));
    CHECK(isnan(hs_table_interpolate(&down, 0, 1, -1.1)));
    CHECK(isnan(hs_table_interpolate(&up, 0, 2, 1)));
}

static void table__columns_and_rows__found_by_name(void) {
    hs_table t = made(rising);
    CHECK(hs_table_column(&t, "y") == 1);
    CHECK(hs_table_column(&t, "Y") == -1);
    CHECK(hs_table_row(&t, 2, "c") == 2);
    CHECK(hs_table_row(&t, 2, "e") == -1);
    CHECK(hs_table_number(&t, 2, 1) == 4);
    CHECK(isnan(hs_table_number(&t, 1, 1)));
    CHECK(!strcmp(hs_table_text(&t, 3, 2), "d"));
}

static void table__each_one__has_head_and_its_own_number(void) {
    CHECK(HS_TABLE_COUNT > 40);
    for (int i = 0; i < HS_TABLE_COUNT; i++) {
        const hs_table *t = hs_table_get((hs_table_id)i);
        CHECK(hs_table_find(t->id) == t);
        CHECK(t->title[0] && t->source[0] && t->basis[0]);
        CHECK(t->rows > 0 && t->columns > 0);
        for (size_t c = 0; c < t->columns; c++)
            CHECK(hs_table_column(t, t->column[c].name) == (int)c);
    }
    CHECK(!hs_table_find("no such table"));
    CHECK(!strcmp(hs_table_get(HS_TABLE_STEELS)->id, "steels"));
    CHECK(!strcmp(hs_table_get(HS_TABLE_E140)->id, "e140"));
}

static void table__the_hash__sixteen_hex_digits(void) {
    CHECK(strlen(hs_table_hash()) == 16);
    CHECK(strspn(hs_table_hash(), "0123456789abcdef") == 16);
}

static void table__each_source__is_explained(void) {
    CHECK(strstr(hs_source_text("codata2018"), "CODATA 2018") != NULL);
    CHECK(!hs_source_text("no-such-key")[0]);
    for (size_t i = 0; i < HS_TABLE_COUNT; i++) {
        char keys[200];
        snprintf(keys, sizeof keys, "%s", hs_table_get((hs_table_id)i)->source);
        for (char *key = strtok(keys, " "); key; key = strtok(NULL, " "))
            CHECK(strlen(hs_source_text(key)) > 10);
    }
}

static void table__a_constant__is_the_cell(void) {
    const hs_table *t = hs_table_get(HS_TABLE_PHYSICAL);
    int row = hs_table_row(t, 0, "gas_constant");
    CHECK(row >= 0);
    CHECK(hs_table_number(t, (size_t)row, 1) == HS_K_PHYSICAL_GAS_CONSTANT);
    /* published: CODATA 2018 (from memory) */
    NEAR(HS_K_PHYSICAL_GAS_CONSTANT, 8.314462618, 1e-9);
}

HS_TEST_MAIN("tables_table", TEST(table__between_rows__a_straight_line),
             TEST(table__outside_the_rows__nothing), TEST(table__columns_and_rows__found_by_name),
             TEST(table__each_one__has_head_and_its_own_number),
             TEST(table__the_hash__sixteen_hex_digits), TEST(table__each_source__is_explained),
             TEST(table__a_constant__is_the_cell))
