/* The handbook's allowance beside the computed one. */
#ifndef HS_PLAN_HANDBOOK_H
#define HS_PLAN_HANDBOOK_H

#include "hardskin/plan/result.h"

/** Table value per side for one dimension, and which of the two governs.
 *
 *    out        out  whole; not `present` for bores, rings, ends and sizes outside the tables
 *    job        in
 *    result     in   its dimension[i] and faces filled
 *    dimension  in   index
 *
 *  The computed stock governs wherever a case or a hardness is asked, since the table knows neither
 *  case nor bow; where neither is asked and the table's value cleans up, it governs.
 *  Source   tables/allowance_round.csv, tables/allowance_plane.csv, both from memory */
void hs_handbook_compare(hs_handbook *out, const hs_job *job, const hs_result *result,
                         size_t dimension);

/** The tables alone, per side in metres; NaN where they have no value. */
double hs_handbook_round_m(double diameter_m, double length_m);
double hs_handbook_plane_m(double width_m, double length_m, int indicated);

#endif
