/* After hardening: what was measured replaces what was computed. A measured size already holds
 * scale and growth, so both are zero here and every depth counts from the hardened surface. */
#ifndef HS_PLAN_MEASURED_H
#define HS_PLAN_MEASURED_H

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

/** From the plan, beside the job. Dimensions and faces in the job's order. */
typedef struct hs_measured_input {
    hs_measured_face face[HS_MAX_FACES];
    double split_m[HS_MAX_DIMENSIONS];      /* d */
    double shape_m[HS_MAX_DIMENSIONS];      /* V computed, for what was not measured and for */
    double shape_high_m[HS_MAX_DIMENSIONS]; /* what another hardening may bring */
    double sprung_m[HS_MAX_DIMENSIONS];     /* bow computed of what the chuck pulls flat, typical */
    double sprung_high_m[HS_MAX_DIMENSIONS]; /* and 1 in 20 */
    int case_read; /* the case of the faces is from a reading, not computed */
    double lost_m; /* scale per side another casing and hardening would cost */
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

/** Ask back a size that leaves nothing to finish, or more a side than the whole case is deep.
 *    total_m   in   total case from the hardened surface, typical; 0 not known
 *  Returns  HS_OK; HS_E_DISAGREE, with the sheet's place, unless it was said to be checked. */
hs_status hs_measured_ask(const hs_job *job, double total_m, hs_error *err);

/** grind: clean-up and case hold with the doubt against us; with care: at the middle; else no. */
hs_wheel hs_bench_judge(hs_bench *bench);

/** Limit of V for the case, as it is told: that of both faces together, or that of one face where
 * it is the narrowest of all. */
double hs_bench_deep(hs_shape_limits limit);

/** Hardness alone, where no size was measured: too soft is no, anything else decides nothing. */
void hs_measured_soft(hs_result_measured_dimension *out, const hs_job *job, size_t dimension,
                      const hs_measured_input *in);

/** What would help, each judged again by hs_bench_judge; fills out->remedy. */
void hs_measured_remedies(hs_result_measured_dimension *out, const hs_bench *bench,
                          const hs_job *job, size_t dimension, const hs_measured_input *in);

/** Terms of the clean-up limit, STOP-IF lines, note; a surface that reads soft lowers the verdict.
 */
void hs_measured_say(hs_result_measured_dimension *out, const hs_bench *bench, const hs_job *job,
                     size_t dimension, const hs_measured_input *in);

/** The measured branch of a job, reference page on windows section 5.
 *
 *    out   out  whole; a dimension without a measured size or shape is not `present`, one without
 *               a size has the verdict none and a note
 *    job   in   job->measured stated
 *    in    in   see above
 *
 *  The verdict of the part is the worst of its dimensions. Limits rounded to the safe side. */
void hs_measured_judge(hs_result_measured *out, const hs_job *job, const hs_measured_input *in);

#endif
