#include "cli/quick_topics.h"

static const quick_topic *const topics[] = {
    &quick_diffusion, &quick_chart,      &quick_case_topic, &quick_soak, &quick_scale,
    &quick_decarb,    &quick_martensite, &quick_hardness,   &quick_fit,  &quick_section,
    &quick_limit,     &quick_bath,       &quick_gas,        &quick_bake, &quick_pickle,
    &quick_pack,      &quick_passes,     &quick_cooling,    &quick_bow,
};

const quick_topic *quick_topic_at(size_t i) {
    return i < sizeof topics / sizeof *topics ? topics[i] : NULL;
}
