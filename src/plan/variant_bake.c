#include "plan/variant_bake.h"

#include "plan/route.h"

#include "constants.h"
#include "hardskin/model/bake.h"
#include "plan/words.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const double hair_K = 1e-6; /* a temperature in kelvin is not a round number in binary */

static hs_span just(double value) {
    return (hs_span){value, value, value};
}

size_t hs_bake_too_hot(double *bears_K, double *hold_s, const hs_step **temper, const hs_job *job) {
    hs_bake_plan plan;
    size_t hottest = job->steps;
    *temper = hs_route_last_temper(job);
    if (!*temper ||
        hs_bake(&plan, NAN, 1, (*temper)->temp_K.value, (*temper)->hold_s.value, NULL) != HS_OK)
        return job->steps;
    *bears_K = hs_word_whole_degree_K(plan.temp_K, job->inch_first);
    *hold_s = plan.hold_s;
    for (size_t i = hs_route_after_quench(job); i < job->steps; i++) {
        const hs_step *step = &job->step[i];
        if (step->kind != HS_BAKE || step->temp_K.value <= *bears_K + hair_K) continue;
        if (hottest == job->steps || step->temp_K.value > job->step[hottest].temp_K.value)
            hottest = i;
    }
    return hottest;
}

/* Every such bake as hot as is borne, and long enough for that; how many. */
static int cool_bakes(hs_variant *v, double *bears_K, double *hold_s) {
    const hs_step *temper;
    int cooled = 0;
    for (size_t i; (i = hs_bake_too_hot(bears_K, hold_s, &temper, &v->job)) < v->job.steps;) {
        v->step[i].temp_K = just(*bears_K);
        v->step[i].hold_s = just(fmax(v->step[i].hold_s.value, *hold_s));
        cooled++;
    }
    return cooled;
}

int hs_variant_cooler_bake(hs_variant *v, int size) {
    double bears_K = 0, hold_s = 0;
    (void)size;
    if (cool_bakes(v, &bears_K, &hold_s) == 0) return 0;
    snprintf(v->what, sizeof v->what, "bake cooler: %s",
             hs_word_temp(bears_K, v->job.inch_first).text);
    snprintf(v->text, sizeof v->text,
             "no hotter than the temper before it allows, %.0f h at least; a bake is no guarantee "
             "against hydrogen",
             hold_s / 3600);
    return 1;
}

static int brings_hydrogen(const hs_step *step) {
    return step->kind == HS_DESCALE && (step->by == HS_BY_ACID || step->by == HS_BY_ELECTROLYSIS);
}

static void drop_step(hs_variant *v, size_t at) {
    memmove(&v->step[at], &v->step[at + 1], (v->job.steps - at - 1) * sizeof v->step[0]);
    v->job.steps--;
}

int hs_variant_no_acid(hs_variant *v, int size) {
    int changed = 0;
    (void)size;
    for (size_t i = hs_route_after_quench(&v->job); i + 1 < v->job.steps; i++) {
        if (!brings_hydrogen(&v->step[i]) || v->step[i + 1].kind != HS_BAKE) continue;
        v->step[i].by = HS_BY_BRUSH;
        drop_step(v, i + 1);
        changed = 1;
    }
    snprintf(v->what, sizeof v->what, "descale by brush, and no bake");
    snprintf(v->text, sizeof v->text,
             "a brush brings no hydrogen into the steel, so there is none to drive out; holes and "
             "corners stay scaled");
    return changed;
}

int hs_variant_cooler_temper(hs_variant *v, int size) {
    const double low_K = HS_K_CAUTION_LIMITS_TEMPER_LOW, high_K = HS_K_CAUTION_LIMITS_TEMPER_HIGH;
    const double temp_K =
        hs_word_whole_degree_K(high_K - 0.5 * size * (high_K - low_K) + 0.5, v->job.inch_first);
    double bears_K, hold_s;
    int cooled = 0;
    for (size_t i = hs_route_after_quench(&v->job); i < v->job.steps; i++) {
        if (v->step[i].kind != HS_TEMPER || v->step[i].temp_K.value <= high_K + 1) continue;
        v->step[i].temp_K = just(temp_K);
        cooled = 1;
    }
    if (!cooled) return 0;
    int baked = cool_bakes(v, &bears_K, &hold_s) > 0;
    hs_word to = hs_word_temp(temp_K, v->job.inch_first), bake = {""};
    if (baked) bake = hs_word_temp(bears_K, v->job.inch_first);
    snprintf(v->what, sizeof v->what, "temper cooler: %.20s%s%.20s", to.text,
             baked ? ", bake at " : "", bake.text);
    snprintf(v->text, sizeof v->text,
             "the case stays harder and holds more stress: temper for 2 h, grind lightly");
    return 1;
}
