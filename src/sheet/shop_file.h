/* The shop file beside a sheet. */
#ifndef HS_SHEET_SHOP_FILE_H
#define HS_SHEET_SHOP_FILE_H

#include "sheet/draft.h"

/** The shop object of the sheet, from the sheet itself or from the file it names; NULL when there
 *  is none or after a fault. `hash` is carried on over the file's bytes. */
const hs_node *hs_shop_object(hs_draft *d, unsigned long long *hash);

#endif
