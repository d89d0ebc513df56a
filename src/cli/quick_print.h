/* A single sum on paper and as JSON. */
#ifndef HS_CLI_QUICK_PRINT_H
#define HS_CLI_QUICK_PRINT_H

#include "cli/out.h"
#include "cli/quick.h"

/** The sum as text: inputs as understood, answer, formula, source, range, sensitivity. */
void quick_print_text(hs_out *out, const quick_topic *topic, const quick_value *value,
                      const quick_answer *answer, const hs_units *units);

/** The sum as one JSON object, figures unrounded. */
void quick_print_json(hs_out *out, const quick_topic *topic, const quick_value *value,
                      const quick_answer *answer);

#endif
