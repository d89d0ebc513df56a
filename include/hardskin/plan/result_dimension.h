/* The answer for one dimension: its window, the shape it bears, what would open it. Plain data;
 * result.h says how it is rounded. */
#ifndef HARDSKIN_PLAN_RESULT_DIMENSION_H
#define HARDSKIN_PLAN_RESULT_DIMENSION_H

#include <stddef.h>

enum { HS_MAX_TERMS = 12, HS_MAX_REMEDIES = 10, HS_MAX_SIDE_DRIVERS = 3 };

typedef enum hs_verdict { HS_NONE, HS_GO, HS_TIGHT, HS_STOP } hs_verdict;

/** One term of a sum, in words and metres. */
typedef struct hs_term {
    char term[64];
    double value_m;
} hs_term;

/** An uncertain input, and its share of a figure's doubt. */
typedef struct hs_driver {
    char name[64];
    double share_pct;
} hs_driver;

typedef struct hs_remedy {
    char what[128];     /* "longer soak: 14 h 30 min" */
    char text[400];     /* what it costs, in words */
    double gain_m;      /* by how much the rough sizes (or the shape allowed) open, per side */
    hs_verdict verdict; /* of this dimension after it */
} hs_remedy;

typedef struct hs_handbook {
    int present;
    double value_m; /* per side */
    char source[96];
    int governs; /* 1 if the table value would be used */
    char why[160];
} hs_handbook;

/** What one of the two faces of a dimension carries by itself. */
typedef struct hs_result_side {
    int ground;
    double need_m, may_m; /* of a face that is not ground: what fire and scale do to it */
    double stock_m;       /* its share at the aim, from mid finish; NaN at stop */
} hs_result_side;

/** The shape limit as a sum with the measured size H: V may be `times` the smaller of
 *  H - clean_from and case_to - H (inside sizes: clean_from - H and H - case_to). */
typedef struct hs_result_bench {
    int present;
    double clean_from_m, case_to_m, times;
    double most_m; /* V that one of the faces holds at most, whatever the size; INFINITY: any */
} hs_result_bench;

/** A plate that the magnetic chuck pulls flat: its bow comes back when it lets go. */
typedef struct hs_result_pulled {
    int present;
    double sprung_m, sprung_high_m; /* bow to expect: typical, 1 in 20 */
    double flatness_m;              /* asked; 0 none */
    char refused[200];              /* why it must not be held so; "" it may */
} hs_result_pulled;

typedef struct hs_result_dimension {
    hs_verdict verdict;
    int inside; /* bore or slot: the smaller size carries the more stock */
    double finish_low_m, finish_high_m;
    double need_m, may_m; /* per side; half the sum over the faces */
    double stock_m;       /* at the aim from mid finish, per side; NaN at stop */
    double rough_low_m, rough_aim_m, rough_high_m;    /* NaN at stop */
    double rough_low_in, rough_aim_in, rough_high_in; /* inch, rounded in inch to the safe side */
    double shape_m, shape_high_m;                     /* V to expect: typical, 1 in 20 */
    double shape_limit_m;                             /* NaN at stop */
    double shape_limit_middle_m; /* the same with the rough size at mid window; NaN at stop */
    hs_result_bench bench;       /* not present where it is pulled flat */
    hs_result_pulled pulled;
    hs_result_side side[2];
    int unequal;         /* both faces ground, and the stock split unequally between them */
    hs_verdict halved;   /* where unequal: what the verdict would be, were it split alike */
    double joint;        /* share of samples good at the aim, this dimension */
    double joint_middle; /* the same at the middle of the window */
    size_t terms;
    hs_term because[HS_MAX_TERMS];    /* adds up to need_m */
    size_t need_drivers, may_drivers; /* 0: nothing in it is in doubt, or nothing ends it */
    hs_driver need_driver[HS_MAX_SIDE_DRIVERS], may_driver[HS_MAX_SIDE_DRIVERS];
    hs_handbook handbook;
    size_t remedies;
    hs_remedy remedy[HS_MAX_REMEDIES];
    char note[480]; /* e.g. a face as hardened cannot hold a size */
} hs_result_dimension;

#endif
