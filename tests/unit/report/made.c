#include "made.h"

#include "hardskin/report/report.h"
#include "support/check.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define SET(field, text) snprintf(field, sizeof(field), "%s", text)

static void set_job(made *m) {
    m->dimension[0] = (hs_dimension){.name = "thickness",
                                     .pointer = "/dimensions/0",
                                     .text = "20 h7",
                                     .size = {20e-3, 19.979e-3, 20e-3, "h7"},
                                     .face = {0, 1}};
    m->dimension[1] = (hs_dimension){.name = "width",
                                     .pointer = "/dimensions/1",
                                     .text = "60 -0.05/-0.10 mm",
                                     .size = {60e-3, 59.90e-3, 59.95e-3, ""},
                                     .face = {2, 3}};
    static const char *const names[] = {"top", "bottom", "front", "back"};
    for (int i = 0; i < 4; i++)
        m->face[i] = (hs_face){.name = names[i],
                               .pointer = "",
                               .finish = i < 2 ? HS_GROUND : HS_AS_HARDENED,
                               .stated = i < 2,
                               .case_m = i < 2 ? 0.6e-3 : 0,
                               .limit_HV = 550,
                               .hardness_HV = i < 2 ? 653 : 0,
                               .hardness_text = i < 2 ? "58 HRC" : ""};
    m->step[0] = (hs_step){.kind = HS_CARBURISE, .pointer = "/route/0", .box_m = 0.15};
    m->step[1] = (hs_step){.kind = HS_COOL, .pointer = "/route/1"};
    m->step[2] = (hs_step){.kind = HS_QUENCH, .pointer = "/route/2"};
    m->step[3] = (hs_step){.kind = HS_DESCALE, .pointer = "/route/3"};
    m->read[0] = (hs_read){"/route/0/at", "925 \302\261 15 C", 1198.15, "K"};
    m->read[1] = (hs_read){"/part/length", "300 mm", 0.3, "m"};
    m->job = (hs_job){.name = "NG-07 slide bar",
                      .dimension = m->dimension,
                      .dimensions = 2,
                      .face = m->face,
                      .faces = 4,
                      .step = m->step,
                      .steps = 4,
                      .read = m->read,
                      .reads = 2,
                      .hash = 0x0123456789abcdefULL};
    m->job.part = (hs_part){
        .form = HS_PLATE, .length_m = 0.3, .width_m = 0.06, .thickness_m = 0.02, .quantity = 2};
    SET(m->job.part.steel.name, "16MnCr5");
    m->job.shop.rough_tolerance_m = 0.05e-3;
}

static void add_term(hs_result_dimension *d, const char *term, double value_m) {
    SET(d->because[d->terms].term, term);
    d->because[d->terms++].value_m = value_m;
}

/* exact: need = c + m + V/2 + d - g = .08 + .01 + .165 + .02 - 0 (windows.md, section 6) */
static void set_thickness(hs_result_dimension *d) {
    *d = (hs_result_dimension){.verdict = HS_GO,
                               .finish_low_m = 19.979e-3,
                               .finish_high_m = 20e-3,
                               .need_m = 0.275e-3,
                               .may_m = 0.425e-3,
                               .stock_m = 0.3503e-3,
                               .rough_low_m = 20.55e-3,
                               .rough_aim_m = 20.69e-3,
                               .rough_high_m = 20.829e-3,
                               .rough_low_in = 0.8091,
                               .rough_aim_in = 0.8146,
                               .rough_high_in = 0.8200,
                               .shape_m = 0.2e-3,
                               .shape_high_m = 0.33e-3,
                               .shape_limit_m = 0.419e-3};
    add_term(d, "clean-up: soft rim, cut marks, pits", 0.08e-3);
    add_term(d, "lost as scale and in descaling", 0.01e-3);
    add_term(d, "half the shape to expect", 0.165e-3);
    add_term(d, "growth, taken off", 0);
    add_term(d, "doubt of all these together, set-up in it", 0.02e-3);
    d->remedies = 1;
    SET(d->remedy[0].what, "wrap the part for the reheat");
    SET(d->remedy[0].text, "foil or coating; less scale and hardly any soft rim");
    d->remedy[0].gain_m = 0.03e-3;
    d->remedy[0].verdict = HS_GO;
}

static void set_case(hs_result *r) {
    r->hard = (hs_result_case){.present = 1,
                               .limit_HV = 550,
                               .hardens = 1,
                               .depth_m = 1.30e-3,
                               .depth_low_m = 1.22e-3,
                               .depth_high_m = 1.40e-3,
                               .total_m = 2.1e-3,
                               .surface_carbon_pct = 0.85,
                               .surface_HV = 746,
                               .surface_HRC = 62,
                               .margin_low = 1.2,
                               .margin = 1.6,
                               .margin_high = 2.1,
                               .core_HV = 350,
                               .core_low_HV = 296,
                               .core_high_HV = 391,
                               .core_martensite_pct = 41,
                               .core_bainite_pct = 59,
                               .core_HRC = 35.5,
                               .retained_austenite_pct = 12,
                               .soft_rim_m = 0.05e-3,
                               .core_hardens = 1,
                               .points = 2};
    r->hard.profile[0] = (hs_profile_point){0, 0.85, 746};
    r->hard.profile[1] = (hs_profile_point){1.30e-3, 0.35, 550};
    for (size_t i = 0; i < 2; i++)
        r->face[i] = (hs_result_face){.present = 1,
                                      .removal_min_m = 0.1e-3,
                                      .removal_max_m = 0.52e-3,
                                      .case_left_min_m = 0.64e-3,
                                      .case_left_typical_m = 0.9e-3,
                                      .case_lost_m = 0.52e-3,
                                      .hardness_left_HV = 700,
                                      .share_of_case_pct = 42};
}

static void set_rest(hs_result *r) {
    static const char *const steps[] = {"carburise 925 C 12 h in charcoal with carbonate",
                                        "cool in box", "quench in oil", "descale by brush"};
    r->steps = 4;
    for (size_t i = 0; i < 4; i++) {
        r->step[i] = (hs_result_step){.hardness_HRC = i < 2 ? NAN : 62, .case_depth_m = 1.3e-3};
        SET(r->step[i].text, steps[i]);
    }
    r->step[0].heat_up_s = 9000;
    r->step[0].hold_s = 43200;
    r->confidence = (hs_result_confidence){
        .level = 0.95, .reached = 1, .reached_batch = 1, .samples = 400, .drivers = 1};
    SET(r->confidence.driver[0].name, "unevenness of the quench");
    r->confidence.driver[0].share_pct = 100;
    r->cautions = 2;
    r->caution[0] = (hs_result_caution){.code = "hot-box",
                                        .level = "caution",
                                        .hazard = "Hot boxes flare.",
                                        .consequence = "They singe.",
                                        .avoidance = "Open the box cold.",
                                        .source = "practice",
                                        .before = HS_BEFORE_STEP,
                                        .step = 2};
    r->caution[1] =
        (hs_result_caution){.code = "oil-fire",
                            .level = "danger",
                            .hazard = "A hot part half in and half out of the oil lights it.",
                            .consequence = "It burns people and the shop.",
                            .avoidance = "Put it under at once, keep a lid at hand.",
                            .source = "practice",
                            .before = HS_BEFORE_STEP,
                            .step = 2};
    r->limits = 1;
    SET(r->limit[0], "Twist is not computed.");
    r->grind_plan.steps = 1;
    r->grind_plan.order[0] = (hs_grind_step){.face = 0, .to_m = 20.339e-3};
    SET(r->grind_plan.order[0].what, "grind the crown side, shimmed");
    SET(r->grind_plan.order[0].stop_if, "it is not clean at this size");
}

void made_plate(made *m) {
    memset(m, 0, sizeof *m);
    set_job(m);
    m->result.grind = HS_GO;
    set_thickness(&m->result.dimension[0]);
    m->result.dimension[1].verdict = HS_NONE;
    m->result.dimension[1].rough_aim_m = m->result.dimension[1].stock_m = NAN;
    SET(m->result.dimension[1].note, "no face of it is ground");
    set_case(&m->result);
    set_rest(&m->result);
}

void made_stop(made *m) {
    made_plate(m);
    hs_result_dimension *d = &m->result.dimension[0];
    m->result.grind = d->verdict = HS_STOP;
    d->may_m = 0.201e-3;
    d->stock_m = d->rough_low_m = d->rough_aim_m = d->rough_high_m = d->shape_limit_m = NAN;
    d->rough_low_in = d->rough_aim_in = d->rough_high_in = NAN;
}

void made_measured(made *m) {
    made_plate(m);
    m->job.measured.stated = 1;
    hs_result *r = &m->result;
    r->measured_present = 1;
    r->measured_verdict = r->measured.verdict = HS_WHEEL_GRIND;
    r->measured.case_m = 1.21e-3;
    r->measured.case_low_m = 1.11e-3;
    hs_result_measured_dimension *d = &r->measured.dimension[0];
    *d = (hs_result_measured_dimension){.present = 1,
                                        .verdict = HS_WHEEL_GRIND,
                                        .size_m = 20.46e-3,
                                        .shape_m = 0.2e-3,
                                        .limit_clean_m = 0.460e-3,
                                        .limit_case_m = 0.499e-3,
                                        .turn_at_m = 20.225e-3,
                                        .removal_min_m = 0.11e-3,
                                        .removal_max_m = 0.36e-3,
                                        .case_left_min_m = 0.7e-3};
    SET(d->stop_if[0], "STOP IF the bow and half the corner lift together are more than 0.460 mm: "
                       "the lowest spot would not clean up.");
}

const char *made_text(const made *m) {
    static char out[MADE_REPORT];
    CHECK(hs_report_text(out, sizeof out, &m->job, &m->result) == HS_OK);
    return out;
}

int made_line_of(const char *report, const char *text) {
    const char *at = strstr(report, text);
    int line = 1;
    if (!at) return 0;
    for (; report < at; report++)
        line += *report == '\n';
    return line;
}
