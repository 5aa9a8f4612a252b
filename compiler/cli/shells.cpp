#include "cli/shells.hpp"

#include "kitchen/keys.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace manciple::cli {
namespace {

// What may stand at an argument, as far as a shell can know.
struct Choice {
  enum class Kind { anything, file, folder, words } kind = Kind::anything;
  std::string words; // separated by spaces
};

Choice choice_of(const std::string& argument) {
  if (argument == "PLAN" || argument == "FILE" || argument == "FILES" || argument == "--plan" ||
      argument == "BEFORE" || argument == "AFTER") {
    return {Choice::Kind::file, {}};
  }
  if (argument == "FOLDER" || argument == "--out") {
    return {Choice::Kind::folder, {}};
  }
  if (argument == "KIND") {
    std::vector<std::string> kinds;
    for (const auto& kind : kitchen::keys::kinds) {
      kinds.emplace_back(kind.name);
    }
    return {Choice::Kind::words, text::join(kinds, " ")};
  }
  if (argument == "SHELL") {
    return {Choice::Kind::words, "bash zsh fish"};
  }
  if (argument == "--measures") {
    return {Choice::Kind::words, "us metric"};
  }
  return {};
}

std::string names_of(const std::vector<Command>& commands) {
  std::vector<std::string> names;
  for (const Command& command : commands) {
    names.push_back(command.name);
  }
  return text::join(names, " ");
}

// The first argument that is no option.
std::string first_argument(const Command& command) {
  const auto found = std::find_if(command.arguments.begin(), command.arguments.end(),
                                  [](const Argument& a) { return !a.option; });
  return found == command.arguments.end() ? std::string() : found->name;
}

std::string options_of(const Command& command) {
  std::vector<std::string> names;
  for (const Argument& argument : command.arguments) {
    if (argument.option) {
      names.push_back(argument.name);
    }
  }
  return text::join(names, " ");
}

std::string bash_reply(const Choice& choice) {
  switch (choice.kind) {
  case Choice::Kind::file:
    return "COMPREPLY=($(compgen -f -- \"$word\"))";
  case Choice::Kind::folder:
    return "COMPREPLY=($(compgen -d -- \"$word\"))";
  case Choice::Kind::words:
    return fmt::format("COMPREPLY=($(compgen -W \"{}\" -- \"$word\"))", choice.words);
  case Choice::Kind::anything:
    break;
  }
  return "COMPREPLY=()";
}

std::string bash(const std::vector<Command>& commands) {
  std::string out = "# Completion of manciple for bash.\n_manciple() {\n"
                    "  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]}\n"
                    "  local command=${COMP_WORDS[1]}\n  COMPREPLY=()\n"
                    "  if [ \"$COMP_CWORD\" -eq 1 ]; then\n";
  out += fmt::format("    COMPREPLY=($(compgen -W \"{} --help --version\" -- \"$word\"))\n"
                     "    return\n  fi\n  case \"$before\" in\n",
                     names_of(commands));
  std::vector<std::string> seen;
  for (const Command& command : commands) {
    for (const Argument& argument : command.arguments) {
      const bool fresh = std::find(seen.begin(), seen.end(), argument.name) == seen.end();
      if (argument.option && argument.takes_value && fresh) {
        seen.push_back(argument.name);
        out += fmt::format("  {}) {}; return ;;\n", argument.name,
                           bash_reply(choice_of(argument.name)));
      }
    }
  }
  out += "  esac\n  case \"$command\" in\n";
  for (const Command& command : commands) {
    out += fmt::format("  {})\n    if [[ $word == -* ]]; then\n"
                       "      COMPREPLY=($(compgen -W \"{}\" -- \"$word\"))\n"
                       "    else\n      {}\n    fi ;;\n",
                       command.name, options_of(command),
                       bash_reply(choice_of(first_argument(command))));
  }
  return out + "  esac\n}\ncomplete -o filenames -F _manciple manciple\n";
}

// Inside single quotes of any of the shells; in zsh a colon and brackets have a meaning besides.
std::string in_quotes(std::string_view text, std::string_view special = {}) {
  std::string out;
  for (const char c : text) {
    if (c == '\'') {
      out += "'\\''";
      continue;
    }
    out += special.find(c) == std::string_view::npos ? "" : "\\";
    out += c;
  }
  return out;
}

std::string zsh_values(const Choice& choice) {
  switch (choice.kind) {
  case Choice::Kind::file:
    return "_files";
  case Choice::Kind::folder:
    return "_files -/";
  case Choice::Kind::words:
    return "(" + choice.words + ")";
  case Choice::Kind::anything:
    break;
  }
  return " ";
}

std::string zsh(const std::vector<Command>& commands) {
  std::string out = "#compdef manciple\n# Completion of manciple for zsh.\n_manciple() {\n"
                    "  local -a commands\n  commands=(\n";
  for (const Command& command : commands) {
    out += fmt::format("    '{}:{}'\n", command.name, in_quotes(command.doc, ":"));
  }
  out += "  )\n  if (( CURRENT == 2 )); then\n    _describe 'command' commands\n"
         "    _arguments '--help[help]' '--version[version]'\n    return\n  fi\n"
         "  local command=$words[2]\n  shift words\n  (( CURRENT-- ))\n  case $command in\n";
  for (const Command& command : commands) {
    out += fmt::format("  {})\n    _arguments", command.name);
    for (const Argument& argument : command.arguments) {
      const std::string values = zsh_values(choice_of(argument.name));
      if (argument.option) {
        out += fmt::format(" \\\n      '{}[{}]{}'", argument.name, in_quotes(argument.doc, "[]:"),
                           argument.takes_value ? ":value:" + values : "");
      } else {
        out += fmt::format(" \\\n      '{}:{}:{}'", argument.name == "FILES" ? "*" : "",
                           argument.name, values);
      }
    }
    out += " ;;\n";
  }
  return out + "  esac\n}\n_manciple \"$@\"\n";
}

std::string fish_values(const Choice& choice) {
  switch (choice.kind) {
  case Choice::Kind::file:
    return " -F";
  case Choice::Kind::folder:
    return " -x -a '(__fish_complete_directories)'";
  case Choice::Kind::words:
    return fmt::format(" -x -a '{}'", choice.words);
  case Choice::Kind::anything:
    break;
  }
  return {};
}

std::string fish(const std::vector<Command>& commands) {
  std::string out = "# Completion of manciple for fish.\ncomplete -c manciple -f\n"
                    "complete -c manciple -l help -d 'help'\n"
                    "complete -c manciple -n __fish_use_subcommand -l version -d 'version'\n";
  for (const Command& command : commands) {
    out += fmt::format("complete -c manciple -n __fish_use_subcommand -a {} -d '{}'\n",
                       command.name, in_quotes(command.doc));
    const std::string here =
        fmt::format("complete -c manciple -n '__fish_seen_subcommand_from {}'", command.name);
    for (const Argument& argument : command.arguments) {
      const std::string values = fish_values(choice_of(argument.name));
      if (!argument.option && !values.empty()) {
        out += fmt::format("{}{}\n", here, values);
      } else if (argument.option && argument.name != "--help") {
        out += fmt::format("{} -l {}{} -d '{}'\n", here, argument.name.substr(2),
                           argument.takes_value && values.empty() ? " -x" : values,
                           in_quotes(argument.doc));
      }
    }
  }
  return out;
}

// Text for groff: no line of it is taken for a request, and what is a hyphen stays one.
std::string groff(std::string_view text) {
  std::string out = text.starts_with('.') || text.starts_with('\'') ? "\\&" : "";
  for (const char c : text) {
    out += c == '\\' ? "\\e" : c == '-' ? "\\-" : std::string(1, c);
  }
  return out;
}

std::string usage(const Command& command) {
  std::string out = fmt::format(".B manciple {}\n", command.name);
  for (const Argument& argument : command.arguments) {
    if (argument.name == "--help") {
      continue;
    }
    std::string word = groff(argument.name);
    word += argument.option && argument.takes_value ? " VALUE" : "";
    word += argument.name == "FILES" ? " ..." : "";
    out += argument.needed ? fmt::format("{}\n", word) : fmt::format("[{}]\n", word);
  }
  return out;
}

} // namespace

std::string completion(const std::vector<Command>& commands, std::string_view shell) {
  if (shell == "bash") {
    return bash(commands);
  }
  if (shell == "zsh") {
    return zsh(commands);
  }
  return shell == "fish" ? fish(commands) : std::string();
}

std::string manual(const std::vector<Command>& commands, std::string_view version) {
  std::string out = fmt::format(
      ".TH MANCIPLE 1 \"\" \"manciple {}\" \"manciple\"\n"
      ".SH NAME\nmanciple \\- compile recipes and a meal plan into a shopping list\n"
      ".SH SYNOPSIS\n.B manciple\n.I COMMAND\n[arguments]\n"
      ".SH DESCRIPTION\n"
      "Reads recipes, a plan of meals, a household, shops with their prices and what is in the "
      "house, all as YAML, and writes the shopping list, proven to be the cheapest, and the "
      "schedule to cook from.\n"
      ".PP\nBegin with\n.B manciple new\nand a folder's name.\n.SH COMMANDS\n",
      version);
  for (const Command& command : commands) {
    out +=
        fmt::format(".SS {}\n{}.PP\n{}\n", command.name, usage(command), groff(command.doc + "."));
    for (const Argument& argument : command.arguments) {
      out += fmt::format(".TP\n.B {}\n{}\n", groff(argument.name), groff(argument.doc));
    }
  }
  return out + ".SH FILES\n"
               ".TP\n.I recipes/NAME.yaml\na recipe\n"
               ".TP\n.I recipes/foods.yaml\nfoods of your own\n"
               ".TP\n.I plans/household.yaml\nwho eats, and how\n"
               ".TP\n.I plans/on\\-hand.yaml\nwhat is in the house\n"
               ".TP\n.I plans/on\\-hand/DATE.yaml\nwhat was in the house on a later day\n"
               ".TP\n.I plans/receipts/NAME.yaml\nwhat was bought\n"
               ".TP\n.I plans/stores/NAME.yaml\na shop and its prices\n"
               ".TP\n.I plans/NAME.yaml\na plan: what is eaten when\n"
               ".TP\n.I out/NAME/\nwhat is built from it\n"
               ".PP\n.B manciple keys\nlists what each of them can say.\n"
               ".SH EXIT STATUS\n"
               ".TP\n.B 0\nAll is well.\n"
               ".TP\n.B 1\nThe files have errors, or what was asked for cannot be written.\n"
               ".TP\n.B 2\nThe command line is wrong.\n"
               ".TP\n.B 70\nA bug in the program itself.\n";
}

} // namespace manciple::cli
