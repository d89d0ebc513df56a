/* The soak after which a case is surely as deep as wanted. */
#ifndef HS_CLI_QUICK_SOAK_LOW_H
#define HS_CLI_QUICK_SOAK_LOW_H

#include "cli/quick_case.h"

/** Depth (m) that 19 boxes in 20 reach after a soak: the middle, less the one-sided 95 % of fire,
 *  medium, diffusivity and scatter within the load taken together (each moved alone to its bound,
 *  their effects added as squares; tables/plan_doubt.csv, surface_carbon.csv). A surface carbon or
 *  a temperature typed as a range brings its own bounds; a surface typed as one number has none.
 *  Returns  HS_OK; as quick_case_depth. */
hs_status quick_soak_low_depth(double *depth_m, const quick_carburising *c,
                               const quick_value *value, double time_s, hs_error *err);

/** Shortest soak (s) whose low depth is depth_m, between shortest_s and longest_s.
 *  Returns  HS_OK; HS_E_CONVERGE when none is. */
hs_status quick_soak_low_time(double *time_s, const quick_carburising *c, const quick_value *value,
                              double depth_m, double shortest_s, double longest_s, hs_error *err);

#endif
