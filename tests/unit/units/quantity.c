/* The corpora legal.txt, refused.txt and gnu_units.txt, and what belongs to every reading. */
#include "hardskin/units/quantity.h"
#include "corpus.h"
#include "support/check.h"

#include <stdlib.h>
#include <string.h>

static hs_units *units;

/* Relative 1e-12: a few roundings of a double, and what promises the agreement with GNU units. */
static int close_to(double actual, double expected) {
    return fabs(actual - expected) <= 1e-12 * fabs(expected) + 1e-30;
}

static void say(const corpus_line *line, const char *what, double value) {
    printf("line %d: '%s': %s %.17g\n", line->number, line->text, what, value);
}

static void check_legal(const corpus_line *line) {
    double n[3];
    int count = sscanf(line->rest, "%lf %lf %lf", &n[0], &n[1], &n[2]);
    double low = n[0], value = count == 3 ? n[1] : n[0], high = count == 3 ? n[2] : n[0];
    hs_error err = {0};
    hs_quantity q = {.value = NAN, .low = NAN, .high = NAN};
    hs_status status = hs_quantity_read(&q, units, line->text, line->kind, &err);
    if (status) printf("line %d: '%s': %s\n", line->number, line->text, err.message);
    CHECK(status == HS_OK && (count == 1 || count == 3));
    CHECK(q.kind == line->kind && q.spread == (count == 3));
    int good = close_to(q.value, value) && close_to(q.low, low) && close_to(q.high, high);
    if (!good) say(line, "read as", q.value);
    CHECK(good);
    /* without the error record the answer is the same */
    hs_quantity again;
    CHECK(hs_quantity_read(&again, units, line->text, line->kind, NULL) == HS_OK);
}

static void quantity__legal_texts__mean_what_they_say(void) {
    corpus_line line = {0};
    FILE *file = corpus_open("legal.txt");
    while (corpus_next(&line, file))
        check_legal(&line);
}

static void quantity__texts_gnu_units_reads__give_the_same_value(void) {
    corpus_line line = {0};
    int count = 0;
    FILE *file = corpus_open("gnu_units.txt");
    for (; corpus_next(&line, file); count++)
        check_legal(&line);
    CHECK(count >= 500);
}

static void check_refused(const corpus_line *line) {
    char code[64];
    int column = -1;
    CHECK(sscanf(line->rest, "%63s | %d", code, &column) == 2);
    hs_error err = {0};
    hs_quantity q, before;
    memset(&q, 0x55, sizeof q);
    before = q;
    hs_status status = hs_quantity_read(&q, units, line->text, line->kind, &err);
    int good = status != HS_OK && !strcmp(hs_status_code(status), code) && status == err.status;
    if (!good)
        printf("line %d: '%s': %s, %s\n", line->number, line->text, hs_status_code(status),
               err.message);
    CHECK(good);
    int at = column == 0 ? err.column >= 1 : err.column == column;
    if (!at) say(line, "column", err.column);
    CHECK(at && err.column <= (int)strlen(line->text) + 1);
    CHECK(err.message[0] && err.help[0]);
    CHECK(!memcmp(&q, &before, sizeof q));
}

static void quantity__texts_with_a_trap__are_refused_at_the_right_byte(void) {
    corpus_line line = {0};
    FILE *file = corpus_open("refused.txt");
    while (corpus_next(&line, file))
        check_refused(&line);
}

static void quantity__long_or_broken_bytes__are_refused(void) {
    char text[200];
    hs_error err;
    hs_quantity q;
    memset(text, '1', sizeof text);
    text[130] = '\0';
    CHECK(hs_quantity_read(&q, units, text, HS_LENGTH, &err) == HS_E_NUMBER);
    memset(text, ' ', 125);
    strcpy(text + 125, "5mm");
    CHECK(hs_quantity_read(&q, units, text, HS_LENGTH, &err) == HS_OK);
    CHECK(hs_quantity_read(&q, units, "5 \xC3(mm", HS_LENGTH, &err) == HS_E_ENCODING);
    CHECK(err.column == 3);
    CHECK(hs_quantity_read(&q, units, "5 \xE2\x80", HS_LENGTH, &err) == HS_E_ENCODING);
    CHECK(hs_quantity_read(&q, units, "\xB5m", HS_LENGTH, &err) == HS_E_ENCODING);
    CHECK(hs_quantity_read(&q, units, "5\tmm", HS_LENGTH, &err) == HS_E_NUMBER);
    CHECK(hs_quantity_read(&q, units, "5\xF0\x9F\x94\xA5mm", HS_LENGTH, &err) == HS_E_NUMBER);
    CHECK(hs_quantity_read(&q, units,
                           "\x06"
                           "1/2\x06 in",
                           HS_LENGTH, &err) == HS_E_NUMBER);
}

/* Every single byte and every pair spliced into a good text: an answer or a refusal, no crash. */
static void quantity__any_byte_spliced_in__is_read_or_refused(void) {
    for (int a = 1; a < 256; a++)
        for (int b = 1; b < 256; b++) {
            char text[16];
            snprintf(text, sizeof text, "1%c%c2 mm", a, b);
            hs_quantity q = {.value = NAN};
            hs_error err = {0};
            hs_status status = hs_quantity_read(&q, units, text, HS_LENGTH, &err);
            CHECK(status == HS_OK ? isfinite(q.value) && q.low <= q.high : err.column >= 1);
        }
}

static void quantity__bare_numbers__take_the_unit_of_the_page(void) {
    hs_quantity q;
    hs_error err;
    CHECK(!hs_quantity_read_bare(&q, units, "1.6e-11", HS_DIFFUSIVITY, "m2/s", &err));
    NEAR(q.value, 1.6e-11, 1e-24);
    CHECK(!hs_quantity_read_bare(&q, units, "10", HS_INVERSE_STRESS, "1/MPa", &err));
    NEAR(q.value, 1e-5, 1e-18);
    CHECK(!hs_quantity_read_bare(&q, units, "8.2 mm2/s", HS_DIFFUSIVITY, "m2/s", &err));
    NEAR(q.value, 8.2e-6, 1e-19);
    CHECK(!hs_quantity_read_bare(&q, units, "1..2", HS_LENGTH, "mm", &err));
    NEAR(q.high, 0.002, 1e-15);
    CHECK(hs_quantity_read_bare(&q, units, "5 h", HS_LENGTH, "mm", &err) == HS_E_UNIT);
}

static void quantity__plus_minus__is_needed_where_asked(void) {
    static const char *const good[] = {"±0.05 mm", "± 0.05 mm", "+/-0.05 mm", " ±50 um"};
    static const char *const bad[] = {"0.05 mm",  "-0.05 mm", "25 ±0.05 mm", "+0.05 mm", "±0.05",
                                      "±0,05 mm", "±5 h",     "±0 mm",       "±1..2 mm", ""};
    hs_quantity q;
    hs_error err;
    for (size_t i = 0; i < sizeof good / sizeof *good; i++) {
        CHECK(!hs_quantity_read_plus_minus(&q, units, good[i], HS_LENGTH, &err));
        NEAR(q.value, 5e-5, 1e-17);
        NEAR(q.low, -5e-5, 1e-17);
        NEAR(q.high, 5e-5, 1e-17);
    }
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++)
        CHECK(hs_quantity_read_plus_minus(&q, units, bad[i], HS_LENGTH, &err) != HS_OK);
    CHECK(!hs_quantity_read_plus_minus(&q, units, "±27 F", HS_TEMPERATURE_DIFFERENCE, &err));
    NEAR(q.value, 15, 1e-13); /* exact: 27 x 5/9 */
    CHECK(q.spread && !strcmp(q.unit, "K"));
}

static void quantity__hardness__keeps_its_scale(void) {
    static const struct {
        const char *text;
        hs_scale scale;
    } rows[] = {{"58 HRC", HS_HRC}, {"650 HV1", HS_HV}, {"600 HBW", HS_HBW}, {"80 HRA", HS_HRA}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        hs_quantity q;
        CHECK(!hs_quantity_read(&q, units, rows[i].text, HS_HARDNESS, NULL));
        CHECK(q.scale == rows[i].scale && !strcmp(q.unit, hs_scale_name(q.scale)));
        CHECK(hs_scale_named(q.unit) == q.scale);
    }
    CHECK(hs_scale_named("HRB") == HS_SCALE_NONE && !strcmp(hs_scale_name(HS_SCALE_NONE), ""));
}

/* exact: n/64 in = 0.0254 n / 64 m, each in five spellings */
static void quantity__every_64th_of_an_inch__is_exact(void) {
    static const char *const forms[] = {"%d %d/64 in", "%d-%d/64 in", "%d %d/64\"",
                                        "0 ft %d %d/64 in"};
    for (int n = 0; n <= 24 * 64; n++) {
        char text[64];
        double expected = 0.0254 * n / 64;
        hs_quantity q = {.value = NAN};
        snprintf(text, sizeof text, "%.6f in", n / 64.0);
        CHECK(!hs_quantity_read(&q, units, text, HS_LENGTH, NULL));
        NEAR(q.value, expected, 4e-16 * expected + 1e-18);
        for (size_t f = 0; n % 64 && f < (n < 12 * 64 ? 4u : 3u); f++) {
            snprintf(text, sizeof text, forms[f], n / 64, n % 64);
            hs_status status = hs_quantity_read(&q, units, text, HS_LENGTH, NULL);
            CHECK(n >= 64 ? status == HS_OK : 1);
            if (!status) NEAR(q.value, expected, 4e-16 * expected);
        }
    }
}

int main(void) {
    static const hs_test tests[] = {
        TEST(quantity__legal_texts__mean_what_they_say),
        TEST(quantity__texts_gnu_units_reads__give_the_same_value),
        TEST(quantity__texts_with_a_trap__are_refused_at_the_right_byte),
        TEST(quantity__long_or_broken_bytes__are_refused),
        TEST(quantity__any_byte_spliced_in__is_read_or_refused),
        TEST(quantity__bare_numbers__take_the_unit_of_the_page),
        TEST(quantity__plus_minus__is_needed_where_asked),
        TEST(quantity__hardness__keeps_its_scale),
        TEST(quantity__every_64th_of_an_inch__is_exact),
    };
    units = hs_units_new();
    if (!units) return 1;
    int code = hs_tests_run("units_quantity", tests, sizeof tests / sizeof *tests);
    hs_units_free(units);
    return code;
}
