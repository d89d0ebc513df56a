/* What would open a window, and what each change comes to. */
#include "report/sections.h"

#include <ctype.h>

/* What it gains and what comes of it. */
static void gain_of(hs_text *t, hs_page *page, const hs_remedy *r) {
    const double seen_m = 1e-6; /* a narrower tolerance opens nothing and fits all the same */
    hs_words gain = hs_page_short(page, r->gain_m, HS_DOWN);
    if (r->verdict == HS_STOP)
        hs_text_add(t, "gains %s per side", gain.text);
    else if (r->gain_m >= seen_m)
        hs_text_add(t, "window opens by %s per side, then %s", gain.text,
                    hs_text_verdict(r->verdict));
    else
        hs_text_add(t, "then %s", hs_text_verdict(r->verdict));
}

void hs_text_remedy_list(hs_page *page, const hs_remedy *remedy, size_t n, size_t most) {
    for (size_t i = 0; i < n && i < most; i++) {
        const hs_remedy *r = &remedy[i];
        char opens[96] = "";
        hs_text gain = hs_text_start(opens, sizeof opens);
        gain_of(&gain, page, r);
        if (i > 0 && r->verdict == HS_STOP && remedy[i - 1].verdict != HS_STOP)
            hs_page_say(page, 4, "Not enough by itself, but a help:");
        if (r->text[0])
            hs_page_say(page, 4, "%zu. %s: %s. %c%s", i + 1, r->what, opens,
                        toupper((unsigned char)r->text[0]), r->text + 1);
        else
            hs_page_say(page, 4, "%zu. %s: %s", i + 1, r->what, opens);
    }
}

void hs_text_remedies(hs_page *page) {
    int headed = 0;
    for (size_t i = 0; i < page->job->dimensions; i++) {
        const hs_result_dimension *d = &page->result->dimension[i];
        int shown = d->verdict == HS_STOP && !hs_text_at_bench(page);
        if (d->remedies == 0 || shown) continue;
        if (!headed++) hs_page_heading(page, "WHAT WOULD OPEN THE WINDOW, computed");
        hs_page_say(page, 2, "%s", page->job->dimension[i].name);
        hs_text_remedy_list(page, d->remedy, d->remedies, HS_MAX_REMEDIES);
    }
}
