/* The commands. Each takes what follows its own word on the command line and returns the exit code
 * of the program. */
#ifndef HS_CLI_COMMANDS_H
#define HS_CLI_COMMANDS_H

int hs_command_plan(int count, char **words);
int hs_command_check(int count, char **words);
int hs_command_new(int count, char **words);
int hs_command_quick(int count, char **words);
int hs_command_tables(int count, char **words);
int hs_command_why(int count, char **words);

#endif
