/* The section of a job as a polygon for the quench, and where carbon enters it. */
#include "plan/bend_section.h"

#include "constants.h"

#include <string.h>

/* Edges: under, right, over, left. */
static void rectangle(hs_bend_section *out, double x_m, double y_m) {
    const hs_point corner[] = {{0, 0}, {x_m, 0}, {x_m, y_m}, {0, y_m}};
    memcpy(out->point, corner, sizeof corner);
    out->section.outline = (hs_outline){out->point, 4};
}

static int masked(const hs_job *job, const char *name) {
    for (size_t i = 0; i < job->faces; i++)
        if (!strcmp(job->face[i].name, name)) return job->face[i].finish == HS_SOFT;
    return 0;
}

static void mask_profile(int *closed, const hs_job *job) {
    for (size_t i = 0; i < job->faces; i++)
        if (job->face[i].edge > 0 && job->face[i].finish == HS_SOFT)
            closed[job->face[i].edge - 1] = 1;
}

static void draw_plate(hs_bend_section *out, int *closed, const hs_job *job) {
    static const char *const side[] = {"bottom", "front", "top", "back"};
    rectangle(out, job->part.width_m, job->part.thickness_m);
    for (int i = 0; i < 4; i++)
        closed[i] = masked(job, side[i]);
    out->mirror_x = closed[1] == closed[3];
    out->mirror_y = closed[0] == closed[2];
}

/* The wall of a ring, cut along its axis: bore under, outside over; the ends are washed as well. */
static void draw_ring(hs_bend_section *out, int *closed, const hs_job *job) {
    static const char *const side[] = {"bore", "ends", "outside", "ends"};
    rectangle(out, job->part.length_m, 0.5 * (job->part.outside_m - job->part.bore_m));
    for (int i = 0; i < 4; i++) {
        closed[i] = masked(job, side[i]);
        out->edge_factor[i] = i == 0 ? HS_K_QUENCH_CHANGE_HOLE_FACTOR : 1;
    }
    out->ring = out->mirror_x = 1;
}

void hs_bend_section_of(hs_bend_section *out, int closed[HS_MAX_OUTLINE], const hs_job *job) {
    memset(closed, 0, HS_MAX_OUTLINE * sizeof *closed);
    *out = (hs_bend_section){.mirror_x = 0};
    switch (job->part.form) {
    case HS_PLATE:
        draw_plate(out, closed, job);
        return;
    case HS_BAR:
        out->section.outline =
            hs_section_circle(out->point, HS_ROUND_CORNERS, job->part.diameter_m);
        for (int i = 0; i < HS_ROUND_CORNERS; i++)
            closed[i] = masked(job, "outside");
        out->mirror_x = out->mirror_y = out->alike = 1;
        out->diameter_m = job->part.diameter_m;
        return;
    case HS_RING:
        draw_ring(out, closed, job);
        return;
    case HS_PROFILE:
        out->section = job->part.section;
        mask_profile(closed, job);
        return;
    }
}
