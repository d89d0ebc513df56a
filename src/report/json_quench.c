/* One of the computed quenches as JSON, for drawing. */
#include "constants.h"
#include "report/json_parts.h"

#include <math.h>

static const char *const mark_name[HS_TRACE_MARKS] = {"centre", "faster side", "slower side",
                                                      "corner"};
static const char *const mark_key[HS_TRACE_MARKS] = {"centre_C", "faster_side_C", "slower_side_C",
                                                     "corner_C"};

static double celsius(double temp_K) {
    return temp_K - HS_K_PHYSICAL_ZERO_CELSIUS;
}

static void put_marks(hs_json *json, cJSON *to, const hs_quench_trace *t) {
    cJSON *list = hs_json_list(json, to, "marks");
    for (int m = 0; m < HS_TRACE_MARKS; m++) {
        cJSON *item = hs_json_item(json, list);
        hs_json_text(json, item, "name", mark_name[m]);
        hs_json_mm(json, item, "x_mm", t->mark[m].x_m);
        hs_json_mm(json, item, "y_mm", t->mark[m].y_m);
    }
}

static void put_moments(hs_json *json, cJSON *to, const hs_result_distortion *d) {
    const hs_quench_trace *t = &d->one_quench;
    cJSON *list = hs_json_list(json, to, "moments");
    for (size_t i = 0; i < t->moments; i++) {
        cJSON *item = hs_json_item(json, list);
        hs_json_number(json, item, "time_s", t->time_s[i]);
        hs_json_number(json, item, "mean_C", celsius(t->mean_K[i]));
        for (int m = 0; m < HS_TRACE_MARKS; m++)
            hs_json_number(json, item, mark_key[m], celsius(t->mark_K[i][m]));
        hs_json_mm(json, item, "bow_mm", d->lever_m2 * t->along_1_m[i]);
        hs_json_mm(json, item, "bow_across_mm", d->lever_m2 * t->across_1_m[i]);
    }
}

static void put_stress(hs_json *json, cJSON *to, const hs_quench_trace *t) {
    cJSON *list = hs_json_list(json, to, "stress");
    for (size_t i = 0; i < t->places; i++) {
        cJSON *item = hs_json_item(json, list);
        hs_json_mm(json, item, "place_mm", t->place_m[i]);
        hs_json_number(json, item, "stress_MPa", 1e-6 * t->stress_Pa[i]);
    }
}

void hs_json_one_quench(hs_json *json, cJSON *to, const hs_result_distortion *d) {
    const hs_quench_trace *t = &d->one_quench;
    if (t->moments == 0) {
        hs_json_null(json, to, "one_quench");
        return;
    }
    cJSON *object = hs_json_object(json, to, "one_quench");
    hs_json_number(json, object, "faster_x", t->ax);
    hs_json_number(json, object, "faster_y", t->ay);
    hs_json_number(json, object, "uneven_pct", 100 * t->uneven);
    hs_json_number(json, object, "plasticity_1_MPa", 1e6 * t->plasticity_1_Pa);
    put_marks(json, object, t);
    put_moments(json, object, d);
    put_stress(json, object, t);
}
