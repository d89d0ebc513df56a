/* What both solutions are asked: in the referee's units. */
#ifndef HS_TESTS_SECOND_CONDITIONS_H
#define HS_TESTS_SECOND_CONDITIONS_H

#include "second/referee.h"

#include <stddef.h>

enum { SECOND_HEATS = 3 };

typedef struct second_condition {
    const char *name;
    referee_part part;
    int heats;
    referee_heat heat[SECOND_HEATS];
} second_condition;

extern const second_condition second_conditions[];
extern const size_t second_count;

#endif
