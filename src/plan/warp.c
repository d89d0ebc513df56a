#include "plan/warp.h"

#include "constants.h"
#include "hardskin/model/bow.h"
#include "hardskin/tables/table.h"
#include "plan/chuck.h"
#include "plan/warp_frame.h"

#include <math.h>

static double of_medium(const hs_step *quench, double uneven, size_t column) {
    const hs_table *table = hs_table_get(HS_TABLE_QUENCH);
    double beta = hs_table_number(table, quench->medium_row, column);
    return beta * uneven / hs_table_number(table, quench->medium_row, HS_QUENCH_UNEVEN_REFERENCE);
}

/* Curvature times height that stress in the stock leaves, one standard deviation. */
static double of_stock(const hs_job *job, size_t quench) {
    for (size_t i = 0; i < quench; i++)
        if (job->step[i].kind == HS_STRESS_RELIEVE) return HS_K_PLAN_DOUBT_STOCK_STRESS_RELIEVED;
    switch (job->part.condition) {
    case HS_HOT_ROLLED:
        return HS_K_PLAN_DOUBT_STOCK_HOT_ROLLED;
    case HS_COLD_DRAWN:
        return HS_K_PLAN_DOUBT_STOCK_COLD_DRAWN;
    case HS_STRESS_RELIEVED:
        return HS_K_PLAN_DOUBT_STOCK_STRESS_RELIEVED;
    case HS_NORMALISED:
        return HS_K_PLAN_DOUBT_STOCK_NORMALISED;
    }
    return HS_K_PLAN_DOUBT_STOCK_HOT_ROLLED;
}

/* Largest less smallest diameter per curvature kappa cos 2t of the wall: each wall moves by
 * kappa R^2 / 3 (thin inextensible ring), four times that between the diameters. */
static double ovality_m2(const hs_part *part) {
    double mean_m = 0.25 * (part->outside_m + part->bore_m);
    return 4 * mean_m * mean_m / 3;
}

static hs_status random_bow(hs_warp *warp, const hs_job *job, const hs_route *route,
                            hs_error *err) {
    double x_m, y_m, x_1_m, y_1_m;
    const hs_step *quench = &job->step[route->quench];
    double other = of_medium(quench, warp->bend.uneven, HS_QUENCH_SIGMA_OTHER);
    double stock = of_stock(job, route->quench), length_m = job->part.length_m;
    hs_warp_heights(&x_m, &y_m, &job->part, warp->axis_rad);
    hs_status status = hs_bow_random(&x_1_m, other, x_m, err);
    if (status == HS_OK) status = hs_bow_random(&y_1_m, other, y_m, err);
    if (status != HS_OK) return status;
    if (job->part.form == HS_RING) {
        warp->ring_m2 = ovality_m2(&job->part);
        warp->other_y_m = y_1_m * warp->ring_m2;
        warp->stock_y_m = stock / y_m * warp->ring_m2;
        return HS_OK;
    }
    warp->other_x_m = hs_bow_sag_m(x_1_m, length_m);
    warp->other_y_m = hs_bow_sag_m(y_1_m, length_m);
    warp->stock_x_m = hs_bow_sag_m(stock / x_m, length_m);
    warp->stock_y_m = hs_bow_sag_m(stock / y_m, length_m);
    return HS_OK;
}

static double straightened_to(const hs_job *job, size_t quench) {
    double left_m = INFINITY;
    for (size_t i = quench + 1; i < job->steps; i++)
        if (job->step[i].kind == HS_STRAIGHTEN) left_m = job->step[i].left_m;
    return left_m;
}

hs_status hs_warp_make(hs_warp *warp, const hs_bend *like, const hs_job *job, const hs_route *route,
                       const hs_case_profile *typical, const hs_quenched *quenched, int coarse,
                       hs_bend_work *work, hs_error *err) {
    hs_warp out = {.length_m = job->part.length_m, .left_m = straightened_to(job, route->quench)};
    hs_status status = HS_OK;
    if (job->part.form == HS_PROFILE)
        status = hs_warp_frame(&out.axis_rad, &job->part.section, err);
    if (status == HS_OK)
        status = hs_bend_make(&out.bend, like, job, route, typical, quenched, coarse, work, err);
    if (status != HS_OK) return status;
    out.beta = of_medium(&job->step[route->quench], out.bend.uneven, HS_QUENCH_SIGMA_BETA);
    hs_chuck_weak(&out.weak_x, &out.weak_y, job);
    status = random_bow(&out, job, route, err);
    if (status == HS_OK) *warp = out;
    return status;
}
