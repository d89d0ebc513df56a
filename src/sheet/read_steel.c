/* part.steel: a name of the table, or an analysis "like" one of them. */
#include "sheet/amounts.h"
#include "sheet/draft.h"

#include <stdio.h>
#include <string.h>

static const char *const keys[] = {"like", "C", "Mn", "Si", "Cr", "Ni", "Mo",
                                   "Cu",   "V", "Al", "S",  "P",  "Pb"};

/* In the order of `keys` from its second word on. */
static const size_t offsets[] = {
    offsetof(hs_composition, C),  offsetof(hs_composition, Mn), offsetof(hs_composition, Si),
    offsetof(hs_composition, Cr), offsetof(hs_composition, Ni), offsetof(hs_composition, Mo),
    offsetof(hs_composition, Cu), offsetof(hs_composition, V),  offsetof(hs_composition, Al),
    offsetof(hs_composition, S),  offsetof(hs_composition, P),  offsetof(hs_composition, Pb)};

static void put(hs_composition *composition, size_t offset, double value) {
    memcpy((char *)composition + offset, &value, sizeof value);
}

static int find(hs_reader *r, const hs_node *node, hs_steel *steel) {
    const char *name;
    hs_error err = {0};
    if (!hs_reader_text(r, node, &name)) return 0;
    if (hs_steel_find(steel, name, &err) == HS_OK) return 1;
    hs_reader_fault(r, node, HS_AT_VALUE, &err);
    return 0;
}

static void read_analysis(hs_reader *r, const hs_node *node, hs_steel *steel) {
    char name[sizeof steel->name];
    for (size_t i = 0; i < sizeof offsets / sizeof *offsets; i++) {
        const hs_node *element = hs_node_find(node, keys[i + 1]);
        hs_quantity q;
        if (!hs_amount(r, element, HS_PERCENT, HS_NOT_NEGATIVE, &q)) continue;
        if (q.high > 100) {
            hs_reader_say(r, element, HS_E_IMPOSSIBLE, "\"C\": \"0.16 %\"", "more than 100 %%");
            continue;
        }
        put(&steel->low, offsets[i], q.low);
        put(&steel->mid, offsets[i], q.value);
        put(&steel->high, offsets[i], q.high);
    }
    if (hs_node_find(node, "C")) steel->only_maxima = 0;
    if (steel->mid.Cr > 0 || steel->mid.Ni > 0) steel->alloyed = 1;
    snprintf(name, sizeof name, "like %.*s", (int)sizeof name - 6, steel->name);
    memcpy(steel->name, name, sizeof name);
}

void hs_read_steel(hs_draft *d, const hs_node *node) {
    hs_steel *steel = &d->job.part.steel;
    if (!node) return;
    if (node->kind != HS_NODE_OBJECT) {
        find(d->reader, node, steel);
        return;
    }
    hs_reader_object(d->reader, node, HS_WORDS(keys));
    hs_steel like = {0};
    int found = find(d->reader, hs_reader_need(d->reader, node, "like"), &like);
    read_analysis(d->reader, node, &like);
    if (found) *steel = like;
}
