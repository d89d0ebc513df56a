/* A steel by name, or plain iron with so much carbon. */
#ifndef HS_CLI_QUICK_STEEL_H
#define HS_CLI_QUICK_STEEL_H

#include "cli/quick.h"
#include "hardskin/tables/steel.h"

/** Middle composition of `name` (NULL: plain Fe-C), its carbon replaced by carbon_pct unless that
 *  is negative. What was assumed goes into the notes. HS_E_STEEL, HS_E_IMPOSSIBLE. */
hs_status quick_steel(hs_composition *steel, quick_answer *answer, const char *name,
                      double carbon_pct, hs_error *err);

#endif
