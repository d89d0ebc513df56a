/* The result as JSON, read back by cJSON. */
#include "hardskin/report/report.h"
#include "made.h"
#include "support/check.h"

#include <cjson/cJSON.h>
#include <stdlib.h>
#include <string.h>

static cJSON *write_json(const made *m) {
    char *text = NULL;
    CHECK(hs_report_json(&text, &m->job, &m->result) == HS_OK);
    cJSON *root = text ? cJSON_ParseWithOpts(text, NULL, 1) : NULL;
    free(text);
    CHECK(root != NULL);
    return root;
}

static const cJSON *get(const cJSON *from, const char *key) {
    return cJSON_GetObjectItemCaseSensitive(from, key);
}

static double number(const cJSON *from, const char *key) {
    const cJSON *item = get(from, key);
    return cJSON_IsNumber(item) ? item->valuedouble : NAN;
}

static int is_word(const cJSON *from, const char *key, const char *word) {
    const char *text = cJSON_GetStringValue(get(from, key));
    return text && !strcmp(text, word);
}

static void has_all(const cJSON *object, const char *const *keys, size_t n) {
    for (size_t i = 0; i < n; i++)
        CHECK(get(object, keys[i]) != NULL);
    CHECK((size_t)cJSON_GetArraySize(object) >= n);
}

/* own contract: design, the result */
static void json__every_kind_of_result__has_all_top_keys(void) {
    static const char *const keys[] = {
        "hardskin", "tables",     "sheet",      "job",        "verdict", "read",      "case",
        "scale",    "distortion", "section",    "dimensions", "faces",   "blank",     "grind",
        "descale",  "test_piece", "confidence", "measured",   "fire",    "put_right", "cautions"};
    static void (*const make[])(made *) = {made_plate, made_stop, made_measured};
    for (size_t i = 0; i < 3; i++) {
        made m;
        make[i](&m);
        cJSON *root = write_json(&m);
        has_all(root, keys, sizeof keys / sizeof *keys);
        CHECK(cJSON_GetArraySize(root) == 21);
        cJSON_Delete(root);
    }
}

static void json__a_part_without_descaling__is_null_there(void) {
    made m;
    made_plate(&m);
    cJSON *root = write_json(&m);
    CHECK(cJSON_IsNull(get(root, "descale")));
    CHECK(cJSON_IsNull(get(root, "measured")));
    CHECK(cJSON_IsNull(get(root, "blank")));
    CHECK(cJSON_IsObject(get(root, "grind")));
    CHECK(is_word(root, "sheet", "0123456789abcdef"));
    cJSON_Delete(root);
}

/* exact: the worked plate of the reference page, in mm as it is printed there */
static void json__go__carries_the_window_in_mm(void) {
    static const char *const keys[] = {
        "name",          "finish_low_mm", "finish_high_mm", "need_mm",
        "may_mm",        "stock_mm",      "rough_low_mm",   "rough_aim_mm",
        "rough_high_mm", "shape_mm",      "shape_high_mm",  "shape_limit_mm",
        "verdict",       "because",       "handbook",       "remedies"};
    made m;
    made_plate(&m);
    cJSON *root = write_json(&m);
    const cJSON *d = cJSON_GetArrayItem(get(root, "dimensions"), 0);
    has_all(d, keys, sizeof keys / sizeof *keys);
    NEAR(number(d, "need_mm"), 0.275, 1e-12);
    NEAR(number(d, "rough_high_mm"), 20.829, 1e-12);
    NEAR(number(d, "shape_limit_mm"), 0.419, 1e-12);
    CHECK(is_word(d, "verdict", "go"));
    CHECK(is_word(get(root, "verdict"), "grind", "go"));
    CHECK(is_word(get(root, "verdict"), "measured", "none"));
    double sum = 0;
    const cJSON *term;
    cJSON_ArrayForEach(term, get(d, "because")) sum += number(term, "mm");
    NEAR(sum, number(d, "need_mm"), 1e-9);
    CHECK(cJSON_GetArraySize(get(root, "faces")) == 2);
    cJSON_Delete(root);
}

static void json__stop__gives_crossed_limits_and_no_sizes(void) {
    made m;
    made_stop(&m);
    cJSON *root = write_json(&m);
    const cJSON *d = cJSON_GetArrayItem(get(root, "dimensions"), 0);
    CHECK(is_word(d, "verdict", "stop"));
    CHECK(number(d, "need_mm") > number(d, "may_mm"));
    CHECK(cJSON_IsNull(get(d, "stock_mm")));
    CHECK(cJSON_IsNull(get(d, "rough_low_mm")));
    CHECK(cJSON_IsNull(get(d, "rough_aim_mm")));
    CHECK(cJSON_IsNull(get(d, "shape_limit_mm")));
    CHECK(cJSON_GetArraySize(get(d, "remedies")) == 1);
    cJSON_Delete(root);
}

static void json__measured__tells_of_the_worst_dimension(void) {
    made m;
    made_measured(&m);
    cJSON *root = write_json(&m);
    const cJSON *measured = get(root, "measured");
    CHECK(is_word(measured, "verdict", "grind"));
    CHECK(cJSON_GetArraySize(get(measured, "stop_if")) == 1);
    NEAR(number(measured, "case_left_min_mm"), 0.7, 1e-12);
    const cJSON *d = cJSON_GetArrayItem(get(measured, "dimensions"), 0);
    NEAR(number(d, "limit_case_mm"), 0.499, 1e-12);
    cJSON_Delete(root);
}

/* More digits than six would differ between compilers; a limit keeps all of its own. */
static void json__numbers__six_digits_limits_whole(void) {
    made m;
    made_plate(&m);
    m.result.hard.depth_m = 1.23456789e-3;
    m.result.dimension[0].rough_high_m = 250.8219e-3;
    cJSON *root = write_json(&m);
    NEAR(number(get(root, "case"), "case_depth_mm"), 1.23457, 1e-12);
    const cJSON *d = cJSON_GetArrayItem(get(root, "dimensions"), 0);
    NEAR(number(d, "rough_high_mm"), 250.8219, 1e-12);
    cJSON_Delete(root);
}

static int left; /* allocations until the memory runs out */

static void *scarce(size_t size) {
    return left-- > 0 ? malloc(size) : NULL;
}

static void json__every_allocation_failed_in_turn__fails_cleanly(void) {
    made m;
    made_measured(&m);
    int fails = 0, done = 0;
    for (int i = 0; !done && i < 5000; i += 1 + i / 20) {
        char *text = NULL;
        left = i;
        cJSON_Hooks hooks = {scarce, free};
        cJSON_InitHooks(&hooks);
        hs_status status = hs_report_json(&text, &m.job, &m.result);
        cJSON_InitHooks(NULL);
        done = status == HS_OK;
        fails += status == HS_E_MEMORY && !text;
        CHECK(done || (status == HS_E_MEMORY && !text));
        free(text);
    }
    CHECK(done && fails > 20);
}

HS_TEST_MAIN("report_json", TEST(json__every_kind_of_result__has_all_top_keys),
             TEST(json__a_part_without_descaling__is_null_there),
             TEST(json__go__carries_the_window_in_mm),
             TEST(json__stop__gives_crossed_limits_and_no_sizes),
             TEST(json__measured__tells_of_the_worst_dimension),
             TEST(json__numbers__six_digits_limits_whole),
             TEST(json__every_allocation_failed_in_turn__fails_cleanly))
