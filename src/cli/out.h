/* What goes to stdout: gathered first, written in one go, so that a run that fails prints nothing
 * there. */
#ifndef HS_CLI_OUT_H
#define HS_CLI_OUT_H

#include "hardskin/base/status.h"

#include <stddef.h>

typedef struct hs_out {
    char *data;
    size_t length, room;
    int failed; /* sticky: no memory */
} hs_out;

/** Append formatted text. */
void hs_out_add(hs_out *out, const char *format, ...) HS_PRINTF(2, 3);

/** Append text as a JSON string, quotes included. */
void hs_out_json(hs_out *out, const char *text);

/** Write all to stdout and free it. Returns 0, or 5 with a message on stderr. */
int hs_out_write(hs_out *out);

/** Free without writing. */
void hs_out_drop(hs_out *out);

#endif
