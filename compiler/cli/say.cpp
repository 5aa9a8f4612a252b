#include "cli/say.hpp"

#include "cli/exit.hpp"
#include "text/printable.hpp"

#include <cerrno>
#include <cstdio>
#include <system_error>

namespace manciple::cli {
namespace {

// The first thing that went wrong with the standard output.
int& failure() {
  static int error = 0;
  return error;
}

void keep(bool written) {
  if (!written && failure() == 0) {
    failure() = errno == 0 ? EIO : errno;
  }
}

} // namespace

void say(std::string_view text) {
  const std::string safe = text::printable(text, true);
  errno = 0;
  keep(std::fwrite(safe.data(), 1, safe.size(), stdout) == safe.size());
}

void complain(std::string_view text) {
  const std::string safe = text::printable(text, true);
  (void)std::fwrite(safe.data(), 1, safe.size(), stderr);
}

void rewrite_line(std::string_view bytes) {
  (void)std::fwrite(bytes.data(), 1, bytes.size(), stderr);
  (void)std::fflush(stderr);
}

int finish(int code) {
  errno = 0;
  keep(std::fflush(stdout) == 0);
  errno = 0;
  keep(std::fclose(stdout) == 0); // some file systems find out only then
  if (failure() == 0) {
    return code;
  }
  // Whoever reads through a pipe and has seen enough wants to hear no more.
  if (failure() != EPIPE) {
    complain("manciple: not everything could be written: {}\n",
             std::error_code(failure(), std::generic_category()).message());
  }
  return code == good ? bad_input : code;
}

} // namespace manciple::cli
