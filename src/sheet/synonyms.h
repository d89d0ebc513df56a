/* What people write where the sheet has another word. */
#ifndef HS_SHEET_SYNONYMS_H
#define HS_SHEET_SYNONYMS_H

#include <stddef.h>

/** The word of `list` (n entries) that means what was typed, or NULL; letter case not counted. */
const char *hs_synonym(const char *word, const char *const *list, size_t n);

#endif
