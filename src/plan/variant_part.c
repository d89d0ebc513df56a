/* Changes of the part, its drawing and its rough machining; variant.c has those of fire and quench.
 */
#include "plan/variant_part.h"

#include "base/text.h"
#include "constants.h"
#include "plan/chain.h"
#include "plan/words.h"

#include <math.h>
#include <stdio.h>

int hs_variant_remade_centres(hs_variant *v, int size) {
    (void)size;
    if (v->job.part.form != HS_BAR || v->job.part.held != HS_OLD_CENTRES) return 0;
    v->job.part.held = HS_REMADE_CENTRES;
    snprintf(v->what, sizeof v->what, "remake the centres after hardening");
    snprintf(v->text, sizeof v->text,
             "grind the centres anew to halve the run-out; keep the ends soft or lap them");
    return 1;
}

/* To half of what is wanted at most: less is another drawing. */
int hs_variant_less_case(hs_variant *v, int size) {
    static const double less_m[] = {0.1e-3, 0.2e-3, 0.3e-3, 0.4e-3}, least_share = 0.5;
    double most_m = 0, was_m = 0;
    int alike = 1, more = 0; /* more than the size before took off? */
    for (size_t i = 0; i < v->job.faces; i++) {
        if (v->face[i].case_m <= 0) continue;
        alike &= was_m == 0 || fabs(v->face[i].case_m - was_m) < 1e-9;
        was_m = v->face[i].case_m;
        double least_m = least_share * was_m;
        more |= size == 0 || was_m - less_m[size - 1] > least_m;
        v->face[i].case_m = fmax(least_m, was_m - less_m[size]);
        most_m = fmax(most_m, v->face[i].case_m);
    }
    if (most_m == 0 || !more) return 0;
    hs_text what = hs_text_start(v->what, sizeof v->what);
    if (alike)
        hs_text_add(&what, "less case wanted: %s, not %s",
                    hs_word_length(most_m, v->job.inch_first, HS_DOWN).text,
                    hs_word_length(was_m, v->job.inch_first, HS_NEAREST).text);
    else
        hs_text_add(&what, "less case wanted: by %s, no face less than half of its own",
                    hs_word_length(less_m[size], v->job.inch_first, HS_UP).text);
    snprintf(v->text, sizeof v->text, "the drawing must allow it: ask whoever owns it");
    return 1;
}

int hs_variant_narrower_tolerance(hs_variant *v, int size) {
    static const double shares[] = {0.6, 0.4, 0.2};
    v->job.shop.rough_tolerance_m *= shares[size];
    if (v->job.shop.rough_tolerance_m < 0.01e-3) return 0;
    snprintf(v->what, sizeof v->what, "rough-machine to +-%s",
             hs_word_length(v->job.shop.rough_tolerance_m, v->job.inch_first, HS_DOWN).text);
    snprintf(v->text, sizeof v->text, "finer cut before the fire: grind or fine mill the blank");
    return 1;
}

int hs_variant_stress_relief(hs_variant *v, int size) {
    (void)size;
    if (v->job.part.condition == HS_STRESS_RELIEVED) return 0;
    for (size_t i = 0; i < v->job.steps; i++)
        if (v->step[i].kind == HS_STRESS_RELIEVE) return 0;
    v->job.part.condition = HS_STRESS_RELIEVED;
    snprintf(v->what, sizeof v->what, "stress relieve before the last cut");
    snprintf(v->text, sizeof v->text,
             "rough to %s over, %s for an hour per %s, cool slowly, machine again",
             v->job.inch_first ? "1/16 in" : "1 to 2 mm",
             v->job.inch_first ? "1110 to 1200 F" : "600 to 650 C",
             v->job.inch_first ? "inch" : "25 mm");
    return 1;
}

/* Less of the finished tolerance, at the end where the wheel takes less. */
int hs_variant_finish_end(hs_variant *v, int size) {
    static const double kept[] = {0.5, 0.25};
    const double fine_m = 5e-6; /* nobody grinds to less on purpose */
    int changed = 0;
    for (size_t i = 0; i < v->job.dimensions; i++) {
        hs_size *s = &v->dimension[i].size;
        double room_m = (s->upper_m - s->lower_m) * kept[size];
        if (room_m < fine_m) continue;
        if (hs_dimension_inside(&v->job, &v->dimension[i]))
            s->upper_m = s->lower_m + room_m;
        else
            s->lower_m = s->upper_m - room_m;
        changed = 1;
    }
    const char *part = size == 0 ? "half" : "quarter";
    snprintf(v->what, sizeof v->what, "finish in the fuller %s", part);
    snprintf(v->text, sizeof v->text,
             "outside sizes in the upper %s of the tolerance, bores and slots in the lower: slower "
             "grinding",
             part);
    return changed;
}

/* A ground face of which neither case nor hardness is asked needs no carbon. */
int hs_variant_mask(hs_variant *v, int size) {
    char name[40] = "";
    (void)size;
    for (size_t i = 0; i < v->job.faces; i++) {
        if (v->face[i].finish != HS_GROUND || hs_face_asks(&v->face[i])) continue;
        v->face[i].finish = HS_SOFT;
        if (!name[0]) snprintf(name, sizeof name, "%s", v->face[i].name);
    }
    if (!name[0]) return 0;
    snprintf(v->what, sizeof v->what, "mask face %s, machine it after the fire", name);
    snprintf(v->text, sizeof v->text,
             "copper, clay or stop-off paste; a case on one side bends the part, reckoned in");
    return 1;
}

int hs_variant_shim(hs_variant *v, int size) {
    (void)size;
    if (v->job.part.held != HS_PULLED_FLAT) return 0;
    v->job.part.held = (hs_held)0;
    snprintf(v->what, sizeof v->what, "shim the hollow, do not pull it flat");
    snprintf(v->text, sizeof v->text,
             "crown up, packed underneath, held by stops: the wheel takes the bow away for good, "
             "and more stock");
    return 1;
}

/* Only where a flatness asked may allow the bow that comes back. */
int hs_variant_pull_flat(hs_variant *v, int size) {
    int allowed = 0;
    (void)size;
    if (v->job.part.form != HS_PLATE && v->job.part.form != HS_PROFILE) return 0;
    if (v->job.part.held == HS_PULLED_FLAT) return 0;
    for (size_t i = 0; i < v->job.faces; i++)
        allowed |= v->face[i].finish == HS_GROUND && v->face[i].flatness_m > 0;
    if (!allowed) return 0;
    v->job.part.held = HS_PULLED_FLAT;
    snprintf(v->what, sizeof v->what, "let the chuck pull it flat");
    snprintf(v->text, sizeof v->text,
             "the bow comes back when the chuck lets go, within the flatness asked");
    return 1;
}

static int is_soft(const hs_job *job, size_t edge) {
    for (size_t i = 0; i < job->faces; i++)
        if (job->face[i].edge == edge) return job->face[i].finish == HS_SOFT;
    return 0;
}

/* An inner corner at either end of an edge, with no mask beyond it. */
static int has_inner_corner(const hs_job *job, size_t edge) {
    const double half_turn = 3.14159265358979324, straight = 1e-6;
    size_t n = job->part.section.outline.n;
    const size_t vertex[2] = {edge, edge % n + 1},
                 beyond[2] = {(edge + n - 2) % n + 1, edge % n + 1};
    for (int k = 0; k < 2; k++) {
        double corner;
        if (hs_section_corner(&corner, &job->part.section, vertex[k], NULL) == HS_OK &&
            corner > half_turn + straight && !is_soft(job, beyond[k]))
            return 1;
    }
    return 0;
}

int hs_variant_relief(hs_variant *v, int size) {
    (void)size;
    for (size_t i = 0; i < v->job.faces; i++) {
        hs_face *face = &v->face[i];
        if (face->finish != HS_GROUND || face->edge == 0 || !hs_face_asks(face)) continue;
        if (!has_inner_corner(&v->job, face->edge)) continue;
        face->relieved = 1;
        v->relief = 1;
    }
    snprintf(v->what, sizeof v->what, "relieve the inner corners");
    snprintf(v->text, sizeof v->text, "cut a groove into them before the fire");
    return v->relief;
}
