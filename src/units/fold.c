#include "units/fold.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

typedef struct sign {
    unsigned first, last; /* code points */
    const char *plain;
} sign;

static const sign signs[] = {
    {0xA0, 0xA0, " "},
    {0x2002, 0x200A, " "},
    {0x202F, 0x202F, " "},
    {0xB0, 0xB0, "\1"},
    {0x2103, 0x2103, "\1C"},
    {0x2109, 0x2109, "\1F"},
    {0x394, 0x394, "\2"},
    {0x2206, 0x2206, "\2"},
    {0xD8, 0xD8, "\3"},
    {0xF8, 0xF8, "\3"},
    {0x2300, 0x2300, "\3"},
    {0x2205, 0x2205, "\3"},
    {0xB1, 0xB1, "\4"},
    {0x2013, 0x2013, "\5"},
    {0x2010, 0x2011, "-"},
    {0x2212, 0x2212, "-"},
    {0x2026, 0x2026, ".."},
    {0xB5, 0xB5, "u"},
    {0x3BC, 0x3BC, "u"},
    {0x2032, 0x2032, "'"},
    {0x2019, 0x2019, "'"},
    {0x2033, 0x2033, "\""},
    {0x201D, 0x201D, "\""},
    {0xD7, 0xD7, "x"},
    {0xB2, 0xB2, "^2"},
    {0xB3, 0xB3, "^3"},
    {0xB7, 0xB7, "\7"},
    {0x22C5, 0x22C5, "\7"},
    {0x2044, 0x2044, "/"},
    {0x2215, 0x2215, "/"},
    {0x2126, 0x2126, "ohm"},
    {0x3A9, 0x3A9, "ohm"},
    {0xBC, 0xBC, "\0061/4\6"},
    {0xBD, 0xBD, "\0061/2\6"},
    {0xBE, 0xBE, "\0063/4\6"},
    {0x2150, 0x2150, "\0061/7\6"},
    {0x2151, 0x2151, "\0061/9\6"},
    {0x2152, 0x2152, "\0061/10\6"},
    {0x2153, 0x2153, "\0061/3\6"},
    {0x2154, 0x2154, "\0062/3\6"},
    {0x2155, 0x2155, "\0061/5\6"},
    {0x2156, 0x2156, "\0062/5\6"},
    {0x2157, 0x2157, "\0063/5\6"},
    {0x2158, 0x2158, "\0064/5\6"},
    {0x2159, 0x2159, "\0061/6\6"},
    {0x215A, 0x215A, "\0065/6\6"},
    {0x215B, 0x215B, "\0061/8\6"},
    {0x215C, 0x215C, "\0063/8\6"},
    {0x215D, 0x215D, "\0065/8\6"},
    {0x215E, 0x215E, "\0067/8\6"},
};

hs_status hs_fail_at(hs_error *err, int column, hs_status status, const char *help,
                     const char *format, ...) {
    char message[sizeof err->message];
    va_list args;
    va_start(args, format);
    vsnprintf(message, sizeof message, format, args);
    va_end(args);
    hs_fail(err, status, help, "%s", message);
    if (err) err->column = column;
    return status;
}

/* Bytes of one UTF-8 character of at most three bytes that may stand here, 0 if it is not UTF-8.
 * Four-byte characters are valid text but never a sign we know: they come back as U+FFFD. */
static size_t decode(unsigned *code, const unsigned char *s) {
    size_t n = s[0] < 0x80 ? 1 : s[0] < 0xC2 ? 0 : s[0] < 0xE0 ? 2 : s[0] < 0xF0 ? 3 : 4;
    if (n == 0 || s[0] > 0xF4) return 0;
    unsigned c = n == 1 ? s[0] : s[0] & (0x7Fu >> n);
    for (size_t i = 1; i < n; i++) {
        if ((s[i] & 0xC0) != 0x80) return 0;
        c = c << 6 | (s[i] & 0x3Fu);
    }
    int overlong = (n == 3 && c < 0x800) || (n == 4 && c < 0x10000);
    if (overlong || c > 0x10FFFF || (c >= 0xD800 && c <= 0xDFFF)) return 0;
    *code = n == 4 ? 0xFFFD : c;
    return n;
}

static const char *plain_of(unsigned code) {
    for (size_t i = 0; i < sizeof signs / sizeof *signs; i++)
        if (code >= signs[i].first && code <= signs[i].last) return signs[i].plain;
    return NULL;
}

static void append(hs_folded *out, const char *plain, size_t column) {
    for (; *plain; plain++) {
        out->column[out->length] = (unsigned char)column;
        out->text[out->length++] = *plain;
    }
}

static hs_status refuse_sign(hs_error *err, const char *text, size_t at, size_t bytes) {
    int column = (int)at + 1;
    if (bytes == 1)
        return hs_fail_at(err, column, HS_E_NUMBER, "use spaces between number and unit",
                          "a control character has no place in a quantity");
    return hs_fail_at(err, column, HS_E_NUMBER, "write it with plain digits, signs and units",
                      "the sign '%.*s' has no place in a quantity", (int)bytes, text + at);
}

hs_status hs_fold(hs_folded *out, const char *text, hs_error *err) {
    size_t length = strlen(text);
    if (length > HS_QUANTITY_BYTES)
        return hs_fail_at(err, HS_QUANTITY_BYTES + 1, HS_E_NUMBER,
                          "a quantity is a number and a unit", "the text is longer than %d bytes",
                          HS_QUANTITY_BYTES);
    hs_folded folded = {0};
    for (size_t at = 0, bytes; at < length; at += bytes) {
        unsigned code = 0;
        bytes = decode(&code, (const unsigned char *)text + at);
        if (bytes == 0)
            return hs_fail_at(err, (int)at + 1, HS_E_ENCODING, "save the text as UTF-8",
                              "the text is not UTF-8");
        char ascii[2] = {(char)code, 0};
        const char *plain = code < 0x80 ? ascii : plain_of(code);
        if (!plain || code < 0x20 || code == 0x7F) return refuse_sign(err, text, at, bytes);
        append(&folded, plain, at + 1);
    }
    folded.column[folded.length] = (unsigned char)(length + 1);
    *out = folded;
    return HS_OK;
}
