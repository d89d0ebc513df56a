#include "hardskin/units/split.h"
#include "units/fold.h"
#include "units/reading.h"

#include <stdio.h>
#include <string.h>

enum { PIECE_SIZE = HS_QUANTITY_BYTES + 1 };

typedef struct piece {
    size_t start;
    char text[PIECE_SIZE];
} piece;

static hs_status check_length(const char *text, hs_error *err) {
    if (strlen(text) <= HS_QUANTITY_BYTES) return HS_OK;
    return hs_fail_at(err, HS_QUANTITY_BYTES + 1, HS_E_NUMBER, "write it shorter",
                      "the text is longer than %d bytes", HS_QUANTITY_BYTES);
}

static piece cut(const char *text, size_t start, size_t end) {
    piece p = {.start = start};
    snprintf(p.text, sizeof p.text, "%.*s", (int)(end - start), text + start);
    return p;
}

/* One plain positive value of the kind; the column of a fault counts in the whole text. */
static hs_status piece_read(hs_reading *out, const hs_units *units, const piece *p,
                            const hs_reading_rules *rules, hs_error *err) {
    hs_reading r;
    hs_status status = hs_read(&r, units, p->text, rules, err);
    if (!status && r.form != HS_FORM_SINGLE)
        status = hs_fail_at(err, 1, HS_E_NUMBER, hs_kind_forms(rules->expected),
                            "one plain value belongs here");
    if (!status && !(r.value > 0))
        status = hs_fail_at(err, 1, HS_E_IMPOSSIBLE, hs_kind_forms(rules->expected),
                            "this must be more than nothing");
    if (status && err) err->column += (int)p->start;
    if (!status) *out = r;
    return status;
}

/* Bytes of a multiplication sign at `at`: x, X or U+00D7; 0 if there is none. */
static size_t times_sign(const char *at) {
    if (*at == 'x' || *at == 'X') return 1;
    return !strncmp(at, "\xC3\x97", 2) ? 2 : 0;
}

hs_status hs_box_read(double sizes_m[3], const hs_units *units, const char *text, hs_error *err) {
    static const char help[] = "write 300 x 200 x 150 mm";
    piece pieces[3];
    size_t n = 0, start = 0, at = 0;
    hs_status status = check_length(text, err);
    if (status) return status;
    for (;; at++) {
        size_t sign = times_sign(text + at);
        if (text[at] && !sign) continue;
        if (n == 3) return hs_fail_at(err, (int)start + 1, HS_E_NUMBER, help, "a fourth size");
        pieces[n++] = cut(text, start, at);
        if (!text[at]) break;
        start = at + sign;
        at = start - 1;
    }
    if (n < 3)
        return hs_fail_at(err, (int)at + 1, HS_E_NUMBER, help, "a box has three inner sizes");
    hs_reading last, r[2];
    hs_reading_rules rules = {HS_LENGTH, NULL};
    if ((status = piece_read(&last, units, &pieces[2], &rules, err))) return status;
    rules.bare_unit = last.unit.name;
    for (size_t i = 0; i < 2; i++)
        if ((status = piece_read(&r[i], units, &pieces[i], &rules, err))) return status;
    sizes_m[0] = r[0].value;
    sizes_m[1] = r[1].value;
    sizes_m[2] = last.value;
    return HS_OK;
}

/* Cut a closing word off a piece; 0 if it is not there. */
static int drop_word(piece *p, const char *word) {
    size_t length = strlen(p->text), size = strlen(word);
    while (length && p->text[length - 1] == ' ')
        length--;
    if (length <= size || strncmp(p->text + length - size, word, size) != 0) return 0;
    p->text[length - size] = '\0';
    return 1;
}

hs_status hs_test_piece_read(double *diameter_m, double *length_m, const hs_units *units,
                             const char *text, hs_error *err) {
    static const char help[] = "write 12 mm round, 40 mm long";
    const hs_reading_rules rules = {HS_LENGTH, NULL};
    hs_status status = check_length(text, err);
    if (status) return status;
    const char *comma = strstr(text, ", ");
    if (!comma) return hs_fail_at(err, 1, HS_E_NUMBER, help, "a test piece has two sizes");
    size_t at = (size_t)(comma - text);
    piece across = cut(text, 0, at), along = cut(text, at + 1, strlen(text));
    if (!drop_word(&across, " round"))
        return hs_fail_at(err, (int)at + 1, HS_E_WORD, help, "'round' is missing here");
    if (!drop_word(&along, " long"))
        return hs_fail_at(err, (int)strlen(text) + 1, HS_E_WORD, help, "'long' is missing here");
    hs_reading d, l;
    if ((status = piece_read(&d, units, &across, &rules, err))) return status;
    if ((status = piece_read(&l, units, &along, &rules, err))) return status;
    *diameter_m = d.value;
    *length_m = l.value;
    return HS_OK;
}

hs_status hs_supply_read(double *volts_V, double *amps_A, const hs_units *units, const char *text,
                         hs_error *err) {
    const hs_reading_rules volts = {HS_VOLTAGE, NULL}, amps = {HS_CURRENT, NULL};
    hs_status status = check_length(text, err);
    if (status) return status;
    const char *v = strchr(text, 'V');
    if (!v || !v[1])
        return hs_fail_at(err, 1, HS_E_NUMBER, "write 12 V 10 A",
                          "a supply has a voltage and a current");
    size_t at = (size_t)(v - text) + 1;
    piece first = cut(text, 0, at), second = cut(text, at + (text[at] == ','), strlen(text));
    hs_reading a, b;
    if ((status = piece_read(&a, units, &first, &volts, err))) return status;
    if ((status = piece_read(&b, units, &second, &amps, err))) return status;
    *volts_V = a.value;
    *amps_A = b.value;
    return HS_OK;
}

hs_status hs_acid_read(const char **name, double *acid_pct, const hs_units *units, const char *text,
                       hs_error *err) {
    static const char *const acids[] = {"hydrochloric", "sulphuric", "phosphoric",
                                        "citric",       "acetic",    "vinegar"};
    const hs_reading_rules rules = {HS_PERCENT, NULL};
    hs_status status = check_length(text, err);
    if (status) return status;
    for (size_t i = 0; i < sizeof acids / sizeof *acids; i++) {
        size_t length = strlen(acids[i]);
        if (strncmp(text, acids[i], length) != 0 || text[length] != ' ') continue;
        piece strength = cut(text, length, strlen(text));
        hs_reading r;
        if ((status = piece_read(&r, units, &strength, &rules, err))) return status;
        if (r.value > 100)
            return hs_fail_at(err, (int)length + 2, HS_E_IMPOSSIBLE, "write citric 10 %",
                              "more than 100 %%");
        *name = acids[i];
        *acid_pct = r.value;
        return HS_OK;
    }
    return hs_fail_at(
        err, 1, HS_E_WORD,
        "write citric 10 %; also hydrochloric, sulphuric, phosphoric, acetic, vinegar",
        "no acid of that name, or its strength is missing");
}
