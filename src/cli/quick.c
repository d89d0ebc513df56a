#include "cli/quick.h"

#include "base/nearest.h"
#include "cli/commands.h"
#include "cli/fault.h"
#include "cli/out.h"
#include "cli/quick_help.h"
#include "cli/quick_print.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_TOPICS = 32, NAME_BYTES = 32 };

static const quick_topic *find_topic(const char *name) {
    const char *names[MOST_TOPICS];
    char text[128] = "hardskin quick, alone, lists the topics";
    size_t n = 0;
    for (; quick_topic_at(n) && n < MOST_TOPICS; n++) {
        names[n] = quick_topic_at(n)->name;
        if (!strcmp(name, names[n])) return quick_topic_at(n);
    }
    const char *near = hs_nearest(name, names, n);
    if (near) snprintf(text, sizeof text, "did you mean %s?", near);
    hs_fault_usage("no such single sum:", name, text);
    return NULL;
}

static int unknown_key(const quick_topic *topic, const char *name) {
    const char *names[QUICK_KEYS];
    char text[256] = "keys of this sum:";
    for (size_t k = 0; k < topic->keys; k++)
        names[k] = topic->key[k].name;
    const char *near = hs_nearest(name, names, topic->keys);
    if (near) {
        snprintf(text, sizeof text, "did you mean %s?", near);
    } else {
        for (size_t k = 0; k < topic->keys; k++)
            snprintf(text + strlen(text), sizeof text - strlen(text), " %s", names[k]);
    }
    return hs_fault_usage("this sum knows no key", name, text);
}

/* Split key=value, look the key up, keep the text. 0 or the exit code. */
static int take(quick_value *value, const quick_topic *topic, const char *word) {
    const char *equals = strchr(word, '=');
    if (word[0] == '-') return hs_fault_usage("no such option:", word, "only --json is one");
    if (!equals || equals == word || (size_t)(equals - word) >= NAME_BYTES)
        return hs_fault_usage("not key=value:", word,
                              "a value with blanks is one quoted argument: at=\"925 C\"");
    char name[NAME_BYTES];
    snprintf(name, sizeof name, "%.*s", (int)(equals - word), word);
    for (size_t k = 0; k < topic->keys; k++) {
        if (strcmp(name, topic->key[k].name) != 0) continue;
        if (value[k].given) return hs_fault_usage("given twice:", name, "once is enough");
        value[k].given = 1;
        value[k].text = equals + 1;
        return 0;
    }
    return unknown_key(topic, name);
}

static hs_status read_one(quick_value *v, const quick_key *key, const hs_units *units,
                          hs_error *err) {
    if (!v->text && !key->usual) return HS_OK;
    if (!v->text) v->text = key->usual;
    if (key->type == QUICK_SIZE) return hs_size_read(&v->size, units, v->text, err);
    if (key->type == QUICK_WORD) return HS_OK;
    if (key->bare) return hs_quantity_read_bare(&v->q, units, v->text, key->kind, key->bare, err);
    return hs_quantity_read(&v->q, units, v->text, key->kind, err);
}

/* A value that cannot be read is shown as it was typed: key=value with the caret under the fault.
 */
static int value_fault(hs_error *err, const quick_key *key, const quick_value *v) {
    char text[512];
    int n = snprintf(text, sizeof text, "%s=%s", key->name, v->text);
    err->line = 1;
    err->column = (err->column > 0 ? err->column : 1) + (int)strlen(key->name) + 1;
    err->pointer[0] = '\0';
    if (n < 0 || (size_t)n >= sizeof text) n = (int)sizeof text - 1;
    return hs_fault_print(err, "command line", text, (size_t)n);
}

/* All that are missing in one run; 0 or the exit code. */
static int missing_keys(const quick_value *value, const quick_topic *topic) {
    char names[256] = "", help[96];
    size_t n = 0;
    for (size_t k = 0; k < topic->keys; k++)
        if (topic->key[k].needed && !value[k].text)
            snprintf(names + strlen(names), sizeof names - strlen(names), "%s%s", n++ ? ", " : "",
                     topic->key[k].name);
    snprintf(help, sizeof help, "hardskin quick %s --help shows its keys", topic->name);
    if (n == 0) return 0;
    return hs_fault_usage(n > 1 ? "this sum needs the keys" : "this sum needs the key", names,
                          help);
}

static int read_values(quick_value *value, const quick_topic *topic, const hs_units *units) {
    int code = missing_keys(value, topic);
    if (code) return code;
    for (size_t k = 0; k < topic->keys; k++) {
        hs_error err = {0};
        if (read_one(&value[k], &topic->key[k], units, &err) != HS_OK)
            return value_fault(&err, &topic->key[k], &value[k]);
    }
    return 0;
}

static int answer_topic(const quick_topic *topic, quick_value *value, int json,
                        const hs_units *units) {
    quick_answer answer = {0};
    hs_error err = {0};
    hs_out out = {0};
    int code = read_values(value, topic, units);
    if (code) return code;
    if (topic->run(&answer, value, units, &err) != HS_OK) {
        char place[64];
        snprintf(place, sizeof place, "hardskin quick %s", topic->name);
        err.line = 0;
        return hs_fault_print(&err, place, NULL, 0);
    }
    if (json)
        quick_print_json(&out, topic, value, &answer);
    else
        quick_print_text(&out, topic, value, &answer, units);
    return hs_out_write(&out);
}

int hs_command_quick(int count, char **words) {
    if (count == 0) return quick_list();
    const quick_topic *topic = find_topic(words[0]);
    if (!topic) return hs_status_exit(HS_E_TOPIC);
    quick_value value[QUICK_KEYS] = {{0}};
    int json = 0;
    for (int i = 1; i < count; i++) {
        if (!strcmp(words[i], "--json")) {
            if (json++) return hs_fault_usage("given twice:", "--json", "once is enough");
            continue;
        }
        if (!strcmp(words[i], "--help") || !strcmp(words[i], "-h")) return quick_help(topic);
        int code = take(value, topic, words[i]);
        if (code) return code;
    }
    hs_units *units = hs_units_new();
    if (!units) {
        fputs("hardskin: no memory left\n", stderr);
        return hs_status_exit(HS_E_MEMORY);
    }
    int code = answer_topic(topic, value, json, units);
    hs_units_free(units);
    return code;
}
