/* What would help a part that must not be ground as it is. */
#ifndef HS_PLAN_MEASURED_REMEDY_H
#define HS_PLAN_MEASURED_REMEDY_H

#include "plan/bench.h"

/** What would help, each judged again by hs_bench_judge; fills out->remedy. */
void hs_measured_remedies(hs_result_measured_dimension *out, const hs_bench *bench,
                          const hs_job *job, size_t dimension, const hs_measured_input *in);

#endif
