/* Where in the sheet a fault stands: faces and steps know their place, models do not. */
#ifndef HS_PLAN_PLACE_H
#define HS_PLAN_PLACE_H

#include "hardskin/plan/job.h"

/** Put the place of a face to a fault that has none yet, the part's where the sheet does not name
 * the face. Returns the status. */
hs_status hs_at_face(hs_status status, const hs_face *face, hs_error *err);

/** The same of a step; `key` is the one of its keys that is at fault, "" the step as a whole. */
hs_status hs_at_step(hs_status status, const hs_step *step, const char *key, hs_error *err);

#endif
