/* Is the section one that can be made: simple outline, holes inside and apart? */
#include "hardskin/model/section.h"

#include "model/polygon.h"

#include <math.h>
#include <stdio.h>

/* Lengths below this share of the section's size count as nothing. */
static const double SMALL = 1e-9;

/* A closed line of the section and what to call it in a message. */
typedef struct loop {
    const hs_outline *line;
    char name[32];
} loop;

static loop make_loop(const hs_section *section, size_t index) {
    loop l = {&section->outline, "the outline"};
    if (index == 0) return l;
    l.line = &section->holes[index - 1];
    snprintf(l.name, sizeof l.name, "hole %zu", index);
    return l;
}

static hs_status check_points(const loop *l, hs_error *err) {
    if (l->line->n < 3)
        return hs_fail(err, HS_E_OUTLINE, "give at least three vertices",
                       "%s has fewer than three vertices", l->name);
    for (size_t i = 0; i < l->line->n; i++)
        if (!isfinite(l->line->point[i].x_m) || !isfinite(l->line->point[i].y_m))
            return hs_fail(err, HS_E_OUTLINE, "give two numbers", "vertex %zu of %s is no point",
                           i + 1, l->name);
    return HS_OK;
}

static double size_of(const hs_outline *line) {
    double x0 = line->point[0].x_m, x1 = x0, y0 = line->point[0].y_m, y1 = y0;
    for (size_t i = 1; i < line->n; i++) {
        x0 = fmin(x0, line->point[i].x_m), x1 = fmax(x1, line->point[i].x_m);
        y0 = fmin(y0, line->point[i].y_m), y1 = fmax(y1, line->point[i].y_m);
    }
    return hypot(x1 - x0, y1 - y0);
}

static hs_status check_repeats(const loop *l, double small_m, hs_error *err) {
    for (size_t i = 0; i < l->line->n; i++) {
        hs_point a = l->line->point[i], b = hs_polygon_vertex(l->line, i + 1);
        if (hypot(b.x_m - a.x_m, b.y_m - a.y_m) <= small_m)
            return hs_fail(err, HS_E_OUTLINE,
                           "leave one out; the first vertex is not repeated at the end",
                           "vertex %zu of %s is the same point as the one before",
                           (i + 1) % l->line->n + 1, l->name);
    }
    return HS_OK;
}

/* Edges that run back over the edge before. */
static hs_status check_corners(const loop *l, double small_m, hs_error *err) {
    for (size_t i = 0; i < l->line->n; i++) {
        hs_point a = l->line->point[i], b = hs_polygon_vertex(l->line, i + 1);
        hs_point c = hs_polygon_vertex(l->line, i + 2);
        if (hs_polygon_point_gap(c, a, b) <= small_m || hs_polygon_point_gap(a, b, c) <= small_m)
            return hs_fail(err, HS_E_OUTLINE, "leave the spike out",
                           "at vertex %zu %s runs back over itself", (i + 1) % l->line->n + 1,
                           l->name);
    }
    return HS_OK;
}

/* Edges of one loop that are not neighbours must stay apart. */
static hs_status check_crossing(const loop *l, double small_m, hs_error *err) {
    size_t n = l->line->n;
    for (size_t i = 0; i < n; i++)
        for (size_t j = i + 2; j < n; j++) {
            if (i == 0 && j == n - 1) continue;
            double gap = hs_polygon_gap(l->line->point[i], hs_polygon_vertex(l->line, i + 1),
                                        l->line->point[j], hs_polygon_vertex(l->line, j + 1));
            if (gap <= small_m)
                return hs_fail(err, HS_E_OUTLINE, "give the vertices in order round the section",
                               "the edges from vertex %zu and from vertex %zu of %s %s", i + 1,
                               j + 1, l->name, gap > 0 ? "touch" : "cross or touch");
        }
    return HS_OK;
}

static hs_status check_loop(const loop *l, double small_m, hs_error *err) {
    hs_status status = check_repeats(l, small_m, err);
    if (!status) status = check_corners(l, small_m, err);
    if (!status) status = check_crossing(l, small_m, err);
    if (status) return status;
    if (!(fabs(hs_polygon_area(l->line)) > small_m * small_m))
        return hs_fail(err, HS_E_OUTLINE, "give the vertices of a real section",
                       "from vertex 1 on %s encloses nothing", l->name);
    return HS_OK;
}

/* No edge of one loop may meet one of the other. */
static hs_status check_apart(const loop *a, const loop *b, double small_m, hs_error *err) {
    for (size_t i = 0; i < b->line->n; i++)
        for (size_t j = 0; j < a->line->n; j++) {
            double gap = hs_polygon_gap(b->line->point[i], hs_polygon_vertex(b->line, i + 1),
                                        a->line->point[j], hs_polygon_vertex(a->line, j + 1));
            if (gap <= small_m)
                return hs_fail(err, HS_E_OUTLINE, "a hole lies inside the outline, clear of others",
                               "%s meets %s near its vertex %zu", b->name, a->name, i + 1);
        }
    return HS_OK;
}

static hs_status check_hole(const hs_section *section, size_t h, double small_m, hs_error *err) {
    loop outline = make_loop(section, 0), hole = make_loop(section, h);
    hs_status status = check_apart(&outline, &hole, small_m, err);
    if (status) return status;
    if (!hs_polygon_inside(outline.line, hole.line->point[0]))
        return hs_fail(err, HS_E_OUTLINE, "a hole lies inside the outline",
                       "vertex 1 of %s lies outside the outline", hole.name);
    for (size_t k = 1; k < h; k++) {
        loop other = make_loop(section, k);
        status = check_apart(&other, &hole, small_m, err);
        if (status) return status;
        if (hs_polygon_inside(other.line, hole.line->point[0]) ||
            hs_polygon_inside(hole.line, other.line->point[0]))
            return hs_fail(err, HS_E_OUTLINE, "holes lie side by side",
                           "%s and %s lie one inside the other, at vertex 1", other.name,
                           hole.name);
    }
    return HS_OK;
}

hs_status hs_section_check(const hs_section *section, hs_error *err) {
    double small_m = 0;
    for (size_t i = 0; i <= section->n_holes; i++) {
        loop l = make_loop(section, i);
        hs_status status = check_points(&l, err);
        if (status) return status;
        if (i == 0) small_m = SMALL * size_of(l.line);
        status = check_loop(&l, small_m, err);
        if (status) return status;
    }
    for (size_t h = 1; h <= section->n_holes; h++) {
        hs_status status = check_hole(section, h, small_m, err);
        if (status) return status;
    }
    return HS_OK;
}
