#pragma once

#include "kitchen/kitchen.hpp"
#include "text/printable.hpp"

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

/// What the fuzz targets share. libFuzzer calls LLVMFuzzerTestOneInput of each target with bytes
/// that it makes up; sanitizers find what is wrong with memory and arithmetic, an exception that
/// gets out ends the run, and `require` finds what is wrong with the answer.
namespace manciple::fuzz {

inline void require(bool good, const char* what) {
  if (!good) {
    std::fprintf(stderr, "broken: %s\n", what);
    std::abort();
  }
}

/// The bytes as text, without what no file gets past the reader.
inline std::string text_of(const std::uint8_t* data, std::size_t size) {
  return text::printable(std::string_view(reinterpret_cast<const char*>(data), size)); // NOLINT
}

/// All that can be said is printed, and is text.
inline void check_said(const text::Diagnostics& diagnostics, const text::Sources& sources) {
  const std::string said = render(diagnostics, sources);
  require(text::printable(said, true) == said, "a diagnostic holds what is no text");
  for (const text::Diagnostic& one : diagnostics.all()) {
    require(!one.what.empty(), "a diagnostic says nothing");
  }
}

/// A scalar as a file has it.
inline text::Node scalar(const std::string& text, text::Sources& sources) {
  text::Node node;
  node.kind = text::Node::Kind::scalar;
  node.scalar = text;
  node.span = {sources.add("input", text), 0, static_cast<std::uint32_t>(text.size())};
  return node;
}

/// The foods of the reference by name.
class BookNames final : public kitchen::Names {
public:
  std::optional<kitchen::Target> find(std::string_view name) override {
    const auto id = book.find(name);
    return id ? std::optional<kitchen::Target>(*id) : std::nullopt;
  }
  [[nodiscard]] const foods::Food* food(const kitchen::Target& target) const override {
    return &book.get(std::get<foods::FoodId>(target));
  }
  [[nodiscard]] std::vector<std::string_view> all() const override { return book.names(); }
  foods::Book book;
};

/// A small house in memory with something of everything.
text::FilesInMemory house();

/// Compiles the house's plan, all phases and all outputs, and checks what comes out.
void compile(const text::FilesInMemory& files);

} // namespace manciple::fuzz
