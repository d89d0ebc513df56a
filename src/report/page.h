/* The page the text report is written on, and its words for lengths, shares and hardness. */
#ifndef HS_REPORT_PAGE_H
#define HS_REPORT_PAGE_H

#include "base/text.h"
#include "hardskin/plan/result.h"
#include "hardskin/units/format.h"

typedef struct hs_page {
    hs_text text;
    const hs_job *job;
    const hs_result *result;
} hs_page;

/** A length in both systems. */
typedef struct hs_words {
    char text[112];
} hs_words;

/** One paragraph, wrapped: `indent` columns before the first line, two more before later ones. */
void hs_page_say(hs_page *page, size_t indent, const char *format, ...) HS_PRINTF(3, 4);

/** An empty line and a heading. */
void hs_page_heading(hs_page *page, const char *title);

/** "0.330 mm (0.0130 in)", the other way round where the job is in inch; "not known" for NaN. */
hs_words hs_page_length(const hs_page *page, double length_m, hs_round direction);

/** As hs_page_length for a size that plan has rounded in each system by itself. */
hs_words hs_page_size(const hs_page *page, double size_m, double size_in, hs_round direction);

/** "2.7 mm" or "0.11 in": of what no rule reads finer. */
hs_words hs_page_coarse(const hs_page *page, double length_m, hs_round direction);

/** A length in the first system only: "0.330 mm". */
hs_words hs_page_short(const hs_page *page, double length_m, hs_round direction);

/** To saw to: up to the next millimetre or sixteenth of an inch, "167 mm", "4 1/4 in". */
hs_words hs_page_sawn(const hs_page *page, double length_m);

/** A nominal size in the first system, no idle zeros: "300 mm", "1.25 in". */
hs_words hs_page_nominal(const hs_page *page, double size_m);

/** A probability 0..1: "97.3 %", "at least 99.7 %"; never 0 % or 100 %. */
hs_words hs_page_chance(double share, int at_least);

/** "60.1 HRC (700 HV)", "420 HV" outside the table of conversion; "not known" for NaN. */
hs_words hs_page_hardness(double hardness_HV);

#endif
