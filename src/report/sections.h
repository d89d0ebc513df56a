/* The sections of the text report, one function each, in the order they are printed. */
#ifndef HS_REPORT_SECTIONS_H
#define HS_REPORT_SECTIONS_H

#include "report/page.h"

void hs_text_title(hs_page *page);    /* part and verdict; at stop: which, why, remedies */
void hs_text_measured(hs_page *page); /* nothing where nothing was measured */

/** Was anything measured on a part, so that its section is printed? */
int hs_text_at_bench(const hs_page *page);

/** The verdict of the bench in words: "GRIND", "DO NOT GRIND". */
const char *hs_text_wheel(hs_wheel verdict);

/** The case depth that was read, and what it says; nothing where none was. */
void hs_text_reading(hs_page *page);

void hs_text_rough(hs_page *page);    /* rough sizes, one line a dimension */
void hs_text_shape(hs_page *page);    /* shape limit and the bow to expect */
void hs_text_windows(hs_page *page);  /* drawn */
void hs_text_remedies(hs_page *page); /* of dimensions that are tight or stop */
void hs_text_case(hs_page *page);
void hs_text_outer_edge(hs_page *page);              /* lines of the case */
void hs_text_inner_edge(hs_page *page, size_t face); /* lines of a face in it */
void hs_text_sunk_corner(hs_page *page, size_t face);
void hs_text_need(hs_page *page); /* what need is made of */
void hs_text_doubts(hs_page *page);
void hs_text_route(hs_page *page);
void hs_text_buy(hs_page *page);
void hs_text_test_piece(hs_page *page);
void hs_text_grind(hs_page *page);
void hs_text_descale(hs_page *page);
void hs_text_cautions(hs_page *page);   /* before the steps they belong to */
void hs_text_fire(hs_page *page);       /* box, gas, carbon monoxide, oil */
void hs_text_scale(hs_page *page);      /* lines of the case: scale, also in holes and slots */
void hs_text_heats(hs_page *page);      /* appendix: scale and soft rim, heat by heat */
void hs_text_one_quench(hs_page *page); /* appendix: for drawing */
void hs_text_not_covered(hs_page *page);
void hs_text_appendix(hs_page *page);

/** Best remedies of a dimension, at most `most`. */
void hs_text_remedy_list(hs_page *page, const hs_remedy *remedy, size_t n, size_t most);

/** Figures of a dimension are half the sum over its faces: 2 where one face alone is ground and
 *  carries all of it, else 1; and "per side", or then "on top". */
double hs_text_carried(const hs_job *job, size_t dimension);
hs_words hs_text_side(const hs_job *job, size_t dimension);

/** Is a face of the dimension ground? */
int hs_text_is_ground(const hs_job *job, size_t dimension);

/** A verdict in words: "GO", "TIGHT", "STOP", "none". */
const char *hs_text_verdict(hs_verdict verdict);

#endif
