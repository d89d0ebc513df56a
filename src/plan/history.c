#include "plan/history.h"

#include "constants.h"
#include "model/carbon_check.h"

#include <math.h>

double hs_history_surface(const hs_route_heat *heat, double position) {
    double low = heat->surface_low_pct, mid = heat->surface_pct, high = heat->surface_high_pct;
    return mid + position * (position < 0 ? mid - low : high - mid);
}

static hs_heat heat_of(const hs_route_heat *in, const hs_history_point *at, int both) {
    hs_heat out = {.point = in->point, .n = in->n, .cap_at_acm = 1};
    hs_side side = {.kind = HS_SIDE_CLOSED};
    if (in->carburises) {
        side.kind = in->transfer_m_s > 0 ? HS_SIDE_TRANSFER : HS_SIDE_FIXED;
        side.carbon_pct = hs_history_surface(in, at->surface);
        side.transfer_m_s = at->transfer_factor * in->transfer_m_s;
    }
    out.side[0] = side;
    if (both) out.side[1] = side;
    return out;
}

hs_status hs_history_heat_check(const hs_route_heat *heat, hs_error *err) {
    hs_diffusivity d = {.model = HS_D_AGREN, .factor = 1};
    hs_history_point richest = {.surface = 1, .transfer_factor = 1};
    hs_heat one = heat_of(heat, &richest, 0);
    double carbon_pct;
    return hs_carbon_heat_check(&carbon_pct, &one, &d, err);
}

/* Only as deep as carbon can go, or to the middle of a plate that is alike on both faces. */
static double mesh_reach(const hs_axis *axis, double reach_m) {
    int plate_alike = axis->shape == HS_SLAB && axis->far_exposed;
    double half = axis->far_exposed ? 0.5 * axis->wall_m : axis->wall_m;
    if (axis->shape == HS_CYLINDER) half = axis->size_m;
    return reach_m < half ? reach_m : plate_alike ? half : 0;
}

/* Of a wall that carbon enters from both sides, this face's part ends where carbon is least. */
static void end_at_least(hs_case_profile *profile) {
    size_t least = 0;
    for (size_t i = 1; i < profile->n; i++)
        if (profile->carbon_pct[i] <= profile->carbon_pct[least]) least = i;
    if (least > 0) profile->n = least + 1;
}

hs_status hs_history_run(hs_case_profile *profile, const hs_axis *axis, const hs_route *route,
                         size_t heats, hs_history_point at, hs_history_work *work, hs_error *err) {
    const hs_route_left *left = &route->left;
    hs_diffusivity d = {.model = HS_D_AGREN, .factor = at.diffusivity_factor}, first = d;
    hs_history_point read = at; /* of heats whose case was read */
    if (left->heats > 0) d.factor *= left->speed * left->speed;
    if (left->known) {
        first.factor = read.transfer_factor = 1;
        read.surface = 0;
    }
    for (size_t i = 0; i < heats; i++)
        work->heat[i] = heat_of(&route->heat[i], left->known && i < left->heats ? &read : &at,
                                axis->far_exposed);
    double most_pct = at.core_pct;
    for (size_t i = 0; i < heats; i++)
        most_pct = fmax(most_pct, work->heat[i].side[0].carbon_pct);
    const hs_diffusivity *fastest = first.factor > d.factor ? &first : &d;
    double reach_m = hs_carbon_reach(work->heat, heats, fastest, most_pct);
    if (left->stretch > 1) reach_m *= left->stretch;
    const hs_carbon_course course = {.shape = axis->shape,
                                     .size_m = axis->size_m,
                                     .inner_radius_m = axis->inner_m,
                                     .reach_m = mesh_reach(axis, reach_m),
                                     .core_pct = at.core_pct,
                                     .heat = work->heat,
                                     .heats = heats,
                                     .d = &d,
                                     .left = {left->heats, left->cut_m, left->stretch, &first}};
    hs_carbon_end *end = &work->end;
    hs_carbon_levels levels = hs_carbon_levels_usual(at.core_pct, most_pct);
    hs_status status = at.cells
                           ? hs_carbon_course_run(end, &course, at.cells, err)
                           : hs_carbon_course_refine(end, &work->accuracy, &course, &levels, err);
    if (status != HS_OK) return status;
    hs_case_from_mesh(profile, &end->mesh, end->carbon_pct, end->uptake.surface_pct, 0);
    if (axis->far_exposed && !end->mesh.cut) end_at_least(profile);
    return HS_OK;
}
