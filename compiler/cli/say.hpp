#pragma once

#include <fmt/format.h>

#include <string>
#include <string_view>

/// All that the program says goes through here, so that nothing in a file or in a name can steer
/// the terminal that shows it, and that what cannot be written is known.
namespace manciple::cli {

/// To the standard output.
void say(std::string_view text);
/// To the standard error stream.
void complain(std::string_view text);

template <typename... Args>
void say(fmt::format_string<Args...> format, Args&&... args) {
  say(std::string_view(fmt::format(format, std::forward<Args>(args)...)));
}
template <typename... Args>
void complain(fmt::format_string<Args...> format, Args&&... args) {
  complain(std::string_view(fmt::format(format, std::forward<Args>(args)...)));
}

/// Bytes of the program's own to the terminal, with what moves its cursor.
void rewrite_line(std::string_view bytes);

/// To be called last: writes what is still held back. Gives `code`, or bad_input with a word about
/// it where not all that was said could be written (a full disk, a closed pipe).
int finish(int code);

} // namespace manciple::cli
