/* Do the numbers of one quantity go together? What slips in by a stray key is refused here. */
#ifndef HS_UNITS_AGREE_H
#define HS_UNITS_AGREE_H

#include "units/forms.h"

/** All units known: refuses inches beside millimetres, Fahrenheit beside Celsius, fractions of
 *  degrees or hardness, and a one-sided tolerance wider than the value it stands behind. */
hs_status hs_draft_agree(const hs_draft *d, const hs_cursor *c);

#endif
