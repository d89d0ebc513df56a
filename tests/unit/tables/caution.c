/* The cautions: found by code, worded to be printed, each hazard of the trade among them. */
#include "hardskin/tables/caution.h"

#include "support/check.h"

#include <string.h>

static void caution__by_its_code__level_and_text(void) {
    hs_caution c;
    hs_error err = {0};
    CHECK(hs_caution_find(&c, "no-lid", &err) == HS_OK);
    CHECK(!strcmp(c.code, "no-lid") && !strcmp(c.level, "warning"));
    CHECK(strstr(c.hazard, "explosive") != NULL);
    CHECK(hs_caution_find(&c, "no-lidd", &err) == HS_E_WORD);
    CHECK(strstr(err.help, "no-lid") != NULL);
    CHECK(!strcmp(c.code, "no-lid"));
}

/* One sentence each: a capital first, a full stop last. */
static int is_sentence(const char *text) {
    size_t length = strlen(text);
    return length > 8 && text[0] >= 'A' && text[0] <= 'Z' && text[length - 1] == '.';
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
        CHECK(hs_caution_meaning(c.level)[0]);
        CHECK(is_sentence(c.hazard) && is_sentence(c.consequence) && is_sentence(c.avoidance));
        CHECK(strlen(c.hazard) + strlen(c.consequence) + strlen(c.avoidance) < 280);
        CHECK(c.when[0] && c.source[0] && c.basis[0]);
        for (size_t k = 0; k < i; k++) {
            hs_caution_at(&other, k);
            CHECK(strcmp(other.code, c.code) != 0 && strcmp(other.hazard, c.hazard) != 0);
        }
    }
}

HS_TEST_MAIN("tables_caution", TEST(caution__by_its_code__level_and_text),
             TEST(caution__each_row__complete_and_only_once))
