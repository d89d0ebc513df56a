/* The single sums. A topic is a list of keys and a function from values to an answer; reading,
 * printing and sensitivity are the same for all. */
#ifndef HS_CLI_QUICK_H
#define HS_CLI_QUICK_H

#include "hardskin/units/quantity.h"
#include "hardskin/units/size.h"

#include <stddef.h>

enum { QUICK_KEYS = 16, QUICK_FIGURES = 20, QUICK_NOTES = 800 };

typedef enum quick_type {
    QUICK_QUANTITY, /* read as a quantity of `kind` */
    QUICK_SIZE,     /* a size with its tolerance */
    QUICK_WORD      /* the topic reads it itself */
} quick_type;

typedef struct quick_key {
    const char *name;
    quick_type type;
    hs_kind kind;      /* QUICK_QUANTITY only */
    const char *bare;  /* unit of a bare number; NULL: none is taken */
    int needed;        /* 1: a usage fault without it */
    const char *usual; /* value when not given; NULL: none */
} quick_key;

/** A key as understood; text is NULL when it was neither given nor has a usual value. */
typedef struct quick_value {
    const char *text;
    int given; /* typed by the user */
    hs_quantity q;
    hs_size size;
} quick_value;

/** One figure of an answer: a number, a range, or a word. */
typedef struct quick_figure {
    const char *name;
    double low, high; /* equal for a number */
    int range;
    const char *word; /* a constant text; NULL for a number */
} quick_figure;

typedef struct quick_answer {
    size_t n;
    quick_figure figure[QUICK_FIGURES];
    char notes[QUICK_NOTES]; /* lines, each closed by a newline */
    int first_only;          /* in: only the first figure is looked at (sensitivity) */
} quick_answer;

typedef struct quick_topic {
    const char *name, *what;
    const quick_key *key;
    size_t keys;
    const char *outputs; /* for the list of topics */
    const char *formula, *source, *basis, *range;
    /** Values are in the order of the keys. */
    hs_status (*run)(quick_answer *answer, const quick_value *value, const hs_units *units,
                     hs_error *err);
    int heavy; /* takes a while: not run again for what it is sensitive to */
} quick_topic;

/** Add a figure to an answer. */
void quick_number(quick_answer *answer, const char *name, double value);
void quick_range(quick_answer *answer, const char *name, double low, double high);
void quick_word(quick_answer *answer, const char *name, const char *word);

/** Add a line under the answer (a caution, an assumption). */
void quick_note(quick_answer *answer, const char *format, ...) HS_PRINTF(2, 3);

/** All topics; NULL past the last. */
const quick_topic *quick_topic_at(size_t i);

#endif
