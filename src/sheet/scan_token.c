#include "sheet/scan_state.h"

#include <string.h>

hs_status hs_scan_fail(hs_scanner *s, hs_status status, const char *help, const char *what) {
    hs_fail(s->err, status, help, "%s", what);
    if (s->err) {
        s->err->line = s->line;
        s->err->column = (int)(s->at - s->line_start) + 1;
    }
    return status;
}

static int hex_digit(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    if (c >= 'A' && c <= 'F') return c - 'A' + 10;
    return -1;
}

/* Four hex digits at s->at; -1 if they are not there. */
static int code_unit(const hs_scanner *s, size_t at) {
    int value = 0;
    if (s->size - at < 4) return -1;
    for (size_t i = 0; i < 4; i++) {
        int digit = hex_digit(s->text[at + i]);
        if (digit < 0) return -1;
        value = 16 * value + digit;
    }
    return value;
}

/* An escape, s->at on the backslash. */
static hs_status scan_escape(hs_scanner *s, hs_spot *spot) {
    spot->escaped = 1;
    char c = s->at + 1 < s->size ? s->text[s->at + 1] : '\0';
    if (c && strchr("\"\\/bfnrt", c)) {
        s->at += 2;
        return HS_OK;
    }
    int unit = c == 'u' ? code_unit(s, s->at + 2) : -1;
    if (unit < 0)
        return hs_scan_fail(s, HS_E_JSON,
                            "\\\" \\\\ \\/ \\b \\f \\n \\r \\t or \\u and four hex digits",
                            "no such escape");
    if (unit == 0) spot->has_nul = 1;
    int high = unit >= 0xD800 && unit <= 0xDBFF, low = unit >= 0xDC00 && unit <= 0xDFFF;
    if (high && s->size - s->at >= 12 && s->text[s->at + 6] == '\\' && s->text[s->at + 7] == 'u') {
        int second = code_unit(s, s->at + 8);
        if (second >= 0xDC00 && second <= 0xDFFF) {
            s->at += 12;
            return HS_OK;
        }
    }
    if (high || low)
        return hs_scan_fail(s, HS_E_ENCODING, "write the letter itself",
                            "half of a surrogate pair is no letter");
    s->at += 6;
    return HS_OK;
}

hs_status hs_scan_string(hs_scanner *s, hs_spot *spot) {
    s->at++;
    while (s->at < s->size) {
        unsigned char c = (unsigned char)s->text[s->at];
        if (c == '"') {
            s->at++;
            return HS_OK;
        }
        if (c < 0x20)
            return hs_scan_fail(s, HS_E_JSON,
                                c == '\n' ? "close the quotes on the same line"
                                          : "write it as an escape, \\t for a tab",
                                "a control character inside a text");
        if (c == '\\') {
            hs_status status = scan_escape(s, spot);
            if (status != HS_OK) return status;
        } else {
            s->at++;
        }
    }
    return hs_scan_fail(s, HS_E_JSON, "a closing double quote", "the text ends inside quotes");
}

static size_t digits(hs_scanner *s) {
    size_t start = s->at;
    while (s->at < s->size && s->text[s->at] >= '0' && s->text[s->at] <= '9')
        s->at++;
    return s->at - start;
}

static int next_is(const hs_scanner *s, const char *any) {
    return s->at < s->size && s->text[s->at] && strchr(any, s->text[s->at]);
}

hs_status hs_scan_number(hs_scanner *s, hs_spot *spot) {
    static const char help[] = "texts and quantities stand in double quotes: \"20 mm\"";
    size_t start = s->at;
    if (next_is(s, "-")) s->at++;
    size_t first = s->at, n = digits(s);
    if (n == 0) return hs_scan_fail(s, HS_E_JSON, help, "a digit belongs here");
    if (n > 1 && s->text[first] == '0') {
        s->at = first;
        return hs_scan_fail(s, HS_E_JSON, "0.5, not 00.5", "a number with a zero in front");
    }
    if (next_is(s, ".")) {
        s->at++;
        if (digits(s) == 0) return hs_scan_fail(s, HS_E_JSON, help, "a digit belongs here");
    }
    if (next_is(s, "eE")) {
        s->at++;
        if (next_is(s, "+-")) s->at++;
        if (digits(s) == 0) return hs_scan_fail(s, HS_E_JSON, help, "a digit belongs here");
    }
    spot->long_number = s->at - start > HS_SCAN_DIGITS;
    return HS_OK;
}
