/* What one draw of the warp means for a dimension. */
#include "constants.h"
#include "hardskin/model/bow.h"
#include "plan/chuck.h"
#include "plan/warp.h"
#include "plan/warp_frame.h"
#include "plan/window.h"

#include <math.h>
#include <string.h>

void hs_warp_bow(double *x_m, double *y_m, const hs_warp *warp, const double z[HS_INPUTS]) {
    double c = cos(warp->axis_rad), s = sin(warp->axis_rad), x_1_m, y_1_m;
    double own_x = warp->other_x_m * z[HS_IN_BOW_X] + warp->stock_x_m * z[HS_IN_STOCK_X];
    double own_y = warp->other_y_m * z[HS_IN_BOW_Y] + warp->stock_y_m * z[HS_IN_STOCK_Y];
    hs_bend_draw(&x_1_m, &y_1_m, &warp->bend, z);
    double x = hs_bow_sag_m(x_1_m, warp->length_m) + c * own_x - s * own_y;
    double y = hs_bow_sag_m(y_1_m, warp->length_m) + c * own_y + s * own_x;
    double bow = hypot(x, y), shrink = bow > warp->left_m ? warp->left_m / bow : 1;
    *x_m = shrink * x;
    *y_m = shrink * y;
}

double hs_warp_ovality(const hs_warp *warp, const double z[HS_INPUTS]) {
    double quench_m = warp->ring_m2 * hs_bend_ring(&warp->bend, z);
    return fabs(quench_m + warp->other_y_m * z[HS_IN_BOW_Y] + warp->stock_y_m * z[HS_IN_STOCK_Y]);
}

int hs_dimension_along(const hs_job *job, const hs_dimension *dimension) {
    if (dimension->across == HS_ACROSS_ENDS) return 1;
    const char *name = job->face[dimension->face[0]].name;
    return job->part.form == HS_PLATE && (!strcmp(name, "left") || !strcmp(name, "right"));
}

int hs_dimension_inside(const hs_job *job, const hs_dimension *dimension) {
    if (dimension->across == HS_ACROSS_BORE) return 1;
    hs_edge_pair pair;
    double apart_m;
    size_t j = job->face[dimension->face[0]].edge, k = job->face[dimension->face[1]].edge;
    return j > 0 && k > 0 && j != k &&
           hs_section_pair(&pair, &apart_m, &job->part.section, j, k, NULL) == HS_OK &&
           pair == HS_EDGES_INSIDE;
}

static double flat_shape(const hs_job *job, size_t face, double x_m, double y_m) {
    double nx, ny;
    hs_chuck_normal(&nx, &ny, job, face);
    return hs_shape_flat(fabs(x_m * nx + y_m * ny), 0);
}

int hs_dimension_ground(const hs_job *job, size_t i) {
    const size_t *face = job->dimension[i].face;
    return job->face[face[0]].finish == HS_GROUND || job->face[face[1]].finish == HS_GROUND;
}

int hs_dimension_pulled(const hs_job *job, const hs_dimension *dimension) {
    double weak_x, weak_y;
    hs_chuck_weak(&weak_x, &weak_y, job);
    return hs_chuck_pulls(job, dimension, weak_x, weak_y);
}

double hs_warp_sprung(const hs_job *job, const hs_dimension *dimension, double x_m, double y_m) {
    return flat_shape(job, dimension->face[0], x_m, y_m);
}

static double bar_shape(const hs_job *job, double bow_m) {
    double length_m = job->part.length_m;
    if (job->part.held == HS_OLD_CENTRES) return hs_shape_old_centres(bow_m);
    if (job->part.held == HS_REMADE_CENTRES) return hs_shape_remade(bow_m);
    return hs_shape_chuck(hs_bow_curvature_1_m(bow_m, length_m), length_m);
}

static double ends_shape(const hs_job *job, double x_m, double y_m, const double z[HS_INPUTS]) {
    double across_x, across_y, length_m = job->part.length_m;
    if (job->part.form == HS_RING) {
        double run_out = HS_K_PLAN_DOUBT_END_RUN_OUT * job->part.outside_m;
        return hs_shape_ends(0, job->part.outside_m, length_m,
                             run_out * fabs(hs_draw_share(z[HS_IN_RUN_OUT])));
    }
    double bow_m = hypot(x_m, y_m);
    if (job->part.form == HS_PROFILE && bow_m > 0)
        return hs_shape_ends(bow_m,
                             hs_warp_extent(&job->part.section.outline, x_m / bow_m, y_m / bow_m),
                             length_m, 0);
    hs_warp_heights(&across_x, &across_y, &job->part, 0);
    if (job->part.form == HS_BAR) return hs_shape_ends(bow_m, across_x, length_m, 0);
    return hs_shape_ends(fabs(x_m), across_x, length_m, 0) +
           hs_shape_ends(fabs(y_m), across_y, length_m, 0);
}

double hs_warp_shape(const hs_warp *warp, const hs_job *job, const hs_dimension *dimension,
                     double x_m, double y_m, const double z[HS_INPUTS]) {
    if (hs_dimension_along(job, dimension)) return ends_shape(job, x_m, y_m, z);
    if (hs_chuck_pulls(job, dimension, warp->weak_x, warp->weak_y)) return 0;
    if (dimension->across == HS_ACROSS_FACES) return flat_shape(job, dimension->face[0], x_m, y_m);
    if (job->part.form == HS_RING) return hs_shape_ring(hs_warp_ovality(warp, z));
    return bar_shape(job, hypot(x_m, y_m));
}

double hs_warp_growth(const hs_warp *warp, const hs_job *job, const hs_dimension *dimension,
                      const double z[HS_INPUTS]) {
    double strain = warp->bend.growth;
    if (hs_dimension_along(job, dimension))
        strain += HS_K_PLAN_DOUBT_GROWTH_ALONG * hs_draw_share(z[HS_IN_GROWTH_ALONG]);
    else
        strain += HS_K_PLAN_DOUBT_GROWTH_ACROSS * hs_draw_share(z[HS_IN_GROWTH_ACROSS]);
    double per_side = 0.5 * strain * dimension->size.nominal_m;
    return hs_dimension_inside(job, dimension) ? -per_side : per_side;
}
