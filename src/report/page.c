#include "report/page.h"

#include "hardskin/units/hardness.h"
#include "report/wrap.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>

enum { PARAGRAPH_BYTES = 2048 };

void hs_page_say(hs_page *page, size_t indent, const char *format, ...) {
    char line[PARAGRAPH_BYTES];
    va_list args;
    va_start(args, format);
    int n = vsnprintf(line, sizeof line, format, args);
    va_end(args);
    if (n < 0 || n >= PARAGRAPH_BYTES) {
        page->text.overflow = 1;
        return;
    }
    hs_wrap_add(&page->text, indent, indent + 2, line);
}

void hs_page_heading(hs_page *page, const char *title) {
    hs_text_add(&page->text, "\n");
    hs_page_say(page, 0, "%s", title);
}

hs_words hs_page_size(const hs_page *page, double size_m, double size_in, hs_round direction) {
    hs_words out;
    char mm[48], inch[48];
    if (!hs_format_mm(mm, sizeof mm, size_m, 3, direction) ||
        !hs_format_number(inch, sizeof inch, size_in, 4, direction)) {
        snprintf(out.text, sizeof out.text, "not known");
        return out;
    }
    if (page->job->inch_first)
        snprintf(out.text, sizeof out.text, "%s in (%s)", inch, mm);
    else
        snprintf(out.text, sizeof out.text, "%s (%s in)", mm, inch);
    return out;
}

hs_words hs_page_length(const hs_page *page, double length_m, hs_round direction) {
    return hs_page_size(page, length_m, length_m / 0.0254, direction);
}

static hs_words in_own_unit(const hs_page *page, double length_m, int inch_decimals,
                            int mm_decimals, hs_round direction) {
    hs_words out;
    size_t n = page->job->inch_first
                   ? hs_format_inch(out.text, sizeof out.text, length_m, inch_decimals, direction)
                   : hs_format_mm(out.text, sizeof out.text, length_m, mm_decimals, direction);
    if (n == 0) snprintf(out.text, sizeof out.text, "not known");
    return out;
}

hs_words hs_page_coarse(const hs_page *page, double length_m, hs_round direction) {
    return in_own_unit(page, length_m, 2, 1, direction);
}

hs_words hs_page_short(const hs_page *page, double length_m, hs_round direction) {
    return in_own_unit(page, length_m, 4, 3, direction);
}

hs_words hs_page_sawn(const hs_page *page, double length_m) {
    hs_words out;
    const double noise = 1e-9, sixteenth_m = 0.0254 / 16;
    if (page->job->inch_first)
        hs_format_inch_fraction(out.text, sizeof out.text,
                                sixteenth_m * ceil(length_m / sixteenth_m - noise));
    else
        snprintf(out.text, sizeof out.text, "%.0f mm", ceil(length_m * 1e3 - noise));
    return out;
}

hs_words hs_page_nominal(const hs_page *page, double size_m) {
    hs_words out;
    if (page->job->inch_first)
        snprintf(out.text, sizeof out.text, "%.6g in", hs_round_to(size_m / 0.0254, 4, HS_NEAREST));
    else
        snprintf(out.text, sizeof out.text, "%.7g mm", hs_round_to(size_m * 1e3, 3, HS_NEAREST));
    return out;
}

hs_words hs_page_chance(double share, int at_least) {
    hs_words out;
    const double most = 0.9999; /* nothing is certain */
    if (share > most) {
        share = most;
        at_least = 1;
    }
    if (!isfinite(share))
        snprintf(out.text, sizeof out.text, "not known");
    else if (share < 0.001)
        snprintf(out.text, sizeof out.text, "less than 0.1 %%");
    else if (at_least) /* a bound: as near to 1 as it is proved */
        snprintf(out.text, sizeof out.text, "at least %.2f %%",
                 hs_round_to(100 * share, 2, HS_DOWN));
    else
        snprintf(out.text, sizeof out.text, "%.1f %%", hs_round_to(100 * share, 1, HS_DOWN));
    return out;
}

hs_words hs_page_hardness(double hardness_HV) {
    hs_words out;
    double HRC = hs_hardness_HRC_of_HV(hardness_HV);
    if (!isfinite(hardness_HV))
        snprintf(out.text, sizeof out.text, "not known");
    else if (isfinite(HRC))
        snprintf(out.text, sizeof out.text, "%.1f HRC (%.0f HV)", HRC, hardness_HV);
    else
        snprintf(out.text, sizeof out.text, "%.0f HV", hardness_HV);
    return out;
}
