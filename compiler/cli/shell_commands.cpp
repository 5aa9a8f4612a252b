// Commands for shells and man, which are told of all commands.
#include "cli/command_line.hpp"
#include "cli/commands.hpp"
#include "cli/exit.hpp"
#include "cli/say.hpp"
#include "cli/shells.hpp"

namespace manciple::cli {
namespace {

struct CompletionRequest {
  std::string shell;
};

struct ManualRequest {};

// The commands as they have added themselves.
std::vector<Command> table_of(const CLI::App& app) {
  std::vector<Command> out;
  for (const CLI::App* command : app.get_subcommands([](const CLI::App*) { return true; })) {
    Command one{command->get_name(), command->get_description(), {}};
    for (const CLI::Option* option : command->get_options()) {
      const bool named = !option->get_lnames().empty();
      one.arguments.push_back({named ? "--" + option->get_lnames().front() : option->get_name(),
                               option->get_description(), named,
                               named && option->get_items_expected_max() > 0,
                               option->get_required()});
    }
    out.push_back(std::move(one));
  }
  return out;
}

} // namespace

void add_completion(CommandLine& to) {
  auto [command, asked] = to.add<CompletionRequest>(
      "completion", "a script that completes the command line, for bash, zsh or fish",
      [&to](const CompletionRequest& request) {
        say(std::string_view(completion(table_of(to.app), request.shell)));
        return good;
      });
  command.add_option("SHELL", asked.shell, "bash, zsh or fish")
      ->required()
      ->check(CLI::IsMember({"bash", "zsh", "fish"}).description(""));
}

void add_manual(CommandLine& to) {
  to.add<ManualRequest>("manual", "the manual page, for man(1)", [&to](const ManualRequest&) {
    say(std::string_view(manual(table_of(to.app), to.version)));
    return good;
  });
}

} // namespace manciple::cli
