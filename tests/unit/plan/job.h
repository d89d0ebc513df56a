/* A job built by hand for the tests of plan: a plate, packed, reheated, quenched, tempered. */
#ifndef HS_TESTS_PLAN_JOB_H
#define HS_TESTS_PLAN_JOB_H

#include "hardskin/plan/job.h"
#include "hardskin/plan/plan.h"

typedef struct test_job {
    hs_job job;
    hs_face face[8];
    hs_dimension dimension[3];
    hs_step step[8];
    hs_point outline[8];
} test_job;

/** Plate 300 x 60 x 20 of a steel, top and bottom ground to 20 h7, case .6 mm, 58 HRC. */
void test_job_plate(test_job *out, const char *steel);

/** Bar 160 x dia 30, outside ground, ends left. */
void test_job_bar(test_job *out, const char *steel);

/** Profile 240 long, 60 x 20 with one corner cut off, turned by an angle: under (edge 1) and top
 *  (edge 3) ground to 20 h7, the cut (edge 4) masked. */
void test_job_profile(test_job *out, const char *steel, double turned_rad);

/** Profile 60 x 40 with a slot 20 wide and 25 deep, 240 long: both sides of the slot (edges 4 and
 * 6) ground to 20 H8. */
void test_job_slot(test_job *out, const char *steel);

/** Ring 70 x 45 x 50, outside and bore ground. */
void test_job_ring(test_job *out, const char *steel);

/** The whole plan of a job, with work space of its own. */
hs_status test_job_try(hs_result *out, const hs_job *job, hs_error *err);

/** The same, which must succeed: a check says so, and the message is printed if it does not. */
void test_job_plan(hs_result *out, const hs_job *job);

#endif
