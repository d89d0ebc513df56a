#include "plan/caution.h"

#include "constants.h"
#include "hardskin/tables/caution.h"
#include "plan/axis.h"
#include "plan/chain.h"

#include <assert.h>
#include <math.h>
#include <string.h>

/* A code that the table does not hold is a fault of the program: the tests add every one. */
static void add(hs_result *r, const char *code) {
    for (size_t i = 0; i < r->cautions; i++)
        if (!strcmp(r->caution[i].code, code)) return;
    hs_caution found;
    hs_status status = hs_caution_find(&found, code, NULL);
    assert(status == HS_OK && r->cautions < HS_MAX_CAUTIONS);
    if (status != HS_OK || r->cautions == HS_MAX_CAUTIONS) return;
    r->caution[r->cautions++] = (hs_result_caution){
        .code = found.code, .level = found.level, .text = found.text, .source = found.source};
}

static void add_all(hs_result *r, const char *const *codes, size_t n) {
    for (size_t i = 0; i < n; i++)
        add(r, codes[i]);
}

#define ADD_ALL(result, ...)                                                                       \
    do {                                                                                           \
        static const char *const codes_[] = {__VA_ARGS__};                                         \
        add_all((result), codes_, sizeof codes_ / sizeof *codes_);                                 \
    } while (0)

static int medium_is(const hs_step *step, const char *word) {
    return step->medium && !strcmp(step->medium, word);
}

static int has_hole(const hs_job *job) {
    for (size_t i = 0; i < job->features; i++)
        if (job->feature[i].kind == HS_HOLE || job->feature[i].thread) return 1;
    return 0;
}

static int traps_liquid(const hs_job *job) {
    for (size_t i = 0; i < job->features; i++)
        if (job->feature[i].thread || job->feature[i].blind) return 1;
    return 0;
}

/* Walls of the section, and what holes and slots leave of it. */
static void add_walls(hs_result *r) {
    const hs_result_section *s = &r->section;
    for (size_t i = 0; i < s->lefts; i++) {
        if (s->left[i].thin) add(r, "thin-web");
        if (s->left[i].weak) add(r, "weak-section");
    }
    double ratio = s->thick_m / s->thin_m;
    if (ratio > HS_K_CAUTION_LIMITS_THICK_THIN_FLAG)
        add(r, "thick-thin-far");
    else if (ratio > HS_K_CAUTION_LIMITS_THICK_THIN_CAUTION)
        add(r, "thick-thin");
}

static void add_stock(hs_result *r, const hs_job *job) {
    add(r, "local-rules");
    const hs_steel *steel = &job->part.steel;
    if (fmax(steel->mid.Pb, steel->high.Pb) > HS_K_CAUTION_LIMITS_LEAD) add(r, "lead-fume");
    if (job->part.condition == HS_COLD_DRAWN) add(r, "cold-drawn-stress");
}

static void add_fire(hs_result *r, const hs_job *job) {
    ADD_ALL(r, "zinc-fume", "hot-metal");
    if (has_hole(job)) add(r, "hole-scale");
    add_walls(r);
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

static void add_carburise(hs_result *r, const hs_job *job, const hs_step *step) {
    add_fire(r, job);
    ADD_ALL(r, "pack-carbon-monoxide", "pack-vent", "pack-flare");
    if (!medium_is(step, "charcoal")) add(r, "barium-carbonate"); /* unknown compounds as well */
    if (outside_advice(step)) add(r, "carburise-range");
}

static void add_quench(hs_result *r, const hs_step *step) {
    if (medium_is(step, "oil")) ADD_ALL(r, "quench-oil-fire", "quench-oil-water");
    if (medium_is(step, "water") || medium_is(step, "still water") || medium_is(step, "brine") ||
        medium_is(step, "polymer"))
        add(r, "quench-steam");
    if (medium_is(step, "brine")) add(r, "quench-brine");
    if (medium_is(step, "still water")) add(r, "quench-still-water");
    add(r, "temper-soon");
}

static void add_tank(hs_result *r, int anodic) {
    ADD_ALL(r, "hydrogen-explosive", "no-lid", "spark-distance", "supply-isolated", "no-salt",
            "chromate", "soda-eyes");
    add(r, anodic ? "positive-lead" : "negative-lead");
    add(r, "sludge");
}

/* Hydrogen goes into the steel from acid and from the negative lead. */
static void add_descale(hs_result *r, const hs_job *job, const hs_step *step, int hard) {
    int acid = step->by == HS_BY_ACID, cathodic = step->by == HS_BY_ELECTROLYSIS;
    int anodic = step->by == HS_BY_ANODIC_ELECTROLYSIS;
    if (step->by == HS_BY_BRUSH) add(r, "brush-dust");
    if (step->by == HS_BY_BLAST) add(r, "blast-dust");
    if (acid) ADD_ALL(r, "acid-burn", "acid-water", "acid-bleach", "acid-hydrogen", "acid-waste");
    if (cathodic || anodic) add_tank(r, anodic);
    if ((acid || cathodic || anodic) && traps_liquid(job)) add(r, "trapped-liquid");
    if ((acid || cathodic) && hard) ADD_ALL(r, "hydrogen-embrittlement", "bake-no-guarantee");
}

static void add_steps(hs_result *r, const hs_job *job) {
    int hard = 0;
    for (size_t i = 0; i < job->steps; i++) {
        const hs_step *step = &job->step[i];
        if (step->kind == HS_STRESS_RELIEVE || step->kind == HS_REHEAT) add_fire(r, job);
        if (step->kind == HS_CARBURISE) add_carburise(r, job, step);
        if (step->kind == HS_COOL && !medium_is(step, "box")) add(r, "hot-metal");
        if (step->kind == HS_QUENCH) add_quench(r, step);
        if (step->kind == HS_STRAIGHTEN && hard) add(r, "straighten-hard");
        if (step->kind == HS_DESCALE) add_descale(r, job, step, hard);
        if (step->kind == HS_TEMPER || step->kind == HS_BAKE) add(r, "hot-metal");
        if (step->kind == HS_QUENCH) hard = 1;
        if (step->kind == HS_STRESS_RELIEVE || step->kind == HS_CARBURISE ||
            step->kind == HS_REHEAT || step->kind == HS_COOL)
            hard = 0;
    }
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

static void add_case(hs_result *r, const hs_job *job) {
    const hs_result_case *hard = &r->hard;
    if (!hard->present) return;
    if (hard->retained_austenite_pct > HS_K_CAUTION_LIMITS_RETAINED_AUSTENITE)
        add(r, "retained-austenite");
    if (hard->surface_carbon_pct > hard->dissolved_pct + HS_K_CAUTION_LIMITS_NETWORK_CARBON)
        add(r, "carbide-network");
    if (cases_meet(r, job)) add(r, "case-both-sides");
}

static void add_faces(hs_result *r, const hs_job *job) {
    int ground = 0, share = 0, assumed = 0;
    for (size_t i = 0; i < job->faces; i++) {
        ground |= job->face[i].stated && job->face[i].finish == HS_GROUND;
        share |= r->face[i].present && hs_face_asks(&job->face[i]) &&
                 r->face[i].share_of_case_pct > 100 * HS_K_PLAN_DOUBT_SHARE_CAUTION;
        assumed |= !job->face[i].stated;
    }
    if (ground) ADD_ALL(r, "grinding-cracks", "grinding-wheel");
    if (share) add(r, "case-share");
    if (assumed) add(r, "face-assumed");
}

void hs_caution_collect(hs_result *result, const hs_job *job) {
    result->cautions = 0;
    add_stock(result, job);
    add_steps(result, job);
    if (result->descale_present && result->descale.bake_s > 0) add(result, "bake-no-guarantee");
    add_case(result, job);
    add_faces(result, job);
    if (result->test_piece.ways > 0) ADD_ALL(result, "etch-acid", "break-hard");
    if (!job->test_piece.stated) add(result, "test-piece");
}
