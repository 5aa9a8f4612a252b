#include "cli/command_line.hpp"

namespace manciple::cli {

CommandLine::CommandLine(const std::string& doc, std::string version_of_program)
    : app(doc), version(std::move(version_of_program)) {
  app.require_subcommand(1);
  app.set_version_flag("--version", "manciple " + version);
}

void take_plan(CLI::App& command, std::string& plan) {
  command.add_option("--plan", plan, "the plan, for example plans/2027-03.yaml")->required();
}

void take_write(CLI::App& command, bool& write, const std::string& where) {
  command.add_flag("--write", write, "write it " + where + " instead of only showing it");
}

text::Date date_of(const std::string& option, const std::string& words,
                   const std::string& example) {
  const auto day = text::parse_date(words);
  if (!day) {
    throw CLI::ValidationError(option, "'" + words + "' is not a date such as " + example);
  }
  return *day;
}

} // namespace manciple::cli
