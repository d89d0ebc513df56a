#include "model/carbon_stage.h"

#include "base/num.h"
#include "constants.h"

#include <math.h>

static const int MOST_ITERATIONS = 60;

void hs_carbon_stage_place(hs_carbon_march *m, double spread_m2) {
    double temp_K = hs_carbon_clock_temp(&m->clock, spread_m2);
    hs_diffusivity_prepare(&m->at, m->d, temp_K);
    double unit = hs_diffusivity_of(&m->at, m->clock.carbon_pct);
    m->at.front /= unit;
    m->at.front_C /= unit;
    double cap =
        m->heat->cap_at_acm ? hs_acm_pct(hs_most(temp_K, HS_K_AUSTENITE_ACM_LOW)) : INFINITY;
    for (int j = 0; j < 2; j++) {
        const hs_side *side = &m->heat->side[j];
        m->target_pct[j] = hs_least(side->carbon_pct, cap);
        m->transfer_1_m[j] = side->kind == HS_SIDE_CLOSED  ? 0
                             : side->kind == HS_SIDE_FIXED ? INFINITY
                                                           : side->transfer_m_s / unit;
    }
}

/* Conductance from a face's target to its end cell; sets the resistance of the half cell. */
static double side_conductance(double *half_cell, const hs_carbon_march *m, int j) {
    const hs_carbon_mesh *mesh = m->mesh;
    size_t cell = j ? mesh->n - 1 : 0;
    double gap = j ? mesh->edge_m[mesh->n] - mesh->centre_m[cell] : mesh->centre_m[0];
    double face = isinf(m->transfer_1_m[j]) ? m->target_pct[j] : m->surface_pct[j];
    double D = 0.5 * (m->work->spread[cell] + hs_diffusivity_of(&m->at, face));
    *half_cell = gap / D;
    return mesh->area[j ? mesh->n : 0] / (*half_cell + 1 / m->transfer_1_m[j]);
}

/* Fill the matrix from D at `now`; base is the right side. */
static void assemble(hs_carbon_march *m, double conductance[2], double half_cell[2],
                     double weight_m2) {
    hs_carbon_work *w = m->work;
    const hs_carbon_mesh *mesh = m->mesh;
    size_t n = mesh->n;
    for (size_t i = 0; i < n; i++) {
        w->spread[i] = hs_diffusivity_of(&m->at, w->now[i]);
        w->right[i] = mesh->volume_m[i] * w->base[i];
        w->diag[i] = mesh->volume_m[i];
    }
    for (size_t i = 1; i < n; i++) {
        double g = weight_m2 * mesh->area[i] * 0.5 * (w->spread[i - 1] + w->spread[i]) /
                   (mesh->centre_m[i] - mesh->centre_m[i - 1]);
        w->upper[i - 1] = w->lower[i] = -g;
        w->diag[i - 1] += g;
        w->diag[i] += g;
    }
    for (int j = 0; j < 2; j++) {
        conductance[j] = half_cell[j] = 0;
        if (m->transfer_1_m[j] == 0) continue;
        conductance[j] = side_conductance(&half_cell[j], m, j);
        w->diag[j ? n - 1 : 0] += weight_m2 * conductance[j];
        w->right[j ? n - 1 : 0] += weight_m2 * conductance[j] * m->target_pct[j];
    }
}

/* Fluxes through the faces and the carbon at them, of the solution just found. */
static void read_faces(hs_carbon_march *m, const double conductance[2], const double half_cell[2]) {
    for (int j = 0; j < 2; j++) {
        double end = m->work->now[j ? m->mesh->n - 1 : 0];
        double area = m->mesh->area[j ? m->mesh->n : 0];
        m->flux[j] = conductance[j] * (m->target_pct[j] - end);
        m->surface_pct[j] = area > 0 ? end + m->flux[j] / area * half_cell[j] : end;
    }
}

hs_status hs_carbon_stage_solve(hs_carbon_march *m, double weight_m2, hs_error *err) {
    hs_carbon_work *w = m->work;
    size_t n = m->mesh->n;
    double conductance[2], half_cell[2];
    for (int k = 0; k < MOST_ITERATIONS; k++) {
        assemble(m, conductance, half_cell, weight_m2);
        hs_tridiagonal(w->right, w->lower, w->diag, w->upper, w->scratch, n);
        double moved = 0;
        for (size_t i = 0; i < n; i++) {
            moved = hs_most(moved, fabs(w->right[i] - w->now[i]));
            w->now[i] = w->right[i];
        }
        read_faces(m, conductance, half_cell);
        if (moved < m->settled_pct) return HS_OK;
    }
    return hs_fail(err, HS_E_CONVERGE, "more steps", "the carbon profile does not settle");
}
