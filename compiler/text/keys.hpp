#pragma once

#include <span>
#include <string_view>

/// What may stand in a file: the tables by which a reader checks, and from which `manciple keys`
/// and `manciple schema` tell what there is. One place for the name of a key, its shape and its
/// meaning.
namespace manciple::text {

struct Keys;

/// What one value of a file is: a text of some kind, a mapping of keys, a mapping from names, or a
/// list. A value can be a text or a mapping; a list of one can be written as the one.
struct Value {
  std::string_view words;       ///< "a date", as it follows "needs"
  std::string_view example;     ///< as it stands in a file: "2027-03-02"
  bool text = true;             ///< it can be a text
  const Keys* keys = nullptr;   ///< a mapping of these keys
  const Value* each = nullptr;  ///< a mapping from names to such values
  std::string_view names = {};  ///< what the names are: "a food"
  const Value* items = nullptr; ///< a list of such values, or a single one
  std::string_view metric = {}; ///< the example for who measures so; empty: the same

  /// The example for a metric kitchen, or for another.
  [[nodiscard]] constexpr std::string_view example_for(bool metric_kitchen) const {
    return metric_kitchen && !metric.empty() ? metric : example;
  }
};

struct Key {
  std::string_view name;
  const Value* value;
  std::string_view doc;
  bool needed = false;
};

/// A mapping whose keys are known.
struct Keys {
  std::string_view what; ///< "a recipe"
  std::span<const Key> keys;
};

/// The same with another example for a metric kitchen.
constexpr Value with_metric(Value value, std::string_view example) {
  value.metric = example;
  return value;
}
/// A text of some kind.
constexpr Value word(std::string_view words, std::string_view example) {
  return {words, example};
}
/// A list of such values, or a single one.
constexpr Value list_of(const Value& items, std::string_view words, std::string_view example) {
  return {words, example, false, nullptr, nullptr, {}, &items};
}
/// A mapping from names to such values.
constexpr Value by_name(std::string_view names, const Value& each, std::string_view words,
                        std::string_view example) {
  return {words, example, false, nullptr, &each, names};
}
/// A mapping of keys.
constexpr Value mapping(const Keys& keys, std::string_view example) {
  return {keys.what, example, false, &keys};
}
/// A text, or a mapping of keys that says more.
constexpr Value word_or_mapping(const Keys& keys, std::string_view words,
                                std::string_view example) {
  return {words, example, true, &keys};
}

} // namespace manciple::text
