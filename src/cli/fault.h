/* How a fault is told: `place:line:column: message`, the line, a caret, the pointer, the fix. */
#ifndef HS_CLI_FAULT_H
#define HS_CLI_FAULT_H

#include "hardskin/base/status.h"

#include <stddef.h>

/** Print a fault to stderr and return its exit code.
 *    place  in  file name or "command line"
 *    text   in  what was read, `size` bytes; NULL where there is none to show */
int hs_fault_print(const hs_error *err, const char *place, const char *text, size_t size);

/** A usage fault: message and help to stderr; returns 2. */
int hs_fault_usage(const char *message, const char *word, const char *help);

#endif
