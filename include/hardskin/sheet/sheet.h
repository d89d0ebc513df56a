/* From the user's sheet (strict JSON) to a job. */
#ifndef HARDSKIN_SHEET_SHEET_H
#define HARDSKIN_SHEET_SHEET_H

#include "hardskin/plan/job.h"

enum { HS_MAX_FAULTS = 20 };

typedef struct hs_sheet hs_sheet; /* owns the job's text and arrays */

/** Read a whole sheet.
 *
 *    sheet    hs_sheet *   out   free with hs_sheet_free; NULL on failure
 *    text     size bytes   in    the sheet as in the file
 *    folder   text         in    where a shop file named in the sheet is looked for ("." = here)
 *    faults   HS_MAX_FAULTS errors out, *fault_count of them: every fault found in one run
 *
 *  Returns  HS_OK, or the status of the first fault. */
HS_API hs_status hs_sheet_read(hs_sheet **sheet, hs_error *faults, size_t *fault_count,
                               const char *text, size_t size, const char *folder);

/** The job of a sheet; valid until the sheet is freed. */
HS_API const hs_job *hs_sheet_job(const hs_sheet *sheet);

/** Notices that are not faults (a byte-order mark, a unit guessed nowhere); NULL past the last. */
HS_API const char *hs_sheet_notice(const hs_sheet *sheet, size_t i);

/** Where the value of a JSON pointer stands in the sheet: for faults that are found after reading
 *  (plan), which know only the pointer. 1 when it is there and line and column (from 1) were set.
 */
HS_API int hs_sheet_place(int *line, int *column, const hs_sheet *sheet, const char *pointer);

/** The same for a list of such faults: line and column of each, put in the order of the text. A
 *  pointer that leads nowhere is cut to the nearest place that is there. */
HS_API void hs_sheet_place_all(hs_error *faults, size_t n, const hs_sheet *sheet);

HS_API void hs_sheet_free(hs_sheet *sheet);

/** A complete starter sheet of a form ("plate", "bar", "ring", "profile"), or NULL. */
HS_API const char *hs_sheet_starter(const char *form);

#endif
