#include "plan/chain.h"
#include "plan/harden.h"
#include "plan/place.h"

#include "constants.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static hs_status run_axes(hs_chain *chain, hs_response_extent extent, hs_history_work *work,
                          hs_error *err) {
    for (size_t i = 0; i < chain->axes.n; i++) {
        hs_response *r = &chain->response[i];
        hs_status status = hs_response_make(r, &chain->axes.axis[i], &chain->route,
                                            &chain->job->part.steel, extent, work, err);
        if (status == HS_OK)
            status = hs_harden_profile(&r->typical, chain, &chain->axes.axis[i], err);
        if (status != HS_OK) return status;
    }
    return HS_OK;
}

/* What stands at the faces' edges hangs on the shape and the carbon, not on the quench. */
static hs_status find_edges(hs_chain *chain, hs_error *err) {
    static const double middle[HS_INPUTS] = {0};
    const hs_job *job = chain->job;
    for (size_t i = 0; i < job->faces; i++) {
        chain->edge[i] = (hs_face_edge){0};
        if (chain->face[i].axis == HS_MAX_AXES || job->face[i].finish != HS_GROUND ||
            !hs_face_asks(&job->face[i]))
            continue;
        const hs_response *r = &chain->response[chain->face[i].axis];
        hs_response_draw draw = hs_response_at(r, &job->part.steel, middle);
        double surface =
            (r->typical.carbon_pct[0] - r->core_pct) / (draw.surface_pct - r->core_pct);
        double lag = fmin(surface * surface, 1);
        double flat_m = hs_response_depth(r, hs_limit_least(&chain->face[i].wanted, middle), &draw);
        hs_status status = hs_face_edge_find(&chain->edge[i], job, i, flat_m, lag, err);
        if (status != HS_OK) return hs_at_face(status, &job->face[i], err);
    }
    return HS_OK;
}

static hs_status start(hs_chain *chain, const hs_route *like, const hs_job *job, hs_error *err) {
    chain->job = job;
    chain->reading = (hs_reading){0};
    hs_status status = hs_route_read_like(&chain->route, like, job, err);
    if (status == HS_OK) status = hs_axes_of(&chain->axes, job, err);
    if (status != HS_OK) return status;
    chain->hardening = (hs_hardening){.steel = job->part.steel.mid,
                                      .dissolve_K = chain->route.dissolve_K,
                                      .quench_to_K = HS_K_PLAN_DOUBT_QUENCH_BATH,
                                      .temper = chain->route.temper,
                                      .tempers = chain->route.tempers};
    return HS_OK;
}

static const hs_case_profile *typical_of(const hs_chain *chain) {
    static const hs_case_profile none = {0};
    return chain->axes.n > 0 ? &chain->response[0].typical : &none;
}

static hs_status check_bend(const hs_chain *chain, hs_chain_work *work, hs_error *err) {
    hs_quenched quenched = hs_harden_section(chain);
    hs_status status =
        hs_bend_check(chain->job, &chain->route, typical_of(chain), &quenched, &work->bend, err);
    if (status == HS_E_RANGE && err) snprintf(err->pointer, sizeof err->pointer, "/part");
    return status;
}

static hs_status bend(hs_chain *chain, const hs_chain *base, int coarse, hs_chain_work *work,
                      hs_error *err) {
    hs_quenched quenched = hs_harden_section(chain);
    return hs_warp_make(&chain->warp, base ? &base->warp.bend : NULL, chain->job, &chain->route,
                        typical_of(chain), &quenched, coarse, &work->bend, err);
}

/* A case that is asked for and surely does not harden: no window to look for. */
static int stays_soft(const hs_chain *chain) {
    for (size_t i = 0; i < chain->job->faces; i++) {
        const hs_face_chain *f = &chain->face[i];
        const hs_face *face = &chain->job->face[i];
        if (f->axis != HS_MAX_AXES && face->finish == HS_GROUND && hs_face_asks(face) &&
            f->margin.high < 1)
            return 1;
    }
    return 0;
}

static hs_status harden(hs_chain *chain, hs_error *err) {
    const hs_job *job = chain->job;
    hs_status status = hs_harden_core(chain, err);
    for (size_t i = 0; status == HS_OK && i < job->faces; i++)
        status = hs_harden_face(chain, i, err);
    if (status != HS_OK) return status;
    double surface_pct =
        chain->axes.n > 0 ? chain->response[0].typical.carbon_pct[0] : job->part.steel.mid.C;
    return hs_loss_make(&chain->loss, job, &chain->route, surface_pct, err);
}

/* With a base it is one of many in a search: coarse. */
static hs_status finish(hs_chain *chain, const hs_chain *base, hs_chain_work *work, hs_error *err) {
    hs_status status = harden(chain, err);
    if (status == HS_OK && chain->route.left.heats > 0) hs_loss_since(&chain->loss, &base->loss);
    if (status == HS_OK && base && base != chain && stays_soft(chain))
        status = hs_fail(err, HS_E_RANGE, "a stronger quench", "the case does not harden");
    return status == HS_OK ? bend(chain, base, base != NULL, work, err) : status;
}

hs_status hs_chain_whole(hs_chain *chain, hs_chain_work *work, hs_error *err) {
    return chain->warp.bend.coarse ? bend(chain, NULL, 0, work, err) : HS_OK;
}

static hs_status fire(hs_chain *chain, const hs_chain *base, const hs_job *job,
                      const hs_route_left *left, hs_chain_work *work, hs_error *err) {
    hs_status status = start(chain, NULL, job, err);
    if (left) chain->route.left = *left;
    if (status == HS_OK) status = run_axes(chain, HS_RESPONSE_WHOLE, &work->history, err);
    if (status == HS_OK) status = finish(chain, base, work, err);
    return status == HS_OK ? find_edges(chain, err) : status;
}

hs_status hs_chain_fire(hs_chain *chain, const hs_chain *base, const hs_job *job,
                        hs_chain_work *work, hs_error *err) {
    return fire(chain, base, job, NULL, work, err);
}

hs_status hs_chain_recase(hs_chain *chain, const hs_chain *base, const hs_job *job,
                          const hs_route_left *left, hs_chain_work *work, hs_error *err) {
    return fire(chain, base, job, left, work, err);
}

hs_status hs_chain_carbon(hs_chain *chain, const hs_job *job, hs_response_extent extent,
                          hs_chain_work *work, hs_error *err) {
    work->bend.known = 0;
    hs_status status = start(chain, NULL, job, err);
    if (status == HS_OK) status = run_axes(chain, extent, &work->history, err);
    if (status == HS_OK) status = harden(chain, err);
    if (status == HS_OK) status = find_edges(chain, err);
    return status == HS_OK ? check_bend(chain, work, err) : status;
}

hs_status hs_chain_bend(hs_chain *chain, hs_chain_work *work, hs_error *err) {
    return bend(chain, NULL, 0, work, err);
}

hs_status hs_chain_make(hs_chain *chain, const hs_job *job, hs_chain_work *work, hs_error *err) {
    hs_status status = hs_chain_carbon(chain, job, HS_RESPONSE_WHOLE, work, err);
    return status == HS_OK ? hs_chain_bend(chain, work, err) : status;
}

hs_status hs_chain_again(hs_chain *chain, const hs_chain *base, const hs_job *job,
                         hs_chain_work *work, hs_error *err) {
    const hs_route *like = base == chain ? NULL : &base->route;
    hs_status status = start(chain, like, job, err);
    if (status != HS_OK) return status;
    for (size_t i = 0; i < base->axes.n; i++)
        chain->response[i] = base->response[i];
    memcpy(chain->edge, base->edge, sizeof chain->edge);
    return finish(chain, base, work, err);
}

void hs_chain_draw_own(hs_part_draw *d, const hs_chain *chain, const double z[HS_INPUTS]) {
    d->z = z;
    d->lost_m = d->scale_m + hs_loss_taken(&chain->loss, z);
    hs_warp_bow(&d->bow_x_m, &d->bow_y_m, &chain->warp, z);
    d->set_up_m = chain->job->shop.setup_error_m * fabs(hs_draw_share(z[HS_IN_SETUP]));
    d->scatter_m = HS_K_PLAN_DOUBT_PACK_SCATTER * hs_draw_share(z[HS_IN_PACK]);
}

hs_part_draw hs_chain_draw(const hs_chain *chain, const double z[HS_INPUTS]) {
    hs_part_draw d = {0};
    if (chain->axes.n > 0)
        d.carbon = hs_response_at(&chain->response[0], &chain->job->part.steel, z);
    d.scale_m = hs_loss_metal(&chain->loss, chain->job->steps, z);
    hs_chain_draw_own(&d, chain, z);
    return d;
}

int hs_face_asks(const hs_face *face) {
    return face->case_m > 0 || face->hardness_HV > 0;
}

/* Of a face with nothing asked there is no case to keep. What ends its stock is sense: the whole
 * case, carbon and all, or what nobody leaves more of, and never the middle of the wall. */
static double free_budget(const hs_chain *chain, size_t face, const hs_part_draw *draw) {
    const hs_face_chain *f = &chain->face[face];
    double total_m =
        hs_response_depth(&chain->response[f->axis],
                          draw->carbon.core_pct + HS_K_AUSTENITE_TOTAL_CASE, &draw->carbon);
    return fmax(total_m, fmin(HS_K_PLAN_DOUBT_FREE_STOCK, 0.5 * f->wall_m));
}

/* Depth of the flat without the scatter of the load. */
static double flat_to(const hs_chain *chain, size_t face, const hs_limit *limit,
                      const hs_part_draw *draw) {
    const hs_response *r = &chain->response[chain->face[face].axis];
    if (chain->face[face].margin.high < 1) return 0;
    return chain->reading.plan
               ? hs_reading_depth(&chain->reading, r, &chain->job->part.steel, limit, draw->z)
               : hs_response_depth(r, hs_limit_least(limit, draw->z), &draw->carbon);
}

static double scattered(double flat_m, const hs_part_draw *draw) {
    return flat_m > 0 ? fmax(0, flat_m + draw->scatter_m) : 0;
}

static double level_of(const hs_limit *limit, const hs_part_draw *draw) {
    const hs_response_draw *c = &draw->carbon;
    return (hs_limit_least(limit, draw->z) - c->core_pct) / (c->surface_pct - c->core_pct);
}

/* Soft rim, and how deep austenite softens the surface. */
static void soften(hs_face_draw *out, const hs_chain *chain, size_t face,
                   const hs_part_draw *draw) {
    const hs_face_chain *f = &chain->face[face];
    out->rim_m = hs_loss_rim(&chain->loss, hs_limit_least(&f->asked, draw->z), draw->z);
    double most = hs_limit_most(&f->asked, draw->z);
    if (most < draw->carbon.surface_pct)
        out->austenite_m = hs_response_depth(&chain->response[f->axis], most, &draw->carbon);
}

hs_face_draw hs_chain_face_draw(const hs_chain *chain, size_t face, const hs_part_draw *draw) {
    const hs_face *f = &chain->job->face[face];
    const hs_face_chain *c = &chain->face[face];
    hs_face_draw out = {.steep = 1,
                        .marks_m = HS_K_PLAN_DOUBT_MACHINED_LAYER +
                                   HS_K_PLAN_DOUBT_PIT_SHARE * draw->scale_m};
    if (c->axis == HS_MAX_AXES) return out;
    double level = level_of(&c->wanted, draw);
    out.wanted_m = flat_to(chain, face, &c->wanted, draw);
    out.wanted_share = hs_face_edge_share(&chain->edge[face], level);
    out.steep = hs_face_edge_steep(&chain->edge[face], level);
    if (f->finish != HS_GROUND) return out;
    if (hs_face_asks(f))
        soften(&out, chain, face, draw);
    else
        out.free_m = free_budget(chain, face, draw);
    if (!(f->hardness_HV > 0)) return out;
    out.asked_m = flat_to(chain, face, &c->asked, draw);
    out.asked_share = hs_face_edge_share(&chain->edge[face], level_of(&c->asked, draw));
    return out;
}

/* c: soft rim, surface softened by austenite, or the marks of the cut and of the scale. */
static double clean_up(const hs_face_draw *a, const hs_part_draw *draw) {
    double soft_m = a->austenite_m > 0 ? fmax(a->rim_m, a->austenite_m - draw->lost_m) : a->rim_m;
    return fmax(a->marks_m, soft_m);
}

hs_trial hs_chain_trial_of(const hs_chain *chain, size_t face, const hs_face_draw *a,
                           double growth_m, const hs_part_draw *draw) {
    const hs_face *f = &chain->job->face[face];
    hs_trial t = {.steep = a->steep,
                  .sum = {.ground = f->finish == HS_GROUND,
                          .split_m = draw->set_up_m,
                          .lost_low_m = draw->lost_m,
                          .lost_high_m = draw->lost_m,
                          .growth_low_m = growth_m,
                          .growth_high_m = growth_m}};
    if (chain->face[face].axis == HS_MAX_AXES) {
        t.sum.clean_up_m = clean_up(a, draw);
        t.sum.budget_m = INFINITY; /* no case in it, none to keep */
        return t;
    }
    t.flat_m = scattered(a->wanted_m, draw);
    t.case_m = t.flat_m * a->wanted_share;
    if (!t.sum.ground) return t;
    t.sum.clean_up_m = clean_up(a, draw);
    t.sum.budget_m = hs_face_asks(f) ? t.case_m - f->case_m : a->free_m;
    if (f->hardness_HV > 0)
        t.sum.budget_m = fmin(t.sum.budget_m, scattered(a->asked_m, draw) * a->asked_share);
    return t;
}

hs_trial hs_chain_trial(const hs_chain *chain, size_t face, double growth_m,
                        const hs_part_draw *draw) {
    hs_face_draw alike = hs_chain_face_draw(chain, face, draw);
    return hs_chain_trial_of(chain, face, &alike, growth_m, draw);
}

double hs_chain_hard_to(const hs_chain *chain, size_t face, const hs_part_draw *draw) {
    const hs_limit *asked = &chain->face[face].asked;
    return scattered(flat_to(chain, face, asked, draw), draw) *
           hs_chain_edge_share(chain, face, asked, draw);
}

double hs_chain_edge_share(const hs_chain *chain, size_t face, const hs_limit *limit,
                           const hs_part_draw *draw) {
    return hs_face_edge_share(&chain->edge[face], level_of(limit, draw));
}

double hs_chain_as_flat(const hs_chain *chain, size_t face, double depth_m) {
    const hs_face_edge *edge = &chain->edge[face];
    if (!(edge->angle_rad > 0)) return depth_m;
    const hs_response *r = &chain->response[chain->face[face].axis];
    const hs_case_profile *p = &r->typical;
    double low_m = depth_m, high_m = p->depth_m[p->n - 1];
    for (int i = 0; i < 40; i++) { /* the share falls with the carbon: depth rises with depth */
        double mid_m = 0.5 * (low_m + high_m);
        double y = (hs_case_carbon_at(p, mid_m) - r->core_pct) / (r->surface_pct[1] - r->core_pct);
        *(mid_m * hs_face_edge_share(edge, y) < depth_m ? &low_m : &high_m) = mid_m;
    }
    return high_m;
}

double hs_chain_depth_to(const hs_chain *chain, size_t face, double limit_HV) {
    static const double middle[HS_INPUTS] = {0};
    const hs_face_chain *f = &chain->face[face];
    const hs_response *r = &chain->response[f->axis];
    hs_limit limit;
    hs_hardening h = chain->hardening;
    h.rate_K_s = f->rate_K_s;
    hs_limit_make(&limit, &h, f->rate_bound, limit_HV);
    hs_response_draw draw = hs_response_at(r, &chain->job->part.steel, middle);
    double depth_m = hs_response_depth(r, hs_limit_least(&limit, middle), &draw);
    return chain->reading.plan && chain->reading.factor > 0 ? chain->reading.factor * depth_m
                                                            : depth_m;
}

double hs_chain_surface_HV(const hs_chain *chain, size_t steps) {
    int quenched = 0; /* a heat above the transformation makes it soft again */
    for (size_t i = 0; i < steps; i++) {
        hs_step_kind kind = chain->job->step[i].kind;
        if (kind == HS_QUENCH) quenched = 1;
        if (kind == HS_CARBURISE || kind == HS_REHEAT) quenched = 0;
    }
    if (!quenched || chain->axes.n == 0) return NAN;
    /* A case that hardens only in part is hard enough to crack: it counts as hard all the same. */
    hs_temper temper[HS_MAX_TEMPERS];
    hs_hardening h = chain->hardening;
    h.temper = temper;
    h.tempers = hs_route_tempers_before(temper, chain->job, steps);
    return hs_hardened_HV(&h, chain->response[0].typical.carbon_pct[0], NULL);
}
