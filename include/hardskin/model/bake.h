/* Hydrogen in hard steel: what may be done at a step, and the bake after it. */
#ifndef HARDSKIN_MODEL_BAKE_H
#define HARDSKIN_MODEL_BAKE_H

#include "hardskin/base/status.h"

#include <stddef.h>

/** What a way of descaling does with hydrogen. */
typedef enum hs_hydrogen_way {
    HS_HYDROGEN_NO_SOURCE, /* brush, blast, flap disc */
    HS_HYDROGEN_ANODIC,    /* part on the POSITIVE lead: no hydrogen into the steel */
    HS_HYDROGEN_ACID,
    HS_HYDROGEN_CATHODIC /* part on the negative lead */
} hs_hydrogen_way;

typedef enum hs_hydrogen_answer {
    HS_HYDROGEN_ALLOWED,
    HS_HYDROGEN_WITH_BAKE, /* allowed with care: inhibited acid, short, then bake */
    HS_HYDROGEN_BARRED,    /* by default; only as a choice recorded in the job, with the bake */
    HS_HYDROGEN_NEVER
} hs_hydrogen_answer;

typedef enum hs_hydrogen_reason {
    HS_BECAUSE_NO_HYDROGEN,      /* the way brings none into the steel */
    HS_BECAUSE_SOFT,             /* below 31 HRC at this step */
    HS_BECAUSE_HARD,             /* 31 HRC and up, through-hard (ISO 9587, ISO 27831-1) */
    HS_BECAUSE_SURFACE_HARDENED, /* classed by the hardness of its layer (ISO 9587) */
    HS_BECAUSE_UNTEMPERED        /* as-quenched martensite */
} hs_hydrogen_reason;

typedef struct hs_hydrogen_verdict {
    hs_hydrogen_answer answer;
    hs_hydrogen_reason reason;
    int bake_after;
} hs_hydrogen_verdict;

/** May the part be descaled this way at this step?
 *
 *    out                             out
 *    hardness_HRC      double        in   of the hardest layer at this step; NaN = softer than the
 *                                         scale reads
 *    surface_hardened  int           in   1 after the quench of a carburised part
 *    tempered          int           in   1 if a temper followed the last quench
 *    way               the way       in
 *
 *  Returns  HS_OK; HS_E_IMPOSSIBLE for a hardness outside 0 to 70 HRC.
 *  Source   ISO 9587:2007, ISO 27831-1:2008 (tables/hydrogen.csv) */
HS_API hs_status hs_hydrogen_rule(hs_hydrogen_verdict *out, double hardness_HRC,
                                  int surface_hardened, int tempered, hs_hydrogen_way way,
                                  hs_error *err);

/** The reason in a sentence, for reports. */
HS_API const char *hs_hydrogen_text(hs_hydrogen_reason reason);

/** Is a published limit passed? Rows of tables/hydrogen_limits.csv; a limit in HV is compared by
 *  ASTM E140.
 *
 *    passed      int     out  1: the layer or core, whichever the row is about, is at or above it
 *    limit_HRC   double  out  the limit in HRC; may be NULL
 *    row                 in   below the table's rows
 *    layer_HRC, core_HRC double in  NaN = softer than the scale reads
 *
 *  Returns  HS_OK; HS_E_RANGE for a row that is none; HS_E_IMPOSSIBLE outside 0 to 70 HRC. */
HS_API hs_status hs_hydrogen_limit(int *passed, double *limit_HRC, size_t row, double layer_HRC,
                                   double core_HRC, hs_error *err);

typedef struct hs_bake_plan {
    int needed; /* 0: below 31 HRC and not surface-hardened; the rest is then 0 */
    double temp_K;
    double hold_s;         /* at least */
    double hold_high_s;    /* upper figure of the table, = hold_s if it has one only */
    double start_within_s; /* after leaving the tank; latest_s at most */
    double latest_s;
    int below_usual; /* temperature below the table's window: the temper does not allow more */
} hs_bake_plan;

/** Bake after a step that brings hydrogen. Baking does not guarantee freedom from it.
 *
 *  Temperature = the least of: the table's upper figure, last temper - 30 K, and the temperature
 *  at which the bake's time would soften as much as the temper did (Hollomon-Jaffe, c = 20).
 *
 *    out                       out
 *    hardness_HRC      double  in   through-hard: 0 to 51 HRC; NaN = soft
 *    surface_hardened  int     in   1: the hardness is not used
 *    temper_K          double  in   of the last temper, above 373.15 K
 *    temper_s          double  in   > 0
 *
 *  Returns  HS_OK; HS_E_RANGE when the bake would have to be below 130 C, or above 51 HRC;
 *           HS_E_IMPOSSIBLE for impossible inputs.
 *  Source   ASTM B850, ISO 9588 (tables/bake.csv) */
HS_API hs_status hs_bake(hs_bake_plan *out, double hardness_HRC, int surface_hardened,
                         double temper_K, double temper_s, hs_error *err);

/** Temperature (K) at which `hold_s` softens as much as `temper_s` at `temper_K` did:
 *  T (c + log10 t/h) equal on both sides. Times > 0. */
HS_API double hs_bake_equal_temper_K(double temper_K, double temper_s, double hold_s, double c);

#endif
