#include "plan/test_piece.h"

#include "base/text.h"
#include "constants.h"
#include "plan/words.h"

#include <math.h>
#include <stdio.h>

/* How thick the part is where it cools: the test piece should cool alike. */
static double part_thickness_m(const hs_part *part) {
    hs_section_properties p;
    switch (part->form) {
    case HS_PLATE:
        return fmin(part->thickness_m, part->width_m);
    case HS_BAR:
        return part->diameter_m;
    case HS_RING:
        return 0.5 * (part->outside_m - part->bore_m);
    case HS_PROFILE:
        if (hs_section_measure(&p, &part->section, NULL) != HS_OK) return NAN;
        return 2 * p.cooling_size_m; /* a wall's thickness is twice its volume over surface */
    }
    return NAN;
}

/* Whole millimetres or eighths of an inch: rounds come so. */
static double advised_diameter_m(const hs_part *part, int inch) {
    double unit_m = inch ? 0.0254 / 8 : 1e-3;
    double wanted_m = part_thickness_m(part);
    if (isnan(wanted_m)) wanted_m = HS_K_TEST_PIECE_DIAMETER_LOW;
    wanted_m = fmin(fmax(wanted_m, HS_K_TEST_PIECE_DIAMETER_LOW), HS_K_TEST_PIECE_DIAMETER_HIGH);
    return round(wanted_m / unit_m) * unit_m;
}

static void choose_piece(hs_result_test_piece *out, const hs_job *job) {
    const hs_test_piece *given = &job->test_piece;
    int sized = given->stated && given->diameter_m > 0;
    out->stated = given->stated;
    out->diameter_m = sized ? given->diameter_m : advised_diameter_m(&job->part, job->inch_first);
    out->length_m = sized && given->length_m > 0 ? given->length_m
                                                 : HS_K_TEST_PIECE_LENGTH_SHARE * out->diameter_m;
    const char *place = given->stated && given->place && given->place[0] ? given->place
                        : job->part.quantity > 1 ? "in the middle of the box, between the parts"
                                                 : "in the middle of the box, beside the part";
    snprintf(out->place, sizeof out->place, "%s", place);
}

/* What the test piece shows counts from its hardened surface; the part's case from the blank. */
static void expect_depth(hs_result_test_piece *out, const hs_result *result) {
    out->case_expected_m = out->case_low_m = NAN;
    if (!result->hard.present) return;
    out->case_expected_m = fmax(result->hard.depth_m - result->scale.lost_m, 0);
    out->case_low_m = fmax(result->hard.depth_low_m - result->scale.lost_high_m, 0);
}

static void describe(hs_result_test_piece *out, const hs_job *job) {
    hs_text text = hs_text_start(out->text, sizeof out->text);
    hs_text_add(&text,
                "Same bar of %s. It goes through every step with the parts; then its case is read "
                "in one of the ways below and written into the sheet as measured case.",
                job->part.steel.name);
    if (!(out->case_expected_m > 0)) return;
    double deeper_pct =
        100 * HS_K_TEST_PIECE_CURVED * out->case_expected_m / (0.5 * out->diameter_m);
    hs_text_add(&text,
                " Depths are those of a flat, from the hardened surface; a round of this size "
                "reads up to %.0f %% more.",
                ceil(deeper_pct));
}

static void add_file_way(hs_text *text, const hs_result_case *hard, double lost_m, int inch) {
    double step_m = inch ? HS_K_TEST_PIECE_GRIND_STEP_INCH : HS_K_TEST_PIECE_GRIND_STEP;
    double steps = ceil((hard->depth_m - lost_m) / step_m) + HS_K_TEST_PIECE_STEPS_BEYOND;
    hs_text_add(text, "grind a flat in steps of %s, about %.0f, cool, and try the files on each",
                hs_word_length(step_m, inch, HS_NEAREST).text, steps);
    for (int k = 1; k >= 0; k--)
        if (hard->file_m[k] > lost_m)
            hs_text_add(text, "%s that of %.0f HRC is to bite from %s on", k ? ":" : ",",
                        hard->file_HRC[k],
                        hs_word_length(hard->file_m[k] - lost_m, inch, HS_NEAREST).text);
    hs_text_add(text, ". Write the depth where a file first bites, and its HRC as \"to\".");
}

static void add_way(hs_result_test_piece *out, hs_case_way way, const hs_result *r, int inch) {
    static const char *const how[HS_CASE_WAYS] = {
        [HS_CASE_ETCH] = "cut it across without burning it, polish to 400 grit or finer, swab with "
                         "2 to 5 % nitric acid in alcohol (nital) until case and core part, "
                         "rinse, dry, and read with a glass to where the case can no longer be "
                         "told from the core: the total case.",
        [HS_CASE_FRACTURE] = "cut a nick, break it over the nick in the vice, read the fine silky "
                             "rim against the fibrous core: about to .35 % carbon.",
        [HS_CASE_TRAVERSE] = "HV1 across a polished section, to the limit, by ISO 18203."};
    double lost_m = r->scale.lost_m, expected_m = r->hard.way_m[way] - lost_m;
    if (!(expected_m > 0)) return;
    hs_result_way *w = &out->way[out->ways++];
    *w = (hs_result_way){.way = way, .expected_m = expected_m};
    hs_text text = hs_text_start(w->text, sizeof w->text);
    if (way == HS_CASE_STEP_FILE)
        add_file_way(&text, &r->hard, lost_m, inch);
    else
        hs_text_add(&text, "%s", how[way]);
}

void hs_test_piece_plan(hs_result_test_piece *out, const hs_job *job, const hs_result *result) {
    *out = (hs_result_test_piece){0};
    choose_piece(out, job);
    expect_depth(out, result);
    describe(out, job);
    for (int way = HS_CASE_STEP_FILE; result->hard.present && way < HS_CASE_WAYS; way++)
        add_way(out, (hs_case_way)way, result, job->inch_first);
}
