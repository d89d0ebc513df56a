/* scale, decarb: what open air takes from a hot part. */
#include "cli/quick_air.h"
#include "cli/quick_topics.h"
#include "constants.h"
#include "hardskin/model/decarb.h"
#include "hardskin/model/oxide.h"

enum { AT, FOR, CARBON, IN, OXYGEN };
static const quick_key scale_keys[] = {
    {"at", QUICK_QUANTITY, HS_TEMPERATURE, NULL, 1, NULL},
    {"for", QUICK_QUANTITY, HS_TIME, NULL, 1, NULL},
    {"carbon", QUICK_QUANTITY, HS_PERCENT, NULL, 0, "0.18 %"},
    {"in", QUICK_WORD, HS_NUMBER, NULL, 0, "electric furnace in air"},
    {"oxygen", QUICK_QUANTITY, HS_PERCENT, NULL, 0, NULL},
};

/* Oxygen taken up at one end of the doubt, or in the middle. */
static double uptake(double integral, double slowing, double rate, double film, double air) {
    return hs_oxide_grown(0, rate * integral * air * air, rate / film * slowing);
}

/* kp/kl of the hold, 0 where no oxygen is said. */
static hs_status slowing_of(double *slowing, const quick_value *v, const quick_air *air,
                            hs_error *err) {
    *slowing = 0;
    if (!v[OXYGEN].given) return HS_OK;
    if (air->low < 1)
        return hs_fail(err, HS_E_DISAGREE, "in=\"open lean flame\" or \"electric furnace in air\"",
                       "\"%s\" leaves no free oxygen at the part", v[IN].text);
    const double temp_K = v[AT].q.value;
    const hs_heat_point hold[2] = {{0, temp_K}, {v[FOR].q.value, temp_K}};
    hs_oxide_piece piece[HS_OXIDE_PIECES];
    hs_status status =
        hs_oxide_film_pieces(piece, hold, 2, v[CARBON].q.value, v[OXYGEN].q.value / 100, err);
    if (status == HS_OK) *slowing = piece[0].slowing_kg_m2;
    return status;
}

static hs_status run_scale(quick_answer *answer, const quick_value *v, const hs_units *units,
                           hs_error *err) {
    double integral = 0, slowing = 0;
    quick_air air;
    (void)units;
    hs_status status = quick_air_find(&air, v[IN].text, err);
    if (status == HS_OK)
        status = hs_oxide_hold(&integral, v[AT].q.value, v[FOR].q.value, v[CARBON].q.value, err);
    if (status == HS_OK) status = slowing_of(&slowing, v, &air, err);
    if (status != HS_OK) return status;
    const double band = HS_K_OXIDATION_FILM_BAND;
    double W = uptake(integral, slowing, 1, 1, air.usual);
    double low = uptake(integral, slowing, HS_K_OXIDATION_BAND_LOW, 1 / band, air.low);
    double high = uptake(integral, slowing, HS_K_OXIDATION_BAND_HIGH, band, air.high);
    quick_number(answer, "lost_mm", hs_oxide_lost_m(W) * 1e3);
    quick_number(answer, "lost_low_mm", hs_oxide_lost_m(low) * 1e3);
    quick_number(answer, "lost_high_mm", hs_oxide_lost_m(high) * 1e3);
    quick_number(answer, "scale_mm", hs_oxide_scale_m(W, HS_K_OXIDATION_POROSITY) * 1e3);
    quick_number(answer, "mass_g_dm2", hs_oxide_scale_kg_m2(W) * 10);
    quick_note(answer,
               "lost is metal per side; scale with %g %% of pores; low and high are the "
               "band of the constant and of the atmosphere",
               HS_K_OXIDATION_POROSITY * 100);
    return HS_OK;
}

const quick_topic quick_scale = {
    "scale",
    "metal lost as scale in one heat",
    scale_keys,
    5,
    "lost_low_mm, lost_mm, lost_high_mm, scale_mm, mass_g_dm2",
    "W^2 = kp t (parabolic), with oxygen W^2 + (kp/kl) W = kp t, W oxygen per area; metal lost = "
    "3.437 W / 7874",
    "Paidassi 1958, Stanley et al. 1951, Birks and Jackson 1970 (tables: oxidation, atmosphere)",
    "from memory; band and atmosphere: judgement",
    "500 to 1250 C",
    run_scale,
    0,
};

enum { D_AT, D_FOR, D_CARBON };
static const quick_key decarb_keys[] = {
    {"at", QUICK_QUANTITY, HS_TEMPERATURE, NULL, 1, NULL},
    {"for", QUICK_QUANTITY, HS_TIME, NULL, 1, NULL},
    {"carbon", QUICK_QUANTITY, HS_PERCENT, NULL, 1, NULL},
};

static hs_status run_decarb(quick_answer *answer, const quick_value *v, const hs_units *units,
                            hs_error *err) {
    hs_decarb_result rim;
    (void)units;
    hs_status status =
        hs_decarb(&rim, v[D_AT].q.value, v[D_FOR].q.value, v[D_CARBON].q.value, 1, 1, err);
    if (status != HS_OK) return status;
    quick_number(answer, "rim_mm", rim.rim_m * 1e3);
    quick_number(answer, "depth50_mm", rim.depth50_m * 1e3);
    quick_number(answer, "depth90_mm", rim.depth90_m * 1e3);
    quick_number(answer, "lost_mm", rim.lost_m * 1e3);
    quick_note(answer, "depths from the new surface, scale gone; the rim may reach %.3g mm",
               rim.rim_high_m * 1e3);
    return HS_OK;
}

const quick_topic quick_decarb = {
    "decarb",
    "carbon lost from a hot surface in open air",
    decarb_keys,
    3,
    "rim_mm, depth50_mm, depth90_mm, lost_mm",
    "from 910 C up: erfc profile under a moving surface without carbon; below: a ferrite rim, "
    "2 lambda sqrt(D t), times 0.6",
    "Birks and Jackson 1970 (tables: decarb, decarb_limits)",
    "from memory; the factor 0.6: judgement",
    "760 to 1200 C",
    run_decarb,
    0,
};
