/* "accept_hydrogen_risk": who took the risk, and on which day. */
#ifndef HS_SHEET_ACCEPTANCE_H
#define HS_SHEET_ACCEPTANCE_H

#include "sheet/draft.h"

/** Read it; a fault where it names nobody or no day. Nothing for a missing node. */
void hs_read_acceptance(hs_draft *d, const hs_node *node, const char **out);

/** Does the text hold a day: 2026-05-04, 4.5.2026, 4/5/2026, 4 May 2026, May 4, 2026? */
int hs_has_day(const char *text);

/** Does it hold a name or an office: two letters in a row that are no month and no stopgap? */
int hs_has_name(const char *text);

#endif
