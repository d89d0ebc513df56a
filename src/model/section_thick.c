/* The thickest and the thinnest place of a section. */
#include "hardskin/model/section.h"

#include "model/polygon.h"

#include <math.h>

/* Lengths below this share of the section's size count as nothing. */
static const double SMALL = 1e-9;
/* The largest circle is found to this share of its diameter. */
static const double CLOSE = 1e-3;
/* Coarse search for the circle's middle: places across the box round the section. */
enum { PLACES = 16 };

static const hs_outline *loop_at(const hs_section *section, size_t index) {
    return index == 0 ? &section->outline : &section->holes[index - 1];
}

static double nearest_edge(const hs_outline *line, hs_point p) {
    double gap = INFINITY;
    for (size_t i = 0; i < line->n; i++)
        gap = fmin(gap, hs_polygon_point_gap(p, line->point[i], hs_polygon_vertex(line, i + 1)));
    return gap;
}

/* Distance of a point to the nearest wall, negative in the air. */
static double depth_at(const hs_section *section, hs_point p) {
    double gap = nearest_edge(&section->outline, p);
    int metal = hs_polygon_inside(&section->outline, p);
    for (size_t h = 0; h < section->n_holes; h++) {
        gap = fmin(gap, nearest_edge(&section->holes[h], p));
        metal = metal && !hs_polygon_inside(&section->holes[h], p);
    }
    return metal ? gap : -gap;
}

/* Look for a deeper place in a square; the depth falls by no more than the way gone. */
static void search(double *best_m, const hs_section *section, hs_point middle, double half_m) {
    double depth_m = depth_at(section, middle);
    *best_m = fmax(*best_m, depth_m);
    if (depth_m + sqrt(2) * half_m <= *best_m * (1 + CLOSE)) return;
    for (int k = 0; k < 4; k++) {
        hs_point next = {middle.x_m + half_m * (k & 1 ? 0.5 : -0.5),
                         middle.y_m + half_m * (k & 2 ? 0.5 : -0.5)};
        search(best_m, section, next, half_m / 2);
    }
}

typedef struct box {
    double x0, x1, y0, y1;
} box;

static box box_round(const hs_outline *line) {
    box b = {INFINITY, -INFINITY, INFINITY, -INFINITY};
    for (size_t i = 0; i < line->n; i++) {
        b.x0 = fmin(b.x0, line->point[i].x_m), b.x1 = fmax(b.x1, line->point[i].x_m);
        b.y0 = fmin(b.y0, line->point[i].y_m), b.y1 = fmax(b.y1, line->point[i].y_m);
    }
    return b;
}

static hs_point place(const box *b, int k, int across, int up) {
    return (hs_point){b->x0 + (b->x1 - b->x0) * (k % across + 0.5) / across,
                      b->y0 + (b->y1 - b->y0) * (k / across + 0.5) / up};
}

/* Diameter of the largest circle that fits into the metal. */
static double largest_circle(const hs_section *section) {
    box b = box_round(&section->outline);
    double wide = b.x1 - b.x0, high = b.y1 - b.y0, best_m = 0;
    int across = wide > high ? PLACES : (int)ceil(PLACES * wide / high);
    int up = high > wide ? PLACES : (int)ceil(PLACES * high / wide);
    double half_m = fmax(wide / across, high / up) / 2;
    for (int k = 0; k < across * up; k++)
        best_m = fmax(best_m, depth_at(section, place(&b, k, across, up)));
    for (int k = 0; k < across * up; k++)
        search(&best_m, section, place(&b, k, across, up), half_m);
    return 2 * best_m;
}

/* Does the straight line from a to b run through metal, or along its edge, all the way? */
static int runs_in_metal(const hs_section *section, hs_point a, hs_point b, double small_m) {
    hs_point middle = {(a.x_m + b.x_m) / 2, (a.y_m + b.y_m) / 2};
    if (depth_at(section, middle) < -small_m) return 0;
    for (size_t l = 0; l <= section->n_holes; l++) {
        const hs_outline *line = loop_at(section, l);
        double slip = small_m * hypot(b.x_m - a.x_m, b.y_m - a.y_m);
        for (size_t i = 0; i < line->n; i++) {
            hs_point c = line->point[i], d = hs_polygon_vertex(line, i + 1);
            double ca = hs_polygon_turn(a, b, c), da = hs_polygon_turn(a, b, d);
            double ac = hs_polygon_turn(c, d, a), bc = hs_polygon_turn(c, d, b);
            int sides = (ca > slip && da < -slip) || (ca < -slip && da > slip);
            double slip_c = small_m * hypot(d.x_m - c.x_m, d.y_m - c.y_m);
            if (sides && ((ac > slip_c && bc < -slip_c) || (ac < -slip_c && bc > slip_c))) return 0;
        }
    }
    return 1;
}

typedef struct search_thin {
    const hs_section *section;
    double small_m, least_m;
} search_thin;

/* From a corner square across to an edge, where its foot lies on that edge. */
static void try_foot(search_thin *t, hs_point v, hs_point a, hs_point b) {
    double ex = b.x_m - a.x_m, ey = b.y_m - a.y_m, long2 = ex * ex + ey * ey;
    double where = ((v.x_m - a.x_m) * ex + (v.y_m - a.y_m) * ey) / long2;
    if (where < -SMALL || where > 1 + SMALL) return;
    hs_point foot = {a.x_m + where * ex, a.y_m + where * ey};
    double gap = hypot(foot.x_m - v.x_m, foot.y_m - v.y_m);
    if (gap < t->least_m && runs_in_metal(t->section, v, foot, t->small_m)) t->least_m = gap;
}

/* An inner corner: the metal fills more than half a turn. */
static int is_inner(const hs_section *section, size_t loop, size_t i) {
    const hs_outline *line = loop_at(section, loop);
    double turn = hs_polygon_turn(line->point[i], hs_polygon_vertex(line, i + 1),
                                  hs_polygon_vertex(line, i + 2));
    int left = (hs_polygon_area(line) > 0) == (loop == 0);
    return left ? turn < 0 : turn > 0;
}

/* Two inner corners that face each other. */
static void try_corners(search_thin *t, size_t l, size_t i) {
    const hs_section *s = t->section;
    hs_point v = hs_polygon_vertex(loop_at(s, l), i + 1);
    if (!is_inner(s, l, i)) return;
    for (size_t m = l; m <= s->n_holes; m++) {
        const hs_outline *line = loop_at(s, m);
        for (size_t j = m == l ? i + 1 : 0; j < line->n; j++) {
            hs_point w = hs_polygon_vertex(line, j + 1);
            double gap = hypot(w.x_m - v.x_m, w.y_m - v.y_m);
            int next = m == l && (j == i + 1 || (i == 0 && j == line->n - 1));
            if (!next && gap < t->least_m && is_inner(s, m, j) &&
                runs_in_metal(s, v, w, t->small_m))
                t->least_m = gap;
        }
    }
}

static void try_vertex(search_thin *t, size_t l, size_t i) {
    const hs_outline *own = loop_at(t->section, l);
    size_t at = (i + 1) % own->n;
    for (size_t m = 0; m <= t->section->n_holes; m++) {
        const hs_outline *line = loop_at(t->section, m);
        for (size_t j = 0; j < line->n; j++) {
            int beside = m == l && (j == at || (j + 1) % line->n == at);
            if (!beside)
                try_foot(t, own->point[at], line->point[j], hs_polygon_vertex(line, j + 1));
        }
    }
}

hs_status hs_section_thickness(double *thick_m, double *thin_m, const hs_section *section,
                               hs_error *err) {
    hs_status status = hs_section_check(section, err);
    if (status) return status;
    box b = box_round(&section->outline);
    search_thin t = {section, SMALL * hypot(b.x1 - b.x0, b.y1 - b.y0), INFINITY};
    for (size_t l = 0; l <= section->n_holes; l++)
        for (size_t i = 0; i < loop_at(section, l)->n; i++) {
            try_vertex(&t, l, i);
            try_corners(&t, l, i);
        }
    *thick_m = largest_circle(section);
    *thin_m = fmin(t.least_m, *thick_m);
    return HS_OK;
}
