/* A sheet as bytes, from a file or from stdin. */
#ifndef HS_CLI_FILE_H
#define HS_CLI_FILE_H

#include "hardskin/base/status.h"

#include <stddef.h>

typedef struct hs_file {
    char *text; /* closed by a NUL; free() it */
    size_t size;
    const char *name; /* as told in messages */
    char folder[1024];
} hs_file;

/** Read a whole file; "-" is stdin. HS_E_TOO_LARGE above 8 MiB, HS_E_IO, HS_E_MEMORY. */
hs_status hs_file_read(hs_file *file, const char *name, hs_error *err);

#endif
