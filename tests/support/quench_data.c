#include "support/quench_data.h"

#include <math.h>

static hs_curve line(double T0_C, double v0, double T1_C, double v1) {
    return (hs_curve){.n = 2, .temp_K = {T0_C + 273.15, T1_C + 273.15}, .value = {v0, v1}};
}

hs_quench_steel test_steel_plain(double modulus_Pa, double conductivity_W_mK, double heat_J_m3K) {
    hs_quench_steel s = {.modulus = hs_curve_flat(modulus_Pa), .expansion = {15e-6, 15e-6, 15e-6}};
    for (int p = 0; p < HS_PHASES; p++) {
        s.conductivity[p] = hs_curve_flat(conductivity_W_mK);
        s.heat[p] = hs_curve_flat(heat_J_m3K);
        s.yield[p] = hs_curve_flat(100e6);
    }
    return s;
}

hs_quench_steel test_steel_hardening(double modulus_Pa) {
    hs_quench_steel s = {.modulus = hs_curve_flat(modulus_Pa), .expansion = {23e-6, 12e-6, 12e-6}};
    for (int p = 0; p < HS_PHASES; p++) {
        s.conductivity[p] = hs_curve_flat(28);
        s.heat[p] = hs_curve_flat(4.8e6);
    }
    s.yield[HS_AUSTENITE] = line(20, 190e6, 850, 30e6);
    s.yield[HS_MARTENSITE] = line(20, 1, 400, 0.75);
    return s;
}

hs_quench_point test_point_even(void) {
    return (hs_quench_point){.ms_K = 673.15,
                             .alpha_1_K = 0.011,
                             .share = 1,
                             .strain = {0, 0.0151, 0},
                             .strength_Pa = 1200e6};
}

hs_quench_point test_point_carburised(double depth_1_m, double depth_2_m) {
    double C = 0.18 + 0.62 * (erfc(depth_1_m / 1.4e-3) + erfc(depth_2_m / 1.4e-3));
    return (hs_quench_point){.ms_K = 273.15 + 550 - 600 * (1 - exp(-0.96 * C)),
                             .alpha_1_K = 0.011,
                             .share = 1,
                             .strain = {0, (4.64 - 0.53 * C) / 300, 0},
                             .strength_Pa = (413 + 1720 * sqrt(C)) * 1e6};
}

void test_points_fill(hs_quench_point node[HS_QUENCH_NODES],
                      hs_quench_point fibre[HS_QUENCH_FIBRES], hs_quench_point p) {
    for (int i = 0; i < HS_QUENCH_NODES; i++)
        node[i] = p;
    for (int i = 0; i < HS_QUENCH_FIBRES; i++)
        fibre[i] = p;
}

void test_layer(hs_quench_layer *layer, double case_m) {
    enum { ROWS = 21 };
    *layer = (hs_quench_layer){.n = 1, .dissolved_pct = {0.16}, .share = {1}};
    if (!(case_m > 0)) return;
    layer->n = ROWS;
    for (int i = 0; i < ROWS; i++) {
        layer->depth_m[i] = case_m * i / (ROWS - 1);
        layer->dissolved_pct[i] = 0.16 + (i < ROWS - 1) * 0.64 * erfc(1.7 * i / (ROWS - 1));
        layer->share[i] = 1;
    }
}
