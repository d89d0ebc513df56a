/* Acid baths for scale: what they take up and what it takes to make them harmless.
 * Acid into water, never the other way; never near bleach. Acid charges hydrogen too: bake.h. */
#ifndef HARDSKIN_MODEL_PICKLE_H
#define HARDSKIN_MODEL_PICKLE_H

#include "hardskin/base/status.h"

typedef struct hs_pickle_plan {
    double acid_kg;     /* taken up by the scale */
    double scale_kg;    /* dense scale on the area */
    double capacity_kg; /* scale, as FeO, the bath can dissolve at most */
    double soda_kg;     /* anhydrous sodium carbonate that neutralises the whole fresh bath */
    double time_low_s, time_high_s; /* at the usual strength and temperature */
    double temp_low_K, temp_high_K; /* usual bath temperature */
    int spent;                      /* the scale would take more acid than there is */
} hs_pickle_plan;

/** Plan of an acid bath.
 *    out                 out
 *    acid       text     in   "citric", "acetic", "hydrochloric", "sulphuric", "phosphoric" or an
 *                             alias of tables/acids.csv ("vinegar", "muriatic")
 *    acid_pct   double   in   kg of acid per 100 L of bath (1 % = 10 g/L), in the table's range
 *    volume_m3  double   in   > 0
 *    area_m2    double   in   scaled surface, >= 0
 *    scale_m    double   in   thickness of the scale, >= 0
 *  Returns  HS_OK; HS_E_WORD for an unknown acid; HS_E_RANGE for the strength; HS_E_IMPOSSIBLE.
 *  Source   stoichiometry, FeO + 2 H+; times: tables/acids.csv */
HS_API hs_status hs_pickle(hs_pickle_plan *out, const char *acid, double acid_pct, double volume_m3,
                           double area_m2, double scale_m, hs_error *err);

/** Acid per FeO dissolved (kg/kg). HS_E_WORD for an unknown acid. */
HS_API hs_status hs_pickle_demand(double *kg_per_kg, const char *acid, hs_error *err);

#endif
