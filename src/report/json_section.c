/* Walls of the section and what holes and slots leave of it, as JSON. */
#include "report/json_parts.h"

static const char *kind_of(const hs_feature *feature) {
    return feature->kind == HS_SLOT ? "slot" : "hole";
}

void hs_json_section(hs_json *json, cJSON *to, const hs_job *job, const hs_result *result) {
    const hs_result_section *s = &result->section;
    cJSON *object = hs_json_object(json, to, "section");
    hs_json_mm(json, object, "thickest_mm", s->thick_m);
    hs_json_mm(json, object, "thinnest_mm", s->thin_m);
    hs_json_number(json, object, "thick_thin_ratio", s->thick_m / s->thin_m);
    cJSON *list = hs_json_list(json, object, "left");
    for (size_t i = 0; i < s->lefts; i++) {
        const hs_result_left *left = &s->left[i];
        const hs_feature *feature = &job->feature[left->feature];
        cJSON *item = hs_json_item(json, list);
        hs_json_text(json, item, "is", kind_of(feature));
        hs_json_mm(json, item, "size_mm", feature->size_m);
        if (left->face >= 0)
            hs_json_text(json, item, "through", job->face[left->face].name);
        else
            hs_json_null(json, item, "through");
        hs_json_flag(json, item, "through_assumed", left->guessed);
        hs_json_mm(json, item, "web_mm", left->web_m);
        hs_json_number(json, item, "stiffness_left_pct", 100 * left->stiffness);
        hs_json_flag(json, item, "thin_web", left->thin);
        hs_json_flag(json, item, "weak", left->weak);
    }
}
