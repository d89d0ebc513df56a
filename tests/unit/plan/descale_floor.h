/* One descale step on the shop floor, for the tests of descaling: a plate of 4 dm2. */
#ifndef HS_TESTS_DESCALE_FLOOR_H
#define HS_TESTS_DESCALE_FLOOR_H

#include "plan/descale.h"

/** The part as it comes to the step, by its history. */
typedef enum floor_state {
    FLOOR_SOFT,         /* after the box, before the quench */
    FLOOR_UNTEMPERED,   /* case as quenched, 64 HRC */
    FLOOR_TEMPERED,     /* case 60 HRC, temper 180 C 2 h */
    FLOOR_LOW_TEMPER,   /* case 62 HRC, temper 150 C 2 h */
    FLOOR_LOWEST,       /* case 61 HRC, temper 160 C 2 h */
    FLOOR_THROUGH_SOFT, /* 30.9 HRC through, temper 600 C */
    FLOOR_THROUGH_HARD, /* 31 HRC through, temper 400 C */
    FLOOR_THROUGH_MOST  /* 52 HRC through, temper 250 C */
} floor_state;

/** What stands next in the route. */
typedef enum floor_next {
    NEXT_NOTHING,
    NEXT_BAKE,       /* what the plan asks for */
    NEXT_COOL_BAKE,  /* 120 C */
    NEXT_SHORT_BAKE, /* 4 h */
    NEXT_HOT_BAKE,   /* 20 K hotter than the temper allows */
    NEXT_LATER_BAKE  /* a straightening, then the bake */
} floor_next;

typedef struct shop_floor {
    hs_step step[6];
    hs_job job;
    hs_descale_at at;
} shop_floor;

/** A route quench, temper, descale, what is next; the step asked is number 2. */
void floor_make(shop_floor *s, floor_state state, hs_descale_method by, const char *accepted,
                floor_next next);

/** Plan it. */
hs_status floor_plan(hs_result_descale *out, const shop_floor *s, hs_error *err);

/** The same, which must succeed. */
void floor_must(hs_result_descale *out, const shop_floor *s);

/** A soft plate at a tank of so many volts and amperes. */
void floor_tank(shop_floor *s, double volts_V, double amps_A);

double floor_kelvin(double celsius);

#endif
