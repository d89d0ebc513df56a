#include "report/json_put.h"

#include <math.h>
#include <stdio.h>

static void check(hs_json *json, const void *added) {
    if (!added) json->failed = 1;
}

static void put_raw(hs_json *json, cJSON *to, const char *key, double value, int digits) {
    char raw[40];
    if (value == 0) value = 0; /* no "-0" */
    snprintf(raw, sizeof raw, "%.*g", digits, value);
    check(json,
          isfinite(value) ? cJSON_AddRawToObject(to, key, raw) : cJSON_AddNullToObject(to, key));
}

void hs_json_number(hs_json *json, cJSON *to, const char *key, double value) {
    put_raw(json, to, key, value, 6);
}

void hs_json_mm(hs_json *json, cJSON *to, const char *key, double length_m) {
    put_raw(json, to, key, length_m * 1e3, 6);
}

void hs_json_limit(hs_json *json, cJSON *to, const char *key, double length_m) {
    put_raw(json, to, key, length_m * 1e3, 9);
}

void hs_json_text(hs_json *json, cJSON *to, const char *key, const char *text) {
    check(json, cJSON_AddStringToObject(to, key, text ? text : ""));
}

void hs_json_flag(hs_json *json, cJSON *to, const char *key, int flag) {
    check(json, cJSON_AddBoolToObject(to, key, flag != 0));
}

void hs_json_null(hs_json *json, cJSON *to, const char *key) {
    check(json, cJSON_AddNullToObject(to, key));
}

cJSON *hs_json_object(hs_json *json, cJSON *to, const char *key) {
    cJSON *made = cJSON_AddObjectToObject(to, key);
    check(json, made);
    return made;
}

cJSON *hs_json_list(hs_json *json, cJSON *to, const char *key) {
    cJSON *made = cJSON_AddArrayToObject(to, key);
    check(json, made);
    return made;
}

/* Into the list or away: nothing leaks when the list is not there. */
static cJSON *append(hs_json *json, cJSON *list, cJSON *item) {
    if (item && cJSON_AddItemToArray(list, item)) return item;
    cJSON_Delete(item);
    json->failed = 1;
    return NULL;
}

cJSON *hs_json_item(hs_json *json, cJSON *list) {
    return append(json, list, cJSON_CreateObject());
}

void hs_json_line(hs_json *json, cJSON *list, const char *text) {
    append(json, list, cJSON_CreateString(text));
}
