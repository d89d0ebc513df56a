/* The worked plate of the reference page on windows as a job with its measurements, for the tests
 * of the measured branch. */
#ifndef HS_TESTS_PLAN_MEASURED_BENCH_H
#define HS_TESTS_PLAN_MEASURED_BENCH_H

#include "plan/measured.h"

typedef struct bench_job {
    hs_job job;
    hs_dimension dimension[1];
    hs_face face[2];
    hs_step step[1];
    hs_measured_input in;
    hs_result_measured out;
} bench_job;

/* The plate of section 6: H 20.66, bow .20, c .08, d .02, B' .61 (case 1.21, .60 wanted). */
void worked_plate(bench_job *b);

/* That plate's job as a ring with a bore 40 H7, measured 39.5 and so much oval. */
void worked_bore(bench_job *b, double ovality_m);

/* Judges the one dimension; the answer stands in b->out. */
const hs_result_measured_dimension *judge(bench_job *b);

double sum_of(const hs_result_measured_dimension *d);

/* The first remedy whose name holds the word, or NULL. */
const hs_remedy *remedy(const hs_result_measured_dimension *d, const char *word);

#endif
