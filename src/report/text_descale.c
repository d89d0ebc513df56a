/* The descaling plan: decision, current and time, air, hydrogen. */
#include "report/sections.h"

#include <math.h>

static const char *decision(hs_clean verdict) {
    static const char *const words[] = {"no decision", "OK", "WITH CARE", "STOP: do not do it"};
    return words[verdict];
}

static const char *time_words(char out[48], double time_s, hs_round direction) {
    return hs_format_time(out, 48, time_s, direction) ? out : "not known";
}

static void current_lines(hs_page *page, const hs_result_descale *d) {
    char low[48], mid[48], high[48];
    if (!(d->amps_A > 0)) return;
    hs_page_say(page, 2, "current %.1f A at %.1f V, charge %.1f Ah, part area %.1f dm2", d->amps_A,
                d->volts_V, d->charge_Ah, d->area_m2 * 100);
    if (d->time_s > 0)
        hs_page_say(page, 2, "time: %s (%s to %s); look and brush in between",
                    time_words(mid, d->time_s, HS_NEAREST), time_words(low, d->time_low_s, HS_DOWN),
                    time_words(high, d->time_high_s, HS_UP));
}

static void air_lines(hs_page *page, const hs_result_descale *d) {
    if (!(d->hydrogen_m3_s > 0)) return;
    hs_page_say(page, 2,
                "hydrogen %.2f L/min (burns and explodes in air): fresh air at least %.1f m3/h, "
                "openings %.0f cm2 or more, no spark within %.2f m%s%s",
                d->hydrogen_m3_s * 6e4, hs_round_to(d->fresh_air_m3_s * 3600, 1, HS_UP),
                hs_round_to(d->opening_m2 * 1e4, 0, HS_UP),
                hs_round_to(d->spark_distance_m, 2, HS_UP), d->air_rule[0] ? "; rule: " : "",
                d->air_rule);
    if (d->room_pct > 0)
        hs_page_say(page, 2, "hydrogen in the room in the end: %.2g %% (burns from 4 %%)",
                    d->room_pct);
}

static void bake_line(hs_page *page, const hs_result_descale *d) {
    char temp[48], fahrenheit[48], time[48];
    if (d->bake_s > 0 && hs_format_celsius(temp, sizeof temp, d->bake_temp_K, 0) &&
        hs_format_fahrenheit(fahrenheit, sizeof fahrenheit, d->bake_temp_K, 0))
        hs_page_say(page, 2, "bake at %s (%s), %s at heat", temp, fahrenheit,
                    time_words(time, d->bake_s, HS_UP));
    if (d->bake[0]) hs_page_say(page, 2, "%s", d->bake);
}

void hs_text_descale(hs_page *page) {
    const hs_result_descale *d = &page->result->descale;
    if (!page->result->descale_present) return;
    hs_page_heading(page, "DESCALE (cautions above come first)");
    hs_page_say(page, 2, "%s: %s%s%s", d->method[0] ? d->method : "descale", decision(d->verdict),
                d->text[0] ? ". " : "", d->text);
    if (isfinite(d->hardness_HRC) && d->hardness_HRC > 0)
        hs_page_say(page, 2, "hardness of the part at that step: %.0f HRC", d->hardness_HRC);
    current_lines(page, d);
    air_lines(page, d);
    if (d->stock_taken_high_m > 0) {
        hs_words low = hs_page_short(page, d->stock_taken_low_m, HS_DOWN);
        hs_words high = hs_page_length(page, d->stock_taken_high_m, HS_UP);
        hs_page_say(page, 2, "takes good metal too: %s to %s per side", low.text, high.text);
    }
    bake_line(page, d);
    for (size_t i = 0; i < d->alternatives; i++)
        hs_page_say(page, 2, "instead: %s", d->alternative[i]);
}
