#pragma once

#include <string>
#include <vector>

namespace manciple::cli {

/// What another program said.
struct Ran {
  int code = 0; ///< its exit code; 127 where there is no such program, 128 and more for a signal
  std::string out;
  std::string err;
};

/// Runs a program, found by its name, with exactly these words: no shell reads them. `input` is its
/// standard input. It speaks English, and is told nothing of a repository by the environment.
Ran run_program(const std::vector<std::string>& words, const std::string& input = {});

} // namespace manciple::cli
