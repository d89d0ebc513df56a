/* The measured branch as JSON. The top keys tell of the worst dimension; "dimensions" of each. */
#include "report/json_parts.h"

#include <math.h>

static void put_judged(hs_json *json, cJSON *to, const hs_result_measured_dimension *d) {
    hs_json_text(json, to, "verdict", hs_json_wheel(d->verdict));
    hs_json_mm(json, to, "removal_min_mm", d->removal_min_m);
    hs_json_limit(json, to, "removal_max_mm", d->removal_max_m);
    hs_json_limit(json, to, "case_left_min_mm", d->case_left_min_m);
    cJSON *list = hs_json_list(json, to, "stop_if");
    for (int k = 0; k < 2; k++)
        if (d->stop_if[k][0]) hs_json_line(json, list, d->stop_if[k]);
    hs_json_because(json, to, d->because, d->terms);
    hs_json_remedies(json, to, d->remedy, d->remedies);
}

static void put_dimension(hs_json *json, cJSON *to, const hs_result_measured_dimension *d) {
    int judged = d->verdict != HS_WHEEL_NONE;
    hs_json_limit(json, to, "size_mm", judged ? d->size_m : NAN);
    hs_json_mm(json, to, "shape_mm", judged ? d->shape_m : NAN);
    hs_json_mm(json, to, "shape_high_mm", judged ? d->shape_high_m : NAN);
    hs_json_limit(json, to, "limit_clean_mm", judged ? d->limit_clean_m : NAN);
    hs_json_limit(json, to, "limit_case_mm", judged ? d->limit_case_m : NAN);
    hs_json_limit(json, to, "limit_clean_low_mm", judged ? d->limit_clean_low_m : NAN);
    hs_json_limit(json, to, "limit_case_low_mm", judged ? d->limit_case_low_m : NAN);
    hs_json_limit(json, to, "turn_at_mm", d->turn_at_m);
    hs_json_text(json, to, "note", d->note);
}

/* The dimension of the worst verdict; among equals the one that leaves the least case. */
static const hs_result_measured_dimension *worst_of(const hs_job *job,
                                                    const hs_result_measured *m) {
    const hs_result_measured_dimension *worst = NULL;
    for (size_t i = 0; i < job->dimensions; i++) {
        const hs_result_measured_dimension *d = &m->dimension[i];
        if (!d->present) continue;
        if (!worst || d->verdict > worst->verdict ||
            (d->verdict == worst->verdict && d->case_left_min_m < worst->case_left_min_m))
            worst = d;
    }
    return worst;
}

void hs_json_measured(hs_json *json, cJSON *to, const hs_job *job, const hs_result *result) {
    const hs_result_measured *m = &result->measured;
    const hs_result_measured_dimension none = {
        .removal_min_m = NAN, .removal_max_m = NAN, .case_left_min_m = NAN};
    if (!result->measured_present) {
        hs_json_null(json, to, "measured");
        return;
    }
    const hs_result_measured_dimension *worst = worst_of(job, m);
    cJSON *object = hs_json_object(json, to, "measured");
    put_judged(json, object, worst ? worst : &none);
    hs_json_mm(json, object, "case_mm", m->case_m);
    hs_json_mm(json, object, "case_low_mm", m->case_low_m);
    cJSON *list = hs_json_list(json, object, "dimensions");
    for (size_t i = 0; i < job->dimensions; i++) {
        if (!m->dimension[i].present) continue;
        cJSON *item = hs_json_item(json, list);
        hs_json_text(json, item, "name", job->dimension[i].name);
        put_judged(json, item, &m->dimension[i]);
        put_dimension(json, item, &m->dimension[i]);
    }
}
