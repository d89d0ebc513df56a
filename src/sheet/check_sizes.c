/* Do the sizes of the part, its dimensions, features and readings fit together? */
#include "constants.h"
#include "sheet/draft.h"

#include <math.h>
#include <string.h>

static const double same_m = 1e-6; /* sizes typed in mm and in inch may differ by a micrometre */

typedef struct said {
    const char *key; /* of the part */
    double size_m;   /* 0: not read */
} said;

static said of_outline(const hs_draft *d, const hs_dimension *dimension) {
    hs_edge_pair pair;
    double distance_m;
    said s = {"outline", 0};
    if (d->job.part.section.outline.n > 0 &&
        hs_section_pair(&pair, &distance_m, &d->job.part.section, d->face[dimension->face[0]].edge,
                        d->face[dimension->face[1]].edge, NULL) == HS_OK)
        s.size_m = distance_m;
    return s;
}

static said of_part(const hs_draft *d, const hs_dimension *dimension) {
    const hs_part *part = &d->job.part;
    switch (dimension->across) {
    case HS_ACROSS_OUTSIDE:
        return part->form == HS_BAR ? (said){"diameter", part->diameter_m}
                                    : (said){"outside", part->outside_m};
    case HS_ACROSS_BORE:
        return (said){"bore", part->bore_m};
    case HS_ACROSS_ENDS:
        return (said){"length", part->length_m};
    case HS_ACROSS_FACES:
        break;
    }
    if (part->form == HS_PROFILE) return of_outline(d, dimension);
    static const char *const keys[] = {"thickness", "width", "length"};
    const double sizes_m[] = {part->thickness_m, part->width_m, part->length_m};
    size_t pair = dimension->face[0] / 2;
    return (said){keys[pair], sizes_m[pair]};
}

static int agrees(const hs_size *size, double size_m) {
    if (fabs(size->nominal_m - size_m) <= same_m) return 1;
    return size->lower_m - same_m <= size_m && size_m <= size->upper_m + same_m;
}

static void check_dimension(hs_draft *d, size_t i) {
    const hs_dimension *dimension = &d->dimension[i];
    const hs_node *size = hs_node_find(d->dimension_node[i], "size");
    said s = of_part(d, dimension);
    if (!(s.size_m > 0) || agrees(&dimension->size, s.size_m)) return;
    hs_reader_say(d->reader, size, HS_E_DISAGREE, "the same finished size in both places",
                  "%.6g mm here, but the part's %s says %.6g mm", dimension->size.nominal_m * 1e3,
                  s.key, s.size_m * 1e3);
}

static void check_measured(hs_draft *d, size_t i) {
    const hs_measured_dimension *m = &d->job.measured.dimension[i];
    double nominal_m = d->dimension[i].size.nominal_m;
    const hs_node *all = hs_node_find(hs_node_find(d->root, "measured"), "size");
    const hs_node *node = hs_node_find(hs_node_find(all, d->dimension[i].name), "is");
    if (!m->size_given || !node) return;
    if (fabs(m->size_m - nominal_m) > HS_K_SHEET_DEFAULT_SIZE_SHARE * nominal_m)
        hs_reader_say(d->reader, node, HS_E_DISAGREE, "the size after hardening, as on the drawing",
                      "%.6g mm measured where the drawing says %.6g mm", m->size_m * 1e3,
                      nominal_m * 1e3);
}

void hs_check_sizes(hs_draft *d) {
    const hs_part *part = &d->job.part;
    for (size_t i = 0; i < d->job.dimensions; i++) {
        if (!d->dimension_node[i]) continue;
        check_dimension(d, i);
        check_measured(d, i);
    }
    if (part->form == HS_RING && part->bore_m > 0 && part->outside_m > 0 &&
        !(part->bore_m < part->outside_m))
        hs_reader_say(d->reader, hs_node_find(d->part_node, "bore"), HS_E_IMPOSSIBLE,
                      "both are diameters", "the bore is not smaller than the outside");
}

/* A ground face is ground to some size. */
void hs_check_ground(hs_draft *d) {
    for (size_t i = 0; i < d->job.faces; i++) {
        int sized = 0;
        if (!d->face_node[i] || d->face[i].finish != HS_GROUND) continue;
        for (size_t k = 0; k < d->job.dimensions; k++)
            sized |= !d->dimension_node[k] || d->dimension[k].face[0] == i ||
                     d->dimension[k].face[1] == i;
        if (!sized && d->job.dimensions > 0)
            hs_reader_say(d->reader, d->face_node[i], HS_E_MISSING,
                          "a dimension over it, or \"finish\": \"as hardened\"",
                          "the face \"%.80s\" is to be ground, but no dimension says to what size",
                          d->face[i].name);
    }
}

/* The largest a feature can be on this part (m); 0 where it is not known. */
static double room_for(const hs_draft *d) {
    const hs_part *part = &d->job.part;
    switch (part->form) {
    case HS_PLATE:
        return fmax(part->width_m, part->length_m);
    case HS_BAR:
        return fmax(part->diameter_m, part->length_m);
    case HS_RING:
        return fmax(part->outside_m, part->length_m);
    case HS_PROFILE:
        break;
    }
    return 0;
}

/* What a hole must leave on both sides of it, by the face it goes through. */
static double room_for_hole(const hs_draft *d, const hs_feature *f) {
    const hs_part *part = &d->job.part;
    double l = part->length_m, w = part->width_m, t = part->thickness_m;
    const double plate_m[] = {fmin(l, w), fmin(l, t), fmin(w, t)};
    int ends = part->form == HS_BAR ? 1 : 2;
    if (f->kind != HS_HOLE || f->through_face < 0) return room_for(d);
    if (part->form == HS_PLATE) return plate_m[f->through_face / 2];
    if (part->form == HS_BAR) return fmin(part->diameter_m, f->through_face == ends ? INFINITY : l);
    if (part->form != HS_RING) return room_for(d);
    return f->through_face == ends ? (part->outside_m - part->bore_m) / 2 : l;
}

void hs_check_features(hs_draft *d) {
    const hs_node *list = hs_node_find(d->root, "features");
    const hs_node *node = list && list->kind == HS_NODE_LIST ? list->child : NULL;
    for (; node && d->form_known; node = node->next) {
        size_t i = node->index;
        const hs_node *size = hs_node_find(node, "size");
        if (i >= d->job.features || !size) continue;
        double room_m = room_for_hole(d, &d->feature[i]);
        if (room_m > 0 && d->feature[i].size_m >= room_m)
            hs_reader_say(d->reader, size, HS_E_IMPOSSIBLE,
                          "its size, the part's, and the face it goes \"through\"",
                          "this leaves nothing of the part, which is %.6g mm there", room_m * 1e3);
    }
}

/* The fire must be richer than the core. */
void hs_check_carbon(hs_draft *d) {
    double core_pct = d->job.part.steel.mid.C;
    for (size_t i = 0; i < d->job.steps; i++) {
        const hs_step *step = &d->step[i];
        const hs_node *node = hs_node_find(d->step_node[i], "surface_carbon");
        if (step->kind == HS_CARBURISE && node && core_pct > 0 &&
            step->surface_carbon_pct.high > 0 && step->surface_carbon_pct.low <= core_pct)
            hs_reader_say(d->reader, node, HS_E_IMPOSSIBLE, "\"surface_carbon\": \"0.9 %\"",
                          "this is no more than the %.3g %% the steel holds: no carbon would go in",
                          core_pct);
    }
}
