/* The window drawn in one line of text. */
#ifndef HS_REPORT_BAR_H
#define HS_REPORT_BAR_H

#include <stddef.h>

enum { HS_BAR_WIDTH = 61 };

/** Draw a window: |...[##O##]...| : the bars are the ends of the window, the brackets what the shop
 *  may offer (aim and its tolerance), O the aim. An offer that reaches past an end shows as < or >
 *  in place of that bar.
 *
 *    out            HS_BAR_WIDTH + 1 bytes
 *    low, high      ends of the window, low < high (any unit, the same for all)
 *    aim, tolerance inside the window; half width of the offer */
void hs_bar_window(char out[HS_BAR_WIDTH + 1], double low, double high, double aim,
                   double tolerance);

/** Draw a crossed window, where nothing fits: |xxxxx|. */
void hs_bar_crossed(char out[HS_BAR_WIDTH + 1]);

#endif
