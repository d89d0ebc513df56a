#include "plan/handbook.h"

#include "base/text.h"
#include "constants.h"
#include "hardskin/tables/table.h"
#include "plan/warp.h"
#include "plan/words.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Sizes like 30 mm come from inches or sums: a hair above a row's end still belongs to it. */
static const double HAIR_MM = 1e-6;

/* Columns are named by the length (or width) they reach to: "to_250". */
static double in_columns(const hs_table *table, size_t row, double reach_mm) {
    for (size_t c = 0; c < table->columns; c++) {
        if (strncmp(table->column[c].name, "to_", 3)) continue;
        if (reach_mm <= strtod(table->column[c].name + 3, NULL) + HAIR_MM)
            return hs_table_number(table, row, c);
    }
    return NAN;
}

double hs_handbook_round_m(double diameter_m, double length_m) {
    const hs_table *table = hs_table_get(HS_TABLE_ALLOWANCE_ROUND);
    for (size_t row = 0; row < table->rows; row++)
        if (diameter_m * 1e3 <= hs_table_number(table, row, HS_ALLOWANCE_ROUND_UPTO) + HAIR_MM)
            return in_columns(table, row, length_m * 1e3) / 2 * 1e-3;
    return NAN;
}

double hs_handbook_plane_m(double width_m, double length_m, int indicated) {
    const hs_table *table = hs_table_get(HS_TABLE_ALLOWANCE_PLANE);
    const char *set = indicated ? "indicated" : "not indicated";
    for (size_t row = 0; row < table->rows; row++) {
        if (strcmp(hs_table_text(table, row, HS_ALLOWANCE_PLANE_SET), set)) continue;
        if (length_m * 1e3 > hs_table_number(table, row, HS_ALLOWANCE_PLANE_UPTO) + HAIR_MM)
            continue;
        double hardened = hs_table_number(table, row, HS_ALLOWANCE_PLANE_HARDENED);
        return in_columns(table, row, width_m * 1e3) * hardened * 1e-3;
    }
    return NAN;
}

/* Width of the ground face of a plate; a profile's face is one edge of its outline. */
static double width_of(const hs_job *job, const hs_face *face) {
    const hs_part *p = &job->part;
    if (p->form == HS_PLATE) {
        int flat = !strcmp(face->name, "top") || !strcmp(face->name, "bottom");
        return flat ? p->width_m : p->thickness_m;
    }
    const hs_outline *o = &p->section.outline;
    if (p->form != HS_PROFILE || face->edge == 0 || face->edge > o->n) return NAN;
    size_t a = face->edge - 1, b = face->edge % o->n;
    return hypot(o->point[b].x_m - o->point[a].x_m, o->point[b].y_m - o->point[a].y_m);
}

static double value_of(hs_text *source, const hs_job *job, const hs_dimension *d) {
    const hs_part *p = &job->part;
    if (d->across == HS_ACROSS_OUTSIDE && p->form == HS_BAR) {
        hs_text_add(source, "shafts between centres, hardened, by diameter and length (memory)");
        return hs_handbook_round_m(d->size.nominal_m, p->length_m);
    }
    if (d->across != HS_ACROSS_FACES) return NAN;
    const hs_face *face = &job->face[d->face[0]];
    int end = p->form == HS_PLATE && (!strcmp(face->name, "left") || !strcmp(face->name, "right"));
    double long_m = end ? p->width_m : p->length_m, wide_m = width_of(job, face);
    if (isnan(wide_m)) return NAN; /* fmin would pass over it */
    hs_text_add(source, "planes not indicated, x 1.2 for heat-treated parts (memory)");
    return hs_handbook_plane_m(fmin(wide_m, long_m), fmax(wide_m, long_m), 0);
}

/* Case asked, and the share of it a table's allowance would take on the worse face. */
static int case_asked(double *share_pct, const hs_job *job, const hs_result *result,
                      const hs_dimension *d, double value_m) {
    int asked = 0;
    *share_pct = 0;
    for (int k = 0; k < 2; k++) {
        const hs_face *face = &job->face[d->face[k]];
        if (face->finish != HS_GROUND) continue;
        asked = asked || face->case_m > 0 || face->hardness_HV > 0;
    }
    if (result->hard.present && result->hard.depth_m > 0)
        *share_pct = 100 * value_m / result->hard.depth_m;
    return asked;
}

/* need_m, may_m: of one ground face. */
static void judge(hs_handbook *out, const hs_job *job, hs_verdict verdict, double need_m,
                  double may_m, double share_pct, int asked) {
    int inch = job->inch_first;
    hs_text why = hs_text_start(out->why, sizeof out->why);
    double v = out->value_m;
    if (verdict == HS_STOP)
        hs_text_add(&why, "computed governs: the window is shut, the table knows no case");
    else if (v < need_m)
        hs_text_add(&why, "computed governs: the table's value is %s short of cleaning up",
                    hs_word_length(need_m - v, inch, HS_UP).text);
    else if (asked && v > may_m)
        hs_text_add(&why, "computed governs: the table's value cuts %s too deep for this thin case",
                    hs_word_length(v - may_m, inch, HS_UP).text);
    else if (asked)
        hs_text_add(&why, "computed governs: both fit, but the table knows neither case nor bow");
    else
        hs_text_add(&why, "table governs: no case is asked, and more stock only costs grinding");
    if (asked && v > may_m && share_pct > 0)
        hs_text_add(&why, " (%.0f %% of it)", fmin(share_pct, 999));
    out->governs = verdict != HS_STOP && !asked && v >= need_m;
}

void hs_handbook_compare(hs_handbook *out, const hs_job *job, const hs_result *result,
                         size_t dimension) {
    const hs_dimension *d = &job->dimension[dimension];
    const hs_result_dimension *r = &result->dimension[dimension];
    memset(out, 0, sizeof *out);
    hs_text source = hs_text_start(out->source, sizeof out->source);
    double value_m = value_of(&source, job, d), share_pct;
    if (!hs_dimension_ground(job, dimension) || r->verdict == HS_NONE || !isfinite(value_m)) {
        out->source[0] = '\0';
        return;
    }
    out->present = 1;
    out->value_m = value_m;
    int asked = case_asked(&share_pct, job, result, d, value_m);
    int one =
        (job->face[d->face[0]].finish == HS_GROUND) != (job->face[d->face[1]].finish == HS_GROUND);
    double all = one ? 2 : 1; /* the one ground face carries what is told as half the sum */
    judge(out, job, r->verdict, all * r->need_m, all * r->may_m, share_pct, asked);
}
