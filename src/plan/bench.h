/* The bench: what was measured of a part after hardening, and the sums that judge it. A measured
 * size already holds scale and growth, so both are zero here and every depth counts from the
 * hardened surface. Source: reference page on windows, section 5. */
#ifndef HS_PLAN_BENCH_H
#define HS_PLAN_BENCH_H

#include "plan/window.h"

/* Lengths of a few digits, summed, are equal to this. */
#define HS_BENCH_NOISE_M 1e-12

/** What the plan knows of a face, counted from the hardened surface (blank surface less scale). */
typedef struct hs_measured_face {
    double clean_up_m, clean_up_high_m; /* c: typical, bad side */
    double case_m, case_low_m;          /* case to the face's limit, as read or computed */
    double hard_to_m, hard_to_low_m;    /* deepest with the asked hardness; INFINITY: none asked */
    double soft_rim_m;                  /* 0 = none */
    double free_m; /* most that may come off where nothing is asked; 0: something is */
} hs_measured_face;

/** The part cased and hardened once more, from the case it has: what that would make of it. */
typedef struct hs_second {
    int present;
    double hold_s; /* of the second soak */
    double speed;  /* of its depths against the computed: as slow as the first was read to be */
    hs_measured_face face[HS_MAX_FACES];      /* from the surface after the second hardening */
    double lost_m, lost_high_m;               /* per side, as scale and in descaling */
    double growth_m[HS_MAX_DIMENSIONS];       /* per side, beyond what it has grown already */
    double growth_bound_m[HS_MAX_DIMENSIONS]; /* 95 %, either way */
    double shape_m[HS_MAX_DIMENSIONS], shape_high_m[HS_MAX_DIMENSIONS]; /* V of the new quench */
    char why[120]; /* not present: why not; "" it was not asked */
} hs_second;

/** From the plan, beside the job. Dimensions and faces in the job's order. */
typedef struct hs_measured_input {
    hs_measured_face face[HS_MAX_FACES];
    double split_m[HS_MAX_DIMENSIONS];      /* d */
    double shape_m[HS_MAX_DIMENSIONS];      /* V computed, for what was not measured and for */
    double shape_high_m[HS_MAX_DIMENSIONS]; /* what another hardening may bring */
    double sprung_m[HS_MAX_DIMENSIONS];     /* bow computed of what the chuck pulls flat, typical */
    double sprung_high_m[HS_MAX_DIMENSIONS]; /* and 1 in 20 */
    int case_read; /* the case of the faces is from a reading, not computed */
    hs_second second;
} hs_measured_input;

/** One dimension at the bench: in the middle of what was measured, and with all doubt against us.
 */
typedef struct hs_bench {
    int bore;
    hs_limits finish;
    hs_limits size[2];      /* [0] middle (low = high), [1] with doubt */
    double shape_m[2];      /* V */
    double bow_m[2];        /* that comes back where the chuck pulls it flat */
    double bow_most_m;      /* of it: flatness asked, what the chuck flattens; INFINITY: shimmed */
    hs_face_sum face[2][2]; /* [middle, doubt][face] */
    hs_shape_limits limit[2]; /* of V; filled by hs_bench_judge */
} hs_bench;

/** What was measured of a dimension, the bow taken off where it was read over it. */
double hs_bench_size(const hs_job *job, size_t dimension);

/** A dimension with a measured size as it lies there. */
void hs_bench_make(hs_bench *bench, const hs_job *job, size_t dimension,
                   const hs_measured_input *in);

/** The same part after a second casing, its finish as in `now`. */
void hs_bench_second(hs_bench *bench, const hs_bench *now, const hs_job *job, size_t dimension,
                     const hs_measured_input *in, const hs_second *second);

/** Does the case fall short of what is asked, in the middle? Of a judged bench. */
int hs_bench_too_deep(const hs_bench *bench);

/** grind: clean-up and case hold with the doubt against us; with care: at the middle; else no. */
hs_wheel hs_bench_judge(hs_bench *bench);

/** Limit of V for the case, as it is told: that of both faces together, or that of one face where
 * it is the narrowest of all. */
double hs_bench_deep(hs_shape_limits limit);

#endif
