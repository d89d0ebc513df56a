/* The section cut into cells: what the pieces add up to, and that a steady linear temperature is
 * carried exactly (patch test), for every kind of outline. */
#include "hardskin/model/quench_mesh.h"

#include "support/check.h"
#include "support/outline.h"

enum { RANDOM_SECTIONS = 1200 };

static hs_quench_mesh mesh;
static hs_section_properties p;
static double residual_x[HS_QUENCH_NODES], residual_y[HS_QUENCH_NODES];

/* Largest share by which a sum misses, over many sections. */
static double worst_sum, worst_edge, worst_patch, worst_bend;

static void worse(double *worst, double miss) {
    if (!(miss <= *worst)) *worst = miss; /* NaN stays */
}

static hs_point node_at(size_t i) {
    return mesh.node[i];
}

/* Areas and first moments of nodes and fibres are those of the section. */
static void compare_areas(void) {
    double A = 0, x = 0, y = 0, fA = 0, fx = 0, fy = 0, Ix = 0, Iy = 0, Ixy = 0;
    for (size_t i = 0; i < mesh.nodes; i++) {
        A += mesh.node_area_m2[i];
        x += mesh.node_area_m2[i] * node_at(i).x_m;
        y += mesh.node_area_m2[i] * node_at(i).y_m;
    }
    for (size_t f = 0; f < mesh.fibres; f++) {
        const hs_quench_fibre *b = &mesh.fibre[f];
        fA += b->area_m2;
        fx += b->area_m2 * b->x_m;
        fy += b->area_m2 * b->y_m;
        Ix += b->area_m2 * b->y_m * b->y_m;
        Iy += b->area_m2 * b->x_m * b->x_m;
        Ixy += b->area_m2 * b->x_m * b->y_m;
    }
    double first = p.area_m2 * p.reach_m;
    worse(&worst_sum, fabs(A / p.area_m2 - 1));
    worse(&worst_sum, fabs(fA / p.area_m2 - 1));
    worse(&worst_sum, (fabs(x) + fabs(y) + fabs(fx) + fabs(fy)) / first);
    double second = p.Ix_m4 + p.Iy_m4;
    worse(&worst_bend, fabs(Ix - p.Ix_m4) / second);
    worse(&worst_bend, fabs(Iy - p.Iy_m4) / second);
    worse(&worst_bend, fabs(Ixy - p.Ixy_m4) / second);
}

/* Lengths of all pieces, and of each edge's; normals close; their integral with x is the area. */
static void compare_edges(const hs_section *section) {
    double length = 0, nx = 0, ny = 0, area = 0, holes = 0, own[TEST_VERTICES + 1] = {0};
    for (size_t k = 0; k < mesh.segments; k++) {
        const hs_quench_segment *s = &mesh.segment[k];
        const unsigned short *node = mesh.cell[s->cell].node;
        length += s->length_m;
        nx += s->length_m * s->nx;
        ny += s->length_m * s->ny;
        for (int g = 0; g < 2; g++)
            for (int i = 0; i < 4; i++)
                area += 0.5 * s->length_m * s->weight[g][i] * 0.5 *
                        (node_at(node[i]).x_m * s->nx + node_at(node[i]).y_m * s->ny);
        own[s->edge] += s->length_m;
    }
    worse(&worst_edge, fabs(length / p.perimeter_m - 1));
    worse(&worst_edge, hypot(nx, ny) / p.perimeter_m);
    worse(&worst_edge, fabs(area / p.area_m2 - 1));
    for (size_t k = 1; k <= section->outline.n; k++) {
        hs_section_edge edge;
        if (hs_section_edge_at(&edge, section, k, NULL) != HS_OK) worse(&worst_edge, NAN);
        worse(&worst_edge, fabs(own[k] - edge.length_m) / p.perimeter_m);
        holes += own[k];
    }
    worse(&worst_edge, fabs(holes + own[0] - length) / p.perimeter_m);
}

/* Temperatures x and y: what flows into each node through the cells leaves through its edges. */
static void patch(void) {
    static const int pair[6][2] = {{0, 1}, {1, 2}, {2, 3}, {3, 0}, {0, 2}, {1, 3}};
    for (size_t i = 0; i < mesh.nodes; i++)
        residual_x[i] = residual_y[i] = 0;
    for (size_t k = 0; k < mesh.cells; k++)
        for (int l = 0; l < 6; l++) {
            size_t a = mesh.cell[k].node[pair[l][0]], b = mesh.cell[k].node[pair[l][1]];
            double x = mesh.cell[k].link[l] * (node_at(b).x_m - node_at(a).x_m);
            double y = mesh.cell[k].link[l] * (node_at(b).y_m - node_at(a).y_m);
            residual_x[a] += x, residual_x[b] -= x;
            residual_y[a] += y, residual_y[b] -= y;
        }
    for (size_t k = 0; k < mesh.segments; k++) {
        const hs_quench_segment *s = &mesh.segment[k];
        for (int g = 0; g < 2; g++)
            for (int i = 0; i < 4; i++) {
                double part = 0.5 * s->length_m * s->weight[g][i];
                residual_x[mesh.cell[s->cell].node[i]] += part * s->nx;
                residual_y[mesh.cell[s->cell].node[i]] += part * s->ny;
            }
    }
    for (size_t i = 0; i < mesh.nodes; i++)
        worse(&worst_patch, hypot(residual_x[i], residual_y[i]) / mesh.spacing_m);
}

static int compare(const hs_section *section, double spacing_m, double case_m) {
    if (hs_section_measure(&p, section, NULL) != HS_OK) return 0;
    if (hs_quench_mesh_make(&mesh, section, spacing_m, 0, case_m, NULL) != HS_OK) return 0;
    compare_areas();
    compare_edges(section);
    patch();
    return 1;
}

static void start(void) {
    worst_sum = worst_edge = worst_patch = worst_bend = 0;
}

static const hs_point rect_points[] = {{0, 0}, {40e-3, 0}, {40e-3, 20e-3}, {0, 20e-3}};
static const hs_point U_points[] = {{0, 0},         {60e-3, 0},     {60e-3, 40e-3}, {50e-3, 40e-3},
                                    {50e-3, 10e-3}, {10e-3, 10e-3}, {10e-3, 40e-3}, {0, 40e-3}};
static const hs_point L_points[] = {{0, 0},       {60e-3, 0},    {60e-3, 8e-3},
                                    {8e-3, 8e-3}, {8e-3, 40e-3}, {0, 40e-3}};
static const hs_section upright[] = {
    {{rect_points, 4}, NULL, 0}, {{U_points, 8}, NULL, 0}, {{L_points, 6}, NULL, 0}};

static void model_quench_mesh__upright_sections__add_up_exactly(void) {
    /* exact: Green's theorem (hs_section_measure, itself held against the printed table of
     * rectangle 40 x 20, U and L); whole cells carry second moments exactly, so fibres do, too */
    start();
    for (size_t i = 0; i < 3; i++)
        for (double spacing_m = 1.1e-3; spacing_m < 6e-3; spacing_m *= 1.7) {
            CHECK(compare(&upright[i], spacing_m, 0));
            CHECK(compare(&upright[i], 2 * spacing_m, 2e-3));
        }
    NEAR(worst_sum, 0, 1e-12);
    NEAR(worst_edge, 0, 1e-12);
    NEAR(worst_patch, 0, 1e-12);
    NEAR(worst_bend, 0, 1e-12);
}

static void model_quench_mesh__random_sections__add_up_exactly(void) {
    /* exact: Green's theorem; 1200 star-shaped polygons, half with a hole, all oblique. Cells of
     * less than 1e-9 of their size are left out, hence 1e-9, and what many of them add; rounding at
     * slender cells in the patch. */
    test_section t;
    start();
    unsigned made = 0;
    for (uint32_t k = 0; k < RANDOM_SECTIONS; k++) {
        double radius_m = pow(10, -2.3 + 1.5 * (double)(k % 40) / 39);
        test_section_random(&t, k, radius_m, 1);
        made += (unsigned)compare(&t.section, radius_m / 8, k % 3 ? 0 : radius_m / 30);
    }
    CHECK(made == RANDOM_SECTIONS);
    printf("random sections: sums %.1e, edges %.1e, patch %.1e, bending %.1e\n", worst_sum,
           worst_edge, worst_patch, worst_bend);
    NEAR(worst_sum, 0, 1e-9);
    NEAR(worst_edge, 0, 1e-9);
    NEAR(worst_patch, 0, 1e-7);
}

static void model_quench_mesh__turned_section__bends_as_stiffly(void) {
    /* exact: second moments; cut cells at oblique edges miss them by the square of the spacing, so
     * that halving it must bring the error to a third or less */
    test_section t, turned;
    double coarse = 0, fine = 0;
    for (uint32_t k = 0; k < 60; k++) {
        test_section_random(&t, k, 20e-3, 1);
        test_section_moved(&turned, &t, 1, 1, 0.37 * k, 1, -2);
        start();
        CHECK(compare(&turned.section, 3e-3, 0));
        coarse += worst_bend;
        start();
        CHECK(compare(&turned.section, 1.5e-3, 0));
        fine += worst_bend;
    }
    printf("second moments off by %.1e, %.1e of Ix + Iy\n", coarse / 60, fine / 60);
    CHECK(fine < coarse / 3);
    CHECK(coarse / 60 < 2e-3);
}

static void model_quench_mesh__slivers__add_up(void) {
    /* exact: Green's theorem. A corner of 1 degree, a step a thousandth of the spacing high, a web
     * between hole and edge of a hundredth */
    const hs_point wedge[] = {{0, 0}, {60e-3, 0}, {60e-3, 1.05e-3}};
    const hs_point step[] = {{0, 0},         {40e-3, 0},         {40e-3, 20e-3},
                             {20e-3, 20e-3}, {20e-3, 20.002e-3}, {0, 20.002e-3}};
    const hs_point inner[] = {{5e-3, 5e-3}, {5e-3, 19.98e-3}, {35e-3, 15e-3}};
    const hs_outline hole = {inner, 3};
    const hs_section sections[] = {
        {{wedge, 3}, NULL, 0}, {{step, 6}, NULL, 0}, {{rect_points, 4}, &hole, 1}};
    start();
    for (size_t i = 0; i < 3; i++)
        CHECK(compare(&sections[i], 2e-3, 0));
    NEAR(worst_sum, 0, 1e-8);
    NEAR(worst_edge, 0, 1e-8);
    NEAR(worst_patch, 0, 1e-8);
}

static void model_quench_mesh__what_cannot_be_cut__is_refused(void) {
    const hs_point crossing[] = {{0, 0}, {1e-2, 1e-2}, {1e-2, 0}, {0, 1e-2}};
    const hs_section bad = {{crossing, 4}, NULL, 0}, none = {{rect_points, 2}, NULL, 0};
    hs_error err;
    CHECK(hs_quench_mesh_make(&mesh, &bad, 1e-3, 0, 0, &err) == HS_E_OUTLINE);
    CHECK(hs_quench_mesh_make(&mesh, &none, 1e-3, 0, 0, &err) == HS_E_OUTLINE);
    CHECK(hs_quench_mesh_make(&mesh, &upright[0], -1e-3, 0, 0, &err) == HS_E_IMPOSSIBLE);
    CHECK(hs_quench_mesh_make(&mesh, &upright[0], NAN, 0, 0, &err) == HS_E_IMPOSSIBLE);
    CHECK(hs_quench_mesh_make(&mesh, &upright[0], INFINITY, 0, 0, &err) == HS_E_IMPOSSIBLE);
    CHECK(hs_quench_mesh_make(&mesh, &upright[0], 0.2e-3, 0, 0, &err) == HS_E_TOO_LARGE);
    CHECK(hs_quench_mesh_make(&mesh, &upright[0], 0.5e-3, 0, 0, &err) == HS_E_TOO_LARGE);
}

HS_TEST_MAIN("model_quench_mesh", TEST(model_quench_mesh__upright_sections__add_up_exactly),
             TEST(model_quench_mesh__random_sections__add_up_exactly),
             TEST(model_quench_mesh__turned_section__bends_as_stiffly),
             TEST(model_quench_mesh__slivers__add_up),
             TEST(model_quench_mesh__what_cannot_be_cut__is_refused))
