/* Below the face of a half-space: exact where D is a constant, by the finite volumes where not.
 * With a fixed surface both depend on depth and time only through depth / sqrt(time). */
#include "hardskin/model/diffusion.h"

#include "base/num.h"
#include "constants.h"

#include <math.h>

static const double ROOT_PI = 1.77245385090551603;
static const double REFERENCE_S = 3600; /* any time does */
static const double LEAST_SHARE = 0.01; /* nearer to core or surface a depth says nothing */
static const double TIME_LOW_S = 1e-3, TIME_HIGH_S = 1e10; /* where a time is looked for */

double hs_scaled_erfc(double x) {
    if (x < 5) return exp(x * x) * erfc(x);
    /* Laplace's continued fraction from its 60th term; at x = 5 it is exact to rounding. */
    double tail = x;
    for (int k = 60; k > 0; k--)
        tail = x + 0.5 * k / tail;
    return 1 / (ROOT_PI * tail);
}

/* What a search needs to know. share = (carbon - core) / (surface - core). */
typedef struct question {
    const hs_diffusion *given;
    double surface_pct; /* after the cap */
    double D_m2_s;      /* constant D */
    double share, depth_m, time_s;
    hs_diffusion_work *work;
    size_t cells; /* of the mesh */
    hs_error *err;
    hs_status *status; /* of the last run */
} question;

static hs_status start(question *q, const hs_diffusion *g, hs_diffusion_work *work, hs_error *err) {
    *q = (question){.given = g, .surface_pct = g->surface_pct, .work = work, .err = err};
    if (!(g->core_pct >= 0 && g->surface_pct >= 0 && g->core_pct < 6.67 && g->surface_pct < 6.67 &&
          g->transfer_m_s >= 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "carbon of 0 to 2 %, transfer of 0 or more",
                       "core %g %%, surface %g %%, transfer %g m/s", g->core_pct, g->surface_pct,
                       g->transfer_m_s);
    if (g->cap_at_acm) {
        double cap = hs_acm_pct(g->temp_K);
        if (isnan(cap))
            return hs_fail(err, HS_E_RANGE, "740 to 1050 C", "no A_cm line is known at %g C",
                           g->temp_K - HS_K_PHYSICAL_ZERO_CELSIUS);
        q->surface_pct = fmin(q->surface_pct, cap);
    }
    if (g->core_pct == q->surface_pct)
        return hs_fail(err, HS_E_IMPOSSIBLE, "", "core and surface hold the same carbon");
    q->D_m2_s = hs_diffusivity_value(&g->d, 0, g->temp_K);
    return hs_diffusivity_check(&g->d, fmax(g->core_pct, q->surface_pct), g->temp_K, g->temp_K,
                                err);
}

static hs_status want(question *q, double carbon_pct) {
    const hs_diffusion *g = q->given;
    q->share = (carbon_pct - g->core_pct) / (q->surface_pct - g->core_pct);
    if (q->share > 0 && q->share <= 1) return HS_OK;
    return hs_fail(q->err, HS_E_IMPOSSIBLE, "a carbon between core and surface",
                   "%g %% does not lie between core %g %% and surface %g %%", carbon_pct,
                   g->core_pct, q->surface_pct);
}

static int is_constant(const question *q) {
    return q->given->d.model == HS_D_CONSTANT;
}

static double exact_share(const question *q, double depth_m, double time_s) {
    double root = sqrt(q->D_m2_s * time_s), z = depth_m / (2 * root);
    if (q->given->transfer_m_s == 0) return erfc(z);
    double reduced = q->given->transfer_m_s / q->D_m2_s * root;
    return erfc(z) - exp(-z * z) * hs_scaled_erfc(z + reduced);
}

/* The level wanted and one on either side of it. */
static hs_carbon_levels levels_around(const question *q, double share) {
    double core = q->given->core_pct, span = q->surface_pct - core;
    double beside = 0.1 * fmin(share, 1 - share);
    return (hs_carbon_levels){
        3, {core + (share - beside) * span, core + share * span, core + (share + beside) * span}};
}

/* One hold from a flat profile into work->end, on q->cells; 0: as many as the depth at the share
 * wanted needs, and q->cells is told. */
static hs_status run(question *q, double time_s) {
    const hs_diffusion *g = q->given;
    const hs_heat_point point[2] = {{0, g->temp_K}, {time_s, g->temp_K}};
    hs_side_kind kind = g->transfer_m_s > 0 ? HS_SIDE_TRANSFER : HS_SIDE_FIXED;
    const hs_heat heat = {
        .point = point,
        .n = 2,
        .side = {{kind, q->surface_pct, g->transfer_m_s}, {HS_SIDE_CLOSED, 0, 0}}};
    double reach = hs_carbon_reach(&heat, 1, &g->d, fmax(g->core_pct, q->surface_pct));
    const hs_carbon_course course = {.shape = HS_SLAB,
                                     .size_m = 2 * reach,
                                     .reach_m = reach,
                                     .core_pct = g->core_pct,
                                     .heat = &heat,
                                     .heats = 1,
                                     .d = &g->d};
    hs_carbon_end *end = &q->work->end;
    if (q->cells) return hs_carbon_course_run(end, &course, q->cells, q->err);
    hs_carbon_levels levels = levels_around(q, q->share);
    hs_carbon_accuracy accuracy;
    hs_status status = hs_carbon_course_refine(end, &accuracy, &course, &levels, q->err);
    if (status == HS_OK) q->cells = accuracy.cells;
    return status;
}

/* Carbon of the last run; below its mesh there is only core. */
static double carbon_of_run(const question *q, double depth_m) {
    const hs_carbon_end *end = &q->work->end;
    double carbon = hs_carbon_at(&end->mesh, end->carbon_pct, end->uptake.surface_pct, depth_m);
    return isnan(carbon) ? q->given->core_pct : carbon;
}

static double share_of_run(const question *q, double depth_m) {
    return (carbon_of_run(q, depth_m) - q->given->core_pct) / (q->surface_pct - q->given->core_pct);
}

hs_status hs_diffusion_carbon(double *carbon_pct, const hs_diffusion *given, double time_s,
                              double depth_m, hs_diffusion_work *work, hs_error *err) {
    question q;
    hs_status status = start(&q, given, work, err);
    if (status != HS_OK) return status;
    if (!(time_s > 0 && isfinite(time_s) && depth_m >= 0 && isfinite(depth_m)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "time above 0, depth 0 or more",
                       "no carbon after %g s at %g m", time_s, depth_m);
    if (is_constant(&q)) {
        *carbon_pct =
            given->core_pct + (q.surface_pct - given->core_pct) * exact_share(&q, depth_m, time_s);
        return HS_OK;
    }
    q.cells = HS_CARBON_CELLS_USUAL; /* to learn what depth it is about */
    status = run(&q, time_s);
    if (status != HS_OK) return status;
    q.share = fmin(fmax(share_of_run(&q, depth_m), LEAST_SHARE), 1 - LEAST_SHARE);
    q.cells = 0;
    status = run(&q, time_s);
    if (status != HS_OK) return status;
    *carbon_pct = carbon_of_run(&q, depth_m);
    return HS_OK;
}

static double depth_miss(double depth_m, const void *context) {
    const question *q = context;
    double share = is_constant(q) ? exact_share(q, depth_m, q->time_s) : share_of_run(q, depth_m);
    return share - q->share;
}

hs_status hs_diffusion_depth(double *depth_m, const hs_diffusion *given, double time_s,
                             double carbon_pct, hs_diffusion_work *work, hs_error *err) {
    question q;
    hs_status status = start(&q, given, work, err);
    if (status == HS_OK) status = want(&q, carbon_pct);
    if (status != HS_OK) return status;
    if (!(time_s > 0 && isfinite(time_s)))
        return hs_fail(err, HS_E_IMPOSSIBLE, "time above 0", "no depth after %g s", time_s);
    q.time_s = time_s;
    double deep = 54 * sqrt(q.D_m2_s * time_s); /* erfc(27) is 0 in double precision */
    if (!is_constant(&q)) {
        status = run(&q, time_s);
        if (status != HS_OK) return status;
        deep = work->end.mesh.edge_m[work->end.mesh.n];
    }
    if (depth_miss(0, &q) < 0)
        return hs_fail(err, HS_E_IMPOSSIBLE, "more time", "%g %% is not reached yet anywhere",
                       carbon_pct);
    double found = 0;
    if (hs_root(&found, depth_miss, &q, 0, deep, 1e-12 * deep) != HS_OK)
        return hs_fail(err, HS_E_CONVERGE, "a carbon farther from the core",
                       "%g %% is too near the core's to have a depth", carbon_pct);
    *depth_m = found;
    return HS_OK;
}

static double time_miss(double log_time, const void *context) {
    const question *q = context;
    return exact_share(q, q->depth_m, exp(log_time)) - q->share;
}

/* Numerical, with a transfer. The scratch and the status behind the pointers are the caller's. */
static double time_miss_run(double log_time, const void *context) {
    question q = *(const question *)context;
    hs_status status = run(&q, exp(log_time));
    if (status != HS_OK) {
        *q.status = status;
        return NAN;
    }
    return share_of_run(&q, q.depth_m) - q.share;
}

/* Fixed surface: the depth after a reference time scales. */
static hs_status scaled_time(double *time_s, question *q, double carbon_pct) {
    double depth_m = 0;
    hs_status status =
        hs_diffusion_depth(&depth_m, q->given, REFERENCE_S, carbon_pct, q->work, q->err);
    if (status != HS_OK) return status;
    *time_s = REFERENCE_S * (q->depth_m / depth_m) * (q->depth_m / depth_m);
    return HS_OK;
}

/* With a transfer: searched on one mesh, and again on a finer one where the answer needs it. */
static hs_status search_time(double *time_s, question *q) {
    int exact = is_constant(q);
    double found = 0, low = log(TIME_LOW_S), high = log(TIME_HIGH_S);
    q->cells = HS_CARBON_CELLS_USUAL;
    for (size_t tried = 0; tried < q->cells;) {
        tried = q->cells;
        hs_status status =
            hs_root(&found, exact ? time_miss : time_miss_run, q, low, high, exact ? 1e-13 : 1e-6);
        if (status != HS_OK) return HS_E_CONVERGE;
        if (exact) break;
        q->cells = 0;
        status = run(q, exp(found));
        if (status != HS_OK) return status;
    }
    *time_s = exp(found);
    return HS_OK;
}

hs_status hs_diffusion_time(double *time_s, const hs_diffusion *given, double depth_m,
                            double carbon_pct, hs_diffusion_work *work, hs_error *err) {
    question q;
    hs_status status = start(&q, given, work, err), in_run = HS_OK;
    if (status == HS_OK) status = want(&q, carbon_pct);
    if (status != HS_OK) return status;
    int fixed = given->transfer_m_s == 0;
    if (!(depth_m >= 0 && isfinite(depth_m)) || q.share == 1 || (fixed && depth_m == 0))
        return hs_fail(err, HS_E_IMPOSSIBLE,
                       "a depth below the surface and a carbon between core and surface",
                       "no time brings %g %% to %g m", carbon_pct, depth_m);
    q.depth_m = depth_m;
    q.status = &in_run;
    if (fixed) return scaled_time(time_s, &q, carbon_pct);
    hs_status status_of_search = search_time(time_s, &q);
    if (in_run != HS_OK) return in_run;
    if (status_of_search == HS_E_CONVERGE)
        return hs_fail(err, HS_E_CONVERGE, "less depth, or more transfer",
                       "%g %% does not reach %g m in any time worth naming", carbon_pct, depth_m);
    return status_of_search;
}
