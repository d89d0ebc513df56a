/* The order of the report; the sections stand in text_*.c. */
#include "hardskin/report/report.h"

#include "report/sections.h"

hs_status hs_report_text(char *out, size_t size, const hs_job *job, const hs_result *result) {
    hs_page page = {hs_text_start(out, size), job, result};
    hs_text_title(&page);
    hs_text_measured(&page);
    hs_text_rough(&page);
    hs_text_shape(&page);
    hs_text_windows(&page);
    hs_text_remedies(&page);
    hs_text_case(&page);
    hs_text_need(&page);
    hs_text_doubts(&page);
    hs_text_route(&page);
    hs_text_buy(&page);
    hs_text_cautions(&page);
    hs_text_fire(&page);
    hs_text_test_piece(&page);
    hs_text_descale(&page);
    hs_text_grind(&page);
    hs_text_not_covered(&page);
    hs_text_appendix(&page);
    return page.text.overflow || size == 0 ? HS_E_MEMORY : HS_OK;
}
