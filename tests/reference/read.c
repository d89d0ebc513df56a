#include "reference.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static void complain(ref_case *c, const char *name, int line, const char *what) {
    printf("%s:%d: %s\n", name, line, what);
    c->bad = 1;
}

/* Split into words; "double quotes" may stand anywhere in a word and hold blanks. */
static int split(ref_case *c, const char *text) {
    char *out = c->store;
    while (*text) {
        text += strspn(text, " \t");
        if (!*text) break;
        if (c->args == REF_ARGS) return 0;
        c->arg[c->args++] = out;
        for (int quoted = 0; *text && (quoted || (*text != ' ' && *text != '\t')); text++) {
            if (*text == '"')
                quoted = !quoted;
            else
                *out++ = *text;
        }
        *out++ = '\0';
    }
    return c->args > 0;
}

/* "KEY 1.5 ± .1", "KEY 10 12 ± .1", "KEY word in words". */
static int read_expect(ref_expect *e, char *text) {
    char *end = NULL, *value;
    size_t n = strcspn(text, " \t");
    if (n == 0 || n >= sizeof e->key) return 0;
    snprintf(e->key, sizeof e->key, "%.*s", (int)n, text);
    value = text + n + strspn(text + n, " \t");
    char *sign = strstr(value, "\xC2\xB1");
    if (!sign) {
        if (!*value || strlen(value) >= sizeof e->word) return 0;
        strcpy(e->word, value);
        strtod(value, &end);
        return *end != '\0'; /* a number without a tolerance is no check */
    }
    *sign = '\0';
    e->tolerance = strtod(sign + 2, &end);
    if (end == sign + 2 || end[strspn(end, " \t")] || !(e->tolerance >= 0)) return 0;
    for (e->n = 0; value[strspn(value, " \t")]; value = end) {
        double x = strtod(value, &end);
        if (end == value || e->n == 2 || !isfinite(x)) return 0;
        e->value[e->n++] = x;
    }
    return e->n > 0;
}

static void take_line(ref_case *c, char *text, const char *name, int line) {
    size_t n = strcspn(text, " \t");
    char *rest = text + n + strspn(text + n, " \t");
    if (n == 6 && !strncmp(text, "source", n) && *rest) {
        c->has_source = 1;
    } else if (n == 5 && !strncmp(text, "quick", n) && !c->has_quick) {
        c->has_quick = 1;
        if (!split(c, rest)) complain(c, name, line, "nothing to run, or too many words");
    } else if (n == 6 && !strncmp(text, "expect", n) && c->expects < REF_EXPECTS) {
        c->expect[c->expects].line = line;
        if (!read_expect(&c->expect[c->expects++], rest))
            complain(c, name, line, "expect KEY VALUE \xC2\xB1 TOLERANCE, or KEY WORD");
    } else if (n == 5 && !strncmp(text, "fails", n)) {
        c->fails = atoi(rest);
        if (c->fails < 1) complain(c, name, line, "fails CODE");
    } else {
        complain(c, name, line, "not source, quick, expect or fails");
    }
}

int ref_read(ref_case *c, FILE *file, const char *name, int *line) {
    char text[REF_LINE];
    memset(c, 0, sizeof *c);
    while (fgets(text, sizeof text, file)) {
        ++*line;
        if (!strchr(text, '\n') && !feof(file)) complain(c, name, *line, "the line is too long");
        size_t n = strlen(text);
        while (n > 0 && strchr("\r\n \t", text[n - 1]))
            text[--n] = '\0';
        if (text[0] == '#') continue;
        if (n == 0 && c->line) return 1;
        if (n == 0) continue;
        if (!c->line) c->line = *line;
        take_line(c, text, name, *line);
    }
    return c->line != 0;
}
