/* Carbon and hardenability below a face, as a quench asks for them. */
#ifndef HARDSKIN_MODEL_QUENCH_LAYER_H
#define HARDSKIN_MODEL_QUENCH_LAYER_H

#include "hardskin/model/hardenability.h"
#include "hardskin/model/quench_material.h"

/** Carbon below a face, depth rising from the surface; the last is the core's. */
typedef struct hs_quench_profile {
    size_t n; /* 1: no case */
    const double *depth_m, *carbon_pct;
    double dissolved_most_pct; /* what the heat before the quench dissolves */
} hs_quench_profile;

/** Rows from the face to the middle of the section: dissolved carbon, and the share of martensite
 *  by the rate of cooling there (hs_quench_rates, hs_structure_of).
 *
 *    out       hs_quench_layer    out
 *    case_m    double             out  to core + .07 %C (total case); 0 where there is none
 *    profile   hs_quench_profile  in
 *    steel     hs_composition     in   its C is not used
 *    quenched  hs_quenched        in   the section, in the medium
 *    from_K    double             in   heat before the quench
 *
 *  Returns  HS_OK; HS_E_RANGE for a quench from below 700 C; HS_E_IMPOSSIBLE for no section. */
HS_API hs_status hs_quench_layer_of(hs_quench_layer *out, double *case_m,
                                    const hs_quench_profile *profile, const hs_composition *steel,
                                    const hs_quenched *quenched, double from_K, hs_error *err);

#endif
