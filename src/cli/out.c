#include "cli/out.h"

#include <errno.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int reserve(hs_out *out, size_t more) {
    if (out->failed) return 0;
    if (out->room - out->length > more) return 1;
    size_t room = (out->length + more + 1) * 2;
    char *data = realloc(out->data, room);
    if (!data) {
        out->failed = 1;
        return 0;
    }
    out->data = data;
    out->room = room;
    return 1;
}

void hs_out_add(hs_out *out, const char *format, ...) {
    va_list args, again;
    va_start(args, format);
    va_copy(again, args);
    int n = vsnprintf(NULL, 0, format, args);
    if (n >= 0 && reserve(out, (size_t)n)) {
        vsnprintf(out->data + out->length, (size_t)n + 1, format, again);
        out->length += (size_t)n;
    }
    va_end(again);
    va_end(args);
}

void hs_out_json(hs_out *out, const char *text) {
    hs_out_add(out, "\"");
    for (const char *c = text; *c; c++) {
        if (*c == '"' || *c == '\\')
            hs_out_add(out, "\\%c", *c);
        else if ((unsigned char)*c < ' ')
            hs_out_add(out, "\\u%04x", (unsigned)(unsigned char)*c);
        else
            hs_out_add(out, "%c", *c);
    }
    hs_out_add(out, "\"");
}

void hs_out_drop(hs_out *out) {
    free(out->data);
    *out = (hs_out){0};
}

int hs_out_write(hs_out *out) {
    const char *why = NULL;
    int unread = 0; /* the reader has seen enough (head, a pager): nothing to tell */
    if (out->failed)
        why = "no memory left";
    else if ((out->length > 0 && fwrite(out->data, 1, out->length, stdout) != out->length) ||
             fflush(stdout) != 0)
        unread = errno == EPIPE, why = strerror(errno);
    if (why && !unread) fprintf(stderr, "hardskin: cannot write the answer: %s\n", why);
    hs_out_drop(out);
    return why ? hs_status_exit(HS_E_IO) : 0;
}
