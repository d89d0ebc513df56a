/* The key "part": what is made, of what, how large. */
#include "sheet/amounts.h"
#include "sheet/draft.h"
#include "sheet/forbidden.h"

static const char *const forms[] = {"plate", "bar", "ring", "profile"};
static const char *const conditions[] = {"hot rolled", "cold drawn", "stress relieved",
                                         "normalised"};
static const char *const rusts[] = {"none", "light", "heavy"};
static const char *const holds[] = {"old centres", "remade centres", "chuck"};
static const char *const flat_holds[] = {"shimmed", "pulled flat"};

static const char *const plate_keys[] = {"steel",  "condition", "rust",      "form", "quantity",
                                         "length", "width",     "thickness", "held"};
static const char *const bar_keys[] = {"steel",    "condition", "rust",     "form",
                                       "quantity", "length",    "diameter", "held"};
static const char *const ring_keys[] = {"steel",    "condition", "rust",    "form",
                                        "quantity", "length",    "outside", "bore"};
static const char *const profile_keys[] = {"steel",  "condition", "rust",  "form", "quantity",
                                           "length", "outline",   "holes", "held"};
static const char *const all_keys[] = {"steel",   "condition", "rust",      "form",     "quantity",
                                       "length",  "width",     "thickness", "diameter", "held",
                                       "outside", "bore",      "outline",   "holes"};

static hs_words keys_of(const hs_draft *d) {
    if (!d->form_known) return HS_WORDS(all_keys);
    switch (d->job.part.form) {
    case HS_PLATE:
        return HS_WORDS(plate_keys);
    case HS_BAR:
        return HS_WORDS(bar_keys);
    case HS_RING:
        return HS_WORDS(ring_keys);
    case HS_PROFILE:
        break;
    }
    return HS_WORDS(profile_keys);
}

static void need_size(hs_draft *d, const char *key, double *out_m) {
    hs_amount_positive(d->reader, hs_reader_need(d->reader, d->part_node, key), HS_LENGTH, out_m);
}

static void read_flat_hold(hs_draft *d) {
    size_t held = 0;
    hs_reader_word(d->reader, hs_node_find(d->part_node, "held"), HS_WORDS(flat_holds), &held);
    d->job.part.held = held ? HS_PULLED_FLAT : (hs_held)0;
}

static void read_sizes(hs_draft *d) {
    hs_part *part = &d->job.part;
    size_t held = HS_OLD_CENTRES;
    need_size(d, "length", &part->length_m);
    switch (part->form) {
    case HS_PLATE:
        need_size(d, "width", &part->width_m);
        need_size(d, "thickness", &part->thickness_m);
        read_flat_hold(d);
        break;
    case HS_BAR:
        need_size(d, "diameter", &part->diameter_m);
        hs_reader_word(d->reader, hs_node_find(d->part_node, "held"), HS_WORDS(holds), &held);
        part->held = (hs_held)held;
        break;
    case HS_RING:
        need_size(d, "outside", &part->outside_m);
        need_size(d, "bore", &part->bore_m);
        break;
    case HS_PROFILE:
        hs_read_outline(d, d->part_node);
        read_flat_hold(d);
        break;
    }
}

void hs_read_part(hs_draft *d) {
    hs_reader *r = d->reader;
    hs_part *part = &d->job.part;
    size_t form = 0, condition = HS_HOT_ROLLED, rust = HS_NO_RUST;
    const hs_node *node = hs_reader_need(r, d->root, "part");
    part->quantity = 1;
    if (!node) return;
    d->part_node = node;
    r->scope = HS_IN_FIRE;
    if (node->kind == HS_NODE_OBJECT)
        d->form_known = hs_reader_word(r, hs_reader_need(r, node, "form"), HS_WORDS(forms), &form);
    part->form = (hs_form)form;
    if (!hs_reader_object(r, node, keys_of(d))) {
        d->part_node = NULL;
        r->scope = HS_IN_FIRE;
        return;
    }
    hs_read_steel(d, hs_reader_need(r, node, "steel"));
    hs_reader_word(r, hs_node_find(node, "condition"), HS_WORDS(conditions), &condition);
    part->condition = (hs_condition)condition;
    hs_reader_word(r, hs_node_find(node, "rust"), HS_WORDS(rusts), &rust);
    part->rust = (hs_rust)rust;
    hs_reader_count(r, hs_node_find(node, "quantity"), 1, 100000, &part->quantity);
    if (d->form_known) read_sizes(d);
    r->scope = HS_IN_FIRE;
}
