/* After hardening: the verdict on each dimension from what was measured. */
#ifndef HS_PLAN_MEASURED_H
#define HS_PLAN_MEASURED_H

#include "plan/bench.h"

/** The measured branch of a job, reference page on windows section 5.
 *
 *    out   out  whole; a dimension without a measured size or shape is not `present`, one without
 *               a size has the verdict none and a note
 *    job   in   job->measured stated
 *    in    in   see above
 *
 *  The verdict of the part is the worst of its dimensions. Limits rounded to the safe side. */
void hs_measured_judge(hs_result_measured *out, const hs_job *job, const hs_measured_input *in);

#endif
