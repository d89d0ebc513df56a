#include "plan/ready.h"

#include "plan/descale.h"
#include "plan/descale_state.h"
#include "plan/measured_ask.h"
#include "plan/place.h"
#include "plan/reading_make.h"

#include <math.h>

static hs_status check_descales(const hs_job *job, hs_error *err) {
    size_t n = 0;
    for (size_t i = 0; i < job->steps; i++) {
        if (job->step[i].kind != HS_DESCALE || ++n <= HS_MAX_DESCALES) continue;
        return hs_at_step(hs_fail(err, HS_E_TOO_LARGE, "one descale after each open heat",
                                  "a route has at most %d descale steps", HS_MAX_DESCALES),
                          &job->step[i], "", err);
    }
    return HS_OK;
}

static hs_status check_job(const hs_job *job, hs_error *err) {
    if (job->dimensions == 0 || job->dimensions > HS_MAX_DIMENSIONS || job->faces > HS_MAX_FACES ||
        job->steps > HS_MAX_STEPS)
        return hs_fail(err, HS_E_TOO_LARGE, "one part a job",
                       "a job has 1 to %d dimensions, up to %d faces and %d steps",
                       HS_MAX_DIMENSIONS, HS_MAX_FACES, HS_MAX_STEPS);
    if (!(job->shop.confidence >= 0.5 && job->shop.confidence <= 0.999 + 1e-9))
        return hs_fail(err, HS_E_IMPOSSIBLE, "usually 95 %", "confidence is 50 %% to 99.9 %%");
    return check_descales(job, err);
}

/* A size is held against the whole case as computed. */
static hs_status ask_of_sizes(const hs_chain *chain, hs_error *err) {
    double total_m =
        chain->axes.n > 0 ? hs_reading_expected(chain, hs_reading_face(chain), HS_CASE_ETCH, 0) : 0;
    return hs_measured_ask(chain->job, total_m, err);
}

hs_status hs_ready_make(hs_chain *chain, hs_reading *reading, const hs_job *job,
                        hs_response_extent extent, hs_chain_work *work, hs_error *err) {
    hs_status status = check_job(job, err);
    if (status == HS_OK) status = hs_chain_carbon(chain, job, extent, work, err);
    if (status == HS_OK) status = hs_reading_make(reading, chain, err);
    return status == HS_OK ? ask_of_sizes(chain, err) : status;
}

hs_status hs_ready_descale(hs_result_descale *out, const hs_job *job, const hs_chain *chain,
                           size_t step, hs_error *err) {
    hs_descale_at at = {.step = step, .surface_HRC = NAN, .core_HRC = NAN};
    if (chain) at = hs_descale_state(chain, step);
    return hs_at_step(hs_descale_plan(out, job, &at, err), &job->step[step], "", err);
}
