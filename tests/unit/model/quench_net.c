/* The half, or quarter, of a section that stands for all of it: exact, for what is its own mirror
 * image cools as its own mirror image. */
#include "hardskin/model/quench.h"
#include "support/check.h"
#include "support/quench_data.h"

#include <math.h>

static hs_quench_mesh mesh;
static hs_quench_work work;
static hs_quench_point node[HS_QUENCH_NODES], fibre[HS_QUENCH_FIBRES];

/* Temperature of each node of the mesh after some seconds; returns the heat that has left, J/m.
 * The bath is the same left and right, and above and below where `level`. */
static double cool(double temp_K[HS_QUENCH_NODES], int fold_x, int fold_y, int level) {
    hs_quench_steel steel = test_steel_hardening(180e9);
    hs_quench_cost cost;
    hs_quench_case c = {.mesh = &mesh,
                        .steel = &steel,
                        .node = node,
                        .fibre = fibre,
                        .start_K = 1123.15,
                        .tolerance_K = 0.1,
                        .end_s = 10,
                        .fold_x = fold_x,
                        .fold_y = fold_y};
    c.bath = (hs_quench_bath){.film = hs_curve_flat(1500),
                              .bath_K = 323.15,
                              .factor = 1,
                              .uneven = level ? 0 : 0.4,
                              .ay = 1};
    CHECK(hs_quench_run(NULL, &cost, &c, &work, NULL, NULL, NULL) == HS_OK);
    CHECK(cost.heat_error < 1e-8);
    for (size_t i = 0; i < mesh.nodes; i++)
        temp_K[i] = work.temp_K[work.net.node_of[i]];
    return work.temp_K[work.net.nodes];
}

/* 1e-6 K: both march by the same steps, chosen from sums in another order. */
static void compare(int fold_x, int fold_y) {
    static double whole_K[HS_QUENCH_NODES], part_K[HS_QUENCH_NODES];
    double all_J_m = cool(whole_K, 0, 0, fold_y), worst_K = 0, area_m2 = 0;
    double part_J_m = cool(part_K, fold_x, fold_y, fold_y), times = fold_x && fold_y ? 4 : 2;
    CHECK(work.net.nodes < mesh.nodes && work.net.cells < mesh.cells);
    for (size_t i = 0; i < work.net.nodes; i++)
        area_m2 += work.net.area_m2[i];
    for (size_t i = 0; i < mesh.nodes; i++)
        worst_K = fmax(worst_K, fabs(part_K[i] - whole_K[i]));
    NEAR(worst_K, 0, 1e-6);
    NEAR(times * part_J_m / all_J_m, 1, 1e-9);
    NEAR(times * area_m2 / (60e-3 * 20e-3), 1, 1e-12);
}

static void model_quench_net__a_half_or_quarter__cools_as_the_whole(void) {
    /* exact: symmetry; an even and an odd number of cells each way, so that nodes lie on a mirror
     * and cells astride of it */
    static const hs_point points[] = {{0, 0}, {60e-3, 0}, {60e-3, 20e-3}, {0, 20e-3}};
    static const hs_section flat = {{points, 4}, NULL, 0};
    static const double spacing_m[] = {2.5e-3, 4e-3, 60e-3 / 11};
    int on[2] = {0}, astride[2] = {0};
    test_points_fill(node, fibre, test_point_even());
    for (int k = 0; k < 3; k++) {
        CHECK(hs_quench_mesh_make(&mesh, &flat, spacing_m[k], 0, 0, NULL) == HS_OK);
        int x = 0, y = 0;
        for (size_t i = 0; i < mesh.nodes; i++) {
            x |= fabs(mesh.node[i].x_m) < 1e-9;
            y |= fabs(mesh.node[i].y_m) < 1e-9;
        }
        on[0] |= x, on[1] |= y, astride[0] |= !x, astride[1] |= !y;
        compare(1, 0);
        compare(0, 1);
        compare(1, 1);
    }
    CHECK(on[0] && on[1] && astride[0] && astride[1]); /* the test's own reach */
}

HS_TEST_MAIN("model_quench_net", TEST(model_quench_net__a_half_or_quarter__cools_as_the_whole))
