#include "hardskin/model/bow.h"

#include "constants.h"

#include <math.h>

double hs_bow_sag_m(double curvature_1_m, double length_m) {
    return curvature_1_m * length_m * length_m / 8;
}

double hs_bow_curvature_1_m(double bow_m, double length_m) {
    return 8 * bow_m / (length_m * length_m);
}

double hs_bow_overhang_m(double curvature_1_m, double length_m) {
    return curvature_1_m * length_m * length_m / 2;
}

hs_status hs_bow_random(double *curvature_1_m, double beta, double height_m, hs_error *err) {
    if (!(height_m > 0 && isfinite(height_m) && isfinite(beta)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "a height above 0", "a bow over a height of %g m",
                       height_m);
    *curvature_1_m = beta * HS_K_GROWTH_RANDOM_BOW / height_m;
    return HS_OK;
}

static hs_status wrong_layer(double depth_m, double height_m, hs_error *err) {
    return hs_fail(err, HS_E_IMPOSSIBLE, "a layer inside the section",
                   "a layer of %g mm in a section of %g mm", 1000 * depth_m, 1000 * height_m);
}

hs_status hs_bow_one_sided(double *curvature_1_m, double strain, double depth_m, double height_m,
                           hs_error *err) {
    double d = depth_m, h = height_m;
    if (!(h > 0 && isfinite(h) && d >= 0 && d <= h && isfinite(strain)))
        return wrong_layer(d, h, err);
    *curvature_1_m = 6 * strain * d * (h - d) / (h * h * h);
    return HS_OK;
}

hs_status hs_bow_release(double *curvature_1_m, double strain, double depth_m, double ground_m,
                         double height_m, hs_error *err) {
    double d = depth_m, z = ground_m, h = height_m;
    if (!(h > 0 && isfinite(h) && z >= 0 && z <= d && d <= h / 2 && isfinite(strain)))
        return wrong_layer(d, h, err);
    double left = h - z; /* height of what remains */
    double moment = (d - z) * (left - d + z) / 2 - d * (left - d) / 2;
    *curvature_1_m = 12 * strain / (left * left * left) * moment;
    return HS_OK;
}

hs_status hs_bow_elastic(hs_bow_shape *out, const hs_section_properties *section,
                         const hs_bow_load *load, hs_error *err) {
    double Ix = section->Ix_m4, Iy = section->Iy_m4, Ixy = section->Ixy_m4;
    double D = Ix * Iy - Ixy * Ixy;
    if (!(section->area_m2 > 0 && D > 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "a section with some area",
                       "the section has no stiffness");
    out->e0 = load->E0_m2 / section->area_m2;
    out->kappa_x_1_m = (load->Qx_m3 * Iy - load->Qy_m3 * Ixy) / D;
    out->kappa_y_1_m = (load->Qy_m3 * Ix - load->Qx_m3 * Ixy) / D;
    return HS_OK;
}
