/* The sheet as a tree in which every value knows where it stands. */
#ifndef HS_SHEET_NODE_H
#define HS_SHEET_NODE_H

#include <stddef.h>

typedef enum hs_node_kind {
    HS_NODE_NULL,
    HS_NODE_FALSE,
    HS_NODE_TRUE,
    HS_NODE_NUMBER,
    HS_NODE_TEXT,
    HS_NODE_LIST,
    HS_NODE_OBJECT
} hs_node_kind;

/** Place of one value, in order of appearance. Lines and columns from 1, columns in bytes; the
 *  key's are those of the value where there is no key. */
typedef struct hs_spot {
    int line, column, key_line, key_column;
    size_t offset, length; /* of the value's bytes in the text */
    int escaped;           /* the string was typed with an escape: columns inside it do not count */
    int has_nul;           /* the string holds U+0000: it is never taken */
    int long_number;       /* more digits than are read */
} hs_spot;

typedef struct hs_node {
    hs_node_kind kind;
    const char *key;  /* NULL at the root and in lists */
    const char *text; /* decoded, "" unless text */
    double number;
    size_t index; /* place in its list, from 0 */
    size_t count; /* members of a list or object */
    hs_spot spot;
    const char *file; /* NULL: the sheet itself */
    const struct hs_node *parent, *child, *next;
} hs_node;

/** Member of that name (letter case counts), or NULL. `object` may be NULL or no object. */
const hs_node *hs_node_find(const hs_node *object, const char *key);

/** JSON pointer (RFC 6901) of a node, cut to `size`. */
void hs_node_pointer(char *out, size_t size, const hs_node *node);

#endif
