#include "plan/fire.h"

#include "constants.h"
#include "hardskin/model/pack.h"
#include "hardskin/model/quench_oil.h"
#include "hardskin/tables/table.h"
#include "plan/cool.h"
#include "plan/packed.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

int hs_fire_packs(const hs_step *step) {
    if (step->kind != HS_CARBURISE) return 0;
    return step->box_m > 0 || (step->medium && step->medium[0]);
}

static double hottest_K(const hs_step *step) {
    double best = step->temp_K.value;
    for (size_t i = 0; i < step->log_points; i++)
        best = fmax(best, step->log[i].temp_K);
    return best;
}

/* How many parts lie side by side in a length, compound between them and to both walls. */
static double abreast(double inner_m, double part_m) {
    double room_m = inner_m - 2 * HS_K_PACK_COVER_LEAST + HS_K_BOX_HEAT_BETWEEN;
    return fmax(1, floor(room_m / (part_m + HS_K_BOX_HEAT_BETWEEN) + 1e-9));
}

/* Parts lying flat, their least size across the least of the box, as many side by side and above
 * each other as it takes, the rest end to end. */
static void lay(hs_result_pack *out, const double part_m[3], size_t parts) {
    double a_slice = abreast(out->box_m[0], part_m[0]) * abreast(out->box_m[1], part_m[1]);
    double slices = ceil((double)parts / a_slice);
    out->cover_m = (out->box_m[0] - part_m[0]) / 2;
    out->thin_cover = out->cover_m < HS_K_PACK_COVER_LEAST - 1e-9;
    out->long_m = slices * (part_m[2] + HS_K_BOX_HEAT_BETWEEN) - HS_K_BOX_HEAT_BETWEEN +
                  2 * HS_K_PACK_COVER_LEAST;
}

static int same_box(const hs_result_pack *a, const hs_result_pack *b) {
    return fabs(a->box_m[0] - b->box_m[0]) < 1e-9 && fabs(a->temp_K - b->temp_K) < 1e-9;
}

static double density_end(int column) {
    const hs_table *t = hs_table_get(HS_TABLE_PACK);
    int row = hs_table_row(t, HS_PACK_CONSTANT, "compound_density");
    return row < 0 ? HS_K_PACK_COMPOUND_DENSITY : hs_table_number(t, (size_t)row, (size_t)column);
}

static void take(hs_result_pack *out, const hs_pack_plan *plan) {
    out->compound_m3 = plan->compound_m3;
    out->compound_kg = plan->compound_kg;
    out->compound_low_kg = plan->compound_m3 * density_end(HS_PACK_LOW);
    out->compound_high_kg = plan->compound_m3 * density_end(HS_PACK_HIGH);
    out->steam_m3 = plan->gas_m3;
    out->water_gas_m3 = plan->water_gas_m3;
    out->heating_m3 = plan->heating_m3;
    out->sealed_Pa = plan->sealed_Pa;
    out->co_m3 = plan->co_m3;
    out->co_room_m3 = plan->co_m3 / HS_K_CARBON_MONOXIDE_AT_ONCE;
}

static hs_status pack_step(hs_result *r, const hs_job *job, size_t i, hs_error *err) {
    const hs_step *step = &job->step[i];
    double part_m[3];
    hs_packed_part_sizes(part_m, &job->part);
    double box_m = step->box_m > 0 ? step->box_m : part_m[0] + 2 * HS_K_PACK_COVER_LEAST;
    hs_result_pack out = {.step = i,
                          .box_given = step->box_m > 0,
                          .temp_K = hottest_K(step),
                          .heat_up_s = r->step[i].heat_up_s,
                          .heat_up_low_s = r->step[i].heat_up_low_s,
                          .heat_up_high_s = r->step[i].heat_up_high_s};
    hs_box_load load;
    hs_packed_load(&load, job, box_m);
    memcpy(out.box_m, load.size_m, sizeof out.box_m);
    out.moisture = load.moisture;
    for (size_t k = 0; k < r->packs; k++)
        if (same_box(&r->pack[k], &out)) return HS_OK;
    if (r->packs == HS_MAX_PACKS) return HS_OK;
    lay(&out, part_m, job->part.quantity);
    if (!out.box_given) out.box_m[2] = fmax(out.box_m[2], out.long_m);
    const double steel_m3[3] = {load.steel_m3, 0, 0};
    hs_pack_plan plan;
    hs_status status = hs_pack(&plan, out.box_m, steel_m3, out.moisture, out.temp_K, err);
    if (status != HS_OK) return status;
    take(&out, &plan);
    if (!(out.heat_up_s > 0)) out.heat_up_s = plan.heat_up_s; /* the planning fit */
    r->pack[r->packs++] = out;
    return HS_OK;
}

/* The last quench in oil takes what heat the step before it left in the part. */
static void plan_oil(hs_result_oil *out, const hs_job *job) {
    double from_K = 0, part_kg = hs_bulk_of(&job->part).volume_m3 * HS_K_BOX_HEAT_STEEL_DENSITY;
    *out = (hs_result_oil){0};
    for (size_t i = 0; i < job->steps; i++) {
        const hs_step *step = &job->step[i];
        hs_quench_oil oil;
        if (step->kind == HS_CARBURISE || step->kind == HS_REHEAT) from_K = hottest_K(step);
        if (step->kind != HS_QUENCH || strcmp(step->medium, "oil") != 0) continue;
        if (hs_quench_oil_for(&oil, part_kg, from_K, NULL) != HS_OK) continue;
        *out = (hs_result_oil){.present = 1,
                               .part_kg = part_kg,
                               .part_m3 = oil.volume_m3,
                               .all_m3 = oil.volume_m3 * (double)job->part.quantity,
                               .rise_K = oil.rise_K};
    }
}

hs_status hs_fire_plan(hs_result *result, const hs_job *job, hs_error *err) {
    result->packs = 0;
    for (size_t i = 0; i < job->steps; i++) {
        if (!hs_fire_packs(&job->step[i])) continue;
        hs_status status = pack_step(result, job, i, err);
        if (status != HS_OK && err && job->step[i].pointer)
            snprintf(err->pointer, sizeof err->pointer, "%s", job->step[i].pointer);
        if (status != HS_OK) return status;
    }
    plan_oil(&result->oil, job);
    return HS_OK;
}
