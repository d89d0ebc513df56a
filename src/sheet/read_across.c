/* dimensions[].faces: which faces, and what kind of size that makes. */
#include "sheet/draft.h"

#include <string.h>

static const char *help_of(hs_form form) {
    switch (form) {
    case HS_PLATE:
        return "[\"top\", \"bottom\"], [\"front\", \"back\"] or [\"left\", \"right\"]";
    case HS_BAR:
        return "[\"outside\"] for the diameter, [\"ends\"] for the length";
    case HS_RING:
        return "[\"outside\"], [\"bore\"], or [\"ends\"] for the length";
    case HS_PROFILE:
        break;
    }
    return "two faces on parallel edges, back to back or across a slot, or [\"ends\"] for the "
           "length";
}

static int read_face(hs_draft *d, const hs_node *node, size_t *out) {
    const char *name, *names[HS_MAX_FACES];
    char help[sizeof(hs_error){0}.help];
    if (!hs_reader_text(d->reader, node, &name)) return 0;
    int i = hs_draft_face(d, name);
    if (i >= 0) {
        *out = (size_t)i;
        return 1;
    }
    hs_reader_suggest(help, sizeof help, name, hs_draft_face_names(d, names));
    hs_reader_say(d->reader, node, HS_E_WORD, help, "there is no face \"%.80s\"", name);
    return 0;
}

/* Plate faces stand in opposed pairs 0-1, 2-3, 4-5. */
static int opposed(size_t a, size_t b) {
    return a != b && a / 2 == b / 2;
}

/* Back to back, like a thickness, or face to face, like a slot. */
static int bound_a_size(const hs_draft *d, size_t a, size_t b) {
    hs_edge_pair pair;
    double distance_m;
    const hs_section *section = &d->job.part.section;
    if (a == b || !strcmp(d->face[a].name, "ends") || !strcmp(d->face[b].name, "ends")) return 0;
    if (section->outline.n == 0 || !d->face[a].edge || !d->face[b].edge)
        return 1; /* outline or edge have their own fault */
    return hs_section_pair(&pair, &distance_m, section, d->face[a].edge, d->face[b].edge, NULL) ==
               HS_OK &&
           (pair == HS_EDGES_OUTSIDE || pair == HS_EDGES_INSIDE);
}

static int one_face(const hs_draft *d, hs_dimension *dimension) {
    const char *name = d->face[dimension->face[0]].name;
    if (d->job.part.form == HS_PLATE) return 0;
    if (!strcmp(name, "ends"))
        dimension->across = HS_ACROSS_ENDS;
    else if (d->job.part.form == HS_PROFILE)
        return 0;
    else
        dimension->across = strcmp(name, "bore") ? HS_ACROSS_OUTSIDE : HS_ACROSS_BORE;
    dimension->face[1] = dimension->face[0];
    return 1;
}

int hs_read_across(hs_draft *d, const hs_node *node, hs_dimension *dimension) {
    if (!hs_reader_list(d->reader, node, 1, 2) || !d->form_known) return 0;
    int good = 1;
    size_t n = 0;
    for (const hs_node *f = node->child; f; f = f->next)
        good &= read_face(d, f, &dimension->face[n++]);
    if (!good) return 0;
    hs_form form = d->job.part.form;
    if (n == 1) {
        good = one_face(d, dimension);
    } else {
        dimension->across = HS_ACROSS_FACES;
        good = form == HS_PLATE     ? opposed(dimension->face[0], dimension->face[1])
               : form == HS_PROFILE ? bound_a_size(d, dimension->face[0], dimension->face[1])
                                    : 0;
    }
    if (!good)
        hs_reader_say(d->reader, node, HS_E_DISAGREE, help_of(form),
                      "no size lies between these faces");
    return good;
}
