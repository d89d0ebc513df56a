/* What the answer does not cover, and what was assumed. */
#include "plan/fill.h"
#include "plan/one_side.h"
#include "plan/words.h"

#include "constants.h"
#include "hardskin/tables/table.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>

static void say(hs_result *r, const char *format, ...) HS_PRINTF(2, 3);

static void say(hs_result *r, const char *format, ...) {
    if (r->limits == HS_MAX_LIMITS) return;
    va_list args;
    va_start(args, format);
    vsnprintf(r->limit[r->limits++], sizeof r->limit[0], format, args);
    va_end(args);
}

static void say_of_holes(hs_result *r, const hs_job *job) {
    for (size_t i = 0; i < r->section.lefts; i++) {
        const hs_result_left *left = &r->section.left[i];
        if (!left->thin && !left->weak) continue;
        char stiffness[80] = "";
        if (left->stiffness >= 0)
            snprintf(stiffness, sizeof stiffness, ", %.0f %% of the stiffness left",
                     100 * left->stiffness);
        const hs_feature *f = &job->feature[left->feature];
        say(r, "%s %s%s%s%s, taken right through in the middle: %s left on either side%s%s.",
            f->kind == HS_SLOT ? "Slot" : "Hole",
            hs_word_length(f->size_m, job->inch_first, HS_NEAREST).text,
            left->face < 0 ? "" : " through ", left->face < 0 ? "" : job->face[left->face].name,
            left->guessed ? " (no face named: the worst way)" : "",
            hs_word_length(left->web_m, job->inch_first, HS_DOWN).text, stiffness,
            left->weak ? "; the bow gathers there" : "");
    }
    const hs_result_section *s = &r->section;
    if (s->thick_m > s->thin_m * HS_K_CAUTION_LIMITS_THICK_THIN_CAUTION)
        say(r, "Walls of the section: thickest %s, thinnest %s, ratio %.1f.",
            hs_word_length(s->thick_m, job->inch_first, HS_NEAREST).text,
            hs_word_length(s->thin_m, job->inch_first, HS_NEAREST).text, s->thick_m / s->thin_m);
}

static int flats_ground(const hs_job *job) {
    int ground = 0;
    for (size_t i = 0; i < job->faces; i++)
        ground |= job->face[i].finish == HS_GROUND && hs_face_asks(&job->face[i]);
    return ground && (job->part.form == HS_PLATE || job->part.form == HS_PROFILE);
}

static hs_word bow_word(double bow_m, int inch) {
    hs_word word;
    if (inch)
        hs_format_inch(word.text, sizeof word.text, fabs(bow_m), 3, HS_NEAREST);
    else
        hs_format_mm(word.text, sizeof word.text, fabs(bow_m), 2, HS_NEAREST);
    return word;
}

/* What turns the way: the core's martensite and the austenite left (computed twice,
 * tests/unit/model/quench_strip.c), the depth (published, tests/unit/plan/one_side.c). */
static void say_of_one_side(hs_result *r, const hs_chain *chain) {
    hs_one_side one = hs_one_side_of(&chain->warp, chain->job);
    if (!one.present) return;
    int inch = chain->job->inch_first, mixed = one.low_m < 0 && one.high_m > 0;
    double from_m = fabs(one.low_m) < fabs(one.high_m) || mixed ? one.low_m : one.high_m;
    double to_m = from_m == one.low_m ? one.high_m : one.low_m;
    say(r,
        "Cased on one side: an even quench bows it too, computed %s%s to %s %s on the cased side. "
        "Core, depth of case and austenite left may turn the way: measure a first part.",
        bow_word(from_m, inch).text, mixed ? " hollow" : "", bow_word(to_m, inch).text,
        to_m > 0 ? "crowned" : "hollow");
}

static void say_of_shape(hs_result *r, const hs_chain *chain) {
    const hs_job *job = chain->job;
    const hs_step *quench = &job->step[chain->route.quench];
    say(r, "Bow of the quench: straight fibres along the part; twist and corner lift are not "
           "computed: "
           "measure them.");
    say(r, "Computed alone, a cased flat comes out straighter than the trade sees; dipping, steam "
           "pockets, supports and handling are therefore added by judgement (A4).");
    say_of_one_side(r, chain);
    if (flats_ground(job))
        say(r,
            "A cut on one side alone lets a cased flat draw hollow: of a plate told under GRIND, "
            "of a profile not reckoned; it is in no limit of shape or flatness. Measure again "
            "after each turn.");
    if (chain->warp.ring_m2 > 0)
        say(r, "Ovality: unevenness taken as turning twice round the ring, a judgement.");
    if (job->part.form == HS_BAR || job->part.form == HS_RING)
        say(r,
            "Taper: the growth across is one figure for the whole length; ends that grow unlike "
            "each other, dipped one first, are taken to lie within its bound of %.1f %%, a "
            "judgement.",
            100 * HS_K_PLAN_DOUBT_GROWTH_ACROSS);
    if (quench->uneven < 0) {
        double usual = hs_table_number(hs_table_get(HS_TABLE_QUENCH), quench->medium_row,
                                       HS_QUENCH_UNEVEN_REFERENCE);
        say(r, "Unevenness of the quench not given: %.0f %% between opposite sides assumed.",
            100 * usual);
    }
    if (job->part.condition == HS_COLD_DRAWN || job->part.condition == HS_HOT_ROLLED)
        say(r,
            "Stress in %s stock is reckoned for a part milled alike on both sides; to be rid of "
            "it: "
            "rough, stress relieve, machine again.",
            job->part.condition == HS_COLD_DRAWN ? "cold-drawn" : "hot-rolled");
    if (job->features > 0)
        say(r, "Holes, slots and steps are not in the bow, nor in the carbon at their edges.");
    say_of_holes(r, job);
    if (job->part.form == HS_PROFILE)
        say(r,
            "Corners of the outline are taken as sharp, the worst: a face is judged at its inner "
            "corners, by the flat at its outer edges; edges of holes are not looked at.");
}

static void say_of_boxes(hs_result *r, const hs_chain *chain) {
    const hs_job *job = chain->job;
    for (size_t i = 0; i < chain->route.heats; i++) {
        const hs_route_heat *heat = &chain->route.heat[i];
        const hs_step *step = &job->step[heat->step];
        if (!heat->carburises || step->log_points > 0) continue;
        if (!heat->packed)
            say(r, "Size of the box not given: neither the carbon of the heating-up nor the lag of "
                   "the part in cooling is reckoned.");
        else if (step->from_box_red)
            say(r,
                "The soak counts from the box being red: the part comes to heat %.1f h after that, "
                "so it is at heat for %.1f h.",
                (heat->lag.at_heat_s - heat->lag.red_s) / 3600,
                (heat->point[heat->n - 1].time_s - heat->lag.at_heat_s) / 3600);
        if (heat->packed)
            say(r,
                "Heating through the box is computed for a part in its middle, %s%zu in one box; "
                "the heat of an uneven fire and of the box's corners is not.",
                job->part.quantity > 1 ? "all " : "", job->part.quantity);
    }
}

static void say_of_scale(hs_result *r, const hs_job *job) {
    if (job->part.rust != HS_NO_RUST)
        say(r,
            "%s rust at the start: its pits are in no sum. Measure again once it is off; pits "
            "deeper than the clean-up stay in the face.",
            job->part.rust == HS_RUST_HEAVY ? "Heavy" : "Light");
    for (size_t i = 0; i < job->steps; i++) {
        const hs_step *step = &job->step[i];
        if (step->kind == HS_STRESS_RELIEVE)
            say(r, "The stress relieve is taken to come before the last roughing cut, which takes "
                   "its scale off.");
        if (step->oxygen > 0)
            say(r,
                "Oxygen of %.3g %% at the reheat slows the scale at first; what carbon dioxide and "
                "steam of a flame scale is not counted.",
                100 * step->oxygen);
    }
}

static void say_of_route(hs_result *r, const hs_chain *chain) {
    const hs_steel *steel = &chain->job->part.steel;
    say_of_scale(r, chain->job);
    say_of_boxes(r, chain);
    if (steel->only_maxima)
        say(r,
            "%s has maxima only: reckoned with C %.2f, Mn %.2f, Si %.2f %%; ask for the heat's "
            "own analysis.",
            steel->name, steel->mid.C, steel->mid.Mn, steel->mid.Si);
    if (steel->alloyed)
        say(r, "Carbon diffusivity is that of plain iron and carbon; on alloyed steel it is taken "
               "as known to 25 %% only.");
    if (chain->core.martensite < 0.5)
        say(r,
            "The core does not harden through in this section and quench: an estimate of %.0f "
            "to %.0f HV.",
            chain->core_HV.low, chain->core_HV.high);
    for (size_t i = 0; i < chain->job->steps; i++)
        if (chain->job->step[i].kind == HS_DESCALE) return;
    say(r, "No descaling step in the route: scale left on the part is not on its size.");
}

void hs_fill_limits(hs_result *result, const hs_chain *chain) {
    const hs_job *job = chain->job;
    say_of_shape(result, chain);
    say_of_route(result, chain);
    for (size_t i = 0; i < job->faces; i++)
        if (!job->face[i].stated)
            say(result, "Face %s is not in the sheet: taken as left as hardened.",
                job->face[i].name);
    if (!job->shop.stated)
        say(result, "No shop in the sheet: the usual shop is assumed (rough tolerance +-%.2f mm).",
            job->shop.rough_tolerance_m * 1e3);
    if (job->shop.records > 0)
        say(result, "The shop's record (%zu parts) is read but does not yet move the figures.",
            job->shop.records);
}
