#include "base/num.h"
#include "plan/fill.h"

#include <math.h>

static void name_letters(hs_result_face *out, const hs_window_found *f, size_t index, int k) {
    *out = (hs_result_face){.present = 1,
                            .dimension = index,
                            .clean_up_m = f->bad[k].clean_up_m,
                            .budget_m = f->bad[k].budget_m,
                            .split_m = f->bad[k].split_m,
                            .growth_low_m = f->bad[k].growth_low_m,
                            .growth_high_m = f->bad[k].growth_high_m,
                            .lost_high_m = f->bad[k].lost_high_m,
                            .removal_min_m = NAN,
                            .removal_max_m = NAN,
                            .case_left_min_m = NAN,
                            .case_left_typical_m = NAN,
                            .case_lost_m = NAN,
                            .hardness_left_HV = NAN,
                            .share_of_case_pct = NAN,
                            .edge = {.sunk_left_m = NAN}};
}

typedef struct taken {
    double clean_m, keep_m; /* stock of this face with the finished size at either end */
    double middle_m;        /* at the aim, with the finished size in the middle */
} taken;

/* The rough size of a draw lies anywhere in its tolerance, and the wheel may stop anywhere in that
 * of the finished size: clean-up counts to the end that leaves least on the wheel's side, case to
 * the other. */
static taken taken_by(const hs_window_found *f, const hs_size *finish, double rough_m, double aim_m,
                      int k) {
    double sign = f->inside ? -1 : 1, stock[2];
    double shallow_m = f->inside ? finish->lower_m : finish->upper_m;
    double deep_m = f->inside ? finish->upper_m : finish->lower_m;
    taken out;
    hs_found_share(stock, f, sign * (rough_m - shallow_m));
    out.clean_m = stock[k];
    hs_found_share(stock, f, sign * (rough_m - deep_m));
    out.keep_m = stock[k];
    hs_found_share(stock, f, sign * (aim_m - 0.5 * (shallow_m + deep_m)));
    out.middle_m = stock[k];
    return out;
}

enum { LEAST, MOST, LEFT, TYPICAL, LOST, SUNK };

static void draw_face(hs_decide_work *work, const hs_window_found *f, const hs_chain *chain,
                      size_t index, int k, const hs_draws *draws) {
    const hs_dimension *dimension = &chain->job->dimension[index];
    double tolerance_m = chain->job->shop.rough_tolerance_m;
    for (size_t i = 0; i < draws->n; i++) {
        double growth_m = hs_warp_growth(&chain->warp, chain->job, dimension, draws->z[i]);
        double shape_m = work->dimension[index].shape_m[i];
        double rough_m = f->aim_m + tolerance_m * draws->rough[i][index];
        taken t = taken_by(f, &dimension->size, rough_m, f->aim_m, k);
        hs_trial face = hs_chain_trial(chain, dimension->face[k], growth_m, &work->part[i]);
        double deepest_m = hs_face_deepest(&face.sum, shape_m, t.keep_m);
        work->column[LEAST][i] = hs_face_least_removal(&face.sum, shape_m, t.clean_m);
        work->column[MOST][i] = hs_face_most_removal(&face.sum, shape_m, t.keep_m);
        work->column[LEFT][i] = face.case_m - deepest_m;
        work->column[TYPICAL][i] = face.case_m - hs_face_deepest(&face.sum, shape_m, t.middle_m);
        work->column[LOST][i] = deepest_m;
        work->column[SUNK][i] = face.case_m - face.steep * deepest_m;
    }
}

void hs_fill_face(hs_result_face *out, const hs_window_found *f, const hs_chain *chain,
                  size_t index, int k, const hs_draws *draws, hs_decide_work *work) {
    size_t face = chain->job->dimension[index].face[k], n = draws->n;
    double q = chain->job->shop.confidence;
    int inch = chain->job->inch_first;
    static const double middle[HS_INPUTS] = {0};
    name_letters(out, f, index, k);
    if (f->verdict == HS_STOP) return; /* no rough size: nothing is taken off */
    draw_face(work, f, chain, index, k, draws);
    out->removal_min_m =
        hs_window_round(hs_quantile_of(work->column[LEAST], n, 1 - q), inch, HS_DOWN);
    out->removal_max_m = hs_window_round(hs_quantile_of(work->column[MOST], n, q), inch, HS_UP);
    double left_m = hs_quantile_of(work->column[LEFT], n, 1 - q);
    out->case_left_min_m = hs_window_round(fmax(0, left_m), inch, HS_DOWN);
    out->case_left_typical_m = fmax(0, hs_quantile_of(work->column[TYPICAL], n, 0.5));
    out->case_lost_m = fmax(0, hs_quantile_of(work->column[LOST], n, q));
    hs_part_draw typical = hs_chain_draw(chain, middle);
    double depth_m = hs_chain_trial(chain, face, 0, &typical).case_m;
    out->share_of_case_pct = depth_m > 0 ? 100 * out->case_lost_m / depth_m : 100;
    out->hardness_left_HV = hs_case_hardness_at(&chain->response[chain->face[face].axis].typical,
                                                hs_chain_as_flat(chain, face, out->case_lost_m));
    if (!chain->edge[face].wheel_in_corner) return;
    double sunk_m = hs_quantile_of(work->column[SUNK], n, 1 - q);
    out->edge.sunk_left_m = hs_window_round(fmax(0, sunk_m), inch, HS_DOWN);
}
