/* The axes about which a section bends: they belong to the section, not to the sheet's x and y. */
#ifndef HS_PLAN_WARP_FRAME_H
#define HS_PLAN_WARP_FRAME_H

#include "hardskin/plan/job.h"

/** Direction of a section's first frame axis from x (rad); the second stands a quarter turn on.
 *  Turning the outline turns the frame with it.
 *  Returns  HS_OK; HS_E_OUTLINE as hs_section_measure. */
hs_status hs_warp_frame(double *axis_rad, const hs_section *section, hs_error *err);

/** Extent of an outline along a direction of length 1 (m). */
double hs_warp_extent(const hs_outline *outline, double nx, double ny);

/** Height of a part's section along the frame's two axes (m). */
void hs_warp_heights(double *x_m, double *y_m, const hs_part *part, double axis_rad);

#endif
