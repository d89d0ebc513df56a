/* The cautions: each hazard of the trade is among them, at its level, with the words that matter.
 */
#include "hardskin/tables/caution.h"

#include "support/check.h"

#include <string.h>

/* published: ANSI Z535.4 as quoted on secondary pages (tables/SOURCES.md: signal-words): what could
 * kill or injure seriously is a WARNING; what injures slightly or moderately a CAUTION; what harms
 * only the part, property or surroundings a NOTICE. Sorted so by hand, every code of the table. */
static const char *const warnings[] = {
    "local-rules",       "lead-fume",       "zinc-fume",        "hot-metal",
    "safe-tongs",        "wet-wood",        "pack-vent",        "pack-carbon-monoxide",
    "pack-flare",        "furnace-gas",     "flame-gas",        "barium-carbonate",
    "quench-oil-fire",   "temper-soon",     "quench-oil-water", "straighten-hard",
    "brush-dust",        "blast-dust",      "acid-burn",        "acid-water",
    "acid-bleach",       "acid-hydrogen",   "no-lid",           "hydrogen-explosive",
    "spark-distance",    "supply-isolated", "no-salt",          "chromate",
    "bake-no-guarantee", "carbide-network", "grinding-cracks",  "hydrogen-embrittlement",
    "thread-brittle",    "grinding-wheel",  "etch-acid",        "case-both-sides",
    "break-hard"};
static const char *const milds[] = {"quench-steam", "quench-brine",   "soda-eyes",
                                    "sludge",       "trapped-liquid", "wrap-foil"};

static int listed(const char *code, const char *const *list, size_t n) {
    for (size_t i = 0; i < n; i++)
        if (!strcmp(code, list[i])) return 1;
    return 0;
}

static void caution__each_level__is_its_meaning(void) {
    size_t warned = 0, mild = 0;
    for (size_t i = 0; i < hs_caution_count(); i++) {
        hs_caution c;
        hs_caution_at(&c, i);
        int warning = listed(c.code, warnings, sizeof warnings / sizeof *warnings);
        int caution = listed(c.code, milds, sizeof milds / sizeof *milds);
        const char *level = warning ? "warning" : caution ? "caution" : "notice";
        if (strcmp(c.level, level) != 0) printf("%s is %s, not %s\n", c.code, c.level, level);
        CHECK(!strcmp(c.level, level));
        warned += (size_t)warning;
        mild += (size_t)caution;
    }
    CHECK(warned == sizeof warnings / sizeof *warnings && mild == sizeof milds / sizeof *milds);
    CHECK(strstr(hs_caution_meaning("danger"), "will kill") != NULL);
    CHECK(strstr(hs_caution_meaning("warning"), "could kill") != NULL);
    CHECK(!hs_caution_meaning("peril")[0]);
}

/* A notice is about the part or the surroundings: no word of hurt in it. */
static void caution__a_notice__hurts_nobody(void) {
    static const char *const hurt[] = {"kill",  "poison", "burns ", "blind",   "eyes",   "lungs",
                                       "injur", "scald",  "skin",   "explode", "people", "cancer"};
    for (size_t i = 0; i < hs_caution_count(); i++) {
        hs_caution c;
        hs_caution_at(&c, i);
        if (strcmp(c.level, "notice") != 0 || !strcmp(c.code, "acid-waste")) continue;
        for (size_t k = 0; k < sizeof hurt / sizeof *hurt; k++)
            CHECK(!strstr(c.hazard, hurt[k]) && !strstr(c.consequence, hurt[k]));
    }
}

static void caution__the_words_that_matter__are_there(void) {
    /* practice: no source needed */
    static const struct {
        const char *code, *word;
    } pairs[] = {{"spark-distance", "half a metre"},
                 {"supply-isolated", "wait"},
                 {"negative-lead", "negative lead"},
                 {"acid-water", "acid into the water"},
                 {"chromate", "stainless"},
                 {"no-salt", "chlorine"},
                 {"pack-vent", "never weld"},
                 {"zinc-fume", "alvanised"},
                 {"bake-no-guarantee", "nothing"},
                 {"local-rules", "licensed"},
                 {"etch-acid", "stoppered"},
                 {"etch-acid", "above 5 %"},
                 {"pack-vent", "clay"},
                 {"pack-carbon-monoxide", "alarm"},
                 {"pack-flare", "opened hot"},
                 {"quench-oil-fire", "extinguisher"},
                 {"quench-oil-water", "no water on"},
                 {"wet-wood", "wet tongs"},
                 {"safe-tongs", "grip"},
                 {"barium-carbonate", "calcium"}};
    for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
        hs_caution c;
        char all[600] = "";
        if (hs_caution_find(&c, pairs[i].code, NULL) == HS_OK)
            snprintf(all, sizeof all, "%s %s %s", c.hazard, c.consequence, c.avoidance);
        if (!strstr(all, pairs[i].word)) printf("%s lacks %s\n", pairs[i].code, pairs[i].word);
        CHECK(strstr(all, pairs[i].word) != NULL);
    }
}

HS_TEST_MAIN("tables_caution_words", TEST(caution__each_level__is_its_meaning),
             TEST(caution__a_notice__hurts_nobody), TEST(caution__the_words_that_matter__are_there))
