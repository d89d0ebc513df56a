#include "report/bar.h"

#include <math.h>
#include <string.h>

/* Column of a size; -1 before the window, HS_BAR_WIDTH behind it. The ends are the first and the
 * last column. Past an end counts from a millionth of the window. */
static int column_of(double at, double low, double high) {
    double share = (at - low) / (high - low);
    if (!(share >= -1e-6)) return -1;
    if (share > 1 + 1e-6) return HS_BAR_WIDTH;
    return (int)lround(fmin(fmax(share, 0), 1) * (HS_BAR_WIDTH - 1));
}

void hs_bar_window(char out[HS_BAR_WIDTH + 1], double low, double high, double aim,
                   double tolerance) {
    memset(out, '.', HS_BAR_WIDTH);
    out[HS_BAR_WIDTH] = '\0';
    out[0] = out[HS_BAR_WIDTH - 1] = '|';
    if (!(high > low) || !isfinite(aim)) return;
    int from = column_of(aim - tolerance, low, high);
    int to = column_of(aim + tolerance, low, high);
    int middle = column_of(aim, low, high);
    for (int i = 1; i < HS_BAR_WIDTH - 1; i++)
        if (i >= from && i <= to) out[i] = '#';
    out[from < 0 ? 0 : from] = from < 0 ? '<' : '[';
    out[to >= HS_BAR_WIDTH ? HS_BAR_WIDTH - 1 : to] = to >= HS_BAR_WIDTH ? '>' : ']';
    if (middle >= 0 && middle < HS_BAR_WIDTH) out[middle] = 'O';
}

void hs_bar_crossed(char out[HS_BAR_WIDTH + 1]) {
    memset(out, 'x', HS_BAR_WIDTH);
    out[0] = out[HS_BAR_WIDTH - 1] = '|';
    out[HS_BAR_WIDTH] = '\0';
}
