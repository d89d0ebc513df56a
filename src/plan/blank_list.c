#include "plan/blank_list.h"

#include "constants.h"
#include "hardskin/tables/table.h"
#include "plan/blank.h"

#include <math.h>
#include <string.h>

/* stock_en and stock_inch have the same columns; their sizes differ in unit. */
_Static_assert((int)HS_STOCK_EN_SIZE == (int)HS_STOCK_INCH_SIZE &&
                   (int)HS_STOCK_EN_UNDER == (int)HS_STOCK_INCH_UNDER &&
                   (int)HS_STOCK_EN_KIND == (int)HS_STOCK_INCH_KIND &&
                   (int)HS_STOCK_EN_SIDE == (int)HS_STOCK_INCH_SIDE,
               "the two stock tables have the same columns");

static const double INCH_m = 0.0254, MM_m = 1e-3, MM2_m2 = 1e-6;

static const hs_table *sizes_of(int inch) {
    return hs_table_get(inch ? HS_TABLE_STOCK_INCH : HS_TABLE_STOCK_EN);
}

static const hs_table *forms(void) {
    return hs_table_get(HS_TABLE_STOCK_FORMS);
}

static const char *form_text(size_t row, size_t column) {
    return hs_table_text(forms(), row, column);
}

double hs_blank_skin_m(double size_m) {
    const hs_table *t = hs_table_get(HS_TABLE_ROLLED_SKIN);
    for (size_t row = 0; row < t->rows; row++)
        if (size_m <= hs_table_number(t, row, HS_ROLLED_SKIN_SIZE) * INCH_m * (1 + 1e-9))
            return hs_table_number(t, row, HS_ROLLED_SKIN_SKIN) * INCH_m;
    return NAN;
}

static int is_row(const hs_table *t, size_t row, const char *kind, const char *side) {
    return !strcmp(hs_table_text(t, row, HS_STOCK_EN_KIND), kind) &&
           !strcmp(hs_table_text(t, row, HS_STOCK_EN_SIDE), side);
}

/* Straightness of a kind at a section: its last row that the section reaches. */
static double bow_of(const char *kind, double section_m2, double length_m) {
    double mm_m = NAN;
    for (size_t row = 0; row < forms()->rows; row++)
        if (!strcmp(form_text(row, HS_STOCK_FORMS_KIND), kind) &&
            section_m2 >= hs_table_number(forms(), row, HS_STOCK_FORMS_SECTION_FROM) * MM2_m2)
            mm_m = hs_table_number(forms(), row, HS_STOCK_FORMS_STRAIGHTNESS);
    return mm_m * 1e-3 * length_m;
}

static int holds(const hs_bar *bar, const hs_bar_asked *asked) {
    double lost_m = bar->bow_m + 2 * bar->skin_m; /* NaN beyond the skin's table: holds nothing */
    return bar->width_m - bar->under_width_m - lost_m >= asked->width_m &&
           bar->thickness_m - bar->under_thickness_m - lost_m >= asked->thickness_m;
}

/* Complete a bar from the rows of its two sides and keep it when it is the least so far. */
static void try_bar(hs_bar *best, const hs_bar_asked *asked, size_t form, size_t w, size_t t) {
    const hs_table *list = sizes_of(asked->inch);
    double unit_m = asked->inch ? INCH_m : MM_m;
    hs_bar bar = {.form = form_text(form, HS_STOCK_FORMS_FORM),
                  .standard = form_text(form, HS_STOCK_FORMS_STANDARD),
                  .width_m = hs_table_number(list, w, HS_STOCK_EN_SIZE) * unit_m,
                  .thickness_m = hs_table_number(list, t, HS_STOCK_EN_SIZE) * unit_m,
                  .under_width_m = hs_table_number(list, w, HS_STOCK_EN_UNDER) * unit_m,
                  .under_thickness_m = hs_table_number(list, t, HS_STOCK_EN_UNDER) * unit_m,
                  .found = 1};
    if (w != t && bar.width_m <= bar.thickness_m) return; /* no flat: on edge, or a square */
    if (best->found && bar.width_m * bar.thickness_m >= best->width_m * best->thickness_m) return;
    bar.skin_m = asked->bright ? 0 : hs_blank_skin_m(bar.thickness_m);
    bar.bow_m = bow_of(form_text(form, HS_STOCK_FORMS_KIND), bar.width_m * bar.thickness_m,
                       asked->length_m);
    if (holds(&bar, asked)) *best = bar;
}

static void try_kind(hs_bar *best, const hs_bar_asked *asked, size_t form) {
    const hs_table *list = sizes_of(asked->inch);
    const char *kind = form_text(form, HS_STOCK_FORMS_KIND);
    for (size_t w = 0; w < list->rows; w++) {
        if (is_row(list, w, kind, "size")) try_bar(best, asked, form, w, w);
        if (!is_row(list, w, kind, "width")) continue;
        for (size_t t = 0; t < list->rows; t++)
            if (is_row(list, t, kind, "thickness")) try_bar(best, asked, form, w, t);
    }
}

/* Is this row of the forms one to look at: system, finish, form; the first row of its kind. */
static int wanted(size_t row, const hs_bar_asked *asked, int round) {
    int inch = !strcmp(form_text(row, HS_STOCK_FORMS_SYSTEM), "inch");
    int bright = hs_table_number(forms(), row, HS_STOCK_FORMS_BRIGHT) > 0;
    int is_round = !strcmp(form_text(row, HS_STOCK_FORMS_FORM), "round");
    int first = hs_table_number(forms(), row, HS_STOCK_FORMS_SECTION_FROM) <= 0;
    return first && inch == (asked->inch != 0) && bright == (asked->bright != 0) &&
           is_round == (round != 0);
}

void hs_bar_choose(hs_bar *out, const hs_bar_asked *asked, int round) {
    *out = (hs_bar){0};
    for (size_t row = 0; row < forms()->rows; row++)
        if (wanted(row, asked, round)) try_kind(out, asked, row);
}

void hs_bar_largest(double *width_m, double *thickness_m, const hs_bar_asked *asked, int round) {
    const hs_table *list = sizes_of(asked->inch);
    double unit_m = asked->inch ? INCH_m : MM_m;
    *width_m = *thickness_m = 0;
    for (size_t form = 0; form < forms()->rows; form++) {
        if (!wanted(form, asked, round)) continue;
        const char *kind = form_text(form, HS_STOCK_FORMS_KIND);
        for (size_t row = 0; row < list->rows; row++) {
            double size_m = hs_table_number(list, row, HS_STOCK_EN_SIZE) * unit_m;
            if (is_row(list, row, kind, "width") || is_row(list, row, kind, "size"))
                *width_m = fmax(*width_m, size_m);
            if (is_row(list, row, kind, "thickness") || is_row(list, row, kind, "size"))
                *thickness_m = fmax(*thickness_m, size_m);
        }
    }
}
