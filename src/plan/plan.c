#include "hardskin/plan/plan.h"

#include "constants.h"
#include "hardskin/model/hardenability.h"
#include "plan/blank.h"
#include "plan/caution.h"
#include "plan/fill.h"
#include "plan/fire.h"
#include "plan/grind.h"
#include "plan/handbook.h"
#include "plan/measured_input.h"
#include "plan/plan_work.h"
#include "plan/put_right.h"
#include "plan/ready.h"
#include "plan/second.h"
#include "plan/test_piece.h"
#include "plan/web.h"

#include <math.h>

static const uint64_t seed = 1912; /* any fixed number: the same sheet gives the same bytes */

size_t hs_plan_work_size(void) {
    return sizeof(hs_plan_work);
}

/* One more, in the order of the route; the worst, of equals the last, is told of first. */
static void add_descale(hs_result *r, const hs_result_descale *one) {
    const hs_result_descale *other = one;
    hs_result_descale before = r->descale;
    if (!r->descale_present) {
        r->descale_present = 1;
        r->descale = *one;
        return;
    }
    if (one->verdict >= before.verdict) {
        r->descale = *one;
        other = &before;
    }
    size_t at = r->other_descales++;
    for (; at > 0 && r->other_descale[at - 1].step > other->step; at--)
        r->other_descale[at] = r->other_descale[at - 1];
    r->other_descale[at] = *other;
}

static hs_status plan_descale(hs_result *r, const hs_chain *chain, hs_error *err) {
    const hs_job *job = chain->job;
    for (size_t i = 0; i < job->steps; i++) {
        if (job->step[i].kind != HS_DESCALE) continue;
        hs_result_descale one = {0};
        hs_status status = hs_ready_descale(&one, job, chain, i, err);
        if (status != HS_OK) return status;
        add_descale(r, &one);
    }
    r->descale_verdict = r->descale.verdict;
    return HS_OK;
}

static void judge_measured(hs_result *r, hs_plan_work *w) {
    const hs_chain *chain = &w->chain;
    const hs_job *job = chain->job;
    hs_measured_input *in = &w->measured;
    if (!job->measured.stated) return;
    hs_measured_input_make(in, chain, w->found, r);
    hs_second_find(&in->second, in, chain, &w->draws, &w->remedy, &w->scratch, &w->decide);
    r->measured_present = 1;
    hs_measured_judge(&r->measured, job, in);
    r->measured_verdict = r->measured.verdict;
}

/* So many draws that their number leaves the ends of the rough sizes known to a quarter of the
 * rough tolerance, or as many as are ever made. */
static void draw_enough(hs_plan_work *w, const hs_job *job) {
    size_t n = 0, wanted = hs_draws_wanted(job->shop.confidence);
    hs_draws_fill(&w->draws, wanted, seed);
    while (wanted > n) {
        size_t before = n;
        n = wanted;
        hs_draws_take(&w->draws, n);
        hs_decide_more(w->found, &w->chain, &w->draws, before, job->shop.confidence, &w->decide);
        wanted = hs_decide_draws(w->found, job, n);
    }
}

static void draw_and_decide(hs_result *r, hs_plan_work *w, const hs_job *job) {
    draw_enough(w, job);
    hs_fill_dimensions(r, w->found, &w->chain, &w->draws, &w->decide);
    hs_fill_case(r, &w->chain, &w->draws, &w->decide);
    hs_fill_edges(r, &w->chain);
    (void)hs_decide_joint(w->found, &w->chain, &w->draws, &w->decide);
    hs_batch batch = hs_batch_find(w->found, &w->chain, &w->draws, &w->decide, &w->batch);
    hs_fill_confidence(r, &w->chain, &w->draws, &batch, &w->decide);
    hs_fill_drivers(r, w->found, &w->chain, &w->draws, &w->decide);
    r->confidence.error_m = hs_decide_error(w->found, job->dimensions);
    r->confidence.error_asked_m = hs_decide_error_asked_m(job);
    r->grind =
        hs_decide_part(w->found, job->dimensions, r->confidence.reached, job->shop.confidence);
    r->untempered = r->grind != HS_NONE && r->hard.hardens && !hs_route_tempered(job);
    if (r->untempered) r->grind = HS_STOP;
    r->changes_tried = hs_remedy_find(r->dimension, w->found, &w->chain, &w->draws, &w->remedy,
                                      &w->scratch, &w->decide);
}

hs_status hs_plan(hs_result *result, const hs_job *job, void *work, hs_error *err) {
    hs_plan_work *w = work;
    hs_result *r = &w->result;
    *r = (hs_result){0};
    hs_status status =
        hs_ready_make(&w->chain, &w->reading, job, HS_RESPONSE_WHOLE, &w->scratch, err);
    if (status == HS_OK) status = hs_chain_bend(&w->chain, &w->scratch, err);
    if (status != HS_OK) return status;
    w->chain.reading = w->reading;
    draw_and_decide(r, w, job);
    status = hs_fill_route(r, &w->chain, &w->scratch.history, err);
    if (status == HS_OK) status = plan_descale(r, &w->chain, err);
    if (status == HS_OK) status = hs_fire_plan(r, job, err);
    if (status != HS_OK) return status;
    judge_measured(r, w);
    for (size_t i = 0; i < job->dimensions; i++)
        hs_handbook_compare(&r->dimension[i].handbook, job, r, i);
    hs_blank_choose(&r->blank, job, r);
    hs_grind_plan(&r->grind_plan, job, r);
    hs_fill_readings(r, &w->chain);
    hs_test_piece_plan(&r->test_piece, job, r);
    hs_web_find(&r->section, job);
    hs_fill_limits(r, &w->chain);
    hs_caution_collect(r, job);
    hs_put_right(r, job);
    *result = *r;
    return HS_OK;
}
