#include "sheet/tree.h"

#include "sheet/scan.h"

#include <cjson/cJSON.h>
#include <stdlib.h>
#include <string.h>

typedef struct builder {
    hs_arena *arena;
    const hs_spot *spots;
    size_t at, n;
    const char *file;
} builder;

static hs_node_kind kind_of(const cJSON *item) {
    if (cJSON_IsObject(item)) return HS_NODE_OBJECT;
    if (cJSON_IsArray(item)) return HS_NODE_LIST;
    if (cJSON_IsString(item)) return HS_NODE_TEXT;
    if (cJSON_IsNumber(item)) return HS_NODE_NUMBER;
    if (cJSON_IsTrue(item)) return HS_NODE_TRUE;
    return cJSON_IsFalse(item) ? HS_NODE_FALSE : HS_NODE_NULL;
}

/* Both orders are that of the text, so the next spot is the place of this item. */
static hs_node *build(builder *b, const cJSON *item, const hs_node *parent) {
    hs_node *node = hs_arena_get(b->arena, sizeof *node);
    if (!node || b->at >= b->n) return NULL;
    node->kind = kind_of(item);
    node->spot = b->spots[b->at++];
    node->parent = parent;
    node->file = b->file;
    node->number = cJSON_IsNumber(item) ? item->valuedouble : 0;
    node->text = cJSON_IsString(item)
                     ? hs_arena_text(b->arena, item->valuestring, strlen(item->valuestring))
                     : "";
    if (item->string) node->key = hs_arena_text(b->arena, item->string, strlen(item->string));
    if (!node->text || (item->string && !node->key)) return NULL;
    const hs_node **link = &node->child;
    for (const cJSON *c = item->child; c; c = c->next) {
        hs_node *child = build(b, c, node);
        if (!child) return NULL;
        child->index = node->count++;
        *link = child;
        link = &child->next;
    }
    return node;
}

/* cJSON reads numbers of at most 63 bytes: longer ones, which no sheet needs, become 0 here and are
 * refused where they are used. */
static char *shorten_numbers(const char *text, size_t size, const hs_spot *spots, size_t n) {
    char *copy = malloc(size + 1);
    if (!copy) return NULL;
    memcpy(copy, text, size);
    copy[size] = '\0';
    for (size_t i = 0; i < n; i++) {
        if (!spots[i].long_number) continue;
        memset(copy + spots[i].offset, ' ', spots[i].length);
        copy[spots[i].offset] = '0';
    }
    return copy;
}

hs_status hs_tree_read(hs_node **root, hs_arena *arena, const char *text, size_t size,
                       const char *file, hs_error *err) {
    hs_spot *spots;
    size_t n;
    hs_status status = hs_scan(&spots, &n, text, size, err);
    if (status != HS_OK) return status;
    size_t mark = hs_scan_mark(text, size);
    char *copy = shorten_numbers(text, size, spots, n);
    cJSON *tree = copy ? cJSON_ParseWithLengthOpts(copy + mark, size - mark, NULL, 0) : NULL;
    builder b = {arena, spots, 0, n, file};
    hs_node *made = tree ? build(&b, tree, NULL) : NULL;
    cJSON_Delete(tree);
    free(copy);
    free(spots);
    if (!made) return hs_fail(err, HS_E_MEMORY, "", "no memory left to read the sheet");
    *root = made;
    return HS_OK;
}
