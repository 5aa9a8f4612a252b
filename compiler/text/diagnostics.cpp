#include "text/diagnostics.hpp"

#include "text/printable.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace manciple::text {
namespace {

std::string place(Span at, const Sources& sources) {
  if (sources.text(at.file).empty()) {
    return printable(sources.path(at.file));
  }
  const Position p = sources.position(at.file, at.begin);
  return fmt::format("{}:{}:{}", printable(sources.path(at.file)), p.line, p.column);
}

// The source line and a caret under the span, cut to a window when the line is very long.
void show_line(std::string& out, Span at, const Sources& sources) {
  if (sources.text(at.file).empty()) {
    return;
  }
  const std::string_view line = sources.line(at.file, at.begin);
  const auto line_start = static_cast<std::size_t>(line.data() - sources.text(at.file).data());
  const std::size_t from = std::min<std::size_t>(at.begin - line_start, line.size());
  const std::size_t to =
      std::clamp<std::size_t>(at.end > line_start ? at.end - line_start : 0, from, line.size());
  constexpr std::size_t window = 160;
  std::size_t first = from > window / 2 ? from - window / 2 : 0;
  while (first > 0 && (static_cast<unsigned char>(line[first]) & 0xC0U) == 0x80U) {
    --first;
  }
  std::size_t last = std::min(line.size(), first + window);
  while (last < line.size() && (static_cast<unsigned char>(line[last]) & 0xC0U) == 0x80U) {
    ++last;
  }
  const std::size_t marked = std::max<std::size_t>(
      1, count_characters(line.substr(from, std::min(to, last) - std::min(from, last))));
  out += fmt::format("  {}\n  {}^{}\n", printable(line.substr(first, last - first)),
                     std::string(count_characters(line.substr(first, from - first)), ' '),
                     std::string(marked - 1, '~'));
}

std::string_view word_for(Severity severity) {
  switch (severity) {
  case Severity::error:
    return "error";
  case Severity::warning:
    return "warning";
  case Severity::remark:
    break;
  }
  return "note";
}

} // namespace

Diagnostic& Diagnostic::note(std::optional<Span> where, std::string text) {
  notes.push_back(Note{where, std::move(text)});
  return *this;
}

Diagnostic& Diagnostics::error(Code code, std::optional<Span> at, std::string what,
                               std::string fix) {
  ++errors_;
  return add(Severity::error, code, at, std::move(what), std::move(fix));
}

Diagnostic& Diagnostics::warning(Code code, std::optional<Span> at, std::string what,
                                 std::string fix) {
  return add(Severity::warning, code, at, std::move(what), std::move(fix));
}

Diagnostic& Diagnostics::remark(Code code, std::optional<Span> at, std::string what,
                                std::string fix) {
  return add(Severity::remark, code, at, std::move(what), std::move(fix));
}

bool Diagnostics::said(Code code) const {
  return std::any_of(all_.begin(), all_.end(),
                     [&](const Diagnostic& d) { return d.code.number == code.number; });
}

Diagnostic& Diagnostics::add(Severity severity, Code code, std::optional<Span> at, std::string what,
                             std::string fix) {
  return all_.emplace_back(Diagnostic{severity, code, at, std::move(what), {}, std::move(fix)});
}

Diagnostics Diagnostics::of(FileId file) const {
  Diagnostics out;
  for (const Diagnostic& diagnostic : all_) {
    if (diagnostic.at && diagnostic.at->file == file) {
      out.all_.push_back(diagnostic);
      out.errors_ += diagnostic.severity == Severity::error ? 1 : 0;
    }
  }
  return out;
}

std::string render(const Diagnostics& diagnostics, const Sources& sources, std::size_t most) {
  std::vector<const Diagnostic*> order;
  for (const Diagnostic& d : diagnostics.all()) {
    order.push_back(&d);
  }
  const auto key = [&](const Diagnostic* d) {
    return d->at ? std::tuple(true, sources.path(d->at->file), d->at->begin)
                 : std::tuple(false, std::string_view(), std::uint32_t{0});
  };
  std::stable_sort(order.begin(), order.end(),
                   [&](const Diagnostic* a, const Diagnostic* b) { return key(a) < key(b); });

  std::string out;
  for (std::size_t i = 0; i < order.size() && i < most; ++i) {
    const Diagnostic& d = *order[i];
    const std::string_view word = word_for(d.severity);
    const std::string where = d.at ? place(*d.at, sources) + ": " : std::string();
    out += fmt::format("{}{}: {} [{}]\n", where, word, printable(d.what), d.code.number);
    if (d.at && d.severity != Severity::remark) {
      show_line(out, *d.at, sources);
    }
    for (const Note& note : d.notes) {
      const std::string at = note.at ? place(*note.at, sources) + ": " : std::string();
      out += fmt::format("  note: {}{}\n", at, printable(note.what));
    }
    if (!d.fix.empty()) {
      out += fmt::format("  help: {}\n", printable(d.fix));
    }
  }
  if (order.size() > most) {
    out += fmt::format("{} more not shown\n", order.size() - most);
  }
  return out;
}

} // namespace manciple::text
