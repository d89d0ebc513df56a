#include "plan/response.h"

#include "constants.h"

#include <math.h>
#include <string.h>

enum { MIDDLE, SLOW, FAST, LEAN, RICH, SLUGGISH, BRISK, RUNS };

/* Level k of the carbon, 0 at the core, 1 at the medium's surface carbon. */
static double level(size_t k) {
    return (double)(k + 1) / HS_LEVELS;
}

/* Deepest place at which the profile still has `carbon_pct`; the profile falls inward. */
static double depth_of(const hs_case_profile *p, double carbon_pct) {
    if (p->carbon_pct[p->n - 1] >= carbon_pct) return p->depth_m[p->n - 1];
    for (size_t i = p->n - 1; i > 0; i--) {
        double deep = p->carbon_pct[i], shallow = p->carbon_pct[i - 1];
        if (shallow < carbon_pct) continue;
        double share = (shallow - carbon_pct) / (shallow - deep);
        return p->depth_m[i - 1] + share * (p->depth_m[i] - p->depth_m[i - 1]);
    }
    return 0;
}

static double richest(const hs_route *route, double position) {
    double best = 0;
    for (size_t i = 0; i < route->heats; i++)
        if (route->heat[i].carburises)
            best = fmax(best, hs_history_surface(&route->heat[i], position));
    return best;
}

void hs_response_spread(double *model_log, double *temp_log, const hs_route *route,
                        const hs_steel *steel) {
    *model_log =
        steel->alloyed ? HS_K_PLAN_DOUBT_DIFFUSIVITY_ALLOYED : HS_K_PLAN_DOUBT_DIFFUSIVITY_PLAIN;
    double bound_K = 0;
    for (size_t i = 0; i < route->heats; i++)
        if (route->heat[i].carburises) bound_K = fmax(bound_K, route->heat[i].bound_K);
    const double carbon_pct = 0.6; /* halfway down a usual case: ln D moves alike all over it */
    hs_diffusivity d = {.model = HS_D_AGREN, .factor = 1};
    double hot = hs_diffusivity_value(&d, carbon_pct, route->hottest_K + bound_K);
    double mid = hs_diffusivity_value(&d, carbon_pct, route->hottest_K);
    *temp_log = hs_draw_share(log(hot / mid));
}

/* ln of the doubt of the surface transfer; 0 where the surface stands at once. */
static double transfer_log(const hs_route *route) {
    for (size_t i = 0; i < route->heats; i++)
        if (route->heat[i].carburises && route->heat[i].transfer_m_s > 0)
            return log(HS_K_PLAN_DOUBT_TRANSFER_FACTOR);
    return 0;
}

hs_status hs_response_make(hs_response *r, const hs_axis *axis, const hs_route *route,
                           const hs_steel *steel, hs_response_extent extent, hs_history_work *work,
                           hs_error *err) {
    static const double positions[RUNS] = {0, 0, 0, -1, 1, 0, 0};
    r->core_pct = steel->mid.C;
    hs_response_spread(&r->model_log, &r->temp_log, route, steel);
    r->heat_log = route->heat_log;
    double two_sigma = 2 * hypot(hypot(r->model_log, r->temp_log), r->heat_log);
    const double factors[RUNS] = {1, exp(-two_sigma), exp(two_sigma), 1, 1, 1, 1};
    for (size_t k = 0; k < 3; k++)
        r->surface_pct[k] = richest(route, (double)k - 1);
    for (size_t k = 0; k < 3; k++)
        r->root[k] = exp(0.5 * two_sigma * ((double)k - 1));
    r->transfer_log = transfer_log(route);
    const double transfer[RUNS] = {[SLUGGISH] = -r->transfer_log, [BRISK] = r->transfer_log};
    size_t runs = extent == HS_RESPONSE_MIDDLE ? 1 : r->transfer_log > 0 ? RUNS : SLUGGISH;
    hs_history_point at = {.core_pct = r->core_pct};
    for (size_t run = 0; run < runs; run++) { /* the middle one first: it chooses the mesh */
        at.diffusivity_factor = factors[run];
        at.surface = positions[run];
        at.transfer_factor = exp(transfer[run]);
        hs_case_profile *profile = run == MIDDLE ? &r->typical : &work->other;
        hs_status status = hs_history_run(profile, axis, route, route->heats, at, work, err);
        if (status != HS_OK) return status;
        if (run == MIDDLE) r->accuracy = work->accuracy;
        at.cells = r->accuracy.cells;
        double surface = richest(route, positions[run]);
        for (size_t k = 0; k < HS_LEVELS; k++)
            r->depth_m[run][k] =
                depth_of(profile, r->core_pct + level(k) * (surface - r->core_pct));
    }
    for (size_t run = runs; run < RUNS; run++) /* not run: as the middle one */
        memcpy(r->depth_m[run], r->depth_m[MIDDLE], sizeof r->depth_m[run]);
    r->end_m = r->typical.depth_m[r->typical.n - 1];
    return HS_OK;
}

/* Lagrange's quadratic through three points. */
static double quadratic(const double x[3], double y0, double y1, double y2, double at) {
    double a = at - x[0], b = at - x[1], c = at - x[2];
    return y0 * b * c / ((x[0] - x[1]) * (x[0] - x[2])) +
           y1 * a * c / ((x[1] - x[0]) * (x[1] - x[2])) +
           y2 * a * b / ((x[2] - x[0]) * (x[2] - x[1]));
}

static double at_level(const double depth_m[HS_LEVELS], double y) {
    double place = y * HS_LEVELS - 1;
    if (place <= 0) return depth_m[0];
    size_t k = (size_t)place;
    if (k + 1 >= HS_LEVELS) return depth_m[HS_LEVELS - 1];
    return depth_m[k] + (place - (double)k) * (depth_m[k + 1] - depth_m[k]);
}

hs_response_draw hs_response_at(const hs_response *r, const hs_steel *steel,
                                const double z[HS_INPUTS]) {
    double log_d = r->model_log * z[HS_IN_DIFFUSIVITY] + r->temp_log * z[HS_IN_TEMP] +
                   r->heat_log * z[HS_IN_HEAT_UP];
    return (hs_response_draw){
        .core_pct = hs_draw_between(steel->low.C, steel->mid.C, steel->high.C, z[HS_IN_CORE]),
        .surface_pct = hs_draw_between(r->surface_pct[0], r->surface_pct[1], r->surface_pct[2],
                                       z[HS_IN_SURFACE]),
        .root = exp(0.5 * log_d),
        .transfer_log = r->transfer_log * hs_draw_share(z[HS_IN_TRANSFER])};
}

double hs_response_depth(const hs_response *r, double carbon_pct, const hs_response_draw *draw) {
    double y = (carbon_pct - draw->core_pct) / (draw->surface_pct - draw->core_pct);
    if (!(y < 1)) return 0;
    if (y <= 0) return r->end_m;
    double middle = at_level(r->depth_m[MIDDLE], y);
    double depth = quadratic(r->root, at_level(r->depth_m[SLOW], y), middle,
                             at_level(r->depth_m[FAST], y), draw->root);
    int has_range = r->surface_pct[2] > r->surface_pct[1] && r->surface_pct[1] > r->surface_pct[0];
    if (has_range && middle > 0)
        depth *= quadratic(r->surface_pct, at_level(r->depth_m[LEAN], y), middle,
                           at_level(r->depth_m[RICH], y), draw->surface_pct) /
                 middle;
    if (r->transfer_log > 0 && middle > 0) {
        const double place[3] = {-r->transfer_log, 0, r->transfer_log};
        depth *= quadratic(place, at_level(r->depth_m[SLUGGISH], y), middle,
                           at_level(r->depth_m[BRISK], y), draw->transfer_log) /
                 middle;
    }
    return fmin(fmax(depth, 0), r->end_m);
}
