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

/* published: ANSI Z535.4 as quoted on secondary pages: what could kill or injure seriously is a
 * WARNING, not a CAUTION: hydrogen, carbon monoxide, chromium(VI), lead, a brittle part. */
static void caution__what_can_kill__is_a_warning(void) {
    static const char *const codes[] = {"hydrogen-explosive",
                                        "no-lid",
                                        "spark-distance",
                                        "supply-isolated",
                                        "no-salt",
                                        "chromate",
                                        "pack-carbon-monoxide",
                                        "pack-vent",
                                        "barium-carbonate",
                                        "zinc-fume",
                                        "lead-fume",
                                        "quench-oil-fire",
                                        "quench-oil-water",
                                        "acid-bleach",
                                        "hydrogen-embrittlement",
                                        "acid-water",
                                        "local-rules",
                                        "acid-hydrogen",
                                        "carbide-network",
                                        "hot-metal"};
    for (size_t i = 0; i < sizeof codes / sizeof *codes; i++) {
        hs_caution c;
        hs_status status = hs_caution_find(&c, codes[i], NULL);
        CHECK(status == HS_OK);
        if (status != HS_OK) continue;
        CHECK(!strcmp(c.level, "warning") || !strcmp(c.level, "danger"));
    }
}

static void caution__the_tank__says_what_must_not_be_left_out(void) {
    /* practice: no source needed */
    static const struct {
        const char *code, *word;
    } pairs[] = {{"spark-distance", "half a metre"}, {"supply-isolated", "wait"},
                 {"negative-lead", "negative lead"}, {"acid-water", "acid into the water"},
                 {"chromate", "stainless"},          {"no-salt", "chlorine"},
                 {"pack-vent", "never weld"},        {"zinc-fume", "alvanised"},
                 {"bake-no-guarantee", "nothing"},   {"local-rules", "licensed"}};
    for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
        hs_caution c;
        hs_status status = hs_caution_find(&c, pairs[i].code, NULL);
        CHECK(status == HS_OK && strstr(c.text, pairs[i].word) != NULL);
    }
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
             TEST(caution__what_can_kill__is_a_warning),
             TEST(caution__the_tank__says_what_must_not_be_left_out),
             TEST(caution__each_row__complete_and_only_once))
