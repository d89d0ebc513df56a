#include "property/grinder.h"

#include <math.h>

enum { ALONG = 9, ACROSS = 5, AROUND = 16 }; /* odd counts: ends, middle and corners are points */

typedef struct point {
    double x, y, z; /* z along the part */
} point;

/* Directions of a part, reckoned once. */
typedef struct frame {
    double normal_x, normal_y, bow_x, bow_y, sin_tilt;
} frame;

/* The end of a bar stands square to its own bent axis: y = f (1 - u^2), u = 2 z / L, has the slope
 * 4 f / L at its ends. */
static frame frame_of(const vg_part *p) {
    return (frame){cos(p->normal_angle), sin(p->normal_angle), cos(p->bow_angle), sin(p->bow_angle),
                   sin(atan(4 * p->bow_m / p->length_m))};
}

/* Place along the length, -1 .. 1. */
static double along(int i) {
    return 2.0 * i / (ALONG - 1) - 1;
}

static void judge(vg_result *out, const vg_part *p, int face, double removal_m) {
    double depth_m = removal_m + p->scale_m; /* below the surface that was there before the fire */
    out->clean_m = fmin(out->clean_m, removal_m - p->clean_up_m[face]);
    out->case_m = fmin(out->case_m, p->case_m[face] - depth_m - p->wanted_m[face]);
    out->hard_m = fmin(out->hard_m, p->hard_to_m[face] - depth_m);
}

/* A point of one of two opposed flats after the fire: the flat is carried along by the bowed axis
 * and by the twist that lifts a corner. Twist a xy lifts the fourth corner by 4 a when the plate
 * stands on the other three. */
static point flat_point(const vg_part *p, const frame *f, int i, int j, double half_m) {
    double u = along(i), v = 2.0 * j / (ACROSS - 1) - 1;
    double nx = f->normal_x, ny = f->normal_y;
    double axis_m = p->bow_m * (1 - u * u), twist_m = p->corner_lift_m / 4 * u * v;
    point at = {axis_m * f->bow_x, axis_m * f->bow_y, u * p->length_m / 2};
    at.x += nx * (half_m + twist_m) - ny * v * p->width_m / 2;
    at.y += ny * (half_m + twist_m) + nx * v * p->width_m / 2;
    return at;
}

/* A point of an end by direction i and radius j. */
static double end_height(const vg_part *p, const frame *f, int i, int j, double half_m) {
    double a = 2 * acos(-1) * i / (ALONG - 1), r_m = p->width_m / 2 * j / (ACROSS - 1);
    double c = cos(a), s = sin(a), own_m = p->run_out_m / 2 * c * j / (ACROSS - 1);
    return half_m + r_m * (c * f->bow_x + s * f->bow_y) * f->sin_tilt + own_m;
}

/* Height of a point of one flat (side 1: top, -1: bottom) along the normal of the top. */
static double height(const vg_part *p, const frame *f, int i, int j, double half_m, int side) {
    if (p->kind == VG_ENDS) return side * end_height(p, f, i, j, half_m);
    point at = flat_point(p, f, i, j, side * half_m);
    return at.x * f->normal_x + at.y * f->normal_y;
}

/* Half way between the highest and the lowest point of a flat. */
static double middle(const vg_part *p, const frame *f, double half_m, int side) {
    double top_m = -INFINITY, low_m = INFINITY;
    for (int i = 0; i < ALONG; i++)
        for (int j = 0; j < ACROSS; j++) {
            double h = height(p, f, i, j, half_m, side);
            top_m = fmax(top_m, h);
            low_m = fmin(low_m, h);
        }
    return (top_m + low_m) / 2;
}

/* The metal lies outside: growth and scale open the slot, and the wheel's planes lie beyond. */
static vg_result grind_slot(const vg_part *p) {
    vg_result out = {INFINITY, INFINITY, INFINITY};
    frame f = frame_of(p);
    double half_m = p->rough_m * (1 + p->strain) / 2 + p->scale_m;
    double first_m = p->first_share_m - p->rough_m * p->strain / 2 - p->scale_m;
    double plane_m = middle(p, &f, half_m, 1) + first_m + p->set_m * cos(p->set_angle);
    for (int i = 0; i < ALONG; i++)
        for (int j = 0; j < ACROSS; j++) {
            judge(&out, p, 0, plane_m - height(p, &f, i, j, half_m, 1));
            judge(&out, p, 1, height(p, &f, i, j, half_m, -1) - (plane_m - p->finish_m));
        }
    return out;
}

/* Shimmed: the wheel's first plane halves the shape, its second lies the finished size below. With
 * the other face left as hardened the size is held from the middle of that. */
static vg_result grind_flats(const vg_part *p) {
    vg_result out = {INFINITY, INFINITY, INFINITY};
    frame f = frame_of(p);
    double half_m = p->rough_m * (1 + p->strain) / 2 - p->scale_m;
    double set_m = p->set_m * cos(p->set_angle);
    /* the stock meant for the first face, and what the fire has added and taken there */
    double first_m = p->first_share_m + p->rough_m * p->strain / 2 - p->scale_m;
    double plane_m = middle(p, &f, half_m, 1) - first_m + set_m;
    if (p->kind == VG_ONE_FACE) plane_m = middle(p, &f, half_m, -1) + p->finish_m + set_m;
    for (int i = 0; i < ALONG; i++)
        for (int j = 0; j < ACROSS; j++) {
            judge(&out, p, 0, height(p, &f, i, j, half_m, 1) - plane_m);
            if (p->kind == VG_ONE_FACE) continue;
            judge(&out, p, 1, plane_m - p->finish_m - height(p, &f, i, j, half_m, -1));
        }
    return out;
}

/* Where the part's axis lies off the axis it turns about. */
static double off_axis(const vg_part *p, double u) {
    double z_m = (u + 1) / 2 * p->length_m;
    if (p->kind == VG_CHUCK) return p->curvature_1_m * z_m * z_m / 2;
    if (p->kind == VG_RING_BY_OTHER) return p->run_out_m / 2; /* the indicator reads twice that */
    if (p->kind == VG_RING_OUTSIDE || p->kind == VG_RING_BORE) return 0;
    double centre_m = p->kind == VG_NEW_CENTRES ? p->bow_m / 2 : 0;
    return p->bow_m * (1 - u * u) - centre_m;
}

static vg_result grind_round(const vg_part *p) {
    vg_result out = {INFINITY, INFINITY, INFINITY};
    int bore = p->kind == VG_RING_BORE;
    double grown_m = p->rough_m / 2 * (1 + p->strain);
    double radius_m = bore ? grown_m + p->scale_m : grown_m - p->scale_m;
    frame f = frame_of(p);
    double set_x_m = p->set_m * cos(p->set_angle), set_y_m = p->set_m * sin(p->set_angle);
    int oval = bore || p->kind == VG_RING_OUTSIDE;
    for (int k = 0; k < AROUND; k++) {
        double a = 2 * acos(-1) * k / AROUND, c = cos(a), s = sin(a);
        double r = radius_m + (oval ? p->ovality_m / 4 * (c * c - s * s) : 0);
        for (int i = 0; i < ALONG; i++) {
            double off_m = off_axis(p, along(i));
            double x = off_m * f.bow_x + r * c - set_x_m, y = off_m * f.bow_y + r * s - set_y_m;
            double over_m = hypot(x, y) - p->finish_m / 2;
            judge(&out, p, 0, bore ? -over_m : over_m);
        }
    }
    return out;
}

vg_result vg_grind(const vg_part *part) {
    if (part->kind == VG_SLOT) return grind_slot(part);
    return part->kind < VG_OLD_CENTRES ? grind_flats(part) : grind_round(part);
}
