/* The cautions: found by code, worded to be printed, each hazard of the trade among them. */
#include "hardskin/tables/caution.h"

#include "support/check.h"

#include <string.h>

static void caution__by_its_code__level_and_text(void) {
    hs_caution c;
    hs_error err = {0};
    CHECK(hs_caution_find(&c, "no-lid", &err) == HS_OK);
    CHECK(!strcmp(c.code, "no-lid") && !strcmp(c.level, "warning"));
    CHECK(strstr(c.text, "explosive") != NULL);
    CHECK(hs_caution_find(&c, "no-lidd", &err) == HS_E_WORD);
    CHECK(strstr(err.help, "no-lid") != NULL);
    CHECK(!strcmp(c.code, "no-lid"));
}

static int is_code(const char *text) {
    return text[0] && strspn(text, "abcdefghijklmnopqrstuvwxyz0123456789-") == strlen(text);
}

static void caution__each_row__complete_and_only_once(void) {
    CHECK(hs_caution_count() >= 35);
    for (size_t i = 0; i < hs_caution_count(); i++) {
        hs_caution c, other;
        hs_caution_at(&c, i);
        CHECK(is_code(c.code));
        CHECK(!strcmp(c.level, "danger") || !strcmp(c.level, "warning") ||
              !strcmp(c.level, "caution") || !strcmp(c.level, "notice"));
        size_t length = strlen(c.text);
        CHECK(length > 60 && length < 300 && c.text[length - 1] == '.');
        CHECK(c.when[0] && c.source[0] && c.basis[0]);
        for (size_t k = 0; k < i; k++) {
            hs_caution_at(&other, k);
            CHECK(strcmp(other.code, c.code) != 0 && strcmp(other.text, c.text) != 0);
        }
    }
}

HS_TEST_MAIN("tables_caution", TEST(caution__by_its_code__level_and_text),
             TEST(caution__each_row__complete_and_only_once))
