#include "foods/food_reader.hpp"

#include "foods/errors.hpp"
#include "foods/keys.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::foods {

using text::Fields;
using text::Node;

template <typename T>
std::vector<T> FoodReader::words(const Fields& fields, std::string_view key,
                                 std::optional<T> (*parse)(std::string_view), std::string_view what,
                                 std::span<const std::string_view> known) {
  std::vector<T> out;
  for (const Node* item : fields.list(key)) {
    if (const auto word = parse(item->scalar)) {
      out.push_back(*word);
    } else {
      diagnostics_.error(errors::unknown_word, item->span,
                         fmt::format("'{}' is not {}", item->scalar, what),
                         nearest_of(item->scalar, known));
    }
  }
  return out;
}

void FoodReader::allergens(const Node& node) {
  const Fields fields(node, keys::allergens, diagnostics_);
  const auto list = [&](std::string_view key) {
    return words(fields, key, parse_allergen, "an allergen class", allergen_words());
  };
  food_.allergens = Allergens{list("contains"), list("check label")};
}

void FoodReader::classes(const Node& node) {
  const Fields fields(node, keys::classes, diagnostics_);
  const auto list = [&](std::string_view key) {
    return words(fields, key, parse_diet_class, "a class of foods", diet_class_words());
  };
  food_.classes = Classes{list("contains"), list("check label"), {}};
  text_of(fields, "source", food_.classes->source);
}

void FoodReader::safety(const Node& node) {
  const Fields fields(node, keys::safety, diagnostics_);
  food_.safety = SafetyClasses{
      words(fields, "classes", parse_safety_class, "a food safety class", safety_class_words()),
      {}};
  text_of(fields, "source", food_.safety->source);
}

void FoodReader::expecting(const Node& node) {
  const Fields fields(node, keys::expecting, diagnostics_);
  food_.expecting = Cautions{words(fields, "classes", parse_caution,
                                   "a class of foods to be careful with", caution_words()),
                             {}};
  text_of(fields, "source", food_.expecting->source);
}

} // namespace manciple::foods
