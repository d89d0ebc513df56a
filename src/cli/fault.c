#include "cli/fault.h"

#include "sheet/utf8.h"

#include <stdio.h>
#include <string.h>

enum { WIDEST = 100 }; /* bytes of a source line that are shown */

static int continues(char c) {
    return ((unsigned char)c & 0xC0) == 0x80;
}

/* The line as typed, cut to what a terminal shows, with the caret under the column. Tabs are kept
 * as one blank in both rows and a letter of several bytes counts as one place. */
static void show_line(const char *line, size_t length, size_t column) {
    size_t from = column > WIDEST * 3 / 4 ? column - WIDEST / 2 : 0;
    while (from > 0 && from < length && continues(line[from]))
        from--;
    size_t to = length - from > WIDEST ? from + WIDEST : length;
    while (to > from && to < length && continues(line[to]))
        to--;
    fputs("  ", stderr);
    size_t good = from;
    for (size_t i = from; i < to; i++) {
        if (i >= good) good = i + hs_utf8_fault(line + i, to - i);
        int odd = (unsigned char)line[i] < ' ' || line[i] == 0x7F;
        fputc(i >= good ? '?' : odd ? ' ' : line[i], stderr);
    }
    fputs("\n  ", stderr);
    for (size_t i = from; i + 1 < column && i < to; i++)
        if (!continues(line[i])) fputc(' ', stderr);
    fputs("^\n", stderr);
}

static void show_place(const hs_error *err, const char *text, size_t size) {
    const char *line = text, *end = text + size;
    for (int n = 1; n < err->line; n++) {
        const char *next = memchr(line, '\n', (size_t)(end - line));
        if (!next) return;
        line = next + 1;
    }
    const char *stop = memchr(line, '\n', (size_t)(end - line));
    size_t length = (size_t)((stop ? stop : end) - line);
    if (length > 0 && line[length - 1] == '\r') length--;
    size_t column = err->column > 0 ? (size_t)err->column : 1;
    show_line(line, length, column > length + 1 ? length + 1 : column);
}

int hs_fault_print(const hs_error *err, const char *place, const char *text, size_t size) {
    if (err->line > 0)
        fprintf(stderr, "%s:%d:%d: %s\n", place, err->line, err->column > 0 ? err->column : 1,
                err->message);
    else
        fprintf(stderr, "%s: %s\n", place, err->message);
    if (text && err->line > 0) show_place(err, text, size);
    if (err->pointer[0]) fprintf(stderr, "  at %s\n", err->pointer);
    if (err->help[0]) fprintf(stderr, "  help: %s\n", err->help);
    fprintf(stderr, "  more: hardskin why %s\n", hs_status_code(err->status));
    return hs_status_exit(err->status);
}

int hs_fault_usage(const char *message, const char *word, const char *help) {
    fprintf(stderr, "hardskin: %s%s%s\n", message, word[0] ? " " : "", word);
    if (help[0]) fprintf(stderr, "  help: %s\n", help);
    return hs_status_exit(HS_E_USAGE);
}
