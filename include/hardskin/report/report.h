/* From a result to text or JSON. Computes nothing but rounding. */
#ifndef HARDSKIN_REPORT_REPORT_H
#define HARDSKIN_REPORT_REPORT_H

#include "hardskin/plan/result.h"

/** The report as text, 80 columns, into the caller's buffer of `size` bytes (closed by a NUL).
 *  Returns  HS_OK, or HS_E_MEMORY when the buffer is too small (64 KiB is ample). */
HS_API hs_status hs_report_text(char *out, size_t size, const hs_job *job, const hs_result *result);

/** The result as JSON (design: the result), a malloc'd text to be freed by the caller.
 *  Returns  HS_OK or HS_E_MEMORY. */
HS_API hs_status hs_report_json(char **out, const hs_job *job, const hs_result *result);

#endif
