/* The key "dimensions": sizes with their tolerance and the faces they lie between. */
#include "sheet/amounts.h"
#include "sheet/draft.h"

#include <string.h>

static const char *const keys[] = {"name", "size", "faces"};

static void check_name(hs_draft *d, const hs_node *node, const char *name) {
    if (!strcmp(name, "note"))
        hs_reader_say(d->reader, node, HS_E_WORD, "another name",
                      "a dimension cannot be called note");
    for (size_t i = 0; i < d->job.dimensions; i++)
        if (d->dimension[i].name && !strcmp(d->dimension[i].name, name))
            hs_reader_say(d->reader, node, HS_E_DUPLICATE, "another name",
                          "two dimensions are called \"%.80s\"", name);
}

static void check_pair(hs_draft *d, const hs_node *node, const hs_dimension *new) {
    for (size_t i = 0; i < d->job.dimensions; i++) {
        const hs_dimension *old = &d->dimension[i];
        if (!d->dimension_node[i]) continue;
        int same = old->face[0] == new->face[0] && old->face[1] == new->face[1];
        int turned = old->face[0] == new->face[1] && old->face[1] == new->face[0];
        if (same || turned)
            hs_reader_say(d->reader, node, HS_E_DISAGREE, "one size between two faces",
                          "these faces already carry the dimension \"%.80s\"", old->name);
    }
}

static void read_one(hs_draft *d, const hs_node *node) {
    hs_reader *r = d->reader;
    hs_dimension dimension = {.name = "", .pointer = hs_reader_pointer(r, node), .text = ""};
    if (!hs_reader_object(r, node, HS_WORDS(keys))) return;
    const hs_node *name = hs_reader_need(r, node, "name");
    int named = hs_reader_text(r, name, &dimension.name);
    if (named) check_name(d, name, dimension.name);
    const hs_node *size = hs_reader_need(r, node, "size");
    int sized = hs_amount_size(r, size, &dimension.size);
    if (sized) dimension.text = size->text;
    const hs_node *faces = hs_reader_need(r, node, "faces");
    int placed = hs_read_across(d, faces, &dimension);
    if (placed) check_pair(d, faces, &dimension);
    if (d->job.dimensions == HS_MAX_DIMENSIONS) return;
    size_t i = d->job.dimensions++;
    d->dimension[i] = dimension;
    d->dimension_node[i] = sized && placed ? node : NULL;
}

void hs_read_dimensions(hs_draft *d) {
    const hs_node *list = hs_reader_need(d->reader, d->root, "dimensions");
    if (!hs_reader_list(d->reader, list, 1, HS_MAX_DIMENSIONS)) return;
    for (const hs_node *n = list->child; n; n = n->next)
        read_one(d, n);
    d->job.dimension = d->dimension;
}
