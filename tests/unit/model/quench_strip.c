/* Strips and flats against the rest of the independent figures: fibre strips computed twice by
 * other programs (within .1 % without transformation, 1 % with it, 2 % without plasticity), as the
 * contract's reference on distortion prints them in its sections 5 and 12. Judged, as it says, by a
 * share of the largest curvature of the own envelope. */
#include "support/check.h"
#include "support/quench_data.h"

#include "hardskin/model/bow.h"
#include "hardskin/model/quench_material.h"

#include <math.h>
#include <string.h>

static const double SHARE = 0.02;
static hs_quench_mesh mesh;
static hs_quench_work work;
static hs_quench_point node[HS_QUENCH_NODES], fibre[HS_QUENCH_FIBRES];
static hs_quench_left left[HS_QUENCH_PLASTICITIES];
static double half_m; /* of the strip */

static hs_quench_steel plain(double modulus_Pa) {
    return test_steel_plain(modulus_Pa, 30, 5e6);
}

static hs_quench_point carburised(double y_m, int faces) {
    return test_point_carburised(faces > 0 ? y_m + half_m : INFINITY,
                                 faces > 1 ? half_m - y_m : INFINITY);
}

static void lay(double width_m, double height_m, double spacing_m, double case_m) {
    const hs_point p[] = {{0, 0}, {width_m, 0}, {width_m, height_m}, {0, height_m}};
    const hs_section section = {{p, 4}, NULL, 0};
    CHECK(hs_quench_mesh_make(&mesh, &section, spacing_m, 0, case_m, NULL) == HS_OK);
    half_m = 0.5 * height_m;
}

static void fill(hs_quench_point p) {
    test_points_fill(node, fibre, p);
}

static void fill_carburised(int faces) {
    for (size_t i = 0; i < mesh.nodes; i++)
        node[i] = carburised(mesh.node[i].y_m, faces);
    for (size_t i = 0; i < mesh.fibres; i++)
        fibre[i] = carburised(mesh.fibre[i].y_m, faces);
}

static void quench(const hs_quench_steel *steel, const hs_curve *film, const double *edge,
                   double bath_C, const double *K, size_t n) {
    hs_quench_case c = {.mesh = &mesh,
                        .steel = steel,
                        .node = node,
                        .fibre = fibre,
                        .start_K = 1123.15,
                        .n = n,
                        .substep_K = 2.5};
    c.bath = (hs_quench_bath){
        .film = *film, .bath_K = bath_C + 273.15, .factor = 1, .edge_factor = edge};
    memcpy(c.plasticity_1_Pa, K, n * sizeof *K);
    CHECK(hs_quench_run(left, NULL, &c, &work, NULL, NULL, NULL) == HS_OK);
}

static double bow_mm(size_t k) {
    return 1e3 * hs_bow_sag_m(left[k].kappa_x_1_m, 0.3);
}

/* bottom, right, top, left; the bottom is the h1 face */
static const double bottom_only[] = {1, 0, 0, 0}, third[] = {1, 0, 2.0 / 3, 0},
                    alike[] = {1, 0, 1, 0}, tenth[] = {1.05, 0, 0.95, 0};
static const double K0 = 0, K4[] = {0, 3e-11, 6e-11, 1.2e-10};

static void model_quench_strip__bow_and_time_of_peak__as_printed(void) {
    /* independent: -.1842 mm and 13.0 s; -.0301 mm and 12.4 s. The peak is flat: within a step of
     * the heat, some .6 s there */
    hs_quench_steel steel = plain(150e9);
    hs_curve film = hs_curve_flat(3000);
    lay(1e-3, 20e-3, 1e-3, 0);
    fill((hs_quench_point){.share = 1});
    quench(&steel, &film, bottom_only, 50, &K0, 1);
    NEAR(bow_mm(0), -0.1842, 0.005 * 0.25762 * 0.09 / 8e-3);
    NEAR(left[0].peak_time_s, 13.0, 0.6);
    film = hs_curve_flat(1500);
    quench(&steel, &film, third, 50, &K0, 1);
    NEAR(bow_mm(0), -0.0301, 0.005 * 4.434e-2 * 0.09 / 8e-3);
    NEAR(left[0].peak_time_s, 12.4, 0.6);
}

static void model_quench_strip__wide_plate__bends_as_biaxial_fibres(void) {
    /* independent: E / (1 - nu), nu .3, and half of K: 3000/0 -1.772e-2, peak .2485; 1500/1000
     * -2.315e-3, 4.318e-2; with martensite, K 0, 6e-5, 1.2e-4 per MPa: -3.54e-2, 7.62e-2, .1137 */
    const double K[] = {0, 3e-11, 6e-11}, hard[] = {-3.54e-2, 7.62e-2, 0.1137};
    hs_quench_steel steel = plain(150e9 / 0.7);
    hs_curve film = hs_curve_flat(3000);
    lay(1e-3, 20e-3, 1e-3, 0);
    fill((hs_quench_point){.share = 1});
    quench(&steel, &film, bottom_only, 50, &K0, 1);
    NEAR(left[0].kappa_x_1_m, -1.772e-2, 0.005 * 0.2485);
    NEAR(fabs(left[0].peak_kappa_x_1_m), 0.2485, 0.005 * 0.2485);
    film = hs_curve_flat(1500);
    quench(&steel, &film, third, 50, &K0, 1);
    NEAR(left[0].kappa_x_1_m, -2.315e-3, 0.005 * 4.318e-2);
    NEAR(fabs(left[0].peak_kappa_x_1_m), 4.318e-2, 0.005 * 4.318e-2);
    steel = test_steel_hardening(180e9 / 0.7);
    fill(test_point_even());
    quench(&steel, &film, third, 20, K, 3);
    for (int k = 0; k < 3; k++)
        NEAR(left[k].kappa_x_1_m, hard[k], SHARE * 0.1137);
}

static void model_quench_strip__ten_per_cent__as_printed(void) {
    /* independent: -.177, +.154, +.244, +.331 mm per 300; evenly cooled 0. Without plasticity the
     * front of yielding shows: half a millimetre of cells, and twice the share */
    const double mm[] = {-0.177, 0.154, 0.244, 0.331};
    hs_quench_steel steel = test_steel_hardening(180e9);
    hs_curve film = hs_curve_flat(1500);
    lay(1e-3, 20e-3, 0.5e-3, 0);
    fill(test_point_even());
    quench(&steel, &film, tenth, 20, K4, 4);
    for (size_t k = 0; k < 4; k++)
        NEAR(bow_mm(k), mm[k], (k == 0 ? 2 : 1) * SHARE * 0.331);
    quench(&steel, &film, alike, 20, K4, 4);
    for (size_t k = 0; k < 4; k++)
        NEAR(bow_mm(k), 0, 1e-9);
}

static void model_quench_strip__carburised__as_printed(void) {
    /* independent: 1575/1425, both faces 4.9e-3, 2.30e-2, 3.20e-2, 3.34e-2 (twice the share: it is
     * an envelope a third as wide on the same cells); 1500/1000 with .18 %C throughout
     * -4.72e-2, 4.79e-2, 8.34e-2, .1146 */
    const double both[] = {4.9e-3, 2.30e-2, 3.20e-2, 3.34e-2};
    const double none[] = {-4.72e-2, 4.79e-2, 8.34e-2, 0.1146};
    /* independent: stress of the skin, MPa. Ours is the outermost fibre's, a sixteenth of a
     * millimetre down, and the reference does not say which quench: a tenth of it */
    const double skin_MPa[] = {-1460, -590, -395, -256};
    hs_quench_steel steel = test_steel_hardening(180e9);
    hs_curve film = hs_curve_flat(1500);
    lay(1e-3, 20e-3, 0.5e-3, 3e-3);
    fill_carburised(2);
    quench(&steel, &film, tenth, 20, K4, 4);
    for (size_t k = 0; k < 4; k++)
        NEAR(left[k].kappa_x_1_m, both[k], 2 * SHARE * 3.34e-2);
    quench(&steel, &film, alike, 20, K4, 4);
    for (size_t k = 0; k < 4; k++)
        NEAR(1e-6 * left[k].surface_low_Pa / skin_MPa[k], 1, 0.1);
    fill_carburised(0);
    quench(&steel, &film, third, 20, K4, 4);
    for (size_t k = 0; k < 4; k++)
        NEAR(left[k].kappa_x_1_m, none[k], SHARE * 0.1146);
}

typedef struct row {
    const char *film; /* or NULL: */
    double h_W_m2K;
    int faces;
    double mm[5][2];
} row;

/* Least and most bow of the last run, of its values of K from `first` on. */
static void range(double *low, double *high, size_t first) {
    *low = INFINITY;
    *high = -INFINITY;
    for (size_t k = first; k < 6; k++) {
        *low = fmin(*low, bow_mm(k));
        *high = fmax(*high, bow_mm(k));
    }
}

static void compare_row(const row *r) {
    static const double thick_m[] = {8e-3, 12e-3, 20e-3, 30e-3, 40e-3};
    static const double K[] = {1.5e-11, 0, 3e-11, 6e-11, 9e-11, 1.2e-10};
    hs_quench_steel steel = test_steel_hardening(180e9);
    hs_curve film = hs_curve_flat(r->h_W_m2K);
    if (r->film) CHECK(hs_quench_film(&film, r->film, NULL) == HS_OK);
    double printed = r->film && r->film[0] == 's' && r->faces == 0 ? 0.05 : 0.005;
    printf("%-12s %4.0f %s", r->film ? r->film : "h", r->h_W_m2K, r->faces ? "case" : "none");
    for (int t = 0; t < 5; t++) {
        double low[2], high[2];
        lay(1e-3, thick_m[t], thick_m[t] / 60, r->faces ? 3e-3 : 0);
        fill_carburised(r->faces);
        quench(&steel, &film, tenth, 20, K, 6);
        range(&low[0], &high[0], 0);
        range(&low[1], &high[1], 1);
        printf("  %+.2f..%+.2f", low[1], high[1]);
        double own = r->faces && t == 0 ? 0.08 : 0.01; /* 8 mm, no plasticity: moves with cells */
        double room[2] = {printed + own + 0.04 * fabs(r->mm[t][0]),
                          printed + own + 0.04 * fabs(r->mm[t][1])};
        CHECK(r->mm[t][0] > low[0] - room[0] && r->mm[t][0] < low[1] + room[0]);
        CHECK(r->mm[t][1] > high[1] - room[1] && r->mm[t][1] < high[0] + room[1]);
    }
    printf("\n");
}

static void model_quench_strip__thicknesses_and_films__range_as_printed(void) {
    /* independent: ten per cent, least and most over K 0 to 1.2e-4 per MPa, mm per 300, of 8, 12,
     * 20, 30, 40 mm, printed to .01 (still water without a case .1). The values of K it took are
     * not said: the figures must lie between the ranges of our five and of our six, give or take
     * .01 and 4 %; with a case on 8 mm .08, by which ours move there between cells of a 30th, a
     * 40th and a 60th of the thickness */
    static const row rows[] = {
        {NULL, 600, 0, {{0, 0.13}, {-0.04, 0.17}, {-0.10, 0.19}, {-0.11, 0.17}, {-0.10, 0.15}}},
        {NULL, 600, 2, {{-0.24, -0.02}, {-0.15, 0.01}, {0.01, 0.14}, {0, 0.20}, {-0.01, 0.19}}},
        {NULL,
         1500,
         0,
         {{-0.24, 0.47}, {-0.27, 0.43}, {-0.22, 0.30}, {-0.17, 0.17}, {-0.16, 0.08}}},
        {NULL, 1500, 2, {{-0.43, -0.02}, {-0.07, 0.20}, {0.06, 0.38}, {0, 0.29}, {-0.04, 0.15}}},
        {"oil", 0, 0, {{-0.27, 0.32}, {-0.12, 0.22}, {0, 0.15}, {0, 0.08}, {-0.05, 0.07}}},
        {"oil", 0, 2, {{0.09, 0.33}, {0.12, 0.37}, {0.05, 0.14}, {0.01, 0.08}, {0, 0.09}}},
        {"still water",
         0,
         0,
         {{-4.8, -0.9}, {-4.2, -1.0}, {-2.4, -0.8}, {-1.2, -0.5}, {-0.7, -0.2}}},
        {"still water", 0, 2, {{1.1, 1.8}, {0.7, 0.8}, {0, 0.10}, {-0.25, -0.16}, {-0.23, -0.20}}}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        compare_row(&rows[i]);
}

static void model_quench_strip__flat__is_not_a_strip(void) {
    /* independent: ten per cent, K 6e-5 per MPa, 20 mm thick: .15, .09, .04 mm per 300 at a width
     * of 20, 40, 60 mm, .085 at 100, .15 at 200 (printed to .01 or .005); the slower face, here the
     * bottom, is the hollow one there */
    enum { FLATS = 5 };
    static const double width_m[FLATS] = {20e-3, 40e-3, 60e-3, 100e-3, 200e-3};
    static const double mm[FLATS] = {0.15, 0.09, 0.04, 0.085, 0.15};
    const double slow[] = {0.95, 1, 1.05, 1}, K = 6e-11;
    hs_quench_steel steel = test_steel_hardening(180e9);
    hs_curve film = hs_curve_flat(1500);
    for (int i = 0; i < FLATS; i++) {
        lay(width_m[i], 20e-3, i < 3 ? 1e-3 : 2e-3, 0);
        fill(test_point_even());
        quench(&steel, &film, slow, 20, &K, 1);
        NEAR(fabs(bow_mm(0)), mm[i], 0.005 + SHARE * 0.244);
    }
}

static void model_quench_strip__square_with_a_dry_side__as_printed(void) {
    /* independent: 20 x 20, 3000, nothing on the bottom: -1.94e-3, peak -.1858; solid finite
     * elements +6.25e-3 and -.1704: .04 of the peak and 9 % from the fibres, the doubt stated */
    const double dry[] = {0, 1, 1, 1};
    hs_quench_steel steel = plain(150e9);
    hs_curve film = hs_curve_flat(3000);
    lay(20e-3, 20e-3, 1e-3, 0);
    fill((hs_quench_point){.share = 1});
    quench(&steel, &film, dry, 50, &K0, 1);
    NEAR(left[0].kappa_x_1_m, -1.94e-3, 0.005 * 0.1858);
    NEAR(left[0].peak_kappa_x_1_m, -0.1858, 0.005 * 0.1858);
}

/* C .62 % more than in the core under the top, by erfc over 1.4 mm; the core of this share of
 * martensite, all of it from .3 % more. */
static hs_quench_point of_steel(const hs_composition *steel, double y_m, double share) {
    double more = 0.62 * erfc((half_m - y_m) / 1.4e-3);
    return hs_quench_point_of(steel, steel->C + more, share + (1 - share) * fmin(1, more / 0.3));
}

static void model_quench_strip__one_sided_steels_in_oil__as_finite_volumes(void) {
    /* independent: own implicit finite volumes and fibres, 120 of either, steps of .8 and .4 K
     * extrapolated, with the tables' data for 16MnCr5 and 18CrNiMo7-6, 850 to 60 C; explicit
     * ones of 60 gave the hard cores within .003. Judged by 1 % of the peak of .16 1/m;
     * with a soft core, whose fronts cross whole fibres, by what 60 and 120 of them differ by, 4 %
     * of .2. The core settles the way: hard through the cased side is crowned, soft it is hollow
     * (but not without plasticity) */
    static const hs_composition steel[] = {
        {.C = 0.16, .Si = 0.25, .Mn = 1.15, .Cr = 0.95},
        {.C = 0.18, .Si = 0.25, .Mn = 0.7, .Cr = 1.65, .Ni = 1.55, .Mo = 0.3}};
    static const double kappa[2][2][4] = {
        {{0.0264, 0.0265, 0.0495, 0.0450}, {0.1385, -0.0245, -0.0197, -0.0430}},
        {{0.0423, 0.0180, 0.0298, 0.0127}, {0.1271, -0.0313, -0.0270, -0.0504}}};
    static const double off[] = {0.0016, 0.009};
    hs_quench_steel data;
    hs_curve film;
    hs_quench_steel_usual(&data);
    CHECK(hs_quench_film(&film, "oil", NULL) == HS_OK);
    lay(1e-3, 20e-3, 0.25e-3, 3e-3);
    for (int i = 0; i < 4; i++) {
        int soft = i % 2;
        for (size_t n = 0; n < mesh.nodes; n++)
            node[n] = of_steel(&steel[i / 2], mesh.node[n].y_m, !soft);
        for (size_t f = 0; f < mesh.fibres; f++)
            fibre[f] = of_steel(&steel[i / 2], mesh.fibre[f].y_m, !soft);
        quench(&data, &film, alike, 60, K4, 4);
        for (int k = 0; k < 4; k++)
            NEAR(left[k].kappa_x_1_m, kappa[i / 2][soft][k], off[soft]);
    }
}

HS_TEST_MAIN("model_quench_strip", TEST(model_quench_strip__bow_and_time_of_peak__as_printed),
             TEST(model_quench_strip__wide_plate__bends_as_biaxial_fibres),
             TEST(model_quench_strip__ten_per_cent__as_printed),
             TEST(model_quench_strip__carburised__as_printed),
             TEST(model_quench_strip__thicknesses_and_films__range_as_printed),
             TEST(model_quench_strip__flat__is_not_a_strip),
             TEST(model_quench_strip__square_with_a_dry_side__as_printed),
             TEST(model_quench_strip__one_sided_steels_in_oil__as_finite_volumes))
