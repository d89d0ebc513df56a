#include "unit/plan/job.h"

#include "constants.h"
#include "hardskin/tables/table.h"
#include "support/check.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static hs_span just(double value) {
    return (hs_span){value, value, value};
}

static size_t row_of(hs_table_id id, const char *name) {
    int row = hs_table_row(hs_table_get(id), 0, name);
    if (row < 0) {
        printf("no row %s\n", name);
        abort();
    }
    return (size_t)row;
}

static void add_route(test_job *out) {
    const hs_step steps[] = {{.kind = HS_CARBURISE,
                              .temp_K = just(1198.15),
                              .hold_s = just(16 * 3600.0),
                              .medium = "charcoal with carbonate",
                              .surface_carbon_pct = {0.8, 1.0, 1.2},
                              .box_m = 0.15},
                             {.kind = HS_COOL, .medium = "box"},
                             {.kind = HS_REHEAT,
                              .temp_K = just(1093.15),
                              .hold_s = just(1200),
                              .medium = "wrapped",
                              .medium_row = row_of(HS_TABLE_ATMOSPHERE, "wrapped")},
                             {.kind = HS_QUENCH,
                              .medium = "oil",
                              .medium_row = row_of(HS_TABLE_QUENCH, "oil"),
                              .uneven = 0.1},
                             {.kind = HS_TEMPER, .temp_K = just(443.15), .hold_s = just(7200)},
                             {.kind = HS_DESCALE, .by = HS_BY_BRUSH}};
    memcpy(out->step, steps, sizeof steps);
    out->job.steps = sizeof steps / sizeof *steps;
    for (size_t i = 0; i < out->job.steps; i++)
        out->step[i].pointer = "";
}

static void finish(test_job *out, const char *steel) {
    if (hs_steel_find(&out->job.part.steel, steel, NULL) != HS_OK) abort();
    add_route(out);
    out->job.name = "test";
    out->job.part.quantity = 1;
    out->job.face = out->face;
    out->job.dimension = out->dimension;
    out->job.step = out->step;
    out->job.shop = (hs_shop){.stated = 1,
                              .rough_tolerance_m = 0.05e-3,
                              .setup_error_m = 0.01e-3,
                              .confidence = 0.95,
                              .grinding = {"surface", 20e-6, 5e-6, 40e-6, 25e-3, 10e-3, 0.25}};
    out->job.test_piece.place = "";
}

static void face(test_job *out, const char *name, hs_finish how) {
    hs_face *f = &out->face[out->job.faces++];
    *f = (hs_face){.name = name,
                   .pointer = "",
                   .finish = how,
                   .stated = 1,
                   .limit_HV = 550,
                   .hardness_text = ""};
    if (how == HS_GROUND) {
        f->case_m = 0.6e-3;
        f->hardness_HV = 653; /* 58 HRC */
        f->hardness_text = "58 HRC";
    }
}

static void dimension(test_job *out, const char *name, double nominal_mm, double lower_um,
                      double upper_um, hs_across across) {
    hs_dimension *d = &out->dimension[out->job.dimensions++];
    *d = (hs_dimension){.name = name, .pointer = "", .text = "", .across = across};
    d->size = (hs_size){nominal_mm * 1e-3, nominal_mm * 1e-3 + lower_um * 1e-6,
                        nominal_mm * 1e-3 + upper_um * 1e-6, ""};
}

void test_job_plate(test_job *out, const char *steel) {
    *out = (test_job){
        .job.part = {.form = HS_PLATE, .length_m = 0.3, .width_m = 0.06, .thickness_m = 0.02}};
    const char *names[] = {"top", "bottom", "front", "back", "left", "right"};
    for (int i = 0; i < 6; i++)
        face(out, names[i], i < 2 ? HS_GROUND : HS_AS_HARDENED);
    dimension(out, "thickness", 20, -21, 0, HS_ACROSS_FACES);
    out->dimension[0].face[1] = 1;
    finish(out, steel);
}

void test_job_bar(test_job *out, const char *steel) {
    *out = (test_job){.job.part = {.form = HS_BAR, .length_m = 0.16, .diameter_m = 0.03}};
    face(out, "outside", HS_GROUND);
    face(out, "ends", HS_AS_HARDENED);
    dimension(out, "diameter", 30, -13, 0, HS_ACROSS_OUTSIDE);
    finish(out, steel);
}

void test_job_ring(test_job *out, const char *steel) {
    *out = (test_job){
        .job.part = {.form = HS_RING, .length_m = 0.05, .outside_m = 0.07, .bore_m = 0.045}};
    face(out, "outside", HS_GROUND);
    face(out, "bore", HS_GROUND);
    face(out, "ends", HS_AS_HARDENED);
    dimension(out, "outside", 70, 32, 51, HS_ACROSS_OUTSIDE);
    dimension(out, "bore", 45, 0, 25, HS_ACROSS_BORE);
    out->dimension[1].face[0] = out->dimension[1].face[1] = 1;
    finish(out, steel);
}

void test_job_profile(test_job *out, const char *steel, double turned_rad) {
    static const double mm[][2] = {{0, 0}, {60, 0}, {60, 20}, {15, 20}, {0, 8}};
    *out = (test_job){.job.part = {.form = HS_PROFILE, .length_m = 0.24}};
    double c = cos(turned_rad), s = sin(turned_rad);
    for (int i = 0; i < 5; i++) {
        double x = mm[i][0] * 1e-3, y = mm[i][1] * 1e-3;
        out->outline[i] = (hs_point){c * x - s * y, s * x + c * y};
    }
    out->job.part.section.outline = (hs_outline){out->outline, 5};
    face(out, "under", HS_GROUND);
    face(out, "top", HS_GROUND);
    face(out, "cut", HS_SOFT);
    out->face[0].edge = 1;
    out->face[1].edge = 3;
    out->face[2].edge = 4;
    dimension(out, "thickness", 20, -21, 0, HS_ACROSS_FACES);
    out->dimension[0].face[1] = 1;
    finish(out, steel);
}

void test_job_slot(test_job *out, const char *steel) {
    static const double mm[][2] = {{0, 0},   {60, 0},  {60, 40}, {40, 40},
                                   {40, 15}, {20, 15}, {20, 40}, {0, 40}};
    *out = (test_job){.job.part = {.form = HS_PROFILE, .length_m = 0.24}};
    for (int i = 0; i < 8; i++)
        out->outline[i] = (hs_point){mm[i][0] * 1e-3, mm[i][1] * 1e-3};
    out->job.part.section.outline = (hs_outline){out->outline, 8};
    face(out, "right side", HS_GROUND);
    face(out, "left side", HS_GROUND);
    out->face[0].edge = 4;
    out->face[1].edge = 6;
    dimension(out, "slot", 20, 0, 33, HS_ACROSS_FACES);
    out->dimension[0].face[1] = 1;
    finish(out, steel);
}

hs_status test_job_try(hs_result *out, const hs_job *job, hs_error *err) {
    void *work = malloc(hs_plan_work_size());
    hs_status status = work ? hs_plan(out, job, work, err) : HS_E_MEMORY;
    free(work);
    return status;
}

void test_job_plan(hs_result *out, const hs_job *job) {
    hs_error err = {0};
    hs_status status = test_job_try(out, job, &err);
    if (status != HS_OK) printf("plan failed: %s\n", err.message);
    CHECK(status == HS_OK);
}
