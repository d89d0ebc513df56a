/* A case depth as a drawing writes it. */
#ifndef HS_PLAN_CHD_H
#define HS_PLAN_CHD_H

#include <stddef.h>

/** "CHD = 0.8 +0.4 mm" to 550 HV, "CHD 600 = 0.8 +0.4 mm" to another limit: the depth rounded up to
 *  hundredths, the upper deviation by tables/chd_deviation.csv. "" where the standard has no such
 *  symbol (a limit that is not 550 HV or above it in steps of 25) or the table no deviation. */
void hs_chd_write(char *out, size_t size, double depth_m, double limit_HV);

/** The symbol as above exists for this limit. */
int hs_chd_limit(double limit_HV);

#endif
