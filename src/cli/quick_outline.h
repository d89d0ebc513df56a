/* A cross-section typed as corners in mm. */
#ifndef HS_CLI_QUICK_OUTLINE_H
#define HS_CLI_QUICK_OUTLINE_H

#include "hardskin/model/section.h"

enum { QUICK_CORNERS = 200, QUICK_HOLES = 8 };

/** A section with the corners it points to: it must not be copied. */
typedef struct quick_outline {
    size_t n;
    hs_point at[QUICK_CORNERS];
    hs_outline hole[QUICK_HOLES];
    hs_section section;
} quick_outline;

/** Read "0,0 60,0 60,20 0,20", and holes parted by ';' (NULL: none). What the section encloses is
 *  not checked.  Returns HS_OK; HS_E_NUMBER with the corner; HS_E_TOO_LARGE. */
hs_status quick_outline_read(quick_outline *out, const char *outline, const char *holes,
                             hs_error *err);

#endif
