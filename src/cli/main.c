#include "base/nearest.h"
#include "cli/commands.h"
#include "cli/fault.h"
#include "cli/out.h"
#include "hardskin/tables/table.h"

#include <signal.h>
#include <stdio.h>
#include <string.h>

typedef struct command {
    const char *name;
    int (*run)(int count, char **words);
    const char *usage, *what, *more;
} command;

static const command commands[] = {
    {"plan", hs_command_plan, "plan SHEET [--json]", "the whole answer for a part",
     "SHEET is a file, or - for stdin. Exit: 0 go or tight; 1 an answer is no; 3 the sheet is "
     "wrong;\n"
     "4 outside the range of the models; 5 input or output.\n"},
    {"check", hs_command_check, "check SHEET [--json]",
     "is the sheet complete, consistent, within the models?",
     "It refuses what plan refuses, every fault with its place and its fix, and shows each "
     "quantity\n"
     "as it was understood.\n"},
    {"new", hs_command_new, "new FORM", "a starter sheet: plate, bar, ring or profile",
     "hardskin new plate > part.json; change what differs in your part; hardskin plan part.json\n"},
    {"quick", hs_command_quick, "quick TOPIC k=v ... [--json]", "one sum; alone: the topics",
     "hardskin quick lists the topics, hardskin quick TOPIC --help the keys of one.\n"},
    {"tables", hs_command_tables, "tables [NAME]", "the tables, their sources and basis", ""},
    {"why", hs_command_why, "why [CODE]", "what an error or a caution means", ""},
};
enum { COMMANDS = sizeof commands / sizeof *commands };

static void add_help(hs_out *out) {
    hs_out_add(out, "hardskin: how oversize to leave a part that is case-hardened and ground,\n"
                    "whether the wheel stays inside the case, how to descale it.\n\n");
    for (size_t i = 0; i < COMMANDS; i++)
        hs_out_add(out, "  hardskin %-30s %s\n", commands[i].usage, commands[i].what);
    hs_out_add(out,
               "  hardskin %-30s %s\n  hardskin %-30s %s\n\n"
               "To begin: hardskin new plate > part.json, change in it what differs in your part,\n"
               "hardskin check part.json, hardskin plan part.json.\n\n"
               "SHEET may be - for stdin. The answer goes to stdout, messages to stderr.\n"
               "Exit: 0 go or tight; 1 an answer is no; 2 usage; 3 sheet or value wrong;\n"
               "4 outside the range of the models; 5 input or output; 70 a fault of the program.\n",
               "[COMMAND] --help", "this page, or a command's", "--version",
               "version, and hash of the tables");
}

static int help(void) {
    hs_out out = {0};
    add_help(&out);
    return hs_out_write(&out);
}

static int help_of(const command *c) {
    hs_out out = {0};
    hs_out_add(&out, "hardskin %s\n  %s\n%s%s", c->usage, c->what, c->more[0] ? "\n" : "", c->more);
    return hs_out_write(&out);
}

/* Called with nothing: the page, but as a fault. */
static int nothing_asked(void) {
    hs_out out = {0};
    add_help(&out);
    if (out.data && !out.failed) fputs(out.data, stderr);
    hs_out_drop(&out);
    return hs_fault_usage("a command is needed", "", "");
}

static int version(void) {
    hs_out out = {0};
    hs_out_add(&out, "hardskin %s, tables %s\n", HS_VERSION, hs_table_hash());
    return hs_out_write(&out);
}

static int unknown(const char *word) {
    const char *names[COMMANDS];
    char text[128] = "hardskin --help shows the commands";
    size_t length = strlen(word);
    for (size_t i = 0; i < COMMANDS; i++)
        names[i] = commands[i].name;
    const char *near = hs_nearest(word, names, COMMANDS);
    if (near)
        snprintf(text, sizeof text, "did you mean %s?", near);
    else if (length > 5 && !strcmp(word + length - 5, ".json"))
        snprintf(text, sizeof text, "hardskin plan %.100s", word);
    return hs_fault_usage(word[0] == '-' ? "no such option:" : "no such command:", word, text);
}

static int asks(const char *word, const char *what) {
    if (!strcmp(word, "-h")) return !strcmp(what, "help");
    return !strcmp(strncmp(word, "--", 2) ? word : word + 2, what);
}

static int run(const command *c, int count, char **words) {
    int quick_topic = c->run == hs_command_quick && count > 1; /* it shows its own keys */
    for (int i = 0; i < count && !quick_topic; i++)
        if (!strcmp(words[i], "--help") || !strcmp(words[i], "-h")) return help_of(c);
    return c->run(count, words);
}

int main(int argc, char **argv) {
#ifdef SIGPIPE
    signal(SIGPIPE, SIG_IGN); /* a reader that has seen enough: the write tells, exit 5 */
#endif
    if (argc < 2) return nothing_asked();
    const command *asked = NULL;
    int helps = asks(argv[1], "help"), named = helps && argc > 2;
    for (size_t i = 0; i < COMMANDS; i++)
        if (!strcmp(argv[named ? 2 : 1], commands[i].name)) asked = &commands[i];
    if (helps || asks(argv[1], "version")) {
        if (argc > (named && asked ? 3 : 2))
            return hs_fault_usage("nothing may follow", argv[1], "hardskin --help, alone");
        return !helps ? version() : asked ? help_of(asked) : help();
    }
    return asked ? run(asked, argc - 2, argv + 2) : unknown(argv[1]);
}
