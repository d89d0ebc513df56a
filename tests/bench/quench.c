/* How long a quench of a section takes, beside CVODE on the same nodes. usage: quench | quench one
 *
 * The equations of the heat are taken from the model's own file, so that both march exactly the
 * same discretisation; of CVODE's tolerances the widest is taken whose error is not above ours. */
#include "../../src/model/quench_heat.c"

#include "hardskin/model/quench_material.h"

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <string.h>
#include <sunlinsol/sunlinsol_band.h>
#include <sunlinsol/sunlinsol_spgmr.h>
#include <sunmatrix/sunmatrix_band.h>
#include <time.h>

enum { REPEATS = 15, TIMES = 4 };
static const double until_s[TIMES] = {2, 8, 25, 60};
static const hs_point L_points[] = {{0, 0},       {60e-3, 0},    {60e-3, 8e-3},
                                    {8e-3, 8e-3}, {8e-3, 40e-3}, {0, 40e-3}};
static const hs_section angle = {{L_points, 6}, NULL, 0};
static const double edge[] = {1000.0 / 1500, 1, 1, 1, 1, 1};

static hs_quench_mesh mesh;
static hs_quench_work work;
static hs_quench_point node[HS_QUENCH_NODES], fibre[HS_QUENCH_FIBRES];
static hs_quench_left left[HS_QUENCH_PLASTICITIES];
static hs_quench_steel steel;
static double best[TIMES][HS_QUENCH_NODES];

static double now_ms(void) {
    struct timespec t;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return 1e3 * (double)t.tv_sec + 1e-6 * (double)t.tv_nsec;
}

static hs_quench_case make_case(double spacing_m, size_t n) {
    static const hs_composition analysis = {.C = 0.17, .Mn = 1.2, .Si = 0.25, .Cr = 1.0};
    hs_quench_mesh_make(&mesh, &angle, spacing_m, 0, 0, NULL);
    hs_quench_steel_usual(&steel);
    hs_quench_point p = hs_quench_point_of(&analysis, 0.17, 1);
    for (size_t i = 0; i < mesh.nodes; i++)
        node[i] = p;
    for (size_t i = 0; i < mesh.fibres; i++)
        fibre[i] = p;
    hs_quench_case c = {.mesh = &mesh,
                        .steel = &steel,
                        .node = node,
                        .fibre = fibre,
                        .start_K = 1123.15,
                        .n = n,
                        .plasticity_1_Pa = {0, 6e-11, 1.2e-10}};
    c.bath = (hs_quench_bath){.bath_K = 293.15, .factor = 1, .hole_factor = 1, .edge_factor = edge};
    hs_quench_film(&c.bath.film, "oil", NULL);
    return c;
}

static double median(double *t) {
    for (int i = 1; i < REPEATS; i++)
        for (int j = i; j > 0 && t[j] < t[j - 1]; j--) {
            double swap = t[j];
            t[j] = t[j - 1];
            t[j - 1] = swap;
        }
    return t[REPEATS / 2];
}

static double time_run(const hs_quench_case *c, hs_quench_cost *cost) {
    double t[REPEATS];
    for (int i = 0; i < REPEATS; i++) {
        double from = now_ms();
        if (hs_quench_run(left, cost, c, &work, NULL, NULL, NULL) != HS_OK) return NAN;
        t[i] = now_ms() - from;
    }
    return median(t);
}

static double miss(const double *temp_K, int k) {
    double sum = 0;
    for (size_t i = 0; i < mesh.nodes; i++)
        sum += (temp_K[i] - best[k][i]) * (temp_K[i] - best[k][i]);
    return sqrt(sum / (double)mesh.nodes);
}

static double our_error(hs_quench_case c) {
    double most = 0;
    c.n = 0;
    for (int k = 0; k < TIMES; k++) {
        c.end_s = until_s[k];
        if (hs_quench_run(left, NULL, &c, &work, NULL, NULL, NULL) != HS_OK) return NAN;
        most = fmax(most, miss(work.temp_K, k));
    }
    return most;
}

static int cvode_rate(realtype t, N_Vector y, N_Vector rate_of, void *context) {
    static double
        with_heat[HS_QUENCH_NODES + 1]; /* and the heat that leaves, which stays out here */
    (void)t;
    rate(with_heat, N_VGetArrayPointer(y), context);
    memcpy(N_VGetArrayPointer(rate_of), with_heat, mesh.nodes * sizeof *with_heat);
    return 0;
}

static long bandwidth(void) {
    long most = 0;
    for (size_t k = 0; k < mesh.cells; k++)
        for (int i = 0; i < 6; i++) {
            long a = mesh.cell[k].node[pair[i][0]], b = mesh.cell[k].node[pair[i][1]];
            long apart = a > b ? a - b : b - a;
            most = apart > most ? apart : most;
        }
    return most;
}

typedef struct march_result {
    double ms, error_K;
    long steps, rates;
} march_result;

/* March with CVODE; keep: store the solution as the best. */
static march_result cvode_march(const hs_quench_case *c, double tolerance_K, int band, int keep) {
    static double start[HS_QUENCH_NODES + 1];
    hs_quench_run_state s = {.c = c, .w = &work};
    double unused, from = now_ms(), at;
    hs_quench_tables(&s);
    hs_quench_heat_start(&s, &unused);
    SUNContext sun;
    SUNContext_Create(NULL, &sun);
    memcpy(start, work.temp_K, sizeof start);
    N_Vector y = N_VMake_Serial((sunindextype)mesh.nodes, start, sun);
    void *cv = CVodeCreate(CV_BDF, sun);
    CVodeInit(cv, cvode_rate, 0, y);
    CVodeSStolerances(cv, 1e-12, tolerance_K);
    CVodeSetUserData(cv, &s);
    CVodeSetMaxNumSteps(cv, 1000000);
    long w = bandwidth();
    SUNMatrix A = band ? SUNBandMatrix((sunindextype)mesh.nodes, w, w, sun) : NULL;
    SUNLinearSolver ls =
        band ? SUNLinSol_Band(y, A, sun) : SUNLinSol_SPGMR(y, SUN_PREC_NONE, 10, sun);
    CVodeSetLinearSolver(cv, ls, A);
    march_result r = {0};
    for (int k = 0; k < TIMES; k++) {
        CVode(cv, until_s[k], y, &at, CV_NORMAL);
        if (keep) memcpy(best[k], N_VGetArrayPointer(y), mesh.nodes * sizeof **best);
        r.error_K = fmax(r.error_K, miss(N_VGetArrayPointer(y), k));
    }
    /* ours ends half a kelvin above the bath */
    CVode(cv, 300, y, &at, CV_NORMAL);
    CVodeGetNumSteps(cv, &r.steps);
    r.rates = (long)s.cost.evaluations;
    r.ms = now_ms() - from;
    N_VDestroy(y);
    CVodeFree(&cv);
    SUNLinSolFree(ls);
    if (A) SUNMatDestroy(A);
    SUNContext_Free(&sun);
    return r;
}

static void against_cvode(const hs_quench_case *heat, double ours_ms, double error_K, int band) {
    march_result r = {.error_K = INFINITY};
    double tolerance_K = 4;
    while (!(r.error_K <= error_K) && tolerance_K > 1e-4) {
        tolerance_K /= 1.4;
        r = cvode_march(heat, tolerance_K, band, 0);
    }
    for (int i = 0; i < 4; i++) {
        march_result again = cvode_march(heat, tolerance_K, band, 0);
        if (again.ms < r.ms) r = again;
    }
    printf("  CVODE BDF, %-5s %8.1f ms, error %.3f K, %ld steps, %ld rates: %.1f times ours\n",
           band ? "band" : "GMRES", r.ms, r.error_K, r.steps, r.rates, r.ms / ours_ms);
}

int main(int argc, char **argv) {
    hs_quench_cost cost = {0};
    hs_quench_case c = make_case(2e-3, 3);
    if (argc > 1 && !strcmp(argv[1], "one")) {
        c.n = 1;
        return hs_quench_run(left, &cost, &c, &work, NULL, NULL, NULL) != HS_OK;
    }
    static const double cells_m[] = {2e-3, 1.6e-3, 1.34e-3};
    double fine[3], envelope = 0;
    c = make_case(0.8e-3, 3);
    c.substep_K = 1.25;
    if (hs_quench_run(left, &cost, &c, &work, NULL, NULL, NULL) != HS_OK) return 1;
    for (int k = 0; k < 3; k++) {
        fine[k] = left[k].kappa_x_1_m;
        envelope = fmax(envelope, fabs(fine[k]));
    }
    for (int i = 0; i < 3; i++) {
        double off = 0;
        c = make_case(cells_m[i], 3);
        double three_ms = time_run(&c, &cost);
        for (int k = 0; k < 3; k++)
            off = fmax(off, fabs(left[k].kappa_x_1_m - fine[k]));
        printf(
            "angle 60 x 40 x 8, oil, %.2f mm, %zu nodes, %zu fibres: three K %.1f ms (%zu steps, "
            "%zu rates, %zu substeps), off by %.2f %% of the envelope against .8 mm and quarter "
            "substeps\n",
            1e3 * cells_m[i], mesh.nodes, mesh.fibres, three_ms, cost.steps, cost.evaluations,
            cost.substeps, 100 * off / envelope);
    }
    c = make_case(2e-3, 3);
    hs_quench_case heat = c;
    heat.n = 0;
    double heat_ms = time_run(&heat, &cost);
    cvode_march(&heat, 1e-7, 1, 1);
    double error_K = our_error(heat);
    printf("  heat alone %.1f ms, error %.3f K (against CVODE at 1e-7 K)\n", heat_ms, error_K);
    against_cvode(&heat, heat_ms, error_K, 1);
    against_cvode(&heat, heat_ms, error_K, 0);
    return 0;
}
