/* What a single sum asks and gives: of all of them a line or two, of one each key with its form. */
#include "cli/quick_help.h"

#include "cli/out.h"

int quick_list(void) {
    hs_out out = {0};
    hs_out_add(&out,
               "hardskin quick TOPIC key=value ... [--json]\n"
               "(a key in brackets may be left out; hardskin quick TOPIC --help shows one)\n\n");
    for (size_t i = 0; quick_topic_at(i); i++) {
        const quick_topic *t = quick_topic_at(i);
        hs_out_add(&out, "%-11s %s\n           ", t->name, t->what);
        for (size_t k = 0; k < t->keys; k++)
            hs_out_add(&out, t->key[k].needed ? " %s" : " [%s]", t->key[k].name);
        hs_out_add(&out, "\n            -> %s\n", t->outputs);
    }
    return hs_out_write(&out);
}

static const char *form_of(const quick_key *key) {
    if (key->type == QUICK_SIZE) return "20 h7, 25 ±0.02 mm or 60 -0.05/-0.10 mm";
    return key->type == QUICK_QUANTITY ? hs_kind_forms(key->kind) : "a word or a list";
}

static void add_key(hs_out *out, const quick_key *key) {
    hs_out_add(out, "  %-14s %s", key->name, form_of(key));
    if (key->bare) hs_out_add(out, "; a bare number is %s", key->bare[0] ? key->bare : "taken");
    if (key->needed)
        hs_out_add(out, "   (needed)\n");
    else if (key->usual)
        hs_out_add(out, "   (else %s)\n", key->usual);
    else
        hs_out_add(out, "\n");
}

int quick_help(const quick_topic *topic) {
    hs_out out = {0};
    hs_out_add(&out, "hardskin quick %s key=value ... [--json]\n  %s\n\nkeys\n", topic->name,
               topic->what);
    for (size_t k = 0; k < topic->keys; k++)
        add_key(&out, &topic->key[k]);
    hs_out_add(&out, "answer\n  %s\nformula\n  %s\nvalid\n  %s\n", topic->outputs, topic->formula,
               topic->range);
    hs_out_add(&out, "A value with blanks is one quoted argument: at=\"925 C\"\n");
    return hs_out_write(&out);
}
