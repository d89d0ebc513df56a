/* Nodes on the faces themselves (a held face is a known value, an exchanging one half a cell), the
 * diffusivity at the mean carbon of two neighbours, backward differences of variable order in
 * time. */
#include "second/referee.h"

#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdlib.h>
#include <sunlinsol/sunlinsol_band.h>
#include <sunmatrix/sunmatrix_band.h>

typedef struct lines {
    const referee_part *part;
    const referee_heat *heat;
    int nodes;
    double *depth, *flux;
    double cold;
    double t0, t1, c0, c1; /* the straight piece of the path being run */
} lines;

static double celsius_at(const lines *l, double t) {
    return l->c0 + (l->c1 - l->c0) * (t - l->t0) / (l->t1 - l->t0);
}

/* Area of a surface at a depth, against the face at depth 0. */
static double area(const referee_part *p, double depth) {
    if (p->shape == PLATE) return 1;
    double inward = p->shape == TUBE_FROM_BORE ? 1 : -1;
    return 1 + inward * depth / p->radius_mm;
}

static double wanted(const lines *l, int face, double celsius) {
    double carbon = l->heat->face[face].carbon;
    return l->heat->saturates ? fmin(carbon, referee_saturation(celsius)) : carbon;
}

/* Carbon of node i: a held face has what it is held to. */
static double carbon_of(const lines *l, const double *y, int i, double celsius) {
    int face = i == 0 ? 0 : i == l->nodes - 1 ? 1 : -1;
    if (face >= 0 && l->heat->face[face].is == HELD) return wanted(l, face, celsius);
    return y[i];
}

static double through_face(const lines *l, const double *y, int face, double celsius) {
    const referee_face *f = &l->heat->face[face];
    int i = face ? l->nodes - 1 : 0;
    if (f->is != EXCHANGING) return 0;
    return f->exchange_mm_s * (wanted(l, face, celsius) - y[i]) * area(l->part, l->depth[i]);
}

static int rate(realtype t, N_Vector now, N_Vector change, void *context) {
    const lines *l = context;
    const double *y = N_VGetArrayPointer(now), *x = l->depth;
    double *dy = N_VGetArrayPointer(change), celsius = celsius_at(l, t);
    int n = l->nodes;
    for (int i = 0; i + 1 < n; i++) {
        double a = carbon_of(l, y, i, celsius), b = carbon_of(l, y, i + 1, celsius);
        l->flux[i] = area(l->part, .5 * (x[i] + x[i + 1])) *
                     referee_diffusivity(l->part, .5 * (a + b), celsius) * (a - b) /
                     (x[i + 1] - x[i]);
    }
    for (int i = 0; i < n; i++) {
        double left = i ? .5 * (x[i - 1] + x[i]) : x[0];
        double right = i + 1 < n ? .5 * (x[i] + x[i + 1]) : x[n - 1];
        double volume = (right - left) * area(l->part, .5 * (left + right));
        double in = i ? l->flux[i - 1] : through_face(l, y, 0, celsius);
        double out = i + 1 < n ? l->flux[i] : -through_face(l, y, 1, celsius);
        dy[i] = (in - out) / volume;
    }
    for (int face = 0; face < 2; face++)
        if (l->heat->face[face].is == HELD) dy[face ? n - 1 : 0] = 0;
    return 0;
}

/* The warm part of one straight piece; a piece that is cold all through has none. */
static int warm_part(lines *l, const double from[2], const double to[2]) {
    double hot = fmax(from[1], to[1]);
    l->t0 = from[0];
    l->c0 = from[1];
    l->t1 = to[0];
    l->c1 = to[1];
    if (!(l->t1 > l->t0) || hot < l->cold) return 0;
    double slope = (to[1] - from[1]) / (to[0] - from[0]);
    double crossing = from[0] + (l->cold - from[1]) / slope;
    if (from[1] < l->cold) {
        l->t0 = crossing;
        l->c0 = l->cold;
    }
    if (to[1] < l->cold) {
        l->t1 = crossing;
        l->c1 = l->cold;
    }
    return l->t1 > l->t0;
}

/* A face is let go of with the carbon it was held to. */
static void settle_faces(lines *l, double *y, double celsius) {
    for (int face = 0; face < 2; face++)
        if (l->heat->face[face].is == HELD) y[face ? l->nodes - 1 : 0] = wanted(l, face, celsius);
}

static int run_heat(lines *l, void *cvode, N_Vector now) {
    for (int i = 0; i + 1 < l->heat->points; i++) {
        if (!warm_part(l, l->heat->path[i], l->heat->path[i + 1])) continue;
        double reached = l->t0;
        int said = CVodeReInit(cvode, l->t0, now);
        if (said == CV_SUCCESS) said = CVodeSetStopTime(cvode, l->t1);
        if (said == CV_SUCCESS) said = CVode(cvode, l->t1, now, &reached, CV_NORMAL);
        if (said < 0) return said;
        settle_faces(l, N_VGetArrayPointer(now), l->c1);
    }
    return 0;
}

/* Third-degree Lagrange through the four nodes around a depth. */
static double read_at(const lines *l, const double *y, double depth) {
    int k = 0;
    while (k + 4 < l->nodes && l->depth[k + 2] < depth)
        k++;
    double sum = 0;
    for (int i = k; i < k + 4; i++) {
        double weight = 1;
        for (int j = k; j < k + 4; j++)
            if (j != i) weight *= (depth - l->depth[j]) / (l->depth[i] - l->depth[j]);
        sum += weight * y[i];
    }
    return sum;
}

/* Ready CVODE; everything it needs is made and freed here. */
static int integrate(lines *l, const referee_heat *heat, int heats, double tolerance, double *y) {
    SUNContext context = NULL;
    if (SUNContext_Create(NULL, &context) != 0) return -1;
    N_Vector now = N_VMake_Serial(l->nodes, y, context);
    SUNMatrix matrix = SUNBandMatrix(l->nodes, 1, 1, context);
    SUNLinearSolver solver = SUNLinSol_Band(now, matrix, context);
    void *cvode = CVodeCreate(CV_BDF, context);
    int said = CVodeInit(cvode, rate, 0, now);
    if (said == CV_SUCCESS) said = CVodeSStolerances(cvode, tolerance, .01 * tolerance);
    if (said == CV_SUCCESS) said = CVodeSetLinearSolver(cvode, solver, matrix);
    if (said == CV_SUCCESS) said = CVodeSetUserData(cvode, l);
    if (said == CV_SUCCESS) said = CVodeSetMaxNumSteps(cvode, 100000);
    for (int k = 0; k < heats && said == CV_SUCCESS; k++) {
        l->heat = &heat[k];
        said = run_heat(l, cvode, now);
    }
    CVodeFree(&cvode);
    SUNLinSolFree(solver);
    SUNMatDestroy(matrix);
    N_VDestroy(now);
    SUNContext_Free(&context);
    return said;
}

/* Nodes closest at both ends: half a wave of the cosine, mixed with even spacing. */
static void place_nodes(lines *l) {
    double pi = acos(-1);
    for (int i = 0; i < l->nodes; i++) {
        double share = (double)i / (l->nodes - 1);
        l->depth[i] = l->part->wall_mm * (.85 * .5 * (1 - cos(pi * share)) + .15 * share);
    }
}

int referee_run(double *carbon, const double *depth_mm, int n, const referee_part *part,
                const referee_heat *heat, int heats, referee_grid grid) {
    size_t nodes = (size_t)grid.nodes;
    double *room = malloc(3 * nodes * sizeof *room);
    if (!room) return -1;
    lines l = {.part = part,
               .nodes = grid.nodes,
               .cold = grid.cold_C,
               .depth = room,
               .flux = room + nodes};
    double *y = room + 2 * nodes;
    place_nodes(&l);
    for (size_t i = 0; i < nodes; i++)
        y[i] = part->core;
    int said = integrate(&l, heat, heats, grid.tolerance, y);
    for (int i = 0; i < n; i++)
        carbon[i] = read_at(&l, y, depth_mm[i]);
    free(room);
    return said;
}
