/* part.outline and part.holes of a profile. */
#include "sheet/amounts.h"
#include "sheet/draft.h"

static const double mm = 1e-3;

static int coordinate(hs_reader *r, const hs_node *node, double *out_m) {
    hs_quantity q;
    if (node->kind == HS_NODE_NUMBER && !node->spot.long_number) {
        *out_m = node->number * mm;
        return 1;
    }
    if (!hs_amount(r, node, HS_LENGTH, HS_PLAIN, &q)) return 0;
    *out_m = q.value;
    return 1;
}

static int read_point(hs_reader *r, const hs_node *node, hs_point *out) {
    if (node->kind != HS_NODE_LIST || node->count != 2) {
        hs_reader_say(r, node, HS_E_TYPE, "[x, y] in mm, or [\"1 in\", \"2 in\"]",
                      "a point has two numbers");
        return 0;
    }
    int x = coordinate(r, node->child, &out->x_m);
    return coordinate(r, node->child->next, &out->y_m) && x;
}

static int read_ring(hs_reader *r, const hs_node *node, hs_outline *out) {
    if (!hs_reader_list(r, node, 3, HS_MAX_OUTLINE)) return 0;
    hs_point *points = hs_reader_get(r, node->count, sizeof *points);
    int good = points != NULL;
    size_t n = 0;
    for (const hs_node *p = node->child; points && p; p = p->next)
        good &= read_point(r, p, &points[n++]);
    if (good) *out = (hs_outline){points, n};
    return good;
}

void hs_read_outline(hs_draft *d, const hs_node *part) {
    hs_reader *r = d->reader;
    hs_section section = {0};
    const hs_node *outline = hs_reader_need(r, part, "outline"),
                  *list = hs_node_find(part, "holes");
    int good = read_ring(r, outline, &section.outline);
    if (hs_reader_list(r, list, 0, HS_MAX_HOLES)) {
        hs_outline *holes = hs_reader_get(r, list->count, sizeof *holes);
        size_t n = 0;
        for (const hs_node *h = list->child; holes && h; h = h->next)
            good &= read_ring(r, h, &holes[n++]);
        section.holes = holes;
        section.n_holes = holes ? n : 0;
    }
    hs_error err = {0};
    if (!good) return;
    if (hs_section_check(&section, &err) == HS_OK)
        d->job.part.section = section;
    else
        hs_reader_fault(r, outline, HS_AT_VALUE, &err);
}
