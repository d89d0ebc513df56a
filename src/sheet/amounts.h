/* Quantities of a sheet: read by units, checked for what every place forbids, echoed. */
#ifndef HS_SHEET_AMOUNTS_H
#define HS_SHEET_AMOUNTS_H

#include "sheet/reader.h"

enum { HS_PLAIN = 1, HS_ABOVE_ZERO = 2, HS_NOT_NEGATIVE = 4 };

/* All return 1 when *out was set, 0 after noting a fault, and 0 silently for a missing node. */

int hs_amount(hs_reader *r, const hs_node *node, hs_kind kind, unsigned rules, hs_quantity *out);

/** One plain number above zero. */
int hs_amount_positive(hs_reader *r, const hs_node *node, hs_kind kind, double *out);

/** A number above zero, perhaps with its doubt. */
int hs_amount_span(hs_reader *r, const hs_node *node, hs_kind kind, hs_span *out);

/** A case depth; a range or CHD form counts by its low end. */
int hs_amount_case(hs_reader *r, const hs_node *node, double *out_m);

/** A hardness, both ends in HV by tables/e140.csv. */
int hs_amount_hardness(hs_reader *r, const hs_node *node, double *low_HV, double *high_HV);

int hs_amount_size(hs_reader *r, const hs_node *node, hs_size *out);

/** A text for one of the readers of units/split.h: not a number, not forbidden; for the echo. */
int hs_amount_text(hs_reader *r, const hs_node *node, const char **out);

#endif
