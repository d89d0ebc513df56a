/* Writing numbers, words and lists into cJSON, with a sticky failure: put on, ask once at the end.
 * Any target may be NULL (an earlier put failed). */
#ifndef HS_REPORT_JSON_PUT_H
#define HS_REPORT_JSON_PUT_H

#include <cjson/cJSON.h>

#include <stddef.h>

typedef struct hs_json {
    int failed; /* sticky: the memory ran out */
} hs_json;

/** A number with 6 significant digits; null for NaN and infinity. */
void hs_json_number(hs_json *json, cJSON *to, const char *key, double value);

/** A length in m as mm, 6 significant digits. */
void hs_json_mm(hs_json *json, cJSON *to, const char *key, double length_m);

/** A limit in m, already rounded to its safe side, as mm: all its digits (9 significant). */
void hs_json_limit(hs_json *json, cJSON *to, const char *key, double length_m);

void hs_json_text(hs_json *json, cJSON *to, const char *key, const char *text);
void hs_json_flag(hs_json *json, cJSON *to, const char *key, int flag);
void hs_json_null(hs_json *json, cJSON *to, const char *key);

/** A new empty object or list under `key`. */
cJSON *hs_json_object(hs_json *json, cJSON *to, const char *key);
cJSON *hs_json_list(hs_json *json, cJSON *to, const char *key);

/** A new object at the end of a list. */
cJSON *hs_json_item(hs_json *json, cJSON *list);

/** A text at the end of a list. */
void hs_json_line(hs_json *json, cJSON *list, const char *text);

#endif
