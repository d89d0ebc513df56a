/* Every topic, one line each. */
#ifndef HS_CLI_QUICK_TOPICS_H
#define HS_CLI_QUICK_TOPICS_H

#include "cli/quick.h"

extern const quick_topic quick_diffusion, quick_chart, quick_case_topic, quick_soak, quick_scale,
    quick_decarb, quick_martensite, quick_hardness, quick_fit, quick_section, quick_limit,
    quick_bath, quick_gas, quick_bake, quick_pickle, quick_pack, quick_passes, quick_cooling,
    quick_bow;

#endif
