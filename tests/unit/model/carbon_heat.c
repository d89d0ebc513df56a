/* Heats as a shop has them: ramps, logs, several heats, the A_cm line, and what is refused. */
#include "constants.h"
#include "hardskin/model/carbon.h"
#include "support/check.h"

static hs_carbon_mesh mesh;
static hs_carbon_work work;
static double carbon[HS_CARBON_CELLS];
static hs_carbon_uptake uptake;

static hs_diffusivity agren = {.factor = 1};

static double celsius(double temp_C) {
    return temp_C + 273.15;
}

static hs_side fixed(double carbon_pct) {
    return (hs_side){.kind = HS_SIDE_FIXED, .carbon_pct = carbon_pct};
}

static void start(double core_pct) {
    for (size_t i = 0; i < HS_CARBON_CELLS; i++)
        carbon[i] = core_pct;
    CHECK(hs_carbon_mesh_make(&mesh, HS_SLAB, 1, 0, 3.5e-3, 96, NULL) == HS_OK);
}

static hs_status heat(const hs_heat_point *point, size_t n, hs_side side, int cap, size_t steps) {
    const hs_heat h = {.point = point, .n = n, .side = {side}, .cap_at_acm = cap, .steps = steps};
    return hs_carbon_run(carbon, &uptake, &mesh, &h, &agren, &work, NULL);
}

static double at(double depth_m) {
    return hs_carbon_at(&mesh, carbon, uptake.surface_pct, depth_m);
}

/* exact: one hold cut into pieces, or entered as a log, is the same hold */
static void heat__cut_in_pieces__is_the_same_heat(void) {
    const double T = celsius(925);
    const hs_heat_point whole[2] = {{0, T}, {14400, T}}, half[2] = {{0, T}, {7200, T}};
    const hs_heat_point log[6] = {{-500, T}, {0, T}, {10, T}, {10, T}, {9000, T}, {13900, T}};
    start(.18);
    CHECK(heat(whole, 2, fixed(.9), 0, 200) == HS_OK);
    double once = at(.5e-3), gained = uptake.gained_pct_m[0];
    start(.18);
    CHECK(heat(log, 6, fixed(.9), 0, 200) == HS_OK);
    NEAR(at(.5e-3), once, 1e-9);
    start(.18);
    CHECK(heat(half, 2, fixed(.9), 0, 200) == HS_OK);
    double first = uptake.gained_pct_m[0];
    CHECK(heat(half, 2, fixed(.9), 0, 200) == HS_OK);
    NEAR(at(.5e-3), once, 1e-5);
    NEAR((first + uptake.gained_pct_m[0]) / gained, 1, 1e-4);
}

/* exact: with a constant D that follows Arrhenius a ramp is worth the integral of D; here worked
 * by Simpson's rule in 20 000 parts */
static void heat__ramp__is_worth_its_integral(void) {
    const hs_diffusivity d = {
        .model = HS_D_CONSTANT, .D0_m2_s = 2.3e-5, .Q_J_mol = 148e3, .factor = 1};
    const hs_heat_point ramp[3] = {{0, celsius(20)}, {5400, celsius(925)}, {9000, celsius(925)}};
    const hs_heat h = {.point = ramp, .n = 3, .side = {fixed(.9)}, .steps = 100};
    enum { PARTS = 20000 };
    double sum = 0, step = 5400. / PARTS;
    for (int i = 0; i <= PARTS; i++) {
        double T = celsius(20 + 905. * i / PARTS);
        double weight = i == 0 || i == PARTS ? 1 : i % 2 ? 4 : 2;
        sum += weight * step / 3 * hs_diffusivity_value(&d, 0, T);
    }
    sum += 3600 * hs_diffusivity_value(&d, 0, celsius(925));
    NEAR(hs_carbon_spread(&h, &d, .5) / sum, 1, 1e-5);
    start(.20);
    CHECK(hs_carbon_run(carbon, &uptake, &mesh, &h, &d, &work, NULL) == HS_OK);
    NEAR(at(.4e-3), .20 + .70 * erfc(.4e-3 / (2 * sqrt(sum))), 2e-4);
    NEAR(hs_carbon_reach(&h, 1, &d, .5), 6 * sqrt(sum), 1e-8);
}

/* exact: of a ramp only what lies above 740 C counts, up and down; Simpson's rule from there */
static void heat__ramp_through_740__counts_only_above(void) {
    const hs_heat_point up_and_down[3] = {
        {0, celsius(20)}, {5400, celsius(925)}, {14450, celsius(20)}};
    const hs_heat h = {.point = up_and_down, .n = 3, .side = {fixed(.9)}};
    enum { PARTS = 2000 };
    double sum = 0, degrees = 185. / PARTS;
    for (int i = 0; i <= PARTS; i++) {
        double weight = i == 0 || i == PARTS ? 1 : i % 2 ? 4 : 2;
        sum += weight * degrees / 3 * hs_diffusivity_value(&agren, .5, celsius(740 + degrees * i));
    }
    double seconds_per_K = 5400. / 905 + 9050. / 905;
    NEAR(hs_carbon_spread(&h, &agren, .5) / (sum * seconds_per_K), 1, 1e-5);
}

/* exact: four times the diffusivity in a quarter of the time is the same profile; each model */
static void heat__factor__is_time(void) {
    for (int model = HS_D_AGREN; model <= HS_D_LEE; model++) {
        hs_diffusivity d = {.model = (hs_diffusivity_model)model,
                            .steel = {.Mn = 1.15, .Si = .25, .Cr = .95},
                            .factor = 1};
        double deep[2];
        for (int k = 0; k < 2; k++) {
            const hs_heat_point hold[2] = {{0, celsius(925)}, {k ? 3600 : 14400, celsius(925)}};
            const hs_heat h = {.point = hold, .n = 2, .side = {fixed(.9)}};
            start(.18);
            d.factor = k ? 4 : 1;
            CHECK(hs_carbon_run(carbon, &uptake, &mesh, &h, &d, &work, NULL) == HS_OK);
            deep[k] = at(.5e-3);
        }
        NEAR(deep[0], deep[1], 1e-12);
        /* the models differ by up to 40 % in D (contract, case 1): Agren's own profile with .6 D
         * holds .447 % here, with 1.4 D .603 % */
        CHECK(deep[0] > .447 && deep[0] < .603);
    }
}

/* exact: over a small step of carbon D is a constant; erfc, each model */
static void heat__small_step__is_the_constant_solution(void) {
    for (int model = HS_D_AGREN; model <= HS_D_LEE; model++) {
        const hs_diffusivity d = {.model = (hs_diffusivity_model)model, .factor = 1};
        const hs_heat_point hold[2] = {{0, celsius(925)}, {14400, celsius(925)}};
        const hs_heat h = {.point = hold, .n = 2, .side = {fixed(.802)}, .steps = 100};
        start(.798);
        CHECK(hs_carbon_run(carbon, &uptake, &mesh, &h, &d, &work, NULL) == HS_OK);
        double D = hs_diffusivity_value(&d, .8, celsius(925));
        double share = erfc(.5e-3 / (2 * sqrt(D * 14400)));
        NEAR((at(.5e-3) - .798) / .004, share, 0.002);
    }
}

/* Leaving out what lies below 740 C: 20 C to 740 C in three hours and back, at the D of 740 C
 * throughout (an upper bound), against a 6 h soak at 925 C */
static void heat__below_740__is_negligible(void) {
    NEAR(hs_carbon_cold_K(), celsius(740), 1e-9);
    const hs_heat_point cold[3] = {{0, celsius(20)}, {10800, celsius(739.9)}, {21600, celsius(20)}};
    start(.18);
    CHECK(heat(cold, 3, fixed(.9), 1, 0) == HS_OK);
    for (size_t i = 0; i < mesh.n; i++)
        NEAR(carbon[i], .18, 0);
    NEAR(uptake.gained_pct_m[0], 0, 0);
    const hs_heat_point warm[2] = {{0, celsius(500)}, {36000, celsius(500)}};
    CHECK(heat(warm, 2, fixed(.9), 1, 0) == HS_OK);
    NEAR(carbon[0], .18, 0);
    /* exact: between 700 and 740 C at 240 K/h each way, .18 to .8 %C (the carbon that austenite
     * holds there) */
    double left_out = 2 * (40. / 240) * 3600 * hs_diffusivity_value(&agren, .8, celsius(740));
    double soak = 6 * 3600 * hs_diffusivity_value(&agren, .8, celsius(925));
    CHECK(sqrt(1 + left_out / soak) - 1 < 0.0025);
}

/* exact: a surface richer than A_cm stands at A_cm (925 C: 1.3021 by the fit) */
static void heat__acm__caps_the_surface_as_the_heat_changes(void) {
    const hs_heat_point hold[2] = {{0, celsius(850)}, {14400, celsius(850)}};
    const hs_heat_point fall[3] = {{0, celsius(950)}, {3600, celsius(950)}, {9000, celsius(800)}};
    start(.18);
    CHECK(heat(hold, 2, fixed(1.5), 1, 0) == HS_OK);
    NEAR(uptake.surface_pct[0], 1.0845, 1e-4);
    start(.18);
    CHECK(heat(fall, 3, fixed(1.5), 1, 0) == HS_OK);
    NEAR(uptake.surface_pct[0], hs_acm_pct(celsius(800)), 1e-6);
    NEAR(uptake.balance_error, 0, 1e-12);
    /* the inside still holds more than the surface now may */
    double inside = 0;
    for (size_t i = 0; i < mesh.n; i++)
        inside = fmax(inside, carbon[i]);
    CHECK(inside > uptake.surface_pct[0] + .05);
    const hs_side rich = {HS_SIDE_TRANSFER, 1.5, 1e-6};
    start(.18);
    CHECK(heat(hold, 2, rich, 1, 0) == HS_OK);
    CHECK(uptake.surface_pct[0] < 1.0845 && uptake.surface_pct[0] > .9);
}

/* exact: a box reheat with closed faces moves carbon inwards, none away; the surface gives up
 * about its slope (.6 %/mm) times 2 sqrt(Dt/pi) (.12 mm) */
static void heat__closed_reheat__flattens_and_keeps(void) {
    const hs_heat_point soak[2] = {{0, celsius(925)}, {14400, celsius(925)}};
    const hs_heat_point reheat[4] = {
        {0, celsius(20)}, {2400, celsius(820)}, {4200, celsius(820)}, {4210, celsius(20)}};
    const hs_side closed = {.kind = HS_SIDE_CLOSED};
    start(.18);
    CHECK(heat(soak, 2, fixed(.95), 1, 0) == HS_OK);
    double content = hs_carbon_content(&mesh, carbon), top = carbon[0], deep = at(1.2e-3);
    CHECK(heat(reheat, 4, closed, 0, 0) == HS_OK);
    NEAR(hs_carbon_content(&mesh, carbon) / content, 1, 1e-12);
    CHECK(carbon[0] < top && top - carbon[0] < .1 && at(1.2e-3) > deep);
    /* hotter or longer never gives less */
    double last = 0;
    for (double temp_C = 840; temp_C <= 1000; temp_C += 20) {
        const hs_heat_point hot[2] = {{0, celsius(temp_C)}, {14400, celsius(temp_C)}};
        start(.18);
        CHECK(heat(hot, 2, fixed(.8), 0, 0) == HS_OK);
        CHECK(at(.5e-3) > last);
        last = at(.5e-3);
    }
}

/* published: Dal'Maz Silva et al. 2017: 23MnCrMo5, .23 %, 900 C, surface .95 %, 2 h: 20.5 g/m2 by
 * weighing, 15.3 from the profile; this diffusivity gives 19.6 by another program (contract,
 * worked examples 1), density 7850 */
static void heat__weighed_uptake__lies_between_the_two_methods(void) {
    const hs_heat_point hold[2] = {{0, celsius(900)}, {7200, celsius(900)}};
    start(.23);
    CHECK(heat(hold, 2, fixed(.95), 0, 0) == HS_OK);
    double grams = uptake.gained_pct_m[0] / 100 * 7850 * 1000;
    NEAR(grams, 19.6, 0.06);
    CHECK(grams > 15.3 && grams < 20.5);
}

/* published: the same measurement. The plan's band on D of alloyed steel (25 %, one standard
 * deviation of ln D) alone: the weighing lies inside, the profile's figure just at its low end. The
 * two differ by a third, and 4 h of closed diffusion afterwards change neither. */
static void heat__weighed_uptake__lies_in_the_band_of_the_plan(void) {
    const hs_heat_point hold[2] = {{0, celsius(900)}, {7200, celsius(900)}};
    double grams[2];
    for (int k = 0; k < 2; k++) {
        double bound = 1.959964 * HS_K_PLAN_DOUBT_DIFFUSIVITY_ALLOYED;
        agren.factor = exp(k ? bound : -bound);
        start(.23);
        CHECK(heat(hold, 2, fixed(.95), 0, 0) == HS_OK);
        grams[k] = uptake.gained_pct_m[0] / 100 * 7850 * 1000;
    }
    agren.factor = 1;
    printf(
        "uptake, 95 %% band of D: %.2f to %.2f g/m2; weighed 20.5 %s, from the profile 15.3 %s\n",
        grams[0], grams[1], 20.5 > grams[0] && 20.5 < grams[1] ? "inside" : "outside",
        15.3 > grams[0] && 15.3 < grams[1] ? "inside" : "outside");
    CHECK(grams[0] < 20.5 && 20.5 < grams[1]);
}

static void heat__what_cannot_be__is_refused_and_left_alone(void) {
    const double T = celsius(925);
    const hs_heat_point good[2] = {{0, T}, {3600, T}}, back[3] = {{0, T}, {10, T}, {9, T}};
    const hs_heat_point hot[2] = {{0, celsius(1160)}, {1, celsius(1160)}},
                        warm[2] = {{0, celsius(1060)}, {1, celsius(1060)}},
                        none[2] = {{0, NAN}, {3600, NAN}};
    start(.18);
    CHECK(heat(good, 1, fixed(.9), 0, 0) == HS_E_IMPOSSIBLE);
    CHECK(heat(good, 2, fixed(.9), 0, 10001) == HS_E_IMPOSSIBLE);
    CHECK(heat(back, 3, fixed(.9), 0, 0) == HS_E_IMPOSSIBLE);
    CHECK(heat(hot, 2, fixed(.9), 0, 0) == HS_E_RANGE);
    CHECK(heat(warm, 2, fixed(.9), 1, 0) == HS_E_RANGE);
    CHECK(heat(warm, 2, fixed(.9), 0, 0) == HS_OK);
    start(.18);
    CHECK(heat(none, 2, fixed(.9), 0, 0) != HS_OK);
    CHECK(heat(good, 2, fixed(-.1), 0, 0) == HS_E_IMPOSSIBLE);
    CHECK(heat(good, 2, fixed(NAN), 0, 0) == HS_E_IMPOSSIBLE);
    const hs_side negative = {HS_SIDE_TRANSFER, .9, -1e-7};
    CHECK(heat(good, 2, negative, 0, 0) == HS_E_IMPOSSIBLE);
    for (size_t i = 0; i < mesh.n; i++)
        NEAR(carbon[i], .18, 0);
    const hs_heat two = {.point = good, .n = 2, .side = {fixed(.9), fixed(.9)}};
    CHECK(hs_carbon_run(carbon, NULL, &mesh, &two, &agren, &work, NULL) == HS_E_IMPOSSIBLE);
    carbon[3] = NAN;
    CHECK(heat(good, 2, fixed(.9), 0, 0) == HS_E_IMPOSSIBLE);
    CHECK(hs_carbon_mesh_make(&mesh, HS_SLAB, 0, 0, 0, 0, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_carbon_mesh_make(&mesh, HS_SLAB, NAN, 0, 0, 0, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_carbon_mesh_make(&mesh, HS_TUBE, 1, 1, 0, 0, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_carbon_mesh_make(&mesh, HS_TUBE, 1, 0, 0, 0, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_carbon_mesh_make(&mesh, HS_SLAB, 1, 0, -1, 0, NULL) == HS_E_IMPOSSIBLE);
    CHECK(hs_carbon_mesh_make(&mesh, HS_SLAB, 1, 0, 0, HS_CARBON_CELLS + 1, NULL) ==
          HS_E_TOO_LARGE);
    CHECK(mesh.n == 96);
}

/* exact: linear between the nodes, the face values at the ends */
static void heat__carbon_at__reads_faces_and_centres(void) {
    CHECK(hs_carbon_mesh_make(&mesh, HS_SLAB, 1e-3, 0, 0, 4, NULL) == HS_OK);
    const double c[4] = {.8, .6, .4, .2}, face[2] = {1.0, .1};
    NEAR(hs_carbon_at(&mesh, c, face, 0), 1.0, 0);
    NEAR(hs_carbon_at(&mesh, c, face, 1e-3), .1, 1e-12);
    NEAR(hs_carbon_at(&mesh, c, face, mesh.centre_m[2]), .4, 1e-12);
    NEAR(hs_carbon_at(&mesh, c, face, .5e-3), .5, 1e-12);
    NEAR(hs_carbon_at(&mesh, c, NULL, 0), .8, 0);
    NEAR(hs_carbon_at(&mesh, c, NULL, 1e-3), .2, 1e-12);
    CHECK(isnan(hs_carbon_at(&mesh, c, face, 1.001e-3)) &&
          isnan(hs_carbon_at(&mesh, c, face, NAN)));
    /* exact: the volume of a bar, tube and hole per area of face 1 */
    CHECK(hs_carbon_mesh_make(&mesh, HS_CYLINDER, 2e-3, 0, 0, 30, NULL) == HS_OK);
    double one[30];
    for (size_t i = 0; i < 30; i++)
        one[i] = 1;
    NEAR(hs_carbon_content(&mesh, one), 1e-3, 1e-15);
    CHECK(hs_carbon_mesh_make(&mesh, HS_BORE, 2e-3, 1e-3, 0, 30, NULL) == HS_OK);
    NEAR(hs_carbon_content(&mesh, one), 1.5e-3, 1e-15);
    CHECK(hs_carbon_mesh_make(&mesh, HS_TUBE, 2e-3, 1e-3, .5e-3, 30, NULL) == HS_OK);
    CHECK(mesh.cut);
    NEAR(mesh.edge_m[30], .5e-3, 0);
    NEAR(mesh.area[30], .75, 1e-15);
}

HS_TEST_MAIN("model carbon_heat", TEST(heat__cut_in_pieces__is_the_same_heat),
             TEST(heat__ramp__is_worth_its_integral),
             TEST(heat__ramp_through_740__counts_only_above), TEST(heat__factor__is_time),
             TEST(heat__small_step__is_the_constant_solution), TEST(heat__below_740__is_negligible),
             TEST(heat__acm__caps_the_surface_as_the_heat_changes),
             TEST(heat__closed_reheat__flattens_and_keeps),
             TEST(heat__weighed_uptake__lies_between_the_two_methods),
             TEST(heat__weighed_uptake__lies_in_the_band_of_the_plan),
             TEST(heat__what_cannot_be__is_refused_and_left_alone),
             TEST(heat__carbon_at__reads_faces_and_centres))
