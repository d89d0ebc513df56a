#include "sheet/reader.h"

#include "base/nearest.h"
#include "base/text.h"
#include "sheet/forbidden.h"
#include "sheet/synonyms.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { LONGEST_NAME = 200, POINTER_BYTES = 160 };

void *hs_reader_get(hs_reader *r, size_t n, size_t size) {
    void *memory = hs_arena_get(r->arena, n ? n * size : 1);
    hs_error err = {.status = HS_E_MEMORY, .message = "no memory left to read the sheet"};
    if (!memory && r->fault_count < HS_MAX_FAULTS) r->faults[r->fault_count++] = err;
    return memory;
}

const char *hs_reader_pointer(hs_reader *r, const hs_node *node) {
    char pointer[POINTER_BYTES];
    hs_node_pointer(pointer, sizeof pointer, node);
    const char *kept = hs_arena_text(r->arena, pointer, strlen(pointer));
    return kept ? kept : "";
}

void hs_reader_echo(hs_reader *r, const hs_node *node, double value, const char *unit) {
    hs_echo *echo = hs_reader_get(r, 1, sizeof *echo);
    if (!echo) return;
    echo->read =
        (hs_read){.pointer = hs_reader_pointer(r, node), .text = node->text, .value = value};
    echo->read.unit = hs_arena_text(r->arena, unit, strlen(unit));
    if (!echo->read.unit) echo->read.unit = "";
    if (r->last)
        r->last->next = echo;
    else
        r->first = echo;
    r->last = echo;
    r->echoes++;
}

void hs_reader_suggest(char *out, size_t size, const char *word, hs_words words) {
    hs_text text = hs_text_start(out, size);
    const char *near = hs_synonym(word, words.list, words.n);
    if (!near) near = hs_nearest(word, words.list, words.n);
    if (near) {
        hs_text_add(&text, "did you mean \"%s\"?", near);
        return;
    }
    for (size_t i = 0; i < words.n; i++)
        hs_text_add(&text, "%s\"%s\"", i ? ", " : "one of ", words.list[i]);
}

static void unknown_key(hs_reader *r, const hs_node *member, hs_words keys) {
    hs_error err = {0};
    if (hs_forbidden(member->key, r->scope, &err) ||
        (member->kind == HS_NODE_TEXT && hs_forbidden(member->text, r->scope, &err))) {
        hs_reader_fault(r, member, HS_AT_KEY, &err);
        return;
    }
    char help[sizeof err.help];
    hs_reader_suggest(help, sizeof help, member->key, keys);
    hs_reader_say_key(r, member, HS_E_KEY, help, "no key \"%.80s\" here", member->key);
}

int hs_reader_object(hs_reader *r, const hs_node *node, hs_words keys) {
    if (!node) return 0;
    if (node->kind != HS_NODE_OBJECT) {
        hs_reader_say(r, node, HS_E_TYPE, "{ \"key\": value, ... }", "an object belongs here");
        return 0;
    }
    for (const hs_node *m = node->child; m; m = m->next) {
        int known = 0;
        for (size_t i = 0; i < keys.n && !known; i++)
            known = !strcmp(m->key, keys.list[i]);
        if (!strcmp(m->key, "note")) {
            if (m->kind != HS_NODE_TEXT)
                hs_reader_say(r, m, HS_E_TYPE, "\"note\": \"...\"", "a note is a text");
        } else if (!known) {
            unknown_key(r, m, keys);
        }
    }
    return 1;
}

int hs_reader_list(hs_reader *r, const hs_node *node, size_t least, size_t most) {
    if (!node) return 0;
    if (node->kind != HS_NODE_LIST) {
        char help[160] = "[ ..., ... ]";
        if (node->kind == HS_NODE_TEXT && strlen(node->text) < 80)
            snprintf(help, sizeof help, "in brackets, even one: [\"%s\"]", node->text);
        hs_reader_say(r, node, HS_E_TYPE, help, "a list belongs here");
        return 0;
    }
    if (node->count < least)
        hs_reader_say(r, node, HS_E_MISSING, "[ ..., ... ]",
                      "at least %zu belong%s in this list, not %zu", least, least == 1 ? "s" : "",
                      node->count);
    else if (node->count > most)
        hs_reader_say(r, node, HS_E_TOO_LARGE, "split the job", "%zu entries: at most %zu are read",
                      node->count, most);
    return node->count >= least && node->count <= most;
}

int hs_reader_text(hs_reader *r, const hs_node *node, const char **out) {
    if (!node) return 0;
    if (node->kind != HS_NODE_TEXT) {
        hs_reader_say(r, node, HS_E_TYPE, "put it into double quotes", "a text belongs here");
        return 0;
    }
    size_t length = strlen(node->text);
    int control = node->spot.has_nul;
    for (size_t i = 0; i < length; i++)
        control |= (unsigned char)node->text[i] < ' ' || node->text[i] == 0x7F;
    if (control) {
        hs_reader_say(r, node, HS_E_ENCODING, "letters, digits and blanks",
                      "a control character in a text");
        return 0;
    }
    if (length == 0 || strspn(node->text, " ") == length) {
        hs_reader_say(r, node, HS_E_MISSING, "write it, or leave its key out",
                      "this text is empty");
        return 0;
    }
    if (length > LONGEST_NAME) {
        hs_reader_say(r, node, HS_E_TOO_LARGE, "put the rest into \"note\"",
                      "a text of more than %d bytes", LONGEST_NAME);
        return 0;
    }
    *out = node->text;
    return 1;
}

int hs_reader_word(hs_reader *r, const hs_node *node, hs_words words, size_t *index) {
    const char *text;
    if (!hs_reader_text(r, node, &text)) return 0;
    for (size_t i = 0; i < words.n; i++)
        if (!strcmp(text, words.list[i])) {
            *index = i;
            return 1;
        }
    hs_error err = {0};
    if (hs_forbidden(text, r->scope, &err)) {
        hs_reader_fault(r, node, HS_AT_VALUE, &err);
        return 0;
    }
    char help[sizeof err.help];
    hs_reader_suggest(help, sizeof help, text, words);
    hs_reader_say(r, node, HS_E_WORD, help, "\"%.80s\" is none of the words this key takes", text);
    return 0;
}

int hs_reader_flag(hs_reader *r, const hs_node *node, int *out) {
    if (!node) return 0;
    if (node->kind != HS_NODE_TRUE && node->kind != HS_NODE_FALSE) {
        hs_reader_say(r, node, HS_E_TYPE, "without quotes", "true or false belongs here");
        return 0;
    }
    *out = node->kind == HS_NODE_TRUE;
    return 1;
}

int hs_reader_count(hs_reader *r, const hs_node *node, size_t low, size_t high, size_t *out) {
    if (!node) return 0;
    if (node->kind != HS_NODE_NUMBER || node->spot.long_number) {
        hs_reader_say(r, node, HS_E_TYPE, "without quotes", "a whole number belongs here");
        return 0;
    }
    double x = node->number;
    if (!(x >= (double)low && x <= (double)high) || x != floor(x)) {
        hs_reader_say(r, node, HS_E_IMPOSSIBLE, "a count, without quotes and unit",
                      "a whole number from %zu to %zu belongs here", low, high);
        return 0;
    }
    *out = (size_t)x;
    return 1;
}
