#include "sheet/reader.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

static int same(const hs_error *a, const hs_error *b) {
    return a->status == b->status && a->line == b->line && a->column == b->column &&
           !strcmp(a->pointer, b->pointer) && !strcmp(a->message, b->message);
}

/* A fault inside a shop file is shown where the sheet names that file. */
static void place_in_file(hs_error *e, const hs_reader *r, const hs_node *node, int line,
                          int column) {
    char text[sizeof e->message];
    snprintf(text, sizeof text, "%.100s:%d:%d: %.200s", node->file, line, column, e->message);
    memcpy(e->message, text, sizeof text);
    e->line = r->shop_place->spot.line;
    e->column = r->shop_place->spot.column;
}

void hs_reader_fault(hs_reader *r, const hs_node *node, int where, const hs_error *err) {
    hs_error e = *err;
    const hs_spot *spot = &node->spot;
    int line = where == HS_AT_KEY ? spot->key_line : spot->line;
    int column = where == HS_AT_KEY ? spot->key_column : spot->column;
    /* a column in the text itself, behind the opening quote, where typed and read bytes agree */
    if (where == HS_AT_VALUE && err->column > 0 && node->kind == HS_NODE_TEXT && !spot->escaped)
        column += err->column;
    e.line = line;
    e.column = column;
    hs_node_pointer(e.pointer, sizeof e.pointer, node);
    if (node->file && r->shop_place) place_in_file(&e, r, node, line, column);
    for (size_t i = 0; i < r->fault_count; i++)
        if (same(&r->faults[i], &e)) return;
    if (r->fault_count < HS_MAX_FAULTS) r->faults[r->fault_count++] = e;
}

static void say(hs_reader *r, const hs_node *node, int where, hs_error *err, const char *format,
                va_list args) {
    vsnprintf(err->message, sizeof err->message, format, args);
    hs_reader_fault(r, node, where, err);
}

static hs_error start(hs_status status, const char *help) {
    hs_error err = {.status = status};
    snprintf(err.help, sizeof err.help, "%s", help);
    return err;
}

void hs_reader_say(hs_reader *r, const hs_node *node, hs_status status, const char *help,
                   const char *format, ...) {
    hs_error err = start(status, help);
    va_list args;
    va_start(args, format);
    say(r, node, HS_AT_VALUE, &err, format, args);
    va_end(args);
}

void hs_reader_say_key(hs_reader *r, const hs_node *node, hs_status status, const char *help,
                       const char *format, ...) {
    hs_error err = start(status, help);
    va_list args;
    va_start(args, format);
    say(r, node, HS_AT_KEY, &err, format, args);
    va_end(args);
}
