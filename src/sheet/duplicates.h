/* Keys that stand twice in one object. */
#ifndef HS_SHEET_DUPLICATES_H
#define HS_SHEET_DUPLICATES_H

#include "sheet/reader.h"

/** Note every key that an object of the tree holds a second time. NULL: nothing to do. */
void hs_find_duplicates(hs_reader *r, const hs_node *root);

#endif
