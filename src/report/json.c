/* The result as JSON: the top level; the parts stand in json_*.c. */
#include "hardskin/report/report.h"

#include "hardskin/tables/table.h"
#include "report/json_parts.h"

#include <stdio.h>

static void put_head(hs_json *json, cJSON *root, const hs_job *job, const hs_result *result) {
    char hash[24];
    snprintf(hash, sizeof hash, "%016llx", job->hash);
    hs_json_text(json, root, "hardskin", HS_VERSION);
    hs_json_text(json, root, "tables", hs_table_hash());
    hs_json_text(json, root, "sheet", hash);
    hs_json_text(json, root, "job", job->name);
    cJSON *verdict = hs_json_object(json, root, "verdict");
    hs_json_text(json, verdict, "grind", hs_json_verdict(result->grind));
    hs_json_text(json, verdict, "descale", hs_json_clean(result->descale_verdict));
    hs_json_text(json, verdict, "measured", hs_json_wheel(result->measured_verdict));
    cJSON *list = hs_json_list(json, root, "read");
    for (size_t i = 0; i < job->reads; i++) {
        cJSON *item = hs_json_item(json, list);
        hs_json_text(json, item, "pointer", job->read[i].pointer);
        hs_json_text(json, item, "text", job->read[i].text);
        hs_json_number(json, item, "value", job->read[i].value);
        hs_json_text(json, item, "unit", job->read[i].unit);
    }
}

static void put_all(hs_json *json, cJSON *root, const hs_job *job, const hs_result *result) {
    put_head(json, root, job, result);
    hs_json_case(json, root, result);
    hs_json_scale(json, root, result);
    hs_json_distortion(json, root, result);
    hs_json_section(json, root, job, result);
    hs_json_dimensions(json, root, job, result);
    hs_json_faces(json, root, job, result);
    hs_json_blank(json, root, result);
    hs_json_grind(json, root, job, result);
    hs_json_descale(json, root, result);
    hs_json_test_piece(json, root, result);
    hs_json_confidence(json, root, result);
    hs_json_measured(json, root, job, result);
    hs_json_fire(json, root, result);
    hs_json_put_right(json, root, result);
    hs_json_cautions(json, root, result);
}

hs_status hs_report_json(char **out, const hs_job *job, const hs_result *result) {
    hs_json json = {0};
    cJSON *root = cJSON_CreateObject();
    if (!root) return HS_E_MEMORY;
    put_all(&json, root, job, result);
    char *text = json.failed ? NULL : cJSON_Print(root);
    cJSON_Delete(root);
    if (!text) return HS_E_MEMORY;
    *out = text;
    return HS_OK;
}
