/* What a single sum asks and gives. */
#ifndef HS_CLI_QUICK_HELP_H
#define HS_CLI_QUICK_HELP_H

#include "cli/quick.h"

/** All topics, to stdout; returns the exit code. */
int quick_list(void);

/** One of them, each key with the form of its value. */
int quick_help(const quick_topic *topic);

#endif
