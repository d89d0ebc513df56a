#include "hardskin/model/grind.h"

#include "constants.h"

#include <math.h>

/* Passes for a depth; a share of 1e-9 too much is rounding, not one more pass. */
static double passes_for(double depth_m, double infeed_m) {
    return depth_m <= 0 ? 0 : ceil(depth_m / infeed_m - 1e-9);
}

static hs_status wrong_value(hs_error *err) {
    return hs_fail(err, HS_E_IMPOSSIBLE, "sizes, feeds and speeds above 0",
                   "no grinding can be computed from these values");
}

hs_status hs_grind_passes(hs_grind_time *out, const hs_grind_face *face, hs_error *err) {
    int feeds = face->rough_infeed_m > 0 && face->finish_infeed_m > 0 && face->cross_feed_m > 0 &&
                face->table_speed_m_s > 0;
    int sizes = face->stock_m >= 0 && face->finish_stock_m >= 0 && face->length_m > 0 &&
                face->width_m > 0 && face->wheel_width_m > 0 && face->overrun_m >= 0 &&
                face->spark_outs >= 0;
    if (!feeds || !sizes || !isfinite(face->stock_m)) return wrong_value(err);
    double finish_m = fmin(face->stock_m, face->finish_stock_m);
    hs_grind_time t = {0};
    t.rough_passes = passes_for(face->stock_m - finish_m, face->rough_infeed_m);
    t.finish_passes = passes_for(finish_m, face->finish_infeed_m);
    t.spark_outs = face->spark_outs;
    t.crossings = passes_for(face->width_m + face->wheel_width_m, face->cross_feed_m);
    t.strokes = (t.rough_passes + t.finish_passes + t.spark_outs) * t.crossings;
    t.time_s = t.strokes * (face->length_m + 2 * face->overrun_m) / face->table_speed_m_s;
    *out = t;
    return HS_OK;
}

hs_status hs_grind_flatten_section_Pa(double *pressure_Pa, double bow_m, double stiffness_m4,
                                      double width_m, double length_m, hs_error *err) {
    if (!(bow_m >= 0 && stiffness_m4 > 0 && width_m > 0 && length_m > 0)) return wrong_value(err);
    double L2 = length_m * length_m, h3 = 12 * stiffness_m4 / width_m;
    *pressure_Pa =
        HS_K_GRINDING_FLATTEN_FACTOR * HS_K_GRINDING_YOUNGS_MODULUS * h3 * bow_m / (L2 * L2);
    return HS_OK;
}

hs_status hs_grind_flatten_Pa(double *pressure_Pa, double bow_m, double thickness_m,
                              double length_m, hs_error *err) {
    double h = thickness_m;
    if (!(h > 0)) return wrong_value(err);
    return hs_grind_flatten_section_Pa(pressure_Pa, bow_m, h * h * h / 12, 1, length_m, err);
}

hs_status hs_grind_chuck_flattens(int *answer, double pressure_Pa, hs_error *err) {
    if (!(pressure_Pa >= 0)) return wrong_value(err);
    *answer = pressure_Pa < HS_K_GRINDING_CHUCK_PULL_LOW    ? 1
              : pressure_Pa > HS_K_GRINDING_CHUCK_PULL_HIGH ? -1
                                                            : 0;
    return HS_OK;
}

/* B = k theta / (1.13 sqrt(alpha)): what the metal carries away before it burns. */
hs_status hs_grind_burn_J_m3(double *energy_J_m3, double infeed_m, double wheel_m,
                             double table_speed_m_s, hs_error *err) {
    if (!(infeed_m > 0 && wheel_m > 0 && table_speed_m_s > 0)) return wrong_value(err);
    double B = HS_K_GRINDING_BURN_CONDUCTIVITY * HS_K_GRINDING_BURN_RISE /
               (HS_K_GRINDING_BURN_FACTOR * sqrt(HS_K_GRINDING_BURN_DIFFUSIVITY));
    *energy_J_m3 = HS_K_GRINDING_BURN_BASE +
                   B * pow(wheel_m, 0.25) * pow(infeed_m, -0.75) / sqrt(table_speed_m_s);
    return HS_OK;
}

hs_status hs_grind_contact_m(double *contact_m, double infeed_m, double wheel_m, hs_error *err) {
    if (!(infeed_m > 0 && wheel_m > 0)) return wrong_value(err);
    *contact_m = sqrt(infeed_m * wheel_m);
    return HS_OK;
}

double hs_grind_rate_m2_s(double infeed_m, double table_speed_m_s) {
    return infeed_m * table_speed_m_s;
}
