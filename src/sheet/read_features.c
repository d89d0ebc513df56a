/* The keys "features" and "test_piece". */
#include "hardskin/units/split.h"
#include "sheet/amounts.h"
#include "sheet/draft.h"

static const char *const kinds[] = {"hole", "slot", "step"};
static const char *const keys[] = {"is", "size", "through", "thread", "blind"};
static const char *const piece_keys[] = {"size", "place"};

static void read_one(hs_draft *d, const hs_node *node) {
    hs_reader *r = d->reader;
    hs_feature feature = {.through_face = -1};
    size_t kind = 0;
    const char *name, *names[HS_MAX_FACES];
    if (!hs_reader_object(r, node, HS_WORDS(keys))) return;
    hs_reader_word(r, hs_reader_need(r, node, "is"), HS_WORDS(kinds), &kind);
    feature.kind = (hs_feature_kind)kind;
    hs_amount_positive(r, hs_reader_need(r, node, "size"), HS_LENGTH, &feature.size_m);
    hs_reader_flag(r, hs_node_find(node, "thread"), &feature.thread);
    hs_reader_flag(r, hs_node_find(node, "blind"), &feature.blind);
    const hs_node *through = hs_node_find(node, "through");
    if (hs_reader_text(r, through, &name) && d->form_known) {
        feature.through_face = hs_draft_face(d, name);
        char help[sizeof(hs_error){0}.help];
        hs_reader_suggest(help, sizeof help, name, hs_draft_face_names(d, names));
        if (feature.through_face < 0)
            hs_reader_say(r, through, HS_E_WORD, help, "there is no face \"%.80s\"", name);
    }
    d->feature[d->job.features++] = feature;
}

void hs_read_features(hs_draft *d) {
    const hs_node *list = hs_node_find(d->root, "features");
    if (!hs_reader_list(d->reader, list, 0, HS_MAX_FEATURES)) return;
    for (const hs_node *n = list->child; n; n = n->next)
        read_one(d, n);
    d->job.feature = d->feature;
}

void hs_read_test_piece(hs_draft *d) {
    hs_reader *r = d->reader;
    hs_test_piece *piece = &d->job.test_piece;
    const hs_node *node = hs_node_find(d->root, "test_piece");
    const char *text;
    hs_error err = {0};
    piece->place = "";
    if (!hs_reader_object(r, node, HS_WORDS(piece_keys))) return;
    piece->stated = 1;
    const hs_node *size = hs_reader_need(r, node, "size");
    if (hs_amount_text(r, size, &text)) {
        if (hs_test_piece_read(&piece->diameter_m, &piece->length_m, r->units, text, &err) != HS_OK)
            hs_reader_fault(r, size, HS_AT_VALUE, &err);
        hs_reader_echo(r, size, piece->diameter_m, "m");
        hs_reader_echo(r, size, piece->length_m, "m");
    }
    hs_reader_text(r, hs_node_find(node, "place"), &piece->place);
}
