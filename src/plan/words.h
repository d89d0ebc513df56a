/* Lengths and shapes inside sentences that plan writes, in the unit of the sheet. */
#ifndef HS_PLAN_WORDS_H
#define HS_PLAN_WORDS_H

#include "hardskin/plan/job.h"
#include "hardskin/units/format.h"

/** A length as text, kept by value so that several fit into one sentence. */
typedef struct hs_word {
    char text[48];
} hs_word;

/** "0.460 mm" or "0.0181 in". */
hs_word hs_word_length(double length_m, int inch, hs_round direction);

/** Whole millimetres, or tenths of an inch: for places and lengths of patches. */
hs_word hs_word_about(double length_m, int inch, hs_round direction);

/** "170 C" or "338 F". */
hs_word hs_word_temp(double temp_K, int inch);

/** Down to a whole degree of that unit (K). */
double hs_word_whole_degree_K(double temp_K, int inch);

/** "Ra 0.4 um" or "Ra 16 uin". */
hs_word hs_word_roughness(double ra_m, int inch);

/** A shape in the words of the bench, and what the instrument reads when V is `shape_m`: "the bow
 * and half the corner lift together are", "the run-out as held is", "the ovality ... is", "the ends
 * run out"; to be followed by "more than ...". */
const char *hs_word_shape(double *reading_m, const hs_job *job, size_t dimension, double shape_m);

#endif
