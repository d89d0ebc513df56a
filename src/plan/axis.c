#include "plan/axis.h"

#include <string.h>

static size_t face_named(const hs_job *job, const char *name) {
    for (size_t i = 0; i < job->faces; i++)
        if (!strcmp(job->face[i].name, name)) return i;
    return HS_MAX_FACES;
}

/* The named edge faces of a profile are few: the one whose edge lies back to back with this one. */
static size_t edge_behind(const hs_job *job, size_t face) {
    size_t best = HS_MAX_FACES;
    double wall_m = 0;
    if (hs_section_wall(&wall_m, &job->part.section, job->face[face].edge, NULL) != HS_OK)
        return best;
    for (size_t i = 0; i < job->faces; i++) {
        hs_edge_pair pair;
        double apart_m;
        if (i == face || job->face[i].edge == 0) continue;
        if (hs_section_pair(&pair, &apart_m, &job->part.section, job->face[face].edge,
                            job->face[i].edge, NULL) != HS_OK)
            continue;
        if (pair == HS_EDGES_OUTSIDE && apart_m <= wall_m * 1.000001) best = i;
    }
    return best;
}

size_t hs_face_behind(const hs_job *job, size_t face) {
    static const char *const pairs[][2] = {
        {"top", "bottom"}, {"front", "back"}, {"left", "right"}, {"outside", "bore"}};
    if (job->face[face].edge > 0) return edge_behind(job, face);
    for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++)
        for (int side = 0; side < 2; side++)
            if (!strcmp(job->face[face].name, pairs[i][side]))
                return face_named(job, pairs[i][!side]);
    return HS_MAX_FACES;
}

static double plate_wall_m(const hs_part *part, const char *name) {
    if (!strcmp(name, "top") || !strcmp(name, "bottom")) return part->thickness_m;
    if (!strcmp(name, "front") || !strcmp(name, "back")) return part->width_m;
    return part->length_m;
}

hs_status hs_axis_of_face(hs_axis *axis, const hs_job *job, size_t face, hs_error *err) {
    const hs_part *part = &job->part;
    size_t behind = hs_face_behind(job, face);
    *axis = (hs_axis){.shape = HS_SLAB, .far_exposed = 1};
    if (behind < job->faces) axis->far_exposed = job->face[behind].finish != HS_SOFT;
    const char *name = job->face[face].name;
    if (part->form == HS_BAR && !strcmp(name, "outside")) {
        axis->far_exposed = 0; /* the middle of a bar is no face */
        axis->shape = HS_CYLINDER;
        axis->size_m = 0.5 * part->diameter_m;
        axis->wall_m = part->diameter_m;
    } else if (part->form == HS_RING && strcmp(name, "ends")) {
        axis->shape = strcmp(name, "bore") ? HS_TUBE : HS_BORE;
        axis->size_m = 0.5 * part->outside_m;
        axis->inner_m = 0.5 * part->bore_m;
        axis->wall_m = axis->size_m - axis->inner_m;
    } else if (job->face[face].edge > 0) {
        hs_status status =
            hs_section_wall(&axis->wall_m, &part->section, job->face[face].edge, err);
        axis->size_m = axis->wall_m;
        return status;
    } else {
        axis->size_m = axis->wall_m =
            part->form == HS_PLATE ? plate_wall_m(part, name) : part->length_m;
    }
    return HS_OK;
}

static int alike(const hs_axis *a, const hs_axis *b) {
    return a->shape == b->shape && a->size_m == b->size_m && a->inner_m == b->inner_m &&
           a->far_exposed == b->far_exposed;
}

static hs_status add_axis(size_t *index, hs_axes *axes, const hs_axis *axis, hs_error *err) {
    for (*index = 0; *index < axes->n; ++*index)
        if (alike(&axes->axis[*index], axis)) return HS_OK;
    if (axes->n == HS_MAX_AXES)
        return hs_fail(err, HS_E_TOO_LARGE, "name fewer faces", "more than %d different walls",
                       HS_MAX_AXES);
    axes->axis[axes->n++] = *axis;
    return HS_OK;
}

static hs_status add_faces(hs_axes *axes, const hs_job *job, hs_finish finish, size_t most,
                           hs_error *err) {
    for (size_t i = 0; i < job->faces && axes->n < most; i++) {
        hs_axis axis;
        if (job->face[i].finish != finish) continue;
        hs_status status = hs_axis_of_face(&axis, job, i, err);
        if (status == HS_OK) status = add_axis(&axes->of_face[i], axes, &axis, err);
        if (status != HS_OK) return status;
    }
    return HS_OK;
}

hs_status hs_axes_of(hs_axes *axes, const hs_job *job, hs_error *err) {
    axes->n = 0;
    for (size_t i = 0; i < job->faces; i++)
        axes->of_face[i] = job->face[i].finish == HS_SOFT ? HS_MAX_AXES : 0;
    hs_status status = add_faces(axes, job, HS_GROUND, HS_MAX_AXES + 1, err);
    if (status == HS_OK && axes->n == 0) status = add_faces(axes, job, HS_AS_HARDENED, 1, err);
    return status;
}
