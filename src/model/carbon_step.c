/* TR-BDF2 (Bank et al., IEEE Trans. CAD 4 (1985) 436; Hosea and Shampine, Appl. Num. Math. 20
 * (1996) 21): a trapezoidal stage to GAMMA of the step, then a backward-difference stage to its
 * end; both have the same weight on the new level. The first step of a heat is backward Euler,
 * because the flux at time zero has no bound there. */
#include "model/carbon_step.h"

#include "base/num.h"

#include <math.h>
#include <string.h>

static const double GAMMA = 0.585786437626904951;   /* 2 - sqrt 2 */
static const double WEIGHT = 0.292893218813452476;  /* 1 - sqrt 1/2, of the new level */
static const double EARLIER = 0.353553390593273762; /* sqrt 2 / 4, of the two levels before it */

hs_status hs_carbon_step_first(hs_carbon_march *m, double h, hs_error *err) {
    hs_carbon_work *w = m->work;
    size_t n = m->mesh->n;
    memcpy(w->base, w->old, n * sizeof *w->base);
    memcpy(w->now, w->old, n * sizeof *w->now);
    hs_carbon_stage_place(m, m->place_m2 + h);
    hs_status status = hs_carbon_stage_solve(m, h, err);
    for (size_t i = 0; i < n; i++)
        w->late[i] = (w->now[i] - w->base[i]) / h;
    for (int j = 0; j < 2; j++)
        m->gained[j] += h * m->flux[j];
    return status;
}

/* The embedded estimate needs the slopes at the start, GAMMA and the end; divided by them it is the
 * third derivative. The last stage's matrix takes out of it what that stage damps. */
static double local_error(hs_carbon_work *w, const double *volume_m, size_t n, double h) {
    double scale = h * (3 * GAMMA * GAMMA - 4 * GAMMA + 2) / (6 * (2 - GAMMA));
    double largest = 0;
    for (size_t i = 0; i < n; i++)
        w->right[i] =
            volume_m[i] * scale *
            (w->slope[i] / GAMMA - w->middle[i] / (GAMMA * (1 - GAMMA)) + w->late[i] / (1 - GAMMA));
    hs_tridiagonal(w->right, w->lower, w->diag, w->upper, w->scratch, n);
    for (size_t i = 0; i < n; i++)
        largest = hs_most(largest, fabs(w->right[i]));
    return largest;
}

hs_status hs_carbon_step(hs_carbon_march *m, double *error_pct, double h, hs_error *err) {
    hs_carbon_work *w = m->work;
    size_t n = m->mesh->n;
    double weight = WEIGHT * h;
    double flux0[2] = {m->flux[0], m->flux[1]};
    for (size_t i = 0; i < n; i++) {
        w->base[i] = w->old[i] + weight * w->slope[i];
        w->now[i] = w->old[i] + GAMMA * h / m->last_m2 * (w->old[i] - w->before[i]);
    }
    hs_carbon_stage_place(m, m->place_m2 + GAMMA * h);
    hs_status status = hs_carbon_stage_solve(m, weight, err);
    if (status != HS_OK) return status;
    double flux1[2] = {m->flux[0], m->flux[1]};
    for (size_t i = 0; i < n; i++) {
        double rise = w->now[i] - w->old[i];
        w->middle[i] = (w->now[i] - w->base[i]) / weight;
        w->base[i] = w->old[i] + EARLIER * h * (w->slope[i] + w->middle[i]);
        w->now[i] = w->old[i] + rise / GAMMA;
    }
    hs_carbon_stage_place(m, m->place_m2 + h);
    status = hs_carbon_stage_solve(m, weight, err);
    for (size_t i = 0; i < n; i++)
        w->late[i] = (w->now[i] - w->base[i]) / weight;
    for (int j = 0; j < 2; j++)
        m->gained[j] += h * (EARLIER * (flux0[j] + flux1[j]) + WEIGHT * m->flux[j]);
    if (error_pct) *error_pct = local_error(w, m->mesh->volume_m, n, h);
    return status;
}

void hs_carbon_step_accept(hs_carbon_march *m, double h) {
    hs_carbon_work *w = m->work;
    size_t bytes = m->mesh->n * sizeof *w->old;
    memcpy(w->before, w->old, bytes);
    memcpy(w->old, w->now, bytes);
    memcpy(w->slope, w->late, bytes);
    m->last_m2 = h;
    m->place_m2 += h;
    m->steps++;
}
