/* The key "measured": what the bench found after hardening. */
#include "constants.h"
#include "hardskin/tables/table.h"
#include "sheet/amounts.h"
#include "sheet/draft.h"

#include <string.h>

static const char *const keys[] = {"size", "shape", "case", "hardness"};
static const char *const size_keys[] = {"is", "how", "checked", "ground_off"};
static const char *const hows[] = {"micrometer", "over the bow"};
static const char *const flat_keys[] = {"bow", "over", "crown", "corner_lift"};
static const char *const bar_keys[] = {"run_out"};
static const char *const ring_keys[] = {"ovality"};
static const char *const case_keys[] = {"depth", "to", "on", "by", "after", "checked"};
static const char *const pieces[] = {"test piece", "part"};
static const char *const afters[] = {"quench", "temper", "descale", "bake", "straighten"};
static const char *const hardness_keys[] = {"is", "by"};
static const char *const hardness_ways[] = {"files", "hardness tester"};
static const char *const shape_keys[] = {"bow",         "over",    "crown",
                                         "corner_lift", "run_out", "ovality"};

/* Every key of `node` must be the name of a dimension; its index, or -1 after a fault. */
static int dimension_of(hs_draft *d, const hs_node *member) {
    const char *names[HS_MAX_DIMENSIONS];
    hs_words words = {names, d->job.dimensions};
    char help[sizeof(hs_error){0}.help];
    if (!strcmp(member->key, "note")) return -1;
    for (size_t i = 0; i < words.n; i++) {
        names[i] = d->dimension[i].name;
        if (!strcmp(names[i], member->key)) return (int)i;
    }
    hs_reader_suggest(help, sizeof help, member->key, words);
    hs_reader_say_key(d->reader, member, HS_E_KEY, help, "there is no dimension \"%.80s\"",
                      member->key);
    return -1;
}

static void read_size(hs_draft *d, const hs_node *node, hs_measured_dimension *m) {
    hs_reader *r = d->reader;
    size_t how = HS_BY_MICROMETER;
    if (!hs_reader_object(r, node, HS_WORDS(size_keys))) return;
    m->size_given = hs_amount_positive(r, hs_reader_need(r, node, "is"), HS_LENGTH, &m->size_m);
    hs_reader_word(r, hs_node_find(node, "how"), HS_WORDS(hows), &how);
    m->how = (hs_size_how)how;
    hs_reader_flag(r, hs_node_find(node, "checked"), &m->size_checked);
    const hs_node *ground = hs_node_find(node, "ground_off");
    if (ground) hs_amount_positive(r, ground, HS_LENGTH, &m->ground_m);
    m->pointer = hs_reader_pointer(r, m->size_given ? hs_node_find(node, "is") : node);
}

static void not_negative(hs_draft *d, const hs_node *node, double *out_m) {
    hs_quantity q;
    if (hs_amount(d->reader, node, HS_LENGTH, HS_PLAIN | HS_NOT_NEGATIVE, &q)) *out_m = q.value;
}

static void read_crown(hs_draft *d, const hs_node *node, const hs_dimension *dimension,
                       hs_measured_dimension *m) {
    const char *name;
    if (!hs_reader_text(d->reader, node, &name)) return;
    int face = hs_draft_face(d, name);
    if (face >= 0 && ((size_t)face == dimension->face[0] || (size_t)face == dimension->face[1])) {
        m->crown = face;
        return;
    }
    const char *names[2] = {d->face[dimension->face[0]].name, d->face[dimension->face[1]].name};
    char help[sizeof(hs_error){0}.help];
    hs_reader_suggest(help, sizeof help, name, HS_WORDS(names));
    hs_reader_say(d->reader, node, HS_E_WORD, help, "\"%.80s\" is no face of this dimension", name);
}

static hs_words keys_of_form(hs_form form) {
    if (form == HS_BAR) return HS_WORDS(bar_keys);
    return form == HS_RING ? HS_WORDS(ring_keys) : HS_WORDS(flat_keys);
}

/* How the shape of each form is read at the bench, and how that compares with what is given. */
static const char *shape_form(hs_form form) {
    static const char *const forms[] = {
        [HS_PLATE] = "\"bow\": \"0.18 mm\", the gap under a straightedge or the rise on the plate",
        [HS_BAR] =
            ("\"run_out\": the whole swing of the indicator in a turn between centres (TIR), "
             "which is twice the bow at mid-length"),
        [HS_RING] = "\"ovality\": \"0.05 mm\", largest less smallest diameter",
        [HS_PROFILE] = "\"bow\": \"0.18 mm\", the gap under a straightedge"};
    return forms[form];
}

/* Keys that belong to the shape of another form; 1 when there is none. */
static int refuse_other_shapes(hs_reader *r, const hs_node *node, hs_form form) {
    static const char *const forms[] = {"a plate", "a bar", "a ring", "a profile"};
    hs_words own = keys_of_form(form), all = HS_WORDS(shape_keys);
    int none = 1;
    for (const hs_node *m = node->child; m; m = m->next) {
        int is_own = 0, is_shape = 0;
        for (size_t i = 0; i < own.n; i++)
            is_own |= !strcmp(m->key, own.list[i]);
        for (size_t i = 0; i < all.n; i++)
            is_shape |= !strcmp(m->key, all.list[i]);
        if (is_own || !is_shape) continue;
        none = 0;
        hs_reader_say_key(r, m, HS_E_KEY, shape_form(form), "\"%s\" is not read on %s", m->key,
                          forms[form]);
    }
    return none;
}

static void read_shape(hs_draft *d, const hs_node *node, size_t i, hs_measured_dimension *m) {
    hs_reader *r = d->reader;
    hs_form form = d->job.part.form;
    if (!hs_reader_object(r, node, HS_WORDS(shape_keys))) return;
    if (!refuse_other_shapes(r, node, form)) return;
    static const char *const main_key[] = {
        [HS_PLATE] = "bow", [HS_BAR] = "run_out", [HS_RING] = "ovality", [HS_PROFILE] = "bow"};
    m->shape_given = hs_reader_need(r, node, main_key[form]) != NULL;
    if (!m->pointer) m->pointer = hs_reader_pointer(r, node);
    not_negative(d, hs_node_find(node, "bow"), &m->bow_m);
    not_negative(d, hs_node_find(node, "corner_lift"), &m->corner_lift_m);
    not_negative(d, hs_node_find(node, "run_out"), &m->run_out_m);
    not_negative(d, hs_node_find(node, "ovality"), &m->ovality_m);
    const hs_node *over = hs_node_find(node, "over");
    double most_m =
        d->job.part.length_m > d->job.part.width_m ? d->job.part.length_m : d->job.part.width_m;
    if (hs_amount_positive(r, over, HS_LENGTH, &m->over_m) && most_m > 0 && m->over_m > most_m)
        hs_reader_say(r, over, HS_E_DISAGREE, "the length over which the bow was measured",
                      "the bow is measured over more than the part's length");
    if (d->dimension_node[i]) read_crown(d, hs_node_find(node, "crown"), &d->dimension[i], m);
}

/* Names from the table, in the order of the enum; the first row is for what was not said. */
static hs_words case_ways(const char *names[HS_CASE_WAYS]) {
    for (size_t i = 1; i < HS_CASE_WAYS; i++)
        names[i - 1] = hs_table_text(hs_table_get(HS_TABLE_CASE_WAYS), i, HS_CASE_WAYS_WAY);
    return (hs_words){names, HS_CASE_WAYS - 1};
}

static int reads_hardness(hs_case_way way) {
    const hs_table *t = hs_table_get(HS_TABLE_CASE_WAYS);
    return !strcmp(hs_table_text(t, (size_t)way, HS_CASE_WAYS_READS), "hardness");
}

static void read_case(hs_draft *d, const hs_node *node, hs_measured *m) {
    hs_reader *r = d->reader;
    size_t on = 0, after = 0, way = 0;
    double high_HV;
    const char *names[HS_CASE_WAYS];
    if (!hs_reader_object(r, node, HS_WORDS(case_keys))) return;
    hs_quantity q;
    const hs_node *depth = hs_reader_need(r, node, "depth"), *to = hs_node_find(node, "to");
    if (hs_amount(r, depth, HS_CASE_DEPTH, HS_ABOVE_ZERO, &q)) m->case_m = q.value;
    if (depth) m->case_pointer = hs_reader_pointer(r, depth);
    hs_amount_hardness(r, to, &m->case_limit_HV, &high_HV);
    hs_reader_word(r, hs_node_find(node, "on"), HS_WORDS(pieces), &on);
    m->on_part = on == 1;
    if (hs_reader_word(r, hs_node_find(node, "by"), case_ways(names), &way)) {
        m->case_way = (hs_case_way)(way + 1);
        m->case_by = names[way];
    }
    if (to && !reads_hardness(m->case_way))
        hs_reader_say(r, to, HS_E_DISAGREE, "leave \"to\" out: the program converts the reading",
                      "%s reads carbon, not a depth to a hardness",
                      m->case_way == HS_CASE_ETCH ? "an etched section" : "a fracture");
    if (hs_reader_word(r, hs_node_find(node, "after"), HS_WORDS(afters), &after))
        m->case_after = afters[after];
    hs_reader_flag(r, hs_node_find(node, "checked"), &m->case_checked);
}

static void read_hardness(hs_draft *d, const hs_node *node, hs_measured *m) {
    hs_reader *r = d->reader;
    if (!hs_reader_object(r, node, HS_WORDS(hardness_keys))) return;
    const hs_node *is = hs_reader_need(r, node, "is");
    if (hs_amount_hardness(r, is, &m->hardness_low_HV, &m->hardness_high_HV)) {
        hs_quantity q;
        m->hardness_text = is->text;
        if (hs_quantity_read(&q, r->units, is->text, HS_HARDNESS, NULL) == HS_OK)
            m->hardness_scale = q.scale;
    }
    size_t way = 0;
    if (!hs_reader_word(r, hs_node_find(node, "by"), HS_WORDS(hardness_ways), &way)) return;
    m->hardness_by = hardness_ways[way];
    m->by_files = way == 0;
}

static int is_object(hs_draft *d, const hs_node *node) {
    if (!node) return 0;
    if (node->kind == HS_NODE_OBJECT) return 1;
    hs_reader_say(d->reader, node, HS_E_TYPE, "{ \"thickness\": { ... } }",
                  "an object of dimensions belongs here");
    return 0;
}

void hs_read_measured(hs_draft *d) {
    hs_measured *m = &d->job.measured;
    *m = (hs_measured){.case_limit_HV = HS_K_SHEET_DEFAULT_CASE_LIMIT,
                       .case_by = "",
                       .case_after = "",
                       .hardness_text = "",
                       .hardness_by = ""};
    for (size_t i = 0; i < HS_MAX_DIMENSIONS; i++)
        m->dimension[i].crown = -1;
    const hs_node *node = hs_node_find(d->root, "measured");
    if (!hs_reader_object(d->reader, node, HS_WORDS(keys))) return;
    m->stated = 1;
    const hs_node *size = hs_node_find(node, "size"), *shape = hs_node_find(node, "shape");
    for (const hs_node *n = is_object(d, size) ? size->child : NULL; n; n = n->next) {
        int i = dimension_of(d, n);
        if (i >= 0) read_size(d, n, &m->dimension[i]);
    }
    for (const hs_node *n = is_object(d, shape) ? shape->child : NULL; n; n = n->next) {
        int i = dimension_of(d, n);
        if (i >= 0 && d->form_known) read_shape(d, n, (size_t)i, &m->dimension[i]);
    }
    read_case(d, hs_node_find(node, "case"), m);
    read_hardness(d, hs_node_find(node, "hardness"), m);
}
