/* Case, scale, distortion and confidence of the result as JSON. */
#include "report/json_parts.h"

#include <math.h>

static void put_reading(hs_json *json, cJSON *to, const hs_result_reading *r) {
    if (!r->present) {
        hs_json_null(json, to, "reading");
        return;
    }
    cJSON *object = hs_json_object(json, to, "reading");
    hs_json_flag(json, object, "in_plan", r->plan);
    hs_json_mm(json, object, "read_mm", r->read_m);
    hs_json_mm(json, object, "computed_mm", r->computed_m > 0 ? r->computed_m : NAN);
    hs_json_number(json, object, "factor", r->factor > 0 ? r->factor : NAN);
    hs_json_mm(json, object, "doubt_mm", r->doubt_m);
}

void hs_json_case(hs_json *json, cJSON *to, const hs_result *result) {
    const hs_result_case *c = &result->hard;
    if (!c->present) {
        hs_json_null(json, to, "case");
        return;
    }
    cJSON *object = hs_json_object(json, to, "case");
    hs_json_number(json, object, "limit_HV", c->limit_HV);
    hs_json_mm(json, object, "case_depth_mm", c->depth_m);
    hs_json_mm(json, object, "case_depth_low_mm", c->depth_low_m);
    hs_json_mm(json, object, "total_case_mm", c->total_m);
    hs_json_mm(json, object, "total_case_high_mm", c->total_high_m);
    hs_json_number(json, object, "surface_carbon_pct", c->surface_carbon_pct);
    hs_json_number(json, object, "surface_HV", c->surface_HV);
    hs_json_number(json, object, "surface_HRC", c->surface_HRC);
    hs_json_number(json, object, "core_HV", c->core_HV);
    hs_json_number(json, object, "core_low_HV", c->core_low_HV);
    hs_json_number(json, object, "core_high_HV", c->core_high_HV);
    hs_json_number(json, object, "core_martensite_pct", c->core_martensite_pct);
    hs_json_number(json, object, "core_bainite_pct", c->core_bainite_pct);
    hs_json_number(json, object, "hardening_margin_low", c->margin_low);
    hs_json_number(json, object, "hardening_margin", c->margin);
    hs_json_number(json, object, "hardening_margin_high", c->margin_high);
    hs_json_number(json, object, "retained_austenite_pct", c->retained_austenite_pct);
    hs_json_mm(json, object, "soft_rim_mm", c->soft_rim_m);
    hs_json_mm(json, object, "effective_case_mm", c->effective_m);
    hs_json_number(json, object, "hardness_3_depths_down_HV", c->deep_HV);
    hs_json_text(json, object, "drawing", c->drawing);
    put_reading(json, object, &c->reading);
    hs_json_outer_edge(json, object, c);
    cJSON *list = hs_json_list(json, object, "profile");
    for (size_t i = 0; i < c->points; i++) {
        cJSON *item = hs_json_item(json, list);
        hs_json_mm(json, item, "depth_mm", c->profile[i].depth_m);
        hs_json_number(json, item, "carbon_pct", c->profile[i].carbon_pct);
        hs_json_number(json, item, "hardness_HV", c->profile[i].hardness_HV);
    }
}

static void put_heats(hs_json *json, cJSON *to, const hs_result_scale *s) {
    cJSON *list = hs_json_list(json, to, "heats");
    for (size_t i = 0; i < s->heats; i++) {
        const hs_result_heat *h = &s->heat[i];
        cJSON *item = hs_json_item(json, list);
        hs_json_number(json, item, "step", (double)h->step);
        hs_json_mm(json, item, "lost_mm", h->lost_m);
        hs_json_mm(json, item, "lost_low_mm", h->lost_low_m);
        hs_json_mm(json, item, "lost_high_mm", h->lost_high_m);
        hs_json_mm(json, item, "scale_mm", h->scale_m);
        hs_json_mm(json, item, "soft_rim_mm", h->soft_rim_m);
        hs_json_mm(json, item, "depth90_mm", h->depth90_m);
        hs_json_flag(json, item, "oxygen_given", h->film);
    }
}

static void put_holes(hs_json *json, cJSON *to, const hs_result_scale *s) {
    cJSON *list = hs_json_list(json, to, "holes");
    for (size_t i = 0; i < s->holes; i++) {
        const hs_result_hole *h = &s->hole[i];
        cJSON *item = hs_json_item(json, list);
        hs_json_number(json, item, "feature", (double)h->feature);
        hs_json_mm(json, item, "open_mm", h->open_m);
        hs_json_mm(json, item, "open_least_mm", h->open_least_m);
        hs_json_mm(json, item, "bare_mm", h->bare_m);
        hs_json_mm(json, item, "bare_most_mm", h->bare_most_m);
        hs_json_mm(json, item, "thread_closes_mm", h->thread_m);
        hs_json_mm(json, item, "thread_closes_most_mm", h->thread_most_m);
        hs_json_flag(json, item, "closes", h->closes);
    }
}

void hs_json_scale(hs_json *json, cJSON *to, const hs_result *result) {
    const hs_result_scale *s = &result->scale;
    cJSON *object = hs_json_object(json, to, "scale");
    hs_json_mm(json, object, "lost_mm", s->lost_m);
    hs_json_mm(json, object, "lost_low_mm", s->lost_low_m);
    hs_json_mm(json, object, "lost_high_mm", s->lost_high_m);
    hs_json_mm(json, object, "scale_mm", s->scale_m);
    hs_json_number(json, object, "mass_g", s->mass_kg * 1e3);
    put_heats(json, object, s);
    put_holes(json, object, s);
}

void hs_json_distortion(hs_json *json, cJSON *to, const hs_result *result) {
    const hs_result_distortion *d = &result->distortion;
    cJSON *object = hs_json_object(json, to, "distortion");
    hs_json_mm(json, object, "bow_mm", d->bow_m);
    hs_json_mm(json, object, "bow_high_mm", d->bow_high_m);
    hs_json_mm(json, object, "growth_mm", d->growth_m);
    hs_json_mm(json, object, "quench_mm", d->quench_m);
    hs_json_mm(json, object, "quench_high_mm", d->quench_high_m);
    hs_json_mm(json, object, "plain_rule_mm", d->plain_m);
    hs_json_number(json, object, "skin_stress_MPa", 1e-6 * d->skin_Pa);
    hs_json_because(json, object, d->because, d->terms);
    hs_json_one_quench(json, object, d);
}

void hs_json_confidence(hs_json *json, cJSON *to, const hs_result *result) {
    const hs_result_confidence *c = &result->confidence;
    if (c->samples == 0) {
        hs_json_null(json, to, "confidence");
        return;
    }
    cJSON *object = hs_json_object(json, to, "confidence");
    hs_json_number(json, object, "level_pct", 100 * c->level);
    hs_json_number(json, object, "reached_pct", 100 * c->reached);
    hs_json_flag(json, object, "at_least", c->at_least);
    hs_json_number(json, object, "reached_batch_pct", 100 * c->reached_batch);
    hs_json_flag(json, object, "batch_at_least", c->batch_at_least);
    hs_json_number(json, object, "batch_error_pct", 100 * c->batch_error);
    hs_json_number(json, object, "batch_apart_pct", 100 * c->batch_apart);
    hs_json_number(json, object, "samples", (double)c->samples);
    hs_json_mm(json, object, "quantile_error_mm", c->error_m > 0 ? c->error_m : NAN);
    hs_json_mm(json, object, "quantile_error_asked_mm", c->error_asked_m);
    hs_json_drivers(json, object, "drivers", c->driver, c->drivers);
}
