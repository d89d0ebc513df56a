#include "plan/cool.h"

#include "constants.h"

#include <math.h>

enum { AIR_POINTS = 9 };

static hs_bulk prism(double section_m2, double perimeter_m, double length_m) {
    return (hs_bulk){section_m2 * length_m, perimeter_m * length_m + 2 * section_m2, section_m2,
                     perimeter_m};
}

hs_bulk hs_bulk_of(const hs_part *part) {
    hs_section_properties s = {0};
    switch (part->form) {
    case HS_PLATE:
        hs_section_plate(&s, part->width_m, part->thickness_m, NULL);
        break;
    case HS_BAR:
        hs_section_round(&s, part->diameter_m, 0, NULL);
        break;
    case HS_RING:
        hs_section_round(&s, part->outside_m, part->bore_m, NULL);
        break;
    case HS_PROFILE:
        hs_section_measure(&s, &part->section, NULL);
        break;
    }
    return prism(s.area_m2, s.perimeter_m, part->length_m);
}

size_t hs_cool_in_air(hs_heat_point *point, double from_K, const hs_job *job) {
    hs_bulk bulk = hs_bulk_of(&job->part);
    double size_m = bulk.surface_m2 > 0 ? bulk.volume_m3 / bulk.surface_m2 : 0;
    double time_s = HS_K_PLAN_DOUBT_AIR_COOLING_HEAT * size_m / HS_K_PLAN_DOUBT_AIR_COEFFICIENT;
    double air_K = HS_K_PLAN_DOUBT_QUENCH_BATH, end_K = HS_K_OXIDATION_RANGE_LOW;
    double whole_s = time_s * log((from_K - air_K) / (end_K - air_K));
    for (size_t i = 0; i < AIR_POINTS; i++) {
        double t = whole_s * (double)i / (AIR_POINTS - 1);
        point[i] = (hs_heat_point){t, air_K + (from_K - air_K) * exp(-t / fmax(time_s, 1e-9))};
    }
    return AIR_POINTS;
}
