/* Reference cases kept as text: read a file of them, run each through the command, compare. */
#ifndef HS_TESTS_REFERENCE_H
#define HS_TESTS_REFERENCE_H

#include <stddef.h>
#include <stdio.h>

enum { REF_ARGS = 24, REF_EXPECTS = 16, REF_LINE = 2048 };

typedef struct ref_expect {
    char key[48];
    int line;
    size_t n; /* numbers expected: 1, or 2 for a range; 0 for a word */
    double value[2];
    double tolerance;
    char word[80];
} ref_expect;

typedef struct ref_case {
    int line; /* of its first line */
    int has_source, has_quick;
    size_t args;
    char *arg[REF_ARGS + 4]; /* command line, unquoted */
    char store[REF_LINE];
    size_t expects;
    ref_expect expect[REF_EXPECTS];
    int fails; /* exit code expected; 0: none */
    int bad;   /* syntax fault, already told */
} ref_case;

typedef struct ref_count {
    int passed, failed; /* cases */
    int checks;
} ref_count;

/** Read the next case from a file; 0 at its end. `line` counts lines over calls. */
int ref_read(ref_case *c, FILE *file, const char *name, int *line);

/** Run a case and count it. `program` is the command's path, `name` the file's. */
void ref_run(ref_count *count, const ref_case *c, const char *program, const char *name);

#endif
