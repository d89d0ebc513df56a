#include "caution_bench.h"

#include "plan/caution.h"
#include "plan/web.h"

#include <string.h>

hs_step caution_heat(hs_step_kind kind, const char *medium, double celsius) {
    double K = celsius + 273.15;
    return (hs_step){.kind = kind, .medium = medium, .temp_K = {K, K, K}};
}

/* A plain plate: charcoal, box, reheat in the box, oil, temper, brush. Nothing found amiss. */
void caution_plain(caution_bench *b) {
    *b = (caution_bench){0};
    b->step[0] = caution_heat(HS_CARBURISE, "charcoal", 925);
    b->step[1] = caution_heat(HS_COOL, "box", 0);
    b->step[2] = caution_heat(HS_REHEAT, "box", 820);
    b->step[3] = caution_heat(HS_QUENCH, "oil", 0);
    b->step[4] = caution_heat(HS_TEMPER, "", 170);
    b->step[5] = (hs_step){.kind = HS_DESCALE, .by = HS_BY_BRUSH};
    b->face[0] = (hs_face){.name = "top", .stated = 1};
    b->face[1] = (hs_face){.name = "bottom", .stated = 1};
    b->job =
        (hs_job){.part = {.form = HS_PLATE, .length_m = .3, .width_m = .06, .thickness_m = .02},
                 .step = b->step,
                 .steps = 6,
                 .face = b->face,
                 .faces = 2,
                 .feature = b->feature,
                 .test_piece = {.stated = 1}};
    b->result.hard = (hs_result_case){.present = 1,
                                      .depth_m = 1e-3,
                                      .surface_carbon_pct = .8,
                                      .dissolved_pct = .9,
                                      .retained_austenite_pct = 12};
}

void caution_collect(caution_bench *b) {
    hs_web_find(&b->result.section, &b->job);
    hs_caution_collect(&b->result, &b->job);
}

int caution_has(const hs_result *r, const char *code) {
    for (size_t i = 0; i < r->cautions; i++)
        if (!strcmp(r->caution[i].code, code)) return 1;
    return 0;
}
