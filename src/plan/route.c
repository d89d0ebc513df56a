#include "plan/route.h"

#include "constants.h"
#include "hardskin/tables/table.h"
#include "plan/cool.h"
#include "plan/history.h"
#include "plan/packed.h"
#include "plan/place.h"

#include <math.h>
#include <string.h>

static const double one_hour_s = 3600;

static int is_temper(const hs_step *step) {
    return step->kind == HS_TEMPER || step->kind == HS_BAKE;
}

static double hottest(const hs_route_heat *heat) {
    double best = 0;
    for (size_t i = 0; i < heat->n; i++)
        best = fmax(best, heat->point[i].temp_K);
    return best;
}

/* The path of a step: its log, or a hold at heat. */
static hs_status read_path(hs_route_heat *heat, const hs_step *step, hs_error *err) {
    if (step->log_points > HS_MAX_LOG)
        return hs_fail(err, HS_E_TOO_LARGE, "thin the log out", "more than %d points in a log",
                       HS_MAX_LOG);
    for (size_t i = 0; i < step->log_points; i++)
        heat->point[i] = step->log[i];
    heat->n = step->log_points;
    if (heat->n > 0) return HS_OK;
    heat->point[0] = (hs_heat_point){0, step->temp_K.value};
    heat->point[1] = (hs_heat_point){step->hold_s.value, step->temp_K.value};
    heat->n = 2;
    return HS_OK;
}

static double bound_of(const hs_step *step) {
    if (!step->temp_given) return HS_K_PLAN_DOUBT_TEMP_BOUND;
    return fmax(step->temp_K.high - step->temp_K.value, step->temp_K.value - step->temp_K.low);
}

/* The heat of the same number in a route with the same fires, if there is one. */
static const hs_route_heat *known_heat(const hs_route *route, const hs_packing *packing) {
    const hs_route *like = packing->like;
    return like && route->heats < like->heats ? &like->heat[route->heats] : NULL;
}

static hs_status add_carburise(hs_route *route, const hs_job *job, const hs_step *step,
                               const hs_packing *packing, hs_error *err) {
    hs_route_heat *heat = &route->heat[route->heats];
    const hs_route_heat *known = known_heat(route, packing);
    hs_status status = HS_OK;
    if (known)
        *heat = *known;
    else if (step->box_m > 0 && step->log_points == 0)
        status = hs_packed_heat(heat, &route->box, job, step, packing, err);
    else
        status = read_path(heat, step, err);
    if (status != HS_OK) return status;
    heat->carburises = 1;
    heat->surface_low_pct = step->surface_carbon_pct.low;
    heat->surface_pct = step->surface_carbon_pct.value;
    heat->surface_high_pct = step->surface_carbon_pct.high;
    heat->transfer_m_s = step->transfer_m_s;
    heat->bound_K = bound_of(step);
    route->hottest_K = fmax(route->hottest_K, hottest(heat));
    return HS_OK;
}

static hs_status add_reheat(hs_route *route, const hs_step *step, hs_error *err) {
    hs_route_heat *heat = &route->heat[route->heats];
    hs_status status = read_path(heat, step, err);
    if (status != HS_OK) return status;
    const hs_table *table = hs_table_get(HS_TABLE_ATMOSPHERE);
    heat->atmosphere = step->medium_row;
    heat->multiplier = hs_table_number(table, step->medium_row, HS_ATMOSPHERE_MULTIPLIER);
    heat->multiplier_low = hs_table_number(table, step->medium_row, HS_ATMOSPHERE_LOW);
    heat->multiplier_high = hs_table_number(table, step->medium_row, HS_ATMOSPHERE_HIGH);
    heat->open = heat->multiplier_high > 0;
    heat->bound_K = bound_of(step);
    return HS_OK;
}

/* In the box or the dying fire: the path of the packed box where its size is known, else at the
 * table's rate. */
static void cool_in_box(hs_route *route, const hs_job *job, double from_K,
                        const hs_packing *packing) {
    hs_route_heat *heat = &route->heat[route->heats];
    const hs_step *fire = &job->step[heat[-1].step];
    const hs_route_heat *known = known_heat(route, packing);
    if (known) {
        *heat = *known;
        return;
    }
    if (fire->kind == HS_CARBURISE && fire->box_m > 0) {
        if (!heat[-1].packed) /* a log: cooled from where it ends */
            hs_packed_cool(&route->box, job, fire, from_K, packing->cooling);
        heat->n = route->box.cool_n;
        memcpy(heat->point, route->box.cool, heat->n * sizeof *heat->point);
        if (heat->n >= 2) return;
    }
    double down_K = from_K - hs_carbon_cold_K();
    heat->point[0] = (hs_heat_point){0, from_K};
    heat->point[1] =
        (hs_heat_point){down_K / HS_K_PLAN_DOUBT_BOX_COOLING * one_hour_s, hs_carbon_cold_K()};
    heat->n = 2;
}

/* Cooling from the heat before: in the box slowly and closed, in air by Newton's law with scale. */
static void add_cool(hs_route *route, const hs_job *job, const hs_step *step,
                     const hs_packing *packing) {
    if (route->heats == 0) return;
    hs_route_heat *heat = &route->heat[route->heats];
    const hs_route_heat *last = heat - 1;
    double from_K = last->point[last->n - 1].temp_K;
    if (from_K <= hs_carbon_cold_K()) return;
    int in_air = !strcmp(step->medium, "air");
    heat->step = (size_t)(step - job->step);
    if (step->log_points > 1 && step->log_points <= HS_MAX_LOG) {
        memcpy(heat->point, step->log, step->log_points * sizeof *step->log);
        heat->n = step->log_points;
    } else if (in_air) {
        heat->n = hs_cool_in_air(heat->point, from_K, job);
    } else {
        cool_in_box(route, job, from_K, packing);
    }
    heat->open = in_air;
    heat->multiplier = heat->multiplier_low = heat->multiplier_high = heat->open;
    route->heats++;
}

/* Can carbon be followed through the heat just read, and can it be gone in at all? */
static hs_status check_heat(const hs_route_heat *heat, hs_error *err) {
    if (heat->carburises && hottest(heat) < hs_carbon_cold_K())
        return hs_fail(err, HS_E_RANGE, "packs are carburised at 850 to 950 C",
                       "no carbon goes into steel at %.0f C",
                       hottest(heat) - HS_K_PHYSICAL_ZERO_CELSIUS);
    return hs_history_heat_check(heat, err);
}

static hs_status add_heat(hs_route *route, const hs_job *job, const hs_step *step,
                          const hs_packing *packing, hs_error *err) {
    if (route->heats == HS_MAX_HEATS)
        return hs_fail(err, HS_E_TOO_LARGE, "split the job", "more than %d heats", HS_MAX_HEATS);
    route->heat[route->heats] = (hs_route_heat){.step = (size_t)(step - job->step)};
    if (step->kind == HS_COOL) {
        add_cool(route, job, step, packing);
        return HS_OK;
    }
    hs_status status = step->kind == HS_CARBURISE ? add_carburise(route, job, step, packing, err)
                                                  : add_reheat(route, step, err);
    if (status == HS_OK)
        status = hs_at_step(check_heat(&route->heat[route->heats], err), step, "at", err);
    if (status == HS_OK) route->heats++;
    return status;
}

size_t hs_route_tempers_before(hs_temper *out, const hs_job *job, size_t step) {
    size_t n = 0;
    for (size_t i = 0; i < step && i < job->steps; i++) {
        const hs_step *s = &job->step[i];
        if (s->kind == HS_QUENCH) n = 0;
        if (is_temper(s) && n < HS_MAX_TEMPERS)
            out[n++] = (hs_temper){s->temp_K.value, s->hold_s.value};
    }
    return n;
}

int hs_route_tempered_before(const hs_job *job, size_t step) {
    const double hair_K = 1e-6; /* a temperature in kelvin is not a round number in binary */
    int since = 1;
    for (size_t i = 0; i < step && i < job->steps; i++) {
        const hs_step *s = &job->step[i];
        if (s->kind == HS_QUENCH) since = 0;
        if (!is_temper(s)) continue;
        int brief = s->hold_s.value > 0 && s->hold_s.value < HS_K_BAKE_LIMITS_TEMPER_TIME_LEAST;
        since |= !brief && s->temp_K.value >= HS_K_BAKE_LIMITS_TEMPER_LEAST - hair_K;
    }
    return since;
}

int hs_route_tempered(const hs_job *job) {
    return hs_route_tempered_before(job, job->steps);
}

size_t hs_route_after_quench(const hs_job *job) {
    for (size_t i = job->steps; i-- > 0;)
        if (job->step[i].kind == HS_QUENCH) return i + 1;
    return job->steps;
}

const hs_step *hs_route_last_temper(const hs_job *job) {
    for (size_t i = job->steps; i-- > 0 && job->step[i].kind != HS_QUENCH;)
        if (job->step[i].kind == HS_TEMPER) return &job->step[i];
    return NULL;
}

static hs_status check_temper(const hs_step *step, hs_error *err) {
    const hs_temper one = {step->temp_K.value, step->hold_s.value};
    hs_status status = hs_temper_check(&one, 1, err);
    return hs_at_step(status, step, status == HS_E_IMPOSSIBLE ? "for" : "at", err);
}

/* Each temper holds by itself: what is left is the heat, or all of them together. */
static const hs_step *to_blame(const hs_route *route, const hs_job *job) {
    const hs_step *last = &job->step[route->heat[route->hardening_heat].step];
    if (isnan(hs_acm_pct(route->dissolve_K))) return last;
    for (size_t i = route->quench; i < job->steps; i++)
        if (is_temper(&job->step[i])) last = &job->step[i];
    return last;
}

static hs_status check_hardening(const hs_route *route, const hs_job *job, int carburised,
                                 int quenched, hs_error *err) {
    if (!carburised || !quenched)
        return hs_fail(err, HS_E_ORDER, "carburise, cool, reheat, quench, temper",
                       "the route needs a carburise and a quench after it");
    hs_hardening h = {.dissolve_K = route->dissolve_K,
                      .quench_to_K = HS_K_PLAN_DOUBT_QUENCH_BATH,
                      .temper = route->temper,
                      .tempers = route->tempers};
    const hs_step *step = to_blame(route, job);
    return hs_at_step(hs_hardening_check(&h, err), step, is_temper(step) ? "for" : "at", err);
}

static hs_status read_step(hs_route *route, const hs_job *job, const hs_step *step,
                           const hs_packing *packing, hs_error *err) {
    if (step->kind == HS_CARBURISE || step->kind == HS_REHEAT || step->kind == HS_COOL)
        return hs_at_step(add_heat(route, job, step, packing, err), step, "", err);
    return is_temper(step) ? check_temper(step, err) : HS_OK;
}

hs_status hs_route_step_check(hs_route *scratch, const hs_job *job, size_t step, hs_error *err) {
    const hs_packing packing = {1, 1, NULL};
    *scratch = (hs_route){0};
    return read_step(scratch, job, &job->step[step], &packing, err);
}

static hs_status read_steps(hs_route *route, const hs_job *job, const hs_packing *packing,
                            hs_error *err) {
    *route = (hs_route){0};
    int carburised = 0, quenched = 0;
    for (size_t i = 0; i < job->steps; i++) {
        const hs_step *step = &job->step[i];
        hs_status status = read_step(route, job, step, packing, err);
        if (status != HS_OK) return status;
        carburised |= step->kind == HS_CARBURISE;
        if (step->kind != HS_QUENCH || route->heats == 0) continue;
        quenched = carburised;
        route->quench = i;
        route->hardening_heat = route->heats - 1;
        const hs_route_heat *heat = &route->heat[route->heats - 1];
        route->dissolve_K = heat->n > 2 ? heat->point[heat->n - 1].temp_K : hottest(heat);
    }
    route->tempers = hs_route_tempers_before(route->temper, job, job->steps);
    return check_hardening(route, job, carburised, quenched, err);
}

hs_status hs_route_read_at(hs_route *route, const hs_job *job, double speed, double cooling,
                           hs_error *err) {
    const hs_packing packing = {speed, cooling, NULL};
    return read_steps(route, job, &packing, err);
}

hs_status hs_route_read(hs_route *route, const hs_job *job, hs_error *err) {
    return hs_route_read_like(route, NULL, job, err);
}

hs_status hs_route_read_like(hs_route *route, const hs_route *like, const hs_job *job,
                             hs_error *err) {
    const hs_packing packing = {1, 1, like};
    hs_status status = read_steps(route, job, &packing, err);
    if (status == HS_OK) hs_packed_doubt(route, job);
    return status;
}
