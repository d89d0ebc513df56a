/* The key "route": what is done to the part, in order. */
#include "constants.h"
#include "hardskin/model/quench_bow.h"
#include "hardskin/tables/table.h"
#include "sheet/amounts.h"
#include "sheet/draft.h"
#include "sheet/forbidden.h"

static const char *const kinds[] = {"stress relieve", "carburise",  "cool",    "reheat", "quench",
                                    "temper",         "straighten", "descale", "bake"};

static const char *const carburise_keys[] = {
    "do", "at", "for", "log", "in", "surface_carbon", "surface_transfer", "box", "counted_from"};
static const char *const reheat_keys[] = {"do", "at", "for", "log", "in", "oxygen"};
static const char *const cool_keys[] = {"do", "in", "log"};
static const char *const quench_keys[] = {"do", "in", "uneven"};
static const char *const hold_keys[] = {"do", "at", "for"};
static const char *const straighten_keys[] = {"do", "to"};

static const char *const cool_media[] = {"box", "furnace", "air"};
static const char *const counts[] = {"at heat", "box red"};

enum { MOST_MEDIA = 32 };

/* A word of the first column of a table; its row. */
static int read_medium(hs_draft *d, const hs_node *node, hs_table_id id, hs_step *step) {
    const hs_table *table = hs_table_get(id);
    const char *names[MOST_MEDIA];
    size_t n = 0;
    for (; n < table->rows && n < MOST_MEDIA; n++)
        names[n] = hs_table_text(table, n, 0);
    if (!hs_reader_word(d->reader, node, (hs_words){names, n}, &step->medium_row)) return 0;
    step->medium = names[step->medium_row];
    return 1;
}

/* "at" and "for"; or a log, where the step may have one. */
static void read_heat(hs_draft *d, const hs_node *node, hs_step *step, int may_log) {
    hs_reader *r = d->reader;
    const hs_node *log = may_log ? hs_node_find(node, "log") : NULL;
    const hs_node *at = hs_node_find(node, "at"), *hold = hs_node_find(node, "for");
    if (log && (at || hold))
        hs_reader_say(r, log, HS_E_DISAGREE, "either a log, or \"at\" and \"for\"",
                      "the log says already how hot and how long");
    if (log) hs_read_log(d, log, step);
    if (!log) {
        at = hs_reader_need(r, node, "at");
        hold = hs_reader_need(r, node, "for");
    }
    hs_quantity q;
    if (hs_amount(r, at, HS_TEMPERATURE, HS_ABOVE_ZERO, &q)) {
        step->temp_K = (hs_span){q.low, q.value, q.high};
        step->temp_given = q.spread;
    }
    hs_amount_span(r, hold, HS_TIME, &step->hold_s);
}

static void read_relief(hs_draft *d, const hs_node *node, hs_step *step) {
    read_heat(d, node, step, 0);
    const hs_node *at = hs_node_find(node, "at");
    double low_K = step->temp_K.low, high_K = step->temp_K.high;
    if (!at || !(step->temp_K.value > 0) ||
        (low_K >= HS_K_SHEET_DEFAULT_STRESS_RELIEF_LOW &&
         high_K <= HS_K_SHEET_DEFAULT_STRESS_RELIEF_HIGH))
        return;
    hs_reader_say(d->reader, at, HS_E_RANGE, "\"at\": \"600 C\" or \"620 C\", slowly up and down",
                  "a stress relieve lies between %.0f and %.0f C",
                  HS_K_SHEET_DEFAULT_STRESS_RELIEF_LOW - HS_K_PHYSICAL_ZERO_CELSIUS,
                  HS_K_SHEET_DEFAULT_STRESS_RELIEF_HIGH - HS_K_PHYSICAL_ZERO_CELSIUS);
}

static void read_surface(hs_draft *d, const hs_node *node, hs_step *step) {
    hs_reader *r = d->reader;
    const hs_node *in = hs_node_find(node, "in");
    const hs_node *carbon = hs_node_find(node, "surface_carbon");
    const hs_table *table = hs_table_get(HS_TABLE_SURFACE_CARBON);
    if (!in && !carbon)
        hs_reader_say(r, node, HS_E_MISSING, "\"in\": \"charcoal with carbonate\"",
                      "neither \"in\" nor \"surface_carbon\" says what gives the carbon");
    if (read_medium(d, in, HS_TABLE_SURFACE_CARBON, step))
        step->surface_carbon_pct =
            (hs_span){hs_table_number(table, step->medium_row, HS_SURFACE_CARBON_LOW),
                      hs_table_number(table, step->medium_row, HS_SURFACE_CARBON_VALUE),
                      hs_table_number(table, step->medium_row, HS_SURFACE_CARBON_HIGH)};
    if (hs_amount_span(r, carbon, HS_PERCENT, &step->surface_carbon_pct) &&
        step->surface_carbon_pct.high > HS_K_SHEET_DEFAULT_SURFACE_CARBON_MOST)
        hs_reader_say(r, carbon, HS_E_IMPOSSIBLE, "\"surface_carbon\": \"0.9 %\"",
                      "no steel takes more than %g %% of carbon",
                      (double)HS_K_SHEET_DEFAULT_SURFACE_CARBON_MOST);
    hs_amount_positive(r, hs_node_find(node, "surface_transfer"), HS_SPEED, &step->transfer_m_s);
}

static void read_carburise(hs_draft *d, const hs_node *node, hs_step *step) {
    hs_reader *r = d->reader;
    size_t from = 0;
    read_heat(d, node, step, 1);
    read_surface(d, node, step);
    hs_amount_positive(r, hs_node_find(node, "box"), HS_LENGTH, &step->box_m);
    const hs_node *counted = hs_node_find(node, "counted_from");
    if (!hs_reader_word(r, counted, HS_WORDS(counts), &from)) return;
    step->from_box_red = from == 1;
    if (step->from_box_red && step->log_points > 0)
        hs_reader_say(r, counted, HS_E_DISAGREE, "leave it away",
                      "a log counts its own time, not from a red box");
    else if (step->from_box_red && !hs_node_find(node, "box"))
        hs_reader_say(r, counted, HS_E_MISSING, "\"box\": \"150 mm\", its smallest inner size",
                      "without the size of the box nobody knows how far the part lags behind it");
}

/* Oxygen that was measured in the furnace or the flame. */
static void read_oxygen(hs_draft *d, const hs_node *node, hs_step *step) {
    const hs_node *oxygen = hs_node_find(node, "oxygen");
    const hs_table *table = hs_table_get(HS_TABLE_ATMOSPHERE);
    double percent;
    if (!hs_amount_positive(d->reader, oxygen, HS_PERCENT, &percent)) return;
    step->oxygen = percent / 100;
    if (step->oxygen > HS_K_OXIDATION_OXYGEN_MOST)
        hs_reader_say(d->reader, oxygen, HS_E_IMPOSSIBLE, "\"oxygen\": \"3 %\"",
                      "air holds %g %% of oxygen: no furnace has more",
                      100 * (double)HS_K_OXIDATION_OXYGEN_MOST);
    else if (hs_table_number(table, step->medium_row, HS_ATMOSPHERE_FREE_OXYGEN) < 1)
        hs_reader_say(d->reader, oxygen, HS_E_DISAGREE,
                      "only \"open lean flame\" and \"electric furnace in air\" have free oxygen",
                      "\"%s\" leaves no free oxygen at the part", step->medium);
}

static void read_reheat(hs_draft *d, const hs_node *node, hs_step *step) {
    const hs_node *in = hs_reader_need(d->reader, node, "in");
    read_heat(d, node, step, 1);
    if (read_medium(d, in, HS_TABLE_ATMOSPHERE, step)) read_oxygen(d, node, step);
}

static void read_quench(hs_draft *d, const hs_node *node, hs_step *step) {
    hs_quantity q;
    read_medium(d, hs_reader_need(d->reader, node, "in"), HS_TABLE_QUENCH, step);
    const hs_node *uneven = hs_node_find(node, "uneven");
    if (!hs_amount(d->reader, uneven, HS_PERCENT, HS_PLAIN | HS_NOT_NEGATIVE, &q)) return;
    hs_error err = {0};
    if (hs_bow_uneven_check(q.value / 100, &err) != HS_OK)
        hs_reader_fault(d->reader, uneven, HS_AT_VALUE, &err);
    step->uneven = q.value / 100;
}

static void read_cool(hs_draft *d, const hs_node *node, hs_step *step) {
    size_t in = 0;
    if (hs_reader_word(d->reader, hs_reader_need(d->reader, node, "in"), HS_WORDS(cool_media), &in))
        step->medium = cool_media[in];
    if (hs_node_find(node, "log")) hs_read_log(d, hs_node_find(node, "log"), step);
}

/* The keys of a kind; descale has its own. */
static hs_words keys_of(hs_step_kind kind) {
    switch (kind) {
    case HS_CARBURISE:
        return HS_WORDS(carburise_keys);
    case HS_REHEAT:
        return HS_WORDS(reheat_keys);
    case HS_COOL:
        return HS_WORDS(cool_keys);
    case HS_QUENCH:
        return HS_WORDS(quench_keys);
    case HS_STRAIGHTEN:
        return HS_WORDS(straighten_keys);
    case HS_STRESS_RELIEVE:
    case HS_TEMPER:
    case HS_BAKE:
    case HS_DESCALE:
        break;
    }
    return HS_WORDS(hold_keys);
}

static void read_kind(hs_draft *d, const hs_node *node, hs_step *step) {
    switch (step->kind) {
    case HS_CARBURISE:
        read_carburise(d, node, step);
        break;
    case HS_REHEAT:
        read_reheat(d, node, step);
        break;
    case HS_COOL:
        read_cool(d, node, step);
        break;
    case HS_QUENCH:
        read_quench(d, node, step);
        break;
    case HS_STRAIGHTEN:
        hs_amount_positive(d->reader, hs_reader_need(d->reader, node, "to"), HS_LENGTH,
                           &step->left_m);
        break;
    case HS_DESCALE:
        hs_read_tank(d, node, step);
        break;
    case HS_STRESS_RELIEVE:
        read_relief(d, node, step);
        break;
    case HS_TEMPER:
    case HS_BAKE:
        read_heat(d, node, step, 0);
        break;
    }
}

static void read_step(hs_draft *d, const hs_node *node) {
    hs_reader *r = d->reader;
    size_t i = d->job.steps++, kind = 0;
    hs_step *step = &d->step[i];
    *step = (hs_step){.uneven = -1, .medium = "", .pointer = hs_reader_pointer(r, node)};
    step->tank = (hs_tank){.acid = "", .anode = "", .accepted = ""};
    if (node->kind != HS_NODE_OBJECT) {
        hs_reader_say(r, node, HS_E_TYPE, "{ \"do\": \"quench\", \"in\": \"oil\" }",
                      "a step of the route is an object");
        return;
    }
    r->scope = HS_IN_FIRE;
    int known = hs_reader_word(r, hs_reader_need(r, node, "do"), HS_WORDS(kinds), &kind);
    step->kind = (hs_step_kind)kind;
    if (known && step->kind == HS_DESCALE) r->scope = HS_IN_TANK;
    if (known) {
        d->step_node[i] = node;
        if (step->kind != HS_DESCALE) hs_reader_object(r, node, keys_of(step->kind));
        read_kind(d, node, step);
    }
    r->scope = HS_IN_FIRE;
}

void hs_read_route(hs_draft *d) {
    const hs_node *list = hs_reader_need(d->reader, d->root, "route");
    if (!hs_reader_list(d->reader, list, 1, HS_MAX_STEPS)) return;
    for (const hs_node *n = list->child; n; n = n->next)
        read_step(d, n);
    d->job.step = d->step;
}
