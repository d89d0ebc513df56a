/* Reads the corpus files beside this one: "KIND | text | rest". */
#ifndef HS_TESTS_UNITS_CORPUS_H
#define HS_TESTS_UNITS_CORPUS_H

#include "hardskin/units/quantity.h"

#include <stdio.h>

typedef struct corpus_line {
    hs_kind kind;
    char text[256], rest[256];
    int number;
} corpus_line;

/** The file of that name; the test stops when it is not there. */
FILE *corpus_open(const char *name);

/** Next entry; 0 at the end. Comments and blank lines are passed over; any other line that does not
 *  parse fails a check. */
int corpus_next(corpus_line *out, FILE *file);

#endif
