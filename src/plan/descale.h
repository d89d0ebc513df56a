/* The plan of one descale step: may it be done this way, how, and what else could be done. */
#ifndef HS_PLAN_DESCALE_H
#define HS_PLAN_DESCALE_H

#include "hardskin/plan/result.h"

/** Descaling as the sheet wants it, judged by the hydrogen rule at that step.
 *
 *    out                        out  verdict ok, care or stop, with what the tank needs
 *    step                       in   index of a HS_DESCALE step of the job
 *    surface_HRC_there  double  in   of the hardest layer at that step; NaN = soft
 *    hardened           int     in   1 after the quench of a carburised part
 *    tempered           int     in   1 if a temper followed the last quench
 *    scale_m            double  in   scale on the part, thickness per side, >= 0
 *    last_temper_K      double  in   of the last temper before the step; NaN = none
 *
 *  What the sheet does not say is taken from tables/descale.csv and named in out->text.
 *  Returns  HS_OK (also for a stop); HS_E_FORBIDDEN for a forbidden anode; HS_E_WORD for an unknown
 *           acid or anode; HS_E_RANGE outside the bath's models. Output untouched on failure. */
hs_status hs_descale_plan(hs_result_descale *out, const hs_job *job, size_t step,
                          double surface_HRC_there, int hardened, int tempered, double scale_m,
                          double last_temper_K, hs_error *err);

/** Outer area of one part (m2): plate, bar, ring, profile with its holes and both ends. */
hs_status hs_part_area(double *area_m2, const hs_part *part, hs_error *err);

#endif
