#include "plan/descale.h"

#include "constants.h"
#include "hardskin/model/bake.h"
#include "hardskin/tables/table.h"
#include "hardskin/units/format.h"
#include "plan/descale_tank.h"
#include "plan/words.h"

#include <math.h>
#include <stdio.h>

/* One question to the hydrogen rule, and what it said. */
typedef struct judged {
    hs_hydrogen_verdict rule;
    hs_clean verdict;
    int bake;    /* wanted and possible */
    int no_bake; /* wanted, not possible after this temper */
    hs_bake_plan plan;
} judged;

/* The part's state at the step. */
typedef struct state {
    double hardness_HRC;
    int hardened, tempered;
    double temper_K, temper_s;
    int accepted;
} state;

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
        break;
    }
    return HS_HYDROGEN_NO_SOURCE;
}

static hs_clean verdict_of(const judged *j, const state *s, hs_descale_method by) {
    if (j->no_bake) return HS_CLEAN_STOP;
    switch (j->rule.answer) {
    case HS_HYDROGEN_ALLOWED:
        /* a hard part on the wrong lead would be charged with hydrogen: hence care */
        return by == HS_BY_ANODIC_ELECTROLYSIS && s->hardened ? HS_CLEAN_CARE : HS_CLEAN_OK;
    case HS_HYDROGEN_WITH_BAKE:
        return HS_CLEAN_CARE;
    case HS_HYDROGEN_BARRED:
        return s->accepted ? HS_CLEAN_CARE : HS_CLEAN_STOP;
    case HS_HYDROGEN_NEVER:
        break;
    }
    return HS_CLEAN_STOP;
}

static hs_status judge(judged *out, const state *s, hs_descale_method by, hs_error *err) {
    judged j = {.verdict = HS_CLEAN_STOP};
    hs_status status =
        hs_hydrogen_rule(&j.rule, s->hardness_HRC, s->hardened, s->tempered, way_of(by), err);
    if (status != HS_OK) return status;
    if (j.rule.bake_after) {
        status = hs_bake(&j.plan, s->hardness_HRC, s->hardened, s->temper_K, s->temper_s, NULL);
        j.bake = status == HS_OK && j.plan.needed;
        j.no_bake = status != HS_OK;
    }
    j.verdict = verdict_of(&j, s, by);
    *out = j;
    return HS_OK;
}

static double last_temper_s(const hs_job *job, size_t step) {
    for (size_t i = step; i-- > 0;)
        if (job->step[i].kind == HS_TEMPER && job->step[i].hold_s.value > 0)
            return job->step[i].hold_s.value;
    return HS_K_DESCALE_PLAIN_TEMPER;
}

static const char *words_of(hs_descale_method by) {
    return hs_table_text(hs_table_get(HS_TABLE_DESCALE_TAKES), (size_t)by, HS_DESCALE_TAKES_METHOD);
}

static hs_status work_out(hs_result_descale *out, int *care, hs_text *assumed, hs_text *advice,
                          const hs_step *step, const hs_descale_part *part, hs_error *err) {
    const hs_table *takes = hs_table_get(HS_TABLE_DESCALE_TAKES);
    out->stock_taken_low_m = hs_table_number(takes, (size_t)step->by, HS_DESCALE_TAKES_LOW);
    out->stock_taken_high_m = hs_table_number(takes, (size_t)step->by, HS_DESCALE_TAKES_HIGH);
    switch (step->by) {
    case HS_BY_ACID:
        return hs_descale_acid(out, care, assumed, advice, &step->tank, part, err);
    case HS_BY_ELECTROLYSIS:
        return hs_descale_current(out, care, assumed, advice, &step->tank, part, err);
    case HS_BY_ANODIC_ELECTROLYSIS:
        return hs_descale_anodic(out, care, assumed, advice, &step->tank, part, err);
    case HS_BY_BRUSH:
    case HS_BY_BLAST:
        break;
    }
    hs_descale_usual_time(&out->time_low_s, &out->time_high_s, step->by, part);
    out->time_s = 0.5 * (out->time_low_s + out->time_high_s);
    return HS_OK;
}

static int bake_follows(const hs_job *job, size_t step) {
    return step + 1 < job->steps && job->step[step + 1].kind == HS_BAKE;
}

static void tell_bake(hs_result_descale *out, const judged *j, const hs_job *job, size_t step) {
    hs_text t = hs_text_start(out->bake, sizeof out->bake);
    if (j->no_bake) {
        hs_text_add(&t, "No bake is possible: the temper does not allow the least bake of 130 C.");
        return;
    }
    if (!j->bake || j->verdict == HS_CLEAN_STOP) return;
    out->bake_temp_K = j->plan.temp_K;
    out->bake_s = j->plan.hold_s;
    char hold[48], within[48];
    hs_format_time(hold, sizeof hold, j->plan.hold_s, HS_UP);
    hs_format_time(within, sizeof within, j->plan.start_within_s, HS_DOWN);
    hs_text_add(&t, "At %s for %s at least, started within %s; a bake is no guarantee.%s",
                hs_word_temp(j->plan.temp_K, job->inch_first).text, hold, within,
                bake_follows(job, step) ? "" : " The route has no bake after this step: add it.");
}

static void tell_decision(hs_result_descale *out, const judged *j, const state *s,
                          const hs_step *step, const char *advice, const char *assumed) {
    const char *reason = hs_hydrogen_text(j->rule.reason);
    hs_text t = hs_text_start(out->text, sizeof out->text);
    if (out->verdict == HS_CLEAN_STOP) {
        hs_text_add(&t, "Not this way: %s.", reason);
        if (j->rule.answer == HS_HYDROGEN_BARRED && !j->no_bake)
            hs_text_add(&t, " It takes \"accept_hydrogen_risk\" with who and when, and the bake.");
        return;
    }
    if (j->rule.answer == HS_HYDROGEN_BARRED)
        hs_text_add(&t, "Only because the risk is accepted (%.80s): %s.", step->tank.accepted,
                    reason);
    else if (j->rule.answer == HS_HYDROGEN_WITH_BAKE)
        hs_text_add(&t, "Short, with an inhibitor, then the bake: %s.", reason);
    else
        hs_text_add(&t, "This may be done: %s.", reason);
    if (step->by == HS_BY_ANODIC_ELECTROLYSIS && s->hardened)
        hs_text_add(&t, " Check the leads: the part on the POSITIVE one.");
    hs_text_add(&t, "%s", advice);
    if (assumed[0]) hs_text_add(&t, " Assumed: %s.", assumed + 2);
}

static void add_alternative(hs_result_descale *out, const judged *j, const char *what, double low_s,
                            double high_s) {
    if (out->alternatives == sizeof out->alternative / sizeof *out->alternative) return;
    char low[48], high[48];
    hs_format_time(low, sizeof low, 60 * fmax(round(low_s / 60), 1), HS_NEAREST);
    hs_format_time(high, sizeof high, 60 * ceil(high_s / 60), HS_UP);
    snprintf(out->alternative[out->alternatives++], sizeof out->alternative[0], "%s: %s to %s%s",
             what, low, high, j->bake ? ", then the bake" : "");
}

/* Order of preference: no scale at all, by hand, without hydrogen into the steel, the rest. */
static hs_status tell_others(hs_result_descale *out, const state *s, hs_descale_method by,
                             const hs_descale_part *part, hs_error *err) {
    static const hs_descale_method order[] = {HS_BY_BLAST, HS_BY_BRUSH, HS_BY_ELECTROLYSIS,
                                              HS_BY_ANODIC_ELECTROLYSIS, HS_BY_ACID};
    if (s->hardened)
        snprintf(out->alternative[out->alternatives++], sizeof out->alternative[0],
                 "no scale at all: pack or wrap the reheat, or descale while the part is soft");
    for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
        judged j;
        state asked = *s;
        asked.accepted = 0; /* an accepted risk is no advice */
        double low_s, high_s;
        if (order[i] == by) continue;
        if (order[i] == HS_BY_ANODIC_ELECTROLYSIS && !s->hardened) continue; /* needless loss */
        hs_status status = judge(&j, &asked, order[i], err);
        if (status != HS_OK) return status;
        if (j.verdict == HS_CLEAN_STOP) continue;
        hs_descale_usual_time(&low_s, &high_s, order[i], part);
        add_alternative(out, &j, words_of(order[i]), low_s, high_s);
    }
    return HS_OK;
}

hs_status hs_descale_plan(hs_result_descale *out, const hs_job *job, size_t step,
                          double surface_HRC_there, int hardened, int tempered, double scale_m,
                          double last_temper_K, hs_error *err) {
    const hs_step *this_step = &job->step[step];
    const state s = {.hardness_HRC = surface_HRC_there,
                     .hardened = hardened,
                     .tempered = tempered,
                     .temper_K = last_temper_K,
                     .temper_s = last_temper_s(job, step),
                     .accepted = this_step->tank.accepted && this_step->tank.accepted[0]};
    hs_result_descale found = {.hardness_HRC = surface_HRC_there};
    hs_descale_part part = {.scale_m = scale_m};
    char assumed_text[200], advice_text[280];
    hs_text assumed = hs_text_start(assumed_text, sizeof assumed_text);
    hs_text advice = hs_text_start(advice_text, sizeof advice_text);
    judged j;
    int care = 0;
    hs_status status = hs_part_area(&part.area_m2, &job->part, err);
    if (status == HS_OK) status = judge(&j, &s, this_step->by, err);
    if (status == HS_OK) status = work_out(&found, &care, &assumed, &advice, this_step, &part, err);
    if (status == HS_OK) status = tell_others(&found, &s, this_step->by, &part, err);
    if (status != HS_OK) return status;
    found.area_m2 = part.area_m2;
    found.verdict = j.verdict == HS_CLEAN_OK && care ? HS_CLEAN_CARE : j.verdict;
    snprintf(found.method, sizeof found.method, "%s", words_of(this_step->by));
    tell_bake(&found, &j, job, step);
    tell_decision(&found, &j, &s, this_step, advice_text, assumed_text);
    *out = found;
    return HS_OK;
}
