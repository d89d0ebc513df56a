/* The parts of the result as JSON, one function each: every one adds its own key to `to`. */
#ifndef HS_REPORT_JSON_PARTS_H
#define HS_REPORT_JSON_PARTS_H

#include "hardskin/plan/result.h"
#include "report/json_put.h"
#include "report/json_words.h"

void hs_json_case(hs_json *json, cJSON *to, const hs_result *result);
void hs_json_outer_edge(hs_json *json, cJSON *to, const hs_result_case *c);
void hs_json_inner_edge(hs_json *json, cJSON *to, const hs_result_face *f);
void hs_json_scale(hs_json *json, cJSON *to, const hs_result *result);
void hs_json_distortion(hs_json *json, cJSON *to, const hs_result *result);
void hs_json_one_quench(hs_json *json, cJSON *to, const hs_result_distortion *distortion);
void hs_json_section(hs_json *json, cJSON *to, const hs_job *job, const hs_result *result);
void hs_json_dimensions(hs_json *json, cJSON *to, const hs_job *job, const hs_result *result);
void hs_json_faces(hs_json *json, cJSON *to, const hs_job *job, const hs_result *result);
void hs_json_blank(hs_json *json, cJSON *to, const hs_result *result);
void hs_json_grind(hs_json *json, cJSON *to, const hs_job *job, const hs_result *result);
void hs_json_descale(hs_json *json, cJSON *to, const hs_result *result);
void hs_json_test_piece(hs_json *json, cJSON *to, const hs_result *result);
void hs_json_confidence(hs_json *json, cJSON *to, const hs_result *result);
void hs_json_measured(hs_json *json, cJSON *to, const hs_job *job, const hs_result *result);
void hs_json_fire(hs_json *json, cJSON *to, const hs_result *result);
void hs_json_put_right(hs_json *json, cJSON *to, const hs_result *result);
void hs_json_cautions(hs_json *json, cJSON *to, const hs_result *result);

/** Terms of a sum under "because", inputs and their shares of a doubt, remedies under "remedies".
 */
void hs_json_because(hs_json *json, cJSON *to, const hs_term *term, size_t n);
void hs_json_drivers(hs_json *json, cJSON *to, const char *key, const hs_driver *driver, size_t n);
void hs_json_remedies(hs_json *json, cJSON *to, const hs_remedy *remedy, size_t n);

#endif
