#include "hardskin/model/austenite.h"
#include "support/check.h"

static double celsius(double temp_C) {
    return temp_C + 273.15;
}

static double diffusivity(hs_diffusivity_model model, double carbon_pct, double temp_C) {
    const hs_diffusivity d = {.model = model, .factor = 1};
    return 1e11 * hs_diffusivity_value(&d, carbon_pct, celsius(temp_C));
}

/* independent: the printed forms worked out with a pocket calculator's digits (contract, case 1).
 * Tolerance: the printed digits. */
static void austenite__diffusivity__matches_the_printed_forms(void) {
    NEAR(diffusivity(HS_D_AGREN, 0.2, 900), 0.772, 0.0006);
    NEAR(diffusivity(HS_D_AGREN, 0.8, 900), 1.456, 0.0006);
    NEAR(diffusivity(HS_D_AGREN, 0.2, 950), 1.418, 0.0006);
    NEAR(diffusivity(HS_D_AGREN, 0.8, 950), 2.590, 0.0006);
    NEAR(diffusivity(HS_D_TIBBETTS, 0.2, 900), 0.768, 0.0006);
    NEAR(diffusivity(HS_D_TIBBETTS, 0.8, 900), 1.609, 0.0006);
    NEAR(diffusivity(HS_D_TIBBETTS, 0.2, 950), 1.437, 0.0006);
    NEAR(diffusivity(HS_D_TIBBETTS, 0.8, 950), 2.806, 0.0006);
    NEAR(diffusivity(HS_D_LEE, 0.2, 900), 0.709, 0.0006);
    NEAR(diffusivity(HS_D_LEE, 0.8, 900), 1.472, 0.0006);
}

/* exact: Lee's sum written out for one alloy, 16MnCr5 at mid-range */
static void austenite__lee_with_alloy__adds_each_element(void) {
    const hs_diffusivity d = {
        .model = HS_D_LEE,
        .steel = {.Mn = 1.15, .Si = 0.25, .Cr = 0.95, .Ni = 0.1, .Mo = 0.05, .Al = 0.03},
        .factor = 1};
    double C = 0.5, T = celsius(925);
    double front = 0.146 - 0.036 * C * (1 - 1.075 * 0.95) - 0.0315 * 1.15 + 0.0509 * 0.25 -
                   0.0085 * 0.1 + 0.3031 * 0.05 - 0.0520 * 0.03;
    double energy = 144.3 - 15.0 * C + 0.37 * C * C - 4.3663 * 1.15 + 4.0507 * 0.25 - 1.2407 * 0.1 +
                    7.7260 * 0.95 + 12.1266 * 0.05 - 6.7886 * 0.03;
    double D = front * 1e-4 * exp(-energy * 1000 / (8.31446261815324 * T));
    NEAR(hs_diffusivity_value(&d, C, T) / D, 1, 1e-12);
}

static void austenite__constant_and_factor__scale(void) {
    /* published: Callister, D0 2.3e-5 m2/s, Q 148 kJ/mol; exact: 1.10e-11 at 950 C */
    hs_diffusivity d = {.model = HS_D_CONSTANT, .D0_m2_s = 2.3e-5, .Q_J_mol = 148e3, .factor = 1};
    NEAR(1e11 * hs_diffusivity_value(&d, 0.5, celsius(950)), 1.10, 0.005);
    d.factor = 2;
    NEAR(1e11 * hs_diffusivity_value(&d, 0.5, celsius(950)), 2.20, 0.01);
    d.Q_J_mol = 0;
    NEAR(hs_diffusivity_value(&d, 0.5, 0), 4.6e-5, 1e-18);
}

static void austenite__diffusivity_check__knows_each_range(void) {
    /* own contract: quick.md, ranges */
    static const struct {
        hs_diffusivity_model model;
        double low_C, high_C;
    } of[] = {{HS_D_AGREN, 727, 1150}, {HS_D_TIBBETTS, 850, 1100}, {HS_D_LEE, 850, 1100}};
    for (size_t i = 0; i < sizeof of / sizeof *of; i++) {
        hs_diffusivity d = {.model = of[i].model, .factor = 1};
        double low = celsius(of[i].low_C), high = celsius(of[i].high_C);
        CHECK(hs_diffusivity_check(&d, 1, low, high, NULL) == HS_OK);
        CHECK(hs_diffusivity_check(&d, 1, low - 0.1, high, NULL) == HS_E_RANGE);
        CHECK(hs_diffusivity_check(&d, 1, low, high + 0.1, NULL) == HS_E_RANGE);
        CHECK(hs_diffusivity_check(&d, 1, NAN, high, NULL) == HS_E_RANGE);
        CHECK(hs_diffusivity_check(&d, NAN, low, high, NULL) == HS_E_RANGE);
        CHECK(hs_diffusivity_check(&d, -0.1, low, high, NULL) == HS_E_RANGE);
        d.factor = 0;
        CHECK(hs_diffusivity_check(&d, 1, low, high, NULL) == HS_E_IMPOSSIBLE);
    }
    const hs_diffusivity tibbetts = {.model = HS_D_TIBBETTS, .factor = 1};
    CHECK(hs_diffusivity_check(&tibbetts, 1.31, 1173, 1173, NULL) == HS_E_RANGE);
    const hs_diffusivity none = {.model = HS_D_CONSTANT, .factor = 1};
    CHECK(hs_diffusivity_check(&none, 1, 1173, 1173, NULL) == HS_E_IMPOSSIBLE);
    const hs_diffusivity cold = {.model = HS_D_CONSTANT, .D0_m2_s = 1, .Q_J_mol = 1, .factor = 1};
    CHECK(hs_diffusivity_check(&cold, 1, 0, 0, NULL) == HS_E_IMPOSSIBLE);
}

static void austenite__acm__matches_its_fit_and_the_eutectoid(void) {
    /* independent: Fe-C parameters recalled from memory (contract, case 3) */
    static const double at[][2] = {{760, .8446},  {800, .9484},  {850, 1.0845},
                                   {900, 1.2277}, {950, 1.3781}, {1000, 1.5356}};
    for (size_t i = 0; i < sizeof at / sizeof *at; i++)
        NEAR(hs_acm_pct(celsius(at[i][0])), at[i][1], 0.00006);
    /* published: A_cm runs from the eutectoid (727 C, .76 to .80 %C) to 2.1 % at 1147 C (Metals
     * Handbook, Fe-C diagram, from memory). 13 K above the eutectoid it stands .033 higher. */
    NEAR(hs_acm_pct(celsius(740)), 0.79, 0.03);
    CHECK(isnan(hs_acm_pct(celsius(739.9))));
    CHECK(isnan(hs_acm_pct(celsius(1050.1))));
    CHECK(isnan(hs_acm_pct(NAN)));
}

static void austenite__ae1_and_ae3__match_1018(void) {
    /* published: Andrews 1965 formulae, worked for .18 C 1018 (contract, case 3) */
    hs_composition s = {.C = 0.18, .Mn = 0.75, .Si = 0.2};
    NEAR(hs_ae1_K(&s), celsius(720.8), 0.05);
    NEAR(hs_ae3_K(&s), celsius(810.3), 0.05);
    /* exact: pure iron turns at 910 C in this formula, and every sign by itself */
    NEAR(hs_ae3_K(&(hs_composition){.C = 0}), celsius(910), 1e-9);
    NEAR(hs_ae3_K(&(hs_composition){.Cr = 1}), celsius(899), 1e-9);
    NEAR(hs_ae3_K(&(hs_composition){.Ni = 1, .Mo = 1}), celsius(910 - 15.2 + 31.5), 1e-9);
    NEAR(hs_ae1_K(&(hs_composition){.Cr = 1, .Ni = 1}), celsius(723), 1e-9);
    s.C = 0.61;
    CHECK(isnan(hs_ae3_K(&s)));
}

static void austenite__activity_and_alloy_factor__match_worked_values(void) {
    /* published: Ellis et al. 1963, from memory, worked at 927 C (contract, case 3) */
    NEAR(hs_carbon_activity(0.4, celsius(927)), 0.234, 0.0006);
    NEAR(hs_carbon_activity(0.8, celsius(927)), 0.536, 0.0006);
    NEAR(hs_gunnarson_ratio(&(hs_composition){.C = 0}), 1, 1e-15);
    /* exact: 10^(.055 .25 - .013 1.15 - .040 .95) = 10^-.0392 */
    const hs_composition s = {.Si = 0.25, .Mn = 1.15, .Cr = 0.95};
    NEAR(hs_gunnarson_ratio(&s), 0.91369, 1e-5);
    NEAR(hs_gunnarson_ratio(&(hs_composition){.Ni = 1.5, .Mo = 0.3}), pow(10, 0.0171), 1e-12);
}

static void austenite__saturated_with_graphite__has_activity_one(void) {
    /* published: graphite saturation 1.170 % at 900 C, 1.334 % at 950 C (worked from the parameters
     * of Fe-C, from memory); Ellis's formula is another source: 1.3 % off */
    NEAR(hs_carbon_activity(1.170, celsius(900)), 1, .015);
    NEAR(hs_carbon_activity(1.334, celsius(950)), 1, .015);
    /* exact: cementite is less stable than graphite, so A_cm holds more carbon */
    CHECK(hs_acm_pct(celsius(900)) > 1.170 && hs_acm_pct(celsius(950)) > 1.334);
}

HS_TEST_MAIN("model austenite", TEST(austenite__diffusivity__matches_the_printed_forms),
             TEST(austenite__lee_with_alloy__adds_each_element),
             TEST(austenite__constant_and_factor__scale),
             TEST(austenite__diffusivity_check__knows_each_range),
             TEST(austenite__acm__matches_its_fit_and_the_eutectoid),
             TEST(austenite__ae1_and_ae3__match_1018),
             TEST(austenite__activity_and_alloy_factor__match_worked_values),
             TEST(austenite__saturated_with_graphite__has_activity_one))
