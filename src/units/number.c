/* Numbers as the trade writes them: 25.4  .010  1.6e-11  3/8  1 1/2  1-1/2 and the unicode
 * fractions. Everything that could be two numbers is refused. */
#include "units/cursor.h"

#include <ctype.h>
#include <string.h>

enum { MAX_DIGITS = 15, MAX_EXPONENT = 40, MAX_FRACTION_DIGITS = 6 };

/* Powers of ten that a double holds exactly; a mantissa below 2^53 times or over one of them is
 * correctly rounded. */
static const double power[] = {1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                               1e8,  1e9,  1e10, 1e11, 1e12, 1e13, 1e14, 1e15,
                               1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};

static double scaled(double mantissa, int exponent) {
    for (; exponent > 22; exponent -= 22)
        mantissa *= 1e22;
    for (; exponent < -22; exponent += 22)
        mantissa /= 1e22;
    return exponent < 0 ? mantissa / power[-exponent] : mantissa * power[exponent];
}

/* "e-11" -> -11; a number too long for a measurement comes back as one beyond MAX_EXPONENT. */
static int exponent_of(const char *text, size_t length) {
    int sign = 1, value = 0;
    for (size_t i = 1; i < length; i++) {
        if (text[i] == '-') sign = -1;
        if (isdigit((unsigned char)text[i]) && value <= MAX_EXPONENT)
            value = 10 * value + (text[i] - '0');
    }
    return sign * value;
}

int hs_decimal(double *out, const char *text, size_t length) {
    double mantissa = 0;
    int digits = 0, decimals = 0, point = 0, exponent = 0;
    for (size_t i = 0; i < length; i++) {
        if (text[i] == '.') {
            point = 1;
            continue;
        }
        if (!isdigit((unsigned char)text[i])) {
            exponent = exponent_of(text + i, length - i);
            break;
        }
        if (digits > 0 || text[i] != '0') digits++;
        if (digits > MAX_DIGITS) return 0;
        mantissa = 10 * mantissa + (text[i] - '0');
        decimals += point;
    }
    if (exponent > MAX_EXPONENT || exponent < -MAX_EXPONENT || decimals > MAX_EXPONENT) return 0;
    *out = scaled(mantissa, exponent - decimals);
    return 1;
}

static hs_status refuse(hs_cursor *c, size_t token, hs_status status, const char *help,
                        const char *message) {
    return hs_fail_at(c->err, hs_cursor_column(c, token), status, help, "%s", message);
}

/* A comma ends every number: three digits behind it could be thousands or decimals. */
static hs_status check_comma(hs_cursor *c) {
    const hs_token *comma = hs_cursor_token(c), *next = hs_cursor_after(c, 1);
    if (comma->kind == TOKEN_COLON)
        return refuse(c, c->at, HS_E_NUMBER, "write 1 h 30 min", "a colon is not read as a time");
    if (comma->kind != TOKEN_COMMA) return HS_OK;
    int three = next->kind == TOKEN_NUMBER && !next->gap &&
                strcspn(hs_cursor_bytes(c, next), ".eE") >= 3 &&
                strspn(hs_cursor_bytes(c, next), "0123456789") == 3;
    if (three)
        return refuse(c, c->at, HS_E_AMBIGUOUS, "write 1000, or 1.000 with a point",
                      "a comma before three digits: thousands or decimals");
    return refuse(c, c->at, HS_E_NUMBER, "write a decimal point in place of the comma",
                  "a comma is not read as a decimal point");
}

static hs_status check_end_of_number(hs_cursor *c) {
    const hs_token *next = hs_cursor_token(c);
    if (next->kind == TOKEN_NUMBER || next->kind == TOKEN_FRACTION)
        return refuse(c, c->at, HS_E_NUMBER,
                      "write the number without spaces: 1000 mm; a mixed number as 1 1/2 in",
                      "two numbers without a unit between them");
    return check_comma(c);
}

static int is_whole(const hs_cursor *c, const hs_token *token) {
    const char *bytes = hs_cursor_bytes(c, token);
    for (size_t i = 0; i < token->length; i++)
        if (!isdigit((unsigned char)bytes[i])) return 0;
    return 1;
}

static hs_status decimal_read(double *out, hs_cursor *c) {
    const hs_token *token = hs_cursor_token(c);
    const char *bytes = hs_cursor_bytes(c, token);
    int leading_zero = bytes[0] == '0' && token->length > 1 && isdigit((unsigned char)bytes[1]);
    /* "1 h 05 min": behind a unit of time a leading zero is how clocks write. */
    int clock = c->expected == HS_TIME && c->at > 0 && c->token[c->at - 1].kind == TOKEN_UNIT;
    /* 1'000 */
    int apostrophe = c->at > 0 && !token->gap && token->length == 3 && bytes[-1] == '\'';
    if (leading_zero && apostrophe)
        return refuse(c, c->at, HS_E_NUMBER, "write 1000, without a separator",
                      "an apostrophe is not read as a thousands separator");
    if (leading_zero && !clock)
        return refuse(c, c->at, HS_E_AMBIGUOUS, "write 0.10 or 10",
                      "a zero before the digits: was a point lost?");
    if (!hs_decimal(out, bytes, token->length))
        return refuse(c, c->at, HS_E_NUMBER, "write at most 15 digits, or 1e-11",
                      "more digits than any measurement has");
    c->at++;
    return HS_OK;
}

/* A fraction token. `mixed`: a whole number stands before it. */
static hs_status fraction_read(double *out, hs_cursor *c, int mixed) {
    const hs_token *token = hs_cursor_token(c);
    const char *bytes = hs_cursor_bytes(c, token);
    size_t mark = bytes[0] == MARK_FRACTION, length = token->length - 2 * mark;
    const char *bar = memchr(bytes, '/', token->length);
    size_t top = (size_t)(bar - bytes) - mark, bottom = length - top - 1;
    double numerator, denominator;
    if (top > MAX_FRACTION_DIGITS || bottom > MAX_FRACTION_DIGITS ||
        !hs_decimal(&numerator, bytes + mark, top) || !hs_decimal(&denominator, bar + 1, bottom) ||
        denominator <= 0)
        return refuse(c, c->at, HS_E_NUMBER, "write a fraction as 3/8", "this is no fraction");
    if (numerator >= denominator && mixed)
        return refuse(c, c->at, HS_E_NUMBER, "write 1 1/2",
                      "the fraction of a mixed number is not below one");
    if (numerator >= denominator && top > 1)
        return refuse(c, c->at, HS_E_AMBIGUOUS, "write 1 1/2 in, or 5.5 in",
                      "is the first digit a whole number? 11/2 could be 1 1/2 or 5.5");
    if (bytes[mark] == '0' || bar[1] == '0')
        return refuse(c, c->at, HS_E_NUMBER, "write a fraction as 3/8", "a fraction with a zero");
    *out = numerator / denominator;
    c->at++;
    return HS_OK;
}

/* Does a fraction follow that belongs to the whole number just read: "1 1/2", "1-1/2"? */
static int fraction_follows(hs_cursor *c) {
    const hs_token *next = hs_cursor_token(c), *later = hs_cursor_after(c, 1);
    if (next->kind == TOKEN_FRACTION) {
        int unicode = hs_cursor_bytes(c, next)[0] == MARK_FRACTION;
        return next->gap || unicode;
    }
    if (next->kind != TOKEN_MINUS || next->gap || later->kind != TOKEN_FRACTION || later->gap)
        return 0;
    c->at++;
    return 1;
}

hs_status hs_number_read(double *out, int *fraction, hs_cursor *c) {
    const hs_token *token = hs_cursor_token(c);
    hs_status status;
    double value, part = 0;
    *fraction = token->kind == TOKEN_FRACTION;
    if (token->kind == TOKEN_FRACTION) {
        if ((status = fraction_read(&value, c, 0))) return status;
    } else if (token->kind == TOKEN_NUMBER) {
        if ((status = decimal_read(&value, c))) return status;
        if (is_whole(c, token) && fraction_follows(c)) {
            if ((status = fraction_read(&part, c, 1))) return status;
            *fraction = 1;
        }
    } else {
        if ((status = check_comma(c))) return status;
        return hs_fail_at(c->err, hs_cursor_column(c, c->at), HS_E_NUMBER,
                          hs_kind_forms(c->expected), "a number is missing here");
    }
    if ((status = check_end_of_number(c))) return status;
    *out = value + part;
    return HS_OK;
}
