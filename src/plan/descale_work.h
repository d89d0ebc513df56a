/* What the parts of a descaling plan share while it is made. Inside src/plan only. */
#ifndef HS_PLAN_DESCALE_WORK_H
#define HS_PLAN_DESCALE_WORK_H

#include "base/text.h"
#include "hardskin/model/bake.h"
#include "hardskin/model/bath.h"
#include "plan/descale.h"

/** One question to the hydrogen rule, and what it said. */
typedef struct hs_judged {
    hs_hydrogen_verdict rule;
    hs_clean verdict;
    int bake;    /* wanted and possible */
    int no_bake; /* wanted, not possible after this temper */
    hs_bake_plan plan;
} hs_judged;

/** How the route's next step serves as the bake. */
typedef enum hs_bake_step {
    HS_BAKE_ABSENT,
    HS_BAKE_TOO_COOL,
    HS_BAKE_TOO_SHORT,
    HS_BAKE_TOO_HOT, /* drives hydrogen out, but may draw the hardness */
    HS_BAKE_SERVES
} hs_bake_step;

typedef struct hs_descale_work {
    const hs_job *job;
    const hs_step *step;
    const hs_descale_at *at;
    double temper_K, temper_s; /* the last one; NaN none */
    int accepted;
    double area_m2;
    hs_judged judged;
    hs_bake_step next; /* the route's next step as the bake */
    int care;          /* room or bath is not what it should be */
    hs_text assumed, advice;
    hs_result_descale *out;
} hs_descale_work;

/** One side of descale.c each; they write into w->out, w->assumed and w->advice.
 *  Returns  HS_OK; HS_E_FORBIDDEN, HS_E_WORD for anode and acid; HS_E_RANGE for bath and acid. */
hs_status hs_descale_current(hs_descale_work *w, hs_error *err);
hs_status hs_descale_anodic(hs_descale_work *w, hs_error *err);
hs_status hs_descale_acid(hs_descale_work *w, hs_error *err);

/** A tank with nothing left unsaid; what had to be filled in is named in w->assumed. */
hs_tank hs_descale_filled(hs_descale_work *w);

/** What one setting of a tank gives. */
typedef struct hs_tank_run {
    double conductivity_S_m, bath_ohm;
    const char *geometry;
    double bath_amps_A, amps_A, volts_V, density_A_m2;
    double charge_Ah, time_s, time_low_s, time_high_s;
    int below_range;
} hs_tank_run;

/** What is to come off. */
hs_bath_soil hs_descale_soil(const hs_descale_work *w);

/** Is the anode of graphite or carbon? */
int hs_descale_graphite(const hs_tank *tank);

/** Run a tank for `area_m2` of the part in it. */
hs_status hs_descale_run(hs_tank_run *run, const hs_descale_work *w, const hs_tank *tank,
                         double area_m2, hs_error *err);

/** Hydrogen of the tank in its room, of one part and of the whole quantity; and how long that
 * takes. Reads amps, times and the room; a room too small or too still is care. */
hs_status hs_descale_air(hs_descale_work *w, const hs_tank *tank, hs_error *err);

/** Changes that raise a small current, each run again, the best first, into w->out->tank. */
void hs_descale_raise(hs_descale_work *w, const hs_tank *tank);

/** Least and most time of a way with all of its defaults (s). */
void hs_descale_usual_time(double *low_s, double *high_s, hs_descale_method by,
                           const hs_descale_work *w);

/** The words: the decision, the limits passed, the bake, the order in time. */
void hs_descale_say(hs_descale_work *w);
void hs_descale_say_order(hs_descale_work *w);

#endif
