/* The whole sheet: scan, tree, reading, checks. */
#include "hardskin/sheet/sheet.h"

#include "base/num.h"
#include "sheet/draft.h"
#include "sheet/duplicates.h"
#include "sheet/forbidden.h"
#include "sheet/scan.h"
#include "sheet/shop_file.h"
#include "sheet/tree.h"

#include <stdlib.h>
#include <string.h>

struct hs_sheet {
    hs_arena arena;
    hs_draft draft; /* the job's arrays stand here */
    hs_reader reader;
};

static const char *const keys[] = {"hardskin", "job",   "units",      "part", "dimensions", "faces",
                                   "features", "route", "test_piece", "shop", "measured"};
static const char *const units[] = {"mm", "inch"};

static int read_version(hs_reader *r, const hs_node *root) {
    const hs_node *node = hs_reader_need(r, root, "hardskin");
    if (!node) return 1;
    if (node->kind == HS_NODE_NUMBER && !node->spot.long_number && node->number == 1) return 1;
    hs_reader_say(r, node, node->kind == HS_NODE_NUMBER ? HS_E_VERSION : HS_E_TYPE,
                  "\"hardskin\": 1", "this program reads version 1 of the sheet");
    return node->kind != HS_NODE_NUMBER; /* another version may mean other things: stop here */
}

static void read_all(hs_draft *d, unsigned long long *hash) {
    hs_reader *r = d->reader;
    size_t inch = 0;
    r->scope = HS_ANYWHERE;
    if (!hs_reader_object(r, d->root, HS_WORDS(keys))) return;
    r->scope = HS_IN_FIRE;
    hs_reader_text(r, hs_reader_need(r, d->root, "job"), &d->job.name);
    hs_reader_word(r, hs_node_find(d->root, "units"), HS_WORDS(units), &inch);
    d->job.inch_first = inch == 1;
    hs_read_part(d);
    hs_read_faces(d);
    hs_read_dimensions(d);
    hs_read_features(d);
    hs_read_route(d);
    hs_read_test_piece(d);
    const hs_node *shop = hs_shop_object(d, hash);
    if (shop) hs_find_duplicates(r, shop->file ? shop : NULL);
    hs_read_shop(d, shop);
    hs_read_measured(d);
    hs_check_order(d);
    hs_check_sizes(d);
    hs_check_ground(d);
    hs_check_features(d);
    hs_check_carbon(d);
}

static void point_at_arrays(hs_draft *d) {
    d->job.dimension = d->dimension;
    d->job.face = d->face;
    d->job.feature = d->feature;
    d->job.step = d->step;
}

static void collect_echoes(hs_draft *d) {
    hs_reader *r = d->reader;
    hs_read *list = hs_reader_get(r, r->echoes, sizeof *list);
    if (!list) return;
    for (const hs_echo *e = r->first; e; e = e->next)
        list[d->job.reads++] = e->read;
    d->job.read = list;
}

/* In the order of the text, whatever order they were found in. */
static void sort_faults(hs_error *faults, size_t n) {
    for (size_t i = 1; i < n; i++)
        for (size_t k = i; k > 0; k--) {
            const hs_error *a = &faults[k - 1], *b = &faults[k];
            if (a->line < b->line || (a->line == b->line && a->column <= b->column)) break;
            hs_error held = *a;
            faults[k - 1] = *b;
            faults[k] = held;
        }
}

static void read_sheet(hs_sheet *s, const char *text, size_t size) {
    hs_reader *r = &s->reader;
    hs_draft *d = &s->draft;
    hs_error err = {0};
    hs_node *root = NULL;
    unsigned long long hash = hs_hash(HS_HASH_START, text, size);
    d->reader = r;
    if (hs_tree_read(&root, r->arena, text, size, NULL, &err) != HS_OK) {
        r->faults[r->fault_count++] = err;
        return;
    }
    if (hs_scan_mark(text, size))
        r->notice[r->notices++] = "the file starts with a byte-order mark; it is passed over";
    d->root = root;
    hs_find_duplicates(r, root);
    if (read_version(r, root)) read_all(d, &hash);
    point_at_arrays(d);
    collect_echoes(d);
    d->job.hash = hash;
    sort_faults(r->faults, r->fault_count);
}

static hs_status no_memory(hs_error *faults, size_t *n) {
    *n = 1;
    faults[0] = (hs_error){0};
    return hs_fail(&faults[0], HS_E_MEMORY, "", "no memory left to read the sheet");
}

hs_status hs_sheet_read(hs_sheet **sheet, hs_error *faults, size_t *fault_count, const char *text,
                        size_t size, const char *folder) {
    *sheet = NULL;
    *fault_count = 0;
    hs_sheet *s = calloc(1, sizeof *s);
    hs_units *known = hs_units_new();
    if (!s || !known) {
        free(s);
        hs_units_free(known);
        return no_memory(faults, fault_count);
    }
    s->reader = (hs_reader){.arena = &s->arena, .units = known, .folder = folder, .faults = faults};
    read_sheet(s, text, size);
    hs_units_free(known);
    s->reader.units = NULL;
    s->reader.faults = NULL;
    *fault_count = s->reader.fault_count;
    if (*fault_count == 0) {
        *sheet = s;
        return HS_OK;
    }
    hs_sheet_free(s);
    return faults[0].status;
}

const hs_job *hs_sheet_job(const hs_sheet *sheet) {
    return &sheet->draft.job;
}

const char *hs_sheet_notice(const hs_sheet *sheet, size_t i) {
    return i < sheet->reader.notices ? sheet->reader.notice[i] : NULL;
}

static const hs_node *find_pointer(const hs_node *node, const char *pointer) {
    char own[sizeof(hs_error){0}.pointer];
    hs_node_pointer(own, sizeof own, node);
    size_t length = strlen(own);
    if (strncmp(pointer, own, length) != 0) return NULL;
    if (!pointer[length]) return node;
    if (pointer[length] != '/') return NULL;
    const hs_node *found = NULL;
    for (const hs_node *m = node->child; m && !found; m = m->next)
        found = find_pointer(m, pointer);
    return found;
}

int hs_sheet_place(int *line, int *column, const hs_sheet *sheet, const char *pointer) {
    const hs_node *node = find_pointer(sheet->draft.root, pointer);
    if (!node) return 0;
    *line = node->spot.line;
    *column = node->spot.column;
    return 1;
}

void hs_sheet_place_all(hs_error *faults, size_t n, const hs_sheet *sheet) {
    for (size_t i = 0; i < n; i++) {
        hs_error *e = &faults[i];
        while (e->line == 0 && e->pointer[0] &&
               !hs_sheet_place(&e->line, &e->column, sheet, e->pointer)) {
            char *last = strrchr(e->pointer, '/');
            *(last ? last : e->pointer) = '\0';
        }
    }
    sort_faults(faults, n);
}

void hs_sheet_free(hs_sheet *sheet) {
    if (!sheet) return;
    hs_arena_free(&sheet->arena);
    free(sheet);
}
