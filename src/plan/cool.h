/* Sizes of the whole part that heat and tank ask for: surface, volume, cooling in air. */
#ifndef HS_PLAN_COOL_H
#define HS_PLAN_COOL_H

#include "hardskin/plan/job.h"

/** Volume (m3), surface (m2, holes of features not counted), cross-section and its perimeter. */
typedef struct hs_bulk {
    double volume_m3, surface_m2, section_m2, perimeter_m;
} hs_bulk;

/** Of the finished part; all 0 for a profile the section check refuses. */
hs_bulk hs_bulk_of(const hs_part *part);

/** Path of a part left in air from a heat, Newton's law by volume over surface, down to 500 C.
 *  Writes at most 9 points, returns how many. */
size_t hs_cool_in_air(hs_heat_point *point, double from_K, const hs_job *job);

#endif
