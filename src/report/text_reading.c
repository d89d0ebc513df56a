/* The case depth that was read, and what it says of the computed one. */
#include "report/sections.h"

#include "hardskin/tables/table.h"

#include "constants.h"

static const char *way_name(hs_case_way way) {
    return hs_table_text(hs_table_get(HS_TABLE_CASE_WAYS), (size_t)way, HS_CASE_WAYS_WAY);
}

static int reads_hardness(hs_case_way way) {
    return way != HS_CASE_ETCH && way != HS_CASE_FRACTURE;
}

/* What the depth is a depth to. */
static void add_to(hs_text *text, const hs_measured *m) {
    if (m->case_way == HS_CASE_ETCH)
        hs_text_add(text, " to the end of the total case");
    else if (m->case_way == HS_CASE_FRACTURE)
        hs_text_add(text, " to the edge of the fracture's rim");
    else
        hs_text_add(text, " to %s", hs_page_hardness(m->case_limit_HV).text);
}

static void first_line(hs_page *page) {
    const hs_measured *m = &page->job->measured;
    const hs_result_reading *r = &page->result->hard.reading;
    char line[320];
    hs_text text = hs_text_start(line, sizeof line);
    hs_text_add(&text, "read on the %s", m->on_part ? "part" : "test piece");
    if (m->case_way != HS_CASE_NOT_SAID) hs_text_add(&text, " by %s", way_name(m->case_way));
    if (m->case_after && m->case_after[0]) hs_text_add(&text, ", after the %s", m->case_after);
    hs_text_add(&text, ": %s", hs_page_length(page, r->read_m, HS_DOWN).text);
    add_to(&text, m);
    if (r->computed_m > 0)
        hs_text_add(&text, "; computed there: %s",
                    hs_page_short(page, r->computed_m, HS_NEAREST).text);
    else
        hs_text_add(&text, "; by computation nothing is that hard there");
    hs_page_say(page, 2, "%s", line);
}

void hs_text_reading(hs_page *page) {
    const hs_measured *m = &page->job->measured;
    const hs_result_reading *r = &page->result->hard.reading;
    if (!r->present) return;
    first_line(page);
    hs_words doubt = hs_page_short(page, r->doubt_m, HS_UP);
    if (r->factor > 0)
        hs_page_say(page, 4,
                    "every computed depth is taken times %.2f; its doubt is that of the reading, "
                    "\302\261%s%s, in place of that of fire, medium and carbon",
                    r->factor, doubt.text, r->plan ? " and the scatter within a load" : "");
    else
        hs_page_say(page, 4, "it stands by itself, \302\261%s, for limits up to its own",
                    doubt.text);
    if (m->case_way == HS_CASE_NOT_SAID)
        hs_page_say(page, 4, "how it was read is not said (\"by\"): the widest doubt is taken");
    if (!reads_hardness(m->case_way))
        hs_page_say(page, 4,
                    "it reads carbon: the depth to a hardness follows by the computed "
                    "profile");
}
