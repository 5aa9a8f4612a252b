#include "cli/commands.hpp"

#include "cli/command_line.hpp"
#include "cli/exit.hpp"
#include "cli/say.hpp"

#include <exception>
#include <sstream>

namespace manciple::cli {

int run(int count, const char* const* words, const std::string& version) {
  CommandLine line(
      "manciple compiles recipes and a month's meal plan into the list to shop from and "
      "the schedule to cook from.",
      version);
  for (auto* const add : all_commands) {
    add(line);
  }
  try {
    line.app.parse(count, words);
  } catch (const CLI::Success& e) { // --help, --version
    std::ostringstream said;
    line.app.exit(e, said, said);
    say(std::string_view(said.str()));
    return good;
  } catch (const CLI::ParseError& e) {
    std::ostringstream said;
    line.app.exit(e, said, said);
    complain(std::string_view(said.str()));
    return bad_usage;
  } catch (const std::exception& e) {
    complain("manciple: internal error, not a mistake in your files: {}\n", e.what());
    return own_fault;
  }
  return line.code;
}

} // namespace manciple::cli
