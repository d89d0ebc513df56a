/* A job: one part, its route through fire and tank, the shop that makes it. SI throughout.
 * `sheet` reads a job from a file; `plan` turns it into a result. Text and arrays belong to whoever
 * made the job (the sheet's arena) and outlive the result. */
#ifndef HARDSKIN_PLAN_JOB_H
#define HARDSKIN_PLAN_JOB_H

#include "hardskin/model/carbon.h"
#include "hardskin/model/section.h"
#include "hardskin/tables/steel.h"
#include "hardskin/units/quantity.h"
#include "hardskin/units/size.h"

#include <stddef.h>

enum {
    HS_MAX_DIMENSIONS = 12,
    HS_MAX_FACES = 24,
    HS_MAX_STEPS = 64,
    HS_MAX_LOG = 200,
    HS_MAX_OUTLINE = 200,
    HS_MAX_HOLES = 8,
    HS_MAX_FEATURES = 32,
    HS_MAX_RECORD = 200
};

/** A value with what is known of its doubt; low = high = value where none was given. */
typedef struct hs_span {
    double low, value, high;
} hs_span;

typedef enum hs_form { HS_PLATE, HS_BAR, HS_RING, HS_PROFILE } hs_form;
typedef enum hs_condition {
    HS_HOT_ROLLED,
    HS_COLD_DRAWN,
    HS_STRESS_RELIEVED,
    HS_NORMALISED
} hs_condition;
/** Rust on the part before the route begins. */
typedef enum hs_rust { HS_NO_RUST, HS_RUST_LIGHT, HS_RUST_HEAVY } hs_rust;

/** A bar in its centres or a chuck; a plate shimmed (0) or pulled flat by the magnetic chuck. */
typedef enum hs_held { HS_OLD_CENTRES, HS_REMADE_CENTRES, HS_CHUCK, HS_PULLED_FLAT } hs_held;

typedef struct hs_part {
    hs_steel steel;
    hs_condition condition;
    hs_form form;
    hs_held held;
    hs_rust rust;
    double length_m;
    double width_m, thickness_m; /* plate */
    double diameter_m;           /* bar */
    double outside_m, bore_m;    /* ring, diameters */
    hs_section section;          /* profile: outline and holes */
    size_t quantity;             /* at least 1 */
} hs_part;

typedef enum hs_finish { HS_GROUND, HS_AS_HARDENED, HS_SOFT } hs_finish;

/** Every face of the form has an entry, also those the sheet does not name (stated = 0). */
typedef struct hs_face {
    const char *name;
    const char *pointer; /* JSON pointer, "" if not stated */
    hs_finish finish;
    int stated;
    double case_m;      /* wanted after grinding at the worst spot, 0 = none asked */
    double limit_HV;    /* to which hardness that case is counted; 550 unless the sheet says */
    double hardness_HV; /* asked on the finished face, 0 = none asked */
    const char *hardness_text; /* as typed, "" if none */
    double roughness_m;        /* Ra asked, 0 = none */
    double flatness_m;         /* asked of the finished face when it lies free, 0 = none */
    size_t edge;               /* profile: outline edge, counted from 1; else 0 */
    int relieved; /* a groove, or a strip nobody asks a case of, beside its inner corners: it ends
                     where its case is the flat's but for HS_K_EDGE_CASE_FELT. No sheet says so */
} hs_face;

typedef enum hs_across {
    HS_ACROSS_FACES,   /* between two opposed flat faces (also a plate's ends) */
    HS_ACROSS_OUTSIDE, /* diameter of the one face outside */
    HS_ACROSS_BORE,    /* diameter of the one face bore */
    HS_ACROSS_ENDS     /* length of a bar, ring or profile over its one face entry ends */
} hs_across;

typedef struct hs_dimension {
    const char *name;
    const char *pointer;
    const char *text; /* as typed */
    hs_size size;
    hs_across across;
    size_t face[2]; /* indices into job faces; face[1] = face[0] for the one-face kinds */
} hs_dimension;

typedef enum hs_feature_kind { HS_HOLE, HS_SLOT, HS_STEP_FEATURE } hs_feature_kind;
typedef struct hs_feature {
    hs_feature_kind kind;
    double size_m;
    int through_face; /* index into job faces, -1 if not said */
    int thread;
    int blind; /* said to be blind */
} hs_feature;

typedef enum hs_step_kind {
    HS_STRESS_RELIEVE,
    HS_CARBURISE,
    HS_COOL,
    HS_REHEAT,
    HS_QUENCH,
    HS_TEMPER,
    HS_STRAIGHTEN,
    HS_DESCALE,
    HS_BAKE
} hs_step_kind;

typedef enum hs_descale_method {
    HS_BY_BRUSH,
    HS_BY_BLAST,
    HS_BY_ACID,
    HS_BY_ELECTROLYSIS, /* part on the negative lead */
    HS_BY_ANODIC_ELECTROLYSIS,
    HS_BY_FLAP_DISC
} hs_descale_method;

/** The tank of a descale step. A zero (or "") means: not said, plan's default is used and named. */
typedef struct hs_tank {
    const char *acid; /* "citric", "" unless by acid */
    double acid_pct;
    double tub_m3;
    double volts_V, amps_A; /* of the supply */
    double soda_kg_m3;
    double gap_m;
    const char *anode; /* "mild steel", "graphite" */
    double anode_area_m2;
    double temp_K; /* of the bath */
    double room_m3, air_changes_1_s;
    const char *accepted; /* who and when accepted the hydrogen risk; "" = not accepted */
} hs_tank;

/** One step of the route. What a kind does not use is zero. */
typedef struct hs_step {
    hs_step_kind kind;
    const char *pointer;
    int temp_given; /* a doubt was written with the temperature */
    hs_span temp_K; /* carburise, reheat, temper, bake, stress relieve */
    hs_span hold_s;
    const hs_heat_point *log; /* measured heat instead of temp and hold */
    size_t log_points;
    const char *medium;         /* as typed: carburise in, cool in, reheat in, quench in */
    hs_span surface_carbon_pct; /* carburise: from the table or the sheet */
    double transfer_m_s;        /* 0 = not limiting */
    double box_m;               /* smallest inner size of the box, 0 = not said */
    int from_box_red;           /* hold is counted from the box being red */
    double oxygen;              /* reheat: share of the gas by volume, 0 = not said */
    size_t medium_row;          /* row in tables atmosphere (reheat), quench (quench) */
    double uneven;              /* quench: (h1 - h2)/mean, 95 % bound; < 0 = not said */
    double left_m;              /* straighten: bow that may remain */
    hs_descale_method by;       /* descale */
    hs_tank tank;
} hs_step;

typedef struct hs_grinding {
    const char *machine;
    double rough_infeed_m, finish_infeed_m, finish_stock_m;
    double wheel_width_m, cross_feed_m, table_speed_m_s;
} hs_grinding;

typedef enum hs_stock { HS_STOCK_EN, HS_STOCK_INCH } hs_stock;

/** One past part of the shop's record; NaN where a figure was not written. */
typedef struct hs_record {
    const char *job;
    double bow_predicted_m, bow_measured_m;
    double growth_predicted_m, growth_measured_m;
    double case_predicted_m, case_measured_m;
} hs_record;

typedef struct hs_shop {
    int stated;               /* the sheet has a shop */
    double rough_tolerance_m; /* half width: +- this, on size */
    double setup_error_m;     /* per side */
    double confidence;        /* 0.5 .. 0.999 */
    hs_stock stock;
    hs_grinding grinding;
    const hs_record *record;
    size_t records;
} hs_shop;

typedef struct hs_test_piece {
    int stated;
    double diameter_m, length_m;
    const char *place;
} hs_test_piece;

/** How a case depth was read; rows of tables/case_ways.csv. */
typedef enum hs_case_way {
    HS_CASE_NOT_SAID, /* taken as a depth to a hardness, with the widest doubt */
    HS_CASE_STEP_FILE,
    HS_CASE_ETCH,
    HS_CASE_FRACTURE,
    HS_CASE_TRAVERSE,
    HS_CASE_WAYS
} hs_case_way;

typedef enum hs_size_how { HS_BY_MICROMETER, HS_OVER_THE_BOW } hs_size_how;

/** What was measured on one dimension after hardening. */
typedef struct hs_measured_dimension {
    int size_given, shape_given;
    double size_m;
    hs_size_how how;
    int size_checked;                    /* measured again and so: not asked back */
    double ground_m;                     /* most that has come off a side since the hardening */
    double bow_m, over_m, corner_lift_m; /* plate, profile */
    double run_out_m;                    /* bar: total indicator reading */
    double ovality_m;                    /* ring: largest - smallest diameter */
    int crown;                           /* index into job faces of the high side, -1 = not said */
    const char *pointer;
} hs_measured_dimension;

typedef struct hs_measured {
    int stated;
    hs_measured_dimension dimension[HS_MAX_DIMENSIONS]; /* same order as job dimensions */
    double case_m;                                      /* 0 = not measured */
    double case_limit_HV;                               /* of a way that reads a hardness */
    hs_case_way case_way;
    int case_checked;         /* read again and so: not asked back */
    const char *case_pointer; /* of its depth; NULL or "" where it came from no sheet */
    int on_part;              /* 0: on the test piece */
    const char *case_by, *case_after;
    double hardness_low_HV, hardness_high_HV; /* 0 = not measured */
    hs_scale hardness_scale;                  /* the sheet's */
    int by_files;                             /* hardness by a set of files */
    const char *hardness_text, *hardness_by;
} hs_measured;

/** One quantity as the sheet had it and as it was understood. */
typedef struct hs_read {
    const char *pointer, *text;
    double value;
    const char *unit; /* SI unit or scale */
} hs_read;

typedef struct hs_job {
    const char *name;
    int inch_first;
    hs_part part;
    const hs_dimension *dimension;
    size_t dimensions;
    const hs_face *face;
    size_t faces;
    const hs_feature *feature;
    size_t features;
    const hs_step *step;
    size_t steps;
    hs_test_piece test_piece;
    hs_shop shop;
    hs_measured measured;
    const hs_read *read;
    size_t reads;
    unsigned long long hash; /* of the sheet's bytes, shop file included */
} hs_job;

#endif
