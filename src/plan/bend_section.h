#ifndef HS_PLAN_BEND_SECTION_H
#define HS_PLAN_BEND_SECTION_H

#include "plan/bend.h"

/** The section of a job for the quench, its own mirror images, and its masked edges. */
void hs_bend_section_of(hs_bend_section *out, int closed[HS_MAX_OUTLINE], const hs_job *job);

#endif
