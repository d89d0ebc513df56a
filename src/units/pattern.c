#define PCRE2_CODE_UNIT_WIDTH 8
#include "units/pattern.h"

#include <pcre2.h>
#include <stdlib.h>

/* No field needs a hundredth of this; reaching a limit is an error, never "no match". */
enum { MATCH_LIMIT = 10000, HEAP_LIMIT_KIB = 64 };

struct hs_units {
    pcre2_code *token, *fit;
    pcre2_match_context *limits;
};

#define NUMBER "(?:\\d++(?:\\.\\d++)?+|\\.\\d++)"
/* A load behind HV or HBW has no leading zero and is not 0: "HV010" is a slip of the hand. */
#define LOAD "(?:[1-9]\\d*+(?:\\.\\d++)?+|0\\.(?=\\d*[1-9])\\d++)?+"
#define SCALE "H(?:RC|RA|R15N|R30N|V" LOAD "|BW" LOAD "(?:/[1-9]\\d*+){0,2}+)(?![A-Za-z0-9/])"
/* With a bar: W/m2K, W/(m2 K), /h, 1/MPa. Without: mm, m2, the degree sign and letters, % " '. A 2
 * or 3 is an exponent only where neither letters nor digits go on: "1h30min". */
#define BAR_UNIT                                                                                   \
    "(?:1/|/|[A-Za-z]++(?:\\^?+[23])?+/)(?=[A-Za-z(])"                                             \
    "(?:[A-Za-z^23/\\x07]|\\([A-Za-z^23/\\x07\\x20]++\\))++"
#define PLAIN_UNIT "\\x01?+[A-Za-z]++(?:\\^?+[23](?![0-9A-Za-z^]|\\.[0-9]))?+|[%\"']"

/* Every alternative is possessive; the match is anchored where the last token ended, and the tokens
 * must cover the text to its end. */
static const char token_pattern[] =
    "\\x20*+(?:(" SCALE "|" BAR_UNIT "|" PLAIN_UNIT ")"
    "|(\\x06\\d++/\\d++\\x06|\\d++/\\d++)"
    "|(" NUMBER "(?:[eE][-+]?+\\d++)?+)"
    "|(\\.\\.(?!\\.)|\\x05)|(\\x04|\\+/-)|(\\+)|(-)|(/)|(\\x02)|(\\x03)|(,)|(:)|\\z)";

static const char fit_pattern[] =
    "\\A\\x20*+(?:\\x03\\x20*+)?+(" NUMBER ")\\x20*+(?:mm(?![A-Za-z0-9])\\x20*+)?+"
    "([A-Za-z]{1,2}+)(\\d{1,2}+)\\x20*+\\z";

static pcre2_code *compile(const char *pattern) {
    int code;
    PCRE2_SIZE offset;
    return pcre2_compile((PCRE2_SPTR)pattern, PCRE2_ZERO_TERMINATED, PCRE2_ANCHORED, &code, &offset,
                         NULL);
}

hs_units *hs_units_new(void) {
    hs_units *units = calloc(1, sizeof *units);
    if (!units) return NULL;
    units->token = compile(token_pattern);
    units->fit = compile(fit_pattern);
    units->limits = pcre2_match_context_create(NULL);
    if (!units->token || !units->fit || !units->limits) {
        hs_units_free(units);
        return NULL;
    }
    pcre2_set_match_limit(units->limits, MATCH_LIMIT);
    pcre2_set_heap_limit(units->limits, HEAP_LIMIT_KIB);
    return units;
}

void hs_units_free(hs_units *units) {
    if (!units) return;
    pcre2_code_free(units->token);
    pcre2_code_free(units->fit);
    pcre2_match_context_free(units->limits);
    free(units);
}

static hs_status engine_failed(hs_error *err, size_t column, int code) {
    if (code == PCRE2_ERROR_NOMEMORY) return hs_fail(err, HS_E_MEMORY, "", "no memory left");
    return hs_fail_at(err, (int)column, HS_E_NUMBER, "write a number and a unit",
                      "the text is too tangled to read (limit %d reached)", code);
}

static int match(const pcre2_code *code, const hs_folded *text, size_t at, pcre2_match_data *data,
                 const hs_units *units) {
    return pcre2_match(code, (PCRE2_SPTR)text->text, text->length, at, PCRE2_ANCHORED, data,
                       units->limits);
}

/* `groups` is one more than the highest group that took part; 1 = only the end matched. */
static hs_token token_of(pcre2_match_data *data, int groups, size_t at) {
    const PCRE2_SIZE *span = pcre2_get_ovector_pointer(data);
    size_t start = span[2 * (size_t)(groups - 1)], end = span[2 * (size_t)(groups - 1) + 1];
    if (groups == 1) return (hs_token){TOKEN_END, span[1], 0, 0};
    return (hs_token){(hs_token_kind)(groups - 1), start, end - start, start > at};
}

static hs_status refuse_byte(hs_error *err, const hs_folded *text, size_t at) {
    while (text->text[at] == ' ')
        at++;
    char c = text->text[at];
    const char *help = c == '_' ? "write 1000, without a separator"
                       : c == '.'
                           ? "write a digit on both sides of the point, two points for a range"
                           : "write a number and a unit";
    if (c < ' ')
        return hs_fail_at(err, text->column[at], HS_E_NUMBER, help,
                          "this sign does not belong here");
    return hs_fail_at(err, text->column[at], HS_E_NUMBER, help, "'%c' does not belong here", c);
}

static hs_status scan(hs_token tokens[TOKENS], size_t *n, const hs_units *units,
                      const hs_folded *text, pcre2_match_data *data, hs_error *err) {
    size_t at = 0, count = 0;
    do {
        if (count == TOKENS)
            return hs_fail_at(err, text->column[at], HS_E_NUMBER, "write a number and a unit",
                              "the text has too many parts");
        int groups = match(units->token, text, at, data, units);
        if (groups == PCRE2_ERROR_NOMATCH) return refuse_byte(err, text, at);
        if (groups <= 0) return engine_failed(err, text->column[at], groups);
        tokens[count] = token_of(data, groups, at);
        at = tokens[count].start + tokens[count].length;
    } while (tokens[count++].kind != TOKEN_END);
    *n = count;
    return HS_OK;
}

hs_status hs_tokens(hs_token tokens[TOKENS], size_t *n, const hs_units *units,
                    const hs_folded *text, hs_error *err) {
    pcre2_match_data *data = pcre2_match_data_create_from_pattern(units->token, NULL);
    if (!data) return hs_fail(err, HS_E_MEMORY, "", "no memory left");
    hs_status status = scan(tokens, n, units, text, data, err);
    pcre2_match_data_free(data);
    return status;
}

hs_status hs_fit_match(hs_fit_text *out, int *found, const hs_units *units, const hs_folded *text,
                       hs_error *err) {
    pcre2_match_data *data = pcre2_match_data_create_from_pattern(units->fit, NULL);
    if (!data) return hs_fail(err, HS_E_MEMORY, "", "no memory left");
    int groups = match(units->fit, text, 0, data, units);
    hs_status status = HS_OK;
    if (groups > 0) {
        const PCRE2_SIZE *s = pcre2_get_ovector_pointer(data);
        *out = (hs_fit_text){s[2], s[3] - s[2], s[4], s[5] - s[4], s[6], s[7] - s[6]};
        *found = 1;
    } else if (groups == PCRE2_ERROR_NOMATCH) {
        *found = 0;
    } else {
        status = engine_failed(err, 1, groups);
    }
    pcre2_match_data_free(data);
    return status;
}
