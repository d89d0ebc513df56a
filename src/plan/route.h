/* A job's route, read once: which heats carry carbon, which one hardens, which tempers follow. */
#ifndef HS_PLAN_ROUTE_H
#define HS_PLAN_ROUTE_H

#include "hardskin/model/box_heat.h"
#include "hardskin/model/martensite.h"
#include "hardskin/plan/job.h"

enum { HS_MAX_HEATS = 16, HS_MAX_TEMPERS = 16 };

/** A heat above the cold limit, as a path of temperatures from its own start. */
typedef struct hs_route_heat {
    size_t step;    /* index into the job's steps */
    int carburises; /* carbon goes in; else the faces are closed */
    double surface_low_pct, surface_pct, surface_high_pct, transfer_m_s;
    int open;          /* air or flame at it: scale and rim */
    size_t atmosphere; /* row in the table, when open by a reheat */
    double multiplier_low, multiplier, multiplier_high; /* on the oxygen uptake */
    double bound_K;                                     /* 95 % bound on its temperature */
    hs_heat_point point[HS_MAX_LOG];
    size_t n;
    int packed;     /* its path is reckoned from fire on to off, through the compound: */
    hs_box_lag lag; /* ... when the part comes to heat, after fire on; high_s NaN: perhaps never */
    double hot_m2[3], cool_m2[3]; /* ... D times time up to fire off, and after it in the box:
                                     compound slow, middle, fast */
    double late_m2;               /* ... and what a fire that rises late or early moves it by */
} hs_route_heat;

/** A part that is cased once more: what is left of it of the first time. */
typedef struct hs_route_left {
    size_t heats;          /* of the first time; 0: it is cased once */
    double cut_m, stretch; /* taken off since, per side; on the depths before (hs_carbon_left) */
    double speed;          /* of the second time's depths, as the first's were read; 1 */
    int known;             /* it was read: no doubt of the first fire is in it */
} hs_route_left;

typedef struct hs_route {
    hs_route_heat heat[HS_MAX_HEATS];
    size_t heats;
    size_t hardening_heat;            /* the heat before the last quench */
    size_t quench;                    /* step of the last quench */
    double dissolve_K;                /* temperature of that heat */
    double hottest_K;                 /* of the carburising heats */
    hs_temper temper[HS_MAX_TEMPERS]; /* tempers and bakes after the last quench, in order */
    size_t tempers;
    double heat_log; /* standard deviation of ln of D times time: heat-up and cooling of boxes */
    hs_route_left left;
    hs_box_path box; /* of the last carburising heat, for the cool that follows it */
} hs_route;

/** Read the route of a job whose order the sheet has checked.
 *  Returns  HS_OK; HS_E_ORDER without a carburise and a quench after it; HS_E_TOO_LARGE;
 *           HS_E_RANGE for a temper or heat outside the models. */
hs_status hs_route_read(hs_route *route, const hs_job *job, hs_error *err);

/** The same for a job whose fires are those of `like`: their paths are taken over. */
hs_status hs_route_read_like(hs_route *route, const hs_route *like, const hs_job *job,
                             hs_error *err);

/** The same with another conductivity of the compound (factor) and another time of cooling; the
 *  fire goes off when it would have at factors of 1. */
hs_status hs_route_read_at(hs_route *route, const hs_job *job, double speed, double cooling,
                           hs_error *err);

/** One step by itself: what of it the models refuse, with its place.
 *  Returns  as hs_route_read. */
hs_status hs_route_step_check(hs_route *scratch, const hs_job *job, size_t step, hs_error *err);

/** Temper and bake steps that stand before step `step` and after the quench before it. */
size_t hs_route_tempers_before(hs_temper *out, const hs_job *job, size_t step);

/** 1 if a temper or bake that deserves the name (from 100 C, half an hour) follows the last quench,
 *  or there is no quench: of the whole route, or of the steps before step `step`. */
int hs_route_tempered(const hs_job *job);
int hs_route_tempered_before(const hs_job *job, size_t step);

/** First step after the last quench; the number of steps where there is none. */
size_t hs_route_after_quench(const hs_job *job);

/** The last temper after the last quench, or of a route without one; NULL where there is none. */
const hs_step *hs_route_last_temper(const hs_job *job);

#endif
