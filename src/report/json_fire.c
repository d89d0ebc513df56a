/* Box, gas, oil and the cautions as JSON. */
#include "base/text.h"
#include "report/json_parts.h"

static void put_pack(hs_json *json, cJSON *list, const hs_result_pack *p) {
    cJSON *item = hs_json_item(json, list);
    hs_json_number(json, item, "step", (double)p->step);
    hs_json_flag(json, item, "box_given", p->box_given);
    hs_json_mm(json, item, "box_thick_mm", p->box_m[0]);
    hs_json_mm(json, item, "box_wide_mm", p->box_m[1]);
    hs_json_mm(json, item, "box_long_mm", p->box_m[2]);
    hs_json_number(json, item, "compound_L", p->compound_m3 * 1e3);
    hs_json_number(json, item, "compound_kg", p->compound_kg);
    hs_json_number(json, item, "compound_low_kg", p->compound_low_kg);
    hs_json_number(json, item, "compound_high_kg", p->compound_high_kg);
    hs_json_mm(json, item, "cover_mm", p->cover_m);
    hs_json_flag(json, item, "thin_cover", p->thin_cover);
    hs_json_mm(json, item, "all_parts_long_mm", p->long_m);
    hs_json_number(json, item, "heat_up_h", p->heat_up_s / 3600);
    hs_json_number(json, item, "moisture_pct", 100 * p->moisture);
    hs_json_number(json, item, "steam_L", p->steam_m3 * 1e3);
    hs_json_number(json, item, "water_gas_L", p->water_gas_m3 * 1e3);
    hs_json_number(json, item, "heating_L", p->heating_m3 * 1e3);
    hs_json_number(json, item, "sealed_bar", p->sealed_Pa * 1e-5);
    hs_json_number(json, item, "carbon_monoxide_L", p->co_m3 * 1e3);
    hs_json_number(json, item, "room_to_danger_m3", p->co_room_m3);
}

void hs_json_fire(hs_json *json, cJSON *to, const hs_result *result) {
    if (result->packs == 0 && !result->oil.present) {
        hs_json_null(json, to, "fire");
        return;
    }
    cJSON *object = hs_json_object(json, to, "fire");
    cJSON *list = hs_json_list(json, object, "packs");
    for (size_t i = 0; i < result->packs; i++)
        put_pack(json, list, &result->pack[i]);
    const hs_result_oil *o = &result->oil;
    if (!o->present) {
        hs_json_null(json, object, "quench_oil");
        return;
    }
    cJSON *oil = hs_json_object(json, object, "quench_oil");
    hs_json_number(json, oil, "part_kg", o->part_kg);
    hs_json_number(json, oil, "one_part_L", o->part_m3 * 1e3);
    hs_json_number(json, oil, "all_parts_L", o->all_m3 * 1e3);
    hs_json_number(json, oil, "rise_K", o->rise_K);
}

void hs_json_put_right(hs_json *json, cJSON *to, const hs_result *result) {
    cJSON *list = hs_json_list(json, to, "put_right");
    for (size_t i = 0; i < result->rights; i++) {
        cJSON *item = hs_json_item(json, list);
        hs_json_text(json, item, "level", result->right[i].stop ? "stop" : "care");
        hs_json_text(json, item, "text", result->right[i].text);
    }
}

void hs_json_cautions(hs_json *json, cJSON *to, const hs_result *result) {
    static const char *const moments[] = {"anything else", "step", "test piece", "grinding"};
    cJSON *list = hs_json_list(json, to, "cautions");
    for (size_t i = 0; i < result->cautions; i++) {
        const hs_result_caution *c = &result->caution[i];
        cJSON *item = hs_json_item(json, list);
        char whole[600];
        hs_text text = hs_text_start(whole, sizeof whole);
        hs_text_add(&text, "%s %s %s", c->hazard, c->consequence, c->avoidance);
        hs_json_text(json, item, "code", c->code);
        hs_json_text(json, item, "level", c->level);
        hs_json_text(json, item, "before", moments[c->before]);
        if (c->before == HS_BEFORE_STEP)
            hs_json_number(json, item, "step", (double)c->step);
        else
            hs_json_null(json, item, "step");
        hs_json_text(json, item, "hazard", c->hazard);
        hs_json_text(json, item, "consequence", c->consequence);
        hs_json_text(json, item, "avoidance", c->avoidance);
        hs_json_text(json, item, "text", whole);
        hs_json_text(json, item, "source", c->source);
    }
}
