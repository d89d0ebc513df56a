/* Rounds cut into rings and sectors, cells that are thin at the skin, and what is kept of a run for
 * drawing, against exact solutions and independent ones. */
#include "support/check.h"
#include "support/quench_data.h"

#include "hardskin/model/quench_material.h"
#include "hardskin/model/quench_trace.h"

#include <math.h>

static const double PI = 3.14159265358979323846;
static hs_quench_mesh mesh;
static hs_quench_work work;
static hs_quench_point node[HS_QUENCH_NODES], fibre[HS_QUENCH_FIBRES];
static hs_quench_left left[1];
static hs_quench_cost cost;
static hs_quench_trace trace;

static hs_quench_steel plain(double k_W_mK, double heat_J_m3K) {
    return test_steel_plain(150e9, k_W_mK, heat_J_m3K);
}

typedef struct bath {
    double from_C, to_C, h, uneven, end_s;
    const double *edge;
} bath;

static void quench(const hs_quench_steel *steel, const bath *b) {
    hs_quench_tracer tracer;
    test_points_fill(node, fibre, (hs_quench_point){.share = 1});
    hs_quench_case c = {.mesh = &mesh,
                        .steel = steel,
                        .node = node,
                        .fibre = fibre,
                        .start_K = b->from_C + 273.15,
                        .n = 1,
                        .tolerance_K = 0.1,
                        .end_s = b->end_s};
    c.bath = (hs_quench_bath){.film = hs_curve_flat(b->h),
                              .bath_K = b->to_C + 273.15,
                              .factor = 1,
                              .uneven = b->uneven,
                              .ay = 1,
                              .edge_factor = b->edge};
    hs_quench_trace_start(&tracer, &trace, &c);
    CHECK(hs_quench_run(left, &cost, &c, &work, hs_quench_trace_watch, &tracer, NULL) == HS_OK);
    hs_quench_trace_end(&tracer, &c, left, &work);
    CHECK(cost.heat_error < 1e-8);
}

static void model_quench_round__area_and_second_moments__are_those_of_a_circle(void) {
    /* exact: pi d^2 / 4 and pi d^4 / 64 */
    for (int graded = 0; graded < 2; graded++) {
        double area = 0, nodes = 0, Ix = 0, Iy = 0, Ixy = 0, d = 30e-3;
        CHECK(hs_quench_mesh_round(&mesh, d, 4e-3, graded * 0.5e-3, 1e-3, NULL) == HS_OK);
        for (size_t i = 0; i < mesh.nodes; i++)
            nodes += mesh.node_area_m2[i];
        for (size_t i = 0; i < mesh.fibres; i++) {
            const hs_quench_fibre *f = &mesh.fibre[i];
            area += f->area_m2;
            Ix += f->area_m2 * f->y_m * f->y_m;
            Iy += f->area_m2 * f->x_m * f->x_m;
            Ixy += f->area_m2 * f->x_m * f->y_m;
        }
        NEAR(area / (PI * d * d / 4), 1, 1e-12);
        NEAR(nodes / (PI * d * d / 4), 1, 1e-12);
        NEAR(Ix / (PI * pow(d, 4) / 64), 1, 1e-12);
        NEAR(Iy / (PI * pow(d, 4) / 64), 1, 1e-12);
        NEAR(Ixy / (PI * pow(d, 4) / 64), 0, 1e-12);
    }
    hs_error err;
    CHECK(hs_quench_mesh_round(&mesh, 0, 1e-3, 0, 0, &err) == HS_E_IMPOSSIBLE);
    CHECK(hs_quench_mesh_round(&mesh, 30e-3, NAN, 0, 0, &err) == HS_E_IMPOSSIBLE);
    CHECK(hs_quench_mesh_round(&mesh, 30e-3, 0.1e-3, 0, 0, &err) == HS_E_TOO_LARGE);
}

static void model_quench_round__textbook_shaft__second_order_to_the_series(void) {
    /* exact: series of the cylinder; shaft 200 mm, k 14.9, a 3.95e-6, h 80, 600 C into 200 C, 45
     * min (Cengel, Heat Transfer, from memory: printed 360): centre 364.3 C to the printed digit */
    hs_quench_steel steel = plain(14.9, 14.9 / 3.95e-6);
    const bath b = {600, 200, 80, 0, 45 * 60, NULL};
    double centre[3];
    for (int i = 0; i < 3; i++) {
        CHECK(hs_quench_mesh_round(&mesh, 0.2, 0.1 / (4 << i) * 1.000001, 0, 0, NULL) == HS_OK);
        quench(&steel, &b);
        centre[i] = work.temp_K[0] - 273.15;
    }
    double order = log2((centre[1] - centre[0]) / (centre[2] - centre[1]));
    printf("shaft: centre %.3f, %.3f, %.3f C, order %.2f\n", centre[0], centre[1], centre[2],
           order);
    NEAR(centre[2] + (centre[2] - centre[1]) / 3, 364.3, 0.05);
    CHECK(order > 1.8 && order < 2.2);
}

static void model_quench_round__even__straight_and_uneven__the_same_about_both_axes(void) {
    /* exact: symmetry; a quarter turn of the side is a quarter turn of the bow */
    hs_quench_steel steel = plain(30, 5e6);
    CHECK(hs_quench_mesh_round(&mesh, 20e-3, 2e-3, 0.5e-3, 0, NULL) == HS_OK);
    quench(&steel, &(bath){850, 50, 3000, 0, 0, NULL});
    NEAR(left[0].kappa_x_1_m, 0, 1e-9);
    NEAR(left[0].kappa_y_1_m, 0, 1e-9);
    quench(&steel, &(bath){850, 50, 3000, 0.2, 0, NULL});
    double x = left[0].kappa_x_1_m, peak = left[0].peak_1_m;
    NEAR(left[0].kappa_y_1_m, 0, 1e-9);
    CHECK(peak > 1e-2);
    hs_quench_case c = {.mesh = &mesh,
                        .steel = &steel,
                        .node = node,
                        .fibre = fibre,
                        .start_K = 850 + 273.15,
                        .n = 1,
                        .tolerance_K = 0.1};
    c.bath = (hs_quench_bath){
        .film = hs_curve_flat(3000), .bath_K = 50 + 273.15, .factor = 1, .uneven = 0.2, .ax = 1};
    CHECK(hs_quench_run(left, NULL, &c, &work, NULL, NULL, NULL) == HS_OK);
    NEAR(left[0].kappa_y_1_m / peak, x / peak, 1e-6);
    NEAR(left[0].kappa_x_1_m, 0, 1e-9);
}

static const hs_point strip_points[] = {{0, 0}, {5e-3, 0}, {5e-3, 20e-3}, {0, 20e-3}};
static const hs_section strip = {{strip_points, 4}, NULL, 0};

static void model_quench_mesh__cells_thin_at_the_skin__keep_published_curvature(void) {
    /* independent: fibre strip converged to .1 %, computed twice: residual -1.6376e-2, peak .25762
     * 1/m; judged by 2 % of the peak as its source says. Here with cells of .25 to 2 mm */
    const double edge[] = {1, 0, 0, 0};
    hs_quench_steel steel = plain(30, 5e6);
    CHECK(hs_quench_mesh_make(&mesh, &strip, 2e-3, 0.25e-3, 0, NULL) == HS_OK);
    quench(&steel, &(bath){850, 50, 3000, 0, 0, edge});
    NEAR(left[0].kappa_x_1_m, -1.6376e-2, 0.02 * 0.25762);
    NEAR(fabs(left[0].peak_kappa_x_1_m), 0.25762, 0.01 * 0.25762);
}

static void model_quench_trace__strip__keeps_history_and_stress(void) {
    /* independent: peak .2576 1/m at 13.0 s on the way to -1.6372e-2; even 3000/3000 leaves +66.5
     * MPa in the middle and -100 in the skin. The moments kept stand up to two steps apart */
    const double one[] = {1, 0, 0, 0}, even[] = {1, 0, 1, 0};
    hs_quench_steel steel = plain(30, 5e6);
    CHECK(hs_quench_mesh_make(&mesh, &strip, 1e-3, 0, 0, NULL) == HS_OK);
    quench(&steel, &(bath){850, 50, 3000, 0, 0, one});
    double peak = 0, peak_s = 0;
    CHECK(trace.moments > 20 && trace.moments <= HS_TRACE_MOMENTS);
    for (size_t i = 0; i < trace.moments; i++) {
        if (i > 0) CHECK(trace.time_s[i] > trace.time_s[i - 1]);
        if (i > 0) CHECK(trace.mean_K[i] <= trace.mean_K[i - 1]);
        NEAR(trace.across_1_m[i], 0, 1e-9);
        if (fabs(trace.along_1_m[i]) <= peak) continue;
        peak = fabs(trace.along_1_m[i]);
        peak_s = trace.time_s[i];
    }
    NEAR(peak, 0.2576, 0.01 * 0.2576);
    NEAR(peak_s, 13.0, 1.5);
    NEAR(trace.along_1_m[trace.moments - 1], left[0].kappa_x_1_m, 1e-12);
    NEAR(trace.mark_K[0][HS_MARK_CENTRE], 1123.15, 1e-9);
    NEAR(trace.mark_K[trace.moments - 1][HS_MARK_CORNER], 323.15, 1e-9);
    quench(&steel, &(bath){850, 50, 3000, 0, 0, even});
    double most = -INFINITY;
    CHECK(trace.places > 10);
    for (size_t i = 0; i < trace.places; i++)
        most = fmax(most, trace.stress_Pa[i]);
    NEAR(trace.stress_Pa[0], -100e6, 0.5e6);
    NEAR(trace.stress_Pa[trace.places - 1], -100e6, 0.5e6);
    NEAR(most, 66.5e6, 2.5e6); /* of a point; kept is the mean over a millimetre */
}

HS_TEST_MAIN("model_quench_round",
             TEST(model_quench_round__area_and_second_moments__are_those_of_a_circle),
             TEST(model_quench_round__textbook_shaft__second_order_to_the_series),
             TEST(model_quench_round__even__straight_and_uneven__the_same_about_both_axes),
             TEST(model_quench_mesh__cells_thin_at_the_skin__keep_published_curvature),
             TEST(model_quench_trace__strip__keeps_history_and_stress))
