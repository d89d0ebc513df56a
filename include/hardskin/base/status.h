/* Status codes and the error record. One list (status_list.h) makes codes, texts and exit codes. */
#ifndef HARDSKIN_BASE_STATUS_H
#define HARDSKIN_BASE_STATUS_H

#include "hardskin/base/status_list.h"

#if defined(__GNUC__)
#define HS_API __attribute__((visibility("default")))
#define HS_PRINTF(fmt, args) __attribute__((format(printf, fmt, args)))
#else
#define HS_API
#define HS_PRINTF(fmt, args)
#endif

#define HS_VERSION "0.1.0"

typedef enum hs_status {
#define X(id, exit_code, code, meaning, fails, works) id,
    HS_STATUS_LIST(X)
#undef X
        HS_STATUS_COUNT
} hs_status;

/** What went wrong and where. Owned by the caller; the function that finds the fault fills status,
 *  message and help; callers further out add only the place. Any function here takes NULL for it.
 */
typedef struct hs_error {
    hs_status status;
    int line;          /* 1-based, 0 where there is no text */
    int column;        /* 1-based, in bytes */
    char pointer[160]; /* JSON pointer (RFC 6901), "" at the root */
    char message[320]; /* one line, no full stop needed */
    char help[320];    /* the fix, "" if there is none */
} hs_error;

/** Fill an error record; returns the status, so that `return hs_fail(...)` reads well. */
HS_API hs_status hs_fail(hs_error *err, hs_status status, const char *help, const char *format, ...)
    HS_PRINTF(4, 5);

/** Exit code of the command for a status; 70 for a value that is none. */
HS_API int hs_status_exit(hs_status status);

/** The code as a user types it after `why`, e.g. "no-unit". */
HS_API const char *hs_status_code(hs_status status);

/** What the code means, in one line. */
HS_API const char *hs_status_meaning(hs_status status);

/** Examples for the `why` page: one that fails, one that works ("" where none is useful). */
HS_API const char *hs_status_example(hs_status status, int works);

#endif
