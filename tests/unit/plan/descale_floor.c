#include "descale_floor.h"
#include "support/check.h"

#include <math.h>

double floor_kelvin(double celsius) {
    return celsius + 273.15;
}

typedef struct history {
    double layer_HRC, core_HRC;
    int hardened, tempered;
    double temper_C;
} history;

static const history histories[] = {
    [FLOOR_SOFT] = {NAN, NAN, 0, 0, 0},         [FLOOR_UNTEMPERED] = {64, 38, 1, 0, 0},
    [FLOOR_TEMPERED] = {60, 36, 1, 1, 180},     [FLOOR_LOW_TEMPER] = {62, 37, 1, 1, 150},
    [FLOOR_LOWEST] = {61, 36, 1, 1, 160},       [FLOOR_THROUGH_SOFT] = {30.9, 30.9, 0, 1, 600},
    [FLOOR_THROUGH_HARD] = {31, 31, 0, 1, 400}, [FLOOR_THROUGH_MOST] = {52, 52, 0, 1, 250}};

static hs_span exactly(double value) {
    return (hs_span){value, value, value};
}

static hs_step hold(hs_step_kind kind, double celsius, double hours) {
    return (hs_step){
        .kind = kind, .temp_K = exactly(floor_kelvin(celsius)), .hold_s = exactly(3600 * hours)};
}

static void add_next(shop_floor *s, floor_state state, floor_next next) {
    const history *h = &histories[state];
    double at_C = h->hardened ? fmin(160, h->temper_C - 30) : 220;
    double hours = next == NEXT_SHORT_BAKE ? 4 : 8;
    if (next == NEXT_COOL_BAKE) at_C = 120;
    if (next == NEXT_HOT_BAKE) at_C += 20;
    if (next == NEXT_LATER_BAKE) s->step[s->job.steps++] = (hs_step){.kind = HS_STRAIGHTEN};
    if (next != NEXT_NOTHING) s->step[s->job.steps++] = hold(HS_BAKE, at_C, hours);
}

void floor_make(shop_floor *s, floor_state state, hs_descale_method by, const char *accepted,
                floor_next next) {
    const history *h = &histories[state];
    *s = (shop_floor){0};
    s->step[0] = (hs_step){.kind = HS_QUENCH};
    s->step[1] = h->tempered ? hold(HS_TEMPER, h->temper_C, 2) : (hs_step){.kind = HS_COOL};
    s->step[2] = (hs_step){.kind = HS_DESCALE, .by = by};
    s->step[2].tank = (hs_tank){.accepted = accepted, .acid = "", .anode = ""};
    /* 4 dm2, as in the worked figure: 2 (.2 x .1); the edges are nothing */
    const hs_part plate = {
        .form = HS_PLATE, .length_m = .2, .width_m = .1, .thickness_m = 1e-9, .quantity = 1};
    s->job = (hs_job){.part = plate, .step = s->step, .steps = 3};
    s->at = (hs_descale_at){.step = 2,
                            .surface_HRC = h->layer_HRC,
                            .core_HRC = h->core_HRC,
                            .hardened = h->hardened,
                            .tempered = h->tempered,
                            .scale_m = 1e-4};
    add_next(s, state, next);
}

hs_status floor_plan(hs_result_descale *out, const shop_floor *s, hs_error *err) {
    hs_job job = s->job;
    job.step = s->step;
    return hs_descale_plan(out, &job, &s->at, err);
}

void floor_must(hs_result_descale *out, const shop_floor *s) {
    *out = (hs_result_descale){.verdict = HS_CLEAN_NONE};
    CHECK(floor_plan(out, s, NULL) == HS_OK);
}

void floor_tank(shop_floor *s, double volts_V, double amps_A) {
    floor_make(s, FLOOR_SOFT, HS_BY_ELECTROLYSIS, "", NEXT_NOTHING);
    s->step[2].tank.volts_V = volts_V;
    s->step[2].tank.amps_A = amps_A;
}
