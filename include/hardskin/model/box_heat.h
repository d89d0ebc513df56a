/* The heat of a packed box: how the part in the middle follows the fire through the compound, up,
 * held, and down again after the fire is off.
 *
 * The box is reckoned as a body of one radius, half its least inner size, whose slowest mode of
 * heating is the box's own: between slab, cylinder and sphere by its proportions. The parts, with
 * the compound between them, are one lump in its middle, at one temperature. Heat goes through the
 * compound by contact, gas and rays between the grains (tables/box_heat.csv: no conductivity of
 * carburising compound at heat was found; the doubt on it is in the table). Not reckoned: the heat
 * the compound's carbonate takes, parts beside the middle, an uneven fire. */
#ifndef HARDSKIN_MODEL_BOX_HEAT_H
#define HARDSKIN_MODEL_BOX_HEAT_H

#include "hardskin/model/box_march.h"
#include "hardskin/model/box_path.h"

/** What is in the box. */
typedef struct hs_box_load {
    double size_m[3]; /* inner, in any order */
    double steel_m3;  /* all parts in it, 0 or more */
    double pile_m3;  /* parts with the compound between them; less than steel_m3: the parts alone */
    double moisture; /* of the compound, kg/kg */
    double speed;    /* factor on the compound's conductivity; 1 */
} hs_box_load;

typedef enum hs_box_count {
    HS_COUNT_AT_HEAT, /* the hold counts from the part being at heat */
    HS_COUNT_BOX_RED, /* from the wall being seen red */
    HS_COUNT_FIRE_ON  /* from the fire being lit, whether or not the part comes to heat */
} hs_box_count;

typedef struct hs_box_fire {
    double temp_K, hold_s;
    hs_box_count from;
    double cool_to_K; /* follow the part down to here after the fire is off; 0: do not */
    double cooling;   /* factor on the fire's own time of cooling; 1 */
} hs_box_fire;

/** What comes of it. Times from fire on. */
typedef struct hs_box_path {
    double red_s, at_heat_s, off_s; /* wall red; part within 10 K of the fire (NaN: not seen to,
                                       HS_COUNT_FIRE_ON only); fire off */
    size_t n, cool_n;
    hs_heat_point hot[HS_BOX_POINTS];  /* fire on to off, times from fire on */
    hs_heat_point cool[HS_BOX_POINTS]; /* after it, times from fire off; cool_n 0: not asked */
    double chord_K;                    /* the points' chords stay this near to the path */
    double balance_error;              /* heat: rounding only */
} hs_box_path;

typedef struct hs_box_work {
    hs_box_march march;
    hs_box_record record;
} hs_box_work;

/** Is it a box that can be reckoned with? Returns as hs_box_heat. */
HS_API hs_status hs_box_load_check(const hs_box_load *load, hs_error *err);

/** The part's temperature through one fire.
 *
 *  Returns  HS_OK; HS_E_IMPOSSIBLE for sizes that make no box, parts that fill more than 60 % of
 *           it, a hold that ends before the part is at heat; HS_E_RANGE for a fire outside 750 to
 *           1100 C, sides above 1 m, moisture above .5, speed outside .1 to 10; HS_E_CONVERGE. */
HS_API hs_status hs_box_heat(hs_box_path *path, const hs_box_load *load, const hs_box_fire *fire,
                             hs_box_work *work, hs_error *err);

/** Only the way down, from a box all at `from_K` when the fire goes off: fills cool, cool_n. */
HS_API hs_status hs_box_cool(hs_box_path *path, const hs_box_load *load, double from_K,
                             double cool_to_K, double cooling, hs_box_work *work, hs_error *err);

/** Heat-up (fire on to part at heat) and its bounds of 95 %: the compound's conductivity and the
 *  fire's own time to rise. */
typedef struct hs_box_lag {
    double red_s, low_s, at_heat_s, high_s;
} hs_box_lag;

/** Returns as hs_box_heat. */
HS_API hs_status hs_box_heat_up(hs_box_lag *lag, const hs_box_load *load, double temp_K,
                                hs_box_work *work, hs_error *err);

/** The body a box is reckoned as. Exact for a slab, a long square box is .7, a cube 1.4. */
HS_API void hs_box_body_of(hs_box_body *body, const hs_box_load *load);

#endif
