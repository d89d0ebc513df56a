#include "plan/test_piece.h"

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

/* Whole millimetres: rounds come so. */
static double advised_diameter_m(const hs_part *part) {
    double wanted_m = part_thickness_m(part);
    if (isnan(wanted_m)) wanted_m = HS_K_TEST_PIECE_DIAMETER_LOW;
    wanted_m = fmin(fmax(wanted_m, HS_K_TEST_PIECE_DIAMETER_LOW), HS_K_TEST_PIECE_DIAMETER_HIGH);
    return round(wanted_m * 1e3) / 1e3;
}

static void choose_piece(hs_result_test_piece *out, const hs_job *job) {
    const hs_test_piece *given = &job->test_piece;
    int sized = given->stated && given->diameter_m > 0;
    out->stated = given->stated;
    out->diameter_m = sized ? given->diameter_m : advised_diameter_m(&job->part);
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
    int inch = job->inch_first;
    double step_m = HS_K_TEST_PIECE_GRIND_STEP;
    size_t used = (size_t)snprintf(
        out->text, sizeof out->text,
        "Same bar of %s. It goes through every step with the parts. Then grind a flat in steps of "
        "%s, file or test each, and etch: the case ends where the file bites.",
        job->part.steel.name, hs_word_length(step_m, inch, HS_NEAREST).text);
    if (used >= sizeof out->text || !(out->case_expected_m > 0)) return;
    double steps = ceil(out->case_expected_m / step_m) + HS_K_TEST_PIECE_STEPS_BEYOND;
    double deeper_pct =
        100 * HS_K_TEST_PIECE_CURVED * out->case_expected_m / (0.5 * out->diameter_m);
    snprintf(out->text + used, sizeof out->text - used,
             " About %.0f steps. The depth expected is that of a flat; a round of this size reads "
             "up to %.0f %% more.",
             steps, ceil(deeper_pct));
}

void hs_test_piece_plan(hs_result_test_piece *out, const hs_job *job, const hs_result *result) {
    *out = (hs_result_test_piece){0};
    choose_piece(out, job);
    expect_depth(out, result);
    describe(out, job);
}
