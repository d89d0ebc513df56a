#include "sheet/acceptance.h"

#include <ctype.h>
#include <string.h>
#include <strings.h>

enum { MONTHS = 12, MOST_PARTS = 3 };
static const char *const months[MONTHS] = {"january",   "february", "march",    "april",
                                           "may",       "june",     "july",     "august",
                                           "september", "october",  "november", "december"};

/* A number or a word of the text, in the order they stand. */
typedef struct piece {
    const char *at;
    size_t length;
    int number; /* -1: a word */
    char after; /* the character behind it */
} piece;

/* The next piece from `text` on; NULL when there is none, else where to go on. */
static const char *next(piece *out, const char *text) {
    while (*text && !isalnum((unsigned char)*text))
        text++;
    if (!*text) return NULL;
    int digits = isdigit((unsigned char)*text) != 0, value = 0;
    out->at = text;
    for (; *text && isalnum((unsigned char)*text) && (isdigit((unsigned char)*text) != 0) == digits;
         text++)
        if (digits && value < 100000) value = 10 * value + (*text - '0');
    out->length = (size_t)(text - out->at);
    out->number = digits ? value : -1;
    out->after = *text;
    return text;
}

/* 1 to 12 for a month written out or cut to three letters; 0 for another word. */
static int month_of(const piece *p) {
    for (int i = 0; i < MONTHS && p->number < 0; i++) {
        int whole = p->length == strlen(months[i]);
        if ((whole || p->length == 3) && !strncasecmp(p->at, months[i], p->length)) return i + 1;
    }
    return 0;
}

static int is_year(const piece *p) {
    return p->length == 4 && p->number >= 1900 && p->number <= 2199;
}

static int is_day(const piece *p, int most) {
    return p->length <= 2 && p->number >= 1 && p->number <= most;
}

static int joined(const piece *a, const piece *b) {
    return strchr("-./", a->after) && a->after && a->after == b->after;
}

static int is_date(const piece p[MOST_PARTS]) {
    if (is_year(&p[0]) && joined(&p[0], &p[1])) return is_day(&p[1], MONTHS) && is_day(&p[2], 31);
    if (is_year(&p[2]) && p[0].number > 0 && joined(&p[0], &p[1]))
        return is_day(&p[0], 31) && is_day(&p[1], 31) &&
               (p[0].number <= MONTHS || p[1].number <= MONTHS);
    if (!is_year(&p[2])) return 0;
    return (month_of(&p[0]) && is_day(&p[1], 31)) || (month_of(&p[1]) && is_day(&p[0], 31));
}

static int is_ordinal(const piece *p) {
    static const char *const ends[] = {"st", "nd", "rd", "th"};
    for (size_t i = 0; i < sizeof ends / sizeof *ends; i++)
        if (p->number < 0 && p->length == 2 && !strncasecmp(p->at, ends[i], 2)) return 1;
    return 0;
}

int hs_has_day(const char *text) {
    piece p[MOST_PARTS] = {{0}}, one;
    size_t n = 0;
    for (const char *at = text; (at = next(&one, at)) != NULL;) {
        if (n > 0 && p[(n < MOST_PARTS ? n : MOST_PARTS) - 1].number > 0 && is_ordinal(&one))
            continue; /* 4th May 2026 */
        if (n >= MOST_PARTS) memmove(p, p + 1, (MOST_PARTS - 1) * sizeof *p);
        p[n < MOST_PARTS ? n : MOST_PARTS - 1] = one;
        n++;
        if (n >= MOST_PARTS && is_date(p)) return 1;
    }
    return 0;
}

int hs_has_name(const char *text) {
    static const char *const stopgaps[] = {"who",      "when", "name", "date", "yes",   "true",
                                           "accepted", "ok",   "okay", "on",   "at",    "by",
                                           "the",      "and",  "of",   "day",  "risk",  "today",
                                           "somebody", "no",   "me",   "none", "nobody"};
    piece p;
    for (const char *at = text; (at = next(&p, at)) != NULL;) {
        int empty = p.number >= 0 || p.length < 2 || month_of(&p) || is_ordinal(&p);
        for (size_t i = 0; i < sizeof stopgaps / sizeof *stopgaps; i++)
            empty |= p.length == strlen(stopgaps[i]) && !strncasecmp(p.at, stopgaps[i], p.length);
        if (!empty) return 1;
    }
    for (const char *at = text; *at; at++) /* letters beyond ASCII are letters */
        if ((unsigned char)*at >= 0x80) return 1;
    return 0;
}

void hs_read_acceptance(hs_draft *d, const hs_node *node, const char **out) {
    static const char form[] = "\"accept_hydrogen_risk\": \"A. Foreman, 2026-05-04\"";
    const char *text;
    if (!hs_reader_text(d->reader, node, &text)) return;
    int name = hs_has_name(text), day = hs_has_day(text);
    if (name && day)
        *out = text;
    else
        hs_reader_say(d->reader, node, HS_E_ACCEPTANCE, form,
                      "the accepted risk names %s: it takes who accepted it, and on which day",
                      name  ? "no day"
                      : day ? "nobody"
                            : "nobody and no day");
}
