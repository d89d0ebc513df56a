#include "sheet/node.h"

#include <stdio.h>
#include <string.h>

const hs_node *hs_node_find(const hs_node *object, const char *key) {
    if (!object || object->kind != HS_NODE_OBJECT) return NULL;
    for (const hs_node *n = object->child; n; n = n->next)
        if (!strcmp(n->key, key)) return n;
    return NULL;
}

/* Append text with ~ and / written as RFC 6901 wants them. */
static size_t add_escaped(char *out, size_t size, size_t at, const char *text) {
    for (; *text && at + 3 < size; text++) {
        if (*text == '~' || *text == '/') {
            out[at++] = '~';
            out[at++] = *text == '~' ? '0' : '1';
        } else {
            out[at++] = *text;
        }
    }
    out[at] = '\0';
    return at;
}

static size_t add_path(char *out, size_t size, const hs_node *node) {
    if (!node->parent) return 0;
    size_t at = add_path(out, size, node->parent);
    if (at + 24 >= size) return at;
    out[at++] = '/';
    if (node->key) return add_escaped(out, size, at, node->key);
    return at + (size_t)snprintf(out + at, size - at, "%zu", node->index);
}

void hs_node_pointer(char *out, size_t size, const hs_node *node) {
    out[0] = '\0';
    if (node) add_path(out, size, node);
}
