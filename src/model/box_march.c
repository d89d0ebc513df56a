#include "hardskin/model/box_march.h"

#include "base/num.h"

#include <math.h>
#include <string.h>

static const double GAMMA = 0.585786437626904951;   /* 2 - sqrt 2 */
static const double WEIGHT = 0.292893218813452476;  /* 1 - sqrt 1/2, of the new level */
static const double EARLIER = 0.353553390593273762; /* sqrt 2 / 4, of the two levels before it */
static const double SETTLED_K = 1e-9;
static const int MOST_ITERATIONS = 50;
static const double FIRST_STEP_S = 30, LEAST_STEP_S = 1e-3, MOST_GROWTH = 2;

double hs_box_wall_temp(const hs_box_wall *wall, double time_s) {
    if (time_s > wall->off_s)
        return wall->ambient_K +
               (wall->fire_K - wall->ambient_K) * exp(-(time_s - wall->off_s) / wall->cooling_s);
    if (time_s >= wall->rise_s) return wall->fire_K;
    return wall->start_K + (wall->fire_K - wall->start_K) * time_s / wall->rise_s;
}

/* Heat, flow and their slopes of every cell, and the flow of the wall. */
static void look_up(hs_box_march *m, const double *temp_K, double time_s) {
    for (size_t i = 0; i < m->n; i++)
        hs_matter_both(&m->heat[i], &m->c[i], &m->potential[i], &m->k[i], &m->matter,
                       m->has_core && i == 0, temp_K[i]);
    double slope;
    m->potential[m->n] = hs_matter_at(&slope, m->matter.flow, hs_box_wall_temp(&m->wall, time_s));
}

static double content(const hs_box_march *m, const double *temp_K) {
    double sum = 0, heat, c, flow, k;
    for (size_t i = 0; i < m->n; i++) {
        hs_matter_both(&heat, &c, &flow, &k, &m->matter, m->has_core && i == 0, temp_K[i]);
        sum += m->volume[i] * heat;
    }
    return sum;
}

static double area(const hs_box_body *body, double r) {
    return body->exponent > 0 ? pow(r / body->radius_m, body->exponent) : 1;
}

/* Volume from the centre to r, per area of the outer wall. */
static double inside(const hs_box_body *body, double r) {
    return r * area(body, r) / (body->exponent + 1);
}

static void lay_cells(hs_box_march *m, const hs_box_body *body) {
    m->has_core = body->core_m > 0;
    m->n = body->cells + (size_t)m->has_core;
    double width = (body->radius_m - body->core_m) / (double)body->cells;
    size_t c = 0;
    if (m->has_core) {
        m->place[0] = body->core_m;
        m->volume[0] = inside(body, body->core_m);
        m->link[0] = area(body, body->core_m) / (0.5 * width);
        c = 1;
    }
    for (size_t i = 0; i < body->cells; i++) {
        double r0 = body->core_m + width * (double)i, r1 = r0 + width;
        int last = i + 1 == body->cells;
        if (last) r1 = body->radius_m;
        m->place[c + i] = r0 + 0.5 * width;
        m->volume[c + i] = inside(body, r1) - inside(body, r0);
        m->link[c + i] = area(body, r1) / (last ? 0.5 * width : width);
    }
}

/* Heat into each cell, of what was looked up; returns what comes through the wall. */
static double flows(double *into, const hs_box_march *m) {
    double from_inside = 0;
    for (size_t i = 0; i < m->n; i++) {
        double q = m->link[i] * (m->potential[i + 1] - m->potential[i]);
        into[i] = q - from_inside;
        from_inside = q;
    }
    return from_inside;
}

void hs_box_march_start(hs_box_march *m, const hs_box_body *body, double temp_K,
                        double tolerance_K) {
    lay_cells(m, body);
    for (size_t i = 0; i < m->n; i++)
        m->temp_K[i] = temp_K;
    m->time_s = m->gained_J = 0;
    m->steps = m->refused = 0;
    m->step_s = FIRST_STEP_S;
    m->tolerance_K = tolerance_K;
    m->start_J = content(m, m->temp_K);
    look_up(m, m->temp_K, 0);
    m->wall_W = flows(m->slope, m);
}

/* Matrix of heat content less weight times flow, of what was looked up. */
static void assemble(hs_box_march *m, double weight_s) {
    double link = 0; /* to the cell inside */
    for (size_t i = 0; i < m->n; i++) {
        m->diag[i] = m->volume[i] * m->c[i] + weight_s * m->k[i] * (m->link[i] + link);
        link = m->link[i];
        if (i + 1 == m->n) break;
        m->upper[i] = -weight_s * link * m->k[i + 1];
        m->lower[i + 1] = -weight_s * link * m->k[i];
    }
}

/* Newton on: content(now) - weight * flow(now) = base. Sets flux and returns the wall's. */
static hs_status solve(double *wall_W, hs_box_march *m, double weight_s, double time_s,
                       hs_error *err) {
    double moved = INFINITY;
    for (int k = 0; k < MOST_ITERATIONS; k++) {
        look_up(m, m->now, time_s);
        *wall_W = flows(m->flux, m);
        if (moved < SETTLED_K) return HS_OK;
        assemble(m, weight_s);
        for (size_t i = 0; i < m->n; i++)
            m->right[i] = m->base[i] + weight_s * m->flux[i] - m->volume[i] * m->heat[i];
        hs_tridiagonal(m->right, m->lower, m->diag, m->upper, m->scratch, m->n);
        moved = 0;
        for (size_t i = 0; i < m->n; i++) {
            m->now[i] += m->right[i];
            moved = fmax(moved, fabs(m->right[i]));
        }
    }
    return hs_fail(err, HS_E_CONVERGE, "another size of box",
                   "the heat of the box does not settle");
}

/* A trial step: `now`, `flux` at its end, `first` at its middle stage; error in K (filtered by the
 * matrix of the step, so that stiff cells do not cry wolf). */
static hs_status trial(double *error_K, double gained[2], hs_box_march *m, double h,
                       hs_error *err) {
    double weight = WEIGHT * h, wall1 = 0, wall2 = 0;
    look_up(m, m->temp_K, m->time_s);
    for (size_t i = 0; i < m->n; i++) {
        m->start[i] = m->volume[i] * m->heat[i];
        m->base[i] = m->start[i] + weight * m->slope[i];
        m->now[i] = m->temp_K[i];
    }
    hs_status status = solve(&wall1, m, weight, m->time_s + GAMMA * h, err);
    if (status != HS_OK) return status;
    memcpy(m->first, m->flux, m->n * sizeof *m->flux);
    for (size_t i = 0; i < m->n; i++)
        m->base[i] = m->start[i] + EARLIER * h * (m->slope[i] + m->first[i]);
    for (size_t i = 0; i < m->n; i++) /* straight on */
        m->now[i] = m->temp_K[i] + (m->now[i] - m->temp_K[i]) / GAMMA;
    status = solve(&wall2, m, weight, m->time_s + h, err);
    if (status != HS_OK) return status;
    gained[0] = h * (EARLIER * (m->wall_W + wall1) + WEIGHT * wall2);
    gained[1] = wall2;
    const double e0 = (1 - EARLIER) / 3 - EARLIER, e1 = (3 * EARLIER + 1) / 3 - EARLIER;
    const double e2 = WEIGHT / 3 - WEIGHT;
    for (size_t i = 0; i < m->n; i++)
        m->right[i] = h * (e0 * m->slope[i] + e1 * m->first[i] + e2 * m->flux[i]);
    assemble(m, weight);
    hs_tridiagonal(m->right, m->lower, m->diag, m->upper, m->scratch, m->n);
    *error_K = 0;
    for (size_t i = 0; i < m->n; i++)
        *error_K = fmax(*error_K, fabs(m->right[i]));
    return HS_OK;
}

static void accept(hs_box_march *m, const double gained[2], double h) {
    memcpy(m->temp_K, m->now, m->n * sizeof *m->now);
    memcpy(m->slope, m->flux, m->n * sizeof *m->flux);
    m->gained_J += gained[0];
    m->wall_W = gained[1];
    m->time_s += h;
    m->steps++;
}

hs_status hs_box_march_fixed(hs_box_march *m, double step_s, hs_error *err) {
    double error_K = 0, gained[2];
    hs_status status = trial(&error_K, gained, m, step_s, err);
    if (status == HS_OK) accept(m, gained, step_s);
    return status;
}

hs_status hs_box_march_step(hs_box_march *m, double end_s, hs_error *err) {
    for (;;) {
        double h = m->step_s, left = end_s - m->time_s;
        int cut = h >= left * (1 - 1e-9);
        if (cut) h = left;
        double error_K = 0, gained[2];
        hs_status status = trial(&error_K, gained, m, h, err);
        if (status != HS_OK) return status;
        double grow = 0.9 * cbrt(m->tolerance_K / fmax(error_K, 1e-3 * m->tolerance_K));
        if (error_K <= m->tolerance_K || h <= LEAST_STEP_S) {
            accept(m, gained, h);
            if (cut) m->time_s = end_s; /* not a rounding short of it */
            if (!cut || grow < 1) m->step_s = h * fmin(MOST_GROWTH, fmax(grow, 0.3));
            return HS_OK;
        }
        m->refused++;
        m->step_s = h * fmax(0.2, fmin(grow, 0.8));
    }
}

double hs_box_march_centre(const hs_box_march *m) {
    return m->has_core ? m->temp_K[0] : (9 * m->temp_K[0] - m->temp_K[1]) / 8;
}

static double rate_of(const hs_box_march *m, size_t i) {
    double c;
    hs_matter_at(&c, m->has_core && i == 0 ? m->matter.core : m->matter.heat, m->temp_K[i]);
    return m->slope[i] / (m->volume[i] * c);
}

double hs_box_march_rate(const hs_box_march *m) {
    return m->has_core ? rate_of(m, 0) : (9 * rate_of(m, 0) - rate_of(m, 1)) / 8;
}

double hs_box_march_balance(const hs_box_march *m) {
    double error = fabs(content(m, m->temp_K) - m->start_J - m->gained_J);
    return error > 0 ? error / fmax(fabs(m->gained_J), fabs(m->start_J)) : 0;
}
