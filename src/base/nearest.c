#include "base/nearest.h"

#include <ctype.h>
#include <string.h>

enum { LONGEST = 63, FAR_APART = 1000 };

static size_t smaller(size_t a, size_t b) {
    return a < b ? a : b;
}

static int same(char a, char b) {
    return tolower((unsigned char)a) == tolower((unsigned char)b);
}

size_t hs_edit_distance(const char *a, const char *b) {
    size_t row[LONGEST + 1], n = strlen(a), m = strlen(b);
    if (n > LONGEST || m > LONGEST) return FAR_APART;
    for (size_t j = 0; j <= m; j++)
        row[j] = j;
    for (size_t i = 1; i <= n; i++) {
        size_t diagonal = row[0];
        row[0] = i;
        for (size_t j = 1; j <= m; j++) {
            size_t change = diagonal + (same(a[i - 1], b[j - 1]) ? 0 : 1);
            diagonal = row[j];
            row[j] = smaller(change, smaller(row[j], row[j - 1]) + 1);
        }
    }
    return row[m];
}

const char *hs_nearest(const char *word, const char *const *list, size_t n) {
    const char *best = NULL;
    size_t least = FAR_APART;
    for (size_t i = 0; i < n; i++) {
        size_t distance = hs_edit_distance(word, list[i]);
        if (distance < least) {
            least = distance;
            best = list[i];
        }
    }
    return best && 3 * least <= strlen(best) + 2 ? best : NULL;
}
