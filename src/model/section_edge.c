/* Where the faces of a section lie: edges counted from 1, walls behind them, pairs. */
#include "hardskin/model/section.h"

#include "model/polygon.h"

#include <math.h>

static const double PI = 3.14159265358979324;

hs_status hs_section_edge_at(hs_section_edge *out, const hs_section *section, size_t edge,
                             hs_error *err) {
    const hs_outline *line = &section->outline;
    if (edge < 1 || edge > line->n)
        return hs_fail(err, HS_E_OUTLINE, "edges are counted from 1, one per vertex",
                       "the outline has %zu edges, there is no edge %zu", line->n, edge);
    hs_point a = line->point[edge - 1], b = hs_polygon_vertex(line, edge);
    double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m, length = hypot(dx, dy);
    double sense = hs_polygon_area(line) > 0 ? 1 : -1;
    out->middle = (hs_point){(a.x_m + b.x_m) / 2, (a.y_m + b.y_m) / 2};
    out->length_m = length;
    out->nx = sense * dy / length;
    out->ny = -sense * dx / length;
    return HS_OK;
}

hs_status hs_section_corner(double *angle_rad, const hs_section *section, size_t vertex,
                            hs_error *err) {
    const hs_outline *line = &section->outline;
    if (vertex < 1 || vertex > line->n)
        return hs_fail(err, HS_E_OUTLINE, "vertices are counted from 1",
                       "the outline has %zu vertices, there is no vertex %zu", line->n, vertex);
    hs_point before = hs_polygon_vertex(line, vertex + line->n - 2);
    hs_point at = line->point[vertex - 1], after = hs_polygon_vertex(line, vertex);
    double ax = at.x_m - before.x_m, ay = at.y_m - before.y_m;
    double bx = after.x_m - at.x_m, by = after.y_m - at.y_m;
    double turn = atan2(ax * by - ay * bx, ax * bx + ay * by);
    *angle_rad = PI - (hs_polygon_area(line) > 0 ? turn : -turn);
    return HS_OK;
}

/* Nearest hit of a ray with the edges of a loop, `skip` (from 0) left out. */
static double ray_hit(const hs_outline *line, size_t skip, const hs_section_edge *from) {
    double nearest = INFINITY, ux = -from->nx, uy = -from->ny;
    for (size_t i = 0; i < line->n; i++) {
        if (i == skip) continue;
        hs_point a = line->point[i], b = hs_polygon_vertex(line, i + 1);
        double ex = b.x_m - a.x_m, ey = b.y_m - a.y_m, det = ux * ey - uy * ex;
        if (fabs(det) < 1e-12 * hypot(ex, ey)) continue; /* runs along the ray */
        double px = a.x_m - from->middle.x_m, py = a.y_m - from->middle.y_m;
        double along = (px * ey - py * ex) / det, where = (px * uy - py * ux) / det;
        int hit = where >= -1e-9 && where <= 1 + 1e-9;
        if (hit && along > 1e-9 * from->length_m) nearest = fmin(nearest, along);
    }
    return nearest;
}

hs_status hs_section_wall(double *wall_m, const hs_section *section, size_t edge, hs_error *err) {
    hs_section_edge from;
    hs_status status = hs_section_edge_at(&from, section, edge, err);
    if (status) return status;
    double nearest = ray_hit(&section->outline, edge - 1, &from);
    for (size_t h = 0; h < section->n_holes; h++)
        nearest = fmin(nearest, ray_hit(&section->holes[h], section->holes[h].n, &from));
    if (!isfinite(nearest))
        return hs_fail(err, HS_E_OUTLINE, "check the outline first", "edge %zu has no wall behind",
                       edge);
    *wall_m = nearest;
    return HS_OK;
}

hs_status hs_section_pair(hs_edge_pair *pair, double *distance_m, const hs_section *section,
                          size_t j, size_t k, hs_error *err) {
    hs_section_edge a, b;
    hs_status status = hs_section_edge_at(&a, section, j, err);
    if (!status) status = hs_section_edge_at(&b, section, k, err);
    if (status) return status;
    if (j == k)
        return hs_fail(err, HS_E_OUTLINE, "name two edges", "edge %zu is paired with itself", j);
    double cross = a.nx * b.ny - a.ny * b.nx, dot = a.nx * b.nx + a.ny * b.ny;
    /* How far b lies beyond a, seen along a's outward normal. */
    double beyond = (b.middle.x_m - a.middle.x_m) * a.nx + (b.middle.y_m - a.middle.y_m) * a.ny;
    *pair = fabs(cross) > 1e-6 ? HS_EDGES_OBLIQUE
            : dot > 0          ? HS_EDGES_STEP
            : beyond < 0       ? HS_EDGES_OUTSIDE
                               : HS_EDGES_INSIDE;
    *distance_m = *pair == HS_EDGES_OBLIQUE ? 0 : fabs(beyond);
    return HS_OK;
}

hs_status hs_section_extent(double *extent_m, const hs_section *section, size_t edge,
                            hs_error *err) {
    hs_section_edge e;
    hs_status status = hs_section_edge_at(&e, section, edge, err);
    if (status) return status;
    double low = INFINITY, high = -INFINITY;
    for (size_t i = 0; i < section->outline.n; i++) {
        hs_point p = section->outline.point[i];
        double along = (p.x_m - e.middle.x_m) * e.nx + (p.y_m - e.middle.y_m) * e.ny;
        low = fmin(low, along);
        high = fmax(high, along);
    }
    *extent_m = high - low;
    return HS_OK;
}
