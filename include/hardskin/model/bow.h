/* From curvature to bow, and the bows that have a closed form. Curvature in 1/m; kappa_x is the
 * coefficient of y, kappa_y of x in strain = e0 + kappa_x y + kappa_y x. Twist is not covered. */
#ifndef HARDSKIN_MODEL_BOW_H
#define HARDSKIN_MODEL_BOW_H

#include "hardskin/base/status.h"
#include "hardskin/model/section.h"

/** Bow at mid-length (m): curvature * length^2 / 8. Run-out between the old centres is twice it. */
HS_API double hs_bow_sag_m(double curvature_1_m, double length_m);

/** Curvature (1/m) of a bow over a length. length_m > 0. */
HS_API double hs_bow_curvature_1_m(double bow_m, double length_m);

/** Rise of the free end of a part held at the other (m): curvature * length^2 / 2. */
HS_API double hs_bow_overhang_m(double curvature_1_m, double length_m);

/** Random curvature of a quench, first form: beta * .010 / height.
 *    curvature_1_m  double  out
 *    beta           double  in   a draw with the spread of tables/quench.csv; either sign
 *    height_m       double  in   of the section in the plane of the bow, > 0
 *  Returns  HS_OK; HS_E_IMPOSSIBLE. Source: judgement (tables/growth.csv: random_bow) */
HS_API hs_status hs_bow_random(double *curvature_1_m, double beta, double height_m, hs_error *err);

/** Curvature of a strip with a free strain e in a layer of depth d on one side of height h:
 *  6 e d (h - d) / h^3, elastic; that side becomes convex for e > 0.
 *  Returns  HS_OK; HS_E_IMPOSSIBLE unless 0 <= d <= h, h > 0. */
HS_API hs_status hs_bow_one_sided(double *curvature_1_m, double strain, double depth_m,
                                  double height_m, hs_error *err);

/** Change of curvature when z is ground off ONE face of a strip with a case of free strain e on
 *  both faces, elastic. Negative: the ground face turns hollow.
 *
 *    12 e / h'^3 * [ (d - z)(h' - d + z)/2 - d (h' - d)/2 ],   h' = h - z
 *
 *  Returns  HS_OK; HS_E_IMPOSSIBLE unless 0 <= z <= d <= h/2, h > 0. */
HS_API hs_status hs_bow_release(double *curvature_1_m, double strain, double depth_m,
                                double ground_m, double height_m, hs_error *err);

/** Integrals of a free strain over the section, about its centroid. */
typedef struct hs_bow_load {
    double E0_m2; /* of strain dA */
    double Qx_m3; /* of strain * y dA */
    double Qy_m3; /* of strain * x dA */
} hs_bow_load;

typedef struct hs_bow_shape {
    double e0;          /* mean strain */
    double kappa_x_1_m; /* coefficient of y */
    double kappa_y_1_m; /* coefficient of x */
} hs_bow_shape;

/** Elastic bending of a free bar by a free strain (generalised plane strain, no force, no moment).
 *    out                  out
 *    section              in   properties about the centroid
 *    load                 in   integrals of the free strain
 *  Returns  HS_OK; HS_E_IMPOSSIBLE for a section without stiffness. */
HS_API hs_status hs_bow_elastic(hs_bow_shape *out, const hs_section_properties *section,
                                const hs_bow_load *load, hs_error *err);

#endif
