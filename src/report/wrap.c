#include "report/wrap.h"

#include <ctype.h>
#include <string.h>

static int starts_point(char c) {
    return ((unsigned char)c & 0xC0u) != 0x80u;
}

size_t hs_wrap_columns(const char *text) {
    size_t n = 0;
    for (; *text; text++)
        n += (size_t)starts_point(*text);
    return n;
}

/* Bytes and columns of the word at `text`, cut at `most` columns. */
static size_t word_bytes(size_t *columns, const char *text, size_t most) {
    size_t bytes = 0;
    *columns = 0;
    for (; text[bytes] && text[bytes] != ' ' && text[bytes] != '\n'; bytes++) {
        if (!starts_point(text[bytes])) continue;
        if (*columns == most) break;
        ++*columns;
    }
    return bytes;
}

/* Does a unit stand at `text`, closed by a space, a stop or the end? */
static int is_unit(const char *text) {
    static const char *const units[] = {"mm", "in", "%", "C", "HV", "HRC", "h", "min", "g", "A"};
    for (size_t i = 0; i < sizeof units / sizeof *units; i++) {
        size_t n = strlen(units[i]);
        if (!strncmp(text, units[i], n) && strchr(" ),.;:", text[n])) return 1;
    }
    return 0;
}

/* As word_bytes, a number taken together with the unit behind it. */
static size_t chunk_bytes(size_t *columns, const char *text, size_t most) {
    size_t bytes = word_bytes(columns, text, most), more;
    if (text[bytes] != ' ' || !isdigit((unsigned char)text[bytes - 1]) ||
        !is_unit(text + bytes + 1))
        return bytes;
    size_t unit = word_bytes(&more, text + bytes + 1, most);
    if (*columns + 1 + more > most) return bytes;
    *columns += 1 + more;
    return bytes + 1 + unit;
}

static const char *skip_spaces(const char *text) {
    return text + strspn(text, " \n");
}

static void fill_lines(hs_text *out, size_t indent, size_t hang, const char *text) {
    size_t column = indent;
    int fresh = 1;
    hs_text_add(out, "%*s", (int)indent, "");
    for (text = skip_spaces(text); *text; text = skip_spaces(text)) {
        size_t columns, bytes = chunk_bytes(&columns, text, HS_COLUMNS - hang);
        if (column + columns + (fresh ? 0u : 1u) > HS_COLUMNS) {
            hs_text_add(out, "\n%*s", (int)hang, "");
            column = hang;
            fresh = 1;
        }
        hs_text_add(out, "%s%.*s", fresh ? "" : " ", (int)bytes, text);
        column += columns + (fresh ? 0u : 1u);
        fresh = 0;
        text += bytes;
    }
    hs_text_add(out, "\n");
}

void hs_wrap_add(hs_text *out, size_t indent, size_t hang, const char *text) {
    if (strchr(text, '\n') || indent + hs_wrap_columns(text) > HS_COLUMNS)
        fill_lines(out, indent, hang, text);
    else
        hs_text_add(out, "%*s%s\n", *text ? (int)indent : 0, "", text);
}
