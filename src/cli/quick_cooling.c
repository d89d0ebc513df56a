/* cooling: how fast a plate, a bar or a square bar follows the bath. */
#include "cli/quick_topics.h"
#include "constants.h"
#include "hardskin/model/cooling.h"
#include "hardskin/model/quench_material.h"

#include <stdlib.h>
#include <string.h>

enum { SHAPE, SIZE, FILM, QUENCH, CONDUCTIVITY, HEAT, FROM, TO, FOR };

static const quick_key keys[] = {
    {"shape", QUICK_WORD, HS_NUMBER, NULL, 1, NULL},
    {"size", QUICK_QUANTITY, HS_LENGTH, NULL, 1, NULL},
    {"h", QUICK_QUANTITY, HS_HEAT_TRANSFER, "W/m2K", 0, NULL},
    {"quench", QUICK_WORD, HS_NUMBER, NULL, 0, NULL},
    {"k", QUICK_QUANTITY, HS_CONDUCTIVITY_THERMAL, "W/mK", 0, NULL},
    {"rho_c", QUICK_QUANTITY, HS_HEAT_CAPACITY_VOLUME, "J/m3K", 0, NULL},
    {"from", QUICK_QUANTITY, HS_TEMPERATURE, NULL, 1, NULL},
    {"to", QUICK_QUANTITY, HS_TEMPERATURE, NULL, 1, NULL},
    {"for", QUICK_QUANTITY, HS_TIME, NULL, 1, NULL},
};

static hs_status read_shape(hs_cooling_shape *shape, const char *word, hs_error *err) {
    static const char *const words[] = {"plate", "bar", "square"};
    for (int i = 0; i < 3; i++)
        if (!strcmp(word, words[i])) {
            *shape = (hs_cooling_shape)i;
            return HS_OK;
        }
    return hs_fail(err, HS_E_WORD, "plate, bar or square", "shape \"%s\" is none of them", word);
}

static hs_status read_film(hs_cooling *c, quick_answer *answer, const quick_value *v,
                           hs_error *err) {
    if (!v[FILM].text == !v[QUENCH].text)
        return hs_fail(err, HS_E_ARGUMENT, "h=\"1500 W/m2K\" or quench=oil",
                       "give either h or quench");
    if (v[FILM].text) {
        c->film = hs_curve_flat(v[FILM].q.value);
        return HS_OK;
    }
    if (c->from_K > HS_K_QUENCH_CHANGE_FILM_MOST)
        return hs_fail(err, HS_E_RANGE, "up to 1000 C",
                       "no film coefficient of a quench is known at %g C",
                       c->from_K - HS_K_PHYSICAL_ZERO_CELSIUS);
    quick_note(answer, "film coefficient over the surface temperature: table quench_film; its film "
                       "stage scatters by half either way");
    return hs_quench_film(&c->film, v[QUENCH].text, err);
}

static hs_status run(quick_answer *answer, const quick_value *v, const hs_units *units,
                     hs_error *err) {
    hs_cooling c = {.size_m = v[SIZE].q.value,
                    .from_K = v[FROM].q.value,
                    .to_K = v[TO].q.value,
                    .time_s = v[FOR].q.value};
    double centre_K = 0, surface_K = 0;
    (void)units;
    c.conductivity_W_mK =
        v[CONDUCTIVITY].text ? v[CONDUCTIVITY].q.value : hs_cooling_conductivity();
    c.heat_J_m3K = v[HEAT].text ? v[HEAT].q.value : hs_cooling_heat();
    hs_status status = read_shape(&c.shape, v[SHAPE].text, err);
    if (status == HS_OK) status = read_film(&c, answer, v, err);
    if (status != HS_OK) return status;
    hs_cooling_work *work = malloc(sizeof *work);
    if (!work) return hs_fail(err, HS_E_MEMORY, "", "no memory for the cooling");
    status = hs_cooling_run(&centre_K, &surface_K, &c, work, err);
    free(work);
    if (status != HS_OK) return status;
    quick_number(answer, "centre_C", centre_K - HS_K_PHYSICAL_ZERO_CELSIUS);
    quick_number(answer, "surface_C", surface_K - HS_K_PHYSICAL_ZERO_CELSIUS);
    quick_note(answer, "k %g W/mK, rho c %.4g J/m3K; no heat of transformation in it",
               c.conductivity_W_mK, c.heat_J_m3K);
    return HS_OK;
}

const quick_topic quick_cooling = {
    "cooling",
    "temperature in the middle and at the surface of a plate, bar or square in a bath",
    keys,
    sizeof keys / sizeof *keys,
    "centre_C, surface_C (of a square: the middle of a side)",
    "conduction with a surface film, finite volumes; constant k and rho c",
    "quench_film.csv for quench=; the steel by quench_change.csv",
    "mixed",
    "a plate cooled on both faces, a long bar, a long square bar; quench= up to 1000 C",
    run,
    0,
};
