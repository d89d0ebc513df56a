#include "cli/quick_print.h"

#include "cli/quick_sensitivity.h"
#include "hardskin/tables/table.h"

#include <math.h>
#include <string.h>

typedef struct shown {
    double low, value, high;
    const char *unit;
} shown;

/* A quantity in the unit a workshop reads. */
static shown in_trade_units(const hs_quantity *q) {
    double times = 1, plus = 0;
    const char *unit = q->unit;
    if (!strcmp(q->unit, "m")) times = 1e3, unit = "mm";
    if (!strcmp(q->unit, "s")) times = 1. / 3600, unit = "h";
    if (q->kind == HS_TEMPERATURE) plus = -273.15, unit = "C";
    return (shown){q->low * times + plus, q->value * times + plus, q->high * times + plus, unit};
}

static void echo(hs_out *out, const quick_key *key, const quick_value *v) {
    hs_out_add(out, "  %-14s %s", key->name, v->text);
    if (key->type == QUICK_SIZE)
        hs_out_add(out, "   = %.4f .. %.4f mm", v->size.lower_m * 1e3, v->size.upper_m * 1e3);
    if (key->type == QUICK_QUANTITY) {
        shown s = in_trade_units(&v->q);
        if (v->q.spread)
            hs_out_add(out, "   = %.6g .. %.6g %s, middle %.6g", s.low, s.high, s.unit, s.value);
        else
            hs_out_add(out, "   = %.6g %s", s.value, s.unit);
    }
    hs_out_add(out, "%s\n", v->given ? "" : "   (not given: usual value)");
}

static void print_figure(hs_out *out, const quick_figure *f) {
    if (f->word)
        hs_out_add(out, "  %-22s %s\n", f->name, f->word);
    else if (!isfinite(f->low))
        hs_out_add(out, "  %-22s -\n", f->name);
    else if (f->range)
        hs_out_add(out, "  %-22s %.6g .. %.6g\n", f->name, f->low, f->high);
    else
        hs_out_add(out, "  %-22s %.6g\n", f->name, f->low);
}

void quick_print_text(hs_out *out, const quick_topic *topic, const quick_value *value,
                      const quick_answer *answer, const hs_units *units) {
    hs_out_add(out, "%s: %s\n\nas understood\n", topic->name, topic->what);
    for (size_t k = 0; k < topic->keys; k++)
        if (value[k].text) echo(out, &topic->key[k], &value[k]);
    hs_out_add(out, "answer\n");
    for (size_t i = 0; i < answer->n; i++)
        print_figure(out, &answer->figure[i]);
    if (answer->notes[0]) hs_out_add(out, "note\n");
    for (const char *line = answer->notes; *line;) {
        size_t n = strcspn(line, "\n");
        hs_out_add(out, "  %.*s\n", (int)n, line);
        line += n + (line[n] ? 1 : 0);
    }
    hs_out_add(out, "formula\n  %s\nsource\n  %s\nbasis\n  %s\nvalid\n  %s\n", topic->formula,
               topic->source, topic->basis, topic->range);
    quick_sensitivity(out, topic, value, answer, units);
}

static void json_number(hs_out *out, double value) {
    if (isfinite(value))
        hs_out_add(out, "%.12g", value);
    else
        hs_out_add(out, "null");
}

static void json_pair(hs_out *out, const char *name, const char *text) {
    hs_out_json(out, name);
    hs_out_add(out, ": ");
    hs_out_json(out, text);
}

static void json_figure(hs_out *out, const quick_figure *f) {
    hs_out_add(out, ",\n  ");
    hs_out_json(out, f->name);
    hs_out_add(out, ": ");
    if (f->word) {
        hs_out_json(out, f->word);
        return;
    }
    if (f->range) hs_out_add(out, "[");
    json_number(out, f->low);
    if (!f->range) return;
    hs_out_add(out, ", ");
    json_number(out, f->high);
    hs_out_add(out, "]");
}

static void json_read(hs_out *out, const quick_key *key, const quick_value *v, int first) {
    hs_out_add(out, "%s\n    {", first ? "" : ",");
    json_pair(out, "key", key->name);
    hs_out_add(out, ", ");
    json_pair(out, "text", v->text);
    if (key->type == QUICK_QUANTITY) {
        hs_out_add(out, ", \"value\": ");
        json_number(out, v->q.value);
        hs_out_add(out, ", ");
        json_pair(out, "unit", v->q.unit);
    }
    hs_out_add(out, ", \"given\": %s}", v->given ? "true" : "false");
}

static void json_notes(hs_out *out, const char *notes) {
    int first = 1;
    hs_out_add(out, ",\n  \"notes\": [");
    while (*notes) {
        char line[QUICK_NOTES];
        size_t n = strcspn(notes, "\n");
        memcpy(line, notes, n);
        line[n] = '\0';
        hs_out_add(out, "%s", first ? "" : ", ");
        hs_out_json(out, line);
        first = 0;
        notes += n + (notes[n] ? 1 : 0);
    }
    hs_out_add(out, "]");
}

void quick_print_json(hs_out *out, const quick_topic *topic, const quick_value *value,
                      const quick_answer *answer) {
    hs_out_add(out, "{\n  ");
    json_pair(out, "topic", topic->name);
    for (size_t i = 0; i < answer->n; i++)
        json_figure(out, &answer->figure[i]);
    hs_out_add(out, ",\n  \"read\": [");
    int first = 1;
    for (size_t k = 0; k < topic->keys; k++) {
        if (!value[k].text) continue;
        json_read(out, &topic->key[k], &value[k], first);
        first = 0;
    }
    hs_out_add(out, "\n  ]");
    json_notes(out, answer->notes);
    const char *pairs[][2] = {{"formula", topic->formula}, {"source", topic->source},
                              {"basis", topic->basis},     {"range", topic->range},
                              {"hardskin", HS_VERSION},    {"tables", hs_table_hash()}};
    for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
        hs_out_add(out, ",\n  ");
        json_pair(out, pairs[i][0], pairs[i][1]);
    }
    hs_out_add(out, "\n}\n");
}
