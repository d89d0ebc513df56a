/* Heat of a quench against exact series: balance, order in space and in time, cut cells, and the
 * elastic bow that follows from it. */
#include "hardskin/model/quench_material.h"
#include "model/quench_steps.h"
#include "support/check.h"

static const double PI = 3.14159265358979323846;
static const double FROM_K = 1123.15, BATH_K = 323.15, SECONDS = 8;
static const double CONDUCTIVITY = 30, HEAT = 5e6, FILM = 1500, EXPANSION = 15e-6;

static hs_quench_mesh mesh;
static hs_quench_work work;
static hs_quench_point node[HS_QUENCH_NODES], fibre[HS_QUENCH_FIBRES];
static hs_quench_left left[1];
static hs_quench_cost cost;

/* exact: plate of half thickness R with a film on both faces, (T - bath) / (start - bath) at `at`
 * from the middle: 60 terms of zeta tan zeta = Bi, one root in each (k pi, (k + 1/2) pi). */
static double plate(double R, double at) {
    double Bi = FILM * R / CONDUCTIVITY, Fo = CONDUCTIVITY / HEAT * SECONDS / (R * R), sum = 0;
    for (int k = 0; k < 60; k++) {
        double low = k * PI, high = (k + 0.5) * PI, sign = k % 2 ? -1 : 1;
        for (int i = 0; i < 60; i++) {
            double z = 0.5 * (low + high);
            *(sign * (z * sin(z) - Bi * cos(z)) < 0 ? &low : &high) = z;
        }
        double z = 0.5 * (low + high);
        sum += 4 * sin(z) / (2 * z + sin(2 * z)) * exp(-z * z * Fo) * cos(z * at / R);
    }
    return sum;
}

static hs_quench_steel plain(void) {
    hs_quench_steel s = {.modulus = hs_curve_flat(150e9),
                         .expansion = {EXPANSION, EXPANSION, EXPANSION}};
    for (int p = 0; p < HS_PHASES; p++) {
        s.conductivity[p] = hs_curve_flat(CONDUCTIVITY);
        s.heat[p] = hs_curve_flat(HEAT);
        s.yield[p] = hs_curve_flat(1e12);
    }
    return s;
}

static void quench(const hs_section *section, double spacing_m, const double *edge, size_t n,
                   double tolerance_K) {
    hs_quench_steel steel = plain();
    CHECK(hs_quench_mesh_make(&mesh, section, spacing_m, 0, 0, NULL) == HS_OK);
    for (size_t i = 0; i < mesh.nodes; i++)
        node[i] = (hs_quench_point){.share = 1};
    for (size_t i = 0; i < mesh.fibres; i++)
        fibre[i] = (hs_quench_point){.share = 1};
    hs_quench_case c = {.mesh = &mesh,
                        .steel = &steel,
                        .node = node,
                        .fibre = fibre,
                        .start_K = FROM_K,
                        .n = n,
                        .tolerance_K = tolerance_K,
                        .end_s = SECONDS};
    c.bath = (hs_quench_bath){
        .film = hs_curve_flat(FILM), .bath_K = BATH_K, .factor = 1, .edge_factor = edge};
    CHECK(hs_quench_run(left, &cost, &c, &work, NULL, NULL, NULL) == HS_OK);
    CHECK(cost.heat_error < 1e-8);
}

/* Root mean square over the metal of what the nodes miss of a rectangle 2a x 2b whose middle lies
 * at (x, y) from the centroid. */
static double miss(double a, double b, double x, double y) {
    double sum = 0, area = 0;
    for (size_t i = 0; i < mesh.nodes; i++) {
        double share = plate(a, mesh.node[i].x_m - x) * plate(b, mesh.node[i].y_m - y);
        double d = work.temp_K[i] - BATH_K - share * (FROM_K - BATH_K);
        sum += mesh.node_area_m2[i] * d * d;
        area += mesh.node_area_m2[i];
    }
    return sqrt(sum / area);
}

static const hs_point flat_points[] = {{0, 0}, {60e-3, 0}, {60e-3, 20e-3}, {0, 20e-3}};
static const hs_section flat = {{flat_points, 4}, NULL, 0};
/* Half a square along its diagonal, which no heat crosses: the two cooled sides run obliquely
 * through the cells. */
static const hs_point half_points[] = {{0, 0}, {30e-3, 0}, {30e-3, 30e-3}};
static const hs_section half = {{half_points, 3}, NULL, 0};
static const double half_edges[] = {1, 1, 0};

static void model_quench_heat__flat__is_of_second_order_in_space(void) {
    /* exact: product of two plate series */
    double e[3];
    for (int i = 0; i < 3; i++) {
        quench(&flat, 5e-3 / (1 << i), NULL, 0, 0.01);
        e[i] = miss(30e-3, 10e-3, 0, 0);
    }
    printf("flat 60 x 20, 5, 2.5, 1.25 mm: %.3f, %.3f, %.4f K; order %.2f, %.2f\n", e[0], e[1],
           e[2], log2(e[0] / e[1]), log2(e[1] / e[2]));
    CHECK(log2(e[0] / e[1]) >= 1.9);
    CHECK(log2(e[1] / e[2]) >= 1.9);
    CHECK(e[2] < 0.5);
}

static void model_quench_heat__oblique_edges__are_of_second_order_in_space(void) {
    /* exact: product of two plate series; the floor under the mass of slivers costs a little */
    double e[3];
    for (int i = 0; i < 3; i++) {
        quench(&half, 4e-3 / (1 << i), half_edges, 0, 0.01);
        e[i] = miss(15e-3, 15e-3, -5e-3, 5e-3);
    }
    printf("half square 30, 4, 2, 1 mm: %.3f, %.3f, %.4f K; order %.2f, %.2f\n", e[0], e[1], e[2],
           log2(e[0] / e[1]), log2(e[1] / e[2]));
    CHECK(log2(e[0] / e[2]) / 2 >= 1.9);
    CHECK(e[2] < 1);
}

/* The textbook's square bar of 20 mm: its corner as well, which `cooling` does not tell. */
static void model_quench_heat__square__keeps_its_corner(void) {
    /* exact: products of two plate series; k 28, rho c 4.7e6, h 1500, 850 to 60 C, 5 s: middle
     * 751.0, middle of a side 605.2, corner 490.1 C (half of the last digit, and
     * .05 K of the march); of second order: 1 and .5 mm, carried on */
    static const hs_point points[] = {{0, 0}, {20e-3, 0}, {20e-3, 20e-3}, {0, 20e-3}};
    static const hs_section square = {{points, 4}, NULL, 0};
    static const double want_C[] = {751.0, 605.2, 490.1},
                        at_m[][2] = {{0, 0}, {10e-3, 0}, {10e-3, 10e-3}};
    double got_C[3][2] = {{0}};
    hs_quench_steel steel = plain();
    for (int p = 0; p < HS_PHASES; p++) {
        steel.conductivity[p] = hs_curve_flat(28);
        steel.heat[p] = hs_curve_flat(4.7e6);
    }
    for (int fine = 0; fine < 2; fine++) {
        CHECK(hs_quench_mesh_make(&mesh, &square, 1e-3 / (1 + fine), 0, 0, NULL) == HS_OK);
        for (size_t i = 0; i < mesh.nodes; i++)
            node[i] = (hs_quench_point){.share = 1};
        hs_quench_case c = {.mesh = &mesh,
                            .steel = &steel,
                            .node = node,
                            .fibre = fibre,
                            .start_K = FROM_K,
                            .tolerance_K = 0.01,
                            .end_s = 5};
        c.bath = (hs_quench_bath){.film = hs_curve_flat(1500), .bath_K = 333.15, .factor = 1};
        CHECK(hs_quench_run(left, &cost, &c, &work, NULL, NULL, NULL) == HS_OK);
        for (int k = 0; k < 3; k++)
            for (size_t i = 0; i < mesh.nodes; i++)
                if (hypot(mesh.node[i].x_m - at_m[k][0], mesh.node[i].y_m - at_m[k][1]) < 1e-9)
                    got_C[k][fine] = work.temp_K[i] - 273.15;
    }
    for (int k = 0; k < 3; k++)
        NEAR(got_C[k][1] + (got_C[k][1] - got_C[k][0]) / 3, want_C[k], 0.1);
}

static void model_quench_heat__march__is_of_second_order_in_time(void) {
    /* own rule, time alone: against a run at a tenth of the finest tolerance, on the same nodes.
     * The tolerance is of one step; where it rules the steps (from .01 K on; before, the largest
     * change of a step does) the error falls with the square of their number. */
    static double best[HS_QUENCH_NODES];
    double e[3], steps[3];
    quench(&flat, 2.5e-3, NULL, 0, 1e-4);
    for (size_t i = 0; i < mesh.nodes; i++)
        best[i] = work.temp_K[i];
    for (int i = 0; i < 3; i++) {
        quench(&flat, 2.5e-3, NULL, 0, 0.1 / pow(10, i));
        e[i] = 0;
        for (size_t k = 0; k < mesh.nodes; k++)
            e[i] = fmax(e[i], fabs(work.temp_K[k] - best[k]));
        steps[i] = (double)cost.steps;
    }
    double order = log(e[1] / e[2]) / log(steps[2] / steps[1]);
    printf("tolerance .1, .01, .001 K: %.0f, %.0f, %.0f steps, off by %.4f, %.4f, %.4f K; order "
           "%.2f\n",
           steps[0], steps[1], steps[2], e[0], e[1], e[2], order);
    CHECK(e[0] < 0.1);
    CHECK(e[1] < e[0]);
    CHECK(order >= 1.9);
}

static void model_quench_heat__elastic_bow__is_of_second_order(void) {
    /* exact: strip with one face in the bath, the other insulated: half a plate of twice the
     * thickness; kappa = -alpha * integral of (T0 - T) y over I, by Gauss over 400 slices */
    const double edge[] = {1, 0, 0, 0};
    const hs_point points[] = {{0, 0}, {20e-3, 0}, {20e-3, 16e-3}, {0, 16e-3}};
    const hs_section strip = {{points, 4}, NULL, 0};
    double h = 16e-3, sum = 0, e[3];
    for (int i = 0; i < 400; i++)
        for (int g = -1; g < 2; g += 2) {
            double y = h * (i + 0.5 + g * 0.5 / sqrt(3)) / 400;
            sum += 0.5 * h / 400 * plate(h, h - y) * (y - h / 2);
        }
    double kappa = EXPANSION * (FROM_K - BATH_K) * sum / (h * h * h / 12);
    for (int i = 0; i < 3; i++) {
        quench(&strip, 4e-3 / (1 << i), edge, 1, 1e-4);
        e[i] = fabs(left[0].kappa_x_1_m / kappa - 1);
    }
    printf("elastic bow, 4, 8, 16 cells: off by %.5f, %.5f, %.5f\n", e[0], e[1], e[2]);
    CHECK(log2(e[0] / e[1]) >= 1.9);
    CHECK(log2(e[1] / e[2]) >= 1.9);
    CHECK(e[2] < 1e-3);
    NEAR(left[0].kappa_y_1_m, 0, 1e-9);
}

/* Heat given off by what turns, J/m3: austenite to martensite and to ferrite. */
static const double LATENT = 600e6;

static hs_quench_steel turning(void) {
    hs_quench_steel s = plain();
    s.latent_J_m3[HS_MARTENSITE] = LATENT;
    s.latent_J_m3[HS_FERRITE] = 0.8 * LATENT;
    s.soft_start_K = 950;
    s.soft_end_K = 850;
    return s;
}

static void model_quench_heat__what_turns__gives_off_its_heat_once(void) {
    /* exact: first law. What has left is c (start - cold) + L share (1 - exp(-alpha (Ms - cold)))
     * of the martensite and all of the soft share's; 1e-2 of the latent heat: a step of 20 K takes
     * it by its stages' capacities, and nodes end within half a kelvin of the bath */
    static const double share[] = {1, 0.6, 0};
    hs_quench_steel steel = turning();
    CHECK(hs_quench_mesh_make(&mesh, &flat, 2.5e-3, 0, 0, NULL) == HS_OK);
    for (int k = 0; k < 3; k++) {
        hs_quench_point p = {.ms_K = 673.15, .alpha_1_K = 0.011, .share = share[k]};
        for (size_t i = 0; i < mesh.nodes; i++)
            node[i] = p;
        hs_quench_case c = {
            .mesh = &mesh, .steel = &steel, .node = node, .fibre = fibre, .start_K = FROM_K};
        c.bath = (hs_quench_bath){.film = hs_curve_flat(FILM), .bath_K = BATH_K, .factor = 1};
        CHECK(hs_quench_run(NULL, NULL, &c, &work, NULL, NULL, NULL) == HS_OK);
        double formed = share[k] * (1 - exp(-0.011 * (673.15 - BATH_K)));
        double latent = LATENT * (formed + 0.8 * (1 - share[k]));
        double left_J_m3 = work.temp_K[work.net.nodes] / (60e-3 * 20e-3);
        printf("share %.1f: latent %.1f, given off %.2f MJ/m3\n", share[k], 1e-6 * latent,
               1e-6 * (left_J_m3 - HEAT * (FROM_K - BATH_K)));
        NEAR((left_J_m3 - HEAT * (FROM_K - BATH_K)) / latent, 1, 1e-2);
    }
}

static void model_quench_heat__warmed_again__stays_martensite(void) {
    /* exact: a bar shut off from the bath, its left half at 400 K and martensite, its right at 1000
     * K and without any: the mean of both, for what turned does not turn back. Within a
     * step it may, by as much as its stages waver */
    enum { STEPS = 400 };
    static const hs_point points[] = {{0, 0}, {20e-3, 0}, {20e-3, 5e-3}, {0, 5e-3}};
    static const hs_section bar = {{points, 4}, NULL, 0};
    hs_quench_steel steel = turning();
    CHECK(hs_quench_mesh_make(&mesh, &bar, 1e-3, 0, 0, NULL) == HS_OK);
    hs_quench_case c = {.mesh = &mesh, .steel = &steel, .node = node, .start_K = 1000};
    c.bath = (hs_quench_bath){.film = hs_curve_flat(0), .bath_K = BATH_K, .factor = 1};
    hs_quench_run_state s = {.c = &c, .w = &work};
    double try_s, taken_s, want_K = 0, all = 0;
    for (size_t i = 0; i < mesh.nodes; i++)
        node[i] = (hs_quench_point){
            .ms_K = mesh.node[i].x_m < 0 ? 673.15 : 0, .alpha_1_K = 0.011, .share = 1};
    hs_quench_tables(&s);
    hs_quench_heat_start(&s, &try_s);
    for (size_t i = 0; i < mesh.nodes; i++) {
        work.temp_K[i] = work.coldest_K[i] = mesh.node[i].x_m < 0 ? 400 : 1000;
        want_K += mesh.node_area_m2[i] * work.temp_K[i];
        all += mesh.node_area_m2[i];
    }
    for (try_s = 1e-3; s.time_s < 60 && s.cost.steps < STEPS;) {
        CHECK(hs_quench_heat_step(&s, &taken_s, &try_s, NULL) == HS_OK);
        for (size_t i = 0; i <= work.net.nodes; i++) {
            work.temp_K[i] = work.next_K[i];
            if (i < work.net.nodes && work.temp_K[i] < work.coldest_K[i])
                work.coldest_K[i] = work.temp_K[i];
        }
    }
    printf("mixed: %.2f, %.2f K, the mean %.2f K\n", work.temp_K[0],
           work.temp_K[work.net.nodes - 1], want_K / all);
    NEAR(work.temp_K[0], want_K / all, 0.3);
    NEAR(work.temp_K[work.net.nodes - 1], want_K / all, 0.3);
}

HS_TEST_MAIN("model_quench_heat", TEST(model_quench_heat__flat__is_of_second_order_in_space),
             TEST(model_quench_heat__oblique_edges__are_of_second_order_in_space),
             TEST(model_quench_heat__square__keeps_its_corner),
             TEST(model_quench_heat__march__is_of_second_order_in_time),
             TEST(model_quench_heat__elastic_bow__is_of_second_order),
             TEST(model_quench_heat__what_turns__gives_off_its_heat_once),
             TEST(model_quench_heat__warmed_again__stays_martensite))
