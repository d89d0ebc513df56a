/* What the open heats take, in all, heat by heat, and in holes. */
#include "plan/fill.h"

#include "base/num.h"
#include "constants.h"
#include "hardskin/model/oxide.h"
#include "hardskin/tables/table.h"
#include "plan/cool.h"

#include <math.h>

static const double middle[HS_INPUTS] = {0};
static const double bound_95 = 1.959963984540054; /* standard normal quantile of .975 */

/* Rate and atmosphere both at one end of their band. */
static void at_end(double z[HS_INPUTS], double side) {
    for (int k = 0; k < HS_INPUTS; k++)
        z[k] = 0;
    z[HS_IN_OXIDE] = z[HS_IN_ATMOSPHERE] = side * bound_95;
}

static double porosity_most(void) {
    const hs_table *t = hs_table_get(HS_TABLE_OXIDATION);
    int row = hs_table_row(t, HS_OXIDATION_CONSTANT, "porosity");
    return row < 0 ? HS_K_OXIDATION_POROSITY : hs_table_number(t, (size_t)row, HS_OXIDATION_HIGH);
}

/* A heat by itself: a loss of one heat. */
static void fill_heat(hs_result_heat *out, const hs_loss *loss, size_t i) {
    double low[HS_INPUTS], high[HS_INPUTS];
    hs_loss alone = {.n = 1};
    at_end(low, -1);
    at_end(high, 1);
    alone.heat[0] = loss->heat[i];
    *out = (hs_result_heat){.step = alone.heat[0].step,
                            .lost_m = hs_loss_metal(&alone, HS_MAX_STEPS, middle),
                            .lost_low_m = hs_loss_metal(&alone, HS_MAX_STEPS, low),
                            .lost_high_m = hs_loss_metal(&alone, HS_MAX_STEPS, high),
                            .scale_m = hs_loss_standing_m(loss, alone.heat[0].step + 1),
                            .soft_rim_m = alone.heat[0].rim_m,
                            .depth90_m = alone.heat[0].depth90_m,
                            .film = alone.heat[0].film};
}

/* Scale stands inward of the wall, which has gone back under it. */
static double closes_m(const hs_loss_wall *wall, double porosity) {
    return hs_oxide_scale_m(wall->W_kg_m2, porosity) - wall->lost_m;
}

static void fill_hole(hs_result_hole *out, const hs_feature *f, const hs_loss *loss) {
    double high[HS_INPUTS];
    at_end(high, 1);
    hs_loss_wall usual = hs_loss_in_hole(loss, middle), most = hs_loss_in_hole(loss, high);
    double in_m = closes_m(&usual, HS_K_OXIDATION_POROSITY);
    double in_most_m = closes_m(&most, porosity_most());
    out->open_m = fmax(0, f->size_m - 2 * in_m);
    out->open_least_m = fmax(0, f->size_m - 2 * in_most_m);
    out->bare_m = f->size_m + 2 * usual.in_all_m;
    out->bare_most_m = f->size_m + 2 * most.in_all_m;
    out->closes = out->open_least_m <= (1 - HS_K_OXIDATION_HOLE_CLOSED_SHARE) * f->size_m;
    if (!f->thread) return;
    out->thread_m = HS_K_OXIDATION_THREAD_CLOSES * in_m;
    out->thread_most_m = HS_K_OXIDATION_THREAD_CLOSES * in_most_m;
}

static void fill_holes(hs_result_scale *out, const hs_job *job, const hs_loss *loss) {
    for (size_t i = 0; loss->n > 0 && i < job->features; i++) {
        if (job->feature[i].kind == HS_STEP_FEATURE) continue;
        hs_result_hole *hole = &out->hole[out->holes++];
        hole->feature = i;
        fill_hole(hole, &job->feature[i], loss);
    }
}

void hs_fill_scale(hs_result_scale *out, const hs_chain *chain, const hs_draws *draws,
                   double *column) {
    double q = chain->job->shop.confidence;
    size_t steps = chain->job->steps;
    const hs_loss *loss = &chain->loss;
    for (size_t i = 0; i < draws->n; i++)
        column[i] = hs_loss_metal(loss, steps, draws->z[i]) + hs_loss_taken(loss, draws->z[i]);
    *out = (hs_result_scale){
        .lost_low_m = hs_quantile_of(column, draws->n, 1 - q),
        .lost_high_m = hs_quantile_of(column, draws->n, q),
        .lost_m = hs_loss_metal(loss, steps, middle) + hs_loss_taken(loss, middle),
        .scale_m = hs_loss_standing_m(loss, steps),
        .mass_kg = hs_loss_mass_kg_m2(loss) * hs_bulk_of(&chain->job->part).surface_m2};
    for (size_t i = 0; i < loss->n; i++)
        fill_heat(&out->heat[out->heats++], loss, i);
    fill_holes(out, chain->job, loss);
}
