/* Scratch of hs_plan and hs_plan_check. */
#ifndef HS_PLAN_PLAN_WORK_H
#define HS_PLAN_PLAN_WORK_H

#include "hardskin/plan/result.h"
#include "plan/batch.h"
#include "plan/chain.h"
#include "plan/decide.h"
#include "plan/measured.h"
#include "plan/remedy.h"

typedef struct hs_plan_work {
    hs_chain chain;
    hs_draws draws;
    hs_decide_work decide;
    hs_batch_work batch;
    hs_remedy_work remedy;
    hs_chain_work scratch;
    hs_window_found found[HS_MAX_DIMENSIONS];
    hs_measured_input measured;
    hs_reading reading;
    hs_result result;
} hs_plan_work;

#endif
