/* All that hs_plan would refuse, and nothing computed that it would not need to know that. */
#include "hardskin/plan/plan.h"
#include "plan/fire.h"
#include "plan/plan_work.h"
#include "plan/ready.h"

#include <string.h>

typedef struct list {
    hs_error *fault;
    size_t n, most;
} list;

/* Is a place in the sheet another one, or inside it? /route/10 is not inside /route/1. */
static int inside(const char *place, const char *whole) {
    size_t length = strlen(whole);
    if (length == 0 || strncmp(place, whole, length) != 0) return 0;
    return place[length] == '\0' || place[length] == '/';
}

/* The same place once: one fault there is told, and a nearer place stands for the whole. */
static void note(list *l, const hs_error *err) {
    for (size_t i = 0; i < l->n; i++)
        if (inside(l->fault[i].pointer, err->pointer)) return;
    if (l->n < l->most) l->fault[l->n++] = *err;
}

static void check_steps(list *l, hs_plan_work *w, const hs_job *job) {
    for (size_t i = 0; i < job->steps; i++) {
        hs_error err = {0};
        if (hs_route_step_check(&w->chain.route, job, i, &err) != HS_OK) note(l, &err);
    }
}

static void check_descales(list *l, const hs_job *job, const hs_chain *chain) {
    hs_result_descale out;
    for (size_t i = 0; i < job->steps; i++) {
        hs_error err = {0};
        if (job->step[i].kind == HS_DESCALE && hs_ready_descale(&out, job, chain, i, &err) != HS_OK)
            note(l, &err);
    }
}

hs_status hs_plan_check(hs_error *faults, size_t *count, size_t most, const hs_job *job,
                        void *work) {
    hs_plan_work *w = work;
    hs_error err = {0}, packing = {0};
    list l = {faults, 0, most};
    int ready =
        hs_ready_make(&w->chain, &w->reading, job, HS_RESPONSE_MIDDLE, &w->scratch, &err) == HS_OK;
    if (ready) w->chain.reading = w->reading;
    check_descales(&l, job, ready ? &w->chain : NULL);
    if (!ready) {
        check_steps(&l, w, job);
        note(&l, &err);
    }
    w->result = (hs_result){0};
    if (hs_fire_plan(&w->result, job, &packing) != HS_OK) note(&l, &packing);
    *count = l.n;
    return l.n > 0 ? faults[0].status : HS_OK;
}
