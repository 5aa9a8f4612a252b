#pragma once

/// What the program says to whoever called it.
namespace manciple::cli {

inline constexpr int good = 0;
/// The input has errors, or what was asked for cannot be written.
inline constexpr int bad_input = 1;
/// Something changed, and the exit code is to say so.
inline constexpr int differs = 1;
/// The command line is wrong.
inline constexpr int bad_usage = 2;
/// A mistake of the program itself (EX_SOFTWARE of BSD's sysexits.h).
inline constexpr int own_fault = 70;

} // namespace manciple::cli
