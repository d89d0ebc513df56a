/* The bow, its causes each by itself, and growth, into the result. */
#include "base/num.h"
#include "hardskin/model/bow.h"
#include "plan/fill.h"
#include "plan/warp_frame.h"

#include <math.h>
#include <stdio.h>

static void term(hs_result_distortion *d, const char *words, double value_m) {
    if (d->terms == HS_MAX_TERMS || !(value_m > 0)) return;
    snprintf(d->because[d->terms].term, sizeof d->because[0].term, "%s", words);
    d->because[d->terms++].value_m = value_m;
}

/* Of the quench alone, in one draw: bow over the length, or ovality of a ring. */
static double quench_m(const hs_warp *w, const double z[HS_INPUTS]) {
    double x_1_m, y_1_m;
    if (w->ring_m2 > 0) return fabs(w->ring_m2 * hs_bend_ring(&w->bend, z));
    hs_bend_draw(&x_1_m, &y_1_m, &w->bend, z);
    return fabs(hs_bow_sag_m(hypot(x_1_m, y_1_m), w->length_m));
}

static double whole_m(const hs_warp *w, const double z[HS_INPUTS]) {
    double x_m, y_m;
    if (w->ring_m2 > 0) return hs_warp_ovality(w, z);
    hs_warp_bow(&x_m, &y_m, w, z);
    return hypot(x_m, y_m);
}

/* What an even quench leaves: the section or its case is not alike all round. */
static double even_m(const hs_warp *w) {
    static const double middle[HS_INPUTS] = {0};
    return w->ring_m2 > 0 ? 0 : quench_m(w, middle);
}

static double plain_m(const hs_warp *w, const hs_job *job) {
    double x_m, y_m, kappa_1_m = 0;
    hs_warp_heights(&x_m, &y_m, &job->part, w->axis_rad);
    hs_bow_random(&kappa_1_m, w->beta, y_m, NULL);
    return w->ring_m2 > 0 ? w->ring_m2 * kappa_1_m : hs_bow_sag_m(kappa_1_m, w->length_m);
}

void hs_fill_distortion(hs_result_distortion *out, const hs_chain *chain, const hs_draws *draws,
                        double *column) {
    const hs_warp *w = &chain->warp;
    for (size_t i = 0; i < draws->n; i++)
        column[i] = whole_m(w, draws->z[i]);
    out->bow_m = hs_quantile_of(column, draws->n, 0.5);
    out->bow_high_m = hs_quantile_of(column, draws->n, 0.95);
    for (size_t i = 0; i < draws->n; i++)
        column[i] = quench_m(w, draws->z[i]);
    out->quench_m = hs_quantile_of(column, draws->n, 0.5);
    out->quench_high_m = hs_quantile_of(column, draws->n, 0.95);
    out->growth_m = w->bend.growth * chain->job->part.length_m;
    out->plain_m = plain_m(w, chain->job);
    out->skin_Pa = w->bend.surface.surface_Pa;
    out->ring = w->ring_m2 > 0;
    out->straightened_m = w->left_m;
    out->one_quench = w->bend.trace;
    out->lever_m2 = w->ring_m2 > 0 ? NAN : hs_bow_sag_m(1, w->length_m);
    term(out, "quench of the section, computed (typical)", out->quench_m);
    term(out, "the same, 1 part in 20", out->quench_high_m);
    term(out, "of it by section or case not alike all round", even_m(w));
    term(out, "stress in the stock (one standard deviation)", hypot(w->stock_x_m, w->stock_y_m));
    term(out, "dipping, supports, handling (one standard deviation)",
         hypot(w->other_x_m, w->other_y_m));
}
