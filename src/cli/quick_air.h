/* The air round a hot part, by the words a sheet uses. */
#ifndef HS_CLI_QUICK_AIR_H
#define HS_CLI_QUICK_AIR_H

#include "hardskin/base/status.h"

typedef struct quick_air {
    double low, usual, high; /* factor on the oxygen taken up, 1 = open air */
} quick_air;

/** HS_E_WORD with the words it knows. Source: tables/atmosphere.csv */
hs_status quick_air_find(quick_air *air, const char *word, hs_error *err);

#endif
