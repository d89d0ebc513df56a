/* Wrapping to 80 columns. Expected lines are written by hand from the rule in wrap.h. */
#include "report/wrap.h"
#include "support/check.h"

#include <string.h>

static char out[4096];

static const char *wrapped(size_t indent, size_t hang, const char *text) {
    hs_text t = hs_text_start(out, sizeof out);
    hs_wrap_add(&t, indent, hang, text);
    CHECK(!t.overflow);
    return out;
}

static void wrap__code_points__count_one_column_each(void) {
    CHECK(hs_wrap_columns("") == 0);
    CHECK(hs_wrap_columns("\302\2610.05 mm") == 8);
}

static void wrap__a_line_that_fits__stays_as_it_is(void) {
    CHECK(!strcmp(wrapped(2, 4, "a    b"), "  a    b\n"));
    CHECK(!strcmp(wrapped(2, 4, ""), "\n"));
    char line[81];
    memset(line, 'x', 80);
    line[40] = ' ';
    line[80] = '\0';
    CHECK(strlen(wrapped(0, 4, line)) == 81);
}

static void wrap__81_columns__break_at_the_space_and_hang(void) {
    char line[82], expect[96];
    memset(line, 'x', 81);
    line[70] = ' ';
    line[81] = '\0';
    snprintf(expect, sizeof expect, "%.70s\n    %s\n", line, line + 71);
    CHECK(!strcmp(wrapped(0, 4, line), expect));
}

static void wrap__a_word_too_long__is_cut_between_code_points(void) {
    char word[400] = "";
    for (int i = 0; i < 100; i++)
        strcat(word, "\302\260");
    const char *text = wrapped(0, 0, word);
    const char *end = strchr(text, '\n');
    CHECK(end != NULL && end - text == 160);
    CHECK(strlen(text) == 202);
}

static void wrap__a_number__stays_with_its_unit(void) {
    char line[120];
    memset(line, 'x', 72);
    snprintf(line + 72, sizeof line - 72, " 20.660 mm)");
    const char *text = wrapped(0, 0, line);
    CHECK(!strcmp(text + 73, "20.660 mm)\n"));
    snprintf(line + 72, sizeof line - 72, " 20.660 mill");
    CHECK(!strcmp(wrapped(0, 0, line) + 72, " 20.660\nmill\n"));
}

static void wrap__a_line_feed_inside__is_a_space(void) {
    CHECK(!strcmp(wrapped(0, 2, "a\nb"), "a b\n"));
}

HS_TEST_MAIN("report_wrap", TEST(wrap__code_points__count_one_column_each),
             TEST(wrap__a_line_that_fits__stays_as_it_is),
             TEST(wrap__81_columns__break_at_the_space_and_hang),
             TEST(wrap__a_word_too_long__is_cut_between_code_points),
             TEST(wrap__a_number__stays_with_its_unit), TEST(wrap__a_line_feed_inside__is_a_space))
