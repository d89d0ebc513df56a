/* A current too small for its part: what could be changed, each run again. */
#include "plan/descale_work.h"

#include "constants.h"
#include "plan/words.h"

#include <math.h>

/* Keep what gains, sorted by density, then time. */
static void keep(hs_result_tank *tank, const hs_tank_remedy *r) {
    size_t at = tank->remedies;
    if (at == HS_MAX_TANK_REMEDIES) return;
    while (at > 0 && (tank->remedy[at - 1].density_A_m2 < r->density_A_m2 ||
                      (tank->remedy[at - 1].density_A_m2 == r->density_A_m2 &&
                       tank->remedy[at - 1].time_s > r->time_s))) {
        tank->remedy[at] = tank->remedy[at - 1];
        at--;
    }
    tank->remedy[at] = *r;
    tank->remedies++;
}

/* Run the changed tank with a share of the part in it; what gains less than a twentieth is none. */
static void attempt(hs_descale_work *w, const hs_tank *t, double share, const char *what) {
    hs_result_tank *tank = &w->out->tank;
    hs_tank_run run;
    hs_tank_remedy r = {.what = ""};
    if (hs_descale_run(&run, w, t, share * w->area_m2, NULL) != HS_OK) return;
    if (run.density_A_m2 < 1.05 * tank->density_A_m2) return;
    hs_text text = hs_text_start(r.what, sizeof r.what);
    hs_text_add(&text, "%s", what);
    r.amps_A = run.amps_A;
    r.density_A_m2 = run.density_A_m2;
    r.time_s = run.time_s / share;
    keep(tank, &r);
}

/* The next size of supply that gives the usual current; more volts where the bath would not pass it
 * else. */
static void bigger_supply(hs_descale_work *w, const hs_tank *base) {
    static const double volts_V[] = {HS_K_DESCALE_SUPPLY_VOLTS, HS_K_DESCALE_SUPPLY_VOLTS_MORE};
    double step = HS_K_DESCALE_SUPPLY_STEP, usual = w->out->tank.usual_amps_A;
    hs_tank t = *base;
    hs_tank_run run;
    char what[96];
    t.amps_A = fmax(base->amps_A, step * ceil(usual / step - 1e-9));
    for (size_t i = 0; i <= sizeof volts_V / sizeof *volts_V; i++) {
        if (hs_descale_run(&run, w, &t, w->area_m2, NULL) != HS_OK) return;
        if (run.bath_amps_A >= usual || i == sizeof volts_V / sizeof *volts_V) break;
        t.volts_V = fmax(t.volts_V, volts_V[i]);
    }
    hs_text text = hs_text_start(what, sizeof what);
    hs_text_add(&text, "a supply of %.0f V %.0f A, isolated", t.volts_V, t.amps_A);
    attempt(w, &t, 1, what);
}

void hs_descale_raise(hs_descale_work *w, const hs_tank *base) {
    hs_tank near = *base, soda = *base, anode = *base, warm = *base, all = *base;
    int inch = w->job->inch_first;
    char what[96];
    near.gap_m = fmax(HS_K_DESCALE_GAP_LEAST, base->gap_m / 2);
    soda.soda_kg_m3 = fmax(base->soda_kg_m3, HS_K_DESCALE_SODA_MORE);
    anode.anode_area_m2 = fmax(base->anode_area_m2, HS_K_DESCALE_ANODE_TIMES * w->area_m2);
    warm.temp_K = fmax(base->temp_K, HS_K_DESCALE_BATH_WARM);
    if (near.gap_m > base->gap_m) near.gap_m = base->gap_m;
    hs_text text = hs_text_start(what, sizeof what);
    hs_text_add(&text, "anode nearer, %s from the part, not touching",
                hs_word_about(near.gap_m, inch, HS_NEAREST).text);
    attempt(w, &near, 1, what);
    text = hs_text_start(what, sizeof what);
    hs_text_add(&text, "more soda, %.0f g/L", soda.soda_kg_m3);
    attempt(w, &soda, 1, what);
    text = hs_text_start(what, sizeof what);
    hs_text_add(&text, "larger anode, %.1f dm2, on both sides of the part",
                anode.anode_area_m2 * 100);
    attempt(w, &anode, 1, what);
    text = hs_text_start(what, sizeof what);
    hs_text_add(&text, "warmer bath, %s", hs_word_temp(warm.temp_K, inch).text);
    attempt(w, &warm, 1, what);
    bigger_supply(w, base);
    attempt(w, base, 0.5, "half of the part in the bath at a time");
    all.gap_m = near.gap_m;
    all.soda_kg_m3 = soda.soda_kg_m3;
    all.anode_area_m2 = anode.anode_area_m2;
    all.temp_K = warm.temp_K;
    attempt(w, &all, 1, "anode nearer and larger, more soda, warmer bath, all together");
}
