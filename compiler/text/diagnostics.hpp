#pragma once

#include "text/source.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace manciple::text {

/// A remark is worth knowing and calls for nothing.
enum class Severity { error, warning, remark };

/// One kind of message. Each phase lists its own in its errors.hpp.
struct Code {
  std::string_view number; ///< a letter for the phase and three digits: "K012"
};

/// A second place that helps to understand a diagnostic: the earlier definition, an edge of a
/// cycle.
struct Note {
  std::optional<Span> at;
  std::string what;
};

struct Diagnostic {
  Severity severity = Severity::error;
  Code code;
  std::optional<Span> at; ///< absent when the mistake is in no file
  std::string what;
  std::vector<Note> notes;
  std::string fix; ///< the nearest fix, a sentence; empty when none is known

  /// Adds a note and gives the diagnostic back.
  Diagnostic& note(std::optional<Span> where, std::string text);
};

/// What a run has to say about its input. A phase adds to it and goes on, so that one run reports
/// everything that it can.
class Diagnostics {
public:
  /// Adds a diagnostic and gives it back, so that the caller can add notes.
  Diagnostic& error(Code code, std::optional<Span> at, std::string what, std::string fix = {});
  Diagnostic& warning(Code code, std::optional<Span> at, std::string what, std::string fix = {});
  Diagnostic& remark(Code code, std::optional<Span> at, std::string what, std::string fix = {});

  [[nodiscard]] const std::vector<Diagnostic>& all() const { return all_; }
  [[nodiscard]] std::size_t errors() const { return errors_; }
  [[nodiscard]] bool said(Code code) const;
  /// Those that are in a file.
  [[nodiscard]] Diagnostics of(FileId file) const;

private:
  Diagnostic& add(Severity severity, Code code, std::optional<Span> at, std::string what,
                  std::string fix);

  std::vector<Diagnostic> all_;
  std::size_t errors_ = 0;
};

/// All diagnostics as text, in the order of files, then places, then as they were added; each as
///
///     path:line:col: error: what [code]
///       the source line
///           ^~~~
///       help: the fix
///
/// `most` cuts the list and says how many more there are.
std::string render(const Diagnostics& diagnostics, const Sources& sources, std::size_t most = 50);

} // namespace manciple::text
