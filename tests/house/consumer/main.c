/* What a user of the library writes: a number from a model, a quantity from a text. */
#include <hardskin/model/chart.h>
#include <hardskin/tables/table.h>
#include <hardskin/units/quantity.h>

#include <stdio.h>

int main(void) {
    hs_error err = {0};
    hs_quantity at;
    double depth_m = 0;
    hs_units *units = hs_units_new();
    if (!units) return 2;
    hs_status status = hs_quantity_read(&at, units, "1700 F", HS_TEMPERATURE, &err);
    hs_units_free(units);
    if (status == HS_OK) status = hs_chart_total_case(&depth_m, at.value, 8 * 3600., &err);
    /* published: F. E. Harris 1943, 8 h at 1700 F: .071 in, to the last digit printed */
    int good = status == HS_OK && depth_m / .0254 > .0705 && depth_m / .0254 < .0715;
    good = good && hs_table_find("e140") != NULL;
    printf("consumer: %.4f in\n", depth_m / .0254);
    return good ? 0 : 1;
}
