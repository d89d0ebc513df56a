#include "plan/window.h"

#include <math.h>

static const double INCH_M = 0.0254; /* exact: the international inch */

/* fmin, but NaN stays NaN. */
static double smaller(double a, double b) {
    return isnan(b) || b < a ? b : a;
}

double hs_window_need(double clean_up_m, double lost_m, double shape_m, double split_m,
                      double growth_m) {
    return clean_up_m + lost_m + shape_m / 2 + split_m - growth_m;
}

double hs_window_may(double budget_m, double shape_m, double split_m, double growth_m) {
    return budget_m - shape_m / 2 - split_m - growth_m;
}

double hs_face_need(const hs_face_sum *face, double shape_m) {
    if (!face->ground) return face->lost_high_m - face->growth_low_m;
    return hs_window_need(face->clean_up_m, face->lost_high_m, shape_m, face->split_m,
                          face->growth_low_m);
}

double hs_face_may(const hs_face_sum *face, double shape_m) {
    if (!face->ground) return face->lost_low_m - face->growth_high_m;
    return hs_window_may(face->budget_m, shape_m, face->split_m, face->growth_high_m);
}

double hs_face_deepest(const hs_face_sum *face, double shape_m, double stock_m) {
    return stock_m + face->growth_high_m + shape_m / 2 + face->split_m;
}

double hs_face_least_removal(const hs_face_sum *face, double shape_m, double stock_m) {
    return stock_m + face->growth_low_m - face->lost_high_m - shape_m / 2 - face->split_m;
}

double hs_face_most_removal(const hs_face_sum *face, double shape_m, double stock_m) {
    return stock_m + face->growth_high_m - face->lost_low_m + shape_m / 2 + face->split_m;
}

double hs_shape_flat(double bow_m, double corner_lift_m) {
    return fabs(bow_m) + fabs(corner_lift_m) / 2;
}

double hs_shape_old_centres(double bow_m) {
    return 2 * fabs(bow_m);
}

double hs_shape_remade(double bow_m) {
    return fabs(bow_m);
}

double hs_shape_chuck(double curvature_1_m, double length_m) {
    return 2 * fabs(curvature_1_m) * length_m * length_m / 2;
}

double hs_shape_ring(double ovality_m) {
    return fabs(ovality_m) / 2;
}

double hs_shape_set_by_other(double run_out_m) {
    return fabs(run_out_m);
}

double hs_shape_ends(double bow_m, double across_m, double length_m, double run_out_m) {
    return 4 * fabs(bow_m) * across_m / length_m + fabs(run_out_m);
}

hs_limits hs_window_rough(int bore, hs_limits finish, double need_sum_m, double may_sum_m) {
    if (bore) return (hs_limits){finish.high_m - may_sum_m, finish.low_m - need_sum_m};
    return (hs_limits){finish.high_m + need_sum_m, finish.low_m + may_sum_m};
}

hs_limits hs_window_two(int bore, hs_limits finish, const double need_m[2], const double may_m[2],
                        const int ground[2]) {
    hs_limits rough = hs_window_rough(bore, finish, need_m[0] + need_m[1], may_m[0] + may_m[1]);
    for (int i = 0; i < 2; i++) {
        double short_m = need_m[i] - may_m[i];
        if (ground[i] && short_m > 0) rough.high_m = fmin(rough.high_m, rough.low_m - short_m);
    }
    return rough;
}

hs_limits hs_window_faces(int bore, hs_limits finish, const hs_face_sum face[2], double shape_m) {
    double need_m[2], may_m[2];
    int ground[2];
    for (int i = 0; i < 2; i++) {
        need_m[i] = hs_face_need(&face[i], shape_m);
        may_m[i] = hs_face_may(&face[i], shape_m);
        ground[i] = face[i].ground;
    }
    return hs_window_two(bore, finish, need_m, may_m, ground);
}

hs_limits hs_window_as_hardened(int bore, hs_limits finish, const hs_face_sum face[2]) {
    double most = 0, least = 0; /* by which the size shrinks (a bore: opens) */
    for (int i = 0; i < 2; i++) {
        most += face[i].lost_high_m - face[i].growth_low_m;
        least += face[i].lost_low_m - face[i].growth_high_m;
    }
    if (bore) return (hs_limits){finish.low_m - least, finish.high_m - most};
    return (hs_limits){finish.low_m + most, finish.high_m + least};
}

hs_verdict hs_window_verdict(hs_limits rough, double full_tolerance_m) {
    const double noise_m = 1e-12; /* sums of a few lengths below a metre are exact to this */
    double width_m = rough.high_m - rough.low_m;
    if (width_m >= full_tolerance_m - noise_m) return HS_GO;
    return width_m >= -noise_m ? HS_TIGHT : HS_STOP;
}

hs_shape_limits hs_window_shape_limits(int bore, hs_limits finish, hs_limits rough,
                                       const hs_face_sum face[2]) {
    double need_m = 0, may_m = 0, share = 0; /* of V, half for each ground face */
    for (int i = 0; i < 2; i++) {
        need_m += hs_face_need(&face[i], 0);
        may_m += hs_face_may(&face[i], 0);
        share += face[i].ground ? 0.5 : 0;
    }
    double least_m = bore ? finish.low_m - rough.high_m : rough.low_m - finish.high_m;
    double most_m = bore ? finish.high_m - rough.low_m : rough.high_m - finish.low_m;
    if (share <= 0) return (hs_shape_limits){INFINITY, INFINITY, INFINITY};
    double face_m = INFINITY;
    for (int i = 0; i < 2; i++) {
        double room_m = hs_face_may(&face[i], 0) - hs_face_need(&face[i], 0);
        if (face[i].ground) face_m = smaller(face_m, room_m);
    }
    return (hs_shape_limits){(least_m - need_m) / share, (may_m - most_m) / share, face_m};
}

double hs_window_shape_limit(int bore, hs_limits finish, hs_limits rough,
                             const hs_face_sum face[2]) {
    hs_shape_limits limit = hs_window_shape_limits(bore, finish, rough, face);
    return smaller(limit.face_m, smaller(limit.clean_m, limit.case_m));
}

hs_result_bench hs_window_bench(int bore, hs_limits finish, const hs_face_sum face[2]) {
    double need_m = 0, may_m = 0;
    int grounds = 0;
    hs_result_bench out = {.most_m = INFINITY};
    for (int i = 0; i < 2; i++) {
        double need = hs_face_need(&face[i], 0), may = hs_face_may(&face[i], 0);
        need_m += need;
        may_m += may;
        if (!face[i].ground) continue;
        grounds++;
        out.most_m = smaller(out.most_m, may - need);
    }
    if (grounds == 0) return out;
    out.present = 1;
    out.times = 2.0 / grounds;
    out.clean_from_m = bore ? finish.low_m - need_m : finish.high_m + need_m;
    out.case_to_m = bore ? finish.high_m - may_m : finish.low_m + may_m;
    return out;
}

double hs_window_share(double total_m, const hs_face_sum face[2], double shape_m) {
    double need_m[2], room_m[2];
    for (int i = 0; i < 2; i++) {
        need_m[i] = hs_face_need(&face[i], shape_m);
        room_m[i] = fmax(0, hs_face_may(&face[i], shape_m) - need_m[i]);
    }
    double rest_m = total_m - need_m[0] - need_m[1];
    double room = room_m[0] + room_m[1];
    return need_m[0] + rest_m * (room > 0 ? room_m[0] / room : 0.5);
}

double hs_window_turn_at(double hardened_m, double first_m, double shape_m) {
    return hardened_m - (first_m + shape_m / 2);
}

double hs_window_round(double value_m, int inch, hs_round direction) {
    if (inch) return hs_window_round_in(value_m, direction) * INCH_M;
    return hs_round_to(value_m * 1e3, 3, direction) / 1e3;
}

double hs_window_round_in(double value_m, hs_round direction) {
    return hs_round_to(value_m / INCH_M, 4, direction);
}
