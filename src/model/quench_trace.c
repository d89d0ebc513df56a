#include "hardskin/model/quench_trace.h"

#include <math.h>
#include <string.h>

static const double PI = 3.14159265358979323846;
/* How far off the line through the centroid a place may lie: share of the section's extent across.
 */
static const double STRIP = 0.12;

static double along(const hs_quench_trace *t, double x_m, double y_m) {
    return x_m * t->ax + y_m * t->ay;
}

static double across(const hs_quench_trace *t, double x_m, double y_m) {
    return y_m * t->ax - x_m * t->ay;
}

/* How well a point serves as a mark. */
static double fitness(const hs_quench_trace *t, int mark, hs_point p) {
    static const double OFF = 0.3; /* a place off the middle of its side counts less */
    double a = along(t, p.x_m, p.y_m), off = OFF * fabs(across(t, p.x_m, p.y_m));
    switch (mark) {
    case HS_MARK_FASTER:
        return a - off;
    case HS_MARK_SLOWER:
        return -a - off;
    case HS_MARK_CORNER:
        return hypot(p.x_m, p.y_m);
    default:
        return -hypot(p.x_m, p.y_m);
    }
}

static size_t find(const hs_quench_trace *t, int mark, const hs_quench_mesh *mesh) {
    size_t best = 0;
    for (size_t i = 1; i < mesh->nodes; i++)
        if (fitness(t, mark, mesh->node[i]) > fitness(t, mark, mesh->node[best])) best = i;
    return best;
}

void hs_quench_trace_start(hs_quench_tracer *tracer, hs_quench_trace *trace,
                           const hs_quench_case *c) {
    double size = hypot(c->bath.ax, c->bath.ay);
    *tracer = (hs_quench_tracer){.trace = trace, .plasticity = c->n / 2, .stride = 1};
    *trace = (hs_quench_trace){.ax = size > 0 ? c->bath.ax / size : 0,
                               .ay = size > 0 ? c->bath.ay / size : 1,
                               .uneven = c->bath.uneven,
                               .plasticity_1_Pa = c->plasticity_1_Pa[c->n / 2]};
    for (int m = 0; m < HS_TRACE_MARKS; m++) {
        tracer->node[m] = find(trace, m, c->mesh);
        trace->mark[m] = c->mesh->node[tracer->node[m]];
    }
}

static void drop_every_second(hs_quench_trace *t) {
    t->moments = (t->moments + 1) / 2;
    for (size_t i = 1; i < t->moments; i++) {
        t->time_s[i] = t->time_s[2 * i];
        t->mean_K[i] = t->mean_K[2 * i];
        t->along_1_m[i] = t->along_1_m[2 * i];
        t->across_1_m[i] = t->across_1_m[2 * i];
        memcpy(t->mark_K[i], t->mark_K[2 * i], sizeof t->mark_K[i]);
    }
}

static void bend_at(hs_quench_trace *t, size_t i, double kappa_x_1_m, double kappa_y_1_m) {
    /* strain = kappa_x y + kappa_y x */
    t->along_1_m[i] = along(t, kappa_y_1_m, kappa_x_1_m);
    t->across_1_m[i] = across(t, kappa_y_1_m, kappa_x_1_m);
}

void hs_quench_trace_watch(void *context, const hs_quench_moment *moment, const double *node_K) {
    hs_quench_tracer *tracer = context;
    hs_quench_trace *t = tracer->trace;
    tracer->last_s = moment->time_s;
    if (tracer->seen++ % tracer->stride != 0) return;
    if (t->moments == HS_TRACE_MOMENTS - 1) { /* one is kept for the end */
        drop_every_second(t);
        tracer->stride *= 2;
        if ((tracer->seen - 1) % tracer->stride != 0) return;
    }
    size_t i = t->moments++;
    t->time_s[i] = moment->time_s;
    t->mean_K[i] = moment->mean_K;
    for (int m = 0; m < HS_TRACE_MARKS; m++)
        t->mark_K[i][m] = node_K[tracer->node[m]];
    bend_at(t, i, moment->kappa_x_1_m[tracer->plasticity], moment->kappa_y_1_m[tracer->plasticity]);
}

/* Least and most of the section along (x, y), and its width across. */
static double extent(double *low, double *high, const hs_quench_trace *t,
                     const hs_quench_mesh *mesh) {
    double left = INFINITY, right = -INFINITY;
    *low = INFINITY;
    *high = -INFINITY;
    for (size_t i = 0; i < mesh->nodes; i++) {
        double a = along(t, mesh->node[i].x_m, mesh->node[i].y_m);
        double b = across(t, mesh->node[i].x_m, mesh->node[i].y_m);
        *low = fmin(*low, a);
        *high = fmax(*high, a);
        left = fmin(left, b);
        right = fmax(right, b);
    }
    return right - left;
}

/* Mean stress of the strip in bins that are narrow at both sides. A fibre that another one stood
 * for has no stress of its own. */
static void profile(hs_quench_trace *t, const hs_quench_mesh *mesh, const double *stress_Pa) {
    double sum[HS_TRACE_PLACES] = {0}, area[HS_TRACE_PLACES] = {0}, at[HS_TRACE_PLACES] = {0};
    double low, high, width = extent(&low, &high, t, mesh);
    for (size_t f = 0; f < mesh->fibres; f++) {
        const hs_quench_fibre *fibre = &mesh->fibre[f];
        double a = along(t, fibre->x_m, fibre->y_m);
        if (isnan(stress_Pa[f]) || fabs(across(t, fibre->x_m, fibre->y_m)) > STRIP * width)
            continue;
        double share = fmin(1, fmax(0, (a - low) / (high - low)));
        double bin = HS_TRACE_PLACES * acos(1 - 2 * share) / PI;
        size_t i = bin < HS_TRACE_PLACES - 1 ? (size_t)bin : HS_TRACE_PLACES - 1;
        sum[i] += fibre->area_m2 * stress_Pa[f];
        at[i] += fibre->area_m2 * a;
        area[i] += fibre->area_m2;
    }
    for (size_t i = 0; i < HS_TRACE_PLACES; i++) {
        if (!(area[i] > 0)) continue;
        t->place_m[t->places] = at[i] / area[i];
        t->stress_Pa[t->places++] = sum[i] / area[i];
    }
}

void hs_quench_trace_end(hs_quench_tracer *tracer, const hs_quench_case *c,
                         const hs_quench_left *left, const hs_quench_work *work) {
    hs_quench_trace *t = tracer->trace;
    const hs_quench_left *mine = &left[tracer->plasticity];
    if (t->moments > 0 && t->time_s[t->moments - 1] == tracer->last_s) t->moments--;
    size_t i = t->moments++;
    t->time_s[i] = tracer->last_s;
    t->mean_K[i] = c->bath.bath_K;
    for (int m = 0; m < HS_TRACE_MARKS; m++)
        t->mark_K[i][m] = c->bath.bath_K;
    bend_at(t, i, mine->kappa_x_1_m, mine->kappa_y_1_m);
    profile(t, c->mesh, work->stress_Pa[tracer->plasticity]);
}
