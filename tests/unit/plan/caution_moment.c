/* When a caution is shown: before its step, and only where the route has that step. */
#include "caution_bench.h"
#include "support/check.h"

#include <string.h>

static hs_result_caution find(const hs_result *r, const char *code) {
    for (size_t i = 0; i < r->cautions; i++)
        if (!strcmp(r->caution[i].code, code)) return r->caution[i];
    CHECK(0); /* not there */
    return (hs_result_caution){0};
}

/* own contract: a caution stands before the first thing it belongs to */
static void caution__each__stands_before_its_step(void) {
    static const struct {
        const char *code;
        size_t step;
    } at[] = {{"zinc-fume", 0},       {"pack-vent", 0},  {"pack-carbon-monoxide", 0},
              {"quench-oil-fire", 3}, {"safe-tongs", 3}, {"temper-soon", 3},
              {"brush-dust", 5}};
    caution_bench b;
    caution_plain(&b);
    b.result.test_piece.ways = 1;
    caution_collect(&b);
    for (size_t i = 0; i < sizeof at / sizeof *at; i++) {
        hs_result_caution c = find(&b.result, at[i].code);
        CHECK(c.before == HS_BEFORE_STEP && c.step == at[i].step);
    }
    CHECK(find(&b.result, "local-rules").before == HS_BEFORE_ALL);
    CHECK(!strcmp(b.result.caution[0].code, "local-rules")); /* the first of all */
    CHECK(find(&b.result, "etch-acid").before == HS_BEFORE_TEST_PIECE);
    CHECK(find(&b.result, "grinding-wheel").before == HS_BEFORE_GRINDING);
    for (size_t i = 1; i < b.result.cautions; i++) { /* in order of time */
        const hs_result_caution *c = &b.result.caution[i];
        CHECK(c->before > c[-1].before || (c->before == c[-1].before && c->step >= c[-1].step));
    }
}

/* Steps taken away take theirs along. */
static void caution__without_a_step__none_of_its_own(void) {
    static const struct {
        hs_step_kind kind;
        const char *prefix;
    } row[] = {{HS_CARBURISE, "pack-"}, {HS_CARBURISE, "carburise-"}, {HS_QUENCH, "quench-"},
               {HS_QUENCH, "temper-"},  {HS_DESCALE, "brush-"},       {HS_DESCALE, "acid-"},
               {HS_DESCALE, "blast-"},  {HS_STRAIGHTEN, "straighten"}};
    for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
        caution_bench b;
        size_t left = 0;
        caution_plain(&b);
        b.step[2].medium = "electric furnace in air"; /* not in the box again */
        for (size_t k = 0; k < b.job.steps; k++)
            if (b.step[k].kind != row[i].kind) b.step[left++] = b.step[k];
        b.job.steps = left;
        caution_collect(&b);
        for (size_t k = 0; k < b.result.cautions; k++)
            CHECK(strncmp(b.result.caution[k].code, row[i].prefix, strlen(row[i].prefix)) != 0);
    }
    caution_bench b;
    caution_plain(&b);
    b.step[0].medium =
        ""; /* carburised in gas: no box, none of its cautions, unless the reheat packs */
    b.step[2].medium = "open neutral flame";
    caution_collect(&b);
    CHECK(caution_has(&b.result, "furnace-gas") && caution_has(&b.result, "flame-gas"));
    CHECK(!caution_has(&b.result, "pack-vent") && !caution_has(&b.result, "barium-carbonate"));
    caution_plain(&b);
    b.job.features = 1; /* a plain hole that no heat scales */
    b.feature[0] = (hs_feature){.kind = HS_HOLE, .size_m = 4e-3};
    b.result.scale.holes = 1;
    caution_collect(&b);
    CHECK(!caution_has(&b.result, "hole-scale") && !caution_has(&b.result, "hole-closed"));
    caution_plain(&b);
    b.job.part.rust = HS_RUST_HEAVY; /* descaled before the fire */
    b.step[0] = (hs_step){.kind = HS_DESCALE, .by = HS_BY_ACID};
    b.step[1] = caution_heat(HS_CARBURISE, "charcoal", 925);
    caution_collect(&b);
    CHECK(!caution_has(&b.result, "rust-in-fire") &&
          !caution_has(&b.result, "hydrogen-embrittlement"));
}

HS_TEST_MAIN("caution_moment", TEST(caution__each__stands_before_its_step),
             TEST(caution__without_a_step__none_of_its_own))
