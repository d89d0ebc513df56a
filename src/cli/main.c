#include "base/nearest.h"
#include "cli/commands.h"
#include "cli/fault.h"
#include "cli/out.h"
#include "hardskin/tables/table.h"

#include <stdio.h>
#include <string.h>

typedef struct command {
    const char *name;
    int (*run)(int count, char **words);
    const char *usage, *what;
} command;

static const command commands[] = {
    {"plan", hs_command_plan, "plan SHEET [--json]", "the whole answer for a part"},
    {"check", hs_command_check, "check SHEET [--json]", "is the sheet complete, consistent, within the models?"},
    {"new", hs_command_new, "new FORM", "a starter sheet: plate, bar, ring or profile"},
    {"quick", hs_command_quick, "quick TOPIC k=v ... [--json]", "one sum; alone: the topics"},
    {"tables", hs_command_tables, "tables [NAME]", "the tables, their sources and basis"},
    {"why", hs_command_why, "why [CODE]", "what an error or a caution means"},
};
enum { COMMANDS = sizeof commands / sizeof *commands };

static int help(void) {
    hs_out out = {0};
    hs_out_add(&out, "hardskin: how oversize to leave a part that is case-hardened and ground,\n"
                     "whether the wheel stays inside the case, how to descale it.\n\n");
    for (size_t i = 0; i < COMMANDS; i++)
        hs_out_add(&out, "  hardskin %-30s %s\n", commands[i].usage, commands[i].what);
    hs_out_add(&out,
               "  hardskin %-30s %s\n  hardskin %-30s %s\n\n"
               "SHEET may be - for stdin. The answer goes to stdout, messages to stderr.\n"
               "Exit: 0 go or tight; 1 an answer is no; 2 usage; 3 sheet or value wrong;\n"
               "4 outside the range of the models; 5 input or output; 70 a fault of the program.\n",
               "--help", "this page", "--version", "version, and hash of the tables");
    return hs_out_write(&out);
}

static int version(void) {
    hs_out out = {0};
    hs_out_add(&out, "hardskin %s, tables %s\n", HS_VERSION, hs_table_hash());
    return hs_out_write(&out);
}

static int unknown(const char *word) {
    const char *names[COMMANDS];
    char text[128] = "hardskin --help shows the commands";
    for (size_t i = 0; i < COMMANDS; i++)
        names[i] = commands[i].name;
    const char *near = hs_nearest(word, names, COMMANDS);
    if (near) snprintf(text, sizeof text, "did you mean %s?", near);
    return hs_fault_usage(word[0] == '-' ? "no such option:" : "no such command:", word, text);
}

int main(int argc, char **argv) {
    if (argc < 2) return hs_fault_usage("a command is needed", "", "hardskin --help shows them");
    if (!strcmp(argv[1], "--help") || !strcmp(argv[1], "--version")) {
        if (argc > 2) return hs_fault_usage("nothing may follow", argv[1], "");
        return argv[1][2] == 'h' ? help() : version();
    }
    for (size_t i = 0; i < COMMANDS; i++)
        if (!strcmp(argv[1], commands[i].name)) return commands[i].run(argc - 2, argv + 2);
    return unknown(argv[1]);
}
