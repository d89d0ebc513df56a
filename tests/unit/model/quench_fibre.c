/* Fibres by themselves, at temperatures put on them: textbook cases of elastic and perfectly
 * plastic bars, to the last digit. */
#include "hardskin/model/quench_material.h"
#include "model/quench_steps.h"
#include "support/check.h"

#include <string.h>

enum { PIECES = 700 }; /* of a height, in two columns */
static hs_quench_mesh mesh;
static hs_quench_work work;
static hs_quench_point fibre[HS_QUENCH_FIBRES];
static hs_quench_steel steel;
static hs_quench_case one;
static hs_quench_run_state state;

/* A fibre whose temperature is that of a node of its own. */
static void add(double y_m, double area_m2) {
    size_t i = mesh.fibres++;
    mesh.cell[i] = (hs_quench_cell){
        .node = {(unsigned short)i, (unsigned short)i, (unsigned short)i, (unsigned short)i}};
    mesh.fibre[i] = (hs_quench_fibre){
        .cell = (unsigned short)i, .weight = {1, 0, 0, 0}, .y_m = y_m, .area_m2 = area_m2};
    fibre[i] = (hs_quench_point){.share = 1};
    mesh.nodes = mesh.cells = mesh.fibres;
}

/* Two columns, so that there is a width to bend across. */
static void add_pair(double y_m, double area_m2) {
    for (int side = -1; side < 2; side += 2) {
        add(y_m, 0.5 * area_m2);
        mesh.fibre[mesh.fibres - 1].x_m = side * 1e-3;
    }
}

static void begin(double start_K, double cold_K) {
    one = (hs_quench_case){.mesh = &mesh,
                           .steel = &steel,
                           .fibre = fibre,
                           .start_K = start_K,
                           .bath = {.bath_K = cold_K},
                           .n = 1};
    mesh.spacing_m = 1;
    state = (hs_quench_run_state){.c = &one, .w = &work};
    hs_quench_tables(&state);
    hs_quench_net_make(&work.net, &one);
    hs_quench_fibres_start(&state);
}

static void bring(double (*temp_K)(double y_m)) {
    for (size_t i = 0; i < mesh.nodes; i++)
        work.next_K[i] = temp_K(mesh.fibre[i].y_m);
    CHECK(hs_quench_fibres_step(&state, 1, NULL) == HS_OK);
    hs_quench_stress(&state, 0);
}

static void set_steel(double modulus_Pa, double expansion, double yield_Pa) {
    steel = (hs_quench_steel){.modulus = hs_curve_flat(modulus_Pa), .expansion = {expansion}};
    steel.yield[HS_AUSTENITE] = hs_curve_flat(yield_Pa);
    mesh = (hs_quench_mesh){.fibres = 0};
}

static double hump(double y_m) {
    return 400 + 100 * (1 - 4 * y_m * y_m);
}

static void model_quench_fibre__parabolic_heat_in_a_free_strip__stresses_it(void) {
    /* exact: E 200 GPa, 12e-6, 100 K more in the middle than at the edges: +160 MPa at the edges,
     * -80 in the middle */
    set_steel(200e9, 12e-6, 1e12);
    for (int i = 0; i <= PIECES; i++) /* an odd number: one stands in the middle */
        add_pair(-0.5 + (i + 0.5) / (PIECES + 1), 1.0 / (PIECES + 1));
    begin(400, 300);
    bring(hump);
    NEAR(1e-6 * work.stress_Pa[0][PIECES], -80, 1e-3);
    double edge = 1e-6 * work.stress_Pa[0][0], next = 1e-6 * work.stress_Pa[0][2];
    NEAR(edge + 0.5 * (edge - next), 160, 2e-3); /* on to the very edge */
    NEAR(work.strain[0][1], 0, 1e-12);
}

static double hot_middle(double y_m) {
    return fabs(y_m) < 0.1 ? 600 : 400;
}

static double level(double y_m) {
    (void)y_m;
    return 400;
}

static void model_quench_fibre__three_bar_frame__keeps_its_stress(void) {
    /* exact: E 200 GPa, 12e-6, 240 MPa, the middle bar 200 K hotter and cold again, the outer ones
     * twice its area together: +80 in the middle, -40 MPa outside */
    set_steel(200e9, 12e-6, 240e6);
    add_pair(-1, 1);
    add_pair(0, 1);
    add_pair(1, 1);
    begin(400, 300);
    bring(hot_middle);
    NEAR(1e-6 * work.stress_Pa[0][2], -240, 1e-6);
    NEAR(1e-6 * work.stress_Pa[0][0], 120, 1e-6);
    bring(level);
    NEAR(1e-6 * work.stress_Pa[0][2], 80, 1e-6);
    NEAR(1e-6 * work.stress_Pa[0][0], -40, 1e-6);
    NEAR(1e-6 * work.stress_Pa[0][4], -40, 1e-6);
}

static void model_quench_fibre__softer_when_hot__is_elastic_all_the_same(void) {
    /* exact: the frame above, elastic, E 200 GPa at 400 K and 100 at 600; the middle stays hot
     * while the outer ones cool. The strain of all is e: 2 x 200 (e + 2.4e-3) + 100 e = 0, so +96
     * MPa outside and -192 in the middle, whatever the way there; all cold they are free of stress
     */
    set_steel(200e9, 12e-6, 1e12);
    steel.modulus = (hs_curve){2, {300, 700}, {250e9, 50e9}};
    for (int i = -1; i < 2; i++)
        add_pair(i, 1);
    begin(600, 300);
    bring(hot_middle);
    NEAR(work.strain[0][0], -1.92e-3, 1e-9);
    NEAR(1e-6 * work.stress_Pa[0][2], -192, 1e-3);
    NEAR(1e-6 * work.stress_Pa[0][0], 96, 1e-3);
    bring(level);
    for (int i = 0; i < 6; i++)
        NEAR(1e-6 * work.stress_Pa[0][i], 0, 1e-3);
}

/* Two flanges that stay elastic, 50 K either way of the web between them. */
static double flanges(double y_m) {
    return fabs(y_m) < 0.75 ? 850 : y_m > 0 ? 900 : 800;
}

static void model_quench_fibre__bent_beyond_yielding__springs_back(void) {
    /* exact: perfectly plastic rectangle bent to n times the curvature of first yielding: residual
     * kappa / kappa_y = n - 1.5 + .5 / n^2. Flanges so heavy that they alone give the curvature,
     * strong at their own temperatures; the web yields at its own. What its stress would spring
     * back by is its moment over E I. */
    static const double times[] = {1.25, 2, 4};
    for (int k = 0; k < 3; k++) {
        double sum = 0, I = 0, kappa, E = 200e9, expansion = 12e-6;
        set_steel(E, expansion, 0);
        /* edge of the web: E * kappa * .5 = n * yield */
        double yield_Pa = E * expansion * 50 * 0.5 / times[k];
        steel.yield[HS_AUSTENITE] =
            (hs_curve){4, {800, 840, 860, 900}, {1e13, yield_Pa, yield_Pa, 1e13}};
        for (int i = 0; i < PIECES; i++)
            add_pair(-0.5 + (i + 0.5) / PIECES, 1.0 / PIECES);
        add_pair(-1, 1e7);
        add_pair(1, 1e7);
        begin(1000, 790);
        bring(flanges);
        kappa = work.strain[0][1];
        NEAR(kappa, 50 * expansion, 1e-10);
        for (size_t i = 0; i < 2 * PIECES; i++) {
            double y = mesh.fibre[i].y_m, area = mesh.fibre[i].area_m2;
            sum += area * y * work.stress_Pa[0][i];
            I += area * y * y;
        }
        double first = kappa / times[k], left = (kappa - sum / (E * I)) / first;
        NEAR(left, times[k] - 1.5 + 0.5 / (times[k] * times[k]), 1e-4);
    }
}

static void model_quench_fibre__martensite__is_that_of_koistinen_and_marburger(void) {
    /* exact: 1 - exp(-alpha (Ms - T)), from a table as close as its header says */
    set_steel(200e9, 12e-6, 1e12);
    add_pair(0, 1);
    begin(400, 300);
    double worst = 0;
    for (int i = 0; i <= 60000; i++)
        worst = fmax(worst, fabs(hs_quench_kept(&state, 1e-4 * i) - exp(-1e-4 * i)));
    printf("kept: off by %.1e\n", worst);
    NEAR(worst, 0, 8e-6);
    NEAR(hs_quench_kept(&state, 700), 0, 1e-300);
    const hs_quench_point p = {.ms_K = 700, .alpha_1_K = 0.011, .share = 0.5};
    NEAR(hs_quench_hard(&state, &p, 701), 0, 0);
    NEAR(hs_quench_hard(&state, &p, 600), 0.5 * (1 - exp(-1.1)), 8e-6);
}

HS_TEST_MAIN("model_quench_fibre",
             TEST(model_quench_fibre__parabolic_heat_in_a_free_strip__stresses_it),
             TEST(model_quench_fibre__three_bar_frame__keeps_its_stress),
             TEST(model_quench_fibre__softer_when_hot__is_elastic_all_the_same),
             TEST(model_quench_fibre__martensite__is_that_of_koistinen_and_marburger),
             TEST(model_quench_fibre__bent_beyond_yielding__springs_back))
