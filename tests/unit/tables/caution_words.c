/* The cautions: each hazard of the trade is among them, at its level, with the words that matter.
 */
#include "hardskin/tables/caution.h"

#include "support/check.h"

#include <string.h>

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
                                        "etch-acid",
                                        "break-hard",
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
                 {"bake-no-guarantee", "nothing"},   {"local-rules", "licensed"},
                 {"etch-acid", "stoppered"},         {"etch-acid", "above 5 %"}};
    for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
        hs_caution c;
        hs_status status = hs_caution_find(&c, pairs[i].code, NULL);
        CHECK(status == HS_OK && strstr(c.text, pairs[i].word) != NULL);
    }
}

HS_TEST_MAIN("tables_caution_words", TEST(caution__what_can_kill__is_a_warning),
             TEST(caution__the_tank__says_what_must_not_be_left_out))
