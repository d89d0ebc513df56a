/* The parts of a quench: heat, what the steel is at a temperature, fibres. */
#ifndef HS_MODEL_QUENCH_STEPS_H
#define HS_MODEL_QUENCH_STEPS_H

#include "hardskin/model/quench.h"

#include "base/num.h"

#include <math.h>

/* Rows of the run's tables over temperature. */
enum {
    HS_Q_CONDUCTIVITY = 0,
    HS_Q_HEAT = HS_PHASES,
    HS_Q_YIELD = 2 * HS_PHASES,
    HS_Q_MODULUS = 3 * HS_PHASES,
    HS_Q_FILM
};

typedef struct hs_quench_run_state {
    const hs_quench_case *c;
    hs_quench_work *w;
    hs_quench_cost cost;
    hs_quench_left left[HS_QUENCH_PLASTICITIES]; /* the peaks so far */
    double time_s;
    double stiffness[6]; /* of the cold section: 1 y x / yy xy xx times it */
    size_t fibres;       /* in the sums: the mesh's, or those of a half */
    double low_K, per_K; /* of the tables: the first place, places per kelvin */
} hs_quench_run_state;

void hs_quench_tables(hs_quench_run_state *s);

/** A temperature's place in the tables, and the value of a row there. */
typedef struct hs_quench_spot {
    size_t i;
    double share;
} hs_quench_spot;

static inline hs_quench_spot hs_quench_spot_of(const hs_quench_run_state *s, double temp_K) {
    double at = (temp_K - s->low_K) * s->per_K;
    if (!(at > 0)) return (hs_quench_spot){0, 0};
    if (at >= HS_QUENCH_GRID_K - 1) return (hs_quench_spot){HS_QUENCH_GRID_K - 2, 1};
    size_t i = (size_t)at;
    return (hs_quench_spot){i, at - (double)i};
}

static inline double hs_quench_read(const hs_quench_run_state *s, int row, hs_quench_spot at) {
    const double *value = &s->w->table[row][at.i];
    return value[0] + at.share * (value[1] - value[0]);
}

static inline double hs_quench_table(const hs_quench_run_state *s, int row, double temp_K) {
    return hs_quench_read(s, row, hs_quench_spot_of(s, temp_K));
}

/** exp(-x) for x >= 0, from a table: within 8e-6. */
static inline double hs_quench_kept(const hs_quench_run_state *s, double x) {
    double at = x * HS_QUENCH_KEPT_PER_1;
    if (!(at < HS_QUENCH_KEPT - 1)) return exp(-x);
    size_t i = (size_t)at;
    const double *value = &s->w->kept[i];
    return value[0] + (at - (double)i) * (value[1] - value[0]);
}

/** Share of martensite that has formed when a point has been as cold as temp_K. */
static inline double hs_quench_hard(const hs_quench_run_state *s, const hs_quench_point *p,
                                    double temp_K) {
    if (!(temp_K < p->ms_K)) return 0;
    return p->share * (1 - hs_quench_kept(s, p->alpha_1_K * (p->ms_K - temp_K)));
}

/** Share that has turned soft. */
static inline double hs_quench_soft(const hs_quench_point *p, const hs_quench_steel *steel,
                                    double temp_K) {
    double span = steel->soft_start_K - steel->soft_end_K;
    if (!(p->share < 1) || !(span > 0)) return 0;
    return (1 - p->share) * hs_least(1, hs_most(0, (steel->soft_start_K - temp_K) / span));
}

/** The mesh, or the half (quarter) of it that stands for all, with the bath's factors. */
void hs_quench_net_make(hs_quench_net *net, const hs_quench_case *c);

/** One step of the heat, at most dt_s, from temp_K to next_K; the step taken and the next to try.
 */
hs_status hs_quench_heat_step(hs_quench_run_state *s, double *taken_s, double *try_s,
                              hs_error *err);
void hs_quench_heat_start(hs_quench_run_state *s, double *try_s);

void hs_quench_fibres_start(hs_quench_run_state *s);

/** Put the stresses at their fibres' places in the mesh. */
void hs_quench_fibres_end(hs_quench_run_state *s);

/** Find the strain and curvatures at which plasticity k's fibres, brought to a new temperature,
 *  leave no force and no moment; 0: not found. */
int hs_quench_settle(hs_quench_run_state *s, size_t k);

/** Their stress, in the order of the sums. */
void hs_quench_stress(hs_quench_run_state *s, size_t k);

/** Carry the fibres from temp_K to next_K, taking note of the largest curvatures; time_s is that of
 *  next_K, the step before it was step_s long. */
hs_status hs_quench_fibres_step(hs_quench_run_state *s, double step_s, hs_error *err);

#endif
