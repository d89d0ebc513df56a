/* A case depth that was read, held against the chain. */
#ifndef HS_PLAN_READING_MAKE_H
#define HS_PLAN_READING_MAKE_H

#include "plan/chain.h"

/** Take job->measured's case depth into a chain that has run; absent where none was read or nothing
 *  was carburised.
 *
 *  Returns  HS_OK; HS_E_DISAGREE, with the sheet's place, when the reading is deeper than 1.5 times
 *           the total case computed or less than a third of what it was to find, and was not said
 *           to be checked. */
hs_status hs_reading_make(hs_reading *reading, const hs_chain *chain, hs_error *err);

/** The face whose case is told and whose quench stands for the piece that is read: of the ground
 * ones that with the least budget in the middle, before any reading; else the first with a case;
 * HS_MAX_FACES where none has. */
size_t hs_reading_face(const hs_chain *chain);

/** Typical depth (m, from the blank surface) that a way of reading finds under the flat of a face.
 */
double hs_reading_expected(const hs_chain *chain, size_t face, hs_case_way way, double limit_HV);

#endif
