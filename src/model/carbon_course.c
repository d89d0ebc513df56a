#include "hardskin/model/carbon_course.h"

#include "constants.h"

#include <math.h>
#include <string.h>

static const double SHARE = 0.004; /* of a depth; .005 is promised, the rest kept back */
static const double FLOOR_M = 1e-6;
static const double FLAT_PCT = 0.0005; /* carbon no analysis tells apart */

static double left_at(const hs_carbon_end *end, const hs_carbon_left *left, double depth_m,
                      int from_far) {
    double whole_m = end->mesh.edge_m[end->mesh.n];
    double was_m = fmin((depth_m + left->cut_m) / left->stretch, whole_m);
    return hs_carbon_at(&end->mesh, end->carbon_pct, end->uptake.surface_pct,
                        from_far ? whole_m - was_m : was_m);
}

/* What is left lies where its surface is now. A wall that carbon enters from both sides is cut on
 * both, each half from its own. */
static void take_off(hs_carbon_end *end, const hs_carbon_course *course) {
    const hs_carbon_mesh *mesh = &end->mesh;
    const hs_carbon_left *left = &course->left;
    double whole_m = mesh->edge_m[mesh->n];
    int both = !mesh->cut && course->heat[0].side[1].kind != HS_SIDE_CLOSED;
    for (size_t i = 0; i < mesh->n; i++) {
        double depth_m = mesh->centre_m[i];
        int far = both && depth_m > 0.5 * whole_m;
        end->work.before[i] = left_at(end, left, far ? whole_m - depth_m : depth_m, far);
    }
    double near_pct = left_at(end, left, 0, 0), far_pct = left_at(end, left, 0, 1);
    memcpy(end->carbon_pct, end->work.before, mesh->n * sizeof *end->carbon_pct);
    end->uptake.surface_pct[0] = near_pct;
    if (both) end->uptake.surface_pct[1] = far_pct;
}

hs_status hs_carbon_course_run(hs_carbon_end *end, const hs_carbon_course *course, size_t cells,
                               hs_error *err) {
    hs_carbon_mesh *mesh = &end->mesh;
    hs_status status = hs_carbon_mesh_make(mesh, course->shape, course->size_m,
                                           course->inner_radius_m, course->reach_m, cells, err);
    if (status != HS_OK) return status;
    for (size_t i = 0; i < mesh->n; i++)
        end->carbon_pct[i] = course->core_pct;
    double gained[2] = {0, 0};
    end->uptake = (hs_carbon_uptake){.surface_pct = {course->core_pct, course->core_pct}};
    for (size_t k = 0; k < course->heats && status == HS_OK; k++) {
        hs_heat heat = course->heat[k];
        const hs_diffusivity *d =
            k < course->left.heats && course->left.d ? course->left.d : course->d;
        if (mesh->cut) heat.side[1] = (hs_side){.kind = HS_SIDE_CLOSED};
        status = hs_carbon_run(end->carbon_pct, &end->uptake, mesh, &heat, d, &end->work, err);
        for (int j = 0; j < 2; j++)
            gained[j] += end->uptake.gained_pct_m[j];
        if (k + 1 == course->left.heats && status == HS_OK) take_off(end, course);
    }
    for (int j = 0; j < 2; j++)
        end->uptake.gained_pct_m[j] = gained[j];
    return status;
}

/* Node i: face 1, the centres, face 2. */
static double node_m(const hs_carbon_end *end, size_t i) {
    const hs_carbon_mesh *mesh = &end->mesh;
    return i == 0 ? 0 : i > mesh->n ? mesh->edge_m[mesh->n] : mesh->centre_m[i - 1];
}

static double node_pct(const hs_carbon_end *end, size_t i) {
    if (i == 0) return end->uptake.surface_pct[0];
    return i > end->mesh.n ? end->uptake.surface_pct[1] : end->carbon_pct[i - 1];
}

double hs_carbon_course_depth(const hs_carbon_end *end, const hs_carbon_course *course,
                              double carbon_pct) {
    double sign = carbon_pct < course->core_pct ? -1 : 1;
    for (size_t i = end->mesh.n + 1; i > 0; i--) {
        double shallow = sign * (node_pct(end, i - 1) - carbon_pct);
        double deep = sign * (node_pct(end, i) - carbon_pct);
        if (shallow >= 0 && deep < 0)
            return node_m(end, i - 1) +
                   (node_m(end, i) - node_m(end, i - 1)) * shallow / (shallow - deep);
    }
    return sign * (node_pct(end, 0) - carbon_pct) >= 0 ? end->mesh.edge_m[end->mesh.n] : 0;
}

hs_carbon_levels hs_carbon_levels_usual(double core_pct, double surface_pct) {
    hs_carbon_levels levels = {.n = HS_CARBON_LEVELS};
    levels.carbon_pct[0] = core_pct + HS_K_AUSTENITE_TOTAL_CASE;
    for (size_t k = 1; k < HS_CARBON_LEVELS; k++)
        levels.carbon_pct[k] = core_pct + (0.1 + 0.1 * (double)k) * (surface_pct - core_pct);
    levels.carbon_pct[HS_CARBON_LEVELS - 1] = core_pct + 0.9 * (surface_pct - core_pct);
    return levels;
}

/* What this mesh holds at the depth another found for a level; where that one is rich all through,
 * the least. */
static double carbon_there(const hs_carbon_end *end, double depth_m) {
    size_t n = end->mesh.n;
    if (depth_m < end->mesh.edge_m[n])
        return hs_carbon_at(&end->mesh, end->carbon_pct, end->uptake.surface_pct, depth_m);
    double least = INFINITY;
    for (size_t i = 0; i < n; i++)
        least = fmin(least, end->carbon_pct[i]);
    return least;
}

/* Is the depth at a level as good as wanted, when a mesh of half the cells says coarse_m? */
static int good_enough(const hs_carbon_end *end, double fine_m, double coarse_m,
                       double carbon_pct) {
    return fabs(fine_m - coarse_m) <= SHARE * fine_m + FLOOR_M ||
           fabs(carbon_there(end, coarse_m) - carbon_pct) < FLAT_PCT;
}

/* Compare with the depths of a mesh of half the cells, which become those of this one. */
static int compare(hs_carbon_accuracy *accuracy, double depth_m[HS_CARBON_LEVELS],
                   const hs_carbon_end *end, const hs_carbon_course *course,
                   const hs_carbon_levels *levels) {
    double moved_m[HS_CARBON_LEVELS];
    int good = 1;
    for (size_t k = 0; k < levels->n; k++) {
        double fine_m = hs_carbon_course_depth(end, course, levels->carbon_pct[k]);
        good = good && good_enough(end, fine_m, depth_m[k], levels->carbon_pct[k]);
        moved_m[k] = fabs(fine_m - depth_m[k]);
        depth_m[k] = fine_m;
    }
    *accuracy = (hs_carbon_accuracy){.cells = end->mesh.n};
    for (size_t k = 0; k < levels->n; k++) {
        double before = k > 0 ? moved_m[k - 1] : 0, after = k + 1 < levels->n ? moved_m[k + 1] : 0;
        accuracy->error_m[k] = fmax(moved_m[k], fmax(before, after));
    }
    return good;
}

hs_status hs_carbon_course_refine(hs_carbon_end *end, hs_carbon_accuracy *accuracy,
                                  const hs_carbon_course *course, const hs_carbon_levels *levels,
                                  hs_error *err) {
    double depth_m[HS_CARBON_LEVELS];
    hs_carbon_accuracy found;
    hs_status status = hs_carbon_course_run(end, course, HS_CARBON_CELLS_USUAL / 2, err);
    if (status != HS_OK) return status;
    for (size_t k = 0; k < levels->n; k++)
        depth_m[k] = hs_carbon_course_depth(end, course, levels->carbon_pct[k]);
    for (size_t cells = HS_CARBON_CELLS_USUAL; cells <= HS_CARBON_CELLS; cells *= 2) {
        status = hs_carbon_course_run(end, course, cells, err);
        if (status != HS_OK) return status;
        if (!compare(&found, depth_m, end, course, levels)) continue;
        *accuracy = found;
        return HS_OK;
    }
    return hs_fail(err, HS_E_CONVERGE, "a shorter or simpler heat",
                   "no mesh of %d cells gives the case depth", HS_CARBON_CELLS);
}
