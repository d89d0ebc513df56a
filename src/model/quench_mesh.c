#include "hardskin/model/quench_mesh.h"

#include "model/polygon.h"
#include "model/quench_grid.h"

#include <math.h>
#include <string.h>

/* A cell with less metal than this share of itself is left out. */
static const double EMPTY = 1e-9;
/* From this ratio of the sides on bilinear links along the shorter one turn negative: root of 2. */
static const double THIN = 1.414;
/* Fibres over the total case, and most pieces of a cell either way. Against 30 over the case, bows
 * without plasticity differ by .03 to .1 of the peak (rms) with 6, 8 or 16 of them alike; with
 * plasticity those of a flat by .15 with 6, .02 with 8. */
static const double FINE = 8;
enum { MOST_PIECES = 8 };

typedef struct cell_box {
    double x, y, dx, dy;
} cell_box;

/* Bilinear conduction between the corners, exact on the clipped part. In a whole cell that is thin
 * it would take heat from a cold corner to a warm one along the thin side: there along the four
 * sides alone, as finite volumes have it. */
static void set_links(hs_quench_cell *cell, const hs_clip_moments *m, const cell_box *b) {
    double tall = b->dy / b->dx, wide = b->dx / b->dy;
    if (m->A > 1 - EMPTY && fmax(tall, wide) > THIN) {
        cell->link[0] = cell->link[2] = 0.5 * tall;
        cell->link[1] = cell->link[3] = 0.5 * wide;
        cell->link[4] = cell->link[5] = 0;
        return;
    }
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

static double spread(int pieces) {
    return 1 / sqrt(1 - 1 / ((double)pieces * pieces));
}

/* A fibre for what `clip` leaves of a piece of a cell. Places are drawn out from the cell's middle,
 * so that a whole cell in m x m pieces bends as stiffly as it should. */
static hs_status add_fibre(hs_quench_mesh *mesh, const hs_quench_grid *g, const hs_clip *clip,
                           const cell_box *b, double u0, double v0, const int pieces[2],
                           hs_error *err) {
    hs_clip_moments m = hs_clip_measure(clip, b->x, b->y, b->dx, b->dy);
    if (m.A < EMPTY) return HS_OK;
    if (mesh->fibres == HS_QUENCH_FIBRES)
        return hs_fail(err, HS_E_TOO_LARGE, "a wider spacing", "more than %d fibres",
                       HS_QUENCH_FIBRES);
    double u = u0 + spread(pieces[0]) * (m.x / m.A - u0);
    double v = v0 + spread(pieces[1]) * (m.y / m.A - v0);
    hs_point at = hs_quench_grid_back(g, (hs_point){b->x + u * b->dx, b->y + v * b->dy});
    mesh->fibre[mesh->fibres++] =
        (hs_quench_fibre){.cell = (unsigned short)(mesh->cells - 1),
                          .weight = {(1 - u) * (1 - v), u * (1 - v), u * v, (1 - u) * v},
                          .x_m = at.x_m,
                          .y_m = at.y_m,
                          .area_m2 = m.A * b->dx * b->dy};
    return HS_OK;
}

typedef struct maker {
    hs_quench_mesh *mesh;
    double case_m;
    hs_quench_grid grid;
    hs_clip strip, box, half, quarter;
    hs_clip_work work;
    int node_of[2][HS_QUENCH_LINES + 1]; /* under and over the row of cells; -1: not yet */
} maker;

static int node_at(maker *k, size_t i, size_t j, int over) {
    int *number = &k->node_of[over][i];
    if (*number < 0 && k->mesh->nodes < HS_QUENCH_NODES) {
        *number = (int)k->mesh->nodes++;
        k->mesh->node[*number] =
            hs_quench_grid_back(&k->grid, (hs_point){k->grid.x[i], k->grid.y[j]});
        k->mesh->node_area_m2[*number] = 0;
    }
    return *number;
}

/* Pieces of a cell along x and y: two, or so many across an edge near by that the case has FINE of
 * them. */
static void pieces_of(int pieces[2], const maker *k, const cell_box *b) {
    const hs_clip *whole = &k->grid.whole;
    hs_point middle = {b->x + 0.5 * b->dx, b->y + 0.5 * b->dy};
    double reach = k->case_m + 0.5 * hypot(b->dx, b->dy);
    pieces[0] = pieces[1] = 2;
    if (!(k->case_m > 0)) return;
    for (size_t l = 0; l < whole->loops; l++)
        for (size_t i = whole->start[l]; i < whole->start[l + 1]; i++) {
            size_t j = i + 1 < whole->start[l + 1] ? i + 1 : whole->start[l];
            hs_point p = whole->point[i], q = whole->point[j];
            if (hs_polygon_point_gap(middle, p, q) > reach) continue;
            double length = hypot(q.x_m - p.x_m, q.y_m - p.y_m);
            double across[2] = {b->dx * fabs(q.y_m - p.y_m), b->dy * fabs(q.x_m - p.x_m)};
            for (int d = 0; d < 2; d++) {
                int need = (int)ceil(FINE * across[d] / (length * k->case_m) - 1e-9);
                pieces[d] = need > pieces[d] ? need : pieces[d];
                if (pieces[d] > MOST_PIECES) pieces[d] = MOST_PIECES;
            }
        }
}

static hs_status add_fibres(maker *k, const cell_box *b, double u0, double v0, hs_error *err) {
    int pieces[2];
    pieces_of(pieces, k, b);
    double dx = b->dx / pieces[0], dy = b->dy / pieces[1];
    for (int i = 0; i < pieces[0]; i++) {
        double x = b->x + i * dx;
        int fits = hs_clip_between(&k->half, &k->box, 0, x, x + dx, &k->work);
        for (int j = 0; j < pieces[1]; j++) {
            double y = b->y + j * dy;
            if (!fits || !hs_clip_between(&k->quarter, &k->half, 1, y, y + dy, &k->work))
                return hs_fail(err, HS_E_TOO_LARGE, "fewer vertices", "the outline is too ragged");
            hs_status status = add_fibre(k->mesh, &k->grid, &k->quarter, b, u0, v0, pieces, err);
            if (status != HS_OK) return status;
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
    int node[4] = {node_at(k, i, j, 0), node_at(k, i + 1, j, 0), node_at(k, i + 1, j + 1, 1),
                   node_at(k, i, j + 1, 1)};
    for (int c = 0; c < 4; c++)
        if (node[c] < 0 || k->mesh->cells == HS_QUENCH_CELLS)
            return hs_fail(err, HS_E_TOO_LARGE, "a wider spacing", "more than %d cells",
                           HS_QUENCH_CELLS);
    k->grid.column[k->mesh->cells] = (unsigned short)i;
    hs_quench_cell *cell = &k->mesh->cell[k->mesh->cells++];
    for (int c = 0; c < 4; c++)
        cell->node[c] = (unsigned short)node[c];
    cell->thin_m = fmin(b.dx, b.dy);
    set_links(cell, &m, &b);
    add_mass(k->mesh, cell, &m, b.dx * b.dy);
    cell->first = (unsigned short)k->mesh->fibres;
    hs_status status = add_fibres(k, &b, m.x / m.A, m.y / m.A, err);
    cell->fibres = (unsigned short)(k->mesh->fibres - cell->first);
    return status;
}

static hs_status add_cells(maker *k, hs_error *err) {
    memset(k->node_of, -1, sizeof k->node_of);
    for (size_t j = 0; j < k->grid.rows; j++) {
        k->grid.first[j] = (unsigned short)k->mesh->cells;
        if (!hs_clip_between(&k->strip, &k->grid.whole, 1, k->grid.y[j], k->grid.y[j + 1],
                             &k->work))
            return hs_fail(err, HS_E_TOO_LARGE, "fewer vertices", "the outline is too ragged");
        for (size_t i = 0; i < k->grid.columns; i++) {
            hs_status status = add_cell(k, i, j, err);
            if (status != HS_OK) return status;
        }
        memcpy(k->node_of[0], k->node_of[1], sizeof k->node_of[0]);
        memset(k->node_of[1], -1, sizeof k->node_of[1]);
    }
    k->grid.first[k->grid.rows] = (unsigned short)k->mesh->cells;
    return HS_OK;
}

hs_status hs_quench_mesh_make(hs_quench_mesh *mesh, const hs_section *section, double spacing_m,
                              double skin_m, double case_m, hs_error *err) {
    maker k = {.mesh = mesh, .case_m = case_m};
    if (!(spacing_m > 0 && isfinite(spacing_m)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "above 0", "a spacing of %g m", spacing_m);
    hs_status status = hs_quench_grid_lay(&k.grid, section, spacing_m, skin_m, err);
    if (status != HS_OK) return status;
    mesh->nodes = mesh->cells = mesh->fibres = mesh->segments = 0;
    mesh->spacing_m = spacing_m;
    mesh->radius_m = 0;
    mesh->upright = fabs(k.grid.c * k.grid.s) < 1e-9;
    status = add_cells(&k, err);
    return status == HS_OK ? hs_quench_grid_edges(mesh, &k.grid, section, err) : status;
}
