#include "hardskin/model/section.h"

#include "model/polygon.h"

#include <math.h>

static const double PI = 3.14159265358979323846;

/* Integrals over an area, about a reference point. */
typedef struct moments {
    double A, Sx, Sy, Ix, Iy, Ixy, length;
} moments;

/* Green's theorem, edge by edge; anticlockwise counts positive. */
static moments loop_moments(const hs_outline *line, hs_point about) {
    moments m = {0};
    for (size_t i = 0; i < line->n; i++) {
        hs_point a = line->point[i], b = hs_polygon_vertex(line, i + 1);
        double x0 = a.x_m - about.x_m, y0 = a.y_m - about.y_m;
        double x1 = b.x_m - about.x_m, y1 = b.y_m - about.y_m;
        double c = x0 * y1 - x1 * y0;
        m.A += c / 2;
        m.Sx += (y0 + y1) * c / 6;
        m.Sy += (x0 + x1) * c / 6;
        m.Ix += (y0 * y0 + y0 * y1 + y1 * y1) * c / 12;
        m.Iy += (x0 * x0 + x0 * x1 + x1 * x1) * c / 12;
        m.Ixy += (x0 * y1 + 2 * x0 * y0 + 2 * x1 * y1 + x1 * y0) * c / 24;
        m.length += hypot(x1 - x0, y1 - y0);
    }
    return m;
}

/* Add a loop, turned so that it counts as metal (+1) or as a hole (-1). */
static void add_loop(moments *sum, const hs_outline *line, hs_point about, double metal) {
    moments m = loop_moments(line, about);
    double sign = m.A < 0 ? -metal : metal;
    sum->A += sign * m.A;
    sum->Sx += sign * m.Sx;
    sum->Sy += sign * m.Sy;
    sum->Ix += sign * m.Ix;
    sum->Iy += sign * m.Iy;
    sum->Ixy += sign * m.Ixy;
    sum->length += m.length;
}

static moments section_moments(const hs_section *section, hs_point about) {
    moments sum = {0};
    add_loop(&sum, &section->outline, about, 1);
    for (size_t h = 0; h < section->n_holes; h++)
        add_loop(&sum, &section->holes[h], about, -1);
    return sum;
}

static void set_principal(hs_section_properties *p) {
    double mean = (p->Ix_m4 + p->Iy_m4) / 2, half = (p->Ix_m4 - p->Iy_m4) / 2;
    double radius = hypot(half, p->Ixy_m4);
    p->I1_m4 = mean + radius;
    p->I2_m4 = mean - radius;
    p->axis1_rad = radius > 0 ? atan2(-p->Ixy_m4, half) / 2 : 0;
}

static hs_section_properties from_moments(const moments *m, hs_point about) {
    hs_section_properties p = {.area_m2 = m->A, .x_m = about.x_m, .y_m = about.y_m};
    p.Ix_m4 = m->Ix;
    p.Iy_m4 = m->Iy;
    p.Ixy_m4 = m->Ixy;
    p.perimeter_m = m->length;
    p.cooling_size_m = m->A / m->length;
    set_principal(&p);
    return p;
}

hs_status hs_section_measure(hs_section_properties *out, const hs_section *section, hs_error *err) {
    hs_status status = hs_section_check(section, err);
    if (status) return status;
    hs_point centre = section->outline.point[0];
    moments rough = section_moments(section, centre);
    centre.x_m += rough.Sy / rough.A;
    centre.y_m += rough.Sx / rough.A;
    /* Once more about the centroid: no parallel-axis term that could cancel digits. */
    moments m = section_moments(section, centre);
    *out = from_moments(&m, centre);
    for (size_t i = 0; i < section->outline.n; i++) {
        hs_point p = section->outline.point[i];
        out->reach_m = fmax(out->reach_m, hypot(p.x_m - centre.x_m, p.y_m - centre.y_m));
    }
    return HS_OK;
}

hs_status hs_section_plate(hs_section_properties *out, double width_m, double height_m,
                           hs_error *err) {
    double b = width_m, h = height_m;
    if (!(b > 0 && h > 0 && isfinite(b) && isfinite(h)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "both sizes above 0", "a plate of %g x %g mm",
                       1000 * b, 1000 * h);
    moments m = {.A = b * h, .length = 2 * (b + h)};
    m.Ix = b * h * h * h / 12;
    m.Iy = h * b * b * b / 12;
    *out = from_moments(&m, (hs_point){0, 0});
    out->reach_m = hypot(b, h) / 2;
    return HS_OK;
}

hs_status hs_section_round(hs_section_properties *out, double outside_m, double bore_m,
                           hs_error *err) {
    double D = outside_m, d = bore_m;
    if (!(D > 0 && d >= 0 && d < D && isfinite(D)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "0 <= bore < outside",
                       "a round of %g mm with a bore of %g mm", 1000 * D, 1000 * d);
    moments m = {.A = PI / 4 * (D - d) * (D + d), .length = PI * (D + d)};
    m.Ix = m.Iy = PI / 64 * (D * D * D * D - d * d * d * d);
    *out = from_moments(&m, (hs_point){0, 0});
    out->reach_m = D / 2;
    return HS_OK;
}

hs_outline hs_section_circle(hs_point *point, size_t n, double diameter_m) {
    double step = 2 * acos(-1) / (double)n;
    double radius_m = 0.5 * diameter_m * sqrt(step / sin(step));
    for (size_t i = 0; i < n; i++) {
        double angle = ((double)i - 0.5) * step;
        point[i] = (hs_point){radius_m * cos(angle), radius_m * sin(angle)};
    }
    return (hs_outline){point, n};
}
