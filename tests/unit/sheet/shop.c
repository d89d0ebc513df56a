/* The shop file beside a sheet. own contract: design, the sheet and the shop file. */
#include "hardskin/sheet/sheet.h"
#include "sheet_text.h"
#include "support/check.h"

#include <string.h>

static hs_status read_with(hs_sheet **sheet, hs_error *faults, const char *name, const char *shop) {
    char text[SHEET_BYTES], key[200];
    size_t n;
    if (shop) {
        FILE *file = fopen(name, "wb");
        CHECK(file != NULL);
        if (!file) return HS_E_IO;
        fputs(shop, file);
        fclose(file);
    }
    snprintf(key, sizeof key, "\"job\": \"bar\", \"shop\": \"%s\"", name);
    CHECK(sheet_with(text, sheet_bar, "\"job\": \"bar\"", key) > 0);
    hs_status status = hs_sheet_read(sheet, faults, &n, text, strlen(text), ".");
    if (shop) remove(name);
    return status;
}

static void shop__a_good_file__is_read(void) {
    hs_sheet *sheet, *other;
    hs_error faults[HS_MAX_FAULTS];
    CHECK(!read_with(
        &sheet, faults, "sheet_test_shop.json",
        "{\"rough_tolerance\": \"±0.1 mm\", \"setup_error\": \"0.02 mm\", \"stock\": \"inch\","
        "\"grinding\": {\"rough_infeed\": \"0.03 mm\"}, \"record\": [{\"job\": \"A\", "
        "\"bow\": {\"predicted\": \"0.1 mm\", \"measured\": \"0.2 mm\"}}]}"));
    if (!sheet) return;
    const hs_shop *shop = &hs_sheet_job(sheet)->shop;
    CHECK(shop->stated && shop->stock == HS_STOCK_INCH && shop->records == 1);
    NEAR(shop->rough_tolerance_m, 1e-4, 1e-15);
    NEAR(shop->setup_error_m, 2e-5, 1e-15);
    NEAR(shop->confidence, 0.95, 1e-15);
    NEAR(shop->grinding.rough_infeed_m, 3e-5, 1e-15);
    NEAR(shop->grinding.table_speed_m_s, 0.25, 1e-15); /* exact: 15 m/min */
    NEAR(shop->record[0].bow_measured_m, 2e-4, 1e-15);
    CHECK(isnan(shop->record[0].case_measured_m));
    CHECK(!read_with(&other, faults, "sheet_test_shop.json", "{}"));
    if (other) CHECK(hs_sheet_job(other)->hash != hs_sheet_job(sheet)->hash);
    hs_sheet_free(other);
    hs_sheet_free(sheet);
}

static void shop__a_missing_file__fails_at_shop(void) {
    hs_sheet *sheet;
    hs_error faults[HS_MAX_FAULTS];
    hs_status status = read_with(&sheet, faults, "no_such_shop.json", NULL);
    CHECK(hs_status_exit(status) == 3 && !strcmp(faults[0].pointer, "/shop"));
    CHECK(faults[0].line == 1 && faults[0].column == 39);
    status = read_with(&sheet, faults, "../shop.json", NULL);
    CHECK(status == HS_E_WORD && !strcmp(faults[0].pointer, "/shop"));
}

static void shop__a_fault_in_the_file__names_the_file(void) {
    hs_sheet *sheet;
    hs_error faults[HS_MAX_FAULTS];
    CHECK(read_with(&sheet, faults, "sheet_test_shop.json", "{\"stock\": \"EN flats\",\n]") ==
          HS_E_JSON);
    CHECK(!strcmp(faults[0].pointer, "/shop") &&
          strstr(faults[0].message, "sheet_test_shop.json:2:1:"));
    CHECK(read_with(&sheet, faults, "sheet_test_shop.json", "{\n\"setup_error\": \"1\"}") ==
          HS_E_NO_UNIT);
    CHECK(!strcmp(faults[0].pointer, "/shop/setup_error"));
    CHECK(strstr(faults[0].message, "sheet_test_shop.json:2:") != NULL);
    CHECK(read_with(&sheet, faults, "sheet_test_shop.json",
                    "{\"stock\": \"EN\", \"stock\": \"EN\"}") == HS_E_DUPLICATE);
}

HS_TEST_MAIN("sheet_shop", TEST(shop__a_good_file__is_read),
             TEST(shop__a_missing_file__fails_at_shop),
             TEST(shop__a_fault_in_the_file__names_the_file))
