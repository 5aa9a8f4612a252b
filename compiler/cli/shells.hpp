#pragma once

#include <string>
#include <string_view>
#include <vector>

/// What a shell and `man` can be told of the program, from the table of its commands.
namespace manciple::cli {

/// An argument of a command, or an option of it.
struct Argument {
  std::string name; ///< "PLAN", "--out"
  std::string doc;
  bool option = false;
  bool takes_value = false; ///< of an option
  bool needed = false;
};

struct Command {
  std::string name;
  std::string doc;
  std::vector<Argument> arguments;
};

/// A script that completes the command line in "bash", "zsh" or "fish"; empty for another shell.
std::string completion(const std::vector<Command>& commands, std::string_view shell);

/// The manual page, in the macros of man(7).
std::string manual(const std::vector<Command>& commands, std::string_view version);

} // namespace manciple::cli
