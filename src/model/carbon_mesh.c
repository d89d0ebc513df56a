#include "hardskin/model/carbon.h"

#include <math.h>

/* How much finer the cells are at the faces: one face by sinh, two faces by tanh. Smooth maps keep
 * the scheme second order. */
static const double ONE_FACE = 3.0, TWO_FACES = 1.8;

static double mapped(double share, int two_faces) {
    if (two_faces) return 0.5 * (1 + tanh(TWO_FACES * (2 * share - 1)) / tanh(TWO_FACES));
    return sinh(ONE_FACE * share) / sinh(ONE_FACE);
}

/* Wall area at a depth, and the volume from the face to there, both per m2 of face 1. */
static double area_at(double depth_m, double face_radius_m, int sign) {
    return sign ? (face_radius_m + sign * depth_m) / face_radius_m : 1;
}

static void fill(hs_carbon_mesh *mesh, double depth_m, double face_radius_m, int sign,
                 int two_faces) {
    for (size_t i = 0; i <= mesh->n; i++) {
        mesh->edge_m[i] = depth_m * mapped((double)i / (double)mesh->n, two_faces);
        mesh->area[i] = area_at(mesh->edge_m[i], face_radius_m, sign);
    }
    mesh->edge_m[0] = 0;
    mesh->edge_m[mesh->n] = depth_m;
    mesh->area[mesh->n] = area_at(depth_m, face_radius_m, sign);
    for (size_t i = 0; i < mesh->n; i++) {
        double width = mesh->edge_m[i + 1] - mesh->edge_m[i];
        mesh->centre_m[i] = mesh->edge_m[i] + 0.5 * width;
        mesh->volume_m[i] = width * 0.5 * (mesh->area[i] + mesh->area[i + 1]);
    }
}

hs_status hs_carbon_mesh_make(hs_carbon_mesh *mesh, hs_shape shape, double size_m,
                              double inner_radius_m, double reach_m, size_t n, hs_error *err) {
    if (n == 0) n = HS_CARBON_CELLS_USUAL;
    if (n < 2 || n > HS_CARBON_CELLS)
        return hs_fail(err, HS_E_TOO_LARGE, "", "a mesh has 2 to %d cells", HS_CARBON_CELLS);
    int wall = shape == HS_TUBE || shape == HS_BORE;
    if (!(size_m > 0 && isfinite(size_m) && reach_m >= 0) ||
        (wall && !(inner_radius_m > 0 && inner_radius_m < size_m)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "sizes above 0, the bore smaller than the outside",
                       "size %g m with bore radius %g m makes no section", size_m, inner_radius_m);
    double depth_m = wall ? size_m - inner_radius_m : size_m;
    int sign = shape == HS_SLAB ? 0 : shape == HS_BORE ? 1 : -1;
    mesh->n = n;
    mesh->cut = reach_m > 0 && reach_m < depth_m;
    int two_faces = !mesh->cut && shape != HS_CYLINDER && reach_m == 0;
    fill(mesh, mesh->cut ? reach_m : depth_m, shape == HS_BORE ? inner_radius_m : size_m, sign,
         two_faces);
    return HS_OK;
}

double hs_carbon_content(const hs_carbon_mesh *mesh, const double *carbon_pct) {
    double sum = 0;
    for (size_t i = 0; i < mesh->n; i++)
        sum += mesh->volume_m[i] * carbon_pct[i];
    return sum;
}

double hs_carbon_at(const hs_carbon_mesh *mesh, const double *carbon_pct,
                    const double surface_pct[2], double depth_m) {
    size_t n = mesh->n, i = 0;
    if (!(depth_m >= 0 && depth_m <= mesh->edge_m[n])) return NAN;
    while (i < n && mesh->centre_m[i] < depth_m)
        i++;
    double x0 = i ? mesh->centre_m[i - 1] : 0, x1 = i < n ? mesh->centre_m[i] : mesh->edge_m[n];
    double c0 = i ? carbon_pct[i - 1] : surface_pct ? surface_pct[0] : carbon_pct[0];
    double c1 = i < n ? carbon_pct[i] : surface_pct ? surface_pct[1] : carbon_pct[n - 1];
    return c0 + (c1 - c0) * (depth_m - x0) / (x1 - x0);
}
