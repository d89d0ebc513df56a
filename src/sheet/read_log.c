/* "log": a measured heat, [["0 min", "20 C"], ["90 min", "925 C"], ...]. */
#include "sheet/amounts.h"
#include "sheet/draft.h"

static int read_point(hs_reader *r, const hs_node *node, hs_heat_point *out) {
    hs_quantity time, temp;
    if (node->kind != HS_NODE_LIST || node->count != 2) {
        hs_reader_say(r, node, HS_E_TYPE, "[\"90 min\", \"925 C\"]",
                      "a point of a log has a time and a temperature");
        return 0;
    }
    int timed = hs_amount(r, node->child, HS_TIME, HS_PLAIN | HS_NOT_NEGATIVE, &time);
    if (!hs_amount(r, node->child->next, HS_TEMPERATURE, HS_PLAIN, &temp) || !timed) return 0;
    *out = (hs_heat_point){time.value, temp.value};
    return 1;
}

void hs_read_log(hs_draft *d, const hs_node *node, hs_step *step) {
    hs_reader *r = d->reader;
    if (!hs_reader_list(r, node, 2, HS_MAX_LOG)) return;
    hs_heat_point *points = hs_reader_get(r, node->count, sizeof *points);
    size_t n = 0;
    int good = points != NULL;
    for (const hs_node *p = node->child; points && p; p = p->next, n++) {
        int read = read_point(r, p, &points[n]);
        good &= read;
        if (read && good && n > 0 && !(points[n].time_s > points[n - 1].time_s))
            hs_reader_say(r, p, HS_E_IMPOSSIBLE, "later than the point before",
                          "the times of a log must rise");
    }
    if (!good) return;
    step->log = points;
    step->log_points = n;
}
