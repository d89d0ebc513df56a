#include "model/polygon.h"

#include <math.h>

double hs_polygon_turn(hs_point a, hs_point b, hs_point c) {
    return (b.x_m - a.x_m) * (c.y_m - a.y_m) - (b.y_m - a.y_m) * (c.x_m - a.x_m);
}

hs_point hs_polygon_vertex(const hs_outline *outline, size_t i) {
    return outline->point[i % outline->n];
}

/* Counted from the first vertex, so that a section far from the origin loses no digits. */
double hs_polygon_area(const hs_outline *outline) {
    double sum = 0;
    for (size_t i = 1; i + 1 < outline->n; i++)
        sum += hs_polygon_turn(outline->point[0], outline->point[i], outline->point[i + 1]);
    return sum / 2;
}

int hs_polygon_inside(const hs_outline *outline, hs_point p) {
    int inside = 0;
    for (size_t i = 0; i < outline->n; i++) {
        hs_point a = outline->point[i], b = hs_polygon_vertex(outline, i + 1);
        if ((a.y_m > p.y_m) == (b.y_m > p.y_m)) continue;
        double x = a.x_m + (p.y_m - a.y_m) / (b.y_m - a.y_m) * (b.x_m - a.x_m);
        if (p.x_m < x) inside = !inside;
    }
    return inside;
}

double hs_polygon_point_gap(hs_point p, hs_point a, hs_point b) {
    double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m, square = dx * dx + dy * dy;
    double t = square > 0 ? ((p.x_m - a.x_m) * dx + (p.y_m - a.y_m) * dy) / square : 0;
    t = fmin(1, fmax(0, t));
    return hypot(p.x_m - a.x_m - t * dx, p.y_m - a.y_m - t * dy);
}

double hs_polygon_gap(hs_point a, hs_point b, hs_point c, hs_point d) {
    double ac = hs_polygon_turn(a, b, c), ad = hs_polygon_turn(a, b, d);
    double ca = hs_polygon_turn(c, d, a), cb = hs_polygon_turn(c, d, b);
    if (((ac > 0 && ad < 0) || (ac < 0 && ad > 0)) && ((ca > 0 && cb < 0) || (ca < 0 && cb > 0)))
        return 0;
    double first = fmin(hs_polygon_point_gap(a, c, d), hs_polygon_point_gap(b, c, d));
    double second = fmin(hs_polygon_point_gap(c, a, b), hs_polygon_point_gap(d, a, b));
    return fmin(first, second);
}
