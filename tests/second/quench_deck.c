#include "second/quench_deck.h"

#include "model/polygon.h"

#include <math.h>

/* Longer steps as the section cools. */
typedef struct stage {
    double long_s, step_s;
} stage;

enum { STAGES = 5 };
static const stage plain_stages[STAGES] = {{0.6, 0.06}, {2.4, 0.2}, {9, 0.5}, {28, 1.4}, {80, 4}};
/* Martensite forms from about 10 to 60 s, a front through the section. */
static const stage hard_stages[STAGES] = {{3, 0.15}, {9, 0.35}, {48, 0.8}, {60, 2}, {80, 4}};

double ccx_bath_C(const ccx_case *c) {
    return c->hard ? 20 : 50;
}

static int add_line(double *line, size_t *n, double at) {
    for (size_t i = 0; i < *n; i++)
        if (fabs(line[i] - at) < 1e-9) return 1;
    if (*n == CCX_LINES) return 0;
    size_t i = (*n)++;
    for (; i > 0 && line[i - 1] > at; i--)
        line[i] = line[i - 1];
    line[i] = at;
    return 1;
}

/* Through all vertices, and even between. */
static int lay(double *line, size_t *cells, const ccx_case *c, int coordinate) {
    double corner[CCX_LINES];
    size_t n = 0, all = 0;
    for (size_t i = 0; i < c->section.outline.n; i++) {
        hs_point p = c->section.outline.point[i];
        if (!add_line(corner, &n, coordinate ? p.y_m : p.x_m)) return 0;
    }
    for (size_t i = 0; i + 1 < n; i++) {
        double gap = corner[i + 1] - corner[i];
        int parts = (int)ceil(gap / c->spacing_m - 1e-9);
        for (int k = 0; k < parts; k++)
            if (!add_line(line, &all, corner[i] + gap * k / parts)) return 0;
    }
    if (!add_line(line, &all, corner[n - 1])) return 0;
    *cells = all - 1;
    return 1;
}

static int inside(const ccx_case *c, double x, double y) {
    const hs_outline *o = &c->section.outline;
    int in = 0;
    for (size_t i = 0; i < o->n; i++) {
        hs_point a = o->point[i], b = o->point[(i + 1) % o->n];
        if ((a.y_m > y) != (b.y_m > y) &&
            x < a.x_m + (y - a.y_m) / (b.y_m - a.y_m) * (b.x_m - a.x_m))
            in = !in;
    }
    return in;
}

static int metal(const ccx_grid *g, long i, long j) {
    if (i < 0 || j < 0 || i >= (long)g->columns || j >= (long)g->rows) return 0;
    return inside(g->c, 0.5 * (g->x_m[i] + g->x_m[i + 1]), 0.5 * (g->y_m[j] + g->y_m[j + 1]));
}

/* Nodes lie on a lattice of half cells, 0 near, 1 middle, 2 far. */
static unsigned number(const ccx_grid *g, size_t a, size_t b, unsigned depth) {
    return (unsigned)(3 * (b * (2 * g->columns + 1) + a)) + depth + 1;
}

int ccx_grid_lay(ccx_grid *g, const ccx_case *c) {
    *g = (ccx_grid){.c = c, .slice_m = 0.2e-3};
    if (!lay(g->x_m, &g->columns, c, 0) || !lay(g->y_m, &g->rows, c, 1)) return 0;
    g->box_x_m = g->x_m[g->columns] - g->x_m[0];
    g->box_y_m = g->y_m[g->rows] - g->y_m[0];
    g->far_corner[0] = number(g, 0, 0, 2);
    g->far_corner[1] = number(g, 2 * g->columns, 0, 2);
    g->far_corner[2] = number(g, 0, 2 * g->rows, 2);
    return 1;
}

static double at(const double *line, size_t half) {
    return half % 2 ? 0.5 * (line[half / 2] + line[half / 2 + 1]) : line[half / 2];
}

/* Does any brick use the lattice point? Bricks of 20 nodes have none in faces and middles. */
static int used(const ccx_grid *g, size_t a, size_t b, unsigned depth) {
    if (a % 2 + b % 2 + depth % 2 > 1) return 0;
    long i = (long)(a / 2), j = (long)(b / 2);
    int here = metal(g, i, j);
    if (a % 2 == 0) here |= metal(g, i - 1, j);
    if (b % 2 == 0) here |= metal(g, i, j - 1);
    if (a % 2 == 0 && b % 2 == 0) here |= metal(g, i - 1, j - 1);
    return here;
}

typedef void (*visit)(FILE *out, const ccx_grid *g, size_t a, size_t b, unsigned depth);

static void each_node(FILE *out, const ccx_grid *g, visit f) {
    for (size_t b = 0; b <= 2 * g->rows; b++)
        for (size_t a = 0; a <= 2 * g->columns; a++)
            for (unsigned depth = 0; depth < 3; depth++)
                if (used(g, a, b, depth)) f(out, g, a, b, depth);
}

static void write_node(FILE *out, const ccx_grid *g, size_t a, size_t b, unsigned depth) {
    fprintf(out, "%u, %.9g, %.9g, %.9g\n", number(g, a, b, depth), 1e3 * at(g->x_m, a),
            1e3 * at(g->y_m, b), 1e3 * g->slice_m * 0.5 * depth);
}

static void write_symmetry(FILE *out, const ccx_grid *g, size_t a, size_t b, unsigned depth) {
    if (depth == 0 && a == 2 * g->columns) fprintf(out, "%u, 1, 1\n", number(g, a, b, depth));
}

static void write_near(FILE *out, const ccx_grid *g, size_t a, size_t b, unsigned depth) {
    if (depth == 0) fprintf(out, "%u, 3, 3\n", number(g, a, b, 0));
}

/* Along the part u = (1 - s - t) u0 + s u1 + t u2 on the far face, half of it in the middle; across
 * it all three layers move alike (the slice is so thin that its arc counts for nothing). */
static void write_plane(FILE *out, const ccx_grid *g, size_t a, size_t b, unsigned depth) {
    unsigned n = number(g, a, b, depth), near = number(g, a, b, 0);
    if (depth == 0) return;
    fprintf(out, "*EQUATION\n2\n%u, 1, 1, %u, 1, -1\n*EQUATION\n2\n%u, 2, 1, %u, 2, -1\n", n, near,
            n, near);
    if (n == g->far_corner[0] || n == g->far_corner[2]) return;
    if (n == g->far_corner[1] && !g->c->half) return;
    double s = g->c->half ? 0 : (at(g->x_m, a) - g->x_m[0]) / g->box_x_m,
           t = (at(g->y_m, b) - g->y_m[0]) / g->box_y_m;
    double share[3] = {1 - s - t, s, t};
    int terms = 1;
    for (int i = 0; i < 3; i++)
        terms += fabs(share[i]) > 1e-12;
    fprintf(out, "*EQUATION\n%d\n%u, 3, 1", terms, n);
    for (int i = 0; i < 3; i++)
        if (fabs(share[i]) > 1e-12)
            fprintf(out, ", %u, 3, %.12g", g->far_corner[i], -0.5 * depth * share[i]);
    fprintf(out, "\n");
}

static void write_bricks(FILE *out, const ccx_grid *g) {
    for (size_t j = 0; j < g->rows; j++)
        for (size_t i = 0; i < g->columns; i++) {
            if (!metal(g, (long)i, (long)j)) continue;
            size_t a = 2 * i, b = 2 * j;
            fprintf(out, "%zu", j * g->columns + i + 1);
            for (unsigned z = 0; z < 3; z += 2)
                fprintf(out, ", %u, %u, %u, %u", number(g, a, b, z), number(g, a + 2, b, z),
                        number(g, a + 2, b + 2, z), number(g, a, b + 2, z));
            fprintf(out, ",\n");
            for (unsigned z = 0; z < 3; z += 2)
                fprintf(out, "%u, %u, %u, %u, ", number(g, a + 1, b, z), number(g, a + 2, b + 1, z),
                        number(g, a + 1, b + 2, z), number(g, a, b + 1, z));
            fprintf(out, "%u, %u, %u, %u\n", number(g, a, b, 1), number(g, a + 2, b, 1),
                    number(g, a + 2, b + 2, 1), number(g, a, b + 2, 1));
        }
}

static double factor_at(const ccx_case *c, double x, double y) {
    const hs_outline *o = &c->section.outline;
    size_t best = 0;
    double least = INFINITY;
    for (size_t i = 0; i < o->n; i++) {
        double gap = hs_polygon_point_gap((hs_point){x, y}, o->point[i], o->point[(i + 1) % o->n]);
        if (gap >= least) continue;
        least = gap;
        best = i;
    }
    return c->edge_factor[best];
}

/* Sides 3 to 6 of a brick face -y, +x, +y, -x. */
static void write_films(FILE *out, const ccx_grid *g) {
    static const int dx[] = {0, 1, 0, -1}, dy[] = {-1, 0, 1, 0};
    for (size_t j = 0; j < g->rows; j++)
        for (size_t i = 0; i < g->columns; i++)
            for (int side = 0; side < 4; side++) {
                if (!metal(g, (long)i, (long)j)) continue;
                if (metal(g, (long)i + dx[side], (long)j + dy[side])) continue;
                double x = 0.5 * (g->x_m[i] + g->x_m[i + 1]) +
                           0.5 * dx[side] * (g->x_m[i + 1] - g->x_m[i]);
                double y = 0.5 * (g->y_m[j] + g->y_m[j + 1]) +
                           0.5 * dy[side] * (g->y_m[j + 1] - g->y_m[j]);
                fprintf(out, "%zu, F%d, %g, %.9g\n", j * g->columns + i + 1, 3 + side,
                        ccx_bath_C(g->c), 1e-3 * CCX_FILM * factor_at(g->c, x, y));
            }
}

/* mm, N, s: E 150 GPa and 15e-6/K, a hundred times and a hundredth; 100 MPa; k 30, rho c 5e6. */
static void write_steel(FILE *out) {
    fprintf(out,
            "*MATERIAL, NAME=STEEL\n*ELASTIC\n15000000., 0.3\n*PLASTIC\n100., 0.\n"
            "*EXPANSION, ZERO=%g\n15e-8\n*DENSITY\n1.\n*SPECIFIC HEAT\n5.\n*CONDUCTIVITY\n30.\n"
            "*SOLID SECTION, ELSET=ALL, MATERIAL=STEEL\n",
            CCX_FROM_C);
}

/* Without transformation plasticity, and always cooling, martensite is a matter of temperature
 * alone: strain and strength over it say all. 23e-6 and 12e-6/K, .0151, from 400 C by Koistinen and
 * Marburger .011; austenite 190 to 30 MPa (20 to 850 C), martensite 1200 to 900 (20 to 400). */
static double formed(double T) {
    return T < 400 ? 1 - exp(-0.011 * (400 - T)) : 0;
}

static double free_strain(double T) {
    double z = formed(T);
    return (1 - z) * 23e-6 * (T - CCX_FROM_C) +
           z * (23e-6 * (20 - CCX_FROM_C) + 0.0151 + 12e-6 * (T - 20));
}

static double strength_MPa(double T) {
    double z = formed(T), martensite = 1200 - 300 * fmin(1, (T - 20) / 380);
    return (1 - z) * (190 - 160 * (T - 20) / 830) + z * martensite;
}

static void write_hard_steel(FILE *out) {
    fprintf(out, "*MATERIAL, NAME=STEEL\n*ELASTIC\n18000000., 0.3\n*PLASTIC\n");
    for (double T = 20; T < 851; T += T < 400 ? 5 : 50)
        fprintf(out, "%.9g, 0., %g\n", strength_MPa(T), T);
    fprintf(out, "*EXPANSION, ZERO=%g\n", CCX_FROM_C);
    for (double T = 20; T < 849; T += T < 400 ? 5 : 50)
        fprintf(out, "%.9g, %g\n", free_strain(T) / (T - CCX_FROM_C) / 100, T);
    fprintf(out, "*DENSITY\n1.\n*SPECIFIC HEAT\n4.8\n*CONDUCTIVITY\n28.\n"
                 "*SOLID SECTION, ELSET=ALL, MATERIAL=STEEL\n");
}

int ccx_deck_write(FILE *out, const ccx_case *c) {
    ccx_grid g;
    if (!ccx_grid_lay(&g, c)) return 0;
    fprintf(out, "*NODE, NSET=NALL\n");
    each_node(out, &g, write_node);
    fprintf(out, "*ELEMENT, TYPE=C3D20, ELSET=ALL\n");
    write_bricks(out, &g);
    c->hard ? write_hard_steel(out) : write_steel(out);
    fprintf(out, "*NSET, NSET=CORNERS\n%u, %u, %u\n", g.far_corner[0], g.far_corner[1],
            g.far_corner[2]);
    fprintf(out, "*BOUNDARY\n%u, 2, 2\n", number(&g, 0, 0, 0));
    if (c->half)
        each_node(out, &g, write_symmetry);
    else
        fprintf(out, "%u, 1, 1\n%u, 2, 2\n", number(&g, 0, 0, 0), number(&g, 2 * g.columns, 0, 0));
    each_node(out, &g, write_near);
    each_node(out, &g, write_plane);
    fprintf(out, "*INITIAL CONDITIONS, TYPE=TEMPERATURE\nNALL, %g\n", CCX_FROM_C);
    const stage *stages = c->hard ? hard_stages : plain_stages;
    for (size_t k = 0; k < STAGES; k++) {
        fprintf(out,
                "*STEP, INC=1000\n"
                "*UNCOUPLED TEMPERATURE-DISPLACEMENT\n%g, %g, 1e-4, %g\n",
                stages[k].step_s, stages[k].long_s, stages[k].step_s);
        if (k == 0) {
            fprintf(out, "*FILM\n");
            write_films(out, &g);
            fprintf(out, "*NODE PRINT, NSET=CORNERS\nU\n");
        }
        fprintf(out, "*END STEP\n");
    }
    return ferror(out) == 0;
}
