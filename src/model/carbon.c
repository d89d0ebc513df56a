/* TR-BDF2 (Bank et al., IEEE Trans. CAD 4 (1985) 436; Hosea and Shampine, Appl. Num. Math. 20
 * (1996) 21): a trapezoidal stage to GAMMA of the step, then a backward-difference stage to its
 * end; both have the same weight on the new level. The first step of a heat is backward Euler,
 * because the flux at time zero has no bound there. */
#include "hardskin/model/carbon.h"

#include "constants.h"
#include "model/carbon_stage.h"

#include <math.h>
#include <string.h>

static const double GAMMA = 0.585786437626904951;   /* 2 - sqrt 2 */
static const double WEIGHT = 0.292893218813452476;  /* 1 - sqrt 1/2, of the new level */
static const double EARLIER = 0.353553390593273762; /* sqrt 2 / 4, of the two levels before it */
static const size_t MOST_STEPS = 10000;

static hs_status check_side(const hs_side *side, hs_error *err) {
    if (side->kind == HS_SIDE_CLOSED) return HS_OK;
    if (!(side->carbon_pct >= 0 && side->carbon_pct < 6.67))
        return hs_fail(err, HS_E_IMPOSSIBLE, "0 to 2 %", "a surface cannot hold %g %% of carbon",
                       side->carbon_pct);
    if (side->kind == HS_SIDE_TRANSFER &&
        !(side->transfer_m_s >= 0 && isfinite(side->transfer_m_s)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "1e-8 to 1e-6 m/s is usual",
                       "%g m/s is no surface transfer", side->transfer_m_s);
    return HS_OK;
}

static hs_status check_path(double *hottest_K, const hs_heat *heat, hs_error *err) {
    if (heat->n < 2 || heat->steps > MOST_STEPS)
        return hs_fail(err, HS_E_IMPOSSIBLE, "two points or more",
                       "a heat of %zu points in %zu steps is none", heat->n, heat->steps);
    *hottest_K = heat->point[0].temp_K;
    for (size_t i = 1; i < heat->n; i++) {
        if (!(heat->point[i].time_s >= heat->point[i - 1].time_s))
            return hs_fail(err, HS_E_IMPOSSIBLE, "put the log in the order of time",
                           "time runs back at point %zu of the heat", i + 1);
        *hottest_K = fmax(*hottest_K, heat->point[i].temp_K);
    }
    return HS_OK;
}

static hs_status check(double *carbon_high_pct, const double *carbon_pct,
                       const hs_carbon_mesh *mesh, const hs_heat *heat, const hs_diffusivity *d,
                       hs_error *err) {
    double hottest_K = 0, high = 0;
    hs_status status = check_path(&hottest_K, heat, err);
    for (int j = 0; j < 2 && status == HS_OK; j++) {
        status = check_side(&heat->side[j], err);
        if (heat->side[j].kind != HS_SIDE_CLOSED) high = fmax(high, heat->side[j].carbon_pct);
    }
    if (status != HS_OK) return status;
    if (heat->side[1].kind != HS_SIDE_CLOSED && (mesh->cut || !(mesh->area[mesh->n] > 0)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "close side 2, or mesh the whole section",
                       "carbon cannot pass a far side that lies inside the part");
    if (heat->cap_at_acm && hottest_K >= HS_K_AUSTENITE_COLD) {
        double cap = hs_acm_pct(hottest_K);
        if (isnan(cap))
            return hs_fail(err, HS_E_RANGE, "740 to 1050 C", "no A_cm line is known at %g C",
                           hottest_K - HS_K_PHYSICAL_ZERO_CELSIUS);
        high = fmin(high, cap);
    }
    for (size_t i = 0; i < mesh->n; i++) {
        if (!(carbon_pct[i] >= 0))
            return hs_fail(err, HS_E_IMPOSSIBLE, "0 to 2 %", "%g %% of carbon at %g m",
                           carbon_pct[i], mesh->centre_m[i]);
        high = fmax(high, carbon_pct[i]);
    }
    *carbon_high_pct = high;
    if (hottest_K < HS_K_AUSTENITE_COLD && d->model != HS_D_CONSTANT) return HS_OK;
    return hs_diffusivity_check(d, high, hottest_K, hottest_K, err);
}

/* First step: backward Euler over h. */
static hs_status first_step(hs_carbon_march *m, double gained[2], double h, hs_error *err) {
    hs_carbon_work *w = m->work;
    size_t n = m->mesh->n;
    memcpy(w->base, w->old, n * sizeof *w->base);
    memcpy(w->now, w->old, n * sizeof *w->now);
    hs_carbon_stage_place(m, h);
    hs_status status = hs_carbon_stage_solve(m, h, err);
    for (size_t i = 0; i < n; i++)
        w->slope[i] = (w->now[i] - w->base[i]) / h;
    for (int j = 0; j < 2; j++)
        gained[j] += h * m->flux[j];
    return status;
}

/* One TR-BDF2 step from s over h; the step before it was `last` long. */
static hs_status step(hs_carbon_march *m, double gained[2], double s, double h, double last,
                      hs_error *err) {
    hs_carbon_work *w = m->work;
    size_t n = m->mesh->n;
    double weight = WEIGHT * h;
    double flux0[2] = {m->flux[0], m->flux[1]};
    for (size_t i = 0; i < n; i++) {
        w->base[i] = w->old[i] + weight * w->slope[i];
        w->now[i] = w->old[i] + GAMMA * h / last * (w->old[i] - w->before[i]);
    }
    hs_carbon_stage_place(m, s + GAMMA * h);
    hs_status status = hs_carbon_stage_solve(m, weight, err);
    if (status != HS_OK) return status;
    double flux1[2] = {m->flux[0], m->flux[1]};
    for (size_t i = 0; i < n; i++) {
        double rise = w->now[i] - w->old[i], slope1 = (w->now[i] - w->base[i]) / weight;
        w->base[i] = w->old[i] + EARLIER * h * (w->slope[i] + slope1);
        w->now[i] = w->old[i] + rise / GAMMA;
    }
    hs_carbon_stage_place(m, s + h);
    status = hs_carbon_stage_solve(m, weight, err);
    for (size_t i = 0; i < n; i++)
        w->slope[i] = (w->now[i] - w->base[i]) / weight;
    for (int j = 0; j < 2; j++)
        gained[j] += h * (EARLIER * (flux0[j] + flux1[j]) + WEIGHT * m->flux[j]);
    return status;
}

/* Steps whose ends lie at S (k/N)^2: a profile that starts with a jump grows with the root of s. */
static hs_status march_heat(hs_carbon_march *m, double gained[2], double whole, hs_error *err) {
    hs_carbon_work *w = m->work;
    size_t n = m->mesh->n, steps = m->heat->steps ? m->heat->steps : HS_CARBON_STEPS_USUAL;
    double s = 0, last = 0;
    for (size_t k = 1; k <= steps; k++) {
        double share = (double)k / (double)steps, end = whole * share * share;
        hs_status status =
            k == 1 ? first_step(m, gained, end - s, err) : step(m, gained, s, end - s, last, err);
        if (status != HS_OK) return status;
        memcpy(w->before, w->old, n * sizeof *w->old);
        memcpy(w->old, w->now, n * sizeof *w->old);
        last = end - s;
        s = end;
    }
    return HS_OK;
}

static void report(hs_carbon_uptake *uptake, const hs_carbon_march *m, const double gained[2],
                   double before, double after) {
    const hs_carbon_mesh *mesh = m->mesh;
    double area1 = mesh->area[mesh->n];
    double error = fabs(after - before - gained[0] - gained[1]);
    *uptake = (hs_carbon_uptake){
        .gained_pct_m = {gained[0] / mesh->area[0], area1 > 0 ? gained[1] / area1 : 0},
        .surface_pct = {m->surface_pct[0], m->surface_pct[1]},
        .balance_error = error > 0 ? error / fmax(before, after) : 0};
}

hs_status hs_carbon_run(double *carbon_pct, hs_carbon_uptake *uptake, const hs_carbon_mesh *mesh,
                        const hs_heat *heat, const hs_diffusivity *d, hs_carbon_work *work,
                        hs_error *err) {
    double high = 0, gained[2] = {0, 0};
    hs_status status = check(&high, carbon_pct, mesh, heat, d, err);
    if (status != HS_OK) return status;
    hs_carbon_march m = {.mesh = mesh, .heat = heat, .d = d, .work = work};
    m.surface_pct[0] = carbon_pct[0];
    m.surface_pct[1] = carbon_pct[mesh->n - 1];
    memcpy(work->old, carbon_pct, mesh->n * sizeof *carbon_pct);
    double whole = hs_carbon_spread(heat, d, high);
    if (whole > 0) {
        hs_carbon_clock_start(&m.clock, heat, d, high);
        status = march_heat(&m, gained, whole, err);
        if (status != HS_OK) return status;
    }
    if (uptake)
        report(uptake, &m, gained, hs_carbon_content(mesh, carbon_pct),
               hs_carbon_content(mesh, work->old));
    memcpy(carbon_pct, work->old, mesh->n * sizeof *carbon_pct);
    return HS_OK;
}
