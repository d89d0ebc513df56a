/* No path from a hardened part to a cathodic plan without the acceptance and the bake: random
 * routes in any order through the rule, and whole plans. */
#include "base/random.h"
#include "hardskin/plan/plan.h"
#include "plan/descale.h"
#include "support/check.h"
#include "unit/plan/job.h"

#include <stdlib.h>
#include <string.h>

static const double BAKE_LEAST_K = 403.15, EIGHT_HOURS_s = 8 * 3600;

/* A source of numbers that gives the same ones every time. */
typedef struct source {
    uint64_t seed;
    uint32_t next;
} source;

static double drawn(source *s) {
    return hs_random_uniform(s->seed, s->next++, 0);
}

static size_t pick(source *s, size_t n) {
    size_t i = (size_t)(drawn(s) * (double)n);
    return i < n ? i : n - 1;
}

static hs_span just(double value) {
    return (hs_span){value, value, value};
}

static const char accepted[] = "the foreman, 2026-05-04";

/* The ways that bring hydrogen most. */
static hs_step random_descale(source *s) {
    static const hs_descale_method ways[] = {
        HS_BY_ELECTROLYSIS, HS_BY_ELECTROLYSIS, HS_BY_ELECTROLYSIS,
        HS_BY_ELECTROLYSIS, HS_BY_ACID,         HS_BY_BRUSH,
        HS_BY_BLAST,        HS_BY_FLAP_DISC,    HS_BY_ANODIC_ELECTROLYSIS};
    hs_step step = {.kind = HS_DESCALE, .pointer = ""};
    step.by = ways[pick(s, sizeof ways / sizeof *ways)];
    step.tank = (hs_tank){.acid = "", .anode = "", .accepted = pick(s, 4) ? accepted : ""};
    step.tank.volts_V = 6 + 6 * (double)pick(s, 4);
    step.tank.amps_A = 1 + 20 * drawn(s);
    step.tank.room_m3 = 50;
    step.tank.air_changes_1_s = 2. / 3600;
    return step;
}

/* Any order; those that lead to a hard part more often. */
static hs_step random_step(source *s) {
    static const hs_step_kind kinds[] = {
        HS_CARBURISE, HS_COOL,    HS_REHEAT, HS_QUENCH, HS_QUENCH,     HS_QUENCH,
        HS_QUENCH,    HS_TEMPER,  HS_TEMPER, HS_TEMPER, HS_STRAIGHTEN, HS_DESCALE,
        HS_DESCALE,   HS_DESCALE, HS_BAKE,   HS_BAKE,   HS_BAKE,       HS_BAKE};
    hs_step step = {.kind = kinds[pick(s, sizeof kinds / sizeof *kinds)], .pointer = ""};
    if (step.kind == HS_DESCALE) return random_descale(s);
    if (step.kind == HS_TEMPER || step.kind == HS_BAKE) {
        step.temp_K = just(273.15 + 105 + 5 * (double)pick(s, 24));
        step.hold_s = just(3600 * (double)(1 + pick(s, 16)));
    }
    return step;
}

/* The part's history up to a step, told independently of the program. */
typedef struct history {
    int quenched, tempered;
    double temper_K; /* of the last temper since the quench, 0 none */
} history;

static history history_of(const hs_job *job, size_t step) {
    history h = {0};
    for (size_t i = 0; i < step; i++) {
        hs_step_kind kind = job->step[i].kind;
        if (kind == HS_CARBURISE || kind == HS_REHEAT) h = (history){0};
        if (kind == HS_QUENCH) h = (history){.quenched = 1};
        if (!h.quenched) continue;
        if (kind == HS_TEMPER) h.temper_K = job->step[i].temp_K.value;
        h.tempered |= kind == HS_TEMPER || kind == HS_BAKE;
    }
    return h;
}

/* May a hard part go on the negative lead here? The sentences of the rule, and nothing else. */
static int permitted(const hs_job *job, size_t step, const history *h) {
    const hs_step *next = step + 1 < job->steps ? &job->step[step + 1] : NULL;
    int named = job->step[step].tank.accepted && job->step[step].tank.accepted[0];
    int baked = next && next->kind == HS_BAKE && next->temp_K.value >= BAKE_LEAST_K - 1e-6 &&
                next->hold_s.value >= EIGHT_HOURS_s - 1e-6;
    return named && baked && h->tempered;
}

/* What must hold of one plan; counts hard cathodic plans that are not stopped. */
static void check_plan(const hs_result_descale *d, const hs_job *job, int hard, long *let) {
    const hs_step *step = &job->step[d->step];
    history h = history_of(job, d->step);
    int stop = d->verdict == HS_CLEAN_STOP;
    if (!hard) {
        if (d->bake_s > 0) CHECK(d->bake_s == 0);
        return;
    }
    if (stop && (d->bake_s > 0 || d->orders > 0)) CHECK(!stop);
    for (size_t i = 0; i < d->alternatives; i++)
        if (!strncmp(d->alternative[i], "electrolysis", 12)) CHECK(!hard);
    if (stop || (step->by != HS_BY_ELECTROLYSIS && step->by != HS_BY_ACID)) return;
    int bake_told = d->bake_s >= EIGHT_HOURS_s && d->bake_temp_K >= BAKE_LEAST_K - 1e-6;
    if (h.temper_K > 0 && !(d->bake_temp_K <= h.temper_K - 30 + 1e-6)) bake_told = 0;
    if (!bake_told || !h.tempered) CHECK(bake_told && h.tempered);
    if (step->by != HS_BY_ELECTROLYSIS) return;
    ++*let;
    if (!permitted(job, d->step, &h)) {
        printf("step %zu: %s\n", d->step, d->text);
        CHECK(0 && "a hard part on the negative lead");
    }
}

/* Take away what permits it: it must be stopped. */
static void check_withdrawn(const hs_job *job, const hs_descale_at *at) {
    hs_step step[12];
    hs_result_descale d;
    hs_job changed = *job;
    memcpy(step, job->step, job->steps * sizeof *step);
    changed.step = step;
    step[at->step].tank.accepted = "";
    CHECK(hs_descale_plan(&d, &changed, at, NULL) == HS_OK && d.verdict == HS_CLEAN_STOP);
    step[at->step].tank.accepted = accepted;
    step[at->step + 1].kind = HS_STRAIGHTEN;
    CHECK(hs_descale_plan(&d, &changed, at, NULL) == HS_OK && d.verdict == HS_CLEAN_STOP);
}

static hs_descale_at random_part(source *s, const hs_job *job, size_t step) {
    history h = history_of(job, step);
    hs_descale_at at = {.step = step,
                        .hardened = h.quenched,
                        .tempered = h.tempered,
                        .surface_HRC = NAN,
                        .core_HRC = NAN,
                        .scale_m = 2e-4 * drawn(s)};
    if (h.quenched) { /* cased, or through-hard steel without a case */
        at.surface_HRC = 20 + 46 * drawn(s);
        at.core_HRC = 20 + 20 * drawn(s);
        at.hardened = pick(s, 4) > 0;
    }
    return at;
}

static void property__random_routes__no_cathodic_plan_of_a_hard_part(void) {
    source s = {.seed = 77};
    long hard_ones = 0, soft_ones = 0, let = 0;
    for (int trial = 0; trial < 60000; trial++) {
        hs_step step[12];
        hs_job job = {.step = step, .steps = 3 + pick(&s, 7)};
        job.part = (hs_part){.form = HS_PLATE,
                             .length_m = .2,
                             .width_m = .05 + .1 * drawn(&s),
                             .thickness_m = .02,
                             .quantity = 1 + pick(&s, 3)};
        for (size_t i = 0; i < job.steps; i++)
            step[i] = random_step(&s);
        for (size_t i = 0; i < job.steps; i++) {
            if (step[i].kind != HS_DESCALE) continue;
            hs_descale_at at = random_part(&s, &job, i);
            int hard = at.hardened || at.surface_HRC >= 31;
            hs_result_descale d;
            hs_status status = hs_descale_plan(&d, &job, &at, NULL);
            if (status != HS_OK) CHECK(status == HS_OK);
            long before = let;
            check_plan(&d, &job, hard, &let);
            if (let > before) check_withdrawn(&job, &at);
            if (step[i].by == HS_BY_ELECTROLYSIS) *(hard ? &hard_ones : &soft_ones) += 1;
            if (step[i].by == HS_BY_ELECTROLYSIS && !hard) CHECK(d.verdict != HS_CLEAN_STOP);
        }
    }
    printf("cathodic steps: %ld on hard parts, %ld of them let; %ld on soft ones\n", hard_ones, let,
           soft_ones);
    CHECK(hard_ones > 5000 && soft_ones > 2000 && let > 20); /* the test sees both sides */
}

/* A soft plate in a tank drawn at random; 0 where the models refuse it. */
static int tank_plan(hs_result_descale *d, const hs_tank *tank) {
    hs_step step = {.kind = HS_DESCALE, .pointer = "", .by = HS_BY_ELECTROLYSIS, .tank = *tank};
    hs_job job = {.step = &step, .steps = 1};
    job.part = (hs_part){
        .form = HS_PLATE, .length_m = .25, .width_m = .08, .thickness_m = .02, .quantity = 1};
    const hs_descale_at at = {.surface_HRC = NAN, .core_HRC = NAN, .scale_m = 1e-4};
    return hs_descale_plan(d, &job, &at, NULL) == HS_OK;
}

static hs_tank random_tank(source *s) {
    return (hs_tank){.acid = "",
                     .accepted = "",
                     .anode = pick(s, 4) ? "mild steel" : "graphite",
                     .tub_m3 = .01 + .1 * drawn(s),
                     .volts_V = 3 + 30 * drawn(s),
                     .amps_A = .5 + 30 * drawn(s),
                     .soda_kg_m3 = 6 + 140 * drawn(s),
                     .gap_m = .03 + .4 * drawn(s),
                     .anode_area_m2 = .005 + .1 * drawn(s),
                     .temp_K = 283.15 + 39 * drawn(s),
                     .room_m3 = 5 + 200 * drawn(s),
                     .air_changes_1_s = (.05 + 5 * drawn(s)) / 3600};
}

/* exact: Faraday's sums, the cell equation written out again, and the least of three currents. */
static void check_tank(const hs_result_descale *d, const hs_tank *t) {
    const double faraday = 96485.33212331001, least = 1e-12;
    double Ah = d->amps_A * d->time_s / 3600;
    CHECK(fabs(d->charge_Ah / Ah - 1) <= least);
    CHECK(fabs(d->tank.water_kg * 2 * faraday / (3600 * .018015 * Ah) - 1) <= least);
    CHECK(
        fabs(d->hydrogen_m3_s * 101325 / (8.31446261815324 * t->temp_K) * 2 * faraday / d->amps_A -
             1) <= least);
    double anode = d->amps_A / (t->anode_area_m2 * 1e4), part = d->amps_A / (d->area_m2 * 1e4);
    double extra = strcmp(t->anode, "graphite") ? 0 : .3;
    double volts = 1.229 + .12 * log10(part / 1e-6) + .06 * log10(anode / 1e-9) + extra +
                   d->amps_A * (d->tank.bath_ohm + .03);
    CHECK(fabs(volts - d->volts_V) <= 1e-9);
    CHECK(d->volts_V <= t->volts_V + 1e-9 && d->amps_A <= t->amps_A);
    int limited = d->amps_A == t->amps_A || fabs(d->volts_V - t->volts_V) <= 1e-9 ||
                  fabs(d->amps_A - d->tank.usual_amps_A) <= 1e-9;
    CHECK(limited && d->tank.limit != HS_TANK_LIMIT_NONE);
    CHECK(d->fresh_air_m3_s >= d->air.battery_m3_s && d->fresh_air_m3_s >= d->air.workplace_m3_s);
    CHECK(d->opening_m2 >= d->air.battery_opening_m2 && d->spark_distance_m >= .5);
    CHECK(d->room_pct <= d->air.steady_pct + 1e-12);
}

/* The better tank never passes less, the larger room never holds more. */
static void check_better(const hs_tank *t, const hs_result_descale *base) {
    hs_result_descale d;
    hs_tank better = *t;
    better.gap_m = fmax(.02, .7 * t->gap_m);
    if (tank_plan(&d, &better)) CHECK(d.tank.bath_amps_A >= base->tank.bath_amps_A);
    better = *t;
    better.soda_kg_m3 = fmin(150, 1.2 * t->soda_kg_m3);
    if (tank_plan(&d, &better)) CHECK(d.tank.bath_amps_A >= base->tank.bath_amps_A - 1e-12);
    better = *t;
    better.anode_area_m2 *= 1.3;
    if (tank_plan(&d, &better)) CHECK(d.tank.bath_amps_A >= base->tank.bath_amps_A);
    better = *t;
    better.amps_A *= 1.3;
    if (tank_plan(&d, &better))
        CHECK(d.amps_A >= base->amps_A && d.time_s <= base->time_s * (1 + 1e-12) &&
              d.fresh_air_m3_s >= base->fresh_air_m3_s);
    better = *t;
    better.room_m3 *= 1.5;
    if (tank_plan(&d, &better)) CHECK(d.room_pct < base->room_pct);
}

static void property__random_tanks__obey_faraday_and_the_cell(void) {
    source s = {.seed = 79};
    long done = 0, limit[4] = {0}, small = 0;
    for (int trial = 0; trial < 5000; trial++) {
        const hs_tank t = random_tank(&s);
        hs_result_descale d;
        if (!tank_plan(&d, &t)) continue;
        done++;
        limit[d.tank.limit]++;
        small += d.tank.remedies > 0;
        check_tank(&d, &t);
        check_better(&t, &d);
    }
    printf("%ld tanks: bath %ld, supply %ld, area %ld; %ld small currents\n", done, limit[1],
           limit[2], limit[3], small);
    CHECK(done > 4000 && limit[1] > 100 && limit[2] > 100 && limit[3] > 100 && small > 100);
}

/* carburise, cool, [any], reheat, quench, [any], temper, [any] x 3 */
static void random_plan_job(test_job *t, source *s) {
    static const char *const steels[] = {"16MnCr5", "8620", "18CrNiMo7-6", "20MnCr5"};
    static const char *const cools[] = {"box", "air", "furnace"};
    test_job_plate(t, steels[pick(s, 4)]);
    hs_step fixed[5], out[8];
    size_t n = 0;
    memcpy(fixed, t->step, sizeof fixed);
    fixed[1].medium = cools[pick(s, 3)];
    fixed[4].temp_K = just(273.15 + 150 + 10 * (double)pick(s, 6));
    for (size_t i = 0; i < 5; i++) {
        out[n++] = fixed[i];
        if ((i == 1 || i == 3) && n < 8 && pick(s, 2)) out[n++] = random_descale(s);
    }
    if (n < 8) out[n++] = random_descale(s);
    if (n < 8 && pick(s, 2)) {
        out[n++] = (hs_step){.kind = HS_BAKE,
                             .pointer = "",
                             .temp_K = just(273.15 + 130),
                             .hold_s = just(EIGHT_HOURS_s)};
    }
    memcpy(t->step, out, n * sizeof *out);
    t->job.steps = n;
}

static void check_result(const hs_result *r, const hs_job *job, long *let) {
    size_t steps = 0;
    for (size_t i = 0; i < job->steps; i++)
        steps += job->step[i].kind == HS_DESCALE;
    CHECK(steps == r->other_descales + 1);
    for (size_t i = 0; i <= r->other_descales; i++) {
        const hs_result_descale *d = i ? &r->other_descale[i - 1] : &r->descale;
        int hard = history_of(job, d->step).quenched || d->hardness_HRC >= 31;
        check_plan(d, job, hard, let);
        CHECK(d->verdict <= r->descale_verdict); /* the worst is told of first */
    }
}

static void property__whole_plans__no_cathodic_plan_of_a_hard_part(void) {
    source s = {.seed = 78};
    static test_job t;
    static hs_result r;
    long let = 0, planned = 0;
    void *work = malloc(hs_plan_work_size());
    CHECK(work != NULL);
    for (int trial = 0; work && trial < 40; trial++) {
        random_plan_job(&t, &s);
        hs_error err = {0};
        if (hs_plan(&r, &t.job, work, &err) != HS_OK)
            continue; /* a case too deep, a bake too hot */
        planned++;
        check_result(&r, &t.job, &let);
    }
    free(work);
    printf("%ld whole plans, %ld cathodic ones let\n", planned, let);
    CHECK(planned > 20);
}

HS_TEST_MAIN("property descale", TEST(property__random_routes__no_cathodic_plan_of_a_hard_part),
             TEST(property__random_tanks__obey_faraday_and_the_cell),
             TEST(property__whole_plans__no_cathodic_plan_of_a_hard_part))
