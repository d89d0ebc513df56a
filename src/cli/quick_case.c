/* case: what a soak, a quench and a temper make of a surface. */
#include "cli/quick_case.h"

#include "cli/quick_lookup.h"
#include "cli/quick_steel.h"
#include "constants.h"
#include "hardskin/units/hardness.h"

#include <math.h>

static const double per_inch = 1 / .0254;

/* Surface carbon as said, or as the packing gives it. */
static hs_status read_surface(quick_carburising *c, quick_answer *answer, const quick_value *v,
                              hs_error *err) {
    if (!v[CASE_SURFACE].text == !v[CASE_IN].text)
        return hs_fail(err, HS_E_ARGUMENT, "surface=\"0.9 %\" or in=\"charcoal with carbonate\"",
                       "give either surface or in");
    c->side.kind = v[CASE_TRANSFER].text ? HS_SIDE_TRANSFER : HS_SIDE_FIXED;
    c->side.transfer_m_s = v[CASE_TRANSFER].text ? v[CASE_TRANSFER].q.value : 0;
    if (v[CASE_SURFACE].text) {
        double ratio = v[CASE_TRANSFER].text ? hs_gunnarson_ratio(&c->steel) : 1;
        c->side.carbon_pct = v[CASE_SURFACE].q.value / ratio;
        if (fabs(ratio - 1) > .005)
            quick_note(answer,
                       "a carbon potential: Gunnarson's factor %.3f brings this steel to "
                       "%.4g %%",
                       ratio, c->side.carbon_pct);
        return HS_OK;
    }
    size_t row = 0;
    hs_status status = quick_row(&row, HS_TABLE_SURFACE_CARBON, v[CASE_IN].text, "in", err);
    if (status == HS_OK)
        c->side.carbon_pct =
            hs_table_number(hs_table_get(HS_TABLE_SURFACE_CARBON), row, HS_SURFACE_CARBON_VALUE);
    return status;
}

/* Thickness and quench only count together: a part said to be thick anyhow hardens fully. */
static hs_status read_quench(quick_carburising *c, const quick_value *v, hs_error *err) {
    const hs_table *t = hs_table_get(HS_TABLE_QUENCH);
    size_t row = 0;
    hs_status status = quick_row(&row, HS_TABLE_QUENCH, v[CASE_QUENCH].text, "quench", err);
    if (status != HS_OK) return status;
    c->thickness_m = v[CASE_THICKNESS].text ? v[CASE_THICKNESS].q.value : 0;
    if (v[CASE_THICKNESS].text && !(c->thickness_m > 0))
        return hs_fail(err, HS_E_IMPOSSIBLE, "thickness=\"20 mm\"", "a part has some thickness");
    double low = per_inch * hs_table_number(t, row, HS_QUENCH_GROSSMANN_LOW);
    double high = per_inch * hs_table_number(t, row, HS_QUENCH_GROSSMANN_HIGH);
    const hs_quenched plate = {HS_QUENCHED_PLATE, c->thickness_m, low};
    c->quench = (hs_quench_range){plate, plate, plate};
    c->quench.mid.severity_1_m = 0.5 * (low + high);
    c->quench.high.severity_1_m = high;
    return HS_OK;
}

hs_status quick_carburising_read(quick_carburising *c, quick_answer *answer, const quick_value *v,
                                 hs_error *err) {
    if (!v[CASE_STEEL].text && !v[CASE_CORE].text)
        return hs_fail(err, HS_E_ARGUMENT, "steel=C15E or core=\"0.18 %\"",
                       "this sum needs a steel or a core carbon");
    *c = (quick_carburising){.at_K = v[CASE_AT].q.value, .diffusivity = 1};
    hs_status status = quick_steel(&c->steel, answer, v[CASE_STEEL].text,
                                   v[CASE_CORE].text ? v[CASE_CORE].q.value : -1, err);
    if (status == HS_OK) status = read_surface(c, answer, v, err);
    if (status == HS_OK) status = read_quench(c, v, err);
    if (status != HS_OK) return status;
    if (v[CASE_LIMIT].q.scale == HS_HV)
        c->limit_HV = v[CASE_LIMIT].q.value;
    else
        status = hs_hardness_convert(&c->limit_HV, v[CASE_LIMIT].q.value, v[CASE_LIMIT].q.scale,
                                     HS_HV, err);
    c->temper = (hs_temper){v[CASE_TEMPER].q.value, v[CASE_TEMPER_FOR].q.value};
    c->tempers = v[CASE_TEMPER].text ? 1 : 0;
    c->dissolve_K = v[CASE_REHEAT].text ? v[CASE_REHEAT].q.value : c->at_K;
    return status;
}

/* A plate alike on both faces is reckoned to its middle. */
static hs_status soak(quick_case *out, const quick_carburising *c, double time_s, hs_error *err) {
    hs_diffusivity d = {.model = HS_D_AGREN, .factor = c->diffusivity};
    hs_heat_point hold[2] = {{0, c->at_K}, {time_s, c->at_K}};
    hs_heat heat = {
        .point = hold, .n = 2, .side = {c->side, {.kind = HS_SIDE_CLOSED}}, .cap_at_acm = 1};
    double reach_m = hs_carbon_reach(&heat, 1, &d, fmax(c->side.carbon_pct, c->steel.C));
    double half_m = c->thickness_m > 0 ? c->thickness_m / 2 : 2 * reach_m;
    const hs_carbon_course course = {.shape = HS_SLAB,
                                     .size_m = half_m,
                                     .reach_m = fmin(reach_m, half_m),
                                     .core_pct = c->steel.C,
                                     .heat = &heat,
                                     .heats = 1,
                                     .d = &d};
    double rich_pct = fmin(c->side.carbon_pct, fmax(hs_acm_pct(c->at_K), 0));
    hs_carbon_levels levels = hs_carbon_levels_usual(c->steel.C, rich_pct);
    hs_carbon_end end;
    hs_status status = hs_carbon_course_refine(&end, &out->accuracy, &course, &levels, err);
    if (status != HS_OK) return status;
    double face_pct[2] = {end.uptake.surface_pct[0], end.carbon_pct[end.mesh.n - 1]};
    hs_case_from_mesh(&out->profile, &end.mesh, end.carbon_pct, face_pct, 0);
    out->surface_pct = face_pct[0];
    return HS_OK;
}

hs_status quick_case_depth(quick_case *out, const quick_carburising *c, double time_s,
                           hs_error *err) {
    static const double surface = 1;
    hs_hardening h = {.steel = c->steel,
                      .dissolve_K = c->dissolve_K,
                      .quench_to_K = 293.15,
                      .temper = &c->temper,
                      .tempers = c->tempers};
    hs_status status = hs_hardening_check(&h, err);
    if (status == HS_OK) status = soak(out, c, time_s, err);
    if (status == HS_OK && c->thickness_m > 0)
        status = hs_case_harden_in(&out->profile, &h, &c->quench.mid, c->dissolve_K, err);
    else if (status == HS_OK)
        status = hs_case_harden(&out->profile, &h, err);
    if (status == HS_OK) status = hs_case_depth(&out->depth_m, &out->profile, c->limit_HV, err);
    if (status != HS_OK) return status;
    out->surface_HV = out->profile.hardness_HV[0];
    if (c->thickness_m > 0)
        hs_quench_rates(&h.rate_K_s, &surface, 1, &c->quench.mid, c->dissolve_K);
    hs_hardened_HV(&h, out->surface_pct, &out->retained);
    return HS_OK;
}
