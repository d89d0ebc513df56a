/* Words of the verdicts in the JSON. */
#ifndef HS_REPORT_JSON_WORDS_H
#define HS_REPORT_JSON_WORDS_H

#include "hardskin/plan/result.h"

const char *hs_json_verdict(hs_verdict verdict);
const char *hs_json_clean(hs_clean verdict);
const char *hs_json_wheel(hs_wheel verdict);

#endif
