#include "sheet_text.h"

#include <stdio.h>
#include <string.h>

size_t sheet_with(char out[SHEET_BYTES], const char *base, const char *find, const char *replace) {
    const char *at = strstr(base, find);
    if (!at || strstr(at + 1, find)) return 0;
    return (size_t)snprintf(out, SHEET_BYTES, "%.*s%s%s", (int)(at - base), base, replace,
                            at + strlen(find));
}

void sheet_place(int *line, int *column, const char *text, const char *mark) {
    const char *at = strstr(text, mark), *start = text;
    *line = *column = 0;
    if (!at) return;
    *line = 1;
    for (const char *c = text; c < at; c++)
        if (*c == '\n') {
            ++*line;
            start = c + 1;
        }
    *column = (int)(at - start) + 1;
}

#define ROUTE                                                                                      \
    "\"route\": [\n"                                                                               \
    "{\"do\": \"carburise\", \"at\": \"925 C\", \"for\": \"12 h\", \"in\": \"charcoal\", "         \
    "\"box\": \"150 mm\"},\n"                                                                      \
    "{\"do\": \"cool\", \"in\": \"box\"},\n"                                                       \
    "{\"do\": \"reheat\", \"at\": \"820 C\", \"for\": \"20 min\", \"in\": \"wrapped\"},\n"         \
    "{\"do\": \"quench\", \"in\": \"oil\", \"uneven\": \"10 %\"},\n"                               \
    "{\"do\": \"temper\", \"at\": \"170 C\", \"for\": \"2 h\"},\n"                                 \
    "{\"do\": \"descale\", \"by\": \"electrolysis\", \"tub\": \"40 L\", \"supply\": \"12 V 10 A\"" \
    ", \"soda\": \"50 g/L\", \"anode\": \"mild steel\"}\n"                                         \
    "]"

const char sheet_plate[] =
    "{\"hardskin\": 1, \"job\": \"plate\", \"units\": \"mm\",\n"
    "\"part\": {\"steel\": \"16MnCr5\", \"condition\": \"hot rolled\", \"form\": \"plate\",\n"
    "\"length\": \"300 mm\", \"width\": \"60 mm\", \"thickness\": \"20 mm\", \"quantity\": 2},\n"
    "\"dimensions\": [{\"name\": \"thick\", \"size\": \"20 h7\", \"faces\": [\"top\", "
    "\"bottom\"]}],\n"
    "\"faces\": [{\"name\": \"top\", \"case\": \"0.6 mm\", \"hardness\": \"58 HRC\", "
    "\"roughness\": \"Ra 0.8 um\"}],\n"
    "\"features\": [{\"is\": \"hole\", \"size\": \"8 mm\", \"through\": \"bottom\", "
    "\"thread\": false}],\n" ROUTE ",\n"
    "\"test_piece\": {\"size\": \"12 mm round, 40 mm long\", \"place\": \"box centre\"},\n"
    "\"shop\": {\"rough_tolerance\": \"±0.05 mm\", \"confidence\": \"95 %\", \"stock\": \"EN "
    "flats\"},\n"
    "\"measured\": {\"size\": {\"thick\": {\"is\": \"20.36 mm\", \"how\": \"micrometer\"}},\n"
    "\"shape\": {\"thick\": {\"bow\": \"0.18 mm\", \"over\": \"299 mm\", \"crown\": \"top\"}},\n"
    "\"case\": {\"depth\": \"1.25 mm\", \"to\": \"550 HV\", \"on\": \"test piece\",\n"
    "\"by\": \"hardness traverse\", \"checked\": true},\n"
    "\"hardness\": {\"is\": \"55..60 HRC\", \"by\": \"files\"}}}\n";

const char sheet_bar[] =
    "{\"hardskin\": 1, \"job\": \"bar\",\n"
    "\"part\": {\"steel\": \"C15E\", \"form\": \"bar\", \"diameter\": \"30 mm\", \"length\": "
    "\"160 mm\", \"held\": \"chuck\"},\n"
    "\"dimensions\": [{\"name\": \"d\", \"size\": \"30 h6\", \"faces\": [\"outside\"]}],\n" ROUTE
    "}\n";

const char sheet_ring[] =
    "{\"hardskin\": 1, \"job\": \"ring\",\n"
    "\"part\": {\"steel\": \"C15E\", \"form\": \"ring\", \"outside\": \"70 mm\", \"bore\": \"45 "
    "mm\", \"length\": \"50 mm\"},\n"
    "\"dimensions\": [{\"name\": \"b\", \"size\": \"45 H7\", \"faces\": [\"bore\"]}],\n" ROUTE
    "}\n";

const char sheet_profile[] =
    "{\"hardskin\": 1, \"job\": \"profile\",\n"
    "\"part\": {\"steel\": \"C15E\", \"form\": \"profile\", \"length\": \"240 mm\",\n"
    "\"outline\": [[0, 0], [60, 0], [60, 16], [16, 16], [16, 50], [0, 50]]},\n"
    "\"dimensions\": [{\"name\": \"foot\", \"size\": \"16 h8\", \"faces\": [\"under\", "
    "\"way\"]}],\n"
    "\"faces\": [{\"name\": \"under\", \"edge\": 1}, {\"name\": \"way\", \"edge\": 3}],\n" ROUTE
    "}\n";
