/* The ways carbon goes into a part: one axis = one face with the wall behind it. Faces with equal
 * walls and equal far sides share an axis. */
#ifndef HS_PLAN_AXIS_H
#define HS_PLAN_AXIS_H

#include "hardskin/plan/job.h"

enum { HS_MAX_AXES = 12 };

typedef struct hs_axis {
    hs_shape shape;
    double size_m;   /* as hs_carbon_mesh_make: thickness, radius, outer radius */
    double inner_m;  /* radius of the bore */
    double wall_m;   /* from this face to what lies behind it (a bar: its diameter) */
    int far_exposed; /* carbon enters from the far side, too */
} hs_axis;

typedef struct hs_axes {
    hs_axis axis[HS_MAX_AXES];
    size_t n;
    size_t of_face[HS_MAX_FACES]; /* axis of a face; HS_MAX_AXES for a soft (masked) face */
} hs_axes;

/** Axes of the ground faces of a job that carbon enters; of its first such face if none is ground.
 *  The other faces share the first axis for what is said of their surface.
 *  Returns  HS_OK; HS_E_TOO_LARGE for more than HS_MAX_AXES different walls; HS_E_OUTLINE. */
hs_status hs_axes_of(hs_axes *axes, const hs_job *job, hs_error *err);

/** The wall behind one face, whether or not it has an axis of its own. */
hs_status hs_axis_of_face(hs_axis *axis, const hs_job *job, size_t face, hs_error *err);

/** Face opposite to a face, or HS_MAX_FACES where there is none (a bar's outside). */
size_t hs_face_behind(const hs_job *job, size_t face);

#endif
