/* The descaling plans as JSON. */
#include "report/json_parts.h"

#include <math.h>

static void put_numbers(hs_json *json, cJSON *to, const hs_result_descale *d) {
    hs_json_number(json, to, "hardness_HRC", d->hardness_HRC);
    hs_json_number(json, to, "core_HRC", d->core_HRC);
    hs_json_number(json, to, "area_dm2", d->area_m2 * 100);
    hs_json_number(json, to, "amps_A", d->amps_A);
    hs_json_number(json, to, "volts_V", d->volts_V);
    hs_json_number(json, to, "charge_Ah", d->charge_Ah);
    hs_json_number(json, to, "time_low_min", d->time_low_s / 60);
    hs_json_number(json, to, "time_min", d->time_s / 60);
    hs_json_number(json, to, "time_high_min", d->time_high_s / 60);
    hs_json_number(json, to, "hydrogen_L_min", d->hydrogen_m3_s * 6e4);
    hs_json_number(json, to, "fresh_air_m3_h", d->fresh_air_m3_s * 3600);
    hs_json_number(json, to, "opening_cm2", d->opening_m2 * 1e4);
    hs_json_mm(json, to, "spark_distance_mm", d->spark_distance_m);
    hs_json_number(json, to, "room_pct", d->room_pct);
    hs_json_text(json, to, "air_rule", d->air_rule);
    hs_json_mm(json, to, "stock_taken_low_mm", d->stock_taken_low_m);
    hs_json_mm(json, to, "stock_taken_high_mm", d->stock_taken_high_m);
}

/* Infinite: it does not come to that in the time; JSON has no such number. */
static double reached(double time_s) {
    return isfinite(time_s) ? time_s / 60 : NAN;
}

static void put_soda(hs_json *json, cJSON *to, const hs_result_tank *t) {
    static const char *const forms[HS_SODA_FORMS] = {"anhydrous_g", "monohydrate_g", "crystals_g",
                                                     "bicarbonate_to_bake_g"};
    cJSON *soda = hs_json_object(json, to, "soda");
    for (int i = 0; i < HS_SODA_FORMS; i++)
        hs_json_number(json, soda, forms[i], t->soda_kg[i] * 1e3);
}

static void put_remedies(hs_json *json, cJSON *to, const hs_result_tank *t) {
    cJSON *list = hs_json_list(json, to, "more_current");
    for (size_t i = 0; i < t->remedies; i++) {
        cJSON *item = hs_json_item(json, list);
        hs_json_text(json, item, "do", t->remedy[i].what);
        hs_json_number(json, item, "amps_A", t->remedy[i].amps_A);
        hs_json_number(json, item, "density_A_dm2", t->remedy[i].density_A_m2 / 100);
        hs_json_number(json, item, "time_min", t->remedy[i].time_s / 60);
    }
}

static void put_tank(hs_json *json, cJSON *to, const hs_result_tank *t) {
    static const char *const limits[] = {"none", "bath", "supply", "area"};
    if (!t->present) {
        hs_json_null(json, to, "tank");
        return;
    }
    cJSON *tank = hs_json_object(json, to, "tank");
    hs_json_number(json, tank, "volume_L", t->volume_m3 * 1e3);
    hs_json_number(json, tank, "soda_g_L", t->soda_kg_m3);
    hs_json_number(json, tank, "conductivity_S_m", t->conductivity_S_m);
    hs_json_number(json, tank, "bath_ohm", t->bath_ohm);
    hs_json_text(json, tank, "geometry", t->geometry);
    hs_json_number(json, tank, "density_A_dm2", t->density_A_m2 / 100);
    hs_json_text(json, tank, "limited_by", limits[t->limit]);
    hs_json_text(json, tank, "limited", t->limited);
    hs_json_number(json, tank, "bath_amps_A", t->bath_amps_A);
    hs_json_number(json, tank, "most_amps_A", t->most_amps_A);
    hs_json_flag(json, tank, "below_practice", t->below_practice);
    hs_json_flag(json, tank, "above_practice", t->above_practice);
    hs_json_number(json, tank, "heating_K_h", t->heating_K_s * 3600);
    hs_json_number(json, tank, "hot_after_min", reached(t->hot_s));
    hs_json_number(json, tank, "boils_after_min", reached(t->boils_s));
    hs_json_number(json, tank, "water_g", t->water_kg * 1e3);
    hs_json_number(json, tank, "cable_mm2", t->cable_mm2);
    hs_json_number(json, tank, "anode_g", t->anode_kg * 1e3);
    hs_json_number(json, tank, "anode_jobs", t->anode_jobs);
    hs_json_number(json, tank, "batch_min", t->batch_s / 60);
    hs_json_number(json, tank, "together_A_dm2", t->together_A_m2 / 100);
    hs_json_number(json, tank, "together_min", t->together_s / 60);
    put_soda(json, tank, t);
    put_remedies(json, tank, t);
}

static void put_air(hs_json *json, cJSON *to, const hs_result_air *a) {
    if (!a->present) {
        hs_json_null(json, to, "air");
        return;
    }
    cJSON *air = hs_json_object(json, to, "air");
    hs_json_number(json, air, "oxygen_L_min", a->oxygen_m3_s * 6e4);
    hs_json_number(json, air, "battery_room_m3_h", a->battery_m3_s * 3600);
    hs_json_number(json, air, "workplace_m3_h", a->workplace_m3_s * 3600);
    hs_json_number(json, air, "battery_room_opening_cm2", a->battery_opening_m2 * 1e4);
    hs_json_number(json, air, "hour_pct", a->hour_pct);
    hs_json_number(json, air, "steady_pct", a->steady_pct);
    hs_json_number(json, air, "supply_A", a->supply_A);
    hs_json_number(json, air, "most_fresh_air_m3_h", a->most_fresh_air_m3_s * 3600);
    hs_json_number(json, air, "most_opening_cm2", a->most_opening_m2 * 1e4);
    hs_json_number(json, air, "all_amps_A", a->all_amps_A);
    hs_json_number(json, air, "all_hydrogen_L_min", a->all_hydrogen_m3_s * 6e4);
    hs_json_number(json, air, "all_fresh_air_m3_h", a->all_fresh_air_m3_s * 3600);
    hs_json_number(json, air, "all_opening_cm2", a->all_opening_m2 * 1e4);
    hs_json_mm(json, air, "all_spark_mm", a->all_spark_m);
    hs_json_number(json, air, "all_pct", a->all_pct);
    hs_json_mm(json, air, "near_mm", a->near_m);
    hs_json_number(json, air, "room_least_m3", a->room_least_m3);
    hs_json_number(json, air, "lid_L", a->lid_m3 * 1e3);
    hs_json_number(json, air, "lid_1_pct_min", a->lid_keep_s / 60);
    hs_json_number(json, air, "lid_4_pct_min", a->lid_explosive_s / 60);
}

static void put_acid(hs_json *json, cJSON *to, const hs_result_acid *a) {
    if (!a->present) {
        hs_json_null(json, to, "acid");
        return;
    }
    cJSON *acid = hs_json_object(json, to, "acid");
    hs_json_text(json, acid, "name", a->name);
    hs_json_number(json, acid, "strength_pct", a->strength_pct);
    hs_json_number(json, acid, "volume_L", a->volume_m3 * 1e3);
    hs_json_number(json, acid, "bath_acid_g", a->bath_kg * 1e3);
    hs_json_number(json, acid, "scale_g", a->scale_kg * 1e3);
    hs_json_number(json, acid, "acid_g", a->taken_kg * 1e3);
    hs_json_number(json, acid, "capacity_g", a->capacity_kg * 1e3);
    hs_json_number(json, acid, "soda_to_neutralise_g", a->soda_kg * 1e3);
    hs_json_number(json, acid, "soda_5_pct_L", a->soda_low_m3 * 1e3);
    hs_json_number(json, acid, "soda_2_pct_L", a->soda_high_m3 * 1e3);
    hs_json_number(json, acid, "dip_soda_low_g", a->dip_low_kg * 1e3);
    hs_json_number(json, acid, "dip_soda_high_g", a->dip_high_kg * 1e3);
    hs_json_number(json, acid, "hydrogen_L", a->hydrogen_m3 * 1e3);
    hs_json_number(json, acid, "hydrogen_most_L", a->all_hydrogen_m3 * 1e3);
    hs_json_number(json, acid, "temperature_low_C", a->temp_low_K - 273.15);
    hs_json_number(json, acid, "temperature_high_C", a->temp_high_K - 273.15);
    hs_json_text(json, acid, "note", a->note);
}

static void put_one(hs_json *json, cJSON *to, const hs_result_descale *d) {
    hs_json_text(json, to, "verdict", hs_json_clean(d->verdict));
    hs_json_number(json, to, "step", (double)d->step + 1);
    hs_json_text(json, to, "method", d->method);
    hs_json_text(json, to, "text", d->text);
    hs_json_text(json, to, "rule", d->rule);
    hs_json_text(json, to, "accepted", d->accepted);
    put_numbers(json, to, d);
    put_tank(json, to, &d->tank);
    put_air(json, to, &d->air);
    put_acid(json, to, &d->acid);
    if (d->bake_s > 0) {
        cJSON *bake = hs_json_object(json, to, "bake");
        hs_json_number(json, bake, "at_C", d->bake_temp_K - 273.15);
        hs_json_number(json, bake, "for_h", d->bake_s / 3600);
        hs_json_text(json, bake, "text", d->bake);
    } else {
        hs_json_null(json, to, "bake");
    }
    cJSON *alternatives = hs_json_list(json, to, "alternatives");
    for (size_t i = 0; i < d->alternatives; i++)
        hs_json_line(json, alternatives, d->alternative[i]);
    cJSON *order = hs_json_list(json, to, "order");
    for (size_t i = 0; i < d->orders; i++)
        hs_json_line(json, order, d->order[i]);
}

void hs_json_descale(hs_json *json, cJSON *to, const hs_result *result) {
    if (!result->descale_present) {
        hs_json_null(json, to, "descale");
        return;
    }
    cJSON *object = hs_json_object(json, to, "descale");
    put_one(json, object, &result->descale);
    cJSON *others = hs_json_list(json, object, "others");
    for (size_t i = 0; i < result->other_descales; i++)
        put_one(json, hs_json_item(json, others), &result->other_descale[i]);
}
