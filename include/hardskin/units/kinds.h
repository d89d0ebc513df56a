/* The kinds of quantity the program reads. One list makes the enum, the words used in messages, the
 * SI unit a value is kept in, and the examples shown when a text is refused.
 * X(id, "name in units.csv", "with its article", "unit of the value", "right forms") */
#ifndef HARDSKIN_UNITS_KINDS_H
#define HARDSKIN_UNITS_KINDS_H

#define HS_KIND_LIST(X)                                                                            \
    X(HS_LENGTH, "length", "a length", "m", "25.4 mm, 1 1/2 in, 3/8\", 5 thou or 8..10 mm")        \
    X(HS_CASE_DEPTH, "length", "a case depth", "m", "0.8 mm, CHD 0.8 +0.4 mm or 0.8..1.2 mm")      \
    X(HS_ROUGHNESS, "length", "a roughness", "m", "Ra 0.8 um, 0.8 um or Ra 32 uin")               \
    X(HS_AREA, "area", "an area", "m2", "4 dm2, 120 cm2 or 6 in2")                                 \
    X(HS_VOLUME, "volume", "a volume", "m3", "40 L, 30 m3 or 250 cm3")                             \
    X(HS_MASS, "mass", "a mass", "kg", "2.5 kg, 50 g or 1 lb")                                     \
    X(HS_TIME, "time", "a time", "s", "8 h, 20 min or 1 h 30 min")                                 \
    X(HS_TEMPERATURE, "temperature", "a temperature", "K",                                         \
      "925 C, 1700 F, 925 ±15 C or 900..950 C")                                                    \
    X(HS_TEMPERATURE_DIFFERENCE, "temperature", "a difference of temperature", "K",                \
      "15 K or Δ15 C")                                                                             \
    X(HS_HARDNESS, "hardness", "a hardness", "", "58 HRC, 650 HV1, 600 HBW or 58..62 HRC")         \
    X(HS_PERCENT, "percent", "a percentage", "%", "0.8 % or 5..10 %")                              \
    X(HS_SPEED, "speed", "a speed", "m/s", "15 m/min or 1e-7 m/s")                                 \
    X(HS_VOLTAGE, "voltage", "a voltage", "V", "12 V")                                             \
    X(HS_CURRENT, "current", "a current", "A", "10 A")                                             \
    X(HS_RESISTANCE, "resistance", "a resistance", "ohm", "0.05 ohm")                              \
    X(HS_CONCENTRATION, "concentration", "a concentration", "kg/m3", "50 g/L")                     \
    X(HS_RATE, "rate", "a rate", "1/s", "0.5 /h")                                                  \
    X(HS_MOLAR_ENERGY, "molar energy", "a molar energy", "J/mol", "148 kJ/mol")                    \
    X(HS_HEAT_TRANSFER, "heat transfer", "a surface coefficient", "W/m2K", "1500 W/m2K")           \
    X(HS_CONDUCTIVITY_THERMAL, "thermal conductivity", "a thermal conductivity", "W/mK",           \
      "28 W/mK")                                                                                   \
    X(HS_HEAT_CAPACITY_VOLUME, "heat capacity", "a heat capacity by volume", "J/m3K",              \
      "4.7e6 J/m3K")                                                                               \
    X(HS_INVERSE_STRESS, "inverse stress", "an inverse stress", "1/Pa", "6e-5 1/MPa")              \
    X(HS_STRESS, "stress", "a stress", "Pa", "240 MPa")                                            \
    X(HS_DIFFUSIVITY, "diffusivity", "a diffusivity", "m2/s", "1.6e-11 m2/s")                      \
    X(HS_CONDUCTIVITY_ELECTRIC, "electric conductivity", "an electric conductivity", "S/m",        \
      "4.5 S/m")                                                                                   \
    X(HS_FLOW, "flow", "a flow", "m3/s", "20 m3/h or 5 L/h")                                       \
    X(HS_NUMBER, "number", "a bare number", "", "1.5")

typedef enum hs_kind {
#define X(id, name, words, unit, forms) id,
    HS_KIND_LIST(X)
#undef X
        HS_KIND_COUNT
} hs_kind;

#endif
