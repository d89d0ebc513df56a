/* From a job to its result. */
#ifndef HARDSKIN_PLAN_PLAN_H
#define HARDSKIN_PLAN_PLAN_H

#include "hardskin/plan/job.h"
#include "hardskin/plan/result.h"

/** Bytes of scratch memory hs_plan and hs_plan_check need, aligned as by malloc. */
HS_API size_t hs_plan_work_size(void);

/** The whole answer for a job: chain, windows, doubt, remedies, descaling, measured branch.
 *
 *    result   hs_result   out   filled whole on HS_OK, untouched on failure
 *    job      hs_job      in    as read by hs_sheet_read, or built by hand
 *    work     scratch           hs_plan_work_size() bytes
 *
 *  Returns  HS_OK whatever the verdict is; HS_E_RANGE outside the models, HS_E_THROUGH when the
 *           case takes more than half the section, HS_E_IMPOSSIBLE for values that contradict. */
HS_API hs_status hs_plan(hs_result *result, const hs_job *job, void *work, hs_error *err);

/** What hs_plan would refuse of a job, without the quench, the draws and the remedies:
 * milliseconds.
 *
 *    faults   hs_error[most]   out   *count of them, each with the sheet's place where there is one
 *    work     scratch                hs_plan_work_size() bytes
 *
 *  Returns  HS_OK; the status of the first fault. */
HS_API hs_status hs_plan_check(hs_error *faults, size_t *count, size_t most, const hs_job *job,
                               void *work);

#endif
