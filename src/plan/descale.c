#include "plan/descale.h"

#include "constants.h"
#include "hardskin/tables/table.h"
#include "hardskin/units/format.h"
#include "plan/cool.h"
#include "plan/descale_work.h"
#include "plan/place.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static hs_hydrogen_way way_of(hs_descale_method by) {
    switch (by) {
    case HS_BY_ACID:
        return HS_HYDROGEN_ACID;
    case HS_BY_ELECTROLYSIS:
        return HS_HYDROGEN_CATHODIC;
    case HS_BY_ANODIC_ELECTROLYSIS:
        return HS_HYDROGEN_ANODIC;
    case HS_BY_BRUSH:
    case HS_BY_BLAST:
    case HS_BY_FLAP_DISC:
        break;
    }
    return HS_HYDROGEN_NO_SOURCE;
}

static hs_clean verdict_of(const hs_judged *j, int hardened, int accepted, hs_descale_method by) {
    if (j->no_bake) return HS_CLEAN_STOP;
    switch (j->rule.answer) {
    case HS_HYDROGEN_ALLOWED:
        /* a hard part on the wrong lead would be charged with hydrogen: hence care */
        return by == HS_BY_ANODIC_ELECTROLYSIS && hardened ? HS_CLEAN_CARE : HS_CLEAN_OK;
    case HS_HYDROGEN_WITH_BAKE:
        return HS_CLEAN_CARE;
    case HS_HYDROGEN_BARRED:
        return accepted ? HS_CLEAN_CARE : HS_CLEAN_STOP;
    case HS_HYDROGEN_NEVER:
        break;
    }
    return HS_CLEAN_STOP;
}

/* Nothing grinds an untempered part, and what rubs or hits it waits for the temper. */
static hs_clean untempered(hs_clean verdict, hs_descale_method by) {
    if (by == HS_BY_FLAP_DISC) return HS_CLEAN_STOP;
    return verdict == HS_CLEAN_OK ? HS_CLEAN_CARE : verdict;
}

static hs_status judge(hs_judged *out, const hs_descale_work *w, hs_descale_method by, int accepted,
                       hs_error *err) {
    hs_judged j = {.verdict = HS_CLEAN_STOP};
    const hs_descale_at *at = w->at;
    hs_status status =
        hs_hydrogen_rule(&j.rule, at->surface_HRC, at->hardened, at->tempered, way_of(by), err);
    if (status != HS_OK) return status;
    if (j.rule.bake_after) {
        status = hs_bake(&j.plan, at->surface_HRC, at->hardened, w->temper_K, w->temper_s, NULL);
        j.bake = status == HS_OK && j.plan.needed;
        j.no_bake = status != HS_OK;
    }
    j.verdict = verdict_of(&j, at->hardened, accepted, by);
    if (at->hardened && !at->tempered && !at->self_hard) j.verdict = untempered(j.verdict, by);
    *out = j;
    return HS_OK;
}

/* The last temper since the last quench; a bake only where there was no temper. */
static void find_temper(hs_descale_work *w) {
    int temper = 0;
    w->temper_K = w->temper_s = NAN;
    for (size_t i = 0; i < w->at->step; i++) {
        const hs_step *s = &w->job->step[i];
        if (s->kind == HS_QUENCH) {
            temper = 0;
            w->temper_K = w->temper_s = NAN;
        }
        if (s->kind != HS_TEMPER && (s->kind != HS_BAKE || temper)) continue;
        temper |= s->kind == HS_TEMPER;
        w->temper_K = s->temp_K.value;
        w->temper_s = s->hold_s.value > 0 ? s->hold_s.value : HS_K_DESCALE_PLAIN_TEMPER;
    }
}

static hs_bake_step look_at_next(const hs_descale_work *w) {
    size_t next = w->at->step + 1;
    if (next >= w->job->steps || w->job->step[next].kind != HS_BAKE) return HS_BAKE_ABSENT;
    const hs_step *s = &w->job->step[next];
    const double hair_K = 1e-6; /* a temperature in kelvin is not a round number in binary */
    if (s->temp_K.low < HS_K_BAKE_LIMITS_LEAST - hair_K) return HS_BAKE_TOO_COOL;
    if (s->hold_s.low < w->judged.plan.hold_s - hair_K) return HS_BAKE_TOO_SHORT;
    return s->temp_K.value > w->judged.plan.temp_K + hair_K ? HS_BAKE_TOO_HOT : HS_BAKE_SERVES;
}

/* One part at least goes into the tub, with room for what it is to stand in. */
static hs_status check_tub(const hs_descale_work *w, hs_error *err) {
    double part_m3 = hs_bulk_of(&w->job->part).volume_m3, tub_m3 = w->step->tank.tub_m3;
    if (!(tub_m3 > 0) || tub_m3 > part_m3) return HS_OK;
    return hs_at_step(hs_fail(err, HS_E_IMPOSSIBLE, "a larger tub",
                              "a part of %.3g L does not go into a tub of %.3g L", 1e3 * part_m3,
                              1e3 * tub_m3),
                      w->step, "tub", err);
}

static const char *takes_text(hs_descale_method by, size_t column) {
    return hs_table_text(hs_table_get(HS_TABLE_DESCALE_TAKES), (size_t)by, column);
}

static hs_status work_out(hs_descale_work *w, hs_error *err) {
    const hs_table *takes = hs_table_get(HS_TABLE_DESCALE_TAKES);
    hs_result_descale *out = w->out;
    out->stock_taken_low_m = hs_table_number(takes, (size_t)w->step->by, HS_DESCALE_TAKES_LOW);
    out->stock_taken_high_m = hs_table_number(takes, (size_t)w->step->by, HS_DESCALE_TAKES_HIGH);
    switch (w->step->by) {
    case HS_BY_ACID:
        return hs_descale_acid(w, err);
    case HS_BY_ELECTROLYSIS:
        return hs_descale_current(w, err);
    case HS_BY_ANODIC_ELECTROLYSIS:
        return hs_descale_anodic(w, err);
    case HS_BY_BRUSH:
    case HS_BY_BLAST:
    case HS_BY_FLAP_DISC:
        break;
    }
    hs_descale_usual_time(&out->time_low_s, &out->time_high_s, w->step->by, w);
    out->time_s = 0.5 * (out->time_low_s + out->time_high_s);
    return HS_OK;
}

static void whole_minutes(char out[48], double minutes) {
    if (minutes < 2)
        snprintf(out, 48, "1 min");
    else
        hs_format_time(out, 48, 60 * minutes, HS_NEAREST);
}

static void add_alternative(hs_descale_work *w, const hs_judged *j, hs_descale_method by) {
    hs_result_descale *out = w->out;
    double low_s, high_s;
    char low[48], high[48];
    hs_descale_usual_time(&low_s, &high_s, by, w);
    whole_minutes(low, round(low_s / 60));
    whole_minutes(high, ceil(high_s / 60));
    hs_text t = hs_text_start(out->alternative[out->alternatives++], sizeof out->alternative[0]);
    hs_text_add(&t, "%s: %s", takes_text(by, HS_DESCALE_TAKES_METHOD), low);
    if (strcmp(low, high) != 0) hs_text_add(&t, " to %s", high);
    if (j->bake) {
        hs_format_time(high, sizeof high, j->plan.hold_s, HS_UP);
        hs_text_add(&t, ", then the bake, %s", high);
    }
    hs_text_add(&t, "; %s", takes_text(by, HS_DESCALE_TAKES_HARM));
}

/* Order of preference: no scale at all, by hand, without hydrogen into the steel, acid with the
 * bake. On a soft part the tank spares the metal and the hands. */
static hs_status tell_others(hs_descale_work *w, hs_error *err) {
    static const hs_descale_method order[] = {
        HS_BY_BLAST, HS_BY_BRUSH, HS_BY_FLAP_DISC, HS_BY_ELECTROLYSIS, HS_BY_ANODIC_ELECTROLYSIS,
        HS_BY_ACID};
    int hardened = w->at->hardened;
    if (hardened && !w->at->tempered && !w->at->self_hard)
        snprintf(w->out->alternative[w->out->alternatives++], sizeof w->out->alternative[0], "%s",
                 "temper first, within the hour of the quench; then one of these");
    if (hardened)
        snprintf(
            w->out->alternative[w->out->alternatives++], sizeof w->out->alternative[0], "%s",
            w->at->self_hard
                ? "soften it first: stress relieve at 650 C; then any way a soft part allows"
                : "no scale at all: pack or wrap the reheat, or descale while the part is soft");
    for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
        hs_judged j;
        if (order[i] == w->step->by) continue;
        if (order[i] == HS_BY_ANODIC_ELECTROLYSIS && !hardened) continue; /* needless loss */
        hs_status status = judge(&j, w, order[i], 0, err); /* an accepted risk is no advice */
        if (status != HS_OK) return status;
        if (j.verdict != HS_CLEAN_STOP) add_alternative(w, &j, order[i]);
    }
    return HS_OK;
}

/* Hydrogen into hard steel, and no bake in the route that would follow: it is not done. */
static void ask_for_bake(hs_descale_work *w) {
    hs_judged *j = &w->judged;
    w->next = look_at_next(w);
    int lacks = w->next != HS_BAKE_SERVES && w->next != HS_BAKE_TOO_HOT;
    if (j->rule.bake_after && lacks) j->verdict = HS_CLEAN_STOP;
}

hs_status hs_descale_plan(hs_result_descale *out, const hs_job *job, const hs_descale_at *at,
                          hs_error *err) {
    const hs_step *step = &job->step[at->step];
    hs_result_descale found = {
        .step = at->step, .hardness_HRC = at->surface_HRC, .core_HRC = at->core_HRC};
    char assumed_text[320], advice_text[480];
    hs_descale_work w = {.job = job,
                         .step = step,
                         .at = at,
                         .accepted = step->tank.accepted && step->tank.accepted[0],
                         .assumed = hs_text_start(assumed_text, sizeof assumed_text),
                         .advice = hs_text_start(advice_text, sizeof advice_text),
                         .out = &found};
    find_temper(&w);
    hs_status status = hs_part_area(&w.area_m2, &job->part, err);
    if (status == HS_OK) status = judge(&w.judged, &w, step->by, w.accepted, err);
    if (status == HS_OK) status = check_tub(&w, err);
    if (status == HS_OK) status = work_out(&w, err);
    if (status == HS_OK) status = tell_others(&w, err);
    if (status != HS_OK) return status;
    ask_for_bake(&w);
    found.area_m2 = w.area_m2;
    found.cooled_hard = at->self_hard;
    found.verdict = w.judged.verdict == HS_CLEAN_OK && w.care ? HS_CLEAN_CARE : w.judged.verdict;
    snprintf(found.method, sizeof found.method, "%s",
             takes_text(step->by, HS_DESCALE_TAKES_METHOD));
    hs_descale_say(&w);
    hs_descale_say_order(&w);
    *out = found;
    return HS_OK;
}
