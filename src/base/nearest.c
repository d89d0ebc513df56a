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

/* Two letters typed in the wrong order. */
static int swapped(const char *a, const char *b, size_t i, size_t j) {
    return i > 1 && j > 1 && same(a[i - 1], b[j - 2]) && same(a[i - 2], b[j - 1]);
}

size_t hs_edit_distance(const char *a, const char *b) {
    size_t rows[3][LONGEST + 1], n = strlen(a), m = strlen(b);
    if (n > LONGEST || m > LONGEST) return FAR_APART;
    for (size_t j = 0; j <= m; j++)
        rows[0][j] = j;
    for (size_t i = 1; i <= n; i++) {
        const size_t *last = rows[(i - 1) % 3], *before = rows[(i + 1) % 3];
        size_t *row = rows[i % 3];
        row[0] = i;
        for (size_t j = 1; j <= m; j++) {
            size_t change = last[j - 1] + (same(a[i - 1], b[j - 1]) ? 0 : 1);
            row[j] = smaller(change, smaller(last[j], row[j - 1]) + 1);
            if (swapped(a, b, i, j)) row[j] = smaller(row[j], before[j - 2] + 1);
        }
    }
    return rows[n % 3][m];
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
