#include "corpus.h"
#include "support/check.h"

#include <stdlib.h>
#include <string.h>

static const char *const kinds[] = {
#define X(id, name, words, unit, forms) #id,
    HS_KIND_LIST(X)
#undef X
};

FILE *corpus_open(const char *name) {
    char path[1024];
    snprintf(path, sizeof path, "%s/%s", HARDSKIN_TEST_DATA, name);
    FILE *file = fopen(path, "r");
    if (file) return file;
    perror(path);
    exit(1);
}

static int kind_named(hs_kind *out, const char *name) {
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
        if (!strcmp(kinds[i] + 3, name)) {
            *out = (hs_kind)i;
            return 1;
        }
    return 0;
}

static int parse(corpus_line *out, char *line) {
    char *first = strstr(line, " |"), *second = first ? strstr(first + 2, " | ") : NULL;
    if (!second) return 0;
    *first = *second = '\0';
    snprintf(out->text, sizeof out->text, "%s", first[2] == ' ' ? first + 3 : first + 2);
    snprintf(out->rest, sizeof out->rest, "%s", second + 3);
    return kind_named(&out->kind, line);
}

int corpus_next(corpus_line *out, FILE *file) {
    char line[512];
    while (fgets(line, sizeof line, file)) {
        out->number++;
        line[strcspn(line, "\n")] = '\0';
        if (line[0] == '#' || !line[0]) continue;
        int parsed = parse(out, line);
        if (!parsed) printf("line %d does not parse\n", out->number);
        CHECK(parsed);
        if (parsed) return 1;
    }
    fclose(file);
    return 0;
}
