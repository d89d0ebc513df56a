/* The key "faces": what each face must be. Faces that are not named stay as hardened. */
#include "constants.h"
#include "sheet/amounts.h"
#include "sheet/draft.h"

#include <string.h>

static const char *const finishes[] = {"ground", "as hardened", "soft"};
static const char *const keys[] = {"name",     "finish",    "case",    "to",
                                   "hardness", "roughness", "flatness"};
static const char *const profile_keys[] = {"name", "edge",     "finish",    "case",
                                           "to",   "hardness", "roughness", "flatness"};

static const char *const plate_faces[] = {"top", "bottom", "front", "back", "left", "right"};
static const char *const bar_faces[] = {"outside", "ends"};
static const char *const ring_faces[] = {"outside", "bore", "ends"};
static const char *const profile_faces[] = {"ends"};

static hs_words fixed_faces(hs_form form) {
    switch (form) {
    case HS_PLATE:
        return HS_WORDS(plate_faces);
    case HS_BAR:
        return HS_WORDS(bar_faces);
    case HS_RING:
        return HS_WORDS(ring_faces);
    case HS_PROFILE:
        break;
    }
    return HS_WORDS(profile_faces);
}

int hs_draft_face(const hs_draft *d, const char *name) {
    for (size_t i = 0; i < d->job.faces; i++)
        if (!strcmp(d->face[i].name, name)) return (int)i;
    return -1;
}

hs_words hs_draft_face_names(const hs_draft *d, const char **list) {
    for (size_t i = 0; i < d->job.faces; i++)
        list[i] = d->face[i].name;
    return (hs_words){list, d->job.faces};
}

/* A face of that name at the end of the list; -1 when it is full. */
static int add_face(hs_draft *d, const char *name) {
    if (d->job.faces == HS_MAX_FACES) return -1;
    size_t i = d->job.faces++;
    d->face[i] = (hs_face){.name = name,
                           .pointer = "",
                           .hardness_text = "",
                           .finish = HS_AS_HARDENED,
                           .limit_HV = HS_K_SHEET_DEFAULT_CASE_LIMIT};
    return (int)i;
}

/* The entry's face: one of the form, or for a profile a new one on its edge. */
static int place_of(hs_draft *d, const hs_node *node) {
    hs_reader *r = d->reader;
    const char *name, *names[HS_MAX_FACES];
    const hs_node *name_node = hs_reader_need(r, node, "name");
    if (!hs_reader_text(r, name_node, &name)) return -1;
    int i = hs_draft_face(d, name);
    if (i >= 0 && d->face_node[i]) {
        hs_reader_say(r, name_node, HS_E_DUPLICATE, "one entry a face",
                      "the face \"%.80s\" is here twice", name);
        return -1;
    }
    if (i >= 0) return i;
    if (d->job.part.form != HS_PROFILE) {
        char help[sizeof(hs_error){0}.help];
        hs_reader_suggest(help, sizeof help, name, hs_draft_face_names(d, names));
        hs_reader_say(r, name_node, HS_E_WORD, help, "this form has no face \"%.80s\"", name);
        return -1;
    }
    i = add_face(d, name);
    if (i < 0) hs_reader_say(r, node, HS_E_TOO_LARGE, "", "more than %d faces", HS_MAX_FACES);
    return i;
}

static void read_edge(hs_draft *d, const hs_node *node, hs_face *face) {
    size_t edges = d->job.part.section.outline.n, edge = 0;
    if (d->job.part.form != HS_PROFILE || !strcmp(face->name, "ends")) return;
    const hs_node *edge_node = hs_reader_need(d->reader, node, "edge");
    if (!hs_reader_count(d->reader, edge_node, 1, edges ? edges : HS_MAX_OUTLINE, &edge)) return;
    for (size_t i = 0; i < d->job.faces; i++)
        if (d->face[i].edge == edge)
            hs_reader_say(d->reader, edge_node, HS_E_DISAGREE, "one face an edge",
                          "edge %zu is already the face \"%.80s\"", edge, d->face[i].name);
    face->edge = edge;
}

static void read_demands(hs_draft *d, const hs_node *node, hs_face *face) {
    hs_reader *r = d->reader;
    double high_HV;
    size_t finish = HS_GROUND;
    hs_reader_word(r, hs_node_find(node, "finish"), HS_WORDS(finishes), &finish);
    face->finish = (hs_finish)finish;
    hs_amount_case(r, hs_node_find(node, "case"), &face->case_m);
    hs_amount_hardness(r, hs_node_find(node, "to"), &face->limit_HV, &high_HV);
    const hs_node *hardness = hs_node_find(node, "hardness");
    if (hs_amount_hardness(r, hardness, &face->hardness_HV, &high_HV))
        face->hardness_text = hardness->text;
    hs_amount_positive(r, hs_node_find(node, "roughness"), HS_ROUGHNESS, &face->roughness_m);
    if (face->roughness_m > HS_K_SHEET_DEFAULT_ROUGHNESS_MOST)
        hs_reader_say(r, hs_node_find(node, "roughness"), HS_E_IMPOSSIBLE,
                      "\"roughness\": \"Ra 0.8 um\" or \"Ra 32 uin\"", "no face is asked so rough");
    hs_amount_positive(r, hs_node_find(node, "flatness"), HS_LENGTH, &face->flatness_m);
    if (face->finish == HS_SOFT && face->case_m > 0)
        hs_reader_say(r, hs_node_find(node, "case"), HS_E_DISAGREE,
                      "leave the case away, or take another finish", "a soft face has no case");
    if (face->finish == HS_SOFT && face->hardness_HV > 0)
        hs_reader_say(r, hardness, HS_E_DISAGREE, "leave the hardness away, or take another finish",
                      "a soft face is not hard");
}

void hs_read_faces(hs_draft *d) {
    hs_reader *r = d->reader;
    const hs_node *list = hs_node_find(d->root, "faces");
    if (d->form_known)
        for (size_t i = 0; i < fixed_faces(d->job.part.form).n; i++)
            add_face(d, fixed_faces(d->job.part.form).list[i]);
    int profile = d->form_known && d->job.part.form == HS_PROFILE;
    hs_words known = profile || !d->form_known ? HS_WORDS(profile_keys) : HS_WORDS(keys);
    if (!hs_reader_list(r, list, 0, HS_MAX_FACES)) return;
    for (const hs_node *n = list->child; n; n = n->next) {
        hs_face spare = {.name = "", .pointer = "", .hardness_text = ""};
        if (!hs_reader_object(r, n, known)) continue;
        int i = d->form_known ? place_of(d, n) : -1;
        hs_face *face = i < 0 ? &spare : &d->face[i];
        if (i >= 0) {
            d->face_node[i] = n;
            face->stated = 1;
            face->pointer = hs_reader_pointer(r, n);
            read_edge(d, n, face);
        }
        read_demands(d, n, face);
    }
    d->job.face = d->face;
}
