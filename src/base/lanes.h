/* Four numbers side by side: what gcc and clang make of it adds in the same order on any machine,
 * which a loop left to the compiler would not. Never handed to or returned by a function: how that
 * is done depends on the machine, so what would be functions are macros here. */
#ifndef HS_BASE_LANES_H
#define HS_BASE_LANES_H

#include <string.h>

enum { HS_LANES = 4 };

typedef double hs_lanes __attribute__((vector_size(32)));
typedef long long hs_lanes_mask __attribute__((vector_size(32)));

/** Before a function: built twice, for machines whose registers hold four numbers and for all; both
 *  give the same bits. */
#if defined(__x86_64__) && defined(__gnu_linux__)
#define HS_WIDE __attribute__((target_clones("avx2", "default")))
#else
#define HS_WIDE
#endif

#define HS_LANES_LOAD(lanes, from) memcpy(&(lanes), (from), sizeof(hs_lanes))
#define HS_LANES_STORE(to, lanes) memcpy((to), &(lanes), sizeof(hs_lanes))

/** Of each: `lanes` where the mask is set, else 0. */
#define HS_LANES_WHERE(mask, lanes) ((hs_lanes)((mask) & (hs_lanes_mask)(lanes)))

/** Their sum, always in this order. */
#define HS_LANES_SUM(lanes) (((lanes)[0] + (lanes)[1]) + ((lanes)[2] + (lanes)[3]))

/** Of each: held between -limit and limit; what is no number stays none. */
#define HS_LANES_HELD(lanes, limit)                                                                \
    ((hs_lanes)((((lanes) > (limit)) & (hs_lanes_mask)(limit)) |                                   \
                (((lanes) < -(limit)) & (hs_lanes_mask)(-(limit))) |                               \
                (~(((lanes) > (limit)) | ((lanes) < -(limit))) & (hs_lanes_mask)(lanes))))

#endif
