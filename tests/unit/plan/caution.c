#include "caution_bench.h"

#include "hardskin/tables/caution.h"
#include "plan/caution.h"
#include "plan/web.h"
#include "support/check.h"

#include <string.h>

/* own contract: exactly these for the plain job, in the order of the route */
static void caution__plain_job__gets_its_own_and_no_others(void) {
    static const char *const want[] = {
        "local-rules", "zinc-fume",  "hot-metal",       "pack-carbon-monoxide", "pack-vent",
        "pack-flare",  "wet-wood",   "safe-tongs",      "quench-oil-fire",      "quench-oil-water",
        "temper-soon", "brush-dust", "grinding-cracks", "grinding-wheel"};
    caution_bench b;
    caution_plain(&b);
    caution_collect(&b);
    CHECK(b.result.cautions == sizeof want / sizeof *want);
    for (size_t i = 0; i < sizeof want / sizeof *want && i < b.result.cautions; i++)
        CHECK(!strcmp(b.result.caution[i].code, want[i]));
    caution_collect(&b); /* twice gives the same, not the double */
    CHECK(b.result.cautions == sizeof want / sizeof *want);
}

/* Each row changes one thing of the plain job and names the code that must appear by it. */
static void lead(caution_bench *b) {
    b->job.part.steel.mid.Pb = .25;
}
static void drawn(caution_bench *b) {
    b->job.part.condition = HS_COLD_DRAWN;
}
static void carbonate(caution_bench *b) {
    b->step[0].medium = "charcoal with carbonate";
}
static void cold(caution_bench *b) {
    b->step[0].temp_K.value = 850 + 273.15;
}
static void hot(caution_bench *b) {
    b->step[0].temp_K.value = 1000 + 273.15;
}
static void rusty(caution_bench *b) {
    b->job.part.rust = HS_RUST_LIGHT;
}
static void thin_cover(caution_bench *b) {
    b->result.packs = 1;
    b->result.pack[0] = (hs_result_pack){.step = 0, .thin_cover = 1};
}
static void gas(caution_bench *b) {
    b->step[0].medium = "";
}
static void flame(caution_bench *b) {
    b->step[2].medium = "open rich flame";
}
static void foil(caution_bench *b) {
    b->step[2].medium = "wrapped";
}
static void open_hole(caution_bench *b) {
    b->job.features = 1;
    b->feature[0] = (hs_feature){.kind = HS_HOLE, .size_m = 4e-3};
    b->result.scale.heats = 1;
    b->result.scale.heat[0].step = 2;
}
static void closed_hole(caution_bench *b) {
    open_hole(b);
    b->result.scale.holes = 1;
    b->result.scale.hole[0].closes = 1;
}
static void water(caution_bench *b) {
    b->step[3].medium = "water";
}
static void polymer(caution_bench *b) {
    b->step[3].medium = "polymer";
}
static void brine(caution_bench *b) {
    b->step[3].medium = "brine";
}
static void still(caution_bench *b) {
    b->step[3].medium = "still water";
}
static void bend(caution_bench *b) {
    b->step[5].kind = HS_STRAIGHTEN;
}
static void blast(caution_bench *b) {
    b->step[5].by = HS_BY_BLAST;
}
static void acid(caution_bench *b) {
    b->step[5].by = HS_BY_ACID;
}
static void tank(caution_bench *b) {
    b->step[5].by = HS_BY_ELECTROLYSIS;
}
static void anodic(caution_bench *b) {
    b->step[5].by = HS_BY_ANODIC_ELECTROLYSIS;
}
static void hole(caution_bench *b) {
    b->job.features = 1;
    b->feature[0] = (hs_feature){.kind = HS_HOLE, .size_m = 4e-3, .thread = 1};
}
static void wide(caution_bench *b) {
    b->job.features = 1;
    b->feature[0] = (hs_feature){.kind = HS_SLOT, .size_m = 48e-3};
}
static void half(caution_bench *b) {
    b->job.features = 1;
    b->feature[0] = (hs_feature){.kind = HS_SLOT, .size_m = 16e-3};
}
/* An L with walls of its own thickness. */
static void walls(caution_bench *b, double foot_m) {
    static const hs_outline none = {0};
    b->outline[0] = (hs_point){0, 0};
    b->outline[1] = (hs_point){.06, 0};
    b->outline[2] = (hs_point){.06, foot_m};
    b->outline[3] = (hs_point){.01, foot_m};
    b->outline[4] = (hs_point){.01, .1};
    b->outline[5] = (hs_point){0, .1};
    b->job.part.form = HS_PROFILE;
    b->job.part.section = (hs_section){{b->outline, 6}, &none, 0};
}
static void uneven_walls(caution_bench *b) {
    walls(b, .025);
}
static void far_walls(caution_bench *b) {
    walls(b, .035);
}
static void acid_in_hole(caution_bench *b) {
    hole(b);
    acid(b);
}
static void austenite(caution_bench *b) {
    b->result.hard.retained_austenite_pct = 25.1;
}
static void network(caution_bench *b) {
    b->result.hard.surface_carbon_pct = .95;
}
static void thick_case(caution_bench *b) {
    b->result.hard.depth_m = 3.4e-3;
}
static void eaten(caution_bench *b) {
    b->face[0].case_m = 0.5e-3;
    b->result.face[0].present = 1;
    b->result.face[0].share_of_case_pct = 34;
}
static void unstated(caution_bench *b) {
    b->face[1].stated = 0;
}
static void no_piece(caution_bench *b) {
    b->job.test_piece.stated = 0;
}

static void caution__each_trigger__calls_its_code(void) {
    static const struct {
        void (*change)(caution_bench *);
        const char *code;
    } row[] = {{lead, "lead-fume"},
               {drawn, "cold-drawn-stress"},
               {carbonate, "barium-carbonate"},
               {cold, "carburise-range"},
               {hot, "carburise-range"},
               {rusty, "rust-in-fire"},
               {thin_cover, "pack-cover"},
               {gas, "furnace-gas"},
               {flame, "flame-gas"},
               {foil, "wrap-foil"},
               {closed_hole, "hole-closed"},
               {water, "quench-steam"},
               {polymer, "quench-steam"},
               {brine, "quench-brine"},
               {still, "quench-still-water"},
               {bend, "straighten-hard"},
               {blast, "blast-dust"},
               {acid, "acid-burn"},
               {acid, "acid-water"},
               {acid, "acid-bleach"},
               {acid, "acid-hydrogen"},
               {acid, "acid-waste"},
               {acid, "hydrogen-embrittlement"},
               {acid, "bake-no-guarantee"},
               {acid_in_hole, "trapped-liquid"},
               {tank, "hydrogen-explosive"},
               {tank, "no-lid"},
               {tank, "spark-distance"},
               {tank, "supply-isolated"},
               {tank, "no-salt"},
               {tank, "chromate"},
               {tank, "soda-eyes"},
               {tank, "negative-lead"},
               {tank, "sludge"},
               {tank, "hydrogen-embrittlement"},
               {anodic, "positive-lead"},
               {hole, "thread-brittle"},
               {open_hole, "hole-scale"},
               {wide, "thin-web"},
               {half, "weak-section"},
               {uneven_walls, "thick-thin"},
               {far_walls, "thick-thin-far"},
               {austenite, "retained-austenite"},
               {network, "carbide-network"},
               {thick_case, "case-both-sides"},
               {eaten, "case-share"},
               {unstated, "face-assumed"},
               {no_piece, "test-piece"}};
    caution_bench b;
    for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
        caution_plain(&b);
        caution_collect(&b);
        CHECK(!caution_has(&b.result, row[i].code)); /* not without the change */
        row[i].change(&b);
        caution_collect(&b);
        if (!caution_has(&b.result, row[i].code)) printf("missing: %s\n", row[i].code);
        CHECK(caution_has(&b.result, row[i].code));
    }
}

static void caution__soft_part_in_the_tank__is_not_called_brittle(void) {
    caution_bench b;
    caution_plain(&b);
    b.step[1] = (hs_step){.kind = HS_DESCALE, .by = HS_BY_ELECTROLYSIS}; /* before the quench */
    caution_collect(&b);
    CHECK(caution_has(&b.result, "no-lid") && !caution_has(&b.result, "hydrogen-embrittlement"));
    caution_plain(&b);
    b.step[5].by = HS_BY_ANODIC_ELECTROLYSIS; /* no hydrogen into the steel */
    caution_collect(&b);
    CHECK(!caution_has(&b.result, "hydrogen-embrittlement") &&
          !caution_has(&b.result, "negative-lead"));
}

static void caution__limits__are_where_they_are_said_to_be(void) {
    /* own contract: a third of the section, 25 %, 33 %; both sides of each */
    caution_bench b;
    caution_plain(&b);
    b.result.hard.depth_m = 3.3e-3; /* 2 x 3.3 of 20 mm: below a third */
    b.result.hard.retained_austenite_pct = 25;
    b.face[0].case_m = 0.5e-3;
    b.result.face[0].present = 1;
    b.result.face[0].share_of_case_pct = 33;
    b.step[0].temp_K.value = 880 + 273.15;
    caution_collect(&b);
    CHECK(!caution_has(&b.result, "case-both-sides") &&
          !caution_has(&b.result, "retained-austenite"));
    CHECK(!caution_has(&b.result, "case-share") && !caution_has(&b.result, "carburise-range"));
    b.face[1].finish = HS_SOFT; /* a masked back: the case comes from one side only */
    b.result.hard.depth_m = 5e-3;
    caution_collect(&b);
    CHECK(!caution_has(&b.result, "case-both-sides"));
}

/* Everything at once fits into the result, and every code of the table can be called. */
static void caution__all_together__fit_and_cover_the_table(void) {
    static void (*const all[])(caution_bench *) = {
        closed_hole, lead,    drawn, carbonate,  cold,       hole,  wide,
        austenite,   network, rusty, thick_case, thin_cover, eaten, no_piece};
    caution_bench b;
    caution_plain(&b);
    for (size_t i = 0; i < sizeof all / sizeof *all; i++)
        all[i](&b);
    b.feature[0].thread = 1;
    b.result.test_piece.ways = 1; /* told to etch or break it */
    hs_face faces[3] = {b.face[0], b.face[1], {.name = "front"}};
    static const hs_descale_method by[] = {HS_BY_BRUSH, HS_BY_BLAST, HS_BY_ACID, HS_BY_ELECTROLYSIS,
                                           HS_BY_ANODIC_ELECTROLYSIS};
    static const char *const media[] = {"oil", "water", "still water", "brine"};
    hs_step steps[14] = {b.step[0]};
    for (size_t i = 0; i < 4; i++)
        steps[1 + i] = caution_heat(HS_QUENCH, media[i], 0);
    for (size_t i = 0; i < 5; i++)
        steps[5 + i] = (hs_step){.kind = HS_DESCALE, .by = by[i]};
    steps[10] = (hs_step){.kind = HS_STRAIGHTEN};
    steps[11] = caution_heat(HS_REHEAT, "wrapped", 820);
    steps[12] = caution_heat(HS_REHEAT, "open lean flame", 820);
    steps[13] = caution_heat(HS_CARBURISE, "", 925);
    b.job.step = steps;
    b.job.steps = 14;
    b.result.scale.heat[0].step = 11;
    b.job.face = faces;
    b.job.faces = 3;
    caution_collect(&b);
    CHECK(b.result.cautions <= HS_MAX_CAUTIONS);
    hs_result second = {0}, third = {0}; /* a section has walls of one ratio */
    uneven_walls(&b);
    hs_web_find(&second.section, &b.job);
    hs_caution_collect(&second, &b.job);
    far_walls(&b);
    hs_web_find(&third.section, &b.job);
    hs_caution_collect(&third, &b.job);
    for (size_t i = 0; i < hs_caution_count(); i++) {
        hs_caution c;
        hs_caution_at(&c, i);
        int called = caution_has(&b.result, c.code) || caution_has(&second, c.code) ||
                     caution_has(&third, c.code);
        if (!called) printf("never called: %s\n", c.code);
        CHECK(called);
    }
}

static void caution__box_of_the_reheat__makes_its_own_gas(void) {
    /* own contract: charcoal in any box makes carbon monoxide, also where the carbon came from gas;
     * no box, none */
    static const char *const pack[] = {"pack-carbon-monoxide", "pack-vent", "pack-flare"};
    for (int boxed = 0; boxed < 2; boxed++) {
        caution_bench b;
        caution_plain(&b);
        b.step[0] = caution_heat(HS_CARBURISE, "", 925);
        b.step[2] = caution_heat(HS_REHEAT, boxed ? "box" : "wrapped", 820);
        caution_collect(&b);
        for (int i = 0; i < 3; i++)
            CHECK(caution_has(&b.result, pack[i]) == boxed);
        CHECK(caution_has(&b.result, "furnace-gas"));
    }
}

HS_TEST_MAIN("caution", TEST(caution__plain_job__gets_its_own_and_no_others),
             TEST(caution__each_trigger__calls_its_code),
             TEST(caution__soft_part_in_the_tank__is_not_called_brittle),
             TEST(caution__limits__are_where_they_are_said_to_be),
             TEST(caution__all_together__fit_and_cover_the_table),
             TEST(caution__box_of_the_reheat__makes_its_own_gas))
