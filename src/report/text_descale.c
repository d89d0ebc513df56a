/* The descaling plan: decision, current and time, air, acid, hydrogen, the order in time. */
#include "report/sections.h"

#include <math.h>
#include <stdio.h>

static const char *decision(hs_clean verdict) {
    static const char *const words[] = {"no decision", "OK", "WITH CARE", "STOP: do not do it"};
    return words[verdict];
}

static const char *time_words(char out[48], double time_s, hs_round direction) {
    return hs_format_time(out, 48, time_s, direction) ? out : "not known";
}

static void time_line(hs_page *page, const hs_result_descale *d) {
    char low[48], mid[48], high[48];
    const double hour_s = 3600;
    if (!(d->time_s > 0)) return;
    const char *look = "look in between";
    if (d->tank.present || d->acid.present)
        look = d->time_high_s < hour_s ? "look every few minutes, stop when it is clean"
                                       : "look and brush every half hour, stop when it is clean";
    hs_page_say(page, 2, "time: %s (%s to %s); %s", time_words(mid, d->time_s, HS_NEAREST),
                time_words(low, d->time_low_s, HS_DOWN), time_words(high, d->time_high_s, HS_UP),
                look);
}

static void remedy_lines(hs_page *page, const hs_result_tank *t) {
    char time[48];
    for (size_t i = 0; i < t->remedies; i++) {
        const hs_tank_remedy *r = &t->remedy[i];
        hs_page_say(page, 4, "- %s: %.1f A, %.2f A/dm2, %s", r->what, r->amps_A,
                    r->density_A_m2 / 100, time_words(time, r->time_s, HS_NEAREST));
    }
}

static void current_lines(hs_page *page, const hs_result_descale *d) {
    const hs_result_tank *t = &d->tank;
    hs_page_say(page, 2, "current %.1f A at %.1f V on %.1f dm2 = %.2f A/dm2%s; charge %.1f Ah",
                d->amps_A, d->volts_V, d->area_m2 * 100, t->density_A_m2 / 100,
                t->below_practice ? " (below the usual 1 to 10: it lifts little)" : "",
                d->charge_Ah);
    hs_page_say(page, 2, "%s (bath %.2f ohm, %s)", t->limited, t->bath_ohm, t->geometry);
    if (t->above_practice)
        hs_page_say(page, 2,
                    "Untouched, the supply would drive more than the usual 10 A/dm2: set it, or "
                    "move the anode away.");
    if (t->below_practice) {
        hs_page_say(page, 2, "More current, each of these alone run again, the best first:");
        remedy_lines(page, t);
    }
}

static void batch_line(hs_page *page, const hs_result_descale *d) {
    const hs_result_tank *t = &d->tank;
    char one[48], all[48];
    if (!(t->batch_s > 0)) return;
    hs_page_say(page, 2, "%zu parts: one after the other %s; all in the tub at once %.2f A/dm2, %s",
                page->job->part.quantity, time_words(one, t->batch_s, HS_NEAREST),
                t->together_A_m2 / 100, time_words(all, t->together_s, HS_NEAREST));
}

static void bath_lines(hs_page *page, const hs_result_descale *d) {
    const hs_result_tank *t = &d->tank;
    char time[48];
    hs_page_say(page, 2,
                "bath of %.3g L at %.3g g/L: %.0f g of soda anhydrous, or %.0f g monohydrate, or "
                "%.0f g washing soda crystals, or %.0f g bicarbonate baked through before weighing "
                "it in",
                t->volume_m3 * 1e3, t->soda_kg_m3, t->soda_kg[0] * 1e3, t->soda_kg[1] * 1e3,
                t->soda_kg[2] * 1e3, t->soda_kg[3] * 1e3);
    hs_page_say(page, 2, "it warms by %.1f K/h and loses %.0f g of water to the current%s%s",
                t->heating_K_s * 3600, t->water_kg * 1e3,
                isfinite(t->hot_s) ? "; let it cool when it passes 50 C, after " : "",
                isfinite(t->hot_s) ? time_words(time, t->hot_s, HS_DOWN) : "");
    if (isfinite(t->boils_s))
        hs_page_say(page, 2, "left alone it boils after %s: a larger tub, or less current",
                    time_words(time, t->boils_s, HS_DOWN));
    if (t->cable_mm2 > 0)
        hs_page_say(page, 2,
                    "leads of %.3g mm2 copper or more, for all the supply gives; a charger that "
                    "looks for a battery may not start on a tub",
                    t->cable_mm2);
    else
        hs_page_say(page, 2, "leads: more current than the table of leads has: ask an electrician");
    if (t->anode_jobs > 0)
        hs_page_say(page, 2,
                    "anode: %.0f g of iron lost at most; half of a 3 mm sheet is gone after %.0f "
                    "such parts",
                    t->anode_kg * 1e3, t->anode_jobs);
    else if (t->anode_kg > 0)
        hs_page_say(page, 2,
                    "anode: %.0f g of iron lost at most, more than half of a 3 mm sheet: take a "
                    "larger or thicker one",
                    t->anode_kg * 1e3);
}

/* Rounded up, to two decimals or more where little is. */
static hs_words per_cent(double value) {
    hs_words out;
    int places = value < 0.1 ? 4 : 2;
    snprintf(out.text, sizeof out.text, "%.*f %%", places, hs_round_to(value, places, HS_UP));
    return out;
}

static void room_line(hs_page *page, const hs_result_descale *d) {
    char hour[48] = "", all[96] = "";
    hs_text after = hs_text_start(hour, sizeof hour), done = hs_text_start(all, sizeof all);
    if (!(d->room_pct > 0)) return;
    if (d->time_high_s > 3600)
        hs_text_add(&after, "%s after 1 h, ", per_cent(d->air.hour_pct).text);
    if (d->air.all_pct > 0)
        hs_text_add(&done, " of one part, %s when all %zu are done", per_cent(d->air.all_pct).text,
                    page->job->part.quantity);
    hs_page_say(page, 2,
                "hydrogen in the room: %s%s in the end%s (keep below 1 %%, burns from 4 %%); "
                "more under the ceiling, so open high up",
                hour, per_cent(d->room_pct).text, all);
}

static void air_lines(hs_page *page, const hs_result_descale *d) {
    const hs_result_air *a = &d->air;
    char one[48], four[48];
    if (!(d->hydrogen_m3_s > 0)) return;
    hs_page_say(page, 2,
                "hydrogen up to %.1f L/h (with %.2g L/h of oxygen; it burns and explodes in "
                "air): fresh air at least %.1f m3/h, an inlet and an outlet of %.0f cm2 or more "
                "each in a room of %.1f m3 or more, no spark within %.2f m",
                hs_round_to(d->hydrogen_m3_s * 3.6e6, 1, HS_UP), a->oxygen_m3_s * 3.6e6,
                hs_round_to(d->fresh_air_m3_s * 3600, 1, HS_UP),
                hs_round_to(d->opening_m2 * 1e4, 0, HS_UP), hs_round_to(a->room_least_m3, 1, HS_UP),
                hs_round_to(d->spark_distance_m, 2, HS_UP));
    if (a->present)
        hs_page_say(page, 2,
                    "rule: %s, %.2f m3/h, the larger of two; IEC 62485-2 asks %.2f m3/h and "
                    "openings of %.0f cm2",
                    d->air_rule, hs_round_to(a->workplace_m3_s * 3600, 2, HS_UP),
                    hs_round_to(a->battery_m3_s * 3600, 2, HS_UP),
                    hs_round_to(a->battery_opening_m2 * 1e4, 0, HS_UP));
    if (a->most_fresh_air_m3_s > 1.05 * d->fresh_air_m3_s)
        hs_page_say(page, 2,
                    "with all the supply can give, %.3g A: fresh air %.1f m3/h, openings %.0f cm2",
                    a->supply_A, hs_round_to(a->most_fresh_air_m3_s * 3600, 1, HS_UP),
                    hs_round_to(a->most_opening_m2 * 1e4, 0, HS_UP));
    if (a->all_amps_A > 1.05 * d->amps_A)
        hs_page_say(page, 2,
                    "all %zu parts in the tub at once: %.1f A, hydrogen up to %.1f L/h: fresh air "
                    "at least %.1f m3/h, openings of %.0f cm2, no spark within %.2f m",
                    page->job->part.quantity, a->all_amps_A,
                    hs_round_to(a->all_hydrogen_m3_s * 3.6e6, 1, HS_UP),
                    hs_round_to(a->all_fresh_air_m3_s * 3600, 1, HS_UP),
                    hs_round_to(a->all_opening_m2 * 1e4, 0, HS_UP),
                    hs_round_to(a->all_spark_m, 2, HS_UP));
    room_line(page, d);
    if (a->lid_m3 > 0)
        hs_page_say(page, 2,
                    "no lid: %.0f L of air under one would be at 1 %% in %s, at 4 %% in %s; within "
                    "%.0f cm of the bath take the air as explosive always",
                    a->lid_m3 * 1e3, time_words(one, a->lid_keep_s, HS_DOWN),
                    time_words(four, a->lid_explosive_s, HS_DOWN), a->near_m * 100);
}

static void acid_lines(hs_page *page, const hs_result_descale *d) {
    const hs_result_acid *a = &d->acid;
    if (!a->present) return;
    hs_page_say(page, 2, "%s %.3g %%, %.3g L at %.0f to %.0f C: %.0f g of acid, with an inhibitor",
                a->name, a->strength_pct, a->volume_m3 * 1e3, a->temp_low_K - 273.15,
                a->temp_high_K - 273.15, a->bath_kg * 1e3);
    if (a->note[0]) hs_page_say(page, 2, "from practice: %s", a->note);
    if (a->scale_kg > 0)
        hs_page_say(
            page, 2,
            "the %.3g g of scale on one part take %.3g g of it; the fresh bath dissolves at "
            "most %.0f g",
            a->scale_kg * 1e3, a->taken_kg * 1e3, a->capacity_kg * 1e3);
    hs_page_say(
        page, 2,
        "to neutralise: dip the part in 2 to 5 %% soda (%.0f to %.0f g for a bath of that "
        "size); the spent bath takes up to %.0f g of anhydrous soda, %.0f to %.0f L of such "
        "a solution",
        a->dip_low_kg * 1e3, a->dip_high_kg * 1e3, hs_round_to(a->soda_kg * 1e3, 0, HS_UP),
        a->soda_low_m3 * 1e3, a->soda_high_m3 * 1e3);
    hs_page_say(
        page, 2,
        "hydrogen here too: %.2g L from the metal under the scale of one part, up to %.0f L "
        "if parts are left until the acid is spent: open air, no flame",
        a->hydrogen_m3 * 1e3, a->all_hydrogen_m3 * 1e3);
}

static void bake_line(hs_page *page, const hs_result_descale *d) {
    char temp[48], fahrenheit[48], time[48];
    if (d->bake_s > 0 && hs_format_celsius(temp, sizeof temp, d->bake_temp_K, 0) &&
        hs_format_fahrenheit(fahrenheit, sizeof fahrenheit, d->bake_temp_K, 0))
        hs_page_say(page, 2, "bake at %s (%s) for %s at heat, at least. %s", temp, fahrenheit,
                    time_words(time, d->bake_s, HS_UP), d->bake);
    else if (d->bake[0])
        hs_page_say(page, 2, "%s", d->bake);
}

/* How it is done; nothing of it where it is not to be done. */
static void work_lines(hs_page *page, const hs_result_descale *d) {
    if (d->verdict == HS_CLEAN_STOP) return;
    if (d->amps_A > 0) current_lines(page, d);
    time_line(page, d);
    batch_line(page, d);
    if (d->tank.present) bath_lines(page, d);
    air_lines(page, d);
    acid_lines(page, d);
    if (d->stock_taken_high_m > 0) {
        hs_words low = hs_page_short(page, d->stock_taken_low_m, HS_DOWN);
        hs_words high = hs_page_length(page, d->stock_taken_high_m, HS_UP);
        hs_page_say(page, 2, "takes good metal too, counted in need: %s to %s per side", low.text,
                    high.text);
    }
}

static void one_step(hs_page *page, const hs_result_descale *d, int of_several) {
    if (of_several)
        hs_page_say(page, 2, "Step %zu of the route, by %s: %s. %s", d->step + 1, d->method,
                    decision(d->verdict), d->text);
    else
        hs_page_say(page, 2, "%s: %s%s%s", d->method[0] ? d->method : "descale",
                    decision(d->verdict), d->text[0] ? ". " : "", d->text);
    if (isfinite(d->hardness_HRC) && d->hardness_HRC > 0)
        hs_page_say(page, 2, "hardness of the part at that step: %s%.0f HRC%s",
                    d->cooled_hard ? "up to " : "", d->hardness_HRC,
                    d->cooled_hard ? ", computed for its cooling without a quench" : "");
    if (d->rule[0]) hs_page_say(page, 2, "%s", d->rule);
    work_lines(page, d);
    bake_line(page, d);
    if (d->orders > 0) hs_page_say(page, 2, "In this order:");
    for (size_t i = 0; i < d->orders; i++)
        hs_page_say(page, 4, "- %s", d->order[i]);
    if (d->alternatives > 0) hs_page_say(page, 2, "Instead, the best first:");
    for (size_t i = 0; i < d->alternatives; i++)
        hs_page_say(page, 4, "- %s", d->alternative[i]);
}

/* In the order of the route. */
void hs_text_descale(hs_page *page) {
    const hs_result *r = page->result;
    int several = r->other_descales > 0, told = 0;
    if (!r->descale_present) return;
    hs_page_heading(page, "DESCALE (cautions above come first)");
    for (size_t i = 0; i < r->other_descales; i++) {
        if (!told && r->descale.step < r->other_descale[i].step) {
            one_step(page, &r->descale, several);
            told = 1;
        }
        one_step(page, &r->other_descale[i], several);
    }
    if (!told) one_step(page, &r->descale, several);
}
