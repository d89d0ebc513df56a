/* What the measured branch says. */
#ifndef HS_PLAN_MEASURED_SAY_H
#define HS_PLAN_MEASURED_SAY_H

#include "plan/bench.h"

/** Hardness alone, where no size was measured: too soft is no, anything else decides nothing. */
void hs_measured_soft(hs_result_measured_dimension *out, const hs_job *job, size_t dimension,
                      const hs_measured_input *in);

/** Terms of the clean-up limit, STOP-IF lines, note; a surface that reads soft lowers the verdict.
 */
void hs_measured_say(hs_result_measured_dimension *out, const hs_bench *bench, const hs_job *job,
                     size_t dimension, const hs_measured_input *in);

#endif
