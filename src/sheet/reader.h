/* What every part of the reading shares: memory, units, the faults found so far, the echo. */
#ifndef HS_SHEET_READER_H
#define HS_SHEET_READER_H

#include "base/arena.h"
#include "hardskin/plan/job.h"
#include "hardskin/sheet/sheet.h"
#include "hardskin/units/hardness.h"
#include "sheet/node.h"

typedef struct hs_echo {
    hs_read read;
    struct hs_echo *next;
} hs_echo;

enum { HS_MAX_NOTICES = 4 };

typedef struct hs_reader {
    hs_arena *arena;
    const hs_units *units;
    const char *folder;
    hs_error *faults;
    size_t fault_count;
    const hs_node *shop_place; /* where the sheet names its shop file */
    hs_echo *first, *last;
    size_t echoes;
    unsigned scope; /* which hazards the words are looked up in: forbidden.h */
    const char *notice[HS_MAX_NOTICES + 1];
    size_t notices;
} hs_reader;

/* A list of words a key takes. */
typedef struct hs_words {
    const char *const *list;
    size_t n;
} hs_words;
#define HS_WORDS(array)                                                                            \
    (hs_words) {                                                                                   \
        array, sizeof array / sizeof *array                                                        \
    }

enum { HS_AT_VALUE, HS_AT_KEY };

/** Note a fault at a node's value or key. The same one is kept once, and 20 in all. */
void hs_reader_fault(hs_reader *r, const hs_node *node, int where, const hs_error *err);

/** As hs_reader_fault, at the value, written in place. */
void hs_reader_say(hs_reader *r, const hs_node *node, hs_status status, const char *help,
                   const char *format, ...) HS_PRINTF(5, 6);

/** As hs_reader_say, at the key. */
void hs_reader_say_key(hs_reader *r, const hs_node *node, hs_status status, const char *help,
                       const char *format, ...) HS_PRINTF(5, 6);

/** JSON pointer of a node, kept in the arena ("" when there is no memory). */
const char *hs_reader_pointer(hs_reader *r, const hs_node *node);

/** Memory for n things; on none left the fault is noted and NULL returned. */
void *hs_reader_get(hs_reader *r, size_t n, size_t size);

/** Keep a quantity for the echo. */
void hs_reader_echo(hs_reader *r, const hs_node *node, double value, const char *unit);

/** The node is an object with none but these keys ("note" besides): 1. Every other key is a fault;
 *  the object can be read on (1) unless it is no object at all (0). NULL: 0, silently. */
int hs_reader_object(hs_reader *r, const hs_node *node, hs_words keys);

/** The node is a list of `least` to `most` members. NULL: 0, silently. */
int hs_reader_list(hs_reader *r, const hs_node *node, size_t least, size_t most);

/** A member that must be there; the fault is noted when it is not. */
const hs_node *hs_reader_need(hs_reader *r, const hs_node *object, const char *key);

/* The readers below return 1 when *out was set; a missing node (NULL) gives 0 without a fault. */

/** A name or a remark: not empty, no control characters, at most 200 bytes. */
int hs_reader_text(hs_reader *r, const hs_node *node, const char **out);

/** One of a list of words. */
int hs_reader_word(hs_reader *r, const hs_node *node, hs_words words, size_t *index);

int hs_reader_flag(hs_reader *r, const hs_node *node, int *out);

/** A whole bare number from low to high. */
int hs_reader_count(hs_reader *r, const hs_node *node, size_t low, size_t high, size_t *out);

/** Near-misses for a help text: "did you mean ...?" or the list itself. */
void hs_reader_suggest(char *out, size_t size, const char *word, hs_words words);

#endif
