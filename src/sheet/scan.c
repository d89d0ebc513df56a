#include "sheet/scan.h"

#include "sheet/scan_state.h"
#include "sheet/utf8.h"

#include <stdlib.h>
#include <string.h>

size_t hs_scan_mark(const char *text, size_t size) {
    return size >= 3 && !memcmp(text, "\xEF\xBB\xBF", 3) ? 3 : 0;
}

static void skip_space(hs_scanner *s) {
    for (; s->at < s->size; s->at++) {
        char c = s->text[s->at];
        if (c == '\n') {
            s->line++;
            s->line_start = s->at + 1;
        } else if (c != ' ' && c != '\t' && c != '\r') {
            return;
        }
    }
}

static char peek(const hs_scanner *s) {
    return s->at < s->size ? s->text[s->at] : '\0';
}

/* A new entry in the list of places; NULL when there is no room. */
static hs_spot *new_spot(hs_scanner *s) {
    if (s->n == s->room) {
        size_t room = s->room ? 2 * s->room : 256;
        hs_spot *more = realloc(s->spots, room * sizeof *more);
        if (!more) return NULL;
        s->spots = more;
        s->room = room;
    }
    hs_spot *spot = &s->spots[s->n++];
    *spot = (hs_spot){0};
    return spot;
}

static hs_status scan_value(hs_scanner *s, int key_line, int key_column);

/* What may follow a member: ',' (then more = 1) or the closing bracket. */
static hs_status after_member(hs_scanner *s, char close, int *more) {
    skip_space(s);
    char c = peek(s);
    if (c == ',' || c == close) {
        s->at++;
        *more = c == ',';
        skip_space(s);
        if (*more && peek(s) == close)
            return hs_scan_fail(s, HS_E_JSON, "take the last comma away",
                                "a comma with nothing behind it");
        return HS_OK;
    }
    const char *help = close == '}' ? "a comma, or } at the end" : "a comma, or ] at the end";
    if (s->at >= s->size)
        return hs_scan_fail(s, HS_E_JSON, help, "the text ends inside an object or a list");
    if (c == '/')
        return hs_scan_fail(s, HS_E_JSON, "put remarks into \"note\"", "JSON has no comments");
    return hs_scan_fail(s, HS_E_JSON, help, "a comma is missing before this");
}

static hs_status scan_member(hs_scanner *s, int in_object) {
    int line = 0, column = 0;
    skip_space(s);
    if (in_object) {
        hs_spot key = {0};
        line = s->line;
        column = (int)(s->at - s->line_start) + 1;
        if (peek(s) != '"')
            return hs_scan_fail(s, HS_E_JSON, "keys stand in double quotes: \"job\": ...",
                                s->at >= s->size ? "the text ends inside an object"
                                                 : "a key in double quotes belongs here");
        hs_status status = hs_scan_string(s, &key);
        if (status != HS_OK) return status;
        skip_space(s);
        if (peek(s) != ':')
            return hs_scan_fail(s, HS_E_JSON, "\"key\": value", "a colon belongs behind a key");
        s->at++;
    }
    return scan_value(s, line, column);
}

static hs_status scan_members(hs_scanner *s, char open) {
    char close = open == '{' ? '}' : ']';
    int more = 1;
    if (++s->depth > HS_SCAN_DEPTH)
        return hs_scan_fail(s, HS_E_TOO_LARGE, "a sheet is at most six deep", "nested too deep");
    s->at++;
    skip_space(s);
    if (peek(s) == close) {
        s->at++;
        more = 0;
    }
    while (more) {
        hs_status status = scan_member(s, open == '{');
        if (status == HS_OK) status = after_member(s, close, &more);
        if (status != HS_OK) return status;
    }
    s->depth--;
    return HS_OK;
}

static hs_status scan_word(hs_scanner *s) {
    static const char *const words[] = {"true", "false", "null"};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
        size_t length = strlen(words[i]);
        if (s->size - s->at >= length && !memcmp(s->text + s->at, words[i], length)) {
            s->at += length;
            return HS_OK;
        }
    }
    char c = peek(s);
    if (s->at >= s->size)
        return hs_scan_fail(s, HS_E_JSON, "is the file whole? Save it again",
                            "the text ends where a value belongs");
    if (c == '\'')
        return hs_scan_fail(s, HS_E_JSON, "use double quotes: \"20 mm\"",
                            "single quotes are not JSON");
    if (c == '/')
        return hs_scan_fail(s, HS_E_JSON, "put remarks into \"note\"", "JSON has no comments");
    return hs_scan_fail(s, HS_E_JSON, "texts and quantities stand in double quotes: \"20 mm\"",
                        "a value belongs here");
}

static hs_status scan_value(hs_scanner *s, int key_line, int key_column) {
    skip_space(s);
    if (s->n >= HS_SCAN_VALUES)
        return hs_scan_fail(s, HS_E_TOO_LARGE, "one sheet a part", "more values than a sheet has");
    hs_spot *spot = new_spot(s);
    if (!spot) return hs_scan_fail(s, HS_E_MEMORY, "", "no memory left");
    size_t mine = s->n - 1;
    spot->line = s->line;
    spot->column = (int)(s->at - s->line_start) + 1;
    spot->key_line = key_line ? key_line : spot->line;
    spot->key_column = key_line ? key_column : spot->column;
    spot->offset = s->at;
    char c = peek(s);
    hs_status status;
    if (c == '{' || c == '[')
        status = scan_members(s, c);
    else if (c == '"')
        status = hs_scan_string(s, spot);
    else if (c == '-' || (c >= '0' && c <= '9'))
        status = hs_scan_number(s, spot);
    else
        status = scan_word(s);
    if (status == HS_OK) s->spots[mine].length = s->at - s->spots[mine].offset;
    return status;
}

/* Line and column of a byte nobody has walked to yet. */
static void walk_to(hs_scanner *s, size_t offset) {
    for (; s->at < offset; s->at++)
        if (s->text[s->at] == '\n') {
            s->line++;
            s->line_start = s->at + 1;
        }
}

/* 1: another kind of text, by the mark at its start. */
static int is_utf16(const hs_scanner *s) {
    return s->size > 1 && (!memcmp(s->text, "\xFF\xFE", 2) || !memcmp(s->text, "\xFE\xFF", 2));
}

static int is_empty(const hs_scanner *s) {
    size_t at = s->at;
    while (at < s->size && strchr(" \t\r\n", s->text[at]) && s->text[at])
        at++;
    return at == s->size;
}

static hs_status scan_all(hs_scanner *s) {
    if (s->size > HS_SCAN_BYTES)
        return hs_scan_fail(s, HS_E_TOO_LARGE, "one sheet a part", "longer than 8 MiB");
    if (is_empty(s)) {
        walk_to(s, s->size);
        return hs_scan_fail(s, HS_E_JSON, "hardskin new plate > part.json makes a sheet",
                            "there is nothing in it");
    }
    if (is_utf16(s))
        return hs_scan_fail(s, HS_E_ENCODING, "save the file as UTF-8",
                            "this is UTF-16, not UTF-8");
    size_t bad = hs_utf8_fault(s->text, s->size);
    if (bad < s->size) {
        walk_to(s, bad);
        return hs_scan_fail(s, HS_E_ENCODING, "save the file as UTF-8", "this is not UTF-8");
    }
    hs_status status = scan_value(s, 0, 0);
    if (status != HS_OK) return status;
    skip_space(s);
    if (s->at < s->size)
        return hs_scan_fail(s, HS_E_JSON, "one object, and nothing behind it",
                            "something stands behind the end of the sheet");
    return HS_OK;
}

hs_status hs_scan(hs_spot **spots, size_t *n, const char *text, size_t size, hs_error *err) {
    size_t mark = hs_scan_mark(text, size);
    hs_scanner s = {
        .text = text, .size = size, .at = mark, .line = 1, .line_start = mark, .err = err};
    hs_status status = scan_all(&s);
    if (status != HS_OK) {
        free(s.spots);
        s.spots = NULL;
        s.n = 0;
    }
    *spots = s.spots;
    *n = s.n;
    return status;
}
