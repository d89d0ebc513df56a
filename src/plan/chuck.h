/* A flat on the magnetic chuck: which of a part's flats it can pull flat, and how hard it must
 * pull. */
#ifndef HS_PLAN_CHUCK_H
#define HS_PLAN_CHUCK_H

#include "hardskin/plan/job.h"

/** Outward normal of a flat face across the part, in the section's axes; 0, 0 for any other face.
 */
void hs_chuck_normal(double *nx, double *ny, const hs_job *job, size_t face);

/** The way a part gives to the chuck: across a plate's thickness; of a profile along the normal of
 *  that of its dimensions between flats in which it is weakest. 0, 0 where it is not held so. */
void hs_chuck_weak(double *nx, double *ny, const hs_job *job);

/** Is a dimension between flats ground while the chuck pulls the part flat that way? Not a slot. */
int hs_chuck_pulls(const hs_job *job, const hs_dimension *dimension, double weak_x, double weak_y);

/** Pull on the chuck's face (Pa) that presses a bow across a dimension's flats straight, as it lies
 *  on the narrower of them, hardened size `size_m` (of a plate; a profile's section is the
 * sheet's). NaN where there is no such flat. */
double hs_chuck_pull_Pa(const hs_job *job, const hs_dimension *dimension, double size_m,
                        double bow_m);

/** Largest bow that any usual chuck surely presses flat (m); 0 where that is not known. */
double hs_chuck_flattens_m(const hs_job *job, const hs_dimension *dimension, double size_m);

#endif
