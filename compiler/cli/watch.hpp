#pragma once

#include "purchase/shopping.hpp"

#include <chrono>
#include <string>

namespace manciple::cli {

/// Watches a build from a terminal. Where the standard error stream is one, a search of more than a
/// second shows the best list so far and its gap on one line, and Ctrl-C ends the search with that
/// list; a second Ctrl-C ends the program as usual. Elsewhere nothing is shown or caught. One at a
/// time.
class Watch {
public:
  Watch();
  ~Watch();
  Watch(const Watch&) = delete;
  Watch& operator=(const Watch&) = delete;

  /// Asked of the search now and then: shows how it stands, and says whether to stop.
  bool stop();
  /// Told of a better list or bound.
  void progress(kitchen::Cents best, kitchen::Cents bound, const kitchen::Currency& currency);
  /// Takes the line away.
  void clear();

private:
  void show(const std::string& line);

  bool terminal_ = false;
  std::chrono::steady_clock::time_point begun_;
  std::chrono::steady_clock::time_point shown_;
  std::string standing_;
  std::size_t width_ = 0; ///< of what stands on the line
};

} // namespace manciple::cli
