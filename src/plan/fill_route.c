#include "plan/fill.h"
#include "plan/harden.h"

#include "constants.h"
#include "hardskin/tables/table.h"
#include "hardskin/units/format.h"
#include "plan/descale_state.h"
#include "plan/words.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const char *const step_words[] = {"stress relieve", "carburise", "cool",
                                         "reheat",         "quench",    "temper",
                                         "straighten",     "descale",   "bake"};

/* Descale methods in the words of the sheet. */
static const char *method_words(hs_descale_method by) {
    return hs_table_text(hs_table_get(HS_TABLE_DESCALE_TAKES), (size_t)by, 0);
}

static double length_of(const hs_step *step) {
    if (step->log_points > 0) return step->log[step->log_points - 1].time_s;
    return step->hold_s.value;
}

static void describe(hs_result_step *out, const hs_step *step, int inch) {
    hs_word temp = {""};
    char time[48] = "";
    if (step->temp_K.value > 0) temp = hs_word_temp(step->temp_K.value, inch);
    if (out->hold_s > 0) hs_format_time(time, sizeof time, out->hold_s, HS_NEAREST);
    const char *how = step->kind == HS_DESCALE ? method_words(step->by)
                      : step->medium           ? step->medium
                                               : "";
    snprintf(out->text, sizeof out->text, "%s%s%s%s%s%s%s%s%s", step_words[step->kind],
             temp.text[0] ? " " : "", temp.text, time[0] ? " " : "", time,
             step->from_box_red ? " from box red" : "",
             !how[0]                    ? ""
             : step->kind == HS_DESCALE ? " by "
                                        : " in ",
             how, step->log_points > 0 ? " (as logged)" : "");
}

/* Case depth to the limit if the part were hardened with what it has now. */
static hs_status depth_after(double *depth_m, const hs_chain *chain, size_t heats, double limit_HV,
                             hs_history_work *work, hs_error *err) {
    hs_case_profile profile;
    const hs_job *job = chain->job;
    hs_history_point middle = {.diffusivity_factor = 1,
                               .transfer_factor = 1,
                               .core_pct = job->part.steel.mid.C,
                               .cells = chain->response[0].accuracy.cells};
    *depth_m = 0;
    if (heats == 0 || chain->axes.n == 0) return HS_OK;
    hs_status status =
        hs_history_run(&profile, &chain->axes.axis[0], &chain->route, heats, middle, work, err);
    if (status == HS_OK) status = hs_harden_profile(&profile, chain, &chain->axes.axis[0], err);
    if (status != HS_OK) return status;
    if (hs_case_depth(depth_m, &profile, limit_HV, NULL) != HS_OK) *depth_m = 0;
    if (chain->reading.plan && chain->reading.factor > 0) *depth_m *= chain->reading.factor;
    return HS_OK;
}

/* The packed heat of a step, NULL if it has none. */
static const hs_route_heat *packed_heat(const hs_route *route, size_t step) {
    for (size_t i = 0; i < route->heats; i++)
        if (route->heat[i].step == step && route->heat[i].packed) return &route->heat[i];
    return NULL;
}

/* From fire on to off: up to heat, and at heat. */
static void take_times(hs_result_step *out, const hs_route_heat *heat) {
    out->heat_up_s = heat->lag.at_heat_s;
    out->heat_up_low_s = heat->lag.low_s;
    out->heat_up_high_s = heat->lag.high_s;
    out->red_s = heat->lag.red_s;
    out->hold_s = heat->point[heat->n - 1].time_s - heat->lag.at_heat_s;
}

hs_status hs_fill_route(hs_result *result, const hs_chain *chain, hs_history_work *work,
                        hs_error *err) {
    const hs_job *job = chain->job;
    static const double middle[HS_INPUTS] = {0};
    double clock_s = 0, depth_m = 0;
    size_t heats = 0;
    for (size_t i = 0; i < job->steps; i++) {
        const hs_step *step = &job->step[i];
        hs_result_step *out = &result->step[i];
        size_t before = heats;
        while (heats < chain->route.heats && chain->route.heat[heats].step <= i)
            heats++;
        hs_status status = HS_OK;
        if (heats > before)
            status = depth_after(&depth_m, chain, heats, result->hard.limit_HV, work, err);
        if (status != HS_OK) return status;
        *out = (hs_result_step){.start_s = clock_s,
                                .hold_s = length_of(step),
                                .temp_K = step->temp_K.value,
                                .case_depth_m = depth_m,
                                .hardness_HRC = hs_hardened_HRC(hs_chain_surface_HV(chain, i + 1)),
                                .lost_m = hs_loss_metal(&chain->loss, i + 1, middle)};
        const hs_descale_at at = hs_descale_state(chain, i + 1);
        out->cooled_HRC = at.self_hard ? at.surface_HRC : NAN;
        describe(out, step, job->inch_first);
        const hs_route_heat *heat = packed_heat(&chain->route, i);
        if (heat) take_times(out, heat);
        clock_s += out->heat_up_s + out->hold_s;
    }
    result->steps = job->steps;
    return HS_OK;
}
