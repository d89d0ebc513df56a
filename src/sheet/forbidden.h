/* Things that are never planned because they hurt people; found in any word of a sheet. */
#ifndef HS_SHEET_FORBIDDEN_H
#define HS_SHEET_FORBIDDEN_H

#include "hardskin/base/status.h"

enum { HS_IN_TANK = 1, HS_IN_FIRE = 2, HS_ANYWHERE = 3 };

/** Does the text hold a word that is forbidden in that scope? 1: err says the hazard.
 *  Whole words, letter case not counted; '_' and '-' part words. */
int hs_forbidden(const char *text, unsigned scope, hs_error *err);

#endif
