/* Every way a call can fail: one list makes the enum, the texts, the exit codes and the `why`
 * pages. X(enum name, exit code, "code as typed", "what it means", "an example that fails", "the
 * same, put right"). Exit codes: 2 usage, 3 sheet or value wrong, 4 outside the range of a model, 5
 * input/output, 70 a fault of the program itself. */
#ifndef HARDSKIN_BASE_STATUS_LIST_H
#define HARDSKIN_BASE_STATUS_LIST_H

#define HS_STATUS_LIST(X)                                                                          \
    X(HS_OK, 0, "ok", "nothing is wrong", "", "")                                                  \
    X(HS_E_USAGE, 2, "usage", "the command line is not one the program knows",                     \
      "hardskin plna a.json", "hardskin plan a.json")                                              \
    X(HS_E_TOPIC, 2, "unknown-topic", "there is no single sum, table or form of that name",        \
      "hardskin quick harden", "hardskin quick martensite carbon=\"0.8 %\"")                       \
    X(HS_E_ARGUMENT, 2, "bad-argument", "a key=value is missing, unknown or given twice",          \
      "hardskin quick chart at=\"950 C\"", "hardskin quick chart at=\"950 C\" for=\"8 h\"")        \
    X(HS_E_JSON, 3, "not-json", "the text is not strict JSON (RFC 8259)", "{\"job\": \"A\",}",     \
      "{\"job\": \"A\"}")                                                                          \
    X(HS_E_ENCODING, 3, "not-utf8", "the text is not UTF-8",                                       \
      "a sheet saved in a national code page", "the same sheet saved as UTF-8")                    \
    X(HS_E_DUPLICATE, 3, "duplicate-key", "an object has the same key twice",                      \
      "{\"at\": \"900 C\", \"at\": \"925 C\"}", "{\"at\": \"925 C\"}")                             \
    X(HS_E_TOO_LARGE, 3, "too-large",                                                              \
      "the sheet is longer, deeper or has more entries than allowed",                              \
      "a sheet above 8 MiB, nested deeper than 64, or with 65 route steps", "one sheet a part")    \
    X(HS_E_VERSION, 3, "wrong-version",                                                            \
      "the sheet's format version is not one this program reads", "{\"hardskin\": 2}",             \
      "{\"hardskin\": 1}")                                                                         \
    X(HS_E_KEY, 3, "unknown-key", "a key that the sheet format does not know",                     \
      "{\"do\": \"quench\", \"inn\": \"oil\"}", "{\"do\": \"quench\", \"in\": \"oil\"}")           \
    X(HS_E_MISSING, 3, "missing-key", "a key that is needed is not there", "{\"do\": \"quench\"}", \
      "{\"do\": \"quench\", \"in\": \"oil\"}")                                                     \
    X(HS_E_TYPE, 3, "wrong-type", "a value of another kind was expected here",                     \
      "\"thickness\": 20", "\"thickness\": \"20 mm\"")                                             \
    X(HS_E_WORD, 3, "unknown-word", "the word is not one of those this key takes",                 \
      "\"condition\": \"rolled\"", "\"condition\": \"hot rolled\"")                                \
    X(HS_E_NO_UNIT, 3, "no-unit", "a number stands without its unit", "\"at\": \"925\"",           \
      "\"at\": \"925 C\"")                                                                         \
    X(HS_E_UNIT, 3, "wrong-unit", "the unit does not belong to this quantity",                     \
      "\"for\": \"8 mm\"", "\"for\": \"8 h\"")                                                     \
    X(HS_E_NUMBER, 3, "unreadable-number", "the text is not a quantity this program reads",        \
      "\"for\": \"1:30\"", "\"for\": \"1 h 30 min\"")                                              \
    X(HS_E_AMBIGUOUS, 3, "ambiguous-number", "the text can be read in more than one way",          \
      "\"size\": \"11/2 in\"", "\"size\": \"1 1/2 in\"")                                           \
    X(HS_E_STEEL, 3, "unknown-steel", "no steel of that name is in the table",                     \
      "\"steel\": \"C15X\"", "\"steel\": \"C15E\"")                                                \
    X(HS_E_IMPOSSIBLE, 3, "impossible", "the values cannot all be true",                           \
      "hardskin quick diffusion core=\"0.2 %\" surface=\"0.9 %\" carbon=\"1.0 %\" ...",            \
      "carbon between core and surface")                                                           \
    X(HS_E_DISAGREE, 3, "disagree", "two places of the sheet say different things",                \
      "part thickness 20 mm and dimension thickness 25 h7", "the same nominal size in both")       \
    X(HS_E_ORDER, 3, "step-order", "a step stands where it cannot be done",                        \
      "quench before any heat", "carburise, cool, reheat, quench, temper")                         \
    X(HS_E_FORBIDDEN, 3, "forbidden",                                                              \
      "this would hurt someone or ruin the part; it is not planned", "\"anode\": \"stainless\"",   \
      "\"anode\": \"mild steel\"")                                                                 \
    X(HS_E_ACCEPTANCE, 3, "acceptance",                                                            \
      "an accepted risk says who accepted it and on which day",                                    \
      "\"accept_hydrogen_risk\": \"yes\"",                                                         \
      "\"accept_hydrogen_risk\": \"A. Foreman, 2026-05-04\"")                                      \
    X(HS_E_OUTLINE, 3, "outline", "the outline crosses or touches itself or encloses nothing",     \
      "[[0,0],[10,10],[10,0],[0,10]]", "[[0,0],[10,0],[10,10],[0,10]]")                            \
    X(HS_E_THROUGH, 3, "case-meets", "the case from both sides takes more than half the section",  \
      "a 3 mm plate carburised 2 mm deep from both faces", "a thicker part or a shorter soak")     \
    X(HS_E_RANGE, 4, "out-of-range", "outside the range in which the model is known to hold",      \
      "hardskin quick chart at=\"700 C\" for=\"8 h\"",                                             \
      "hardskin quick chart at=\"925 C\" for=\"8 h\"")                                             \
    X(HS_E_CONVERGE, 4, "no-convergence", "the computation found no answer inside its range",      \
      "a case depth no soak can reach", "less wanted case, or a richer medium")                    \
    X(HS_E_IO, 5, "input-output", "a file could not be read or written",                           \
      "hardskin plan missing.json", "hardskin plan a.json")                                        \
    X(HS_E_MEMORY, 5, "no-memory", "the machine has no memory left for this job", "", "")          \
    X(HS_E_INTERNAL, 70, "internal", "a fault of the program itself: please report it", "", "")

#endif
