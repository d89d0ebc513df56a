/* The carbon factor of ASTM A255 (inches), shared by the ideal diameter and the critical rates. */
#ifndef HS_MODEL_CARBON_FACTOR_H
#define HS_MODEL_CARBON_FACTOR_H

#define HS_CARBON_FACTOR_LAST 0.90

/** NaN above HS_CARBON_FACTOR_LAST. */
double hs_carbon_factor_in(double carbon_pct);

#endif
