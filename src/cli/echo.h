/* A quantity as it was understood, in the units a workshop reads. */
#ifndef HS_CLI_ECHO_H
#define HS_CLI_ECHO_H

#include "cli/out.h"
#include "hardskin/plan/job.h"

/** One line of the echo; inches first where the sheet is in inches. */
void hs_echo_add(hs_out *out, const hs_read *read, int inch);

#endif
