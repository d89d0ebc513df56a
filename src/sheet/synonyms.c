/* What people write where the sheet has another word. Suggests, never acts. */
#include "sheet/synonyms.h"

#include <string.h>
#include <strings.h>

static const char *const pairs[][2] = {{"material", "steel"},
                                       {"grade", "steel"},
                                       {"alloy", "steel"},
                                       {"temp", "at"},
                                       {"temperature", "at"},
                                       {"time", "for"},
                                       {"hold", "for"},
                                       {"hours", "for"},
                                       {"medium", "in"},
                                       {"atmosphere", "in"},
                                       {"method", "by"},
                                       {"step", "do"},
                                       {"tolerance", "size"},
                                       {"nominal", "size"},
                                       {"finish_size", "size"},
                                       {"qty", "quantity"},
                                       {"pieces", "quantity"},
                                       {"id", "bore"},
                                       {"od", "outside"},
                                       {"dia", "diameter"},
                                       {"height", "thickness"},
                                       {"depth", "case"},
                                       {"case_depth", "case"},
                                       {"ra", "roughness"},
                                       {"surface_finish", "roughness"},
                                       {"tir", "run_out"},
                                       {"runout", "run_out"},
                                       {"flat", "plate"},
                                       {"flat bar", "plate"},
                                       {"block", "plate"},
                                       {"round", "bar"},
                                       {"round bar", "bar"},
                                       {"shaft", "bar"},
                                       {"pin", "bar"},
                                       {"tube", "ring"},
                                       {"bush", "ring"},
                                       {"bushing", "ring"},
                                       {"sleeve", "ring"},
                                       {"angle", "profile"},
                                       {"case harden", "carburise"},
                                       {"harden", "quench"},
                                       {"draw", "temper"},
                                       {"stress relief", "stress relieve"},

                                       {"clean", "descale"},
                                       {"pickle", "descale"},
                                       {"metric", "mm"},
                                       {"imperial", "inch"},
                                       {"in", "inch"}};

const char *hs_synonym(const char *word, const char *const *list, size_t n) {
    for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++)
        for (size_t k = 0; !strcasecmp(word, pairs[i][0]) && k < n; k++)
            if (!strcmp(list[k], pairs[i][1])) return list[k];
    return NULL;
}
