/* `check` and `plan` must agree: a sheet that check passes is planned, one it refuses is refused by
 * plan too. Numbers of the sheets listed below are changed, one change in four asked, by itself and
 * wherever the same number stands (a size stands in the part and in its dimension). `own:` a
 * relation between two answers, no outside figures. */
#include "hardskin/plan/plan.h"
#include "hardskin/sheet/sheet.h"
#include "support/check.h"

#include <ctype.h>
#include <stdlib.h>
#include <string.h>

enum { LONGEST = 16 * 1024, CHANGES = 5, ASKED = 4, PLANNED = 30 };

static const char *const sheets[] = {
    "samples/guide-plate",       "samples/hanger-bracket",   "samples/key-block-inch",
    "samples/link-bush",         "samples/link-pin-read",    "samples/slide-bar-measured",
    "samples/slide-way",         "tests/sheets/far-profile", "tests/sheets/leaded-drawn-bar",
    "tests/sheets/network-case", "tests/sheets/rich-case"};
enum { SHEETS = sizeof sheets / sizeof *sheets };

/* Numbers of these keys are names. */
static const char *const names[] = {"job", "note", "name", "steel", "shop", "place", "hardskin"};

typedef struct number {
    size_t at, length;
} number;

typedef struct counts {
    size_t tried, misread, refused, planned;
} counts;

static void read_file(char out[LONGEST], const char *name) {
    char path[512];
    snprintf(path, sizeof path, "%s/%s.json", HS_SOURCE, name);
    FILE *from = fopen(path, "rb");
    size_t n = from ? fread(out, 1, LONGEST - 1, from) : 0;
    if (from) fclose(from);
    out[n] = '\0';
    CHECK(n > 0 && n < LONGEST - 1);
}

static int is_name(const char *key, size_t length) {
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        if (strlen(names[i]) == length && !strncmp(names[i], key, length)) return 1;
    return 0;
}

/* The first number of the string from `at` to `end`. */
static int first_number(number *out, const char *text, size_t at, size_t end) {
    while (at < end && !isdigit((unsigned char)text[at]))
        at++;
    size_t to = at;
    while (to < end && (isdigit((unsigned char)text[to]) || text[to] == '.') &&
           strncmp(text + to, "..", 2) != 0)
        to++;
    *out = (number){at, to - at};
    return to > at;
}

/* Numbers of all values, in strings or bare, names apart. */
static size_t find_numbers(number *out, size_t most, const char *text) {
    size_t n = 0, key = 0, key_length = 0;
    for (size_t at = 0; text[at] && n < most; at++) {
        int bare = isdigit((unsigned char)text[at]) && !is_name(text + key, key_length);
        if (bare && first_number(&out[n], text, at, strlen(text))) at += out[n++].length;
        if (text[at] != '"') continue;
        size_t end = at + 1;
        while (text[end] != '"')
            end += text[end] == '\\' ? 2 : 1;
        if (text[end + 1] == ':') {
            key = at + 1;
            key_length = end - key;
        } else if (!is_name(text + key, key_length)) {
            n += (size_t)first_number(&out[n], text, at + 1, end);
        }
        at = end;
    }
    return n;
}

static void change(char out[32], const char *text, const number *one, int how) {
    static const double factor[CHANGES] = {10, 0.1, 1000, 0, -1};
    snprintf(out, 32, "%.10g", factor[how] * strtod(text + one->at, NULL));
}

/* The text with one number changed, or all that read alike. */
static void put(char out[2 * LONGEST], const char *text, const number *all, size_t n, size_t which,
                int alike, const char *with) {
    size_t from = 0, length = 0;
    for (size_t i = 0; i < n; i++) {
        int same = all[i].length == all[which].length &&
                   !strncmp(text + all[i].at, text + all[which].at, all[i].length);
        if (i != which && !(alike && same)) continue;
        length += (size_t)snprintf(out + length, 2 * LONGEST - length, "%.*s%s",
                                   (int)(all[i].at - from), text + from, with);
        from = all[i].at + all[i].length;
    }
    snprintf(out + length, 2 * LONGEST - length, "%s", text + from);
}

/* Each fault is one a reader of the sheet can act on. */
static int well_told(const hs_error *faults, size_t n) {
    for (size_t i = 0; i < n; i++)
        if (faults[i].line < 1 || faults[i].column < 1 || !faults[i].message[0] ||
            !faults[i].pointer[0] || !faults[i].help[0])
            return 0;
    return 1;
}

/* 1 when both agree, -1 where plan was not asked. */
static int agree(counts *c, hs_sheet *sheet, void *work) {
    static hs_result result;
    hs_error faults[HS_MAX_FAULTS] = {{0}}, err = {0};
    size_t n = 0;
    const hs_job *job = hs_sheet_job(sheet);
    int passed = hs_plan_check(faults, &n, HS_MAX_FAULTS, job, work) == HS_OK;
    if (passed && c->planned * PLANNED > c->tried) return -1; /* a plan takes long */
    int planned = hs_plan(&result, job, work, &err) == HS_OK;
    c->planned += (size_t)planned;
    c->refused += (size_t)!planned;
    hs_sheet_place_all(faults, n, sheet);
    return passed == planned && well_told(faults, n);
}

static void try_one(counts *c, const char *text, const char *name, const char *what, void *work) {
    hs_sheet *sheet;
    hs_error faults[HS_MAX_FAULTS];
    size_t n;
    char folder[512];
    snprintf(folder, sizeof folder, "%s/samples", HS_SOURCE);
    c->tried++;
    if (hs_sheet_read(&sheet, faults, &n, text, strlen(text), folder) != HS_OK) {
        c->misread++;
        return;
    }
    int same = agree(c, sheet, work);
    if (same >= 0) CHECK(same);
    if (!same) printf("  %s: %s\n", name, what);
    hs_sheet_free(sheet);
}

static void change_all(counts *c, const char *name, size_t *turn, void *work) {
    static char text[LONGEST], changed[2 * LONGEST];
    static number all[512];
    read_file(text, name);
    size_t n = find_numbers(all, 512, text);
    CHECK(n > 10);
    for (size_t i = 0; i < n; i++)
        for (int how = 0; how < 2 * CHANGES; how++) {
            char with[32], what[96];
            if ((*turn)++ % ASKED != 0) continue;
            change(with, text, &all[i], how / 2);
            snprintf(what, sizeof what, "%.*s -> %s%s", (int)all[i].length, text + all[i].at, with,
                     how % 2 ? " wherever it stands" : "");
            put(changed, text, all, n, i, how % 2, with);
            try_one(c, changed, name, what, work);
        }
}

static void check__numbers_changed__plan_says_the_same(void) {
    void *work = malloc(hs_plan_work_size());
    size_t turn = 0;
    counts c = {0};
    for (size_t i = 0; work && i < SHEETS; i++)
        change_all(&c, sheets[i], &turn, work);
    printf("  %zu sheets: %zu refused as read, %zu by the models, %zu planned\n", c.tried,
           c.misread, c.refused, c.planned);
    CHECK(c.misread > 100 && c.refused > 100 && c.planned > 15);
    free(work);
}

HS_TEST_MAIN("property check", TEST(check__numbers_changed__plan_says_the_same))
