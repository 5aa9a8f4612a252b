#include "cli/commands.hpp"
#include "cli/say.hpp"

#include <csignal>

int main(int argc, char** argv) {
  // A reader that has gone is an error of writing, not an end without a word.
  (void)std::signal(SIGPIPE, SIG_IGN);
  return manciple::cli::finish(manciple::cli::run(argc, argv, MANCIPLE_VERSION));
}
