#include "plan/batch.h"
#include "plan/driver.h"
#include "plan/fill.h"

#include <math.h>

/* So many that no box was followed to the last one: not reckoned. */
static void fill_batch(hs_result_confidence *c, const hs_batch *batch, size_t parts) {
    c->batch_apart = pow(c->reached, (double)parts);
    c->batch_at_least = batch->none_failed;
    c->reached_batch = batch->none_failed ? c->batch_apart : fmin(batch->all, c->reached);
    c->batch_error = batch->none_failed || parts == 1 ? NAN : batch->error;
    if (batch->floor_only) c->reached_batch = c->batch_error = NAN;
}

void hs_fill_confidence(hs_result *result, const hs_chain *chain, const hs_draws *draws,
                        const hs_batch *batch, const hs_decide_work *work) {
    hs_result_confidence *c = &result->confidence;
    *c = (hs_result_confidence){
        .level = chain->job->shop.confidence, .reached = batch->one, .samples = draws->n};
    if (batch->one >= 1) { /* N trials without a failure prove only p < 3/N, at 95 % */
        c->reached = 1 - 3 / (double)draws->n;
        c->at_least = 1;
    }
    fill_batch(c, batch, chain->job->part.quantity);
    c->drivers = hs_drivers_find(c->driver, HS_MAX_DRIVERS, draws, work->margin_m);
}

/* Both faces of a draw together. */
static size_t drivers_of(hs_driver *driver, const double side_m[2][HS_MAX_SAMPLES],
                         const hs_draws *draws, double *column) {
    for (size_t i = 0; i < draws->n; i++)
        column[i] = side_m[0][i] + side_m[1][i];
    return hs_drivers_find(driver, HS_MAX_SIDE_DRIVERS, draws, column);
}

void hs_fill_drivers(hs_result *result, const hs_window_found *found, const hs_chain *chain,
                     const hs_draws *draws, hs_decide_work *work) {
    for (size_t i = 0; i < chain->job->dimensions; i++) {
        hs_result_dimension *d = &result->dimension[i];
        const hs_dimension_draws *drawn = &work->dimension[i];
        if (found[i].verdict == HS_NONE) continue;
        d->need_drivers = drivers_of(d->need_driver, drawn->need_m, draws, work->column[0]);
        if (found[i].grounds > 0)
            d->may_drivers = drivers_of(d->may_driver, drawn->may_m, draws, work->column[0]);
    }
}
