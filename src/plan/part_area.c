#include "plan/descale.h"
#include "plan/warp_frame.h"

#include <math.h>

static const double PI = 3.14159265358979323846;

hs_status hs_part_area(double *area_m2, const hs_part *part, hs_error *err) {
    double l = part->length_m, w = part->width_m, t = part->thickness_m, d = part->diameter_m;
    double outside = part->outside_m, bore = part->bore_m, area = 0;
    hs_section_properties p;
    hs_status status;
    switch (part->form) {
    case HS_PLATE:
        area = 2 * (l * w + l * t + w * t);
        break;
    case HS_BAR:
        area = PI * d * l + PI * d * d / 2;
        break;
    case HS_RING:
        area = PI * (outside + bore) * l + PI * (outside * outside - bore * bore) / 2;
        break;
    case HS_PROFILE:
        status = hs_section_measure(&p, &part->section, err);
        if (status != HS_OK) return status;
        area = p.perimeter_m * l + 2 * p.area_m2;
        break;
    }
    if (!(area > 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "sizes above 0", "the part has no surface");
    *area_m2 = area;
    return HS_OK;
}

double hs_part_largest(const hs_part *part) {
    double size_m = part->length_m;
    if (part->form == HS_PLATE) size_m = fmax(size_m, fmax(part->width_m, part->thickness_m));
    if (part->form == HS_BAR) size_m = fmax(size_m, part->diameter_m);
    if (part->form == HS_RING) size_m = fmax(size_m, part->outside_m);
    if (part->form == HS_PROFILE)
        size_m = fmax(size_m, fmax(hs_warp_extent(&part->section.outline, 1, 0),
                                   hs_warp_extent(&part->section.outline, 0, 1)));
    return size_m;
}
