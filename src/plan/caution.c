#include "plan/caution.h"

#include "constants.h"
#include "hardskin/tables/caution.h"
#include "plan/axis.h"
#include "plan/chain.h"
#include "plan/fire.h"
#include "plan/loss.h"

#include <assert.h>
#include <math.h>
#include <string.h>

/* The result, and the moment for which cautions are being added. Moments come in order of time, so
 * that each code stands before the first one it belongs to. */
typedef struct list {
    hs_result *r;
    const hs_job *job;
    hs_moment before;
    size_t step;
} list;

/* A code that the table does not hold is a fault of the program: the tests add every one. */
static void add(list *l, const char *code) {
    hs_result *r = l->r;
    for (size_t i = 0; i < r->cautions; i++)
        if (!strcmp(r->caution[i].code, code)) return;
    hs_caution found;
    hs_status status = hs_caution_find(&found, code, NULL);
    assert(status == HS_OK && r->cautions < HS_MAX_CAUTIONS);
    if (status != HS_OK || r->cautions == HS_MAX_CAUTIONS) return;
    r->caution[r->cautions++] = (hs_result_caution){.code = found.code,
                                                    .level = found.level,
                                                    .hazard = found.hazard,
                                                    .consequence = found.consequence,
                                                    .avoidance = found.avoidance,
                                                    .source = found.source,
                                                    .before = l->before,
                                                    .step = l->step};
}

static void add_all(list *l, const char *const *codes, size_t n) {
    for (size_t i = 0; i < n; i++)
        add(l, codes[i]);
}

#define ADD_ALL(list, ...)                                                                         \
    do {                                                                                           \
        static const char *const codes_[] = {__VA_ARGS__};                                         \
        add_all((list), codes_, sizeof codes_ / sizeof *codes_);                                   \
    } while (0)

static int medium_is(const hs_step *step, const char *word) {
    return step->medium && !strcmp(step->medium, word);
}

static int has_hole(const hs_job *job) {
    for (size_t i = 0; i < job->features; i++)
        if (job->feature[i].kind == HS_HOLE || job->feature[i].thread) return 1;
    return 0;
}

static int has_thread(const hs_job *job) {
    for (size_t i = 0; i < job->features; i++)
        if (job->feature[i].thread) return 1;
    return 0;
}

/* Does this very step scale the part? */
static int scales(const list *l) {
    for (size_t i = 0; i < l->r->scale.heats; i++)
        if (l->r->scale.heat[i].step == l->step) return 1;
    return 0;
}

/* Scale in holes, before the first heat that makes it. */
static void add_holes(list *l) {
    if (!scales(l)) return;
    if (has_hole(l->job)) add(l, "hole-scale");
    for (size_t i = 0; i < l->r->scale.holes; i++)
        if (l->r->scale.hole[i].closes) add(l, "hole-closed");
}

static int traps_liquid(const hs_job *job) {
    for (size_t i = 0; i < job->features; i++)
        if (job->feature[i].thread || job->feature[i].blind) return 1;
    return 0;
}

/* Walls of the section, and what holes and slots leave of it. */
static void add_walls(list *l) {
    const hs_result_section *s = &l->r->section;
    for (size_t i = 0; i < s->lefts; i++) {
        if (s->left[i].thin) add(l, "thin-web");
        if (s->left[i].weak) add(l, "weak-section");
    }
    double ratio = s->thick_m / s->thin_m;
    if (ratio > HS_K_CAUTION_LIMITS_THICK_THIN_FLAG)
        add(l, "thick-thin-far");
    else if (ratio > HS_K_CAUTION_LIMITS_THICK_THIN_CAUTION)
        add(l, "thick-thin");
}

static void add_stock(list *l) {
    add(l, "local-rules");
    const hs_part *part = &l->job->part;
    if (fmax(part->steel.mid.Pb, part->steel.high.Pb) > HS_K_CAUTION_LIMITS_LEAD)
        add(l, "lead-fume");
    if (part->condition == HS_COLD_DRAWN) add(l, "cold-drawn-stress");
}

static void add_fire(list *l) {
    ADD_ALL(l, "zinc-fume", "hot-metal");
    add_walls(l);
}

static int outside_advice(const hs_step *step) {
    double low_K = step->temp_K.value, high_K = step->temp_K.value;
    if (step->log_points > 0) { /* a log counts by its hottest point */
        low_K = high_K = 0;
        for (size_t i = 0; i < step->log_points; i++)
            low_K = high_K = fmax(high_K, step->log[i].temp_K);
    }
    return low_K < HS_K_CAUTION_LIMITS_CARBURISE_LOW || high_K > HS_K_CAUTION_LIMITS_CARBURISE_HIGH;
}

/* What opens, holds or vents a box of charcoal. */
static void add_pack(list *l) {
    ADD_ALL(l, "pack-carbon-monoxide", "pack-vent", "pack-flare", "wet-wood");
}

static int thin_cover(const list *l) {
    for (size_t i = 0; i < l->r->packs; i++)
        if (l->r->pack[i].step == l->step && l->r->pack[i].thin_cover) return 1;
    return 0;
}

static void add_carburise(list *l, const hs_step *step) {
    add_fire(l);
    if (has_thread(l->job)) add(l, "thread-brittle");
    if (hs_fire_packs(step)) {
        add_pack(l);
        if (thin_cover(l)) add(l, "pack-cover");
        if (!medium_is(step, "charcoal")) add(l, "barium-carbonate"); /* unknown compounds too */
    } else {
        add(l, "furnace-gas");
    }
    if (outside_advice(step)) add(l, "carburise-range");
}

static void add_reheat(list *l, const hs_step *step) {
    add_fire(l);
    if (medium_is(step, "box")) add_pack(l);
    if (medium_is(step, "wrapped")) add(l, "wrap-foil");
    if (step->medium && !strncmp(step->medium, "open ", 5)) add(l, "flame-gas");
    add_holes(l);
}

static void add_quench(list *l, const hs_step *step) {
    ADD_ALL(l, "hot-metal", "safe-tongs");
    if (medium_is(step, "oil")) ADD_ALL(l, "quench-oil-fire", "quench-oil-water");
    if (medium_is(step, "water") || medium_is(step, "still water") || medium_is(step, "brine") ||
        medium_is(step, "polymer"))
        add(l, "quench-steam");
    if (medium_is(step, "brine")) add(l, "quench-brine");
    if (medium_is(step, "still water")) add(l, "quench-still-water");
    add(l, "temper-soon");
}

static void add_tank(list *l, int anodic) {
    ADD_ALL(l, "hydrogen-explosive", "no-lid", "spark-distance", "supply-isolated", "no-salt",
            "chromate", "soda-eyes");
    add(l, anodic ? "positive-lead" : "negative-lead");
    add(l, "sludge");
}

/* Hydrogen goes into the steel from acid and from the negative lead. */
static void add_descale(list *l, const hs_step *step, int hard) {
    int acid = step->by == HS_BY_ACID, cathodic = step->by == HS_BY_ELECTROLYSIS;
    int anodic = step->by == HS_BY_ANODIC_ELECTROLYSIS;
    if (step->by == HS_BY_BRUSH || step->by == HS_BY_FLAP_DISC) add(l, "brush-dust");
    if (step->by == HS_BY_BLAST) add(l, "blast-dust");
    if (acid) ADD_ALL(l, "acid-burn", "acid-water", "acid-bleach", "acid-hydrogen", "acid-waste");
    if (cathodic || anodic) add_tank(l, anodic);
    if ((acid || cathodic || anodic) && traps_liquid(l->job)) add(l, "trapped-liquid");
    if ((acid || cathodic) && hard) ADD_ALL(l, "hydrogen-embrittlement", "bake-no-guarantee");
}

static void add_cool(list *l, const hs_step *step) {
    if (medium_is(step, "box")) return;
    add(l, "hot-metal");
    if (medium_is(step, "air")) ADD_ALL(l, "safe-tongs", "wet-wood");
    add_holes(l);
}

static void add_step(list *l, const hs_step *step, int hard) {
    switch (step->kind) {
    case HS_STRESS_RELIEVE:
        add_fire(l);
        break;
    case HS_CARBURISE:
        if (hs_loss_rust_at(l->job, l->step) != HS_NO_RUST) add(l, "rust-in-fire");
        add_carburise(l, step);
        break;
    case HS_COOL:
        add_cool(l, step);
        break;
    case HS_REHEAT:
        add_reheat(l, step);
        break;
    case HS_QUENCH:
        add_quench(l, step);
        break;
    case HS_STRAIGHTEN:
        if (hard) add(l, "straighten-hard");
        break;
    case HS_DESCALE:
        add_descale(l, step, hard);
        break;
    case HS_TEMPER:
    case HS_BAKE:
        add(l, "hot-metal");
        break;
    }
}

static void add_steps(list *l) {
    int hard = 0;
    l->before = HS_BEFORE_STEP;
    for (l->step = 0; l->step < l->job->steps; l->step++) {
        const hs_step *step = &l->job->step[l->step];
        add_step(l, step, hard);
        if (step->kind == HS_QUENCH) hard = 1;
        if (step->kind == HS_STRESS_RELIEVE || step->kind == HS_CARBURISE ||
            step->kind == HS_REHEAT || step->kind == HS_COOL)
            hard = 0;
    }
    l->step = 0;
}

/* A bake that the descale plan asks for stands before the last descale. */
static void add_bake(list *l) {
    if (!l->r->descale_present || !(l->r->descale.bake_s > 0)) return;
    for (size_t i = 0; i < l->job->steps; i++)
        if (l->job->step[i].kind == HS_DESCALE) l->step = i;
    add(l, "bake-no-guarantee");
    l->step = 0;
}

static int cases_meet(const hs_result *r, const hs_job *job) {
    hs_axes axes;
    if (hs_axes_of(&axes, job, NULL) != HS_OK) return 0;
    for (size_t i = 0; i < axes.n; i++) {
        const hs_axis *axis = &axes.axis[i];
        double sides = axis->far_exposed || axis->shape == HS_CYLINDER ? 2 : 1;
        if (sides * r->hard.depth_m > HS_K_PLAN_DOUBT_CASE_BOTH_CAUTION * axis->wall_m) return 1;
    }
    return 0;
}

static void add_case(list *l) {
    const hs_result_case *hard = &l->r->hard;
    if (!hard->present) return;
    if (hard->retained_austenite_pct > HS_K_CAUTION_LIMITS_RETAINED_AUSTENITE)
        add(l, "retained-austenite");
    if (hard->surface_carbon_pct > hard->dissolved_pct + HS_K_CAUTION_LIMITS_NETWORK_CARBON)
        add(l, "carbide-network");
    if (cases_meet(l->r, l->job)) add(l, "case-both-sides");
}

/* What is still to be settled at the desk. */
static void add_open_ends(list *l) {
    for (size_t i = 0; i < l->job->faces; i++)
        if (!l->job->face[i].stated) add(l, "face-assumed");
    if (!l->job->test_piece.stated) add(l, "test-piece");
}

static void add_grinding(list *l) {
    int ground = 0, share = 0;
    for (size_t i = 0; i < l->job->faces; i++) {
        const hs_face *face = &l->job->face[i];
        const hs_result_face *found = &l->r->face[i];
        ground |= face->stated && face->finish == HS_GROUND;
        share |= found->present && hs_face_asks(face) &&
                 found->share_of_case_pct > 100 * HS_K_PLAN_DOUBT_SHARE_CAUTION;
    }
    if (ground) ADD_ALL(l, "grinding-cracks", "grinding-wheel");
    if (share) add(l, "case-share");
}

void hs_caution_collect(hs_result *result, const hs_job *job) {
    list l = {result, job, HS_BEFORE_ALL, 0};
    result->cautions = 0;
    add_stock(&l);
    add_case(&l);
    add_open_ends(&l);
    add_steps(&l);
    add_bake(&l);
    l.before = HS_BEFORE_TEST_PIECE;
    if (result->test_piece.ways > 0) ADD_ALL(&l, "etch-acid", "break-hard");
    l.before = HS_BEFORE_GRINDING;
    add_grinding(&l);
}
