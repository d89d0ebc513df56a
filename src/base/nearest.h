/* Did you mean: the listed word nearest to one that was typed. Suggests, never acts. */
#ifndef HS_BASE_NEAREST_H
#define HS_BASE_NEAREST_H

#include <stddef.h>

/** The word of `list` (n entries) that takes the fewest single-letter changes from `word`, letter
 *  case not counted; NULL when even the nearest is further off than a third of its letters. */
const char *hs_nearest(const char *word, const char *const *list, size_t n);

/** Number of single-letter insertions, deletions, changes and swaps of neighbours between two words
 *  (Damerau 1964, no letter touched twice), letter case not counted; words longer than 63 bytes
 * count as far apart (1000). */
size_t hs_edit_distance(const char *a, const char *b);

#endif
