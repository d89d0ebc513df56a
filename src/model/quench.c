#include "hardskin/model/quench.h"

#include "model/quench_steps.h"

#include <math.h>
#include <string.h>

static const double COLD_K = 0.5; /* above the bath: the rest of the way in one step */
enum { MOST_HEAT_STEPS = 20000 };

static hs_status check(const hs_quench_case *c, hs_error *err) {
    if (!(c->start_K > c->bath.bath_K && c->bath.bath_K > 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "the bath colder than the part",
                       "a quench from %g K into %g K", c->start_K, c->bath.bath_K);
    if (c->n > HS_QUENCH_PLASTICITIES || c->mesh->fibres == 0)
        return hs_fail(err, HS_E_IMPOSSIBLE, "", "a quench of no section");
    if (!(c->end_s >= 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "", "a quench that ends after %g s", c->end_s);
    if (!(fabs(c->bath.uneven) < 2 && c->bath.factor > 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "unevenness below 200 %", "a side that is not cooled");
    for (size_t k = 0; k < c->n; k++)
        if (!(c->plasticity_1_Pa[k] >= 0))
            return hs_fail(err, HS_E_IMPOSSIBLE, "0 to 1.2e-4 1/MPa",
                           "%g 1/Pa is no transformation plasticity", c->plasticity_1_Pa[k]);
    return HS_OK;
}

static void extremes(const hs_quench_run_state *s, double *coldest, double *hottest, double *mean) {
    const double *T = s->w->temp_K;
    const hs_quench_net *net = &s->w->net;
    double area = 0, sum = 0;
    *coldest = *hottest = T[0];
    for (size_t i = 0; i < s->w->net.nodes; i++) {
        *coldest = hs_least(*coldest, T[i]);
        *hottest = hs_most(*hottest, T[i]);
        area += net->area_m2[i];
        sum += net->area_m2[i] * T[i];
    }
    *mean = sum / area;
}

static void show(const hs_quench_run_state *s, hs_quench_watch watch, void *context) {
    hs_quench_moment m = {.time_s = s->time_s};
    extremes(s, &m.coldest_K, &m.hottest_K, &m.mean_K);
    for (size_t k = 0; k < s->c->n; k++) {
        m.kappa_x_1_m[k] = s->w->strain[k][1];
        m.kappa_y_1_m[k] = s->w->strain[k][2];
    }
    for (size_t i = 0; i < s->c->mesh->nodes; i++)
        s->w->mesh_K[i] = s->w->temp_K[s->w->net.node_of[i]];
    watch(context, &m, s->w->mesh_K);
}

/* next_K becomes temp_K. */
static void accept(hs_quench_run_state *s) {
    hs_quench_work *w = s->w;
    for (size_t i = 0; i < s->w->net.nodes; i++) {
        w->temp_K[i] = w->next_K[i];
        w->coldest_K[i] = hs_least(w->coldest_K[i], w->temp_K[i]);
    }
    w->temp_K[s->w->net.nodes] = w->next_K[s->w->net.nodes];
}

static double enthalpy_drop(const hs_quench_run_state *s) {
    double sum = 0, capacity = s->w->capacity[0];
    for (size_t i = 0; i < s->w->net.nodes; i++)
        sum += s->w->bound[i] * (s->c->start_K - s->w->temp_K[i]);
    return sum * capacity;
}

/* The outermost fibre of a segment's cell; the mesh's count where none was in the sums. */
static size_t outermost(const hs_quench_run_state *s, const hs_quench_segment *seg, size_t k) {
    const hs_quench_mesh *mesh = s->c->mesh;
    const hs_quench_cell *cell = &mesh->cell[seg->cell];
    size_t best = mesh->fibres;
    double most = -INFINITY;
    for (size_t f = cell->first; f < (size_t)cell->first + cell->fibres; f++) {
        double out = mesh->fibre[f].x_m * seg->nx + mesh->fibre[f].y_m * seg->ny;
        if (out <= most || isnan(s->w->stress_Pa[k][f])) continue;
        most = out;
        best = f;
    }
    return best;
}

static void surface(hs_quench_left *left, const hs_quench_run_state *s, size_t k) {
    const hs_quench_mesh *mesh = s->c->mesh;
    double sum = 0, length = 0, low = INFINITY, high = -INFINITY;
    for (size_t i = 0; i < mesh->segments; i++) {
        size_t best = outermost(s, &mesh->segment[i], k);
        if (best == mesh->fibres) continue;
        double stress = s->w->stress_Pa[k][best];
        sum += stress * mesh->segment[i].length_m;
        length += mesh->segment[i].length_m;
        low = fmin(low, stress);
        high = fmax(high, stress);
    }
    left->surface_Pa = sum / length;
    left->surface_low_Pa = low;
    left->surface_high_Pa = high;
}

static hs_status step(hs_quench_run_state *s, double *try_s, hs_error *err) {
    double taken_s = 0, end_s = s->c->end_s;
    if (end_s > 0) *try_s = fmin(*try_s, end_s - s->time_s);
    hs_status status = hs_quench_heat_step(s, &taken_s, try_s, err);
    if (status == HS_OK && s->c->n > 0) status = hs_quench_fibres_step(s, taken_s, err);
    if (status == HS_OK) accept(s);
    return status;
}

/* From half a kelvin above the bath in one step to the bath. */
static hs_status finish(hs_quench_run_state *s, hs_error *err) {
    double drop = enthalpy_drop(s);
    s->cost.heat_error = fabs(s->w->temp_K[s->w->net.nodes] - drop) / drop;
    if (s->c->end_s > 0 || s->c->n == 0) return HS_OK;
    for (size_t i = 0; i < s->w->net.nodes; i++)
        s->w->next_K[i] = s->c->bath.bath_K;
    hs_status status = hs_quench_fibres_step(s, 0, err);
    if (status == HS_OK) accept(s);
    return status;
}

static hs_status march(hs_quench_run_state *s, hs_quench_watch watch, void *context,
                       hs_error *err) {
    double try_s, coldest, hottest, mean, end_s = s->c->end_s;
    hs_quench_heat_start(s, &try_s);
    hs_quench_fibres_start(s);
    if (watch) show(s, watch, context);
    for (size_t i = 0; i < MOST_HEAT_STEPS; i++) {
        extremes(s, &coldest, &hottest, &mean);
        if (end_s > 0 ? s->time_s >= end_s * (1 - 1e-12) : hottest < s->c->bath.bath_K + COLD_K)
            return finish(s, err);
        hs_status status = step(s, &try_s, err);
        if (status != HS_OK) return status;
        if (watch) show(s, watch, context);
    }
    return hs_fail(err, HS_E_CONVERGE, "", "the quench does not get cold");
}

hs_status hs_quench_run(hs_quench_left *left, hs_quench_cost *cost, const hs_quench_case *c,
                        hs_quench_work *work, hs_quench_watch watch, void *context, hs_error *err) {
    hs_status status = check(c, err);
    if (status != HS_OK) return status;
    hs_quench_run_state s = {.c = c, .w = work};
    hs_quench_tables(&s);
    status = march(&s, watch, context, err);
    if (status != HS_OK) return status;
    hs_quench_fibres_end(&s);
    for (size_t k = 0; k < c->n; k++) {
        left[k] = s.left[k];
        left[k].e0 = work->strain[k][0];
        left[k].kappa_x_1_m = work->strain[k][1];
        left[k].kappa_y_1_m = work->strain[k][2];
        surface(&left[k], &s, k);
    }
    if (cost) *cost = s.cost;
    return HS_OK;
}
