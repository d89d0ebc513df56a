#include "plan/loss.h"

#include "constants.h"
#include "hardskin/model/decarb.h"
#include "hardskin/model/oxide.h"
#include "hardskin/tables/table.h"

#include <math.h>

static int descaled_between(const hs_job *job, size_t from, size_t to) {
    for (size_t i = from; i < to; i++)
        if (job->step[i].kind == HS_DESCALE) return 1;
    return 0;
}

/* A heat of any path as the hold at its hottest that takes as much. */
static hs_status soft_layer(hs_loss_heat *out, const hs_route_heat *heat, hs_error *err) {
    double temp_K = 0, kp;
    for (size_t i = 0; i < heat->n; i++)
        temp_K = fmax(temp_K, heat->point[i].temp_K);
    hs_status status = hs_oxide_kp(&kp, temp_K, out->surface_pct, err);
    hs_decarb_result rim;
    if (status == HS_OK)
        status = hs_decarb(&rim, temp_K, out->integral_kg2_m4 / kp, out->surface_pct, 1,
                           out->multiplier, err);
    if (status != HS_OK) return status;
    out->rim_m = rim.rim_m;
    out->depth50_m = rim.depth50_m;
    out->depth90_m = rim.depth90_m;
    return HS_OK;
}

static void add_taken(hs_loss *loss, const hs_job *job) {
    const hs_table *table = hs_table_get(HS_TABLE_DESCALE_TAKES);
    for (size_t i = 0; i < job->steps; i++) {
        if (job->step[i].kind != HS_DESCALE) continue;
        size_t row = (size_t)job->step[i].by;
        loss->taken_low_m += hs_table_number(table, row, HS_DESCALE_TAKES_LOW);
        loss->taken_high_m += hs_table_number(table, row, HS_DESCALE_TAKES_HIGH);
    }
}

hs_status hs_loss_make(hs_loss *loss, const hs_job *job, const hs_route *route, double surface_pct,
                       hs_error *err) {
    *loss = (hs_loss){0};
    for (size_t i = 0; i < route->heats; i++) {
        const hs_route_heat *heat = &route->heat[i];
        if (!heat->open) continue;
        hs_loss_heat *out = &loss->heat[loss->n];
        *out = (hs_loss_heat){.low = heat->multiplier_low,
                              .multiplier = heat->multiplier,
                              .high = heat->multiplier_high,
                              .surface_pct = surface_pct,
                              .step = heat->step};
        hs_status status =
            hs_oxide_uptake(&out->integral_kg2_m4, heat->point, heat->n, surface_pct, err);
        if (status == HS_OK) status = soft_layer(out, heat, err);
        if (status != HS_OK) return status;
        if (loss->n > 0) out->knocked_off = descaled_between(job, out[-1].step, out->step);
        loss->n++;
    }
    add_taken(loss, job);
    return HS_OK;
}

static double multiplier_at(const hs_loss_heat *heat, double z) {
    return fmax(0, hs_draw_between(heat->low, heat->multiplier, heat->high, z));
}

/* Squares of the uptake add while the scale stays on; where it is knocked off, the losses add. */
double hs_loss_metal(const hs_loss *loss, size_t steps, const double z[HS_INPUTS]) {
    double factor = hs_draw_factor(HS_K_PLAN_DOUBT_OXIDE_FACTOR, z[HS_IN_OXIDE]);
    double lost = 0, square = 0;
    for (size_t i = 0; i < loss->n && loss->heat[i].step < steps; i++) {
        const hs_loss_heat *heat = &loss->heat[i];
        if (heat->knocked_off) {
            lost += hs_oxide_lost_m(sqrt(square));
            square = 0;
        }
        double m = multiplier_at(heat, z[HS_IN_ATMOSPHERE]);
        square += factor * heat->integral_kg2_m4 * m * m;
    }
    return lost + hs_oxide_lost_m(sqrt(square));
}

double hs_loss_taken(const hs_loss *loss, const double z[HS_INPUTS]) {
    double middle = 0.5 * (loss->taken_low_m + loss->taken_high_m);
    return fmax(0, hs_draw_between(loss->taken_low_m, middle, loss->taken_high_m, z[HS_IN_BLAST]));
}

double hs_loss_standing_m(const hs_loss *loss, size_t steps) {
    double square = 0;
    for (size_t i = 0; i < loss->n && loss->heat[i].step < steps; i++) {
        const hs_loss_heat *heat = &loss->heat[i];
        if (heat->knocked_off) square = 0;
        square += heat->integral_kg2_m4 * heat->multiplier * heat->multiplier;
    }
    return hs_oxide_scale_m(sqrt(square), HS_K_OXIDATION_POROSITY);
}

double hs_loss_mass_kg_m2(const hs_loss *loss) {
    double mass = 0, square = 0;
    for (size_t i = 0; i < loss->n; i++) {
        const hs_loss_heat *heat = &loss->heat[i];
        if (heat->knocked_off) {
            mass += hs_oxide_scale_kg_m2(sqrt(square));
            square = 0;
        }
        square += heat->integral_kg2_m4 * heat->multiplier * heat->multiplier;
    }
    return mass + hs_oxide_scale_kg_m2(sqrt(square));
}

/* Straight between the rim's edge, half and nine tenths of the carbon; beyond, on along the last
 * piece, to at most the depth at which all of it is back on that line. */
static double rim_of(const hs_loss_heat *heat, double carbon_pct) {
    double share = carbon_pct / heat->surface_pct;
    if (share <= 0.5) return heat->rim_m + (heat->depth50_m - heat->rim_m) * share / 0.5;
    double slope = (heat->depth90_m - heat->depth50_m) / 0.4;
    return heat->depth50_m + slope * (fmin(share, 1) - 0.5);
}

double hs_loss_rim(const hs_loss *loss, double carbon_pct, const double z[HS_INPUTS]) {
    double sum = 0;
    for (size_t i = 0; i < loss->n; i++)
        sum += rim_of(&loss->heat[i], carbon_pct);
    return sum * hs_draw_factor(HS_K_PLAN_DOUBT_RIM_FACTOR, z[HS_IN_RIM]);
}
