#pragma once

#include "foods/food.hpp"
#include "measure/scan.hpp"
#include "text/fields.hpp"

#include <algorithm>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace manciple::foods {

/// Reads one record of a food into what is known of it already, and says what is wrong in it.
class FoodReader {
public:
  FoodReader(Food& food, text::Diagnostics& diagnostics) : food_(food), diagnostics_(diagnostics) {}

  void read(const text::Entry& entry);

private:
  using Entries = std::vector<const text::Entry*>;

  /// A figure with its source: [figure, source].
  struct Figure {
    const text::Node* value;
    std::string source;
  };
  std::optional<Figure> figure(const text::Node& node, std::string_view example);
  void bad(const text::Node& node, std::string_view what, std::string_view example);
  /// A word of a closed vocabulary, if the key is there.
  template <typename T, typename Parse>
  void word(const text::Fields& fields, std::string_view key, T& into, Parse parse,
            std::span<const std::string_view> known);
  static void text_of(const text::Fields& fields, std::string_view key, std::string& into);

  // What it is called, and where it is found (load.cpp).
  void numbers(const text::Fields& fields);
  void number(const text::Fields& fields, std::string_view key, std::optional<int>& into);
  void freezes(const text::Node& node);
  void check(const text::Entry& entry);

  // What it weighs and what is in it (load_amounts.cpp).
  void volumes(const Entries& entries);
  void pieces(const Entries& entries);
  void yields(const Entries& entries);
  void nutrients(const text::Node& node);

  // Times and temperatures (load_times.cpp).
  void keeps(const text::Node& node);
  void keep(const text::Fields& fields, std::string_view key, std::optional<Sourced<int>>& into,
            std::string_view not_at_all = {});
  void time(const text::Fields& fields, std::string_view key,
            std::optional<int> (*parse)(std::string_view), std::string_view example,
            std::optional<Sourced<int>>& into);
  void safe_at(const text::Node& node);
  void roasts(const Entries& entries);

  // What eaters and cooks have to be careful with (load_classes.cpp).
  void allergens(const text::Node& node);
  void classes(const text::Node& node);
  void safety(const text::Node& node);
  void expecting(const text::Node& node);
  template <typename T>
  std::vector<T> words(const text::Fields& fields, std::string_view key,
                       std::optional<T> (*parse)(std::string_view), std::string_view what,
                       std::span<const std::string_view> known);

  Food& food_;
  text::Diagnostics& diagnostics_;
};

/// What helps with a word that is none of these.
std::string nearest_of(std::string_view word, std::span<const std::string_view> known);

std::optional<Rational> scan_positive(measure::Cursor& cursor);

/// Puts `value` where an equal key stands, else at the end.
template <typename T, typename Same>
void put(std::vector<T>& list, T value, Same same) {
  const auto found = std::find_if(list.begin(), list.end(), same);
  if (found == list.end()) {
    list.push_back(std::move(value));
  } else {
    *found = std::move(value);
  }
}

} // namespace manciple::foods
