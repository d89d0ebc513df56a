#include "plan/loss.h"

#include "constants.h"
#include "hardskin/model/decarb.h"
#include "hardskin/model/oxide.h"
#include "hardskin/tables/table.h"
#include "plan/place.h"

#include <math.h>
#include <string.h>

static int washes(hs_descale_method by) {
    return by == HS_BY_ACID || by == HS_BY_ELECTROLYSIS || by == HS_BY_ANODIC_ELECTROLYSIS;
}

static void descaled_between(hs_loss_heat *out, const hs_job *job, size_t from) {
    for (size_t i = from; i < out->step; i++) {
        if (job->step[i].kind != HS_DESCALE) continue;
        out->knocked_off = 1;
        out->washed |= washes(job->step[i].by);
    }
}

/* Oxygen taken up by the end of a heat that found W on the part. */
static double grown(const hs_loss_heat *heat, double W, double rate, double film, double m) {
    if (!heat->film) return hs_oxide_grown(W, rate * heat->integral_kg2_m4 * m * m, 0);
    for (int k = 0; k < HS_OXIDE_PIECES; k++)
        W = hs_oxide_grown(W, rate * heat->piece[k].integral_kg2_m4 * m * m,
                           rate / film * heat->piece[k].slowing_kg_m2);
    return W;
}

/* Share of the parabolic uptake that the oxygen in the gas lets through. */
static double let_through(const hs_loss_heat *heat) {
    double whole = sqrt(heat->integral_kg2_m4);
    return whole > 0 ? grown(heat, 0, 1, 1, 1) / whole : 1;
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
                           out->multiplier * let_through(out), err);
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
        double oxygen = job->step[heat->step].oxygen;
        out->film = oxygen > 0;
        if (status == HS_OK && out->film)
            status =
                hs_oxide_film_pieces(out->piece, heat->point, heat->n, surface_pct, oxygen, err);
        if (status == HS_OK) status = soft_layer(out, heat, err);
        if (status != HS_OK) return hs_at_step(status, &job->step[heat->step], "at", err);
        if (loss->n > 0) descaled_between(out, job, out[-1].step);
        loss->n++;
    }
    add_taken(loss, job);
    return HS_OK;
}

void hs_loss_since(hs_loss *loss, const hs_loss *first) {
    size_t gone = first->n < loss->n ? first->n : loss->n;
    loss->n -= gone;
    memmove(loss->heat, loss->heat + gone, loss->n * sizeof *loss->heat);
    loss->taken_low_m -= first->taken_low_m;
    loss->taken_high_m -= first->taken_high_m;
}

/* No flame takes more than air does. */
static double multiplier_at(const hs_loss_heat *heat, double z) {
    return fmin(1, fmax(0, hs_draw_between(heat->low, heat->multiplier, heat->high, z)));
}

static double grown_at(const hs_loss_heat *heat, double W, const double z[HS_INPUTS]) {
    double rate = hs_draw_factor(HS_K_PLAN_DOUBT_OXIDE_FACTOR, z[HS_IN_OXIDE]);
    double film = hs_draw_factor(HS_K_OXIDATION_FILM_BAND, z[HS_IN_ATMOSPHERE]);
    return grown(heat, W, rate, film, multiplier_at(heat, z[HS_IN_ATMOSPHERE]));
}

/* Over the heats of the first `steps` steps: oxygen in the scale that was knocked off, and in what
 * stands. While the scale stays on it grows on; where it is knocked off, the losses add. */
typedef struct uptake {
    double off, on;
} uptake;

static uptake taken_up(const hs_loss *loss, size_t steps, const double z[HS_INPUTS]) {
    uptake sum = {0, 0};
    for (size_t i = 0; i < loss->n && loss->heat[i].step < steps; i++) {
        if (loss->heat[i].knocked_off) {
            sum.off += sum.on;
            sum.on = 0;
        }
        sum.on = grown_at(&loss->heat[i], sum.on, z);
    }
    return sum;
}

double hs_loss_metal(const hs_loss *loss, size_t steps, const double z[HS_INPUTS]) {
    uptake sum = taken_up(loss, steps, z);
    return hs_oxide_lost_m(sum.off) + hs_oxide_lost_m(sum.on);
}

hs_loss_wall hs_loss_in_hole(const hs_loss *loss, const double z[HS_INPUTS]) {
    double off = 0, on = 0;
    hs_loss_wall wall = {0};
    for (size_t i = 0; i < loss->n; i++) {
        if (loss->heat[i].washed) {
            off += on;
            on = 0;
        }
        on = grown_at(&loss->heat[i], on, z);
        if (on < wall.W_kg_m2) continue;
        wall.W_kg_m2 = on;
        wall.lost_m = hs_oxide_lost_m(off + on);
    }
    wall.in_all_m = hs_oxide_lost_m(off + on);
    return wall;
}

double hs_loss_taken(const hs_loss *loss, const double z[HS_INPUTS]) {
    double middle = 0.5 * (loss->taken_low_m + loss->taken_high_m);
    return fmax(0, hs_draw_between(loss->taken_low_m, middle, loss->taken_high_m, z[HS_IN_BLAST]));
}

static const double middle[HS_INPUTS] = {0};

double hs_loss_standing_m(const hs_loss *loss, size_t steps) {
    return hs_oxide_scale_m(taken_up(loss, steps, middle).on, HS_K_OXIDATION_POROSITY);
}

double hs_loss_mass_kg_m2(const hs_loss *loss) {
    uptake sum = taken_up(loss, HS_MAX_STEPS, middle);
    return hs_oxide_scale_kg_m2(sum.off + sum.on);
}

hs_rust hs_loss_rust_at(const hs_job *job, size_t step) {
    for (size_t i = 0; i < step; i++) {
        hs_step_kind kind = job->step[i].kind;
        if (kind == HS_DESCALE || kind == HS_CARBURISE || kind == HS_REHEAT) return HS_NO_RUST;
    }
    return job->part.rust;
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
