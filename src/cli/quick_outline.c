#include "cli/quick_outline.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* One bare number in mm, `text` moved behind it. strtod also reads words and hexadecimals: those
 * are no drawing's numbers. */
static int read_mm(double *value_m, const char **text) {
    char *end = NULL;
    if (!strchr("+-.0123456789", **text) || !**text) return 0;
    double value = strtod(*text, &end);
    for (const char *c = *text; c < end; c++)
        if (!strchr("+-.0123456789eE", *c)) return 0;
    if (end == *text || !isfinite(value)) return 0;
    *value_m = value * 1e-3;
    *text = end;
    return 1;
}

/* "x,y x,y ..." up to a ';' or the end. */
static hs_status read_loop(quick_outline *all, hs_outline *loop, const char **text, hs_error *err) {
    size_t first = all->n;
    const char *c = *text;
    for (;;) {
        hs_point p;
        c += strspn(c, " \t\n");
        if (*c == '\0' || *c == ';') break;
        if (all->n == QUICK_CORNERS)
            return hs_fail(err, HS_E_TOO_LARGE, "", "more than %d corners", QUICK_CORNERS);
        int ok = read_mm(&p.x_m, &c) && *c == ',';
        if (ok) c++;
        if (!ok || !read_mm(&p.y_m, &c) || !strchr(" \t\n;", *c))
            return hs_fail(err, HS_E_NUMBER, "outline=\"0,0 60,0 60,20 0,20\", in mm",
                           "corner %zu cannot be read at \"%.20s\"", all->n - first + 1, c);
        all->at[all->n++] = p;
    }
    *loop = (hs_outline){&all->at[first], all->n - first};
    *text = c;
    return HS_OK;
}

hs_status quick_outline_read(quick_outline *out, const char *outline, const char *holes,
                             hs_error *err) {
    out->n = 0;
    out->section = (hs_section){.holes = out->hole};
    const char *text = outline;
    hs_status status = read_loop(out, &out->section.outline, &text, err);
    if (status != HS_OK) return status;
    if (*text)
        return hs_fail(err, HS_E_NUMBER, "holes=\"...; ...\"",
                       "one outline only; holes have a key");
    for (text = holes; text && *text; text += *text == ';') {
        if (out->section.n_holes == QUICK_HOLES)
            return hs_fail(err, HS_E_TOO_LARGE, "", "more than %d holes", QUICK_HOLES);
        status = read_loop(out, &out->hole[out->section.n_holes++], &text, err);
        if (status != HS_OK) return status;
    }
    return HS_OK;
}
