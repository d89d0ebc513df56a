/* A key that must be there; when it is not, what it would look like. */
#include "sheet/reader.h"

#include <string.h>

typedef struct example {
    const char *key, *form;
} example;

static const example examples[] = {
    {"hardskin", "\"hardskin\": 1"},
    {"job", "\"job\": \"Slide bar\", a name for it"},
    {"part", "\"part\": { \"steel\": ..., \"form\": ..., sizes }; hardskin new plate shows one"},
    {"dimensions", "\"dimensions\": [ { \"name\": \"thickness\", \"size\": \"20 h7\", \"faces\": "
                   "[\"top\", \"bottom\"] } ]"},
    {"route", "\"route\": [ ... ]: carburise, cool, reheat, quench, temper, descale"},
    {"steel", "\"steel\": \"16MnCr5\"; hardskin tables steels lists them"},
    {"form", "\"form\": \"plate\", \"bar\", \"ring\" or \"profile\""},
    {"length", "\"length\": \"300 mm\", finished"},
    {"width", "\"width\": \"60 mm\", finished"},
    {"thickness", "\"thickness\": \"20 mm\", finished"},
    {"diameter", "\"diameter\": \"30 mm\", finished"},
    {"outside", "\"outside\": \"60 mm\", the finished outside diameter"},
    {"bore", "\"bore\": \"40 mm\", the finished bore"},
    {"outline", "\"outline\": [[0, 0], [60, 0], ...], corners of the section in order, in mm"},
    {"name", "\"name\": \"top\""},
    {"edge", "\"edge\": 3, counted from 1 between the corners of the outline"},
    {"faces", "\"faces\": [\"top\", \"bottom\"], the faces it lies across"},
    {"size", "\"size\": \"20 h7\" of a dimension, \"8 mm\" of a hole or test piece"},
    {"like", "\"like\": \"C15E\", the steel of the table it is nearest to"},
    {"do", "\"do\": \"carburise\", \"cool\", \"reheat\", \"quench\", \"temper\", \"descale\" ..."},
    {"at", "\"at\": \"925 C\""},
    {"for", "\"for\": \"2 h\""},
    {"in", "\"in\": \"oil\" of a quench, \"box\" of a cool, \"wrapped\" of a reheat"},
    {"by", "\"by\": \"brush\", \"blast\", \"flap disc\", \"acid\" or \"electrolysis\""},
    {"acid", "\"acid\": \"citric 10 %\""},
    {"to", "\"to\": \"0.05 mm\", the bow that the press may leave over the length (of a bar: half "
           "the run-out between centres)"},
    {"is", "\"is\": what it is: \"20.36 mm\" of a size, \"58..62 HRC\" of a hardness, \"hole\" of "
           "a feature"},
    {"depth", "\"depth\": \"1.25 mm\""},
    {"bow", "\"bow\": \"0.18 mm\", the gap under a straightedge or the rise on the plate"},
    {"run_out", "\"run_out\": \"0.10 mm\", the whole swing of the indicator between centres: twice "
                "the bow"},
    {"ovality", "\"ovality\": \"0.05 mm\", largest less smallest diameter"},
};

static const char *form_of(const char *key) {
    for (size_t i = 0; i < sizeof examples / sizeof *examples; i++)
        if (!strcmp(key, examples[i].key)) return examples[i].form;
    return "";
}

const hs_node *hs_reader_need(hs_reader *r, const hs_node *object, const char *key) {
    const hs_node *node = hs_node_find(object, key);
    if (!node && object && object->kind == HS_NODE_OBJECT)
        hs_reader_say(r, object, HS_E_MISSING, form_of(key), "the key \"%s\" is missing here", key);
    return node;
}
