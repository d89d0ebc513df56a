#include "sheet/amounts.h"

#include "sheet/forbidden.h"

#include <string.h>

static int is_amount_text(hs_reader *r, const hs_node *node, const char *forms) {
    hs_error err = {0};
    if (node->kind == HS_NODE_NUMBER) {
        hs_reader_say(r, node, HS_E_TYPE, forms, "a number without its unit");
        return 0;
    }
    if (node->kind != HS_NODE_TEXT) {
        hs_reader_say(r, node, HS_E_TYPE, forms, "a quantity in double quotes belongs here");
        return 0;
    }
    if (node->spot.has_nul) {
        hs_reader_say(r, node, HS_E_ENCODING, forms, "a control character in a quantity");
        return 0;
    }
    if (!hs_forbidden(node->text, r->scope, &err)) return 1;
    hs_reader_fault(r, node, HS_AT_VALUE, &err);
    return 0;
}

static int wrong_sign(hs_reader *r, const hs_node *node, hs_kind kind, unsigned rules, double low) {
    if ((rules & HS_ABOVE_ZERO) && !(low > 0))
        hs_reader_say(r, node, HS_E_IMPOSSIBLE, hs_kind_forms(kind),
                      "this must be more than nothing");
    else if ((rules & HS_NOT_NEGATIVE) && !(low >= 0))
        hs_reader_say(r, node, HS_E_IMPOSSIBLE, hs_kind_forms(kind), "this cannot be negative");
    else
        return 0;
    return 1;
}

int hs_amount(hs_reader *r, const hs_node *node, hs_kind kind, unsigned rules, hs_quantity *out) {
    hs_error err = {0};
    hs_quantity q;
    if (!node || !is_amount_text(r, node, hs_kind_forms(kind))) return 0;
    if (hs_quantity_read(&q, r->units, node->text, kind, &err) != HS_OK) {
        hs_reader_fault(r, node, HS_AT_VALUE, &err);
        return 0;
    }
    if ((rules & HS_PLAIN) && q.spread) {
        hs_reader_say(r, node, HS_E_NUMBER, "one number with its unit", "no range belongs here");
        return 0;
    }
    if (wrong_sign(r, node, kind, rules, q.low)) return 0;
    hs_reader_echo(r, node, q.value, q.unit);
    *out = q;
    return 1;
}

int hs_amount_positive(hs_reader *r, const hs_node *node, hs_kind kind, double *out) {
    hs_quantity q;
    if (!hs_amount(r, node, kind, HS_PLAIN | HS_ABOVE_ZERO, &q)) return 0;
    *out = q.value;
    return 1;
}

int hs_amount_span(hs_reader *r, const hs_node *node, hs_kind kind, hs_span *out) {
    hs_quantity q;
    if (!hs_amount(r, node, kind, HS_ABOVE_ZERO, &q)) return 0;
    *out = (hs_span){q.low, q.value, q.high};
    return 1;
}

int hs_amount_case(hs_reader *r, const hs_node *node, double *out_m) {
    hs_quantity q;
    if (!hs_amount(r, node, HS_CASE_DEPTH, HS_ABOVE_ZERO, &q)) return 0;
    *out_m = q.low;
    return 1;
}

int hs_amount_hardness(hs_reader *r, const hs_node *node, double *low_HV, double *high_HV) {
    hs_quantity q;
    hs_error err = {0};
    double low, high;
    if (!hs_amount(r, node, HS_HARDNESS, HS_ABOVE_ZERO, &q)) return 0;
    if (hs_hardness_convert(&low, q.low, q.scale, HS_HV, &err) != HS_OK ||
        hs_hardness_convert(&high, q.high, q.scale, HS_HV, &err) != HS_OK) {
        err.column = 0;
        hs_reader_fault(r, node, HS_AT_VALUE, &err);
        return 0;
    }
    *low_HV = low;
    *high_HV = high;
    return 1;
}

int hs_amount_size(hs_reader *r, const hs_node *node, hs_size *out) {
    hs_error err = {0};
    hs_size size;
    if (!node || !is_amount_text(r, node, "20 h7, 25 ±0.02 mm or 60 -0.05/-0.10 mm")) return 0;
    if (hs_size_read(&size, r->units, node->text, &err) != HS_OK) {
        hs_reader_fault(r, node, HS_AT_VALUE, &err);
        return 0;
    }
    hs_reader_echo(r, node, size.nominal_m, "m");
    *out = size;
    return 1;
}

int hs_amount_text(hs_reader *r, const hs_node *node, const char **out) {
    if (!node || !is_amount_text(r, node, "a text in double quotes")) return 0;
    *out = node->text;
    return 1;
}
