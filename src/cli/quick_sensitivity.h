/* What an answer hangs on: each input moved a little, the sum done again. */
#ifndef HS_CLI_QUICK_SENSITIVITY_H
#define HS_CLI_QUICK_SENSITIVITY_H

#include "cli/out.h"
#include "cli/quick.h"

/** One line per input that is a quantity: how the first figure of the answer moves. */
void quick_sensitivity(hs_out *out, const quick_topic *topic, const quick_value *value,
                       const quick_answer *answer, const hs_units *units);

#endif
