#include "plan/warp_frame.h"

#include <math.h>

/* The second axis is the one about which the section is stiffest: along it a bow comes easiest, as
 * across the thickness of a plate. A section alike all ways has its first edge as first axis. The
 * sense is that of the first edge, so that the frame turns with the section. */
hs_status hs_warp_frame(double *axis_rad, const hs_section *section, hs_error *err) {
    const double alike = 1e-6; /* relative; far above rounding, far below any other section */
    hs_section_properties s;
    hs_section_edge edge;
    hs_status status = hs_section_measure(&s, section, err);
    if (status == HS_OK) status = hs_section_edge_at(&edge, section, 1, err);
    if (status != HS_OK) return status;
    double tx = -edge.ny, ty = edge.nx; /* along the edge, metal on its left */
    if (s.I1_m4 - s.I2_m4 <= alike * s.I1_m4) {
        *axis_rad = atan2(ty, tx);
        return HS_OK;
    }
    double first_rad = s.axis1_rad - 0.5 * acos(-1);
    double along = cos(first_rad) * tx + sin(first_rad) * ty;
    double across = cos(first_rad) * ty - sin(first_rad) * tx;
    int against = fabs(along) > alike ? along < 0 : across < 0;
    *axis_rad = against ? first_rad + acos(-1) : first_rad;
    return HS_OK;
}

double hs_warp_extent(const hs_outline *outline, double nx, double ny) {
    double low = INFINITY, high = -INFINITY;
    for (size_t i = 0; i < outline->n; i++) {
        double h = outline->point[i].x_m * nx + outline->point[i].y_m * ny;
        low = fmin(low, h);
        high = fmax(high, h);
    }
    return high - low;
}

void hs_warp_heights(double *x_m, double *y_m, const hs_part *part, double axis_rad) {
    double c = cos(axis_rad), s = sin(axis_rad);
    switch (part->form) {
    case HS_PLATE:
        *x_m = part->width_m;
        *y_m = part->thickness_m;
        return;
    case HS_BAR:
        *x_m = *y_m = part->diameter_m;
        return;
    case HS_RING:
        *x_m = *y_m = 0.5 * (part->outside_m - part->bore_m);
        return;
    case HS_PROFILE:
        *x_m = hs_warp_extent(&part->section.outline, c, s);
        *y_m = hs_warp_extent(&part->section.outline, -s, c);
        return;
    }
}
