#include "model/quench_grid.h"

#include "base/num.h"
#include "model/polygon.h"

#include <math.h>

/* Lines closer than this share of the spacing are made one: the clipping does not need them. */
static const double MERGE = 0.25;
/* An edge counts as parallel to the grid below this slope. */
static const double PARALLEL = 1e-9;

hs_point hs_quench_grid_back(const hs_quench_grid *g, hs_point p) {
    return (hs_point){g->c * p.x_m - g->s * p.y_m, g->s * p.x_m + g->c * p.y_m};
}

static void turn_to_longest(hs_quench_grid *g, const hs_outline *outline) {
    double longest = 0;
    for (size_t i = 0; i < outline->n; i++) {
        hs_point a = outline->point[i], b = hs_polygon_vertex(outline, i + 1);
        double length = hypot(b.x_m - a.x_m, b.y_m - a.y_m);
        if (length <= longest * (1 + 1e-9)) continue;
        longest = length;
        g->c = (b.x_m - a.x_m) / length;
        g->s = (b.y_m - a.y_m) / length;
    }
}

static hs_status take_loop(hs_quench_grid *g, size_t *used, const hs_outline *loop, hs_error *err) {
    if (loop->n > HS_CLIP_VERTICES || *used + loop->n > HS_CLIP_ALL)
        return hs_fail(err, HS_E_TOO_LARGE, "fewer vertices",
                       "an outline or hole of %zu vertices: at most %d", loop->n, HS_CLIP_VERTICES);
    int reverse = hs_polygon_area(loop) < 0;
    g->whole.start[g->whole.loops++] = *used;
    for (size_t i = 0; i < loop->n; i++) {
        hs_point p = loop->point[reverse ? loop->n - 1 - i : i];
        double x = p.x_m - g->centre.x_m, y = p.y_m - g->centre.y_m;
        g->whole.point[(*used)++] = (hs_point){g->c * x + g->s * y, g->c * y - g->s * x};
    }
    g->whole.start[g->whole.loops] = *used;
    return HS_OK;
}

/* Coordinates of the edges that run along the grid, sorted, with the two ends of the section. */
static size_t edge_lines(double *line, const hs_clip *whole, int coordinate) {
    double low = INFINITY, high = -INFINITY;
    size_t n = 0;
    for (size_t k = 0; k < whole->loops; k++)
        for (size_t i = whole->start[k]; i < whole->start[k + 1]; i++) {
            size_t j = i + 1 < whole->start[k + 1] ? i + 1 : whole->start[k];
            hs_point p = whole->point[i], q = whole->point[j];
            double along = coordinate ? q.x_m - p.x_m : q.y_m - p.y_m;
            double a = coordinate ? p.y_m : p.x_m, b = coordinate ? q.y_m : q.x_m;
            low = fmin(low, a);
            high = fmax(high, a);
            if (fabs(b - a) < PARALLEL * fabs(along) && n < HS_CLIP_ALL) line[n++] = 0.5 * (a + b);
        }
    line[n++] = low;
    line[n++] = high;
    hs_sort(line, n);
    return n;
}

size_t hs_quench_grid_graded(double size_m[HS_QUENCH_LINES], double gap_m, double spacing_m,
                             double skin_m, int both) {
    double taken = 0, next = skin_m > 0 ? skin_m : spacing_m, sides = both ? 2 : 1;
    size_t n = 0;
    while (next < spacing_m && sides * (taken + next) < gap_m - 0.5 * next) {
        size_m[n++] = next;
        taken += next;
        next *= 2;
    }
    double rest = gap_m - sides * taken;
    size_t alike = (size_t)fmax(1, ceil(rest / spacing_m - 1e-9)), all = alike + (both ? 2 : 1) * n;
    if (all > HS_QUENCH_LINES) return 0;
    for (size_t i = 0; i < alike; i++)
        size_m[n + i] = rest / (double)alike;
    for (size_t i = n + alike; i < all; i++)
        size_m[i] = size_m[all - 1 - i];
    return all;
}

/* The two nearest lines become one at their middle (an end stays where it is) until all are far
 * enough apart: so that a mirrored section has the mirrored lines. */
static size_t thin_out(double *line, size_t n, double least_m) {
    while (n > 2) {
        size_t near = 0;
        for (size_t i = 1; i + 1 < n; i++)
            if (line[i + 1] - line[i] < line[near + 1] - line[near]) near = i;
        if (line[near + 1] - line[near] >= least_m) break;
        if (near == 0)
            line[1] = line[0];
        else if (near + 2 == n)
            line[near] = line[near + 1];
        else
            line[near] = 0.5 * (line[near] + line[near + 1]);
        n--;
        for (size_t i = near + 1; i < n; i++)
            line[i] = line[i + 1];
    }
    return n;
}

static size_t divide(double *out, double *line, size_t n, double spacing_m, double skin_m) {
    double size[HS_QUENCH_LINES];
    size_t used = 1;
    n = thin_out(line, n, MERGE * spacing_m);
    out[0] = line[0];
    for (size_t i = 1; i < n; i++) {
        size_t parts = hs_quench_grid_graded(size, line[i] - line[i - 1], spacing_m, skin_m, 1);
        if (parts == 0 || used + parts > HS_QUENCH_LINES + 1) return 0;
        for (size_t k = 0; k < parts; k++) {
            out[used] = k + 1 == parts ? line[i] : out[used - 1] + size[k];
            used++;
        }
    }
    return used - 1;
}

hs_status hs_quench_grid_lay(hs_quench_grid *g, const hs_section *section, double spacing_m,
                             double skin_m, hs_error *err) {
    hs_section_properties p;
    double line[HS_CLIP_ALL + 2];
    hs_status status = hs_section_measure(&p, section, err);
    if (status != HS_OK) return status;
    if (section->n_holes + 1 > HS_CLIP_LOOPS)
        return hs_fail(err, HS_E_TOO_LARGE, "fewer holes", "more than %d holes", HS_CLIP_LOOPS - 1);
    g->centre = (hs_point){p.x_m, p.y_m};
    g->whole.loops = 0;
    size_t used = 0;
    turn_to_longest(g, &section->outline);
    status = take_loop(g, &used, &section->outline, err);
    for (size_t h = 0; h < section->n_holes && status == HS_OK; h++)
        status = take_loop(g, &used, &section->holes[h], err);
    if (status != HS_OK) return status;
    size_t n = edge_lines(line, &g->whole, 0);
    g->columns = divide(g->x, line, n, spacing_m, skin_m);
    n = edge_lines(line, &g->whole, 1);
    g->rows = divide(g->y, line, n, spacing_m, skin_m);
    if (g->columns == 0 || g->rows == 0)
        return hs_fail(err, HS_E_TOO_LARGE, "a wider spacing",
                       "the section needs more than %d lines", HS_QUENCH_LINES);
    return HS_OK;
}

/* Column (or row) whose cell holds a coordinate. */
static size_t find(const double *line, size_t cells, double at) {
    size_t low = 0, high = cells;
    while (high - low > 1) {
        size_t middle = (low + high) / 2;
        if (at < line[middle])
            high = middle;
        else
            low = middle;
    }
    return low;
}

static void add_weights(double weight[4], double u, double v) {
    weight[0] = (1 - u) * (1 - v);
    weight[1] = u * (1 - v);
    weight[2] = u * v;
    weight[3] = (1 - u) * v;
}

/* Shares of the way from p to q at which it meets a grid line, sorted, 0 and 1 among them. */
static size_t cuts(double *at, const hs_quench_grid *g, hs_point p, hs_point q) {
    size_t n = 0;
    at[n++] = 0;
    for (int coordinate = 0; coordinate < 2; coordinate++) {
        const double *line = coordinate ? g->y : g->x;
        size_t lines = 1 + (coordinate ? g->rows : g->columns);
        double a = coordinate ? p.y_m : p.x_m, b = coordinate ? q.y_m : q.x_m;
        /* an edge along a grid line meets it nowhere, whatever rounding says */
        if (!(fabs(b - a) > PARALLEL * hypot(q.x_m - p.x_m, q.y_m - p.y_m))) continue;
        for (size_t i = 0; i < lines; i++) {
            double t = (line[i] - a) / (b - a);
            if (t > 1e-9 && t < 1 - 1e-9) at[n++] = t;
        }
    }
    at[n++] = 1;
    hs_sort(at, n);
    return n;
}

typedef struct edge {
    hs_point p, q; /* grid frame, metal to the left */
    double nx, ny; /* outward, grid frame */
    size_t number;
} edge;

/* Number of a cell, -1 where there is no metal. */
static int cell_at(const hs_quench_grid *g, size_t column, size_t row) {
    for (int k = g->first[row]; k < g->first[row + 1]; k++)
        if (g->column[k] == column) return k;
    return -1;
}

static hs_status add_piece(hs_quench_mesh *mesh, const hs_quench_grid *g, const edge *e,
                           double from, double to, hs_error *err) {
    static const double GAUSS = 0.577350269189625765;
    if (to - from < 1e-12) return HS_OK;
    double length = hypot(e->q.x_m - e->p.x_m, e->q.y_m - e->p.y_m) * (to - from);
    double inward = 1e-6 * (g->x[g->columns] - g->x[0] + g->y[g->rows] - g->y[0]);
    double t = 0.5 * (from + to);
    hs_point middle = {e->p.x_m + t * (e->q.x_m - e->p.x_m) - inward * e->nx,
                       e->p.y_m + t * (e->q.y_m - e->p.y_m) - inward * e->ny};
    size_t i = find(g->x, g->columns, middle.x_m), j = find(g->y, g->rows, middle.y_m);
    int cell = cell_at(g, i, j);
    if (cell < 0) return HS_OK; /* a sliver without metal */
    if (mesh->segments == HS_QUENCH_SEGMENTS)
        return hs_fail(err, HS_E_TOO_LARGE, "a wider spacing", "more than %d pieces of edge",
                       HS_QUENCH_SEGMENTS);
    hs_quench_segment *s = &mesh->segment[mesh->segments++];
    hs_point n = hs_quench_grid_back(g, (hs_point){e->nx, e->ny});
    *s = (hs_quench_segment){.cell = (unsigned short)cell,
                             .length_m = length,
                             .nx = n.x_m,
                             .ny = n.y_m,
                             .edge = e->number};
    for (int k = 0; k < 2; k++) {
        double share = t + (k ? 0.5 : -0.5) * GAUSS * (to - from);
        double u = (e->p.x_m + share * (e->q.x_m - e->p.x_m) - g->x[i]) / (g->x[i + 1] - g->x[i]);
        double v = (e->p.y_m + share * (e->q.y_m - e->p.y_m) - g->y[j]) / (g->y[j + 1] - g->y[j]);
        add_weights(s->weight[k], fmin(1, fmax(0, u)), fmin(1, fmax(0, v)));
    }
    return HS_OK;
}

static hs_status add_edge(hs_quench_mesh *mesh, const hs_quench_grid *g, const edge *e,
                          hs_error *err) {
    double at[2 * HS_QUENCH_LINES + 6];
    size_t n = cuts(at, g, e->p, e->q);
    for (size_t k = 0; k + 1 < n; k++) {
        hs_status status = add_piece(mesh, g, e, at[k], at[k + 1], err);
        if (status != HS_OK) return status;
    }
    return HS_OK;
}

hs_status hs_quench_grid_edges(hs_quench_mesh *mesh, const hs_quench_grid *g,
                               const hs_section *section, hs_error *err) {
    int reversed = hs_polygon_area(&section->outline) < 0;
    mesh->segments = 0;
    for (size_t k = 0; k < g->whole.loops; k++) {
        size_t start = g->whole.start[k], n = g->whole.start[k + 1] - start;
        for (size_t i = 0; i < n; i++) {
            edge e = {.p = g->whole.point[start + i], .q = g->whole.point[start + (i + 1) % n]};
            double length = hypot(e.q.x_m - e.p.x_m, e.q.y_m - e.p.y_m), sign = k ? -1 : 1;
            e.nx = sign * (e.q.y_m - e.p.y_m) / length;
            e.ny = sign * (e.p.x_m - e.q.x_m) / length;
            /* Reversed loops run their edges backwards: vertex i is the n-1-i th of the sheet. */
            if (k == 0) e.number = reversed ? (2 * n - 2 - i) % n + 1 : i + 1;
            hs_status status = add_edge(mesh, g, &e, err);
            if (status != HS_OK) return status;
        }
    }
    return HS_OK;
}
