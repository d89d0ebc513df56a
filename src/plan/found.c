#include "plan/found.h"

#include <math.h>

void hs_found_share(double stock_m[2], const hs_window_found *found, double total_m) {
    double room[2];
    for (int k = 0; k < 2; k++)
        room[k] = found->bad[k].ground ? fmax(0, found->may_m[k] - found->need_m[k]) : 0;
    double spare = total_m - found->need_m[0] - found->need_m[1];
    double both = room[0] + room[1];
    double first = both > 0                                       ? room[0] / both
                   : found->bad[0].ground == found->bad[1].ground ? 0.5
                                                                  : found->bad[0].ground;
    stock_m[0] = found->need_m[0] + first * spare;
    stock_m[1] = total_m - stock_m[0];
}
