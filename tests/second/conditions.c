#include "second/conditions.h"

/* seconds, degrees Celsius */
static const double soak_900[][2] = {{0, 900}, {14400, 900}};
static const double soak_925[][2] = {{0, 925}, {21600, 925}};
static const double soak_927[][2] = {{0, 927}, {14400, 927}};
static const double soak_950[][2] = {{0, 950}, {86400, 950}};
static const double long_930[][2] = {{0, 930}, {172800, 930}};
static const double rise_and_soak[][2] = {{0, 20}, {7200, 925}, {28800, 925}};
static const double box_cooling[][2] = {{0, 925}, {18000, 600}};
static const double reheat[][2] = {{0, 20}, {2400, 820}, {4800, 820}, {4810, 20}};
static const double falling[][2] = {{0, 960}, {10800, 960}, {18000, 840}, {25200, 800}};
static const double uneven_log[][2] = {{0, 650},     {3600, 880},  {5400, 935}, {7200, 905},
                                       {14400, 940}, {18000, 910}, {21000, 730}};

#define HEAT(p, one, two, cap)                                                                     \
    { p, (int)(sizeof(p) / sizeof *(p)), {one, two}, cap }
#define HELD_AT(c)                                                                                 \
    { HELD, c, 0 }
#define AIR_OF(c, beta)                                                                            \
    { EXCHANGING, c, beta }
#define CLOSED_FACE                                                                                \
    { SEALED, 0, 0 }
#define FE_C(shape, wall, radius, core, law)                                                       \
    { shape, wall, radius, core, law, 0, 0, 0, 0, 0, 0 }

const second_condition second_conditions[] = {
    {"plate, held, Agren",
     FE_C(PLATE, 7, 0, .18, REFEREE_AGREN),
     1,
     {HEAT(soak_927, HELD_AT(1.0), CLOSED_FACE, 0)}},
    {"plate, held, Tibbetts",
     FE_C(PLATE, 7, 0, .18, REFEREE_TIBBETTS),
     1,
     {HEAT(soak_927, HELD_AT(1.0), CLOSED_FACE, 0)}},
    {"plate, held, Lee, 16MnCr5",
     {PLATE, 8, 0, .16, REFEREE_LEE, 1.15, .25, 0, .95, 0, 0},
     1,
     {HEAT(soak_925, HELD_AT(.9), CLOSED_FACE, 0)}},
    {"plate, transfer 1e-7, Tibbetts",
     FE_C(PLATE, 7, 0, .18, REFEREE_TIBBETTS),
     1,
     {HEAT(soak_927, AIR_OF(1.0, 1e-4), CLOSED_FACE, 0)}},
    {"plate, transfer 2e-8, 24 h",
     FE_C(PLATE, 20, 0, .18, REFEREE_AGREN),
     1,
     {HEAT(soak_950, AIR_OF(1.1, 2e-5), CLOSED_FACE, 0)}},
    {"bar 6 mm, fronts meet",
     FE_C(BAR, 3, 3, .18, REFEREE_AGREN),
     1,
     {HEAT(soak_950, HELD_AT(.9), CLOSED_FACE, 0)}},
    {"bar 24 mm, transfer",
     FE_C(BAR, 12, 12, .18, REFEREE_AGREN),
     1,
     {HEAT(soak_950, AIR_OF(1.0, 1e-4), CLOSED_FACE, 0)}},
    {"tube wall, both faces",
     FE_C(TUBE_FROM_OUTSIDE, 4, 10, .15, REFEREE_AGREN),
     1,
     {HEAT(soak_925, HELD_AT(.95), AIR_OF(.95, 1e-4), 0)}},
    {"tube wall from the bore, outside masked",
     FE_C(TUBE_FROM_BORE, 2, 3, .15, REFEREE_TIBBETTS),
     1,
     {HEAT(soak_925, HELD_AT(.95), CLOSED_FACE, 0)}},
    {"plate 3 mm, far face masked, carbon through to it",
     FE_C(PLATE, 3, 0, .12, REFEREE_AGREN),
     1,
     {HEAT(long_930, AIR_OF(1.0, 1e-4), CLOSED_FACE, 0)}},
    {"plate 2 mm, both faces, fronts meet",
     FE_C(PLATE, 2, 0, .2, REFEREE_AGREN),
     1,
     {HEAT(soak_925, HELD_AT(.9), HELD_AT(.9), 0)}},
    {"plate 4 mm, faces unlike",
     FE_C(PLATE, 4, 0, .2, REFEREE_TIBBETTS),
     1,
     {HEAT(soak_925, HELD_AT(1.0), AIR_OF(.5, 5e-5), 0)}},
    {"rise, soak, box cooling, reheat in the box",
     FE_C(PLATE, 8, 0, .16, REFEREE_AGREN),
     3,
     {HEAT(rise_and_soak, HELD_AT(1.0), CLOSED_FACE, 1),
      HEAT(box_cooling, CLOSED_FACE, CLOSED_FACE, 1), HEAT(reheat, CLOSED_FACE, CLOSED_FACE, 1)}},
    {"rise, soak, box cooling, bar, transfer",
     FE_C(BAR, 5, 5, .16, REFEREE_AGREN),
     2,
     {HEAT(rise_and_soak, AIR_OF(1.1, 1e-4), CLOSED_FACE, 1),
      HEAT(box_cooling, CLOSED_FACE, CLOSED_FACE, 1)}},
    {"saturated while it falls from 960 to 800 C",
     FE_C(PLATE, 8, 0, .18, REFEREE_AGREN),
     1,
     {HEAT(falling, HELD_AT(1.5), CLOSED_FACE, 1)}},
    {"a measured log",
     FE_C(PLATE, 8, 0, .18, REFEREE_AGREN),
     1,
     {HEAT(uneven_log, AIR_OF(1.0, 1e-4), CLOSED_FACE, 1)}},
    {"boost and diffuse",
     FE_C(PLATE, 8, 0, .2, REFEREE_TIBBETTS),
     2,
     {HEAT(soak_927, AIR_OF(1.2, 2e-4), CLOSED_FACE, 0),
      HEAT(soak_900, AIR_OF(.75, 2e-4), CLOSED_FACE, 0)}},
    {"decarburising",
     FE_C(PLATE, 7, 0, .8, REFEREE_AGREN),
     1,
     {HEAT(soak_900, HELD_AT(0), CLOSED_FACE, 0)}},
};
const size_t second_count = sizeof second_conditions / sizeof *second_conditions;
