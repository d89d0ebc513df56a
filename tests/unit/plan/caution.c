#include "plan/caution.h"

#include "hardskin/tables/caution.h"
#include "plan/web.h"
#include "support/check.h"

#include <string.h>

enum { STEPS = 8 };

typedef struct bench {
    hs_step step[STEPS];
    hs_face face[2];
    hs_feature feature[1];
    hs_point outline[6];
    hs_job job;
    hs_result result;
} bench;

static hs_step heat(hs_step_kind kind, const char *medium, double celsius) {
    double K = celsius + 273.15;
    return (hs_step){.kind = kind, .medium = medium, .temp_K = {K, K, K}};
}

/* A plain plate: charcoal, box, reheat in the box, oil, temper, brush. Nothing found amiss. */
static void plain(bench *b) {
    *b = (bench){0};
    b->step[0] = heat(HS_CARBURISE, "charcoal", 925);
    b->step[1] = heat(HS_COOL, "box", 0);
    b->step[2] = heat(HS_REHEAT, "box", 820);
    b->step[3] = heat(HS_QUENCH, "oil", 0);
    b->step[4] = heat(HS_TEMPER, "", 170);
    b->step[5] = (hs_step){.kind = HS_DESCALE, .by = HS_BY_BRUSH};
    b->face[0] = (hs_face){.name = "top", .stated = 1};
    b->face[1] = (hs_face){.name = "bottom", .stated = 1};
    b->job =
        (hs_job){.part = {.form = HS_PLATE, .length_m = .3, .width_m = .06, .thickness_m = .02},
                 .step = b->step,
                 .steps = 6,
                 .face = b->face,
                 .faces = 2,
                 .feature = b->feature,
                 .test_piece = {.stated = 1}};
    b->result.hard = (hs_result_case){.present = 1,
                                      .depth_m = 1e-3,
                                      .surface_carbon_pct = .8,
                                      .dissolved_pct = .9,
                                      .retained_austenite_pct = 12};
}

static void collect(bench *b) {
    hs_web_find(&b->result.section, &b->job);
    hs_caution_collect(&b->result, &b->job);
}

static int has(const hs_result *r, const char *code) {
    for (size_t i = 0; i < r->cautions; i++)
        if (!strcmp(r->caution[i].code, code)) return 1;
    return 0;
}

/* own contract: exactly these for the plain job, in the order of the route */
static void caution__plain_job__gets_its_own_and_no_others(void) {
    static const char *const want[] = {
        "local-rules", "zinc-fume",  "hot-metal",       "pack-carbon-monoxide",
        "pack-vent",   "pack-flare", "quench-oil-fire", "quench-oil-water",
        "temper-soon", "brush-dust", "grinding-cracks", "grinding-wheel"};
    bench b;
    plain(&b);
    collect(&b);
    CHECK(b.result.cautions == sizeof want / sizeof *want);
    for (size_t i = 0; i < sizeof want / sizeof *want && i < b.result.cautions; i++)
        CHECK(!strcmp(b.result.caution[i].code, want[i]));
    collect(&b); /* twice gives the same, not the double */
    CHECK(b.result.cautions == sizeof want / sizeof *want);
}

/* Each row changes one thing of the plain job and names the code that must appear by it. */
static void lead(bench *b) {
    b->job.part.steel.mid.Pb = .25;
}
static void drawn(bench *b) {
    b->job.part.condition = HS_COLD_DRAWN;
}
static void carbonate(bench *b) {
    b->step[0].medium = "charcoal with carbonate";
}
static void cold(bench *b) {
    b->step[0].temp_K.value = 850 + 273.15;
}
static void hot(bench *b) {
    b->step[0].temp_K.value = 1000 + 273.15;
}
static void water(bench *b) {
    b->step[3].medium = "water";
}
static void polymer(bench *b) {
    b->step[3].medium = "polymer";
}
static void brine(bench *b) {
    b->step[3].medium = "brine";
}
static void still(bench *b) {
    b->step[3].medium = "still water";
}
static void bend(bench *b) {
    b->step[5].kind = HS_STRAIGHTEN;
}
static void blast(bench *b) {
    b->step[5].by = HS_BY_BLAST;
}
static void acid(bench *b) {
    b->step[5].by = HS_BY_ACID;
}
static void tank(bench *b) {
    b->step[5].by = HS_BY_ELECTROLYSIS;
}
static void anodic(bench *b) {
    b->step[5].by = HS_BY_ANODIC_ELECTROLYSIS;
}
static void hole(bench *b) {
    b->job.features = 1;
    b->feature[0] = (hs_feature){.kind = HS_HOLE, .size_m = 4e-3, .thread = 1};
}
static void wide(bench *b) {
    b->job.features = 1;
    b->feature[0] = (hs_feature){.kind = HS_SLOT, .size_m = 48e-3};
}
static void half(bench *b) {
    b->job.features = 1;
    b->feature[0] = (hs_feature){.kind = HS_SLOT, .size_m = 16e-3};
}
/* An L with walls of its own thickness. */
static void walls(bench *b, double foot_m) {
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
static void uneven_walls(bench *b) {
    walls(b, .025);
}
static void far_walls(bench *b) {
    walls(b, .035);
}
static void acid_in_hole(bench *b) {
    hole(b);
    acid(b);
}
static void austenite(bench *b) {
    b->result.hard.retained_austenite_pct = 25.1;
}
static void network(bench *b) {
    b->result.hard.surface_carbon_pct = .95;
}
static void thick_case(bench *b) {
    b->result.hard.depth_m = 3.4e-3;
}
static void eaten(bench *b) {
    b->face[0].case_m = 0.5e-3;
    b->result.face[0].present = 1;
    b->result.face[0].share_of_case_pct = 34;
}
static void unstated(bench *b) {
    b->face[1].stated = 0;
}
static void no_piece(bench *b) {
    b->job.test_piece.stated = 0;
}

static void caution__each_trigger__calls_its_code(void) {
    static const struct {
        void (*change)(bench *);
        const char *code;
    } row[] = {{lead, "lead-fume"},
               {drawn, "cold-drawn-stress"},
               {carbonate, "barium-carbonate"},
               {cold, "carburise-range"},
               {hot, "carburise-range"},
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
               {hole, "hole-scale"},
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
    bench b;
    for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
        plain(&b);
        collect(&b);
        CHECK(!has(&b.result, row[i].code)); /* not without the change */
        row[i].change(&b);
        collect(&b);
        if (!has(&b.result, row[i].code)) printf("missing: %s\n", row[i].code);
        CHECK(has(&b.result, row[i].code));
    }
}

static void caution__soft_part_in_the_tank__is_not_called_brittle(void) {
    bench b;
    plain(&b);
    b.step[1] = (hs_step){.kind = HS_DESCALE, .by = HS_BY_ELECTROLYSIS}; /* before the quench */
    collect(&b);
    CHECK(has(&b.result, "no-lid") && !has(&b.result, "hydrogen-embrittlement"));
    plain(&b);
    b.step[5].by = HS_BY_ANODIC_ELECTROLYSIS; /* no hydrogen into the steel */
    collect(&b);
    CHECK(!has(&b.result, "hydrogen-embrittlement") && !has(&b.result, "negative-lead"));
}

static void caution__limits__are_where_they_are_said_to_be(void) {
    /* own contract: a third of the section, 25 %, 33 %; both sides of each */
    bench b;
    plain(&b);
    b.result.hard.depth_m = 3.3e-3; /* 2 x 3.3 of 20 mm: below a third */
    b.result.hard.retained_austenite_pct = 25;
    b.face[0].case_m = 0.5e-3;
    b.result.face[0].present = 1;
    b.result.face[0].share_of_case_pct = 33;
    b.step[0].temp_K.value = 880 + 273.15;
    collect(&b);
    CHECK(!has(&b.result, "case-both-sides") && !has(&b.result, "retained-austenite"));
    CHECK(!has(&b.result, "case-share") && !has(&b.result, "carburise-range"));
    b.face[1].finish = HS_SOFT; /* a masked back: the case comes from one side only */
    b.result.hard.depth_m = 5e-3;
    collect(&b);
    CHECK(!has(&b.result, "case-both-sides"));
}

/* Everything at once fits into the result, and every code of the table can be called. */
static void caution__all_together__fit_and_cover_the_table(void) {
    static void (*const all[])(bench *) = {lead,      drawn,   carbonate,  cold,  hole,    wide,
                                           austenite, network, thick_case, eaten, no_piece};
    bench b;
    plain(&b);
    for (size_t i = 0; i < sizeof all / sizeof *all; i++)
        all[i](&b);
    b.feature[0].thread = 1;
    b.result.test_piece.ways = 1; /* told to etch or break it */
    hs_face faces[3] = {b.face[0], b.face[1], {.name = "front"}};
    static const hs_descale_method by[] = {HS_BY_BRUSH, HS_BY_BLAST, HS_BY_ACID, HS_BY_ELECTROLYSIS,
                                           HS_BY_ANODIC_ELECTROLYSIS};
    static const char *const media[] = {"oil", "water", "still water", "brine"};
    hs_step steps[11] = {b.step[0]};
    for (size_t i = 0; i < 4; i++)
        steps[1 + i] = heat(HS_QUENCH, media[i], 0);
    for (size_t i = 0; i < 5; i++)
        steps[5 + i] = (hs_step){.kind = HS_DESCALE, .by = by[i]};
    steps[10] = (hs_step){.kind = HS_STRAIGHTEN};
    b.job.step = steps;
    b.job.steps = 11;
    b.job.face = faces;
    b.job.faces = 3;
    collect(&b);
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
        int called = has(&b.result, c.code) || has(&second, c.code) || has(&third, c.code);
        if (!called) printf("never called: %s\n", c.code);
        CHECK(called);
    }
}

HS_TEST_MAIN("caution", TEST(caution__plain_job__gets_its_own_and_no_others),
             TEST(caution__each_trigger__calls_its_code),
             TEST(caution__soft_part_in_the_tank__is_not_called_brittle),
             TEST(caution__limits__are_where_they_are_said_to_be),
             TEST(caution__all_together__fit_and_cover_the_table))
