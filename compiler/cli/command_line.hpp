#pragma once

#include "cli/exit.hpp"
#include "text/date.hpp"

#include <CLI/CLI.hpp>

#include <memory>
#include <string>
#include <utility>

namespace manciple::cli {

/// A command on the command line, and what it is asked for: its arguments are written there.
template <typename Asked>
struct Added {
  CLI::App& command;
  Asked& asked;
};

/// The command line, to which each command adds itself.
class CommandLine {
public:
  CommandLine(const std::string& doc, std::string version_of_program);
  // Commands refer to it.
  CommandLine(const CommandLine&) = delete;
  CommandLine& operator=(const CommandLine&) = delete;

  /// Adds a command. If it is called, `work` gets what it is asked for, and gives the exit code.
  template <typename Asked, typename Work>
  Added<Asked> add(const std::string& name, const std::string& doc, Work work) {
    auto asked = std::make_shared<Asked>();
    CLI::App* command = app.add_subcommand(name, doc);
    command->callback([this, asked, work] { code = work(std::as_const(*asked)); });
    return {*command, *asked};
  }

  CLI::App app;
  std::string version;
  int code = good; ///< what the command gave that was called
};

/// `--plan`, for a command that needs one.
void take_plan(CLI::App& command, std::string& plan);
/// `--write`, for a command that writes `where` ("into the price list") what it shows.
void take_write(CLI::App& command, bool& write, const std::string& where);

/// The date that an option names; a wrong command line, with an example, where it names none.
text::Date date_of(const std::string& option, const std::string& words, const std::string& example);

} // namespace manciple::cli
