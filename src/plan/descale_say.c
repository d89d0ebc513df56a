/* The decision on a descale step in words. */
#include "plan/descale_work.h"
#include "plan/loss.h"

#include "constants.h"
#include "hardskin/tables/table.h"
#include "hardskin/units/format.h"
#include "plan/words.h"

#include <math.h>
#include <string.h>

static int inch(const hs_descale_work *w) {
    return w->job->inch_first;
}

/* The step that would serve as the bake, as the sheet writes it. */
static void add_bake_step(hs_text *t, const hs_descale_work *w) {
    char hold[48];
    hs_format_time(hold, sizeof hold, w->judged.plan.hold_s, HS_UP);
    hs_text_add(t, " {\"do\": \"bake\", \"at\": \"%s\", \"for\": \"%s\"}",
                hs_word_temp(hs_word_whole_degree_K(w->judged.plan.temp_K, inch(w)), inch(w)).text,
                hold);
}

static const char *next_fault(hs_bake_step next) {
    switch (next) {
    case HS_BAKE_ABSENT:
        return "the route has no bake right after this step: add";
    case HS_BAKE_TOO_COOL:
        return "the route's bake is too cool to drive hydrogen out: take";
    case HS_BAKE_TOO_SHORT:
        return "the route's bake is too short: take";
    case HS_BAKE_TOO_HOT:
        return "the route's bake is hotter than is safe for the hardness: take";
    case HS_BAKE_SERVES:
        break;
    }
    return "";
}

static void say_stop(hs_text *t, const hs_descale_work *w) {
    const hs_judged *j = &w->judged;
    if (j->rule.reason == HS_BECAUSE_NO_HYDROGEN) {
        hs_text_add(t, "Not this way: an untempered part can crack or fly apart when it is ground: "
                       "temper first.");
        return;
    }
    hs_text_add(t, "Not this way: %s.", hs_hydrogen_text(j->rule.reason));
    if (w->at->self_hard) {
        hs_text_add(t,
                    " Even so slow a cooling may leave the case of this steel at %.0f HRC "
                    "(computed): soften "
                    "it first (stress relieve, 650 C), or brush or blast.",
                    w->at->surface_HRC);
        return;
    }
    if (j->rule.answer == HS_HYDROGEN_NEVER || j->no_bake) return;
    if (j->rule.answer == HS_HYDROGEN_WITH_BAKE) {
        hs_text_add(t, " It takes a bake, and %s", next_fault(w->next));
        add_bake_step(t, w);
        hs_text_add(t, ".");
        return;
    }
    if (!w->accepted) {
        hs_text_add(t, " It takes \"accept_hydrogen_risk\" with who and when, and the bake right "
                       "after this step:");
        add_bake_step(t, w);
        hs_text_add(t, ".");
        return;
    }
    hs_text_add(t, " The risk is accepted (%s), but %s", w->out->accepted, next_fault(w->next));
    add_bake_step(t, w);
    hs_text_add(t, ".");
}

static void say_decision(const hs_descale_work *w) {
    hs_result_descale *out = w->out;
    const char *reason = hs_hydrogen_text(w->judged.rule.reason);
    hs_text t = hs_text_start(out->text, sizeof out->text);
    if (out->verdict == HS_CLEAN_STOP) {
        say_stop(&t, w);
        return;
    }
    if (w->judged.rule.answer == HS_HYDROGEN_BARRED)
        hs_text_add(&t, "Only because the risk is accepted (%s): %s.", out->accepted, reason);
    else if (w->judged.rule.answer == HS_HYDROGEN_WITH_BAKE)
        hs_text_add(&t, "Short, with an inhibitor (which is no guarantee), then the bake: %s.",
                    reason);
    else
        hs_text_add(&t, "This may be done: %s.", reason);
    if (w->at->hardened && !w->at->tempered && !w->at->self_hard)
        hs_text_add(&t, " But temper first: an untempered part can crack by itself, or fly apart "
                        "when struck.");
    if (w->step->by == HS_BY_ANODIC_ELECTROLYSIS && w->at->hardened)
        hs_text_add(&t, " Check the leads: the part on the POSITIVE one.");
    hs_text_add(&t, "%s", w->advice.data);
    if (w->judged.rule.bake_after && !(w->at->scale_m > 0) &&
        hs_loss_rust_at(w->job, w->at->step) == HS_NO_RUST)
        hs_text_add(&t, " This route leaves no scale here: look first whether there is anything "
                        "to take off.");
    if (w->assumed.length > 2) hs_text_add(&t, " Assumed: %s.", w->assumed.data + 2);
}

static void say_limit(hs_text *t, size_t row, double limit_HRC) {
    const hs_table *table = hs_table_get(HS_TABLE_HYDROGEN_LIMITS);
    double HV = hs_table_number(table, row, HS_HYDROGEN_LIMITS_LIMIT_HV);
    hs_text_add(t, "%s (%s from ", hs_table_text(table, row, HS_HYDROGEN_LIMITS_NAME),
                hs_table_text(table, row, HS_HYDROGEN_LIMITS_ON));
    if (HV > 0)
        hs_text_add(t, "%.0f HV", HV);
    else
        hs_text_add(t, "%.0f HRC", limit_HRC);
    hs_text_add(t, ": %s)", hs_table_text(table, row, HS_HYDROGEN_LIMITS_ASKS));
}

/* Which limit the hardness passes: the lowest governs, the others are named. */
static void say_rule(const hs_descale_work *w) {
    enum { MOST = 16 };
    const hs_descale_at *at = w->at;
    size_t rows = hs_table_get(HS_TABLE_HYDROGEN_LIMITS)->rows, lowest = MOST;
    int passed[MOST] = {0};
    double limit_HRC[MOST], least = INFINITY;
    hs_text t = hs_text_start(w->out->rule, sizeof w->out->rule);
    if (w->judged.rule.reason == HS_BECAUSE_NO_HYDROGEN) return;
    for (size_t i = 0; i < rows && i < MOST; i++) {
        if (hs_hydrogen_limit(&passed[i], &limit_HRC[i], i, at->surface_HRC, at->core_HRC, NULL) !=
                HS_OK ||
            !passed[i] || limit_HRC[i] >= least)
            continue;
        least = limit_HRC[i];
        lowest = i;
    }
    if (lowest == MOST) {
        hs_text_add(&t, at->hardened ? "Governs: ISO 9587, surface-hardened parts."
                                     : "Below every published limit, the lowest of which is "
                                       "ISO 9587's, 1000 MPa or 31 HRC.");
        return;
    }
    hs_text_add(&t, "Governs, as the lowest limit passed: ");
    say_limit(&t, lowest, limit_HRC[lowest]);
    if (at->hardened) hs_text_add(&t, ", surface-hardened parts by their layer");
    const char *joint = ". Passed too: ";
    for (size_t i = 0; i < rows && i < MOST; i++) {
        if (!passed[i] || i == lowest) continue;
        hs_text_add(&t, "%s", joint);
        say_limit(&t, i, limit_HRC[i]);
        joint = ", ";
    }
    hs_text_add(&t, ".");
}

static void say_no_bake(hs_text *t, const hs_descale_work *w) {
    hs_bake_plan plan;
    hs_error why = {0};
    hs_bake(&plan, w->at->surface_HRC, w->at->hardened, w->temper_K, w->temper_s, &why);
    hs_text_add(t, "No bake is both useful and safe: %s.", why.message);
    if (w->at->hardened)
        hs_text_add(
            t, " The lowest temper that leaves one is %s.",
            hs_word_temp(HS_K_BAKE_LIMITS_LEAST + HS_K_BAKE_LIMITS_BELOW_TEMPER, inch(w)).text);
}

static void say_bake(const hs_descale_work *w) {
    const hs_judged *j = &w->judged;
    hs_result_descale *out = w->out;
    hs_text t = hs_text_start(out->bake, sizeof out->bake);
    if (j->no_bake) {
        say_no_bake(&t, w);
        return;
    }
    if (!j->bake || out->verdict == HS_CLEAN_STOP) return;
    out->bake_temp_K = hs_word_whole_degree_K(j->plan.temp_K, inch(w));
    out->bake_s = j->plan.hold_s;
    char hold[48], within[48], latest[48];
    hs_format_time(hold, sizeof hold, j->plan.hold_high_s, HS_UP);
    hs_format_time(within, sizeof within, j->plan.start_within_s, HS_DOWN);
    hs_format_time(latest, sizeof latest, j->plan.latest_s, HS_DOWN);
    if (j->plan.hold_high_s > j->plan.hold_s) hs_text_add(&t, "Better %s. ", hold);
    hs_text_add(&t, "Into the oven within %s of leaving the tank, %s at the very latest; ", within,
                latest);
    hs_text_add(&t, "a bake is no guarantee.");
    if (j->plan.below_usual)
        hs_text_add(&t, " Cooler than usual, as the temper allows no more: less sure.");
    if (w->next == HS_BAKE_SERVES) return;
    const char *fault = next_fault(w->next);
    hs_text_add(&t, " But %s", fault);
    add_bake_step(&t, w);
    hs_text_add(&t, ".");
}

void hs_descale_say(hs_descale_work *w) {
    hs_text who = hs_text_start(w->out->accepted, sizeof w->out->accepted);
    if (w->accepted) hs_text_add(&who, "%.100s", w->step->tank.accepted);
    say_decision(w);
    say_rule(w);
    say_bake(w);
}
