/* A job and its result made by hand: a plate with two dimensions, one bar. */
#ifndef HS_TESTS_REPORT_MADE_H
#define HS_TESTS_REPORT_MADE_H

#include "hardskin/plan/result.h"

typedef struct made {
    hs_job job;
    hs_dimension dimension[2];
    hs_face face[4];
    hs_step step[4];
    hs_read read[2];
    hs_result result;
} made;

/** The worked plate of the reference page on windows (section 6), everything goes. */
void made_plate(made *m);

/** The same, thickness at stop, its window crossed. */
void made_stop(made *m);

/** The same, measured after hardening. */
void made_measured(made *m);

enum { MADE_REPORT = 65536 };

/** Its report as text, until the next is asked for. */
const char *made_text(const made *m);

/** 1-based line in which a text first stands, 0 if nowhere. */
int made_line_of(const char *report, const char *text);

#endif
