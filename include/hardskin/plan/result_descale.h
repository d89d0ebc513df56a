/* The answer to a descale step: decision, tank, air, acid, bake, the order in time. Part of
 * result.h. */
#ifndef HARDSKIN_PLAN_RESULT_DESCALE_H
#define HARDSKIN_PLAN_RESULT_DESCALE_H

#include <stddef.h>

typedef enum hs_clean { HS_CLEAN_NONE, HS_CLEAN_OK, HS_CLEAN_CARE, HS_CLEAN_STOP } hs_clean;

/** What sets the current through the tank. */
typedef enum hs_tank_limit {
    HS_TANK_LIMIT_NONE,
    HS_TANK_LIMIT_BATH,   /* all that the supply's volts drive through it */
    HS_TANK_LIMIT_SUPPLY, /* all the amperes the supply gives */
    HS_TANK_LIMIT_AREA    /* the usual current on the part's area is enough: turn it down */
} hs_tank_limit;

/** One change of a tank whose current is small, run again; the best first. */
typedef struct hs_tank_remedy {
    char what[96];
    double amps_A, density_A_m2;
    double time_s; /* of the whole part */
} hs_tank_remedy;

enum { HS_SODA_FORMS = 4, HS_MAX_TANK_REMEDIES = 8 };

/** The tank's working figures, of one part in it. */
typedef struct hs_result_tank {
    int present;
    double volume_m3, soda_kg_m3;
    double conductivity_S_m, bath_ohm;
    const char *geometry; /* how the resistance was taken */
    double density_A_m2;  /* on the part */
    hs_tank_limit limit;
    double bath_amps_A;  /* what the bath passes at the supply's volts, however large the supply */
    double most_amps_A;  /* what flows if nobody turns the supply down */
    double usual_amps_A; /* the usual density on the part's area */
    char limited[240];   /* the limit in words */
    int below_practice, above_practice; /* density outside the practised range */
    double heating_K_s;                 /* no loss to the room */
    double hot_s;    /* until the bath is at the top of its range, INFINITY: not in the time */
    double boils_s;  /* likewise until it boils */
    double water_kg; /* split, at the middle charge */
    double soda_kg[HS_SODA_FORMS]; /* in the order of hs_soda, for the whole bath */
    double cable_mm2;              /* for all the supply gives; NaN: more than the table */
    double anode_kg;   /* iron lost at most, at the middle charge; 0: graphite, or the part is the
                          anode */
    double anode_jobs; /* such jobs until the anode is half gone; NaN graphite */
    double batch_s;    /* all parts of the quantity one after the other; 0: one part */
    double together_A_m2, together_s; /* all of them in the tub at once */
    size_t remedies;                  /* only where the current is small */
    hs_tank_remedy remedy[HS_MAX_TANK_REMEDIES];
} hs_result_tank;

/** The gas of a tank in its room. Rates at the bath's temperature. */
typedef struct hs_result_air {
    int present;
    double oxygen_m3_s;
    double battery_m3_s, workplace_m3_s; /* fresh air by either rule */
    double battery_opening_m2;           /* by the battery-room rule alone */
    double hour_pct, steady_pct;         /* hydrogen in the room; steady NaN: no air change */
    double supply_A, most_fresh_air_m3_s, most_opening_m2; /* with all the supply can give */
    /* All parts of the quantity in the tub at once; NaN: one part, or not so done. */
    double all_amps_A, all_hydrogen_m3_s, all_fresh_air_m3_s, all_opening_m2, all_spark_m;
    double
        all_pct;   /* in the room when all are done, at once or in turn: the worse; NaN: one part */
    double near_m; /* explosive within it, whatever the air */
    double room_least_m3;                       /* for openings alone to be enough */
    double lid_m3, lid_keep_s, lid_explosive_s; /* such a space under a lid: time to 1 and 4 % */
} hs_result_air;

/** An acid bath. */
typedef struct hs_result_acid {
    int present;
    char name[32];
    double strength_pct, volume_m3;
    double bath_kg;                   /* acid in the fresh bath */
    double scale_kg, taken_kg;        /* scale on one part, acid it takes */
    double capacity_kg;               /* scale (as FeO) the fresh bath dissolves at most */
    double soda_kg;                   /* anhydrous, makes the fresh bath harmless */
    double soda_low_m3, soda_high_m3; /* the same as solution, strong and weak end */
    double dip_low_kg, dip_high_kg;   /* soda for a dip of the bath's volume */
    double hydrogen_m3;               /* of the good metal the acid takes at most, one part, 25 C */
    double all_hydrogen_m3;           /* if all the acid ate good metal */
    double temp_low_K, temp_high_K;
    const char *note; /* of the table, "" none */
} hs_result_acid;

enum { HS_MAX_ALTERNATIVES = 7, HS_MAX_DESCALES = 8, HS_MAX_DESCALE_ORDER = 10 };

typedef struct hs_result_descale {
    hs_clean verdict;
    size_t step; /* index into the job's steps */
    char method[64];
    char text[960];      /* the decision and why, what was assumed */
    char rule[600];      /* published limits the hardness there passes, and which governs */
    char accepted[128];  /* who accepted the hydrogen risk, and when; "" nobody, or not asked */
    double hardness_HRC; /* at that step, NaN if soft */
    int cooled_hard;     /* that is what a slow cooling alone may leave, computed */
    double core_HRC;     /* likewise */
    double area_m2;      /* of the part */
    double amps_A, volts_V, charge_Ah, time_low_s, time_s, time_high_s;
    double hydrogen_m3_s, fresh_air_m3_s, opening_m2, spark_distance_m, room_pct;
    char air_rule[64];
    hs_result_tank tank;
    hs_result_air air;
    hs_result_acid acid;
    double bake_temp_K, bake_s; /* 0 = none */
    char bake[320];
    double stock_taken_low_m, stock_taken_high_m;
    size_t alternatives; /* in the order of preference */
    char alternative[HS_MAX_ALTERNATIVES][240];
    size_t orders; /* what comes before and after, what may wait */
    char order[HS_MAX_DESCALE_ORDER][240];
} hs_result_descale;

#endif
