/* The changes to a job that may open its window. */
#ifndef HS_PLAN_VARIANT_H
#define HS_PLAN_VARIANT_H

#include "hardskin/plan/job.h"

/** A copy of a job whose steps and faces may be changed. */
typedef struct hs_variant {
    hs_job job;
    hs_step step[HS_MAX_STEPS];
    hs_face face[HS_MAX_FACES];
    hs_dimension dimension[HS_MAX_DIMENSIONS];
    char what[128], text[400];
    int quench; /* steel or quench is another: say how surely the case then hardens */
    int relief; /* faces end before their inner corners: say how far before */
} hs_variant;

/** A fresh copy of a job. */
void hs_variant_start(hs_variant *variant, const hs_job *job);

/** One change of a job; returns 0 when it does not apply to it. `size` is the step of the change:
 *  0 the smallest tried, rising. what and text of the variant say what was done. */
typedef int (*hs_variant_change)(hs_variant *variant, int size);

typedef struct hs_change {
    hs_variant_change change;
    int fire;  /* it changes what the carbon does */
    int sizes; /* how many sizes there are; the first that opens the window is offered */
    int soft;  /* only where the quench at hand leaves case or core soft */
    int dear;  /* another medium or steel: it takes quenches of its own to say anything of it */
} hs_change;

/** A longer soak: its length is solved for, not stepped. 0 where the route has none, or a log.
 *    hs_variant_soak_s  the last soak of a job (s), 0 as above */
int hs_variant_soak(hs_variant *variant, double hold_s);
double hs_variant_soak_s(const hs_job *job);

/** Everything from the last soak on once more, that soak as long as said. 0 where there is none, or
 * a log, or too many steps. */
int hs_variant_twice(hs_variant *variant, double hold_s);

/** All other changes, in the order they are tried. */
const hs_change *hs_changes(size_t *n);

#endif
