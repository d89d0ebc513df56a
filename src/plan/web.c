#include "plan/web.h"

#include "constants.h"

#include <math.h>
#include <string.h>

static const double PI = 3.14159265358979324;

/* What one way through the part leaves. */
typedef struct way {
    double web_m, stiffness;
} way;

/* Through a rectangle: a slot of the hole's width along `along`, in the middle of `across`. Bent
 * across the slot the middle counts little, along it the width counts in full. */
static way through_rectangle(double across_m, double hole_m) {
    double share = fmin(1, hole_m / across_m);
    return (way){fmax(0, (across_m - hole_m) / 2), 1 - share};
}

/* A hole along the part, in the middle of a section whose least second moment is `least_m4`. */
static way along_part(double thick_m, double least_m4, double hole_m) {
    double left = 1 - PI / 64 * pow(hole_m, 4) / least_m4;
    return (way){fmax(0, (thick_m - hole_m) / 2), fmax(0, left)};
}

/* Across a disc: the strip |x| < a is gone. Second moments of a strip of a disc of radius 1:
 * integral of 2/3 (1 - x^2)^(3/2), which is the larger one, in closed form. */
static way through_bar(double diameter_m, double hole_m) {
    double a = fmin(1, hole_m / diameter_m), h = sqrt(1 - a * a);
    double quarter = (a * h * (5 - 2 * a * a) + 3 * asin(a)) / 8;
    return (way){fmax(0, (diameter_m - hole_m) / 2), 1 - 2 * (2 * quarter / 3) / (PI / 4)};
}

/* Smallest ratio of two second moments over all directions: the least eigenvalue of the pencil
 * left - share * full. */
static double least_share(const double full[3], const double left[3]) {
    double det = full[0] * full[1] - full[2] * full[2];
    double mean = (left[0] * full[1] + left[1] * full[0] - 2 * left[2] * full[2]) / (2 * det);
    double product = (left[0] * left[1] - left[2] * left[2]) / det;
    return fmax(0, mean - sqrt(fmax(0, mean * mean - product)));
}

/* Second moments of the section less a rectangle, about the centroid of what is left. */
static double less_rectangle(const hs_section_properties *p, const hs_section_edge *e,
                             double width_m, double depth_m) {
    double area = width_m * depth_m, rest = p->area_m2 - area;
    if (!(rest > 0)) return 0;
    double x = e->middle.x_m - e->nx * depth_m / 2 - p->x_m;
    double y = e->middle.y_m - e->ny * depth_m / 2 - p->y_m;
    double deep = area * depth_m * depth_m / 12, wide = area * width_m * width_m / 12;
    double nx = e->nx, ny = e->ny, more = area + area * area / rest; /* with the centroid's shift */
    double full[3] = {p->Ix_m4, p->Iy_m4, p->Ixy_m4}, left[3];
    left[0] = p->Ix_m4 - (deep * ny * ny + wide * nx * nx) - more * y * y;
    left[1] = p->Iy_m4 - (deep * nx * nx + wide * ny * ny) - more * x * x;
    left[2] = p->Ixy_m4 - (deep - wide) * nx * ny - more * x * y;
    return least_share(full, left);
}

static way through_profile(const hs_result_section *s, const hs_job *job, size_t edge,
                           double hole_m) {
    const hs_section *section = &job->part.section;
    hs_section_edge e;
    hs_section_properties p;
    double wall_m;
    way lost = {0, NAN};
    if (edge == 0) return (way){fmax(0, (s->thick_m - hole_m) / 2), NAN};
    if (hs_section_edge_at(&e, section, edge, NULL) != HS_OK ||
        hs_section_wall(&wall_m, section, edge, NULL) != HS_OK ||
        hs_section_measure(&p, section, NULL) != HS_OK)
        return lost;
    if (hole_m >= e.length_m) return (way){0, NAN};
    return (way){(e.length_m - hole_m) / 2, less_rectangle(&p, &e, hole_m, wall_m)};
}

static int is(const hs_face *face, const char *name) {
    return !strcmp(face->name, name);
}

static way through(const hs_result_section *s, const hs_job *job, const hs_face *face,
                   double hole_m) {
    const hs_part *part = &job->part;
    double t = part->thickness_m, b = part->width_m, length = part->length_m;
    double wall = (part->outside_m - part->bore_m) / 2;
    switch (part->form) {
    case HS_PLATE:
        if (is(face, "top") || is(face, "bottom")) return through_rectangle(b, hole_m);
        if (is(face, "front") || is(face, "back")) return through_rectangle(t, hole_m);
        return along_part(fmin(t, b), fmax(t, b) * pow(fmin(t, b), 3) / 12, hole_m);
    case HS_BAR:
        if (is(face, "outside")) return through_bar(part->diameter_m, hole_m);
        return along_part(part->diameter_m, PI / 64 * pow(part->diameter_m, 4), hole_m);
    case HS_RING: /* its section is length x wall */
        return through_rectangle(is(face, "ends") ? wall : length, hole_m);
    case HS_PROFILE:
        break;
    }
    return through_profile(s, job, face->edge, hole_m);
}

static double thickness_of(const hs_part *part) {
    double wall_m = (part->outside_m - part->bore_m) / 2;
    if (part->form == HS_PLATE) return fmin(part->thickness_m, part->width_m);
    if (part->form == HS_BAR) return part->diameter_m;
    return fmin(wall_m, part->length_m);
}

/* Is `a` worse than `b`? Less web, and where that is alike less stiffness. */
static int worse(way a, way b) {
    return a.web_m < b.web_m || (a.web_m <= b.web_m && a.stiffness < b.stiffness);
}

static hs_result_left left_by(const hs_result_section *s, const hs_job *job, size_t index) {
    const hs_feature *f = &job->feature[index];
    hs_result_left out = {
        .feature = index, .face = f->through_face, .guessed = f->through_face < 0};
    way found = {INFINITY, NAN};
    if (!out.guessed) found = through(s, job, &job->face[out.face], f->size_m);
    for (size_t k = 0; out.guessed && k < job->faces; k++) {
        way one = through(s, job, &job->face[k], f->size_m);
        if (one.web_m <= 0 && found.web_m < INFINITY) continue; /* it does not fit that way */
        if (found.web_m > 0 && !worse(one, found)) continue;
        found = one;
        out.face = (int)k;
    }
    out.web_m = found.web_m;
    out.stiffness = found.stiffness;
    out.thin = out.web_m < HS_K_CAUTION_LIMITS_THIN_WEB_SHARE * s->thick_m;
    out.weak = out.stiffness < HS_K_CAUTION_LIMITS_WEAK_SECTION_SHARE;
    return out;
}

void hs_web_find(hs_result_section *out, const hs_job *job) {
    *out = (hs_result_section){.lefts = 0};
    if (job->part.form != HS_PROFILE)
        out->thick_m = out->thin_m = thickness_of(&job->part);
    else if (hs_section_thickness(&out->thick_m, &out->thin_m, &job->part.section, NULL) != HS_OK)
        out->thick_m = out->thin_m = NAN;
    for (size_t i = 0; i < job->features && out->lefts < HS_MAX_FEATURES; i++)
        if (job->feature[i].kind != HS_STEP_FEATURE && job->feature[i].size_m > 0)
            out->left[out->lefts++] = left_by(out, job, i);
}
