#include "plan/aim.h"
#include "plan/fill.h"

#include "constants.h"
#include "plan/words.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

static void add_term(hs_result_dimension *d, const char *term, double value_m) {
    if (d->terms == HS_MAX_TERMS) return;
    hs_term *t = &d->because[d->terms++];
    snprintf(t->term, sizeof t->term, "%s", term);
    t->value_m = value_m;
}

/* Medians of the letters, mean over the ground faces; the doubt of all together is what is left. */
static void explain_need(hs_result_dimension *d, const hs_window_found *f, const hs_chain *chain,
                         const hs_dimension *dimension, double need_m) {
    static const double middle[HS_INPUTS] = {0};
    hs_part_draw draw = hs_chain_draw(chain, middle);
    double growth_m = hs_warp_growth(&chain->warp, chain->job, dimension, middle);
    double clean = 0, lost = 0, shape = 0, growth = 0;
    for (int k = 0; k < 2; k++) {
        hs_trial t = hs_chain_trial(chain, dimension->face[k], growth_m, &draw);
        lost += 0.5 * t.sum.lost_high_m;
        growth += 0.5 * growth_m;
        if (!t.sum.ground) continue;
        clean += 0.5 * t.sum.clean_up_m;
        shape += 0.25 * f->shape_typical_m;
    }
    double width = 0;
    if (f->grounds == 0) {
        width = -0.25 * (dimension->size.upper_m - dimension->size.lower_m);
        add_term(d, "from the middle of the finished tolerance to its low limit", width);
    } else {
        add_term(d, "clean-up: soft rim, cut marks, pits", clean);
    }
    add_term(d, "lost as scale and in descaling", lost);
    if (f->grounds > 0) add_term(d, "half the shape to expect (bow, run-out, ovality)", shape);
    add_term(d,
             growth >= 0 ? "growth, taken off"
             : f->inside ? "growth, which opens the bore, put on"
                         : "shrinking, put on",
             -growth);
    add_term(d, "doubt of all these together, set-up in it",
             need_m - width - clean - lost - shape + growth);
}

void hs_fill_note(hs_result_dimension *d, const char *format, ...) {
    size_t used = strlen(d->note);
    if (used > 0 && used + 2 < sizeof d->note) used += (size_t)sprintf(d->note + used, "; ");
    va_list args;
    va_start(args, format);
    vsnprintf(d->note + used, sizeof d->note - used, format, args);
    va_end(args);
}

static void note_hardening(hs_result_dimension *d, const hs_face *face, hs_band margin) {
    if (face->finish != HS_GROUND || !hs_face_asks(face) || margin.mid >= 1) return;
    hs_fill_note(d, "%s (it has %.2f of the hardenability face %s takes)",
                 margin.high < 1 ? "this quench does not harden the case in this steel and section"
                                 : "it is in doubt whether this quench hardens the case fully: "
                                   "harden a test piece of this section first",
                 margin.mid, face->name);
}

static void note_face(hs_result_dimension *d, const hs_face *face) {
    if (face->finish == HS_AS_HARDENED)
        hs_fill_note(d, "face %s stays as hardened: the size holds only locally across a bow",
                     face->name);
    if (face->finish == HS_SOFT)
        hs_fill_note(
            d,
            "face %s stays soft: it is counted as the fire leaves it; if it is cut to size later, "
            "add that cut to the rough size",
            face->name);
    if (face->finish == HS_GROUND && !hs_face_asks(face))
        hs_fill_note(
            d,
            "no case and no hardness is asked of face %s: the wheel may go through its case; "
            "ask for one if it must wear",
            face->name);
}

/* What a size that holds only locally measures when the part lies on a plate. */
static void note_over_the_bow(hs_result_dimension *d, const hs_window_found *f, const hs_job *job,
                              const hs_dimension *dimension) {
    const double seen_m = 10e-6;
    int flat = dimension->across == HS_ACROSS_FACES && !hs_dimension_along(job, dimension);
    if (!flat || f->inside || !(f->shape_high_m > seen_m)) return;
    hs_fill_note(d, "over its bow it measures %s more, 1 part in 20 %s or more",
                 hs_word_length(f->shape_typical_m, job->inch_first, HS_UP).text,
                 hs_word_length(f->shape_high_m, job->inch_first, HS_UP).text);
}

static void note_dimension(hs_result_dimension *d, const hs_window_found *f, const hs_chain *chain,
                           const hs_dimension *dimension) {
    const hs_job *job = chain->job;
    if (f->grounds == 0) {
        hs_fill_note(
            d, "no face of it is ground: it keeps the size the fire gives it, and across a bow "
               "that size holds only locally");
        note_over_the_bow(d, f, job, dimension);
        return;
    }
    if (f->verdict == HS_STOP && f->rough.high_m >= f->rough.low_m && !f->refused)
        hs_fill_note(d, "the window is narrower than a bench can measure");
    double told = NAN; /* of both faces once, where they harden alike */
    for (int k = 0; k < 2; k++) {
        size_t face = dimension->face[k];
        hs_band margin = chain->face[face].margin;
        if (k == 1 && face == dimension->face[0]) break;
        if (chain->face[face].axis < HS_MAX_AXES && margin.mid != told)
            note_hardening(d, &job->face[face], margin);
        told = margin.mid;
        note_face(d, &job->face[face]);
        if (job->face[face].finish == HS_AS_HARDENED) note_over_the_bow(d, f, job, dimension);
    }
}

static void fill_pulled(hs_result_dimension *d, const hs_window_found *f, const hs_job *job) {
    int inch = job->inch_first;
    if (!f->pulled) return;
    d->pulled = (hs_result_pulled){.present = 1,
                                   .sprung_m = f->sprung_m,
                                   .sprung_high_m = f->sprung_high_m,
                                   .flatness_m = f->flatness_m};
    hs_word bow = hs_word_length(f->sprung_at_worst_m, inch, HS_UP);
    hs_word flat = hs_word_length(f->flatness_m, inch, HS_DOWN);
    char *out = d->pulled.refused;
    size_t size = sizeof d->pulled.refused;
    if (f->stiff)
        snprintf(out, size,
                 "pulled flat is refused: the chuck does not surely press a bow of %s flat %s",
                 bow.text, job->part.form == HS_PLATE ? "at this thickness" : "with this section");
    else if (!(f->flatness_m > 0))
        snprintf(out, size,
                 "pulled flat is refused: a bow of up to %s comes back when the chuck lets go, and "
                 "no flatness is asked that allows it",
                 bow.text);
    else if (f->refused)
        snprintf(out, size,
                 "pulled flat is refused: a bow of up to %s comes back when the chuck lets go, and "
                 "the flatness asked is %s",
                 bow.text, flat.text);
    if (out[0]) hs_fill_note(d, "%s", out);
}

/* In the other unit; there it must stay inside the window, with the tolerance where that fits. */
static double aim_in(const hs_result_dimension *d, double aim_m, double slack_m) {
    double size = aim_m / 0.0254, slack = slack_m / 0.0254;
    double best = hs_aim_readable(size, d->rough_low_in + slack, d->rough_high_in - slack, 4, 4);
    return isfinite(best) ? best : hs_aim_readable(size, d->rough_low_in, d->rough_high_in, 4, 4);
}

/* From the hardened surface: what the fire took and added stands in the measured size already. */
static void fill_bench(hs_result_dimension *d, const hs_window_found *f, hs_limits finish,
                       int inch) {
    hs_face_sum face[2];
    for (int k = 0; k < 2; k++) {
        face[k] = f->bad[k];
        face[k].budget_m -= face[k].lost_high_m;
        face[k].lost_low_m = face[k].lost_high_m = 0;
        face[k].growth_low_m = face[k].growth_high_m = 0;
    }
    d->bench = hs_window_bench(f->inside, finish, face);
    if (!d->bench.present) return;
    hs_round up = f->inside ? HS_DOWN : HS_UP, down = f->inside ? HS_UP : HS_DOWN;
    d->bench.clean_from_m = hs_window_round(d->bench.clean_from_m, inch, up);
    if (isfinite(d->bench.case_to_m))
        d->bench.case_to_m = hs_window_round(d->bench.case_to_m, inch, down);
}

/* Two ground faces that ask or get different things; what halving the stock alike would do. */
static void fill_sides(hs_result_dimension *d, const hs_window_found *f, hs_limits finish,
                       double tolerance_m) {
    const double same_m = 5e-6;
    double total_m = f->inside ? 0.5 * (finish.low_m + finish.high_m) - d->rough_aim_m
                               : d->rough_aim_m - 0.5 * (finish.low_m + finish.high_m);
    double stock_m[2] = {NAN, NAN};
    if (f->verdict != HS_STOP) hs_found_share(stock_m, f, total_m);
    for (int k = 0; k < 2; k++)
        d->side[k] = (hs_result_side){.ground = f->bad[k].ground,
                                      .need_m = f->need_m[k],
                                      .may_m = f->may_m[k],
                                      .stock_m = stock_m[k]};
    d->unequal = f->grounds == 2 && fabs(stock_m[0] - stock_m[1]) > same_m;
    if (!d->unequal) return;
    double need_m = fmax(f->need_m[0], f->need_m[1]), may_m = fmin(f->may_m[0], f->may_m[1]);
    d->halved = hs_window_verdict(hs_window_rough(f->inside, finish, 2 * need_m, 2 * may_m),
                                  2 * tolerance_m);
}

static void fill_sizes(hs_result_dimension *d, const hs_window_found *f, const hs_chain *chain,
                       const hs_dimension *dimension) {
    const hs_job *job = chain->job;
    int inch = job->inch_first;
    double t = job->shop.rough_tolerance_m;
    hs_limits finish = {dimension->size.lower_m, dimension->size.upper_m};
    double slack = f->verdict == HS_GO ? t : 0;
    d->rough_low_m = hs_window_round(f->rough.low_m, inch, HS_UP);
    d->rough_high_m = hs_window_round(f->rough.high_m, inch, HS_DOWN);
    d->rough_low_in = hs_window_round_in(f->rough.low_m, HS_UP);
    d->rough_high_in = hs_window_round_in(f->rough.high_m, HS_DOWN);
    d->rough_aim_m = f->aim_m;
    d->rough_aim_in = aim_in(d, f->aim_m, slack);
    double stock = d->rough_aim_m - 0.5 * (finish.low_m + finish.high_m);
    d->stock_m = 0.5 * (f->inside ? -stock : stock);
    hs_limits offered = {d->rough_aim_m - t, d->rough_aim_m + t};
    double limit = hs_window_shape_limit(f->inside, finish, offered, f->bad);
    d->shape_limit_m = isfinite(limit) ? hs_window_round(limit, inch, HS_DOWN) : NAN;
    double middle_m = 0.5 * (f->rough.low_m + f->rough.high_m);
    offered = (hs_limits){middle_m - t, middle_m + t};
    limit = hs_window_shape_limit(f->inside, finish, offered, f->bad);
    d->shape_limit_middle_m = isfinite(limit) ? hs_window_round(limit, inch, HS_DOWN) : NAN;
}

static void fill_dimension(hs_result_dimension *d, const hs_window_found *f, const hs_chain *chain,
                           const hs_dimension *dimension) {
    int inch = chain->job->inch_first;
    d->verdict = f->verdict;
    d->inside = f->inside;
    d->finish_low_m = dimension->size.lower_m;
    d->finish_high_m = dimension->size.upper_m;
    d->rough_low_m = d->rough_aim_m = d->rough_high_m = d->stock_m = d->shape_limit_m = NAN;
    d->rough_low_in = d->rough_aim_in = d->rough_high_in = NAN;
    d->shape_limit_middle_m = d->side[0].stock_m = d->side[1].stock_m = NAN;
    d->need_m = d->may_m = NAN;
    if (f->verdict == HS_NONE) {
        snprintf(d->note, sizeof d->note, "soft faces: cut to size after the fire");
        return;
    }
    double need_m = 0.5 * (f->need_m[0] + f->need_m[1]);
    double may_m = 0.5 * (f->may_m[0] + f->may_m[1]);
    if (f->grounds == 0) { /* the window as stock from the middle of the finished tolerance */
        double middle_m = 0.5 * (d->finish_low_m + d->finish_high_m);
        need_m = 0.5 * (f->inside ? middle_m - f->rough.high_m : f->rough.low_m - middle_m);
        may_m = 0.5 * (f->inside ? middle_m - f->rough.low_m : f->rough.high_m - middle_m);
    }
    d->need_m = hs_window_round(need_m, inch, HS_UP);
    d->may_m = hs_window_round(may_m, inch, HS_DOWN);
    d->shape_m = f->shape_typical_m;
    d->shape_high_m = f->shape_high_m;
    d->joint = f->joint;
    d->joint_middle = f->joint_middle;
    explain_need(d, f, chain, dimension, d->need_m);
    note_dimension(d, f, chain, dimension);
    fill_pulled(d, f, chain->job);
    if (f->verdict != HS_STOP) fill_sizes(d, f, chain, dimension);
    hs_limits finish = {d->finish_low_m, d->finish_high_m};
    fill_sides(d, f, finish, chain->job->shop.rough_tolerance_m);
    if (f->verdict != HS_STOP && !f->pulled) fill_bench(d, f, finish, inch);
    if (f->verdict != HS_STOP && f->pulled)
        d->shape_limit_m = d->shape_limit_middle_m =
            hs_window_round(fmin(f->flattens_m, f->flatness_m), inch, HS_DOWN);
}

void hs_fill_dimensions(hs_result *result, const hs_window_found *found, const hs_chain *chain,
                        const hs_draws *draws, hs_decide_work *work) {
    const hs_job *job = chain->job;
    for (size_t i = 0; i < job->dimensions; i++) {
        const hs_dimension *dimension = &job->dimension[i];
        hs_result_dimension *d = &result->dimension[i];
        fill_dimension(d, &found[i], chain, dimension);
        for (int k = 0; k < 2; k++) {
            size_t face = dimension->face[k];
            if (found[i].verdict == HS_NONE || !found[i].bad[k].ground) continue;
            if (chain->face[face].axis == HS_MAX_AXES || result->face[face].present) continue;
            hs_fill_face(&result->face[face], &found[i], chain, i, k, draws, work);
        }
    }
}
