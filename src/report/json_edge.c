/* The case at the edges as JSON. */
#include "report/json_parts.h"

static const double DEGREES = 180 / 3.14159265358979324;

void hs_json_outer_edge(hs_json *json, cJSON *to, const hs_result_case *c) {
    if (!(c->outer_rad > 0)) {
        hs_json_null(json, to, "outer_edge");
        return;
    }
    cJSON *object = hs_json_object(json, to, "outer_edge");
    hs_json_number(json, object, "angle_deg", c->outer_rad * DEGREES);
    hs_json_mm(json, object, "depth_mm", c->outer_depth_m);
    hs_json_mm(json, object, "felt_mm", c->outer_felt_m);
    hs_json_flag(json, object, "keen", c->outer_keen);
    hs_json_mm(json, object, "break_mm", c->outer_break_m);
}

void hs_json_inner_edge(hs_json *json, cJSON *to, const hs_result_face *f) {
    const hs_result_edge *e = &f->edge;
    hs_json_flag(json, to, "hard_through", f->rib);
    if (!e->present) {
        hs_json_null(json, to, "edge");
        return;
    }
    cJSON *object = hs_json_object(json, to, "edge");
    hs_json_number(json, object, "corner", (double)e->corner);
    hs_json_number(json, object, "angle_deg", e->corner_rad * DEGREES);
    hs_json_flag(json, object, "masked", e->masked);
    hs_json_flag(json, object, "land", e->land);
    hs_json_number(json, object, "share_pct", 100 * e->share);
    hs_json_mm(json, object, "felt_mm", e->felt_m);
    hs_json_limit(json, object, "sunk_left_mm", e->sunk_left_m);
}
