/* A descale step: by what, and for the two electrolyses the whole tank. */
#include "constants.h"
#include "hardskin/model/bath.h"
#include "hardskin/units/split.h"
#include "sheet/acceptance.h"
#include "sheet/amounts.h"
#include "sheet/draft.h"
#include "sheet/forbidden.h"

static const char *const methods[] = {
    "brush", "blast", "acid", "electrolysis", "anodic electrolysis", "flap disc"};
static const char *const dry_keys[] = {"do", "by"};
static const char *const acid_keys[] = {
    "do", "by", "acid", "tub", "bath_temperature", "room", "air_changes", "accept_hydrogen_risk"};
static const char *const tank_keys[] = {"do",     "by",          "tub",
                                        "supply", "soda",        "gap",
                                        "anode",  "anode_area",  "bath_temperature",
                                        "room",   "air_changes", "accept_hydrogen_risk"};
static const char *const all_keys[] = {"do",
                                       "by",
                                       "acid",
                                       "tub",
                                       "supply",
                                       "soda",
                                       "gap",
                                       "anode",
                                       "anode_area",
                                       "bath_temperature",
                                       "room",
                                       "air_changes",
                                       "accept_hydrogen_risk"};

static void read_supply(hs_draft *d, const hs_node *node, hs_tank *tank) {
    hs_reader *r = d->reader;
    const char *text;
    hs_error err = {0};
    if (!hs_amount_text(r, node, &text)) return;
    if (hs_supply_read(&tank->volts_V, &tank->amps_A, r->units, text, &err) != HS_OK) {
        hs_reader_fault(r, node, HS_AT_VALUE, &err);
        return;
    }
    if (tank->volts_V > HS_K_SHEET_DEFAULT_SUPPLY_MOST)
        hs_reader_say(r, node, HS_E_FORBIDDEN, "an isolated supply of 12 V",
                      "a bath above %g V can kill who reaches into it",
                      (double)HS_K_SHEET_DEFAULT_SUPPLY_MOST);
    hs_reader_echo(r, node, tank->volts_V, "V");
    hs_reader_echo(r, node, tank->amps_A, "A");
}

static void read_anode(hs_draft *d, const hs_node *node, hs_tank *tank) {
    hs_error err = {0};
    const char *text;
    if (!hs_reader_text(d->reader, node, &text)) return;
    hs_status status =
        hs_forbidden(text, HS_IN_TANK, &err) ? HS_E_FORBIDDEN : hs_bath_anode_check(text, &err);
    if (status == HS_OK)
        tank->anode = text;
    else
        hs_reader_fault(d->reader, node, HS_AT_VALUE, &err);
}

static void read_acid(hs_draft *d, const hs_node *node, hs_tank *tank) {
    const char *text;
    hs_error err = {0};
    if (!hs_amount_text(d->reader, node, &text)) return;
    if (hs_acid_read(&tank->acid, &tank->acid_pct, d->reader->units, text, &err) != HS_OK)
        hs_reader_fault(d->reader, node, HS_AT_VALUE, &err);
    else
        hs_reader_echo(d->reader, node, tank->acid_pct, "%");
}

static hs_words keys_of(hs_descale_method by) {
    if (by == HS_BY_BRUSH || by == HS_BY_BLAST || by == HS_BY_FLAP_DISC) return HS_WORDS(dry_keys);
    return by == HS_BY_ACID ? HS_WORDS(acid_keys) : HS_WORDS(tank_keys);
}

static double positive(hs_draft *d, const hs_node *node, const char *key, hs_kind kind) {
    double value = 0;
    hs_amount_positive(d->reader, hs_node_find(node, key), kind, &value);
    return value;
}

void hs_read_tank(hs_draft *d, const hs_node *node, hs_step *step) {
    hs_reader *r = d->reader;
    hs_tank *tank = &step->tank;
    size_t by = 0;
    int known = hs_reader_word(r, hs_reader_need(r, node, "by"), HS_WORDS(methods), &by);
    step->by = (hs_descale_method)by;
    hs_reader_object(r, node, known ? keys_of(step->by) : HS_WORDS(all_keys));
    read_acid(d, known && step->by == HS_BY_ACID ? hs_reader_need(r, node, "acid") : NULL, tank);
    read_supply(d, hs_node_find(node, "supply"), tank);
    read_anode(d, hs_node_find(node, "anode"), tank);
    tank->tub_m3 = positive(d, node, "tub", HS_VOLUME);
    tank->soda_kg_m3 = positive(d, node, "soda", HS_CONCENTRATION);
    tank->gap_m = positive(d, node, "gap", HS_LENGTH);
    tank->anode_area_m2 = positive(d, node, "anode_area", HS_AREA);
    tank->temp_K = positive(d, node, "bath_temperature", HS_TEMPERATURE);
    tank->room_m3 = positive(d, node, "room", HS_VOLUME);
    hs_quantity air = {0}; /* none is an answer: a shut room */
    hs_amount(r, hs_node_find(node, "air_changes"), HS_RATE, HS_PLAIN | HS_NOT_NEGATIVE, &air);
    tank->air_changes_1_s = air.value;
    hs_read_acceptance(d, hs_node_find(node, "accept_hydrogen_risk"), &tank->accepted);
}
