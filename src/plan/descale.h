/* The plan of one descale step: may it be done this way, how, and what else could be done. */
#ifndef HS_PLAN_DESCALE_H
#define HS_PLAN_DESCALE_H

#include "hardskin/plan/result.h"

/** The part as it comes to a descale step. */
typedef struct hs_descale_at {
    size_t step;        /* index of a HS_DESCALE step of the job */
    double surface_HRC; /* of the hardest layer there; NaN = soft */
    double core_HRC;    /* likewise */
    int hardened;       /* 1 after the quench of a carburised part */
    int tempered;       /* 1 if a temper or bake followed the last quench */
    double scale_m;     /* scale on the part, thickness per side, >= 0 */
    int self_hard;      /* hardened by a slow cooling alone: this steel does not come out soft */
} hs_descale_at;

/** Descaling as the sheet wants it, judged by the hydrogen rule at that step.
 *
 *  The temper that limits the bake is the last one of the route since the last quench; a bake does
 *  not count as one where there is a temper. A cathodic plan of a hard part needs the acceptance
 *  and a bake as the very next step of the route, else its verdict is stop.
 *  What the sheet does not say is taken from tables/descale.csv and named in out->text.
 *  Returns  HS_OK (also for a stop); HS_E_FORBIDDEN for a forbidden anode; HS_E_WORD for an unknown
 *           acid or anode; HS_E_RANGE outside the bath's models. Output untouched on failure. */
hs_status hs_descale_plan(hs_result_descale *out, const hs_job *job, const hs_descale_at *at,
                          hs_error *err);

/** Outer area of one part (m2): plate, bar, ring, profile with its holes and both ends. */
hs_status hs_part_area(double *area_m2, const hs_part *part, hs_error *err);

/** Largest outer size of one part (m). */
double hs_part_largest(const hs_part *part);

#endif
