/* Scale: in all, in holes and slots, and heat by heat. */
#include "report/sections.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const char *kind_of(const hs_feature *f) {
    if (f->thread) return "thread";
    return f->kind == HS_SLOT ? "slot" : "hole";
}

/* So little that no plug gauge tells. */
static int felt(const hs_page *page, const hs_result_hole *h) {
    return page->job->feature[h->feature].size_m - h->open_least_m >= 10e-6;
}

static int said_before(const hs_page *page, size_t i) {
    const hs_result_scale *s = &page->result->scale;
    const hs_feature *a = &page->job->feature[s->hole[i].feature];
    for (size_t k = 0; k < i; k++) {
        const hs_feature *b = &page->job->feature[s->hole[k].feature];
        if (a->kind == b->kind && a->thread == b->thread && fabs(a->size_m - b->size_m) < 1e-7)
            return 1;
    }
    return 0;
}

static void hole_line(hs_page *page, const hs_result_hole *h) {
    const hs_feature *f = &page->job->feature[h->feature];
    hs_words size = hs_page_nominal(page, f->size_m);
    hs_words open = hs_page_short(page, h->open_m, HS_DOWN);
    hs_words least = hs_page_short(page, h->open_least_m, HS_DOWN);
    hs_words bare = hs_page_short(page, h->bare_m, HS_NEAREST);
    hs_words most = hs_page_short(page, h->bare_most_m, HS_UP);
    if (!(h->open_least_m > 0))
        hs_page_say(page, 2, "%s %s: scale may FILL it", kind_of(f), size.text);
    else
        hs_page_say(page, 2,
                    "%s %s: its scale leaves %s open, at worst %s%s; freed of it %s wide, at most "
                    "%s",
                    kind_of(f), size.text, open.text, least.text,
                    h->closes ? ": NEARLY CLOSED" : "", bare.text, most.text);
    if (f->thread)
        hs_page_say(page, 4,
                    "its pitch diameter closes by %s, at most %s: a screw binds or does not go in "
                    "until it is chased",
                    hs_page_short(page, h->thread_m, HS_UP).text,
                    hs_page_short(page, h->thread_most_m, HS_UP).text);
}

void hs_text_scale(hs_page *page) {
    const hs_result_scale *s = &page->result->scale;
    hs_words lost = hs_page_length(page, s->lost_m, HS_NEAREST);
    hs_words low = hs_page_short(page, s->lost_low_m, HS_DOWN);
    hs_words high = hs_page_short(page, s->lost_high_m, HS_UP);
    if (!(s->lost_high_m > 0)) return;
    hs_page_say(page, 2, "metal lost as scale: %s per side (%s to %s); scale on the part %.0f g",
                lost.text, low.text, high.text, s->mass_kg * 1e3);
    size_t slight = 0;
    for (size_t i = 0; i < s->holes; i++) {
        if (!felt(page, &s->hole[i])) slight++;
        if (felt(page, &s->hole[i]) && !said_before(page, i)) hole_line(page, &s->hole[i]);
    }
    if (slight > 0)
        hs_page_say(page, 2, "scale takes less than %s of the width of %s",
                    hs_page_short(page, 10e-6, HS_UP).text,
                    slight == s->holes ? "its holes and slots" : "the others");
}

void hs_text_heats(hs_page *page) {
    const hs_result_scale *s = &page->result->scale;
    int film = 0;
    if (s->heats == 0) return;
    hs_page_say(page, 2, "In the open, each heat by itself, mm per side:");
    hs_page_say(page, 2, "%6s %6s %6s %6s %6s %6s  %s", "lost", "least", "most", "scale", "rim",
                "90 %", "step");
    for (size_t i = 0; i < s->heats; i++) {
        const hs_result_heat *h = &s->heat[i];
        char step[34];
        snprintf(step, sizeof step, "%s", page->result->step[h->step].text);
        for (size_t end = strlen(step); end > 0 && step[end - 1] == ' '; end--)
            step[end - 1] = '\0';
        film |= h->film;
        hs_page_say(page, 2, "%6.4f %6.4f %6.4f %6.4f %6.4f %6.4f %s%s", h->lost_m * 1e3,
                    h->lost_low_m * 1e3, h->lost_high_m * 1e3, h->scale_m * 1e3,
                    h->soft_rim_m * 1e3, h->depth90_m * 1e3, h->film ? "*" : " ", step);
    }
    hs_page_say(page, 2,
                "Least and most: band of rate and flame. Scale: on the part after it. Rim: without "
                "carbon; 90 %%: depth at which nine tenths of it are left.%s",
                film ? " *: the oxygen of the sheet slows the start." : "");
}
