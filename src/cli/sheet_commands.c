/* plan, check, new: the commands that work on a whole sheet. */
#include "cli/commands.h"
#include "cli/echo.h"
#include "cli/fault.h"
#include "cli/file.h"
#include "cli/out.h"
#include "hardskin/plan/plan.h"
#include "hardskin/report/report.h"
#include "hardskin/sheet/sheet.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { REPORT_BYTES = 256 * 1024 };

typedef struct request {
    const char *sheet;
    int json;
} request;

/* SHEET and --json in any order; what follows -- is no option; 0 or the exit code. */
static int read_words(request *r, int count, char **words) {
    int options = 1;
    *r = (request){0};
    for (int i = 0; i < count; i++) {
        if (options && !strcmp(words[i], "--")) {
            options = 0;
        } else if (options && !strcmp(words[i], "--json")) {
            if (r->json++) return hs_fault_usage("given twice:", "--json", "once is enough");
        } else if (options && words[i][0] == '-' && words[i][1]) {
            return hs_fault_usage("no such option:", words[i], "only --json is one");
        } else if (r->sheet) {
            return hs_fault_usage("one sheet at a time, not", words[i],
                                  "call it once for each sheet");
        } else {
            r->sheet = words[i];
        }
    }
    if (r->sheet && r->sheet[0]) return 0;
    return hs_fault_usage("a sheet is needed", "",
                          "a file, or - for stdin; hardskin new plate > part.json makes one");
}

static int tell_faults(const hs_error *faults, size_t n, const hs_file *file) {
    int code = hs_status_exit(HS_E_INTERNAL);
    for (size_t i = n; i-- > 0;)
        code = hs_status_exit(faults[i].status);
    for (size_t i = 0; i < n; i++)
        hs_fault_print(&faults[i], file->name, file->text, file->size);
    if (n > 1) fprintf(stderr, "hardskin: %zu faults\n", n);
    return code;
}

static int open_sheet(hs_sheet **sheet, hs_file *file, const request *r) {
    hs_error faults[HS_MAX_FAULTS] = {{0}};
    size_t n = 0;
    hs_error err = {0};
    if (hs_file_read(file, r->sheet, &err) != HS_OK)
        return hs_fault_print(&err, file->name, NULL, 0);
    hs_status status = hs_sheet_read(sheet, faults, &n, file->text, file->size, file->folder);
    if (status != HS_OK) {
        if (n == 0) faults[n++].status = status;
        return tell_faults(faults, n, file);
    }
    for (size_t i = 0; hs_sheet_notice(*sheet, i); i++)
        fprintf(stderr, "%s: notice: %s\n", file->name, hs_sheet_notice(*sheet, i));
    return 0;
}

static int is_no(const hs_result *result) {
    hs_wheel measured = result->measured_verdict; /* it takes the place of the plan's answer */
    int no = measured == HS_WHEEL_NONE ? result->grind == HS_STOP : measured == HS_WHEEL_NO;
    return no || result->descale_verdict == HS_CLEAN_STOP;
}

static int no_memory(void) {
    fputs("hardskin: no memory left\n", stderr);
    return hs_status_exit(HS_E_MEMORY);
}

static int write_report(const hs_job *job, const hs_result *result, int json) {
    hs_out out = {0};
    char *text = NULL;
    hs_status status;
    if (json) {
        status = hs_report_json(&text, job, result);
    } else {
        text = malloc(REPORT_BYTES);
        status = text ? hs_report_text(text, REPORT_BYTES, job, result) : HS_E_MEMORY;
    }
    if (status == HS_OK) {
        size_t n = strlen(text);
        hs_out_add(&out, "%s%s", text, n && text[n - 1] == '\n' ? "" : "\n");
    }
    free(text);
    return status == HS_OK ? hs_out_write(&out) : no_memory();
}

/* What the models refuse of the job: every fault, placed in the sheet. 0 or the exit code. */
static int tell_refused(const hs_sheet *sheet, const hs_file *file, void *work) {
    hs_error faults[HS_MAX_FAULTS] = {{0}};
    size_t n = 0;
    if (hs_plan_check(faults, &n, HS_MAX_FAULTS, hs_sheet_job(sheet), work) == HS_OK) return 0;
    hs_sheet_place_all(faults, n, sheet);
    return tell_faults(faults, n, file);
}

static int plan_sheet(const hs_sheet *sheet, const hs_file *file, int json) {
    const hs_job *job = hs_sheet_job(sheet);
    hs_error err = {0};
    hs_result *result = calloc(1, sizeof *result);
    void *work = malloc(hs_plan_work_size());
    int code;
    if (!result || !work)
        code = no_memory();
    else if (hs_plan(result, job, work, &err) != HS_OK) {
        code = tell_refused(sheet, file, work);
        if (code == 0) {
            hs_sheet_place_all(&err, 1, sheet);
            code = hs_fault_print(&err, file->name, file->text, file->size);
        }
    } else if ((code = write_report(job, result, json)) == 0)
        code = is_no(result);
    free(work);
    free(result);
    return code;
}

int hs_command_plan(int count, char **words) {
    request r;
    hs_file file = {0};
    hs_sheet *sheet = NULL;
    int code = read_words(&r, count, words);
    if (code == 0) code = open_sheet(&sheet, &file, &r);
    if (code == 0) code = plan_sheet(sheet, &file, r.json);
    hs_sheet_free(sheet);
    free(file.text);
    return code;
}

static int write_check(const hs_job *job, const char *name, int json) {
    hs_out out = {0};
    if (json)
        hs_out_add(&out, "{\n  \"ok\": true");
    else
        hs_out_add(&out, "%s: complete and consistent; as understood:\n", name);
    if (json) hs_out_add(&out, ",\n  \"read\": [");
    for (size_t i = 0; i < job->reads; i++) {
        const hs_read *q = &job->read[i];
        if (!json) {
            hs_echo_add(&out, q, job->inch_first);
            continue;
        }
        hs_out_add(&out, "%s\n    {\"pointer\": ", i ? "," : "");
        hs_out_json(&out, q->pointer);
        hs_out_add(&out, ", \"text\": ");
        hs_out_json(&out, q->text);
        hs_out_add(&out, ", \"value\": %.12g, \"unit\": ", q->value);
        hs_out_json(&out, q->unit);
        hs_out_add(&out, "}");
    }
    if (json) hs_out_add(&out, "\n  ]\n}\n");
    return hs_out_write(&out);
}

static int check_sheet(const hs_sheet *sheet, const hs_file *file, int json) {
    void *work = malloc(hs_plan_work_size());
    int code = work ? tell_refused(sheet, file, work) : no_memory();
    free(work);
    return code == 0 ? write_check(hs_sheet_job(sheet), file->name, json) : code;
}

int hs_command_check(int count, char **words) {
    request r;
    hs_file file = {0};
    hs_sheet *sheet = NULL;
    int code = read_words(&r, count, words);
    if (code == 0) code = open_sheet(&sheet, &file, &r);
    if (code == 0) code = check_sheet(sheet, &file, r.json);
    hs_sheet_free(sheet);
    free(file.text);
    return code;
}

int hs_command_new(int count, char **words) {
    hs_out out = {0};
    if (count != 1)
        return hs_fault_usage(count ? "one form at a time, not" : "which form?",
                              count ? words[1] : "", "hardskin new plate, bar, ring or profile");
    const char *sheet = hs_sheet_starter(words[0]);
    if (!sheet) return hs_fault_usage("no such form:", words[0], "plate, bar, ring or profile");
    hs_out_add(&out, "%s", sheet);
    return hs_out_write(&out);
}
