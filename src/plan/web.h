/* Walls of the section, and what holes and slots leave of it. */
#ifndef HS_PLAN_WEB_H
#define HS_PLAN_WEB_H

#include "hardskin/plan/result.h"

/** Thickest and thinnest wall; per hole and slot the web beside it and the stiffness left.
 *  A hole is taken to go right through and to lie in the middle of its face: the sheet knows
 *  neither its place nor its depth. Where no face is named, the worst of all faces counts.
 *    out   hs_result_section  out   plain numbers; the job was checked before */
void hs_web_find(hs_result_section *out, const hs_job *job);

#endif
