/* The parts of a quench: heat, what the steel is at a temperature, fibres. */
#ifndef HS_MODEL_QUENCH_STEPS_H
#define HS_MODEL_QUENCH_STEPS_H

#include "hardskin/model/quench.h"

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
    double low_K, step_K; /* of the tables */
} hs_quench_run_state;

void hs_quench_tables(hs_quench_run_state *s);

/** Value of a table's row at a temperature. */
double hs_quench_table(const hs_quench_run_state *s, int row, double temp_K);

/** Share of martensite that has formed when a point has been as cold as temp_K. */
double hs_quench_hard(const hs_quench_point *p, double temp_K);

/** Share that has turned soft. */
double hs_quench_soft(const hs_quench_point *p, const hs_quench_steel *steel, double temp_K);

/** One step of the heat, at most dt_s, from temp_K to next_K; the step taken and the next to try.
 */
hs_status hs_quench_heat_step(hs_quench_run_state *s, double *taken_s, double *try_s,
                              hs_error *err);
void hs_quench_heat_start(hs_quench_run_state *s, double *try_s);

void hs_quench_fibres_start(hs_quench_run_state *s);

/** Carry the fibres from temp_K to next_K, taking note of the largest curvatures; time_s is that of
 *  next_K, the step before it was step_s long. */
hs_status hs_quench_fibres_step(hs_quench_run_state *s, double step_s, hs_error *err);

#endif
