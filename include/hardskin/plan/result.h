/* The answer to a job. Plain data, no pointers that need freeing: text points into the job, into
 * the tables or is kept in place. Lengths in metres here; the report converts and rounds, except
 * the limits (rough sizes, need, may, shape limit, case left), which plan already rounds to the
 * safe side in the unit of the sheet. */
#ifndef HARDSKIN_PLAN_RESULT_H
#define HARDSKIN_PLAN_RESULT_H

#include "hardskin/model/indent.h"
#include "hardskin/model/quench_trace.h"
#include "hardskin/plan/job.h"
#include "hardskin/plan/result_descale.h"
#include "hardskin/plan/result_dimension.h"

enum {
    HS_MAX_CAUTIONS = 96,
    HS_MAX_PROFILE = 64,
    HS_MAX_DRIVERS = 20,
    HS_MAX_ORDER = 40,
    HS_MAX_OPEN_HEATS = 16,
    HS_MAX_PACKS = 4,
    HS_MAX_LIMITS = 24,
    HS_MAX_CARES = 6
};

typedef enum hs_wheel { HS_WHEEL_NONE, HS_WHEEL_GRIND, HS_WHEEL_CARE, HS_WHEEL_NO } hs_wheel;

typedef struct hs_profile_point {
    double depth_m, carbon_pct, hardness_HV;
} hs_profile_point;

/** A case depth that was read, and what it says of the computed one. */
typedef struct hs_result_reading {
    int present;
    int plan;          /* it replaces the computed depth in the plan (nothing else was measured) */
    double read_m;     /* from the hardened surface */
    double computed_m; /* what the way of reading was to find there; 0 where nothing */
    double factor;     /* on computed depths; 0: the reading stands by itself */
    double doubt_m;    /* half width, 95 % */
} hs_result_reading;

/** The case on the worst-off ground face, before grinding, from the blank surface. */
typedef struct hs_result_case {
    int present;
    double limit_HV;
    double depth_m, depth_low_m, depth_high_m; /* to limit_HV: typical, low side, high side */
    double total_m, total_high_m;
    double surface_carbon_pct, surface_HV, surface_HRC, core_HV, core_HRC; /* HRC NaN if too soft */
    int hardens; /* 0: this quench does not harden the case; surface NaN then */
    double margin_low, margin, margin_high; /* of hardening: surely from 1 at the low end */
    double core_low_HV, core_high_HV;
    double core_martensite_pct, core_bainite_pct; /* the rest ferrite and pearlite */
    double retained_austenite_pct;
    double sub_zero_austenite_pct; /* what -80 C right after the quench would leave of it */
    double soft_rim_m;
    double dissolved_pct;       /* carbon the reheat dissolves at most */
    int core_hardens;           /* half martensite or more */
    size_t face;                /* index into job faces: the one told of */
    double effective_m;         /* typical depth to 50 HRC, SAE J423; NaN where none is that hard */
    double deep_HV;             /* hardness at 3 x depth_m */
    int other_limit;            /* deep_HV calls for a limit above 550 HV to be agreed */
    double way_m[HS_CASE_WAYS]; /* typical depth each way reads, from the blank; 0 nothing */
    double file_HRC[2];         /* hardness files on either side of the limit; NaN none */
    double file_m[2];           /* typical depth at which each begins to bite */
    hs_result_reading reading;
    char drawing[96];     /* CHD to order as hardened, a suggestion; "" none */
    double outer_rad;     /* sharpest outer edge of a ground face (angle of the metal); 0 none */
    double outer_depth_m; /* case from that edge along its bisector, typical; NaN: not known */
    double outer_felt_m;  /* so far along the face the case is deeper by a tenth; NaN unknown */
    int outer_keen;       /* it hardens through */
    double outer_break_m; /* to break it by before the fire; NaN at stop */
    size_t points;
    hs_profile_point profile[HS_MAX_PROFILE];
} hs_result_case;

/** One heat in the open: what it alone takes, low and high ends of the model's band. */
typedef struct hs_result_heat {
    size_t step;
    double lost_m, lost_low_m, lost_high_m; /* per side, as scale */
    double scale_m;                         /* that stands on the part after it */
    double soft_rim_m, depth90_m;           /* free of carbon; to nine tenths of it */
    int film;                               /* the oxygen of the sheet slows it at first */
} hs_result_heat;

/** What scale does to a hole or slot, its walls not plugged: brush and blast do not reach them. */
typedef struct hs_result_hole {
    size_t feature;                 /* index into job features */
    double open_m, open_least_m;    /* width that its scale leaves; least: 1 hole in 20 or so */
    double bare_m, bare_most_m;     /* width once the scale is off */
    double thread_m, thread_most_m; /* a thread: by how much its pitch diameter closes; else 0 */
    int closes;                     /* open_least is half of it or less */
} hs_result_hole;

typedef struct hs_result_scale {
    double lost_m, lost_low_m, lost_high_m; /* per side */
    double scale_m;
    double mass_kg; /* of scale, whole part */
    size_t heats;
    hs_result_heat heat[HS_MAX_OPEN_HEATS];
    size_t holes;
    hs_result_hole hole[HS_MAX_FEATURES];
} hs_result_scale;

/** One box of a carburising step, all parts in it. */
typedef struct hs_result_pack {
    size_t step;
    int box_given;      /* its least inner size; else the least box that covers */
    double box_m[3];    /* inner, as reckoned: the first is the one given */
    double compound_m3; /* loose, with no parts left out */
    double compound_kg, compound_low_kg, compound_high_kg;
    double cover_m; /* compound across the least size, one layer of parts */
    int thin_cover; /* less than there should be */
    double long_m;  /* inner length at which all parts lie in it with that much round them */
    double temp_K;  /* of the fire */
    double heat_up_s, heat_up_low_s, heat_up_high_s; /* its bounds 0 where the size is not given;
                                                        high NaN: perhaps never */
    double moisture;                                 /* taken, kg/kg */
    double steam_m3, water_gas_m3; /* of that moisture, at heat; once charcoal has turned it */
    double heating_m3;             /* driven out of the voids by heating alone, at heat */
    double sealed_Pa;              /* pressure in it if no gas could leave */
    double co_m3;                  /* most carbon monoxide from the moisture, cold */
    double co_room_m3;             /* closed room it brings to the level dangerous at once */
} hs_result_pack;

/** Oil for the last quench in oil. */
typedef struct hs_result_oil {
    int present;
    double part_kg, part_m3, all_m3; /* for one part at a time, for all at once */
    double rise_K;                   /* of that oil */
} hs_result_oil;

typedef struct hs_result_distortion {
    double bow_m, bow_high_m; /* typical, 1 part in 20; magnitude over the length */
    int ring;                 /* these and the next are ovalities, largest less smallest diameter */
    double straightened_m;    /* bow_m and bow_high_m are what straightening to this leaves;
                                 INFINITY: not straightened */
    double quench_m, quench_high_m; /* of the computed quench of the section alone */
    double plain_m; /* one standard deviation by the plain rule beta * 10 mm / height, to compare */
    double growth_m; /* of the length */
    double skin_Pa;  /* stress of the skin along the part after an even quench; < 0 pressure */
    size_t terms;
    hs_term because[HS_MAX_TERMS];
    hs_quench_trace one_quench; /* one of the computed quenches, for drawing; 0 moments: none */
    double lever_m2; /* times a curvature of it: the bow; NaN of a ring, whose wall bends alike
                        all round for the most part */
} hs_result_distortion;

/** What one hole or slot leaves of the section it goes through, taken to lie in its middle. */
typedef struct hs_result_left {
    size_t feature;   /* index into job features */
    int face;         /* index into job faces it was reckoned through, -1 not known */
    int guessed;      /* the sheet names no face: the worst of all ways */
    double web_m;     /* metal left on either side; 0 where none is */
    double stiffness; /* second moment left, share of the full section's, in the weakest direction;
                         NaN: not known */
    int thin;         /* the web is thinner than the share of the section that calls the caution */
    int weak;         /* likewise the stiffness */
} hs_result_left;

/** Walls of the section across the part (of a ring: along it). */
typedef struct hs_result_section {
    double thick_m, thin_m; /* holes of a profile's outline in it, features not */
    size_t lefts;
    hs_result_left left[HS_MAX_FEATURES];
} hs_result_section;

/** The edge of a profile's face where its case is shallower than the flat's: all figures of the
 * face are those there. */
typedef struct hs_result_edge {
    int present;
    size_t corner;     /* of the outline, from 1 */
    double corner_rad; /* angle of the metal there */
    int masked;        /* the face beyond is masked */
    int land;          /* narrow, between two such edges */
    double share;      /* of the flat's case depth, typical */
    double felt_m;     /* so far along the face the case is shallower by a twentieth; NaN unknown */
    double sunk_left_m; /* low side, at the very corner where the wheel sinks it by both faces and
                           no relief groove takes it away; NaN where it does not, or at stop */
} hs_result_edge;

/** From removal_min_m to share_of_case_pct all NaN where the dimension's verdict is stop. */
typedef struct hs_result_face {
    int present; /* a ground face of some dimension */
    size_t dimension;
    double removal_min_m, removal_max_m;
    double clean_up_m, budget_m, split_m, growth_low_m, growth_high_m, lost_high_m;
    double case_left_min_m, case_left_typical_m;
    double case_lost_m;       /* what the worst spot loses of the case */
    double hardness_left_HV;  /* at the finished surface, worst spot */
    unsigned test_with;       /* bit k: hs_hardness_test k reads the case left truly */
    double hrc_needs_m;       /* case a Rockwell C reading needs; NaN outside the table */
    char drawing[96];         /* CHD of the finished face, a suggestion; "" none */
    double share_of_case_pct; /* case_lost over the typical case depth */
    int rib;                  /* narrow between outer edges: the cases of its sides meet */
    hs_result_edge edge;      /* where its worst spot lies, if at an edge */
} hs_result_face;

typedef struct hs_result_blank {
    int present;
    char form[16]; /* "flat", "round", "square" */
    char size[64]; /* "70 x 25 mm" */
    char standard[48];
    double rolled_skin_m; /* per side */
    double straightness_m;
    double saw_length_m;
    char why[360]; /* also what to do when nothing fits */
} hs_result_blank;

typedef struct hs_grind_step {
    char what[120];
    int face;          /* index into job faces, -1 none */
    double to_m;       /* size at which the step ends, NaN none */
    double passes;     /* to expect, 0 = not known */
    char stop_if[240]; /* "" none */
} hs_grind_step;

typedef struct hs_result_grind {
    size_t steps;
    hs_grind_step order[HS_MAX_ORDER];
    double strokes, time_s; /* one part, flat faces, 0 = not computed */
    size_t cares;
    char care[HS_MAX_CARES][240]; /* burn and cracks */
    char note[700];
} hs_result_grind;

/** One way of reading the case on the test piece. */
typedef struct hs_result_way {
    hs_case_way way;
    double expected_m; /* from the hardened surface */
    char text[320];
} hs_result_way;

typedef struct hs_result_test_piece {
    int stated; /* from the sheet; else what we advise */
    double diameter_m, length_m;
    char place[64];
    double case_expected_m, case_low_m;
    char text[400];
    size_t ways;
    hs_result_way way[HS_CASE_WAYS]; /* one of them is enough */
} hs_result_test_piece;

typedef struct hs_result_confidence {
    double level, reached; /* 0..1, of one part, all faces together */
    double
        reached_batch;  /* all parts of the quantity: one heat of steel, box, fire, bath, temper */
    double batch_error; /* 95 % bound on the error of its number of draws; NaN: a bound itself */
    double batch_apart; /* were the luck of each its own: the least it can be */
    int batch_at_least;
    int at_least; /* no failure seen: reached is a bound */
    size_t samples;
    double error_m;       /* 95 % bound on the error their number leaves in the rough sizes' ends */
    double error_asked_m; /* a quarter of the whole rough tolerance */
    size_t drivers;
    hs_driver driver[HS_MAX_DRIVERS];
} hs_result_confidence;

/** One dimension after hardening. */
typedef struct hs_result_measured_dimension {
    int present;
    hs_wheel verdict;
    int fits;                                   /* size and shape would let it be ground */
    double size_m;                              /* H, bow taken off */
    double shape_m;                             /* V */
    double shape_high_m;                        /* V with its doubt against us */
    double limit_clean_m, limit_case_m;         /* V must not exceed these */
    double limit_clean_low_m, limit_case_low_m; /* the same with the doubt against us */
    double turn_at_m;                           /* size at which to turn; NaN: nothing is turned */
    double removal_min_m, removal_max_m, case_left_min_m;
    char stop_if[2][200];
    size_t terms;
    hs_term because[HS_MAX_TERMS];
    size_t remedies;
    hs_remedy remedy[HS_MAX_REMEDIES]; /* none that leaves it at: do not grind */
    char note[480];
} hs_result_measured_dimension;

typedef struct hs_result_measured {
    hs_wheel verdict;
    double case_m, case_low_m; /* B' side: case from the hardened surface */
    hs_result_measured_dimension dimension[HS_MAX_DIMENSIONS];
} hs_result_measured;

/** Before what a caution is to be read; in order of time. */
typedef enum hs_moment {
    HS_BEFORE_ALL,
    HS_BEFORE_STEP,
    HS_BEFORE_TEST_PIECE, /* is etched or broken */
    HS_BEFORE_GRINDING
} hs_moment;

typedef struct hs_result_caution {
    const char *code, *level, *hazard, *consequence, *avoidance, *source; /* of the table */
    hs_moment before;
    size_t step; /* the first it belongs to; HS_BEFORE_STEP only */
} hs_result_caution;

/** Times of the route for the bench, fire on to fire off. */
typedef struct hs_result_step {
    double start_s, heat_up_s, hold_s;           /* from the first fire; heat_up 0 = not computed */
    double heat_up_low_s, heat_up_high_s, red_s; /* its 95 % bounds; box red; from fire on */
    double temp_K;
    double case_depth_m; /* to the limit after this step, as if hardened now */
    double hardness_HRC; /* surface after this step, NaN = not quenched */
    double cooled_HRC;   /* what a slow cooling may leave at most, NaN = soft */
    double lost_m;       /* scale lost so far, per side */
    char text[120];
} hs_result_step;

/** What must be put right in sheet or shop, whatever the windows say; told under the verdict. */
typedef struct hs_result_right {
    int stop;  /* nothing is done before; else the answer holds once it is put right */
    int wheel; /* it concerns the wheel: also what is already hardened */
    char text[280];
} hs_result_right;

enum { HS_MAX_RIGHTS = 8 };

typedef struct hs_result {
    hs_verdict grind;
    int untempered; /* the route leaves the hard case so: grind is stop, whatever the windows */
    size_t rights;
    hs_result_right right[HS_MAX_RIGHTS]; /* one that is stop makes grind stop */
    size_t changes_tried; /* changed jobs run for the remedies; 0: none were sought */
    hs_clean descale_verdict;
    hs_wheel measured_verdict;
    hs_result_case hard;
    hs_result_scale scale;
    hs_result_distortion distortion;
    hs_result_section section;
    hs_result_dimension dimension[HS_MAX_DIMENSIONS]; /* same order as the job's */
    hs_result_face face[HS_MAX_FACES];
    hs_result_blank blank;
    hs_result_grind grind_plan;
    int descale_present;
    hs_result_descale descale; /* of several: the worst, of equals the last */
    size_t other_descales;     /* the others, in the order of the route */
    hs_result_descale other_descale[HS_MAX_DESCALES - 1];
    hs_result_test_piece test_piece;
    hs_result_confidence confidence;
    int measured_present;
    hs_result_measured measured;
    size_t steps;
    hs_result_step step[HS_MAX_STEPS];
    size_t packs;
    hs_result_pack pack[HS_MAX_PACKS];
    hs_result_oil oil;
    size_t cautions;
    hs_result_caution caution[HS_MAX_CAUTIONS];
    size_t limits;
    char limit[HS_MAX_LIMITS][200]; /* what is not covered, what was assumed */
} hs_result;

#endif
