#pragma once

#include <array>
#include <string>

/// The commands of the program.
namespace manciple::cli {

class CommandLine;

/// Each adds a command to the command line: its name, its arguments and what it does.
void add_new(CommandLine& to);
void add_build(CommandLine& to);
void add_compare(CommandLine& to);
void add_check(CommandLine& to);
void add_why(CommandLine& to);
void add_food(CommandLine& to);
void add_convert(CommandLine& to);
void add_prices(CommandLine& to);
void add_day(CommandLine& to);
void add_use_up(CommandLine& to);
void add_receipt(CommandLine& to);
void add_settle(CommandLine& to);
void add_review(CommandLine& to);
void add_on_hand(CommandLine& to);
void add_keys(CommandLine& to);
void add_schema(CommandLine& to);
void add_prep(CommandLine& to);
void add_completion(CommandLine& to);
void add_manual(CommandLine& to);

/// In the order in which --help lists them.
inline constexpr std::array all_commands{
    add_new,    add_build,  add_compare, add_check,      add_why,    add_food,   add_convert,
    add_prices, add_day,    add_use_up,  add_receipt,    add_settle, add_review, add_on_hand,
    add_keys,   add_schema, add_prep,    add_completion, add_manual};

/// Does what the command line says, `words` of which the first is the program's name, and gives the
/// exit code. `version` is the program's.
int run(int count, const char* const* words, const std::string& version);

} // namespace manciple::cli
