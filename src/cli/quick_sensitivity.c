#include "cli/quick_sensitivity.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* Steps a workshop would call small: 10 degrees, one point of hardness, a twentieth of the rest. */
static double step_of(const hs_quantity *q) {
    if (q->kind == HS_TEMPERATURE) return 10;
    if (q->kind == HS_HARDNESS) return q->scale == HS_HV || q->scale == HS_HBW ? 10 : 1;
    return q->value * .05;
}

static void step_text(char *text, size_t size, const hs_quantity *q) {
    if (q->kind == HS_TEMPERATURE || q->kind == HS_HARDNESS)
        snprintf(text, size, "%.0f %s", step_of(q), q->kind == HS_HARDNESS ? q->unit : "C");
    else
        snprintf(text, size, "5 %%");
}

/* First figure that is a number, after the key was moved; NaN when the sum does not go there. */
static double moved(const quick_topic *topic, const quick_value *value, size_t key, double by,
                    const hs_units *units) {
    quick_value changed[QUICK_KEYS];
    quick_answer answer = {.first_only = 1};
    hs_error err = {0};
    memcpy(changed, value, topic->keys * sizeof *value);
    changed[key].q.value += by;
    changed[key].q.low += by;
    changed[key].q.high += by;
    if (topic->run(&answer, changed, units, &err) != HS_OK) return NAN;
    for (size_t i = 0; i < answer.n; i++)
        if (!answer.figure[i].word) return (answer.figure[i].low + answer.figure[i].high) / 2;
    return NAN;
}

static void one_side(hs_out *out, double to, double from) {
    if (!isfinite(to))
        hs_out_add(out, "out of range");
    else if (from != 0)
        hs_out_add(out, "%.4g (%+.1f %%)", to, (to - from) / fabs(from) * 100);
    else
        hs_out_add(out, "%.4g", to);
}

void quick_sensitivity(hs_out *out, const quick_topic *topic, const quick_value *value,
                       const quick_answer *answer, const hs_units *units) {
    const quick_figure *figure = NULL;
    if (topic->heavy) return;
    for (size_t i = 0; i < answer->n && !figure; i++)
        if (!answer->figure[i].word) figure = &answer->figure[i];
    if (!figure) return;
    double from = (figure->low + figure->high) / 2;
    int headed = 0;
    for (size_t k = 0; k < topic->keys; k++) {
        const quick_value *v = &value[k];
        char step[32];
        if (topic->key[k].type != QUICK_QUANTITY || !v->text || !(step_of(&v->q) > 0)) continue;
        double up = moved(topic, value, k, step_of(&v->q), units);
        double down = moved(topic, value, k, -step_of(&v->q), units);
        if (up == from && down == from) continue; /* it does not count in this sum */
        if (!headed++) hs_out_add(out, "sensitive to (%s)\n", figure->name);
        step_text(step, sizeof step, &v->q);
        hs_out_add(out, "  %-14s +%-8s ", topic->key[k].name, step);
        one_side(out, up, from);
        hs_out_add(out, "   -%-8s ", step);
        one_side(out, down, from);
        hs_out_add(out, "\n");
    }
}
