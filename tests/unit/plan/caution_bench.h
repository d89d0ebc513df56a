/* A job for the tests of cautions: nothing found amiss until a test changes it. */
#ifndef HS_TESTS_PLAN_CAUTION_BENCH_H
#define HS_TESTS_PLAN_CAUTION_BENCH_H

#include "hardskin/plan/result.h"

enum { CAUTION_STEPS = 8 };

typedef struct caution_bench {
    hs_step step[CAUTION_STEPS];
    hs_face face[2];
    hs_feature feature[1];
    hs_point outline[6];
    hs_job job;
    hs_result result;
} caution_bench;

hs_step caution_heat(hs_step_kind kind, const char *medium, double celsius);

/** A plain plate: charcoal, box, reheat in the box, oil, temper, brush. */
void caution_plain(caution_bench *b);

/** Collect its cautions, its walls found before. */
void caution_collect(caution_bench *b);

int caution_has(const hs_result *r, const char *code);

#endif
