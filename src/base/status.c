#include "hardskin/base/status.h"

#include <stdarg.h>
#include <stdio.h>

typedef struct status_row {
    int exit_code;
    const char *code, *meaning, *fails, *works;
} status_row;

static const status_row rows[HS_STATUS_COUNT] = {
#define X(id, exit_code, code, meaning, fails, works) {exit_code, code, meaning, fails, works},
    HS_STATUS_LIST(X)
#undef X
};

static const status_row *row_of(hs_status status) {
    return &rows[(unsigned)status < HS_STATUS_COUNT ? status : HS_E_INTERNAL];
}

hs_status hs_fail(hs_error *err, hs_status status, const char *help, const char *format, ...) {
    if (!err) return status;
    va_list args;
    va_start(args, format);
    *err = (hs_error){.status = status};
    vsnprintf(err->message, sizeof err->message, format, args);
    va_end(args);
    snprintf(err->help, sizeof err->help, "%s", help ? help : "");
    return status;
}

int hs_status_exit(hs_status status) {
    return row_of(status)->exit_code;
}

const char *hs_status_code(hs_status status) {
    return row_of(status)->code;
}

const char *hs_status_meaning(hs_status status) {
    return row_of(status)->meaning;
}

const char *hs_status_example(hs_status status, int works) {
    return works ? row_of(status)->works : row_of(status)->fails;
}
