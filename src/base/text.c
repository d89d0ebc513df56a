#include "base/text.h"

#include <stdarg.h>
#include <stdio.h>

hs_text hs_text_start(char *data, size_t size) {
    if (size > 0) data[0] = '\0';
    return (hs_text){.data = data, .size = size, .overflow = size == 0};
}

void hs_text_add(hs_text *text, const char *format, ...) {
    if (text->overflow) return;
    va_list args;
    va_start(args, format);
    size_t room = text->size - text->length;
    int written = vsnprintf(text->data + text->length, room, format, args);
    va_end(args);
    if (written < 0 || (size_t)written >= room) {
        text->data[text->length] = '\0';
        text->overflow = 1;
        return;
    }
    text->length += (size_t)written;
}
