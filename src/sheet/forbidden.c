#include "sheet/forbidden.h"

#include "constants.h"
#include "hardskin/tables/table.h"

#include <ctype.h>
#include <stddef.h>
#include <string.h>

/* tables/forbidden.csv: one row a hazard, with all its words. */
static const hs_table *bans(void) {
    return hs_table_get(HS_TABLE_FORBIDDEN);
}

static int letter(char c) {
    return isalpha((unsigned char)c) != 0;
}

static unsigned scope_of(size_t row) {
    const char *where = hs_table_text(bans(), row, HS_FORBIDDEN_WHERE);
    if (!strcmp(where, "tank")) return HS_IN_TANK;
    return !strcmp(where, "fire") ? HS_IN_FIRE : HS_ANYWHERE;
}

/* Length of the text that is that word, 0 if it does not begin with it. A blank of the word takes
 * any run of what is no letter. */
static size_t begins(const char *text, const char *word, size_t length) {
    size_t n = 0;
    for (size_t i = 0; i < length; i++) {
        if (word[i] != ' ') {
            if (tolower((unsigned char)text[n]) != word[i]) return 0;
            n++;
            continue;
        }
        if (!text[n] || letter(text[n])) return 0;
        while (text[n] && !letter(text[n]))
            n++;
    }
    return letter(text[n]) ? 0 : n;
}

/* Does one of the row's words stand there? */
static size_t one_of(const char *text, size_t row) {
    for (const char *word = hs_table_text(bans(), row, HS_FORBIDDEN_WORDS); *word;) {
        size_t length = strcspn(word, "|"), found = begins(text, word, length);
        if (found) return found;
        word += length + (word[length] == '|');
    }
    return 0;
}

static int refuse(const char *text, size_t length, size_t row, hs_error *err) {
    const hs_table *t = bans();
    hs_fail(err, HS_E_FORBIDDEN, hs_table_text(t, row, HS_FORBIDDEN_INSTEAD),
            "\"%.*s\": %s (source: %s)", (int)length, text,
            hs_table_text(t, row, HS_FORBIDDEN_REASON), hs_table_text(t, row, HS_FORBIDDEN_SOURCE));
    return 1;
}

int hs_forbidden(const char *text, unsigned scope, hs_error *err) {
    for (size_t at = 0; text[at]; at++) {
        if (!letter(text[at]) || (at > 0 && letter(text[at - 1]))) continue;
        for (size_t row = 0; row < bans()->rows; row++) {
            size_t length = scope_of(row) & scope ? one_of(text + at, row) : 0;
            if (length) return refuse(text + at, length, row, err);
        }
    }
    return 0;
}
