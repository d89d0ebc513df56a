/* A round cut into rings and sectors. A cell's corners are (inner, first angle), (outer, first),
 * (outer, second), (inner, second); in the innermost ring both inner ones are the centre. */
#include "hardskin/model/quench_mesh.h"

#include "model/quench_grid.h"

#include <math.h>
#include <string.h>

static const double PI = 3.14159265358979323846;
static const double FINE = 8; /* fibres over the total case */
enum { SECTORS = 20, MOST_RINGS = 60, MOST_PIECES = 8 };

typedef struct rings {
    size_t n;
    double radius_m[MOST_RINGS + 1]; /* from 0 out */
    double case_m;
} rings;

static hs_status lay(rings *r, double radius_m, double spacing_m, double skin_m, hs_error *err) {
    double size[HS_QUENCH_LINES];
    r->n = hs_quench_grid_graded(size, radius_m, spacing_m, skin_m, 0);
    if (r->n == 0 || r->n > MOST_RINGS)
        return hs_fail(err, HS_E_TOO_LARGE, "a wider spacing", "more than %d rings", MOST_RINGS);
    r->radius_m[0] = 0;
    for (size_t i = 0; i < r->n; i++)
        r->radius_m[i + 1] =
            i + 1 == r->n ? radius_m : r->radius_m[i] + size[r->n - 1 - i]; /* skin outside */
    return HS_OK;
}

static unsigned short node_at(size_t ring, size_t sector) {
    return (unsigned short)(ring == 0 ? 0 : 1 + (ring - 1) * SECTORS + sector % SECTORS);
}

static void place_nodes(hs_quench_mesh *mesh, const rings *r) {
    mesh->nodes = 1 + r->n * SECTORS;
    memset(mesh->node_area_m2, 0, mesh->nodes * sizeof *mesh->node_area_m2);
    mesh->node[0] = (hs_point){0, 0};
    for (size_t i = 1; i <= r->n; i++)
        for (size_t k = 0; k < SECTORS; k++) {
            double angle = 2 * PI * (double)k / SECTORS;
            mesh->node[node_at(i, k)] =
                (hs_point){r->radius_m[i] * cos(angle), r->radius_m[i] * sin(angle)};
        }
}

/* Finite volumes: faces at the middle radius and the middle angle. */
static void add_cell(hs_quench_mesh *mesh, const rings *r, size_t ring, size_t sector) {
    double turn = 2 * PI / SECTORS, in = r->radius_m[ring], out = r->radius_m[ring + 1];
    double middle = 0.5 * (in + out), half = 0.25 * turn;
    hs_quench_cell *cell = &mesh->cell[mesh->cells++];
    *cell = (hs_quench_cell){.node = {node_at(ring, sector), node_at(ring + 1, sector),
                                      node_at(ring + 1, sector + 1), node_at(ring, sector + 1)},
                             .thin_m = fmin(out - in, turn * middle)};
    cell->link[0] = cell->link[2] = 0.5 * turn * middle / (out - in);
    cell->link[1] = log(out / middle) / turn;
    cell->link[3] = ring == 0 ? 0 : log(middle / in) / turn;
    for (int k = 0; k < 4; k++)
        mesh->node_area_m2[cell->node[k]] +=
            half * (k == 1 || k == 2 ? out * out - middle * middle : middle * middle - in * in);
}

static int pieces_in(const rings *r, size_t ring) {
    double in = r->radius_m[ring], out = r->radius_m[ring + 1];
    if (!(r->case_m > 0) || r->radius_m[r->n] - out > r->case_m) return 2;
    int need = (int)ceil(FINE * (out - in) / r->case_m - 1e-9);
    return need < 2 ? 2 : need > MOST_PIECES ? MOST_PIECES : need;
}

/* Fibres of the newest cell, each at the radius that bends as its piece does. */
static hs_status add_fibres(hs_quench_mesh *mesh, const rings *r, size_t ring, size_t sector,
                            hs_error *err) {
    double turn = 2 * PI / SECTORS, in = r->radius_m[ring], out = r->radius_m[ring + 1];
    int pieces = pieces_in(r, ring);
    hs_quench_cell *cell = &mesh->cell[mesh->cells - 1];
    cell->first = (unsigned short)mesh->fibres;
    cell->fibres = (unsigned short)(2 * pieces);
    if (mesh->fibres + cell->fibres > HS_QUENCH_FIBRES)
        return hs_fail(err, HS_E_TOO_LARGE, "a wider spacing", "more than %d fibres",
                       HS_QUENCH_FIBRES);
    for (int i = 0; i < pieces; i++) {
        double a = in + (out - in) * i / pieces, b = in + (out - in) * (i + 1) / pieces;
        double at = sqrt(0.5 * (a * a + b * b)), u = (at - in) / (out - in);
        for (int j = 0; j < 2; j++) {
            double v = 0.25 + 0.5 * j, angle = turn * ((double)sector + v);
            mesh->fibre[mesh->fibres++] =
                (hs_quench_fibre){.cell = (unsigned short)(mesh->cells - 1),
                                  .weight = {(1 - u) * (1 - v), u * (1 - v), u * v, (1 - u) * v},
                                  .x_m = at * cos(angle),
                                  .y_m = at * sin(angle),
                                  .area_m2 = 0.25 * turn * (b * b - a * a)};
        }
    }
    return HS_OK;
}

static void add_edge(hs_quench_mesh *mesh, double radius_m, size_t sector) {
    static const double GAUSS = 0.577350269189625765;
    double turn = 2 * PI / SECTORS, angle = turn * ((double)sector + 0.5);
    hs_quench_segment *s = &mesh->segment[mesh->segments++];
    *s = (hs_quench_segment){.cell = (unsigned short)(mesh->cells - 1),
                             .length_m = radius_m * turn,
                             .nx = cos(angle),
                             .ny = sin(angle),
                             .edge = 1};
    for (int k = 0; k < 2; k++) {
        double v = 0.5 + (k ? 0.5 : -0.5) * GAUSS;
        s->weight[k][1] = 1 - v;
        s->weight[k][2] = v;
    }
}

hs_status hs_quench_mesh_round(hs_quench_mesh *mesh, double diameter_m, double spacing_m,
                               double skin_m, double case_m, hs_error *err) {
    rings r = {.case_m = case_m};
    double radius_m = 0.5 * diameter_m;
    if (!(radius_m > 0 && isfinite(radius_m) && spacing_m > 0 && isfinite(spacing_m)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "above 0", "a round of %g m in cells of %g m",
                       diameter_m, spacing_m);
    hs_status status = lay(&r, radius_m, spacing_m, skin_m, err);
    if (status != HS_OK) return status;
    mesh->cells = mesh->fibres = mesh->segments = 0;
    mesh->spacing_m = spacing_m;
    mesh->radius_m = radius_m;
    mesh->upright = 1;
    place_nodes(mesh, &r);
    for (size_t ring = 0; ring < r.n; ring++)
        for (size_t k = 0; k < SECTORS; k++) {
            add_cell(mesh, &r, ring, k);
            status = add_fibres(mesh, &r, ring, k, err);
            if (status != HS_OK) return status;
            if (ring + 1 == r.n) add_edge(mesh, radius_m, k);
        }
    return HS_OK;
}
