/* section: what a cross-section measures. */
#include "cli/quick_outline.h"
#include "cli/quick_topics.h"
#include "hardskin/model/section.h"

#include <math.h>

enum { OUTLINE, HOLES };
static const quick_key section_keys[] = {
    {"outline", QUICK_WORD, HS_NUMBER, NULL, 1, NULL},
    {"holes", QUICK_WORD, HS_NUMBER, NULL, 0, NULL},
};

static hs_status run_section(quick_answer *answer, const quick_value *v, const hs_units *units,
                             hs_error *err) {
    quick_outline drawn;
    hs_section_properties p;
    (void)units;
    hs_status status = quick_outline_read(&drawn, v[OUTLINE].text, v[HOLES].text, err);
    if (status == HS_OK) status = hs_section_measure(&p, &drawn.section, err);
    if (status != HS_OK) return status;
    quick_number(answer, "area_mm2", p.area_m2 * 1e6);
    quick_number(answer, "x_mm", p.x_m * 1e3);
    quick_number(answer, "y_mm", p.y_m * 1e3);
    quick_number(answer, "Ix_mm4", p.Ix_m4 * 1e12);
    quick_number(answer, "Iy_mm4", p.Iy_m4 * 1e12);
    quick_number(answer, "Ixy_mm4", p.Ixy_m4 * 1e12);
    quick_number(answer, "I1_mm4", p.I1_m4 * 1e12);
    quick_number(answer, "I2_mm4", p.I2_m4 * 1e12);
    quick_number(answer, "perimeter_mm", p.perimeter_m * 1e3);
    quick_number(answer, "cooling_size_mm", p.cooling_size_m * 1e3);
    quick_note(answer, "axis of I1 lies %.4g degrees from x; perimeter with the walls of holes",
               p.axis1_rad * 180 / acos(-1));
    return HS_OK;
}

const quick_topic quick_section = {
    "section",
    "area, centroid, second moments of a cross-section",
    section_keys,
    2,
    "area_mm2, x_mm, y_mm, Ix_mm4, Iy_mm4, Ixy_mm4, I1_mm4, I2_mm4, perimeter_mm, cooling_size_mm",
    "Green's theorem over the edges; moments about the centroid; cooling size = area / perimeter",
    "closed form",
    "computed",
    "an outline that does not cross or touch itself; holes inside it, apart from each other",
    run_section,
    0,
};
