#include "foods/load.hpp"

#include "foods/errors.hpp"
#include "foods/food_reader.hpp"
#include "foods/keys.hpp"
#include "text/date.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

namespace manciple::foods {

using text::Diagnostics;
using text::Entry;
using text::Fields;
using text::Node;

std::optional<Rational> scan_positive(measure::Cursor& cursor) {
  const auto number = measure::scan_number(cursor);
  return number && *number > 0 ? number : std::nullopt;
}

std::string nearest_of(std::string_view word, std::span<const std::string_view> known) {
  return text::did_you_mean(word, {known.begin(), known.end()});
}

void FoodReader::bad(const Node& node, std::string_view what, std::string_view example) {
  diagnostics_.error(errors::bad_figure, node.span, std::string(what),
                     fmt::format("write it as {}", example));
}

std::optional<FoodReader::Figure> FoodReader::figure(const Node& node, std::string_view example) {
  const bool good = node.is_sequence() && node.items.size() == 2 && node.items[0].is_scalar() &&
                    node.items[1].is_scalar() && !node.items[1].scalar.empty();
  if (!good) {
    bad(node, "a figure and its source are needed", example);
    return std::nullopt;
  }
  return Figure{&node.items[0], node.items[1].scalar};
}

template <typename T, typename Parse>
void FoodReader::word(const Fields& fields, std::string_view key, T& into, Parse parse,
                      std::span<const std::string_view> known) {
  const Node* node = fields.find(key);
  if (node == nullptr) {
    return;
  }
  if (const auto value = parse(node->scalar)) {
    into = *value;
    return;
  }
  diagnostics_.error(errors::unknown_word, node->span,
                     fmt::format("'{}' is not a {}", node->scalar, key == "stored" ? "place" : key),
                     nearest_of(node->scalar, known));
}

void FoodReader::text_of(const Fields& fields, std::string_view key, std::string& into) {
  if (const Node* node = fields.find(key)) {
    into = node->scalar;
  }
}

void FoodReader::number(const Fields& fields, std::string_view key, std::optional<int>& into) {
  const Node* node = fields.find(key);
  if (node == nullptr) {
    return;
  }
  measure::Cursor cursor{node->scalar};
  const auto read = measure::scan_number(cursor);
  if (read && cursor.done() && *read < 100000) {
    into = static_cast<int>(measure::to_int64(measure::floor(*read)));
  } else {
    bad(*node, fmt::format("'{}' is not an SR28 number", node->scalar), "11282");
  }
}

// Of the SR28 tables.
void FoodReader::numbers(const Fields& fields) {
  number(fields, "usda", food_.usda);
  number(fields, "usda cooked", food_.usda_cooked);
  for (const Entry* of : fields.named("usda of forms")) {
    const auto form = parse_form(of->key.scalar);
    measure::Cursor cursor{of->value.scalar};
    const auto number = scan_positive(cursor);
    if (!form || !number || !cursor.done()) {
      bad(of->value, "a form and its SR28 number are needed", "{white: 1124}");
      continue;
    }
    put(food_.usda_forms,
        UsdaForm{*form, static_cast<int>(measure::to_int64(measure::floor(*number)))},
        [&](const UsdaForm& u) { return u.form == *form; });
  }
}

void FoodReader::freezes(const Node& node) {
  food_.freezes_for_cooking = node.scalar == "for cooking";
  if (node.scalar != "well" && node.scalar != "poorly" && !food_.freezes_for_cooking) {
    bad(node, fmt::format("a food freezes well, poorly or only for cooking, not '{}'", node.scalar),
        "'freezes: well' or 'freezes: for cooking'");
  }
  food_.freezes = node.scalar != "poorly";
}

void FoodReader::read(const Entry& entry) {
  food_.name = text::lower(entry.key.scalar);
  const Fields fields(entry.value, keys::food, diagnostics_,
                      fmt::format("the food '{}'", entry.key.scalar));
  for (const Node* alias : fields.list("aliases")) {
    food_.aliases.push_back(text::lower(alias->scalar));
  }
  const bool new_food = fields.has("department");
  word(fields, "department", food_.department, parse_department, department_words());
  numbers(fields);
  word(fields, "stored", food_.stored, parse_place, place_words());
  const auto each = [&](std::string_view key, void (FoodReader::*part)(const Node&)) {
    if (const Node* node = fields.find(key)) {
      (this->*part)(*node);
    }
  };
  const auto text_in = [&](std::string_view key, std::optional<std::string>& into) {
    if (const Node* node = fields.find(key)) {
      into = text::lower(node->scalar);
    }
  };
  volumes(fields.named("volume"));
  pieces(fields.named("pieces"));
  text_in("count as", food_.count_as);
  text_in("sold as", food_.sold_as);
  text_in("in packs", food_.in_packs);
  yields(fields.named("yields"));
  each("keeps", &FoodReader::keeps);
  each("freezes", &FoodReader::freezes);
  text_of(fields, "thaw", food_.thaw);
  time(fields, "ripens", text::parse_days, "3 days", food_.ripens);
  time(fields, "soak", text::parse_minutes, "8 hours", food_.soak);
  each("safe at", &FoodReader::safe_at);
  roasts(fields.named("roasts"));
  each("allergens", &FoodReader::allergens);
  text_of(fields, "shop in", food_.shop_in);
  each("classes", &FoodReader::classes);
  each("safety", &FoodReader::safety);
  each("expecting", &FoodReader::expecting);
  each("nutrients", &FoodReader::nutrients);
  if (const Node* node = fields.find("from the tap")) {
    food_.from_tap = node->scalar == "yes";
  }
  if (entry.value.is_mapping() && !new_food && food_.shop_in.empty()) {
    diagnostics_.error(
        errors::incomplete, entry.key.span,
        fmt::format("'{}' is not in the reference, so it needs a department", entry.key.scalar),
        "for example 'department: produce'");
  }
  check(entry);
}

void FoodReader::check(const Entry& entry) {
  if (food_.shop_in.empty()) {
    food_.shop_in = food_.is_household() ? "each" : "lb";
  }
  const auto has_piece = [&](const std::optional<std::string>& piece, std::string_view does) {
    if (piece && food_.piece(*piece) == nullptr) {
      diagnostics_.error(
          errors::incomplete, entry.key.span,
          fmt::format("'{}' {} '{}', but has no piece of that name", food_.name, does, *piece));
    }
  };
  has_piece(food_.count_as, "counts as");
  has_piece(food_.sold_as, "is sold as");
  has_piece(food_.in_packs, "in packs is");
}

Food read_food(const Entry& entry, Food base, Diagnostics& diagnostics) {
  FoodReader(base, diagnostics).read(entry);
  return base;
}

} // namespace manciple::foods
