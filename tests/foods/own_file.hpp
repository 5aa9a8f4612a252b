#pragma once

#include "foods/book.hpp"
#include "text/source.hpp"
#include "text/yaml.hpp"

#include <string>

namespace manciple::foods {

/// A household's own file of foods, and what was said about it.
struct OwnFile {
  text::Sources sources;
  text::Diagnostics diagnostics;
  Book book;

  explicit OwnFile(const std::string& text) {
    if (const auto node = text::parse_yaml(sources.add("foods.yaml", text), sources, diagnostics)) {
      book.add_household(*node, diagnostics);
    }
  }
  const Food& food(std::string_view name) { return book.get(book.find(name).value()); }
  [[nodiscard]] std::string said() const { return text::render(diagnostics, sources); }
};

} // namespace manciple::foods
