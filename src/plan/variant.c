#include "plan/variant.h"
#include "plan/variant_bake.h"
#include "plan/variant_part.h"
#include "plan/words.h"

#include "constants.h"
#include "hardskin/tables/table.h"
#include "hardskin/units/format.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

void hs_variant_start(hs_variant *v, const hs_job *job) {
    v->job = *job;
    memcpy(v->step, job->step, job->steps * sizeof *job->step);
    memcpy(v->face, job->face, job->faces * sizeof *job->face);
    v->job.step = v->step;
    v->job.face = v->face;
    memcpy(v->dimension, job->dimension, job->dimensions * sizeof *job->dimension);
    v->job.dimension = v->dimension;
    v->quench = v->relief = 0;
}

static hs_step *last_step(hs_variant *v, hs_step_kind kind) {
    for (size_t i = v->job.steps; i-- > 0;)
        if (v->step[i].kind == kind) return &v->step[i];
    return NULL;
}

static int row_of(hs_table_id id, const char *name) {
    return hs_table_row(hs_table_get(id), 0, name);
}

double hs_variant_soak_s(const hs_job *job) {
    for (size_t i = job->steps; i-- > 0;)
        if (job->step[i].kind == HS_CARBURISE)
            return job->step[i].log_points > 0 ? 0 : job->step[i].hold_s.value;
    return 0;
}

int hs_variant_soak(hs_variant *v, double hold_s) {
    hs_step *step = last_step(v, HS_CARBURISE);
    if (!step || step->log_points > 0) return 0;
    step->hold_s = (hs_span){hold_s, hold_s, hold_s};
    char time[48];
    hs_format_time(time, sizeof time, hold_s, HS_NEAREST);
    snprintf(v->what, sizeof v->what, "longer soak: %s", time);
    snprintf(v->text, sizeof v->text,
             "fire and compound for the extra hours; more retained austenite and coarser grain");
    return 1;
}

int hs_variant_twice(hs_variant *v, double hold_s) {
    hs_step *soak = last_step(v, HS_CARBURISE);
    if (!soak || soak->log_points > 0) return 0;
    size_t from = (size_t)(soak - v->step), n = v->job.steps - from;
    if (v->job.steps + n > HS_MAX_STEPS) return 0;
    memcpy(&v->step[v->job.steps], soak, n * sizeof *soak);
    v->step[v->job.steps].hold_s = (hs_span){hold_s, hold_s, hold_s};
    v->job.steps += n;
    return 1;
}

static int richer_medium(hs_variant *v, int size) {
    (void)size;
    hs_step *step = last_step(v, HS_CARBURISE);
    int row = row_of(HS_TABLE_SURFACE_CARBON, "charcoal with carbonate");
    if (!step || row < 0 || !step->medium || strcmp(step->medium, "charcoal")) return 0;
    const hs_table *t = hs_table_get(HS_TABLE_SURFACE_CARBON);
    step->medium = hs_table_text(t, (size_t)row, 0);
    step->surface_carbon_pct = (hs_span){hs_table_number(t, (size_t)row, HS_SURFACE_CARBON_LOW),
                                         hs_table_number(t, (size_t)row, HS_SURFACE_CARBON_VALUE),
                                         hs_table_number(t, (size_t)row, HS_SURFACE_CARBON_HIGH)};
    snprintf(v->what, sizeof v->what, "pack in charcoal with carbonate");
    snprintf(v->text, sizeof v->text,
             "more carbon at the surface; barium carbonate is poisonous, read its caution");
    return 1;
}

static int wrapped_reheat(hs_variant *v, int size) {
    (void)size;
    int row = row_of(HS_TABLE_ATMOSPHERE, "wrapped"), wrapped = 0;
    if (row < 0) return 0;
    const hs_table *t = hs_table_get(HS_TABLE_ATMOSPHERE);
    for (size_t i = 0; i < v->job.steps; i++) {
        hs_step *step = &v->step[i];
        if (step->kind != HS_REHEAT ||
            hs_table_number(t, step->medium_row, HS_ATMOSPHERE_MULTIPLIER) <=
                hs_table_number(t, (size_t)row, HS_ATMOSPHERE_MULTIPLIER))
            continue;
        step->medium_row = (size_t)row;
        step->medium = hs_table_text(t, (size_t)row, 0);
        step->oxygen = 0; /* was that of the open fire */
        wrapped++;
    }
    if (wrapped == 0) return 0;
    snprintf(v->what, sizeof v->what, "wrap the part for %s",
             wrapped > 1 ? "every reheat" : "the reheat");
    snprintf(v->text, sizeof v->text, "foil or coating; less scale and hardly any soft rim");
    return 1;
}

static int more_even_quench(hs_variant *v, int size) {
    static const double shares[] = {0.75, 0.5, 0.33};
    hs_step *step = last_step(v, HS_QUENCH);
    if (!step) return 0;
    double usual = hs_table_number(hs_table_get(HS_TABLE_QUENCH), step->medium_row,
                                   HS_QUENCH_UNEVEN_REFERENCE);
    step->uneven = shares[size] * (step->uneven >= 0 ? step->uneven : usual);
    if (step->uneven < 0.03) return 0; /* nobody cools a part more evenly than that */
    snprintf(v->what, sizeof v->what, "more even quench: sides within %.0f %%", 100 * step->uneven);
    snprintf(v->text, sizeof v->text,
             "dip upright, edge first, move up and down, more bath; show it on a trial part");
    return 1;
}

static int gentler_quench(hs_variant *v, int size) {
    static const char *const media[] = {"oil", "polymer"};
    hs_step *step = last_step(v, HS_QUENCH);
    int row = row_of(HS_TABLE_QUENCH, media[size]);
    if (!step || row < 0) return 0;
    const hs_table *t = hs_table_get(HS_TABLE_QUENCH);
    if (hs_table_number(t, step->medium_row, HS_QUENCH_SIGMA_BETA) <=
        hs_table_number(t, (size_t)row, HS_QUENCH_SIGMA_BETA))
        return 0;
    step->medium_row = (size_t)row;
    step->medium = hs_table_text(t, (size_t)row, 0);
    snprintf(v->what, sizeof v->what, "gentler quench: %s", media[size]);
    snprintf(v->text, sizeof v->text,
             size == 0 ? "oil can flash and burn, read its caution"
                       : "between oil and water; its strength must be kept right");
    v->quench = 1;
    return 1;
}

static int stronger_quench(hs_variant *v, int size) {
    static const char *const media[] = {"polymer", "water", "brine"};
    hs_step *step = last_step(v, HS_QUENCH);
    int row = row_of(HS_TABLE_QUENCH, media[size]);
    if (!step || row < 0) return 0;
    const hs_table *t = hs_table_get(HS_TABLE_QUENCH);
    if (hs_table_number(t, step->medium_row, HS_QUENCH_GROSSMANN_HIGH) >=
        hs_table_number(t, (size_t)row, HS_QUENCH_GROSSMANN_HIGH))
        return 0;
    int straighter = hs_table_number(t, step->medium_row, HS_QUENCH_SIGMA_BETA) >
                     hs_table_number(t, (size_t)row, HS_QUENCH_SIGMA_BETA);
    int moved = !strcmp(hs_table_text(t, step->medium_row, 0), "still water") && size == 1;
    step->medium_row = (size_t)row;
    step->medium = hs_table_text(t, (size_t)row, 0);
    snprintf(v->what, sizeof v->what,
             moved ? "move the part in the %s, do not hold it still" : "stronger quench: %s",
             media[size]);
    snprintf(v->text, sizeof v->text,
             straighter
                 ? "it breaks the film of steam and so warps less; it cools harder and may crack "
                   "the part at sharp corners and holes"
                 : "warps more and may crack the part at sharp corners and holes");
    v->quench = 1;
    return 1;
}

static int other_steel(hs_variant *v, int size) {
    /* rising hardenability, of what a dealer in the shop's sizes has */
    static const char *const by_stock[2][3] = {{"16MnCr5", "20MnCr5", "18CrNiMo7-6"},
                                               {"8620", "8620", "9310"}};
    const char *const *steels = by_stock[v->job.shop.stock == HS_STOCK_INCH];
    if (!strcmp(v->job.part.steel.name, steels[size]) ||
        hs_steel_find(&v->job.part.steel, steels[size], NULL) != HS_OK)
        return 0;
    snprintf(v->what, sizeof v->what, "another steel: %s", steels[size]);
    snprintf(v->text, sizeof v->text,
             "alloyed: hardens in a gentler quench; costs more, and its "
             "case is known with more doubt");
    v->quench = 1;
    return 1;
}

static int straighten(hs_variant *v, int size) {
    static const double left_m[] = {0.15e-3, 0.10e-3, 0.05e-3};
    hs_step *quench = last_step(v, HS_QUENCH);
    if (!quench || last_step(v, HS_STRAIGHTEN) || v->job.steps == HS_MAX_STEPS) return 0;
    if (v->job.part.form == HS_RING) return 0;
    v->step[v->job.steps] = (hs_step){.kind = HS_STRAIGHTEN, .left_m = left_m[size], .pointer = ""};
    v->job.steps++;
    snprintf(v->what, sizeof v->what, "straighten to a bow of %s",
             hs_word_length(left_m[size], v->job.inch_first, HS_DOWN).text);
    snprintf(v->text, sizeof v->text,
             "warm, below the temper, then temper again; "
             "a hard case can crack under the press: test for cracks");
    return 1;
}

const hs_change *hs_changes(size_t *n) {
    static const hs_change changes[] = {
        {wrapped_reheat, 0, 1, 0, 0},
        {hs_variant_stress_relief, 0, 1, 0, 0},
        {hs_variant_remade_centres, 0, 1, 0, 0},
        {hs_variant_shim, 0, 1, 0, 0},
        {hs_variant_pull_flat, 0, 1, 0, 0},
        {hs_variant_cooler_bake, 0, 1, 0, 0},
        {hs_variant_no_acid, 0, 1, 0, 0},
        {hs_variant_cooler_temper, 0, 3, 0, 0},
        {more_even_quench, 0, 3, 0, 0},
        {hs_variant_finish_end, 0, 2, 0, 0},
        {hs_variant_narrower_tolerance, 0, 3, 0, 0},
        {gentler_quench, 0, 2, 0, 1},
        {richer_medium, 1, 1, 0, 0},
        {straighten, 0, 3, 0, 0},
        {hs_variant_mask, 1, 1, 0, 0},
        {hs_variant_relief, 1, 1, 0, 0},
        {hs_variant_less_case, 0, 4, 0, 0},
        {stronger_quench, 0, 3, 1, 1},
        {other_steel, 1, 3, 0, 1},
    };
    *n = sizeof changes / sizeof *changes;
    return changes;
}
