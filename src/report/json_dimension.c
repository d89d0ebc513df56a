/* Dimensions and faces of the result as JSON. */
#include "report/json_parts.h"

#include <math.h>

void hs_json_because(hs_json *json, cJSON *to, const hs_term *term, size_t n) {
    cJSON *list = hs_json_list(json, to, "because");
    for (size_t i = 0; i < n; i++) {
        cJSON *item = hs_json_item(json, list);
        hs_json_text(json, item, "term", term[i].term);
        hs_json_mm(json, item, "mm", term[i].value_m);
    }
}

void hs_json_drivers(hs_json *json, cJSON *to, const char *key, const hs_driver *driver, size_t n) {
    cJSON *list = hs_json_list(json, to, key);
    for (size_t i = 0; i < n; i++) {
        cJSON *item = hs_json_item(json, list);
        hs_json_text(json, item, "name", driver[i].name);
        hs_json_number(json, item, "share_pct", driver[i].share_pct);
    }
}

void hs_json_remedies(hs_json *json, cJSON *to, const hs_remedy *remedy, size_t n) {
    cJSON *list = hs_json_list(json, to, "remedies");
    for (size_t i = 0; i < n; i++) {
        cJSON *item = hs_json_item(json, list);
        hs_json_text(json, item, "do", remedy[i].what);
        hs_json_mm(json, item, "gain_mm", remedy[i].gain_m);
        hs_json_text(json, item, "verdict", hs_json_verdict(remedy[i].verdict));
        hs_json_text(json, item, "text", remedy[i].text);
    }
}

static void put_handbook(hs_json *json, cJSON *to, const hs_handbook *h) {
    if (!h->present) {
        hs_json_null(json, to, "handbook");
        return;
    }
    cJSON *object = hs_json_object(json, to, "handbook");
    hs_json_mm(json, object, "value_mm", h->value_m);
    hs_json_text(json, object, "source", h->source);
    hs_json_flag(json, object, "governs", h->governs);
    hs_json_text(json, object, "why", h->why);
}

/* The shape limit as the bench reckons it, H the measured size. */
static void put_bench(hs_json *json, cJSON *to, const hs_result_bench *b) {
    if (!b->present) {
        hs_json_null(json, to, "bench");
        return;
    }
    cJSON *object = hs_json_object(json, to, "bench");
    hs_json_limit(json, object, "clean_from_mm", b->clean_from_m);
    hs_json_limit(json, object, "case_to_mm", b->case_to_m);
    hs_json_number(json, object, "times", b->times);
    hs_json_mm(json, object, "at_most_mm", b->most_m);
}

static void put_pulled(hs_json *json, cJSON *to, const hs_result_pulled *p) {
    if (!p->present) {
        hs_json_null(json, to, "pulled_flat");
        return;
    }
    cJSON *object = hs_json_object(json, to, "pulled_flat");
    hs_json_mm(json, object, "springs_back_mm", p->sprung_m);
    hs_json_mm(json, object, "springs_back_high_mm", p->sprung_high_m);
    hs_json_mm(json, object, "flatness_mm", p->flatness_m > 0 ? p->flatness_m : NAN);
    hs_json_text(json, object, "refused", p->refused);
}

static void put_sides(hs_json *json, cJSON *to, const hs_job *job, size_t index,
                      const hs_result_dimension *d) {
    cJSON *list = hs_json_list(json, to, "sides");
    const size_t *face = job->dimension[index].face;
    for (int k = 0; k < 2 && d->verdict != HS_NONE; k++) {
        if (k == 1 && face[1] == face[0]) break; /* a diameter: both sides are the one face */
        cJSON *item = hs_json_item(json, list);
        hs_json_text(json, item, "face", job->face[face[k]].name);
        hs_json_flag(json, item, "ground", d->side[k].ground);
        hs_json_mm(json, item, "need_mm", d->side[k].need_m);
        hs_json_mm(json, item, "may_mm", d->side[k].may_m);
        hs_json_mm(json, item, "stock_mm", d->side[k].stock_m);
    }
}

static void put_dimension(hs_json *json, cJSON *to, const hs_job *job, size_t index,
                          const hs_result_dimension *d) {
    int none = d->verdict == HS_NONE;
    hs_json_limit(json, to, "finish_low_mm", d->finish_low_m);
    hs_json_limit(json, to, "finish_high_mm", d->finish_high_m);
    static const char *const keys[] = {"need_mm",      "may_mm",        "stock_mm",
                                       "rough_low_mm", "rough_aim_mm",  "rough_high_mm",
                                       "shape_mm",     "shape_high_mm", "shape_limit_mm"};
    const double values[] = {d->need_m,      d->may_m,        d->stock_m,
                             d->rough_low_m, d->rough_aim_m,  d->rough_high_m,
                             d->shape_m,     d->shape_high_m, d->shape_limit_m};
    for (size_t k = 0; k < sizeof values / sizeof *values; k++) {
        if (none)
            hs_json_null(json, to, keys[k]);
        else if (k == 2 || k == 6 || k == 7)
            hs_json_mm(json, to, keys[k], values[k]);
        else
            hs_json_limit(json, to, keys[k], values[k]);
    }
    hs_json_limit(json, to, "shape_limit_middle_mm", none ? NAN : d->shape_limit_middle_m);
    put_bench(json, to, &d->bench);
    put_pulled(json, to, &d->pulled);
    put_sides(json, to, job, index, d);
    hs_json_text(json, to, "verdict", hs_json_verdict(d->verdict));
    hs_json_because(json, to, d->because, d->terms);
    hs_json_drivers(json, to, "need_drivers", d->need_driver, d->need_drivers);
    hs_json_drivers(json, to, "may_drivers", d->may_driver, d->may_drivers);
    put_handbook(json, to, &d->handbook);
    hs_json_remedies(json, to, d->remedy, d->remedies);
    hs_json_text(json, to, "note", d->note);
}

void hs_json_dimensions(hs_json *json, cJSON *to, const hs_job *job, const hs_result *result) {
    cJSON *list = hs_json_list(json, to, "dimensions");
    for (size_t i = 0; i < job->dimensions; i++) {
        cJSON *item = hs_json_item(json, list);
        hs_json_text(json, item, "name", job->dimension[i].name);
        put_dimension(json, item, job, i, &result->dimension[i]);
    }
}

static void put_face(hs_json *json, cJSON *to, const hs_result_face *f) {
    hs_json_mm(json, to, "removal_min_mm", f->removal_min_m);
    hs_json_limit(json, to, "removal_max_mm", f->removal_max_m);
    hs_json_mm(json, to, "clean_up_mm", f->clean_up_m);
    hs_json_mm(json, to, "budget_mm", f->budget_m);
    hs_json_mm(json, to, "split_mm", f->split_m);
    hs_json_mm(json, to, "growth_low_mm", f->growth_low_m);
    hs_json_mm(json, to, "growth_high_mm", f->growth_high_m);
    hs_json_limit(json, to, "case_left_min_mm", f->case_left_min_m);
    hs_json_mm(json, to, "case_left_typical_mm", f->case_left_typical_m);
    hs_json_number(json, to, "hardness_left_HV", f->hardness_left_HV);
    hs_json_number(json, to, "share_of_case_pct", f->share_of_case_pct);
    hs_json_inner_edge(json, to, f);
    hs_json_text(json, to, "drawing", f->drawing);
    hs_json_mm(json, to, "hrc_needs_mm", f->hrc_needs_m);
    cJSON *list = hs_json_list(json, to, "test_with");
    for (int t = 0; t < HS_TESTS; t++)
        if (f->test_with >> t & 1u) hs_json_line(json, list, hs_test_name((hs_hardness_test)t));
    if (f->case_left_min_m > 0) hs_json_line(json, list, "files");
}

void hs_json_faces(hs_json *json, cJSON *to, const hs_job *job, const hs_result *result) {
    cJSON *list = hs_json_list(json, to, "faces");
    for (size_t i = 0; i < job->faces; i++) {
        if (!result->face[i].present) continue;
        cJSON *item = hs_json_item(json, list);
        hs_json_text(json, item, "name", job->face[i].name);
        put_face(json, item, &result->face[i]);
    }
}
