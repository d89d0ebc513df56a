#include "hardskin/model/quench_mesh.h"

#include "model/quench_grid.h"

#include <math.h>
#include <string.h>

/* A cell with less metal than this share of itself is left out. */
static const double EMPTY = 1e-9;

typedef struct cell_box {
    double x, y, dx, dy;
} cell_box;

/* Bilinear conduction between the corners, exact on the clipped part. */
static void set_links(hs_quench_cell *cell, const hs_clip_moments *m, const cell_box *b) {
    double tall = b->dy / b->dx, wide = b->dx / b->dy;
    double a = m->A - 2 * m->y + m->yy, c = m->y - m->yy, p = m->A - 2 * m->x + m->xx,
           r = m->x - m->xx;
    cell->link[0] = tall * a - wide * r;
    cell->link[1] = wide * m->xx - tall * c;
    cell->link[2] = tall * m->yy - wide * r;
    cell->link[3] = wide * p - tall * c;
    cell->link[4] = cell->link[5] = tall * c + wide * r;
}

static void add_mass(hs_quench_mesh *mesh, const hs_quench_cell *cell, const hs_clip_moments *m,
                     double box_m2) {
    mesh->node_area_m2[cell->node[0]] += box_m2 * (m->A - m->x - m->y + m->xy);
    mesh->node_area_m2[cell->node[1]] += box_m2 * (m->x - m->xy);
    mesh->node_area_m2[cell->node[2]] += box_m2 * m->xy;
    mesh->node_area_m2[cell->node[3]] += box_m2 * (m->y - m->xy);
}

/* Quarters carry the cell's second moment when their places are drawn out from its middle by this:
 * then a whole cell bends as stiffly as it should. */
static const double SPREAD = 1.154700538379251529; /* 2 / sqrt 3 */

static void add_fibre(hs_quench_mesh *mesh, const hs_quench_grid *g, const hs_clip *clip,
                      const cell_box *b, double u0, double v0) {
    hs_clip_moments m = hs_clip_measure(clip, b->x, b->y, b->dx, b->dy);
    if (m.A < EMPTY) return;
    double u = u0 + SPREAD * (m.x / m.A - u0), v = v0 + SPREAD * (m.y / m.A - v0);
    hs_point at = hs_quench_grid_back(g, (hs_point){b->x + u * b->dx, b->y + v * b->dy});
    mesh->fibre[mesh->fibres++] =
        (hs_quench_fibre){.cell = (unsigned short)(mesh->cells - 1),
                          .weight = {(1 - u) * (1 - v), u * (1 - v), u * v, (1 - u) * v},
                          .x_m = at.x_m,
                          .y_m = at.y_m,
                          .area_m2 = m.A * b->dx * b->dy};
}

typedef struct maker {
    hs_quench_mesh *mesh;
    hs_quench_grid grid;
    hs_clip strip, box, half, quarter;
    hs_clip_work work;
    int node_of[(HS_QUENCH_LINES + 1) * (HS_QUENCH_LINES + 1)];
    int cell_of[HS_QUENCH_LINES * HS_QUENCH_LINES];
} maker;

static int node_at(maker *k, size_t i, size_t j) {
    int *number = &k->node_of[j * (k->grid.columns + 1) + i];
    if (*number < 0 && k->mesh->nodes < HS_QUENCH_NODES) {
        *number = (int)k->mesh->nodes++;
        k->mesh->node[*number] =
            hs_quench_grid_back(&k->grid, (hs_point){k->grid.x[i], k->grid.y[j]});
        k->mesh->node_area_m2[*number] = 0;
    }
    return *number;
}

static hs_status add_fibres(maker *k, const cell_box *b, double u0, double v0, hs_error *err) {
    for (int i = 0; i < 2; i++) {
        double x = b->x + 0.5 * i * b->dx;
        int fits = hs_clip_between(&k->half, &k->box, 0, x, x + 0.5 * b->dx, &k->work);
        for (int j = 0; j < 2; j++) {
            double y = b->y + 0.5 * j * b->dy;
            if (!fits ||
                !hs_clip_between(&k->quarter, &k->half, 1, y, y + 0.5 * b->dy, &k->work))
                return hs_fail(err, HS_E_TOO_LARGE, "fewer vertices", "the outline is too ragged");
            add_fibre(k->mesh, &k->grid, &k->quarter, b, u0, v0);
        }
    }
    return HS_OK;
}

static hs_status add_cell(maker *k, size_t i, size_t j, hs_error *err) {
    const hs_quench_grid *g = &k->grid;
    cell_box b = {g->x[i], g->y[j], g->x[i + 1] - g->x[i], g->y[j + 1] - g->y[j]};
    if (!hs_clip_between(&k->box, &k->strip, 0, b.x, b.x + b.dx, &k->work))
        return hs_fail(err, HS_E_TOO_LARGE, "fewer vertices", "the outline is too ragged");
    hs_clip_moments m = hs_clip_measure(&k->box, b.x, b.y, b.dx, b.dy);
    if (m.A < EMPTY) return HS_OK;
    int node[4] = {node_at(k, i, j), node_at(k, i + 1, j), node_at(k, i + 1, j + 1),
                   node_at(k, i, j + 1)};
    for (int c = 0; c < 4; c++)
        if (node[c] < 0 || k->mesh->cells == HS_QUENCH_CELLS)
            return hs_fail(err, HS_E_TOO_LARGE, "a wider spacing", "more than %d cells",
                           HS_QUENCH_CELLS);
    k->cell_of[j * g->columns + i] = (int)k->mesh->cells;
    hs_quench_cell *cell = &k->mesh->cell[k->mesh->cells++];
    for (int c = 0; c < 4; c++)
        cell->node[c] = (unsigned short)node[c];
    set_links(cell, &m, &b);
    add_mass(k->mesh, cell, &m, b.dx * b.dy);
    return add_fibres(k, &b, m.x / m.A, m.y / m.A, err);
}

static hs_status add_cells(maker *k, hs_error *err) {
    for (size_t j = 0; j < k->grid.rows; j++) {
        if (!hs_clip_between(&k->strip, &k->grid.whole, 1, k->grid.y[j], k->grid.y[j + 1],
                             &k->work))
            return hs_fail(err, HS_E_TOO_LARGE, "fewer vertices", "the outline is too ragged");
        for (size_t i = 0; i < k->grid.columns; i++) {
            hs_status status = add_cell(k, i, j, err);
            if (status != HS_OK) return status;
        }
    }
    return HS_OK;
}

hs_status hs_quench_mesh_make(hs_quench_mesh *mesh, const hs_section *section, double spacing_m,
                              hs_error *err) {
    maker k = {.mesh = mesh};
    if (!(spacing_m > 0 && isfinite(spacing_m)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "above 0", "a spacing of %g m", spacing_m);
    hs_status status = hs_quench_grid_lay(&k.grid, section, spacing_m, err);
    if (status != HS_OK) return status;
    memset(k.node_of, -1, sizeof k.node_of);
    memset(k.cell_of, -1, sizeof k.cell_of);
    mesh->nodes = mesh->cells = mesh->fibres = mesh->segments = 0;
    mesh->spacing_m = spacing_m;
    status = add_cells(&k, err);
    return status == HS_OK ? hs_quench_grid_edges(mesh, &k.grid, k.cell_of, section, err) : status;
}
