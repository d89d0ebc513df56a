/* How far the steel's own range of analysis and the quench's range of severity move what hardens.
 */
#ifndef HARDSKIN_MODEL_HARDENABILITY_DOUBT_H
#define HARDSKIN_MODEL_HARDENABILITY_DOUBT_H

#include "hardskin/model/hardenability.h"

/** One section in one quench: at the low, the middle and the high severity of the medium. */
typedef struct hs_quench_range {
    hs_quenched low, mid, high;
} hs_quench_range;

/** A value with its doubt, about 95 %. */
typedef struct hs_band {
    double low, mid, high;
} hs_band;

/** Margin of hs_case_hardens, with its doubt: each element moved alone to the end of its range, the
 *  severity likewise, half the distance between the two ways, their own doubt; the logarithms added
 *  as squares. Surely hardens where low >= 1, hardens on the whole where mid >= 1, is in doubt
 * where high >= 1, and no hardness is promised where high < 1. Returns as hs_case_hardens. */
HS_API hs_status hs_case_margin_band(hs_band *margin, const hs_steel *steel,
                                     const hs_quench_range *quench, double from_K, hs_error *err);

/** 95 % bound on ln of a rate over the critical one, at the surface and for 90 % martensite at a
 *  carbon: quench, analysis and formulas, as squares.  Returns HS_OK; HS_E_RANGE. */
HS_API hs_status hs_rate_doubt(double *ln_bound, const hs_steel *steel,
                               const hs_quench_range *quench, double carbon_pct, double from_K,
                               hs_error *err);

/** Hardness (HV) of the core, with its doubt found the same way, carbon among the elements, and the
 *  doubt of the formulas.
 *    structure  hs_structure  out  at the middle; may be NULL
 *  Returns as hs_core_HV. */
HS_API hs_status hs_core_band(hs_band *hardness_HV, hs_structure *structure, const hs_steel *steel,
                              const hs_quench_range *quench, double from_K, hs_error *err);

#endif
