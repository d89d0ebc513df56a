#include "plan/harden.h"

#include "constants.h"
#include "hardskin/tables/table.h"
#include "plan/place.h"

#include <math.h>

static const double per_inch = 1 / 0.0254;
static const double middle[HS_INPUTS] = {0};

static hs_quench_range section_in_quench(const hs_chain *chain, double wall_m) {
    const hs_job *job = chain->job;
    const hs_table *table = hs_table_get(HS_TABLE_QUENCH);
    size_t row = job->step[chain->route.quench].medium_row;
    double low = hs_table_number(table, row, HS_QUENCH_GROSSMANN_LOW) * per_inch;
    double high = hs_table_number(table, row, HS_QUENCH_GROSSMANN_HIGH) * per_inch;
    hs_quenched q = {HS_QUENCHED_PLATE, wall_m, low};
    if (job->part.form == HS_BAR) q.shape = HS_QUENCHED_ROUND;
    hs_quench_range range = {q, q, q};
    range.mid.severity_1_m = 0.5 * (low + high);
    range.high.severity_1_m = high;
    return range;
}

static double thinnest_m(const hs_chain *chain) {
    const hs_part *part = &chain->job->part;
    double wall_m = part->length_m;
    if (part->form == HS_PLATE) wall_m = fmin(wall_m, fmin(part->thickness_m, part->width_m));
    if (part->form == HS_BAR) wall_m = part->diameter_m;
    for (size_t i = 0; i < chain->axes.n; i++)
        wall_m = fmin(wall_m, chain->axes.axis[i].wall_m);
    return wall_m;
}

/* The thinnest wall cools the whole section; only the walls of a profile are each their own. */
static double cooling_wall_m(const hs_chain *chain, double wall_m) {
    return chain->job->part.form == HS_PROFILE ? wall_m : fmin(wall_m, thinnest_m(chain));
}

hs_quenched hs_harden_section(const hs_chain *chain) {
    return section_in_quench(chain, thinnest_m(chain)).mid;
}

hs_status hs_harden_core(hs_chain *chain, hs_error *err) {
    hs_quench_range q = section_in_quench(chain, thinnest_m(chain));
    return hs_core_band(&chain->core_HV, &chain->core, &chain->job->part.steel, &q,
                        chain->route.dissolve_K, err);
}

hs_status hs_harden_profile(hs_case_profile *profile, const hs_chain *chain, const hs_axis *axis,
                            hs_error *err) {
    hs_quench_range q = section_in_quench(chain, cooling_wall_m(chain, axis->wall_m));
    return hs_case_harden_in(profile, &chain->hardening, &q.mid, chain->route.dissolve_K, err);
}

/* A limit an earlier face has had is taken over: they cost some hundred hardnesses each. */
static void limit_of(hs_limit *limit, const hs_chain *chain, size_t face, double hardness_HV) {
    const hs_face_chain *own = &chain->face[face];
    for (size_t i = 0; i <= face; i++) {
        const hs_face_chain *f = &chain->face[i];
        if (f->axis == HS_MAX_AXES || f->rate_K_s != own->rate_K_s) continue;
        if (f->wanted.hardness_HV == hardness_HV || f->asked.hardness_HV == hardness_HV) {
            *limit = f->wanted.hardness_HV == hardness_HV ? f->wanted : f->asked;
            return;
        }
    }
    hs_hardening h = chain->hardening;
    h.rate_K_s = own->rate_K_s;
    hs_limit_make(limit, &h, own->rate_bound, hardness_HV);
}

/* Middle depth to a carbon about which cases are counted; the rate changes slowly with it. */
static double usual_depth_m(const hs_chain *chain, const hs_response *response) {
    hs_response_draw draw = hs_response_at(response, &chain->job->part.steel, middle);
    return hs_response_depth(response, HS_K_PLAN_DOUBT_CASE_CARBON, &draw);
}

/* Rates, their doubt and the margin; an earlier face with the same wall has the same. */
static hs_status quench_face(hs_chain *chain, size_t i, hs_error *err) {
    hs_face_chain *out = &chain->face[i];
    const hs_steel *steel = &chain->job->part.steel;
    for (size_t k = 0; k < i; k++) {
        const hs_face_chain *other = &chain->face[k];
        if (other->axis != out->axis || other->wall_m != out->wall_m) continue;
        out->margin = other->margin;
        out->rate_K_s = other->rate_K_s;
        out->surface_rate_K_s = other->surface_rate_K_s;
        out->rate_bound = other->rate_bound;
        return HS_OK;
    }
    double from_K = chain->route.dissolve_K, wall_m = cooling_wall_m(chain, out->wall_m);
    hs_quench_range q = section_in_quench(chain, wall_m);
    double depth_m = fmin(usual_depth_m(chain, &chain->response[out->axis]), 0.5 * wall_m);
    const double place[2] = {1, 1 - depth_m / (0.5 * wall_m)};
    double rate[2];
    hs_quench_rates(rate, place, 2, &q.mid, from_K);
    out->surface_rate_K_s = rate[0];
    out->rate_K_s = rate[1];
    hs_status status = hs_case_margin_band(&out->margin, steel, &q, from_K, err);
    if (status == HS_OK)
        status =
            hs_rate_doubt(&out->rate_bound, steel, &q, HS_K_PLAN_DOUBT_CASE_CARBON, from_K, err);
    return status;
}

static hs_status check_depth(const hs_chain *chain, size_t i, const hs_axis *axis, hs_error *err) {
    const hs_face *face = &chain->job->face[i];
    const hs_face_chain *own = &chain->face[i];
    const hs_response *response = &chain->response[own->axis];
    if (face->limit_HV <= chain->core_HV.mid)
        return hs_fail(err, HS_E_RANGE, "count the case to a higher hardness (\"to\")",
                       "the core reaches %.0f HV, so no case depth to %.0f HV can be told",
                       chain->core_HV.mid, face->limit_HV);
    hs_response_draw draw = hs_response_at(response, &chain->job->part.steel, middle);
    double depth_m = hs_response_depth(response, hs_limit_least(&own->wanted, middle), &draw);
    if (2 * depth_m > HS_K_PLAN_DOUBT_CASE_BOTH_REFUSE * axis->wall_m &&
        (axis->far_exposed || axis->shape == HS_CYLINDER))
        return hs_fail(err, HS_E_THROUGH, "a shorter soak, or a thicker part",
                       "a case of %.2f mm from both sides is more than half of the %.2f mm "
                       "wall behind face %s",
                       depth_m * 1e3, axis->wall_m * 1e3, face->name);
    return HS_OK;
}

hs_status hs_harden_face(hs_chain *chain, size_t i, hs_error *err) {
    const hs_face *face = &chain->job->face[i];
    hs_face_chain *out = &chain->face[i];
    hs_axis axis;
    *out = (hs_face_chain){.axis = chain->axes.of_face[i]};
    if (out->axis == HS_MAX_AXES) return HS_OK;
    hs_status status = hs_axis_of_face(&axis, chain->job, i, err);
    if (status != HS_OK) return status;
    out->wall_m = axis.wall_m;
    status = quench_face(chain, i, err);
    if (status != HS_OK) return hs_at_face(status, face, err);
    limit_of(&out->wanted, chain, i, face->limit_HV);
    limit_of(&out->asked, chain, i, face->hardness_HV > 0 ? face->hardness_HV : face->limit_HV);
    return hs_at_face(check_depth(chain, i, &axis, err), face, err);
}

hs_band hs_harden_margin(const hs_chain *chain) {
    hs_band least = {1, 1, 1};
    int found = 0;
    for (size_t i = 0; i < chain->job->faces; i++) {
        const hs_face_chain *f = &chain->face[i];
        if (f->axis == HS_MAX_AXES || chain->job->face[i].finish != HS_GROUND) continue;
        if (found && f->margin.mid >= least.mid) continue;
        least = f->margin;
        found = 1;
    }
    return least;
}
