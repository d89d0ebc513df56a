/* Lengths inside sentences that plan writes, in the unit of the sheet. */
#ifndef HS_PLAN_WORDS_H
#define HS_PLAN_WORDS_H

#include "hardskin/units/format.h"

/** A length as text, kept by value so that several fit into one sentence. */
typedef struct hs_word {
    char text[48];
} hs_word;

/** "0.460 mm" or "0.0181 in". */
hs_word hs_word_length(double length_m, int inch, hs_round direction);

/** Whole millimetres, or tenths of an inch: for places and lengths of patches. */
hs_word hs_word_about(double length_m, int inch);

/** "170 C" or "338 F". */
hs_word hs_word_temp(double temp_K, int inch);

#endif
