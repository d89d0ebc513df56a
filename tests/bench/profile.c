/* One carbon profile (925 C, 6 h, core .18 %, surface .95 %, Agren) by the program and by CVODE,
 * each with the cheapest setting that keeps an error; errors are against a far finer run of CVODE.
 */
#include "hardskin/model/carbon_course.h"
#include "second/referee.h"

#include <math.h>
#include <stdio.h>
#include <time.h>

enum { PLACES = 24 };
static const double HOURS = 6, AT_C = 925, CORE = 0.18, SURFACE = 0.95, WALL_MM = 4;
static double place_mm[PLACES], truth[PLACES];

static double now_s(void) {
    struct timespec t;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static void by_cvode(double *carbon, int nodes, double tolerance) {
    const double path[2][2] = {{0, AT_C}, {HOURS * 3600, AT_C}};
    const referee_heat heat = {path, 2, {{.is = HELD, .carbon = SURFACE}, {.is = SEALED}}, 0};
    const referee_part part = {.shape = PLATE, .wall_mm = WALL_MM, .core = CORE};
    const referee_grid grid = {nodes, tolerance, 700};
    referee_run(carbon, place_mm, PLACES, &part, &heat, 1, grid);
}

static void by_program(double *carbon, size_t cells) {
    static hs_carbon_end end;
    const hs_heat_point hold[2] = {{0, AT_C + 273.15}, {HOURS * 3600, AT_C + 273.15}};
    const hs_heat heat = {.point = hold, .n = 2, .side = {{HS_SIDE_FIXED, SURFACE, 0}}};
    const hs_diffusivity d = {.model = HS_D_AGREN, .factor = 1};
    const hs_carbon_course course = {.shape = HS_SLAB,
                                     .size_m = WALL_MM * 1e-3,
                                     .reach_m = WALL_MM * 1e-3,
                                     .core_pct = CORE,
                                     .heat = &heat,
                                     .heats = 1,
                                     .d = &d};
    hs_carbon_course_run(&end, &course, cells, NULL);
    for (int i = 0; i < PLACES; i++)
        carbon[i] =
            hs_carbon_at(&end.mesh, end.carbon_pct, end.uptake.surface_pct, place_mm[i] * 1e-3);
}

/* Error and milliseconds of one setting: cells, or nodes and tolerance. */
static double measure(double *ms, size_t cells, int nodes, double tolerance) {
    double carbon[PLACES], worst = 0, from = now_s();
    int runs = 0;
    do {
        if (cells)
            by_program(carbon, cells);
        else
            by_cvode(carbon, nodes, tolerance);
        runs++;
    } while (now_s() - from < 0.05);
    *ms = 1e3 * (now_s() - from) / runs;
    for (int i = 0; i < PLACES; i++)
        worst = fmax(worst, fabs(carbon[i] - truth[i]));
    return worst;
}

int main(void) {
    static const size_t cells[] = {24, 48, 96, 192, 384};
    static const int nodes[] = {25, 49, 97, 193, 385, 769};
    static const double tolerances[] = {1e-3, 1e-4, 1e-5, 1e-6, 1e-7};
    static const double asked[] = {3e-3, 1e-3, 1e-4};
    for (int i = 0; i < PLACES; i++)
        place_mm[i] = 0.05 + 0.07 * i;
    by_cvode(truth, 3201, 1e-10);
    printf("%-16s %22s %30s %8s\n", "error asked, %C", "program: ms (cells)",
           "CVODE: ms (nodes, tolerance)", "ratio");
    for (int a = 0; a < 3; a++) {
        double best = INFINITY, ours = INFINITY, ms;
        size_t with = 0;
        int at = 0, tol = 0;
        for (int i = 0; i < 5 && isinf(ours); i++)
            if (measure(&ms, cells[i], 0, 0) <= asked[a]) ours = ms, with = cells[i];
        for (int i = 0; i < 6; i++)
            for (int t = 0; t < 5; t++)
                if (measure(&ms, 0, nodes[i], tolerances[t]) <= asked[a] && ms < best)
                    best = ms, at = nodes[i], tol = t;
        printf("%-16g %12.3f (%3zu) %17.3f (%3d, %g) %9.1f\n", asked[a], ours, with, best, at,
               at ? tolerances[tol] : 0, best / ours);
    }
    return 0;
}
