/* Can the steps be done in this order? What a heat treater would say, step by step. */
#include "sheet/draft.h"

typedef struct state {
    int carburised, hot, quenched, tempered, descaled; /* since the last quench, but carburised */
} state;

typedef struct objection {
    const char *message, *help; /* NULL: none */
} objection;

static const char usual[] = "carburise, cool, reheat, quench, temper, descale";
static const char cool_first[] = "put a cool or a quench before it";

static objection object(const char *message, const char *help) {
    return (objection){message, help};
}

static objection none(void) {
    return (objection){0};
}

static objection judge_fire(const state *s, hs_step_kind kind) {
    if (kind == HS_STRESS_RELIEVE && s->quenched)
        return object("a stress relieve after the quench would draw the hardness out again",
                      "stress relieve, carburise, cool, reheat, quench, temper");
    if (kind == HS_STRESS_RELIEVE && s->hot)
        return object("a stress relieve starts from a cold part", cool_first);
    if (kind == HS_REHEAT && !s->carburised)
        return object("there is nothing to reheat before the carburise", usual);
    if (kind == HS_COOL && !s->hot)
        return object("the part is cold here: nothing to cool", "carburise, cool, reheat, quench");
    if (kind == HS_QUENCH && !s->hot)
        return object("the part is cold here: a quench follows a heat",
                      "carburise, cool, reheat, quench");
    if (kind == HS_QUENCH && !s->carburised)
        return object("there is no case to harden before the carburise", usual);
    return none();
}

static objection judge_after(const state *s, hs_step_kind kind) {
    if (kind == HS_TEMPER && !s->quenched)
        return object("a temper follows a quench", "reheat, quench, temper");
    if (kind == HS_BAKE && !s->quenched)
        return object("a bake follows the quench", "quench, temper, descale, bake");
    if (kind == HS_STRAIGHTEN && !s->quenched)
        return object("the quench after it would bend the part again: straighten comes later",
                      "quench, temper, straighten");
    if (kind == HS_STRAIGHTEN && !s->tempered)
        return object("a hard part that is not tempered cracks under the press",
                      "quench, temper, straighten, temper");
    if (kind == HS_BAKE && !s->tempered && !s->descaled)
        return object("a bake follows a temper or a descale", "quench, temper, descale, bake");
    if (s->hot) return object("the part is still hot here", cool_first);
    return none();
}

static objection judge(const state *s, hs_step_kind kind) {
    switch (kind) {
    case HS_STRESS_RELIEVE:
    case HS_CARBURISE:
    case HS_COOL:
    case HS_REHEAT:
    case HS_QUENCH:
        return judge_fire(s, kind);
    case HS_TEMPER:
    case HS_STRAIGHTEN:
    case HS_DESCALE:
    case HS_BAKE:
        break;
    }
    return judge_after(s, kind);
}

static void move(state *s, hs_step_kind kind) {
    if (kind == HS_CARBURISE || kind == HS_REHEAT) {
        *s = (state){.carburised = s->carburised || kind == HS_CARBURISE, .hot = 1};
        return;
    }
    if (kind == HS_QUENCH) {
        *s = (state){.carburised = s->carburised, .quenched = 1};
        return;
    }
    if (kind == HS_COOL) s->hot = 0;
    s->tempered |= kind == HS_TEMPER;
    s->descaled |= kind == HS_DESCALE;
}

static void check_end(hs_draft *d, const state *s) {
    const hs_node *route = hs_node_find(d->root, "route");
    int carburised = 0, quenched = 0;
    for (size_t i = 0; i < d->job.steps; i++) {
        carburised |= d->step[i].kind == HS_CARBURISE;
        quenched |= d->step[i].kind == HS_QUENCH;
    }
    if (!carburised)
        hs_reader_say(d->reader, route, HS_E_ORDER, usual,
                      "a route without a carburise makes no case");
    else if (!quenched)
        hs_reader_say(d->reader, route, HS_E_ORDER, usual,
                      "a route without a quench hardens nothing");
    else if (!s->quenched)
        hs_reader_say(d->reader, route, HS_E_ORDER, "carburise, cool, reheat, quench, temper",
                      "the last heat of the route is not quenched: the part ends soft");
}

void hs_check_order(hs_draft *d) {
    state s = {0};
    size_t before = d->reader->fault_count;
    if (d->job.steps == 0) return;
    for (size_t i = 0; i < d->job.steps; i++)
        if (!d->step_node[i]) return; /* an unknown step: nothing sure can be said */
    for (size_t i = 0; i < d->job.steps; i++) {
        hs_step_kind kind = d->step[i].kind;
        objection o = judge(&s, kind);
        const hs_node *word = hs_node_find(d->step_node[i], "do");
        if (o.message) hs_reader_say(d->reader, word, HS_E_ORDER, o.help, "%s", o.message);
        move(&s, kind);
    }
    if (d->reader->fault_count == before) check_end(d, &s);
}
