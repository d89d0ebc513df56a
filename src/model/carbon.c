/* The march through a heat: steps of TR-BDF2 (carbon_step.c) on the clock of diffusion. */
#include "hardskin/model/carbon.h"

#include "model/carbon_check.h"
#include "model/carbon_step.h"

#include <math.h>
#include <string.h>

static const double STEP_ERROR_PCT = 3e-4; /* of one step, on the usual mesh */
static const double SETTLED = 0.01;        /* of that error: where the iteration on D(C) ends */
static const double SHORTEST = 1e-12;      /* of the heat; below this the march has failed */
static const double MOST_GROWTH = 2.5, LEAST_GROWTH = 0.2, MARGIN = 0.85;

/* Steps of a given number, with ends at whole (k/N)^2: a profile that starts with a jump grows with
 * the root of the clock. */
static hs_status march_fixed(hs_carbon_march *m, double whole_m2, hs_error *err) {
    size_t steps = m->heat->steps;
    for (size_t k = 1; k <= steps; k++) {
        double share = (double)k / (double)steps, h = whole_m2 * share * share - m->place_m2;
        hs_status status =
            k == 1 ? hs_carbon_step_first(m, h, err) : hs_carbon_step(m, NULL, h, err);
        if (status != HS_OK) return status;
        hs_carbon_step_accept(m, h);
    }
    return HS_OK;
}

/* The error of a step goes with its cube, that of the mesh with the square of the cells: bound like
 * this both go down together when the mesh is made finer. */
static double step_error(const hs_carbon_mesh *mesh) {
    double finer = (double)HS_CARBON_CELLS_USUAL / (double)mesh->n;
    return STEP_ERROR_PCT * finer * finer * finer;
}

/* Carbon cannot have gone farther than through the end cell in the first step. */
static double first_length(const hs_carbon_march *m, double whole_m2) {
    const hs_carbon_mesh *mesh = m->mesh;
    double cell = mesh->edge_m[1];
    if (m->heat->side[1].kind != HS_SIDE_CLOSED)
        cell = fmin(cell, mesh->edge_m[mesh->n] - mesh->edge_m[mesh->n - 1]);
    return fmin(0.1 * cell * cell, 0.1 * whole_m2);
}

/* Steps as long as their local error allows. */
static hs_status march_adaptive(hs_carbon_march *m, double whole_m2, hs_error *err) {
    double bound = step_error(m->mesh), h = first_length(m, whole_m2);
    hs_status status = hs_carbon_step_first(m, h, err);
    if (status == HS_OK) hs_carbon_step_accept(m, h);
    while (status == HS_OK && m->place_m2 < whole_m2 * (1 - SHORTEST)) {
        const hs_carbon_march start = *m;
        double error = 0, left = whole_m2 - m->place_m2;
        if (h >= left)
            h = left;
        else if (1.5 * h > left)
            h = 0.5 * left;
        status = hs_carbon_step(m, &error, h, err);
        if (status != HS_OK) return status;
        double growth = fmin(MOST_GROWTH, fmax(LEAST_GROWTH, MARGIN * cbrt(bound / error)));
        if (error <= bound)
            hs_carbon_step_accept(m, h);
        else
            *m = start;
        h *= growth;
        if (!(h > SHORTEST * SHORTEST * whole_m2) || m->steps > HS_CARBON_MOST_STEPS)
            return hs_fail(err, HS_E_CONVERGE, "fewer cells",
                           "the steps of the heat do not settle");
    }
    return status;
}

static void report(hs_carbon_uptake *uptake, const hs_carbon_march *m, double before,
                   double after) {
    const hs_carbon_mesh *mesh = m->mesh;
    double area1 = mesh->area[mesh->n];
    double error = fabs(after - before - m->gained[0] - m->gained[1]);
    *uptake = (hs_carbon_uptake){
        .gained_pct_m = {m->gained[0] / mesh->area[0], area1 > 0 ? m->gained[1] / area1 : 0},
        .surface_pct = {m->surface_pct[0], m->surface_pct[1]},
        .balance_error = error > 0 ? error / fmax(before, after) : 0,
        .steps = m->steps};
}

hs_status hs_carbon_run(double *carbon_pct, hs_carbon_uptake *uptake, const hs_carbon_mesh *mesh,
                        const hs_heat *heat, const hs_diffusivity *d, hs_carbon_work *work,
                        hs_error *err) {
    double high = 0;
    hs_status status = hs_carbon_check(&high, carbon_pct, mesh, heat, d, err);
    if (status != HS_OK) return status;
    hs_carbon_march m = {.mesh = mesh, .heat = heat, .d = d, .work = work};
    m.settled_pct = SETTLED * step_error(mesh);
    m.surface_pct[0] = carbon_pct[0];
    m.surface_pct[1] = carbon_pct[mesh->n - 1];
    memcpy(work->old, carbon_pct, mesh->n * sizeof *carbon_pct);
    double whole = hs_carbon_spread(heat, d, high);
    if (whole > 0) {
        hs_carbon_clock_start(&m.clock, heat, d, high);
        status = heat->steps ? march_fixed(&m, whole, err) : march_adaptive(&m, whole, err);
        if (status != HS_OK) return status;
    }
    if (uptake)
        report(uptake, &m, hs_carbon_content(mesh, carbon_pct), hs_carbon_content(mesh, work->old));
    memcpy(carbon_pct, work->old, mesh->n * sizeof *carbon_pct);
    return HS_OK;
}
