/* Two numbers side by side in one register: what gcc and clang make of it adds in the same order on
 * any machine, which a loop left to the compiler would not. */
#ifndef HS_BASE_PAIR_H
#define HS_BASE_PAIR_H

#include <string.h>

typedef double hs_pair __attribute__((vector_size(16)));
typedef long long hs_pair_mask __attribute__((vector_size(16)));

static inline hs_pair hs_pair_load(const double *from) {
    hs_pair p;
    memcpy(&p, from, sizeof p);
    return p;
}

static inline hs_pair hs_pair_of(double value) {
    return (hs_pair){value, value};
}

/** Of each: a where the mask is set, else 0. */
static inline hs_pair hs_pair_where(hs_pair_mask mask, hs_pair a) {
    return (hs_pair)(mask & (hs_pair_mask)a);
}

/** Of each: a where the mask is set, else b. */
static inline hs_pair hs_pair_choose(hs_pair_mask mask, hs_pair a, hs_pair b) {
    return (hs_pair)((mask & (hs_pair_mask)a) | (~mask & (hs_pair_mask)b));
}

static inline double hs_pair_sum(hs_pair p) {
    return p[0] + p[1];
}

#endif
