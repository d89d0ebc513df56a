#include "edge_plane.h"

#include "hardskin/model/austenite.h"

#include <math.h>
#include <string.h>

/* The first coordinate runs along the lower face, the second up: metal lies below and left. */
static int metal(const plane *p, int i, int k) {
    int right = i >= PLANE_EDGE, above = k >= PLANE_EDGE;
    if (p->shape == PLANE_OUTER) return !right && !above;
    if (p->shape == PLANE_INNER || p->shape == PLANE_INNER_MASK) return !(right && above);
    return !above;
}

/* Is the wall between a metal cell and the empty one at (i, k) masked? */
static int masked(const plane *p, int from_i, int i) {
    if (p->shape == PLANE_HALF_MASK) return i < PLANE_EDGE;
    return p->shape == PLANE_INNER_MASK && from_i != i;
}

/* Integral of D over carbon: with it the flux between two cells needs no mean of D. */
enum { STEPS = 1200 };
typedef struct kirchhoff {
    double low, width, value[STEPS + 1], most; /* D over that of the face */
} kirchhoff;

static void integrate(kirchhoff *t, const plane *p) {
    const double temp_K = 1198.15;
    hs_diffusivity d = {.model = HS_D_AGREN, .factor = 1};
    double face = hs_diffusivity_value(&d, p->face, temp_K);
    t->low = p->core - 0.01;
    t->width = (p->face + 0.01 - t->low) / STEPS;
    t->value[0] = 0;
    t->most = 0;
    for (int i = 0; i < STEPS; i++) {
        double carbon = t->low + (i + 0.5) * t->width;
        double now = p->agren ? hs_diffusivity_value(&d, carbon, temp_K) / face : 1;
        t->most = fmax(t->most, now);
        t->value[i + 1] = t->value[i] + now * t->width;
    }
}

static double integral(const kirchhoff *t, double carbon) {
    double place = (carbon - t->low) / t->width;
    int i = (int)place;
    return t->value[i] + (place - i) * (t->value[i + 1] - t->value[i]);
}

static double inflow(const plane *p, const kirchhoff *t, const double *potential, int i, int k,
                     int to_i, int to_k, double transfer_cell) {
    double here = potential[i * PLANE_SIDE + k];
    if (to_i < 0 || to_k < 0 || to_i >= PLANE_SIDE || to_k >= PLANE_SIDE) return 0;
    if (metal(p, to_i, to_k)) return potential[to_i * PLANE_SIDE + to_k] - here;
    if (masked(p, i, to_i)) return 0;
    if (p->transfer > 0) { /* half a cell of metal and the hand-over one behind the other */
        double way = transfer_cell / (1 + 0.5 * transfer_cell);
        return way * (p->face - p->carbon[i][k]);
    }
    return 2 * (integral(t, p->face) - here);
}

static void step(plane *p, const kirchhoff *t, double dt, double transfer_cell, int open) {
    static double potential[PLANE_SIDE * PLANE_SIDE], gain[PLANE_SIDE][PLANE_SIDE];
    for (int i = 0; i < PLANE_SIDE; i++)
        for (int k = 0; k < PLANE_SIDE; k++)
            potential[i * PLANE_SIDE + k] = integral(t, p->carbon[i][k]);
    static const int way[4][2] = {{1, 0}, {-1, 0}, {0, 1}, {0, -1}};
    for (int i = 0; i < PLANE_SIDE; i++)
        for (int k = 0; k < PLANE_SIDE; k++) {
            gain[i][k] = 0;
            if (!metal(p, i, k)) continue;
            for (int w = 0; w < 4; w++) {
                int to_i = i + way[w][0], to_k = k + way[w][1];
                int inside = to_i >= 0 && to_k >= 0 && to_i < PLANE_SIDE && to_k < PLANE_SIDE &&
                             metal(p, to_i, to_k);
                if (open || inside)
                    gain[i][k] += inflow(p, t, potential, i, k, to_i, to_k, transfer_cell);
            }
        }
    for (int i = 0; i < PLANE_SIDE; i++)
        for (int k = 0; k < PLANE_SIDE; k++)
            p->carbon[i][k] += dt * gain[i][k];
}

void plane_run(plane *p, double cells) {
    static kirchhoff table;
    integrate(&table, p);
    for (int i = 0; i < PLANE_SIDE; i++)
        for (int k = 0; k < PLANE_SIDE; k++)
            p->carbon[i][k] = p->core;
    double total = cells * cells; /* D t in cells squared */
    int steps = (int)ceil(total * table.most * 6.2), closed = (int)ceil(steps * p->closed);
    for (int i = 0; i < steps + closed; i++)
        step(p, &table, total / steps, p->transfer / cells, i < steps);
}

/* Depth in cells at which n values, half a cell from the edge and then a cell apart, fall to a
 * wanted one. */
static double depth_of(const double *value, int n, double wanted) {
    for (int i = 0; i + 1 < n; i++)
        if (value[i] >= wanted && value[i + 1] < wanted)
            return i + 0.5 + (value[i] - wanted) / (value[i] - value[i + 1]);
    return NAN;
}

double plane_below(const plane *p, double carbon_pct) {
    double value[PLANE_EDGE];
    for (int d = 0; d < PLANE_EDGE; d++) {
        int k = PLANE_EDGE - 1 - d;
        value[d] = 0.5 * (p->carbon[PLANE_EDGE - 1][k] + p->carbon[PLANE_EDGE][k]);
    }
    return depth_of(value, PLANE_EDGE, carbon_pct);
}

double plane_inward(const plane *p, double carbon_pct) {
    double value[PLANE_EDGE];
    for (int d = 0; d < PLANE_EDGE; d++)
        value[d] = p->carbon[PLANE_EDGE - 1 - d][PLANE_EDGE - 1 - d];
    return sqrt(2) * depth_of(value, PLANE_EDGE, carbon_pct);
}
