/* A virtual grinder: a warped hardened part as points in space, a wheel that removes everything
 * beyond a plane or a cylinder, and what is left at each point. Written from geometry alone; it
 * knows none of the sums it is used to check. */
#ifndef HS_TESTS_GRINDER_H
#define HS_TESTS_GRINDER_H

typedef enum vg_kind {
    VG_PLATE,        /* two opposed flats of a plate, shimmed */
    VG_PROFILE,      /* two opposed flats of any direction on a bar bowed in any direction */
    VG_ONE_FACE,     /* a plate whose other face stays as hardened */
    VG_SLOT,         /* two inner flats of a slot in a bar bowed in any direction */
    VG_ENDS,         /* both ends of a bowed bar */
    VG_OLD_CENTRES,  /* bar between centres that bent with it */
    VG_NEW_CENTRES,  /* bar between centres remade to halve the bow */
    VG_CHUCK,        /* bar held on one end */
    VG_RING_OUTSIDE, /* ring set to its own mean circle */
    VG_RING_BORE,
    VG_RING_BY_OTHER, /* ring outside set by its bore: runs out */
    VG_KINDS
} vg_kind;

/** One part as it really came out. Lengths in metres. */
typedef struct vg_part {
    vg_kind kind;
    double rough_m, finish_m; /* size before the fire; size the wheel makes */
    double length_m, width_m;
    double bow_m, bow_angle; /* axis bow at mid-length, parabola; direction about the axis */
    double normal_angle;     /* profile: direction of the ground face */
    double corner_lift_m;    /* plate: one corner over the plate the other three rest on */
    double curvature_1_m;    /* chuck */
    double run_out_m;        /* of an end, or of a ring as set; indicator reading */
    double ovality_m;        /* ring: largest - smallest diameter */
    double strain;           /* linear growth of the material */
    double scale_m;          /* metal lost on each side */
    double first_share_m;    /* flats: stock meant for face 0, of rough - finish */
    double set_m, set_angle; /* where the wheel's plane or axis lies off its place */
    double clean_up_m[2], case_m[2], wanted_m[2], hard_to_m[2]; /* of the two faces */
} vg_part;

/** Worst margins over all points, negative when something fails. */
typedef struct vg_result {
    double clean_m; /* removal - what must come off */
    double case_m;  /* case left - case wanted */
    double hard_m;  /* depth to which it is hard enough - depth of the finished surface */
} vg_result;

/** Grind the part, point by point. */
vg_result vg_grind(const vg_part *part);

#endif
