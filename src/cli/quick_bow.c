/* bow: how much a section may bow in an uneven quench. */
#include "cli/quick_lookup.h"
#include "cli/quick_outline.h"
#include "cli/quick_steel.h"
#include "cli/quick_topics.h"
#include "constants.h"
#include "hardskin/model/quench_bow.h"
#include "hardskin/model/quench_layer.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum {
    FORM,
    WIDTH,
    THICKNESS,
    DIAMETER,
    OUTSIDE,
    BORE,
    OUTLINE,
    HOLES,
    LENGTH,
    STEEL,
    QUENCH,
    UNEVEN,
    CASE,
    FROM,
    PLASTICITY
};

static const quick_key keys[] = {
    {"form", QUICK_WORD, HS_NUMBER, NULL, 0, NULL},
    {"width", QUICK_QUANTITY, HS_LENGTH, NULL, 0, NULL},
    {"thickness", QUICK_QUANTITY, HS_LENGTH, NULL, 0, NULL},
    {"diameter", QUICK_QUANTITY, HS_LENGTH, NULL, 0, NULL},
    {"outside", QUICK_QUANTITY, HS_LENGTH, NULL, 0, NULL},
    {"bore", QUICK_QUANTITY, HS_LENGTH, NULL, 0, NULL},
    {"outline", QUICK_WORD, HS_NUMBER, NULL, 0, NULL},
    {"holes", QUICK_WORD, HS_NUMBER, NULL, 0, NULL},
    {"length", QUICK_QUANTITY, HS_LENGTH, NULL, 1, NULL},
    {"steel", QUICK_WORD, HS_NUMBER, NULL, 1, NULL},
    {"quench", QUICK_WORD, HS_NUMBER, NULL, 1, NULL},
    {"uneven", QUICK_QUANTITY, HS_PERCENT, NULL, 1, NULL},
    {"case", QUICK_QUANTITY, HS_CASE_DEPTH, NULL, 0, "0 mm"},
    {"from", QUICK_QUANTITY, HS_TEMPERATURE, NULL, 0, "800 C"},
    {"plasticity", QUICK_QUANTITY, HS_INVERSE_STRESS, "1/MPa", 0, NULL},
};

enum { ROUND_CORNERS = 36, PROFILE = 100 };

/* Scratch of a run: on the heap, for it is large. */
typedef struct scratch {
    quick_outline drawn;
    double depth_m[PROFILE], carbon_pct[PROFILE];
    hs_quench_profile profile;
    hs_quench_layer layer;
    hs_bow_surface surface;
    hs_bow_work work;
    double column[HS_BOW_DRAWS];
} scratch;

static hs_status need(const quick_value *v, const int *index, size_t n, const char *form,
                      hs_error *err) {
    for (size_t i = 0; i < n; i++)
        if (!v[index[i]].text)
            return hs_fail(err, HS_E_ARGUMENT, "hardskin quick bow --help shows its keys",
                           "form=%s needs %s", form, keys[index[i]].name);
    return HS_OK;
}

static hs_outline circle(quick_outline *out, double diameter_m) {
    hs_outline loop = hs_section_circle(&out->at[out->n], ROUND_CORNERS, diameter_m);
    out->n += loop.n;
    return loop;
}

static hs_status draw_form(quick_outline *out, const quick_value *v, hs_error *err) {
    static const int plate[] = {WIDTH, THICKNESS}, bar[] = {DIAMETER}, ring[] = {OUTSIDE, BORE};
    const char *form = v[FORM].text;
    out->n = 0;
    out->section = (hs_section){.holes = out->hole};
    if (!strcmp(form, "plate")) {
        double w = v[WIDTH].q.value, t = v[THICKNESS].q.value;
        const hs_point corner[] = {{0, 0}, {w, 0}, {w, t}, {0, t}};
        memcpy(out->at, corner, sizeof corner);
        out->section.outline = (hs_outline){out->at, 4};
        return need(v, plate, 2, form, err);
    }
    if (!strcmp(form, "bar")) {
        out->section.outline = circle(out, v[DIAMETER].q.value);
        return need(v, bar, 1, form, err);
    }
    if (!strcmp(form, "ring")) {
        out->section.outline = circle(out, v[OUTSIDE].q.value);
        out->hole[0] = circle(out, v[BORE].q.value);
        out->section.n_holes = 1;
        return need(v, ring, 2, form, err);
    }
    return hs_fail(err, HS_E_WORD, "plate, bar, ring, or outline=...", "form \"%s\" is none", form);
}

static hs_status draw(quick_outline *out, const quick_value *v, hs_error *err) {
    if (!v[FORM].text == !v[OUTLINE].text)
        return hs_fail(err, HS_E_ARGUMENT, "form=plate width=\"60 mm\" thickness=\"20 mm\"",
                       "give either form or outline");
    if (v[OUTLINE].text) return quick_outline_read(out, v[OUTLINE].text, v[HOLES].text, err);
    return draw_form(out, v, err);
}

/* The section in the middle of the medium's severity. */
static hs_status in_quench(hs_quenched *out, const quick_value *v, const hs_section_properties *p,
                           hs_error *err) {
    const hs_table *t = hs_table_get(HS_TABLE_QUENCH);
    size_t row = 0;
    hs_status status = quick_row(&row, HS_TABLE_QUENCH, v[QUENCH].text, "quench", err);
    if (status != HS_OK) return status;
    double severity_1_in = 0.5 * (hs_table_number(t, row, HS_QUENCH_GROSSMANN_LOW) +
                                  hs_table_number(t, row, HS_QUENCH_GROSSMANN_HIGH));
    int round = v[FORM].text && !strcmp(v[FORM].text, "bar");
    *out = (hs_quenched){round ? HS_QUENCHED_ROUND : HS_QUENCHED_PLATE,
                         (round ? 4 : 2) * p->cooling_size_m, severity_1_in / 0.0254};
    return HS_OK;
}

/* Carbon below the face: the error function through surface, core and the case depth to
 * the carbon of 550 HV. */
static void make_profile(scratch *s, double case_m, double core_pct) {
    double rise = HS_K_QUENCH_CHANGE_CASE_SURFACE - core_pct;
    double limit = (HS_K_QUENCH_CHANGE_CASE_LIMIT - core_pct) / rise, x = 0;
    s->profile = (hs_quench_profile){1, s->depth_m, s->carbon_pct, INFINITY};
    s->depth_m[0] = 0;
    s->carbon_pct[0] = core_pct;
    if (!(case_m > 0) || !(limit > 0)) return;
    while (erfc(x) > limit)
        x += 1e-4;
    double end_m = 2.2 * case_m / x;
    s->profile.n = PROFILE;
    for (size_t i = 0; i < PROFILE; i++) {
        s->depth_m[i] = end_m * (double)i / (PROFILE - 1);
        s->carbon_pct[i] = core_pct + rise * erfc(s->depth_m[i] * x / case_m);
    }
}

static void answer_with(quick_answer *answer, scratch *s, const char *medium, double length_m) {
    hs_bow_envelope e;
    hs_bow_draw(&e, &s->surface, length_m, s->column);
    quick_number(answer, "bow_mm", 1e3 * e.bow_m);
    quick_number(answer, "bow_low_mm", 1e3 * e.low_m);
    quick_number(answer, "bow_high_mm", 1e3 * e.high_m);
    quick_number(answer, "bow_x_mm", 1e3 * e.x_m);
    quick_number(answer, "bow_y_mm", 1e3 * e.y_m);
    quick_number(answer, "growth_mm", 1e3 * length_m * hs_bow_growth(&s->work));
    quick_note(answer, "%zu quenches computed, %zu cells; core %.0f %% martensite", s->surface.runs,
               s->work.mesh.cells, 100 * s->layer.share[s->layer.n - 1]);
    quick_note(answer, "magnitudes: the sign turns with film, thickness, case and plasticity");
    if (!strcmp(medium, "still water"))
        quick_note(answer, "steam that clings to one side alone is not in this sum: in still water "
                           "a part warps several times more than in moved water");
    quick_note(answer, "stress of the skin in an even quench about %.0f MPa",
               s->surface.surface_Pa * 1e-6);
}

static hs_status compute(scratch *s, quick_answer *answer, const quick_value *v, hs_error *err) {
    hs_composition steel;
    hs_section_properties p;
    hs_quenched quenched;
    double total_m = 0;
    hs_status status = draw(&s->drawn, v, err);
    if (status == HS_OK) status = quick_steel(&steel, answer, v[STEEL].text, -1, err);
    if (status == HS_OK) status = hs_section_measure(&p, &s->drawn.section, err);
    if (status == HS_OK) status = in_quench(&quenched, v, &p, err);
    if (status != HS_OK) return status;
    double case_m = v[CASE].q.value, K = v[PLASTICITY].q.value;
    make_profile(s, case_m, steel.C);
    status = hs_quench_layer_of(&s->layer, &total_m, &s->profile, &steel, &quenched,
                                v[FROM].q.value, err);
    if (status != HS_OK) return status;
    int symmetric = v[FORM].text != NULL;
    hs_bow_question q = {.section = &s->drawn.section,
                         .layer = &s->layer,
                         .case_m = total_m,
                         .steel = &steel,
                         .medium = v[QUENCH].text,
                         .start_K = v[FROM].q.value,
                         .bath_K = HS_K_PHYSICAL_ZERO_CELSIUS + 20,
                         .uneven = v[UNEVEN].q.value / 100,
                         .plasticity_low_1_Pa = case_m > 0 ? hs_quench_plasticity_case_least() : 0,
                         .plasticity_high_1_Pa = hs_quench_plasticity_most(),
                         .diameter_m =
                             symmetric && !strcmp(v[FORM].text, "bar") ? v[DIAMETER].q.value : 0,
                         .mirror_x = symmetric,
                         .mirror_y = symmetric,
                         .alike = symmetric && strcmp(v[FORM].text, "plate") != 0};
    if (v[PLASTICITY].text) q.plasticity_low_1_Pa = q.plasticity_high_1_Pa = K;
    status = hs_bow_surface_make(&s->surface, &q, &s->work, err);
    if (status == HS_OK) answer_with(answer, s, v[QUENCH].text, v[LENGTH].q.value);
    return status;
}

static hs_status run(quick_answer *answer, const quick_value *v, const hs_units *units,
                     hs_error *err) {
    (void)units;
    scratch *s = malloc(sizeof *s);
    if (!s) return hs_fail(err, HS_E_MEMORY, "", "no memory for the quench");
    hs_status status = compute(s, answer, v, err);
    free(s);
    return status;
}

const quick_topic quick_bow = {
    "bow",
    "how much a part may bow when one side is quenched faster",
    keys,
    sizeof keys / sizeof *keys,
    "bow_mm, bow_low_mm, bow_high_mm (median, 5 % and 95 %), bow_x_mm, bow_y_mm, growth_mm",
    "heat in the section, straight fibres along it: elastic, plastic, transformation; bow = "
    "curvature * length^2 / 8",
    "quench_film.csv, quench_steel.csv, quench_change.csv",
    "mixed",
    "long parts without twist; unevenness up to 200 %",
    run,
    1,
};
