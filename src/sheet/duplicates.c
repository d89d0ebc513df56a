#include "sheet/duplicates.h"

#include <stdlib.h>
#include <string.h>

static int by_key(const void *a, const void *b) {
    const hs_node *x = *(const hs_node *const *)a, *y = *(const hs_node *const *)b;
    int order = strcmp(x->key, y->key);
    if (order) return order;
    return x->index < y->index ? -1 : x->index > y->index;
}

/* Sorted, so that an object of many thousand keys costs no more than it must. */
static void in_object(hs_reader *r, const hs_node *object) {
    const hs_node **list = malloc(object->count * sizeof *list);
    size_t n = 0;
    if (!list) {
        hs_reader_say(r, object, HS_E_MEMORY, "", "no memory left to read the sheet");
        return;
    }
    for (const hs_node *m = object->child; m; m = m->next)
        list[n++] = m;
    qsort(list, n, sizeof *list, by_key);
    for (size_t i = 1; i < n; i++)
        if (!strcmp(list[i - 1]->key, list[i]->key))
            hs_reader_say_key(r, list[i], HS_E_DUPLICATE, "take one of them away",
                              "the key \"%.80s\" stands here twice", list[i]->key);
    free(list);
}

void hs_find_duplicates(hs_reader *r, const hs_node *root) {
    if (!root) return;
    if (root->kind == HS_NODE_OBJECT && root->count > 1) in_object(r, root);
    for (const hs_node *m = root->child; m; m = m->next)
        hs_find_duplicates(r, m);
}
