/* What is done at the bench, as JSON: blank, grinding, descaling, test piece. */
#include "hardskin/tables/table.h"
#include "report/json_parts.h"

#include "constants.h"

#include <math.h>

void hs_json_blank(hs_json *json, cJSON *to, const hs_result *result) {
    const hs_result_blank *b = &result->blank;
    if (!b->present) {
        hs_json_null(json, to, "blank");
        return;
    }
    cJSON *object = hs_json_object(json, to, "blank");
    hs_json_text(json, object, "form", b->form);
    hs_json_text(json, object, "size", b->size);
    hs_json_text(json, object, "standard", b->standard);
    hs_json_mm(json, object, "rolled_skin_mm", b->rolled_skin_m);
    hs_json_mm(json, object, "straightness_mm", b->straightness_m);
    hs_json_mm(json, object, "saw_length_mm", b->saw_length_m);
    hs_json_text(json, object, "why", b->why);
}

void hs_json_grind(hs_json *json, cJSON *to, const hs_job *job, const hs_result *result) {
    const hs_result_grind *g = &result->grind_plan;
    if (g->steps == 0) {
        hs_json_null(json, to, "grind");
        return;
    }
    cJSON *object = hs_json_object(json, to, "grind");
    cJSON *list = hs_json_list(json, object, "order");
    for (size_t i = 0; i < g->steps; i++) {
        const hs_grind_step *s = &g->order[i];
        cJSON *item = hs_json_item(json, list);
        hs_json_text(json, item, "step", s->what);
        if (s->face >= 0 && (size_t)s->face < job->faces)
            hs_json_text(json, item, "face", job->face[s->face].name);
        else
            hs_json_null(json, item, "face");
        hs_json_limit(json, item, "to_mm", s->to_m);
        hs_json_number(json, item, "passes", s->passes > 0 ? s->passes : NAN);
        hs_json_text(json, item, "stop_if", s->stop_if);
    }
    list = hs_json_list(json, object, "care");
    for (size_t i = 0; i < g->cares; i++)
        hs_json_line(json, list, g->care[i]);
    hs_json_number(json, object, "strokes", g->strokes);
    hs_json_number(json, object, "time_min", g->time_s / 60);
    hs_json_text(json, object, "note", g->note);
}

void hs_json_test_piece(hs_json *json, cJSON *to, const hs_result *result) {
    const hs_result_test_piece *t = &result->test_piece;
    if (!(t->diameter_m > 0) && !t->text[0]) {
        hs_json_null(json, to, "test_piece");
        return;
    }
    cJSON *object = hs_json_object(json, to, "test_piece");
    hs_json_flag(json, object, "stated", t->stated);
    hs_json_mm(json, object, "diameter_mm", t->diameter_m);
    hs_json_mm(json, object, "length_mm", t->length_m);
    hs_json_text(json, object, "place", t->place);
    hs_json_mm(json, object, "case_expected_mm", t->case_expected_m);
    hs_json_mm(json, object, "case_low_mm", t->case_low_m);
    hs_json_text(json, object, "text", t->text);
    cJSON *list = hs_json_list(json, object, "ways");
    for (size_t i = 0; i < t->ways; i++) {
        cJSON *item = hs_json_item(json, list);
        hs_json_text(json, item, "by",
                     hs_table_text(hs_table_get(HS_TABLE_CASE_WAYS), (size_t)t->way[i].way,
                                   HS_CASE_WAYS_WAY));
        hs_json_mm(json, item, "expected_mm", t->way[i].expected_m);
        hs_json_text(json, item, "text", t->way[i].text);
    }
}
