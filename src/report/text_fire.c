/* The box and the fire: compound, gas, carbon monoxide; oil for the quench. */
#include "report/sections.h"

#include "constants.h"
#include "hardskin/tables/table.h"
#include "plan/words.h"

#include <math.h>
#include <stdio.h>

static const double LITRE_M3 = 1e-3, BAR_PA = 1e5, PPM = 1e-6;

/* Litres that nobody measures finer than to two figures. */
static double litres(double volume_m3) {
    double l = volume_m3 / LITRE_M3, step = pow(10, floor(log10(fmax(l, 1e-9))) - 1);
    return step * round(l / step);
}

/* "25 mm", "0.99 in": enough in either. */
static hs_words least_cover(const hs_page *page) {
    return page->job->inch_first ? hs_page_coarse(page, HS_K_PACK_COVER_LEAST, HS_UP)
                                 : hs_page_nominal(page, HS_K_PACK_COVER_LEAST);
}

static void box_line(hs_page *page, const hs_result_pack *p) {
    hs_words side[3], all = {"the part"};
    if (page->job->part.quantity > 1)
        snprintf(all.text, sizeof all.text, "%zu parts", page->job->part.quantity);
    for (int k = 0; k < 3; k++)
        side[k] = hs_page_coarse(page, p->box_m[k], HS_UP);
    if (p->box_given)
        hs_page_say(page, 2,
                    "box: %s is its least inner size; reckoned with as %s x %s x %s, for %s",
                    hs_page_nominal(page, p->box_m[0]).text, side[0].text, side[1].text,
                    side[2].text, all.text);
    else
        hs_page_say(
            page, 2,
            "box: none in the sheet; taken as the least that covers %s, %s x %s x %s inside",
            all.text, side[0].text, side[1].text, side[2].text);
}

/* Only where the box as reckoned is too short for all. */
static void length_line(hs_page *page, const hs_result_pack *p) {
    if (p->thin_cover || p->long_m <= p->box_m[2] + 1e-6) return;
    hs_page_say(page, 2,
                "with %s all round and %s between, %zu parts take a box %s long, or more fires",
                least_cover(page).text, hs_page_nominal(page, HS_K_BOX_HEAT_BETWEEN).text,
                page->job->part.quantity, hs_page_coarse(page, p->long_m, HS_UP).text);
}

static void compound_line(hs_page *page, const hs_result_pack *p) {
    hs_page_say(page, 2,
                "compound: %.1f L, about %.1f kg (%.1f to %.1f kg, as loose as it is); %s of it "
                "between %s%s; %s all round at least",
                p->compound_m3 / LITRE_M3, p->compound_kg, p->compound_low_kg, p->compound_high_kg,
                hs_page_coarse(page, p->cover_m, HS_DOWN).text,
                page->job->part.quantity > 1 ? "one part alone and the box" : "part and box",
                p->thin_cover ? ": TOO LITTLE, take a larger box" : "", least_cover(page).text);
    length_line(page, p);
    hs_page_say(page, 2,
                "fill to under the lid, tap down, fill again: a hollow there fills with gas");
    if (!p->box_given)
        hs_page_say(page, 2, "it heats through in %.1f h or so, by the rule of 1912",
                    p->heat_up_s / 3600);
    else if (p->heat_up_high_s > 0)
        hs_page_say(page, 2, "it heats through in %.1f h (%.1f to %.1f h)", p->heat_up_s / 3600,
                    p->heat_up_low_s / 3600, p->heat_up_high_s / 3600);
    else
        hs_page_say(page, 2, "it heats through in %.1f h, if at all", p->heat_up_s / 3600);
}

static void gas_lines(hs_page *page, const hs_result_pack *p) {
    hs_page_say(
        page, 2,
        "the box must breathe: its moisture (%.0f %% taken) is %.0f L of steam at %s, on hot "
        "charcoal up to %.0f L of carbon monoxide and hydrogen, and heating drives out "
        "%.0f L more. Gas-tight it would come to %.0f bar: lute it with clay, never weld.",
        100 * p->moisture, litres(p->steam_m3), hs_word_temp(p->temp_K, page->job->inch_first).text,
        litres(p->water_gas_m3), litres(p->heating_m3), litres(p->sealed_Pa / BAR_PA * LITRE_M3));
    hs_page_say(page, 2,
                "carbon monoxide of that moisture alone: up to %.0f L cold, enough to bring a shut "
                "room of %.0f m3 to %.0f ppm, dangerous to life at once",
                litres(p->co_m3), litres(p->co_room_m3 * LITRE_M3),
                HS_K_CARBON_MONOXIDE_AT_ONCE / PPM);
}

static void limit_line(hs_page *page) {
    hs_page_say(
        page, 2,
        "limits of carbon monoxide: %.0f ppm over a shift (OSHA), %.0f ppm and never above "
        "%.0f (NIOSH). A household alarm sounds within %.0f min at %.0f ppm, but only after "
        "an hour and more at %.0f ppm (EN 50291): leave at its first sound.",
        HS_K_CARBON_MONOXIDE_SHIFT / PPM, HS_K_CARBON_MONOXIDE_ADVISED / PPM,
        HS_K_CARBON_MONOXIDE_CEILING / PPM, HS_K_CARBON_MONOXIDE_ALARM_FAST_WITHIN / 60.0,
        HS_K_CARBON_MONOXIDE_ALARM_FAST / PPM, HS_K_CARBON_MONOXIDE_ALARM_SLOW / PPM);
}

static void oil_line(hs_page *page) {
    const hs_result_oil *o = &page->result->oil;
    char all[48] = "";
    if (!o->present) return;
    hs_text text = hs_text_start(all, sizeof all);
    if (page->job->part.quantity > 1)
        hs_text_add(&text, ", %.0f L for all %zu at once", ceil(o->all_m3 / LITRE_M3),
                    page->job->part.quantity);
    hs_page_say(page, 2,
                "quench oil: at least %.0f L for one part of %.1f kg%s (a gallon to the pound); it "
                "warms by %.0f C. Warm, it stays %.0f C or more below its flash point.",
                ceil(o->part_m3 / LITRE_M3), o->part_kg, all, ceil(o->rise_K),
                (double)HS_K_QUENCH_OIL_BELOW_FLASH);
}

void hs_text_fire(hs_page *page) {
    const hs_result *r = page->result;
    if (r->packs == 0 && !r->oil.present) return;
    hs_page_heading(page, r->packs > 0 ? "PACK AND FIRE" : "QUENCH TANK");
    for (size_t i = 0; i < r->packs; i++) {
        if (r->packs > 1) hs_page_say(page, 2, "%s:", r->step[r->pack[i].step].text);
        box_line(page, &r->pack[i]);
        compound_line(page, &r->pack[i]);
        gas_lines(page, &r->pack[i]);
    }
    if (r->packs > 0) limit_line(page);
    oil_line(page);
}
