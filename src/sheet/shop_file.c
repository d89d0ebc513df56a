#include "sheet/shop_file.h"

#include "base/num.h"
#include "sheet/scan.h"
#include "sheet/tree.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { LONGEST_PATH = 4096 };

/* One byte more than allowed is read, so that the scan can say the file is too long. */
static char *read_file(const char *path, size_t *size) {
    FILE *file = fopen(path, "rb");
    char *text = NULL;
    size_t room = 0;
    *size = 0;
    while (file && *size <= HS_SCAN_BYTES) {
        if (*size == room) {
            room = room ? 2 * room : 16384;
            char *more = realloc(text, room);
            if (!more) break;
            text = more;
        }
        size_t got = fread(text + *size, 1, room - *size, file);
        *size += got;
        if (got == 0) break;
    }
    int failed = !file || ferror(file) || (text && *size == room && *size <= HS_SCAN_BYTES);
    if (file) fclose(file);
    if (!failed) return text;
    free(text);
    return NULL;
}

/* Only a plain name beside the sheet or below its folder. */
static int is_beside(const char *name) {
    return name[0] != '/' && name[0] != '\\' && !strstr(name, "..") && !strchr(name, ':');
}

static void fault_in_file(hs_draft *d, const hs_node *node, const char *name, hs_error *err) {
    char text[sizeof err->message];
    snprintf(text, sizeof text, "%.100s:%d:%d: %.190s", name, err->line, err->column, err->message);
    memcpy(err->message, text, sizeof text);
    err->column = 0;
    hs_reader_fault(d->reader, node, HS_AT_VALUE, err);
}

static const hs_node *read_named(hs_draft *d, const hs_node *node, const char *name,
                                 unsigned long long *hash) {
    char path[LONGEST_PATH];
    size_t size;
    hs_error err = {0};
    hs_node *root = NULL;
    snprintf(path, sizeof path, "%s/%s", d->reader->folder, name);
    errno = 0;
    char *text = read_file(path, &size);
    if (!text) {
        hs_reader_say(d->reader, node, HS_E_MISSING,
                      "put the file beside the sheet, or its object into \"shop\"",
                      "cannot read the shop file %.120s: %s", name,
                      errno ? strerror(errno) : "no memory or no file");
        return NULL;
    }
    *hash = hs_hash(*hash, text, size);
    hs_status status = hs_tree_read(&root, d->reader->arena, text, size, name, &err);
    free(text);
    if (status != HS_OK) {
        fault_in_file(d, node, name, &err);
        return NULL;
    }
    root->parent = node->parent; /* so that pointers read /shop/... */
    root->key = "shop";
    return root;
}

const hs_node *hs_shop_object(hs_draft *d, unsigned long long *hash) {
    const hs_node *node = hs_node_find(d->root, "shop");
    const char *name;
    d->reader->shop_place = node;
    if (!node || node->kind != HS_NODE_TEXT) return node;
    if (!hs_reader_text(d->reader, node, &name)) return NULL;
    if (is_beside(name)) return read_named(d, node, name, hash);
    hs_reader_say(d->reader, node, HS_E_WORD, "\"shop\": \"shop.json\"",
                  "the shop file lies beside the sheet or below its folder");
    return NULL;
}
