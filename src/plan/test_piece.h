/* The test piece in the box: which, where, what to do with it, what to expect. */
#ifndef HS_PLAN_TEST_PIECE_H
#define HS_PLAN_TEST_PIECE_H

#include "hardskin/plan/result.h"

/** From the sheet, or what we advise (same steel, a round as thick as the part is, within limits).
 *  The depth expected counts from the surface as hardened, scale gone: result->hard less the metal
 *  lost. */
void hs_test_piece_plan(hs_result_test_piece *out, const hs_job *job, const hs_result *result);

#endif
