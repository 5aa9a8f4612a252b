#include "cli/watch.hpp"

#include "cli/say.hpp"

#include <algorithm>
#include <csignal>
#include <unistd.h>

namespace manciple::cli {
namespace {

constexpr std::chrono::milliseconds quiet_at_first{1000};
constexpr std::chrono::milliseconds between_lines{500};

volatile std::sig_atomic_t interrupted = 0;

extern "C" void note_interrupt(int) {
  interrupted = 1;
}

} // namespace

Watch::Watch()
    : terminal_(::isatty(STDERR_FILENO) == 1),
      begun_(std::chrono::steady_clock::now()),
      shown_(begun_),
      standing_("looking for the cheapest list") {
  if (terminal_) {
    interrupted = 0;
    struct sigaction action {};
    action.sa_handler = note_interrupt;
    action.sa_flags = static_cast<int>(SA_RESETHAND) | SA_RESTART;
    ::sigaction(SIGINT, &action, nullptr);
  }
}

Watch::~Watch() {
  clear();
  if (terminal_) {
    (void)std::signal(SIGINT, SIG_DFL);
  }
}

bool Watch::stop() {
  const auto now = std::chrono::steady_clock::now();
  if (terminal_ && now - begun_ >= quiet_at_first &&
      (width_ == 0 || now - shown_ >= between_lines)) {
    shown_ = now;
    show(standing_ + " (Ctrl-C ends the search)");
  }
  return interrupted != 0;
}

void Watch::progress(kitchen::Cents best, kitchen::Cents bound, const kitchen::Currency& currency) {
  // Before anything is proven the bound is a number of no meaning.
  const bool known = bound >= 0 && bound <= best;
  standing_ = "best list so far " + currency.print(best);
  if (known) {
    standing_ += fmt::format(", at most {} above the cheapest", currency.print(best - bound));
  }
}

void Watch::show(const std::string& line) {
  // Blanks over what stood there: not every terminal knows how to clear a line.
  const std::size_t old = std::max(width_, line.size());
  width_ = line.size();
  rewrite_line(fmt::format("\r{:<{}}\r{}", "", old, line));
}

void Watch::clear() {
  if (width_ > 0) {
    rewrite_line(fmt::format("\r{:<{}}\r", "", width_));
    width_ = 0;
  }
}

} // namespace manciple::cli
