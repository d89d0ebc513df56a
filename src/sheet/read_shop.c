/* The shop: what is the same for every job. */
#include "constants.h"
#include "sheet/amounts.h"
#include "sheet/draft.h"

#include <math.h>

static const char *const keys[] = {"rough_tolerance", "setup_error", "confidence",
                                   "stock",           "grinding",    "record"};
static const char *const grinding_keys[] = {"machine",      "rough_infeed", "finish_infeed",
                                            "finish_stock", "wheel_width",  "cross_feed",
                                            "table_speed"};
static const char *const machines[] = {"surface", "cylindrical", "internal", "hand"};
static const char *const stocks[] = {"EN",   "EN flats",   "EN rounds",   "EN bars",
                                     "inch", "inch flats", "inch rounds", "inch bars"};
enum { INCH_STOCKS_FROM = 4 };

static const char *const record_keys[] = {"job", "bow", "growth", "case"};
static const char *const pair_keys[] = {"predicted", "measured"};

static hs_shop defaults(void) {
    return (hs_shop){
        .rough_tolerance_m = HS_K_SHEET_DEFAULT_ROUGH_TOLERANCE,
        .setup_error_m = HS_K_SHEET_DEFAULT_SETUP_ERROR,
        .confidence = HS_K_SHEET_DEFAULT_CONFIDENCE,
        .stock = HS_STOCK_EN,
        .grinding = {.machine = "surface",
                     .rough_infeed_m = HS_K_GRINDING_ROUGH_INFEED,
                     .finish_infeed_m = HS_K_GRINDING_FINISH_INFEED,
                     .finish_stock_m = HS_K_SHEET_DEFAULT_FINISH_STOCK,
                     .wheel_width_m = HS_K_SHEET_DEFAULT_WHEEL_WIDTH,
                     .cross_feed_m = HS_K_SHEET_DEFAULT_CROSS_FEED,
                     .table_speed_m_s = HS_K_SHEET_DEFAULT_TABLE_SPEED},
    };
}

static void read_rough_tolerance(hs_draft *d, const hs_node *node, double *out_m) {
    hs_reader *r = d->reader;
    const char *text;
    hs_quantity q;
    hs_error err = {0};
    if (!hs_amount_text(r, node, &text)) return;
    if (hs_quantity_read_plus_minus(&q, r->units, text, HS_LENGTH, &err) != HS_OK) {
        hs_reader_fault(r, node, HS_AT_VALUE, &err);
        return;
    }
    hs_reader_echo(r, node, q.value, q.unit);
    *out_m = q.value;
}

static void read_confidence(hs_draft *d, const hs_node *node, double *out) {
    hs_quantity q;
    if (!hs_amount(d->reader, node, HS_PERCENT, HS_PLAIN, &q)) return;
    double share = q.value / 100, slack = 1e-12; /* 99.9 % is not exact in binary */
    if (share >= HS_K_SHEET_DEFAULT_CONFIDENCE_LOW - slack &&
        share <= HS_K_SHEET_DEFAULT_CONFIDENCE_HIGH + slack)
        *out = share;
    else
        hs_reader_say(d->reader, node, HS_E_IMPOSSIBLE, "\"confidence\": \"95 %\"",
                      "a confidence lies between %g and %g %%",
                      100 * HS_K_SHEET_DEFAULT_CONFIDENCE_LOW,
                      100 * HS_K_SHEET_DEFAULT_CONFIDENCE_HIGH);
}

static void read_grinding(hs_draft *d, const hs_node *node, hs_grinding *g) {
    hs_reader *r = d->reader;
    size_t machine = 0;
    if (!hs_reader_object(r, node, HS_WORDS(grinding_keys))) return;
    if (hs_reader_word(r, hs_node_find(node, "machine"), HS_WORDS(machines), &machine))
        g->machine = machines[machine];
    hs_amount_positive(r, hs_node_find(node, "rough_infeed"), HS_LENGTH, &g->rough_infeed_m);
    hs_amount_positive(r, hs_node_find(node, "finish_infeed"), HS_LENGTH, &g->finish_infeed_m);
    hs_amount_positive(r, hs_node_find(node, "finish_stock"), HS_LENGTH, &g->finish_stock_m);
    hs_amount_positive(r, hs_node_find(node, "wheel_width"), HS_LENGTH, &g->wheel_width_m);
    hs_amount_positive(r, hs_node_find(node, "cross_feed"), HS_LENGTH, &g->cross_feed_m);
    hs_amount_positive(r, hs_node_find(node, "table_speed"), HS_SPEED, &g->table_speed_m_s);
    if (g->cross_feed_m > g->wheel_width_m)
        hs_reader_say(r, node, HS_E_DISAGREE, "a third to a half of the wheel's width",
                      "the cross feed is wider than the wheel: it would leave ridges");
}

/* "bow": { "predicted": "0.15 mm", "measured": "0.20 mm" } */
static void read_pair(hs_draft *d, const hs_node *node, hs_kind kind, double *out) {
    hs_reader *r = d->reader;
    static const char *const words[] = {"predicted", "measured"};
    hs_quantity q;
    if (!hs_reader_object(r, node, HS_WORDS(pair_keys))) return;
    for (size_t i = 0; i < 2; i++)
        if (hs_amount(r, hs_node_find(node, words[i]), kind, HS_PLAIN, &q)) out[i] = q.value;
}

static hs_record read_past(hs_draft *d, const hs_node *node) {
    hs_record past = {"", NAN, NAN, NAN, NAN, NAN, NAN};
    double bow[2] = {NAN, NAN}, growth[2] = {NAN, NAN}, depth[2] = {NAN, NAN};
    if (!hs_reader_object(d->reader, node, HS_WORDS(record_keys))) return past;
    hs_reader_text(d->reader, hs_node_find(node, "job"), &past.job);
    read_pair(d, hs_node_find(node, "bow"), HS_LENGTH, bow);
    read_pair(d, hs_node_find(node, "growth"), HS_LENGTH, growth);
    read_pair(d, hs_node_find(node, "case"), HS_CASE_DEPTH, depth);
    return (hs_record){past.job, bow[0], bow[1], growth[0], growth[1], depth[0], depth[1]};
}

static void read_record(hs_draft *d, const hs_node *list, hs_shop *shop) {
    if (!hs_reader_list(d->reader, list, 0, HS_MAX_RECORD)) return;
    hs_record *record = hs_reader_get(d->reader, list->count, sizeof *record);
    if (!record) return;
    for (const hs_node *n = list->child; n; n = n->next)
        record[shop->records++] = read_past(d, n);
    shop->record = record;
}

void hs_read_shop(hs_draft *d, const hs_node *node) {
    hs_reader *r = d->reader;
    hs_shop *shop = &d->job.shop;
    size_t stock = 0;
    *shop = defaults();
    if (!hs_reader_object(r, node, HS_WORDS(keys))) return;
    shop->stated = 1;
    read_rough_tolerance(d, hs_node_find(node, "rough_tolerance"), &shop->rough_tolerance_m);
    hs_quantity q;
    if (hs_amount(r, hs_node_find(node, "setup_error"), HS_LENGTH, HS_PLAIN | HS_NOT_NEGATIVE, &q))
        shop->setup_error_m = q.value;
    read_confidence(d, hs_node_find(node, "confidence"), &shop->confidence);
    hs_reader_word(r, hs_node_find(node, "stock"), HS_WORDS(stocks), &stock);
    shop->stock = stock >= INCH_STOCKS_FROM ? HS_STOCK_INCH : HS_STOCK_EN;
    read_grinding(d, hs_node_find(node, "grinding"), &shop->grinding);
    read_record(d, hs_node_find(node, "record"), shop);
}
