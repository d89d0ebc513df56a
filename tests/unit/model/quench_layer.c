/* Carbon and share of martensite below a face. */
#include "hardskin/model/quench_layer.h"
#include "support/check.h"

#include <math.h>

enum { N = 81 };
static double depth_m[N], carbon_pct[N];

static hs_quench_profile profile_of(double core_pct) {
    for (int i = 0; i < N; i++) {
        depth_m[i] = 4e-3 * i / (N - 1);
        carbon_pct[i] = core_pct + (0.9 - core_pct) * erfc(depth_m[i] / 1.2e-3);
    }
    return (hs_quench_profile){N, depth_m, carbon_pct, 0.8};
}

static void layer__middle_of_the_section__is_the_core_as_its_hardness_has_it(void) {
    /* independent: hs_core_HV has the same section's core by its own way */
    static const char *const names[] = {"C15E", "16MnCr5", "18CrNiMo7-6"};
    for (int i = 0; i < 3; i++) {
        hs_steel steel;
        hs_quench_layer layer;
        hs_structure core;
        double case_m, hardness_HV;
        const hs_quenched q = {HS_QUENCHED_PLATE, 0.012, 20};
        CHECK(hs_steel_find(&steel, names[i], NULL) == HS_OK);
        hs_quench_profile p = profile_of(steel.mid.C);
        carbon_pct[N - 1] = steel.mid.C; /* the error function never quite ends */
        CHECK(hs_quench_layer_of(&layer, &case_m, &p, &steel.mid, &q, 1100, NULL) == HS_OK);
        CHECK(hs_core_HV(&hardness_HV, &core, &steel.mid, steel.mid.C, &q, 1100, NULL) == HS_OK);
        NEAR(layer.share[layer.n - 1], core.martensite, 1e-9);
        NEAR(layer.depth_m[layer.n - 1], 0.006, 1e-12);
        CHECK(layer.share[0] >= layer.share[layer.n - 1]); /* carbon and the surface help */
    }
}

static void layer__case__ends_where_the_carbon_does(void) {
    /* exact: total case to core + .07 %C by the error function; the heat dissolves .8 % at most */
    hs_steel steel;
    hs_quench_layer layer;
    double case_m, x = 0;
    const hs_quenched q = {HS_QUENCHED_PLATE, 0.02, 20};
    CHECK(hs_steel_find(&steel, "16MnCr5", NULL) == HS_OK);
    hs_quench_profile p = profile_of(steel.mid.C);
    while (erfc(x) > 0.07 / (0.9 - steel.mid.C))
        x += 1e-5;
    CHECK(hs_quench_layer_of(&layer, &case_m, &p, &steel.mid, &q, 1100, NULL) == HS_OK);
    NEAR(case_m, 1.2e-3 * x, 4e-3 / (N - 1)); /* to the next node of the profile */
    NEAR(layer.dissolved_pct[0], 0.8, 1e-12);
    for (size_t i = 1; i < layer.n; i++) {
        CHECK(layer.depth_m[i] > layer.depth_m[i - 1]);
        CHECK(layer.share[i] >= 0 && layer.share[i] <= 1);
    }
    p.n = 1;
    p.carbon_pct = &steel.mid.C;
    CHECK(hs_quench_layer_of(&layer, &case_m, &p, &steel.mid, &q, 1100, NULL) == HS_OK);
    NEAR(case_m, 0, 1e-15);
}

static void layer__what_is_no_quench__is_refused(void) {
    hs_steel steel;
    hs_quench_layer layer;
    double case_m;
    CHECK(hs_steel_find(&steel, "16MnCr5", NULL) == HS_OK);
    hs_quench_profile p = profile_of(steel.mid.C);
    const hs_quenched q = {HS_QUENCHED_PLATE, 0.02, 20}, none = {HS_QUENCHED_PLATE, 0, 20};
    CHECK(hs_quench_layer_of(&layer, &case_m, &p, &steel.mid, &q, 900, NULL) == HS_E_RANGE);
    CHECK(hs_quench_layer_of(&layer, &case_m, &p, &steel.mid, &none, 1100, NULL) ==
          HS_E_IMPOSSIBLE);
    p.n = 0;
    CHECK(hs_quench_layer_of(&layer, &case_m, &p, &steel.mid, &q, 1100, NULL) == HS_E_IMPOSSIBLE);
}

HS_TEST_MAIN("model quench layer",
             TEST(layer__middle_of_the_section__is_the_core_as_its_hardness_has_it),
             TEST(layer__case__ends_where_the_carbon_does),
             TEST(layer__what_is_no_quench__is_refused))
