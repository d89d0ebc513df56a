/* Things that are never planned because they hurt people (tables/forbidden.csv); found in the keys
 * and words of a sheet, not in names and notes. */
#ifndef HS_SHEET_FORBIDDEN_H
#define HS_SHEET_FORBIDDEN_H

#include "hardskin/base/status.h"

enum { HS_IN_TANK = 1, HS_IN_FIRE = 2, HS_ANYWHERE = 3 };

/** Does the text hold a word that is forbidden in that scope? 1: err says the hazard and its source.
 *  Whole words, letter case not counted; '_' and '-' part words. */
int hs_forbidden(const char *text, unsigned scope, hs_error *err);

#endif
