/* The case: carbon and hardness over depth, and the depths read from it. A profile need not be
 * monotone (soft rim, retained austenite). */
#ifndef HARDSKIN_MODEL_CASE_H
#define HARDSKIN_MODEL_CASE_H

#include "hardskin/model/carbon.h"
#include "hardskin/model/hardenability.h"
#include "hardskin/model/martensite.h"

enum { HS_CASE_NODES = HS_CARBON_CELLS + 2 };

/** Depth rising from the surface. */
typedef struct hs_case_profile {
    size_t n;
    double depth_m[HS_CASE_NODES], carbon_pct[HS_CASE_NODES], hardness_HV[HS_CASE_NODES];
} hs_case_profile;

/** Nodes of a profile from a mesh: face 1, the centres, and the far wall. Hardness is set to NaN.
 *    surface_pct  2 doubles  in  face values (hs_carbon_uptake); NULL: the end cells' values
 *    from_face_2  int        in  count depth from face 2 instead */
HS_API void hs_case_from_mesh(hs_case_profile *profile, const hs_carbon_mesh *mesh,
                              const double *carbon_pct, const double surface_pct[2],
                              int from_face_2);

/** Fill the hardness of every node, as hs_hardened_many.
 *  Returns as hs_hardening_check. */
HS_API hs_status hs_case_harden(hs_case_profile *profile, const hs_hardening *h, hs_error *err);

/** The same with the rate of cooling at each depth: so the hardness goes over from the case to a
 *  core that hardens in part or not at all, as the local carbon and the local rate have it.
 *    quenched  hs_quenched  in  the section; depths beyond its middle count towards the far face
 *    from_K    double       in  heat before the quench, above 700 C
 *  Returns as hs_hardening_check; HS_E_RANGE for a quench without rates. */
HS_API hs_status hs_case_harden_in(hs_case_profile *profile, const hs_hardening *h,
                                   const hs_quenched *quenched, double from_K, hs_error *err);

/** Case depth: the deepest place where the hardness falls through the limit, linear between the
 *  nodes that bracket it.
 *
 *    depth_m     double  out  m
 *    limit_HV    double  in   550 unless agreed otherwise
 *
 *  Returns  HS_OK; HS_E_RANGE when no node is that hard, or the last one still is (the part is
 *           hard through: there is no case depth).
 *  Source   ISO 18203:2016 */
HS_API hs_status hs_case_depth(double *depth_m, const hs_case_profile *profile, double limit_HV,
                               hs_error *err);

/** Total case: deepest place where the carbon falls through core + .07 %.
 *  Returns as hs_case_depth. */
HS_API hs_status hs_case_total(double *depth_m, const hs_case_profile *profile, double core_pct,
                               hs_error *err);

/** Soft rim: depth of the first place, from the surface, where the hardness rises through the
 *  limit; 0 when the surface is that hard; HS_E_RANGE when none is. */
HS_API hs_status hs_case_soft_rim(double *depth_m, const hs_case_profile *profile, double limit_HV,
                                  hs_error *err);

/** Deepest place at which the hardness is still the one asked: as hs_case_depth, but a part hard
 *  through gives its last node. */
HS_API hs_status hs_case_deepest(double *depth_m, const hs_case_profile *profile,
                                 double hardness_HV, hs_error *err);

/** Hardness (HV) and carbon (wt %) at a depth, linear between nodes; NaN outside. */
HS_API double hs_case_hardness_at(const hs_case_profile *profile, double depth_m);
HS_API double hs_case_carbon_at(const hs_case_profile *profile, double depth_m);

/** ISO 15787 upper deviation (m) suggested for a case depth; NaN outside its table. */
HS_API double hs_case_tolerance(double depth_m);

#endif
