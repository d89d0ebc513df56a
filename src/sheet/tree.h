/* From bytes to the tree: strict scan, then cJSON, then both laid side by side. */
#ifndef HS_SHEET_TREE_H
#define HS_SHEET_TREE_H

#include "base/arena.h"
#include "hardskin/base/status.h"
#include "sheet/node.h"

/** Read a text into a tree in the arena.
 *
 *    root        out
 *    arena       in/out
 *    text, size  in
 *    file        in    name kept in the nodes; NULL for the sheet
 *
 *  Returns  HS_OK, or as hs_scan with the place in err. */
hs_status hs_tree_read(hs_node **root, hs_arena *arena, const char *text, size_t size,
                       const char *file, hs_error *err);

#endif
