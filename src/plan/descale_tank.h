/* The working figures of one way of descaling; descale.h judges whether it may be done. */
#ifndef HS_PLAN_DESCALE_TANK_H
#define HS_PLAN_DESCALE_TANK_H

#include "base/text.h"
#include "hardskin/plan/result.h"

/** What is to be descaled. */
typedef struct hs_descale_part {
    double area_m2;
    double scale_m;
} hs_descale_part;

/** Both leads: current, charge, time, gas, fresh air into `out`; `care` set when the room or the
 *  bath is not what it should be; what was assumed goes to `assumed`, advice to `advice`.
 *    anodic  int  in  1: part on the positive lead, minutes only
 *  Returns  HS_OK; HS_E_FORBIDDEN, HS_E_WORD for the anode; HS_E_RANGE for the bath. */
hs_status hs_descale_current(hs_result_descale *out, int *care, hs_text *assumed, hs_text *advice,
                             const hs_tank *tank, const hs_descale_part *part, hs_error *err);
hs_status hs_descale_anodic(hs_result_descale *out, int *care, hs_text *assumed, hs_text *advice,
                            const hs_tank *tank, const hs_descale_part *part, hs_error *err);

/** The same for acid: times and amounts. HS_E_WORD for an unknown acid; HS_E_RANGE its strength. */
hs_status hs_descale_acid(hs_result_descale *out, int *care, hs_text *assumed, hs_text *advice,
                          const hs_tank *tank, const hs_descale_part *part, hs_error *err);

/** Least and most time of a way with all of its defaults (s). */
void hs_descale_usual_time(double *low_s, double *high_s, hs_descale_method by,
                           const hs_descale_part *part);

#endif
