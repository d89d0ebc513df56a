/* section: what a cross-section measures. */
#include "cli/quick_topics.h"
#include "hardskin/model/section.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { OUTLINE, HOLES };
enum { MOST_POINTS = 200, MOST_HOLES = 8 };

static const quick_key section_keys[] = {
    {"outline", QUICK_WORD, HS_NUMBER, NULL, 1, NULL},
    {"holes", QUICK_WORD, HS_NUMBER, NULL, 0, NULL},
};

typedef struct points {
    size_t n;
    hs_point at[MOST_POINTS];
} points;

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
static hs_status read_outline(points *all, hs_outline *outline, const char **text, hs_error *err) {
    size_t first = all->n;
    const char *c = *text;
    for (;;) {
        hs_point p;
        c += strspn(c, " \t\n");
        if (*c == '\0' || *c == ';') break;
        if (all->n == MOST_POINTS)
            return hs_fail(err, HS_E_TOO_LARGE, "", "more than %d corners", MOST_POINTS);
        int ok = read_mm(&p.x_m, &c) && *c == ',';
        if (ok) c++;
        if (!ok || !read_mm(&p.y_m, &c) || !strchr(" \t\n;", *c))
            return hs_fail(err, HS_E_NUMBER, "outline=\"0,0 60,0 60,20 0,20\", in mm",
                           "corner %zu cannot be read at \"%.20s\"", all->n - first + 1, c);
        all->at[all->n++] = p;
    }
    *outline = (hs_outline){&all->at[first], all->n - first};
    *text = c;
    return HS_OK;
}

static hs_status read_section(points *all, hs_outline holes[MOST_HOLES], hs_section *section,
                              const quick_value *v, hs_error *err) {
    const char *text = v[OUTLINE].text;
    hs_status status = read_outline(all, &section->outline, &text, err);
    if (status != HS_OK) return status;
    if (*text)
        return hs_fail(err, HS_E_NUMBER, "holes=\"...; ...\"",
                       "one outline only; holes have a key");
    text = v[HOLES].text;
    while (text && *text) {
        if (section->n_holes == MOST_HOLES)
            return hs_fail(err, HS_E_TOO_LARGE, "", "more than %d holes", MOST_HOLES);
        status = read_outline(all, &holes[section->n_holes++], &text, err);
        if (status != HS_OK) return status;
        if (*text == ';') text++;
    }
    section->holes = holes;
    return HS_OK;
}

static hs_status run_section(quick_answer *answer, const quick_value *v, const hs_units *units,
                             hs_error *err) {
    points all = {.n = 0};
    hs_outline holes[MOST_HOLES];
    hs_section section = {.n_holes = 0};
    hs_section_properties p;
    (void)units;
    hs_status status = read_section(&all, holes, &section, v, err);
    if (status == HS_OK) status = hs_section_measure(&p, &section, err);
    if (status != HS_OK) return status;
    quick_number(answer, "area_mm2", p.area_m2 * 1e6);
    quick_number(answer, "x_mm", p.x_m * 1e3);
    quick_number(answer, "y_mm", p.y_m * 1e3);
    quick_number(answer, "Ix_mm4", p.Ix_m4 * 1e12);
    quick_number(answer, "Iy_mm4", p.Iy_m4 * 1e12);
    quick_number(answer, "Ixy_mm4", p.Ixy_m4 * 1e12);
    quick_number(answer, "I1_mm4", p.I1_m4 * 1e12);
    quick_number(answer, "I2_mm4", p.I2_m4 * 1e12);
    quick_number(answer, "perimeter_mm", p.perimeter_m * 1e3);
    quick_number(answer, "cooling_size_mm", p.cooling_size_m * 1e3);
    quick_note(answer, "axis of I1 lies %.4g degrees from x; perimeter with the walls of holes",
               p.axis1_rad * 180 / acos(-1));
    return HS_OK;
}

const quick_topic quick_section = {
    "section",
    "area, centroid, second moments of a cross-section",
    section_keys,
    2,
    "area_mm2, x_mm, y_mm, Ix_mm4, Iy_mm4, Ixy_mm4, I1_mm4, I2_mm4, perimeter_mm, cooling_size_mm",
    "Green's theorem over the edges; moments about the centroid; cooling size = area / perimeter",
    "closed form",
    "computed",
    "an outline that does not cross or touch itself; holes inside it, apart from each other",
    run_section,
};
