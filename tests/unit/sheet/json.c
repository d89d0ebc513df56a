/* Strict JSON. published: RFC 8259 (grammar), RFC 3629 (UTF-8). A text the grammar allows fails
 * later, as a sheet without its keys; one it forbids fails with not-json or not-utf8. */
#include "hardskin/sheet/sheet.h"
#include "sheet/scan.h"
#include "support/check.h"

#include <stdlib.h>
#include <string.h>

static hs_status scan(const char *text, size_t size, hs_error *err) {
    hs_spot *spots;
    size_t n;
    hs_status status = hs_scan(&spots, &n, text, size, err);
    CHECK((status == HS_OK) == (spots != NULL));
    free(spots);
    return status;
}

static void json__texts_of_the_grammar__pass(void) {
    static const char *const good[] = {
        "{}",
        "[]",
        "[[]]",
        " [ ] ",
        "null",
        "true",
        "false",
        "\"\"",
        "0",
        "-0",
        "[-0.0e+1]",
        "[1E400]",
        "[0.1e-7]",
        "{\"a\":{\"b\":[1,2,{}]}}",
        "[\"\\u0000\"]",
        "[\"\\uD83D\\uDE00\"]",
        "[\"\\\"\\\\\\/\\b\\f\\n\\r\\t\"]",
        "\t\r\n{ }\n",
        "{\"\":0}",
        "[\"\x7F\"]",
        "[\"\xF4\x8F\xBF\xBF\"]",
        "[\"//\"]",
        "{\"a\":1,\"b\":2}",
        "[-0.000000000000000000000000000000000000000000000000000000000000000000000000000001]"};
    for (size_t i = 0; i < sizeof good / sizeof *good; i++) {
        hs_error err = {0}, faults[HS_MAX_FAULTS];
        hs_sheet *sheet;
        size_t n;
        if (scan(good[i], strlen(good[i]), &err)) printf("%s: %s\n", good[i], err.message);
        CHECK(scan(good[i], strlen(good[i]), &err) == HS_OK);
        hs_status status = hs_sheet_read(&sheet, faults, &n, good[i], strlen(good[i]), ".");
        CHECK(status != HS_OK && status != HS_E_JSON && status != HS_E_MEMORY && !sheet && n > 0);
    }
}

typedef struct bad {
    const char *text;
    hs_status status;
    int line, column;
} bad;

static void json__texts_outside_the_grammar__fail_at_the_byte(void) {
    static const bad rows[] = {
        {"", HS_E_JSON, 1, 1},
        {" ", HS_E_JSON, 1, 2},
        {"{", HS_E_JSON, 1, 2},
        {"[", HS_E_JSON, 1, 2},
        {"[1,]", HS_E_JSON, 1, 4},
        {"{\"a\":1,}", HS_E_JSON, 1, 8},
        {"[1 2]", HS_E_JSON, 1, 4},
        {"[,1]", HS_E_JSON, 1, 2},
        {"{\"a\" 1}", HS_E_JSON, 1, 6},
        {"{a:1}", HS_E_JSON, 1, 2},
        {"{'a':1}", HS_E_JSON, 1, 2},
        {"{1:1}", HS_E_JSON, 1, 2},
        {"{\"a\":1 \"b\":2}", HS_E_JSON, 1, 8},
        {"[01]", HS_E_JSON, 1, 2},
        {"[-]", HS_E_JSON, 1, 3},
        {"[1.]", HS_E_JSON, 1, 4},
        {"[.5]", HS_E_JSON, 1, 2},
        {"[+1]", HS_E_JSON, 1, 2},
        {"[1e]", HS_E_JSON, 1, 4},
        {"[1e+]", HS_E_JSON, 1, 5},
        {"[0x10]", HS_E_JSON, 1, 3},
        {"[NaN]", HS_E_JSON, 1, 2},
        {"[Infinity]", HS_E_JSON, 1, 2},
        {"[tru]", HS_E_JSON, 1, 2},
        {"[True]", HS_E_JSON, 1, 2},
        {"[\"a]", HS_E_JSON, 1, 5},
        {"[\"a\nb\"]", HS_E_JSON, 1, 4},
        {"[\"\t\"]", HS_E_JSON, 1, 3},
        {"[\"\\x\"]", HS_E_JSON, 1, 3},
        {"[\"\\u12g4\"]", HS_E_JSON, 1, 3},
        {"[\"\\\"]", HS_E_JSON, 1, 6},
        {"[1]]", HS_E_JSON, 1, 4},
        {"[1}", HS_E_JSON, 1, 3},
        {"{} {}", HS_E_JSON, 1, 4},
        {"// x\n{}", HS_E_JSON, 1, 1},
        {"{} # x", HS_E_JSON, 1, 4},
        {"{\n \"a\": 1\n /* x */ }", HS_E_JSON, 3, 2},
        {"[\f]", HS_E_JSON, 1, 2},
        {"[\xC2\xA0]", HS_E_JSON, 1, 2},
        {"[\"\\uD800\"]", HS_E_ENCODING, 1, 3},
        {"[\"\\uD800\\u0041\"]", HS_E_ENCODING, 1, 3},
        {"[\"\\uDC00\"]", HS_E_ENCODING, 1, 3},
        {"[\"\xFF\"]", HS_E_ENCODING, 1, 3},
        {"[\"\xC0\x80\"]", HS_E_ENCODING, 1, 3},
        {"[\"\xE0\x80\x80\"]", HS_E_ENCODING, 1, 3},
        {"[\"\xED\xA0\x80\"]", HS_E_ENCODING, 1, 3},
        {"[\"\xF4\x90\x80\x80\"]", HS_E_ENCODING, 1, 3},
        {"[\n\"\xE9t\xE9\"]", HS_E_ENCODING, 2, 2},
        {"\xFF\xFE{", HS_E_ENCODING, 1, 1},
        {"[\"\xE2\x82", HS_E_ENCODING, 1, 3},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        hs_error err = {0};
        hs_status status = scan(rows[i].text, strlen(rows[i].text), &err);
        int good = status == rows[i].status && err.status == status && err.line == rows[i].line &&
                   err.column == rows[i].column && err.message[0];
        if (!good)
            printf("%s: %s %d:%d %s\n", rows[i].text, hs_status_code(status), err.line, err.column,
                   err.message);
        CHECK(good);
    }
    hs_error err = {0};
    CHECK(scan("[1\0]", 4, &err) == HS_E_JSON && err.column == 3); /* NUL is no blank */
    CHECK(scan("[\"\0\"]", 5, &err) == HS_E_JSON && err.column == 3);
}

static void json__depth_and_size__have_their_limits(void) {
    char text[256];
    hs_error err = {0};
    memset(text, '[', 65);
    memset(text + 65, ']', 65);
    CHECK(scan(text, 130, &err) == HS_E_TOO_LARGE);
    CHECK(scan(text + 1, 128, &err) == HS_OK);
    size_t size = HS_SCAN_BYTES + 1;
    char *big = malloc(size);
    CHECK(big != NULL);
    if (!big) return;
    memset(big, ' ', size);
    memcpy(big, "{}", 2);
    CHECK(scan(big, size, &err) == HS_E_TOO_LARGE);
    CHECK(scan(big, size - 1, &err) == HS_OK);
    memset(big, '[', size);
    CHECK(scan(big, size - 1, &err) == HS_E_TOO_LARGE);
    for (size_t i = 0; i < size; i++)
        big[i] = i % 2 ? ',' : '1';
    big[0] = '[';
    CHECK(scan(big, size - 1, &err) != HS_OK);
    free(big);
}

static void json__byte_order_mark__is_passed_with_a_notice(void) {
    const char *plate = hs_sheet_starter("plate");
    size_t size = strlen(plate) + 3, n;
    char *text = malloc(size);
    hs_error faults[HS_MAX_FAULTS];
    hs_sheet *sheet = NULL;
    CHECK(text != NULL);
    if (!text) return;
    memcpy(text, "\xEF\xBB\xBF", 3);
    memcpy(text + 3, plate, size - 3);
    CHECK(hs_sheet_read(&sheet, faults, &n, text, size, ".") == HS_OK);
    if (sheet) CHECK(hs_sheet_notice(sheet, 0) != NULL && hs_sheet_notice(sheet, 1) == NULL);
    hs_sheet_free(sheet);
    free(text);
    CHECK(hs_sheet_read(&sheet, faults, &n, "\xEF\xBB\xBF[]", 5, ".") == HS_E_TYPE);
    CHECK(faults[0].line == 1 && faults[0].column == 1);
}

/* Every text cut short, and every byte of it spoilt: an answer, no crash. */
static void json__a_spoilt_sheet__is_answered(void) {
    char text[8192];
    const char *plate = hs_sheet_starter("plate");
    size_t size = strlen(plate), n, failed = 0;
    CHECK(size < sizeof text);
    if (size >= sizeof text) return;
    static const char spoil[] = {0, '"', '{', ',', '\\', (char)0xFF};
    for (size_t i = 0; i < size; i += 7)
        for (size_t k = 0; k < sizeof spoil; k++) {
            hs_error faults[HS_MAX_FAULTS];
            hs_sheet *sheet = NULL;
            memcpy(text, plate, size);
            text[i] = spoil[k];
            failed += hs_sheet_read(&sheet, faults, &n, text, k ? size : i, ".") != HS_OK;
            CHECK(n <= HS_MAX_FAULTS);
            hs_sheet_free(sheet);
        }
    CHECK(failed > size / 7);
}

HS_TEST_MAIN("sheet_json", TEST(json__texts_of_the_grammar__pass),
             TEST(json__texts_outside_the_grammar__fail_at_the_byte),
             TEST(json__depth_and_size__have_their_limits),
             TEST(json__byte_order_mark__is_passed_with_a_notice),
             TEST(json__a_spoilt_sheet__is_answered))
