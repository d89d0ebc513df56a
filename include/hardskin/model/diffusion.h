/* Time, depth, carbon: given two, the third, below the face of a half-space. */
#ifndef HARDSKIN_MODEL_DIFFUSION_H
#define HARDSKIN_MODEL_DIFFUSION_H

#include "hardskin/model/carbon_course.h"

/** One temperature, one face. Carburising or decarburising (surface below core, 0 allowed). */
typedef struct hs_diffusion {
    hs_diffusivity d;
    double temp_K; /* ignored by a constant D with Q 0 */
    double core_pct;
    double surface_pct;  /* of the surface; with a transfer: the potential */
    double transfer_m_s; /* 0: the surface stands at surface_pct */
    int cap_at_acm;      /* surface or potential never above A_cm; refused outside 740 to 1050 C */
} hs_diffusion;

/** Scratch for a D that depends on carbon. */
typedef struct hs_diffusion_work {
    hs_carbon_end end;
} hs_diffusion_work;

/** Carbon (wt %) at a depth after a time.
 *
 *    carbon_pct  double        out
 *    given       hs_diffusion  in
 *    time_s      double        in   > 0
 *    depth_m     double        in   >= 0
 *    work                      scratch; may be NULL for HS_D_CONSTANT
 *
 *  Constant D: exact, erfc and scaled erfc (Crank, The Mathematics of Diffusion, 2nd ed., eq. 2.43
 *  and 3.35, from memory). Else numerically, on a mesh that is good to .5 % of the depth by
 *  hs_carbon_course_refine.
 *  Returns  HS_OK; HS_E_RANGE; HS_E_IMPOSSIBLE; HS_E_CONVERGE. Output untouched on failure. */
HS_API hs_status hs_diffusion_carbon(double *carbon_pct, const hs_diffusion *given, double time_s,
                                     double depth_m, hs_diffusion_work *work, hs_error *err);

/** Depth (m) at which the carbon is carbon_pct after a time. As above; HS_E_IMPOSSIBLE when the
 *  carbon wanted does not lie between core and surface, or is reached nowhere yet. */
HS_API hs_status hs_diffusion_depth(double *depth_m, const hs_diffusion *given, double time_s,
                                    double carbon_pct, hs_diffusion_work *work, hs_error *err);

/** Time (s) after which the carbon at a depth is carbon_pct. As above. */
HS_API hs_status hs_diffusion_time(double *time_s, const hs_diffusion *given, double depth_m,
                                   double carbon_pct, hs_diffusion_work *work, hs_error *err);

/** exp(x^2) erfc(x), without overflow for large x. */
HS_API double hs_scaled_erfc(double x);

#endif
