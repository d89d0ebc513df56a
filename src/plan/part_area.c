#include "plan/descale.h"

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
