/* The route in one line, what to buy, the test piece. */
#include "report/sections.h"

#include "hardskin/tables/table.h"

#include "constants.h"

#include <math.h>

enum { ROUTE_BYTES = 1800 };

static int burns(hs_step_kind kind) {
    return kind == HS_STRESS_RELIEVE || kind == HS_CARBURISE || kind == HS_REHEAT ||
           kind == HS_TEMPER || kind == HS_BAKE;
}

/* Fire on to off, and how much of it the box takes; its doubt in words. */
static void add_fire(hs_text *text, const hs_result_step *s, const char *time) {
    hs_text_add(text, " (fire on to off %s; the box takes %.1f h of it to heat through", time,
                s->heat_up_s / 3600);
    if (s->heat_up_high_s > 0)
        hs_text_add(text, ", %.1f to %.1f h)", s->heat_up_low_s / 3600, s->heat_up_high_s / 3600);
    else
        hs_text_add(text, ", %.1f h at best: it may not heat through at all)",
                    s->heat_up_low_s / 3600);
}

void hs_text_route(hs_page *page) {
    const hs_result *r = page->result;
    char line[ROUTE_BYTES], time[48];
    hs_text text = hs_text_start(line, sizeof line);
    hs_page_heading(page, "ROUTE (times from fire on to fire off)");
    for (size_t i = 0; i < r->steps; i++) {
        const hs_result_step *s = &r->step[i];
        double fire_s = s->heat_up_s + s->hold_s;
        hs_text_add(&text, "%s%s", i ? " > " : "", s->text);
        if (!burns(page->job->step[i].kind)) continue;
        if (s->heat_up_s > 0 && hs_format_time(time, sizeof time, fire_s, HS_NEAREST))
            add_fire(&text, s, time);
    }
    hs_page_say(page, 2, "%s", line);
    if (text.overflow) page->text.overflow = 1;
    for (size_t i = 0; i < r->steps; i++)
        if (page->job->step[i].kind == HS_CARBURISE && !(r->step[i].heat_up_s > 0) &&
            page->job->step[i].log_points == 0)
            hs_page_say(page, 2,
                        "The heating-up of the box is not in the times: its size was not "
                        "given.");
}

void hs_text_buy(hs_page *page) {
    const hs_result_blank *b = &page->result->blank;
    hs_words skin = hs_page_length(page, b->rolled_skin_m, HS_UP);
    hs_words saw = hs_page_sawn(page, b->saw_length_m);
    hs_words straight = hs_page_length(page, b->straightness_m, HS_UP);
    if (!b->present) return;
    hs_page_heading(page, "BUY");
    if (!b->size[0])
        hs_page_say(page, 2, "%zu x %s: no listed size", page->job->part.quantity, b->form);
    else
        hs_page_say(page, 2, "%zu x %s %s%s%s%s", page->job->part.quantity, b->form, b->size,
                    b->standard[0] ? " (" : "", b->standard, b->standard[0] ? ")" : "");
    if (b->saw_length_m > 0) hs_page_say(page, 2, "saw to length: %s each", saw.text);
    if (b->rolled_skin_m > 0)
        hs_page_say(page, 2, "take off at least %s per side: rolled skin", skin.text);
    if (b->straightness_m > 0)
        hs_page_say(page, 2, "the bar itself may be out of straight by %s", straight.text);
    if (b->why[0]) hs_page_say(page, 2, "%s", b->why);
}

void hs_text_test_piece(hs_page *page) {
    const hs_result_test_piece *t = &page->result->test_piece;
    hs_words d = hs_page_nominal(page, t->diameter_m);
    hs_words l = hs_page_nominal(page, t->length_m);
    hs_words expect = hs_page_length(page, t->case_expected_m, HS_NEAREST);
    hs_words low = hs_page_length(page, t->case_low_m, HS_DOWN);
    if (!(t->diameter_m > 0) && !t->text[0]) return;
    hs_page_heading(page, t->stated ? "TEST PIECE" : "TEST PIECE (advised: the sheet has none)");
    if (t->diameter_m > 0)
        hs_page_say(page, 2, "round, diameter %s, length %s, same steel%s%s", d.text, l.text,
                    t->place[0] ? ", place: " : "", t->place);
    if (t->case_expected_m > 0)
        hs_page_say(page, 2, "case to expect on it to %.0f HV: %s, low side %s",
                    page->result->hard.limit_HV, expect.text, low.text);
    if (t->text[0]) hs_page_say(page, 2, "%s", t->text);
    const hs_table *ways = hs_table_get(HS_TABLE_CASE_WAYS);
    for (size_t i = 0; i < t->ways; i++) {
        size_t row = (size_t)t->way[i].way;
        double doubt_m = hs_table_number(ways, row, HS_CASE_WAYS_DOUBT) * 1e-3;
        hs_page_say(page, 2, "- %s, expect %s \302\261%s: %s",
                    hs_table_text(ways, row, HS_CASE_WAYS_WAY),
                    hs_page_length(page, t->way[i].expected_m, HS_NEAREST).text,
                    hs_page_short(page, doubt_m, HS_UP).text, t->way[i].text);
    }
}
