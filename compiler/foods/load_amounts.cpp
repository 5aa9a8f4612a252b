#include "foods/food_reader.hpp"

#include "foods/errors.hpp"
#include "foods/keys.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::foods {

using text::Entry;
using text::Fields;
using text::Node;

void FoodReader::volumes(const Entries& entries) {
  for (const Entry* of : entries) {
    const Entry& entry = *of;
    constexpr std::string_view example = "[160 g/cup, SR28 11282.1]";
    const auto form = parse_form(entry.key.scalar);
    if (!form) {
      diagnostics_.error(errors::unknown_word, entry.key.span,
                         fmt::format("'{}' is not a form of a food", entry.key.scalar),
                         nearest_of(entry.key.scalar, form_words()));
    }
    const auto f = figure(entry.value, example);
    if (!f || !form) {
      continue;
    }
    const std::string& text = f->value->scalar;
    const std::size_t slash = text.rfind('/');
    measure::Cursor cursor{std::string_view(text).substr(0, slash)};
    const auto grams = scan_positive(cursor);
    const bool in_grams = text::trim(cursor.rest()) == "g";
    const auto unit = slash == std::string::npos
                          ? std::nullopt
                          : measure::find_unit(text.substr(slash + 1), measure::System::us);
    if (!grams || !in_grams || !unit ||
        measure::facts(*unit).dimension != measure::Dimension::volume) {
      bad(*f->value, fmt::format("'{}' is not a weight per volume", text), example);
      continue;
    }
    put(food_.volumes, VolumeWeight{*form, *unit, *grams, f->source},
        [&](const VolumeWeight& v) { return v.form == *form; });
  }
}

void FoodReader::pieces(const Entries& entries) {
  for (const Entry* of : entries) {
    const Entry& entry = *of;
    constexpr std::string_view example =
        "[110 g, SR28 11282.6], or [340 g AP, our scales] as bought";
    const auto f = figure(entry.value, example);
    if (!f) {
      continue;
    }
    measure::Cursor cursor{f->value->scalar};
    const auto grams = scan_positive(cursor);
    const std::string_view rest = text::trim(cursor.rest());
    if (!grams || (rest != "g" && rest != "g AP")) {
      bad(*f->value, fmt::format("'{}' is not the weight of a piece", f->value->scalar), example);
      continue;
    }
    const std::string name = text::lower(entry.key.scalar);
    put(food_.pieces, Piece{name, *grams, rest == "g AP", f->source},
        [&](const Piece& p) { return p.name == name; });
  }
}

void FoodReader::yields(const Entries& entries) {
  for (const Entry* of : entries) {
    const Entry& entry = *of;
    constexpr std::string_view example = "[90 %, SR28 11282 refuse]";
    const bool edible = entry.key.scalar == "edible";
    const auto form = edible ? std::optional(Form::plain) : parse_form(entry.key.scalar);
    const auto f = figure(entry.value, example);
    if (!form) {
      diagnostics_.error(errors::unknown_word, entry.key.span,
                         fmt::format("'{}' is not a form of a food", entry.key.scalar),
                         nearest_of(entry.key.scalar, form_words()));
    }
    if (!f || !form) {
      continue;
    }
    measure::Cursor cursor{f->value->scalar};
    const auto percent = scan_positive(cursor);
    if (!percent || text::trim(cursor.rest()) != "%" || (edible && *percent > 100)) {
      bad(*f->value, fmt::format("'{}' is not a share of the weight as bought", f->value->scalar),
          example);
      continue;
    }
    put(food_.yields, Yield{*form, *percent / 100, f->source},
        [&](const Yield& y) { return y.form == *form; });
  }
}

// A household's record changes the figures that it names.
void FoodReader::nutrients(const Node& node) {
  const Fields fields(node, keys::nutrients, diagnostics_);
  Nutrients read = food_.nutrients.value_or(Nutrients{});
  for (const Nutrient nutrient : all_nutrients()) {
    const NutrientFacts& of = facts(nutrient);
    const Node* value = fields.find(of.name);
    if (value == nullptr) {
      continue;
    }
    measure::Cursor cursor{value->scalar};
    const auto number = measure::scan_number(cursor);
    if (!number || *number < 0 || text::trim(cursor.rest()) != of.unit) {
      bad(*value, fmt::format("'{}' is not an amount in {}", value->scalar, of.unit),
          fmt::format("'{}: 40 {}'", of.name, of.unit));
      continue;
    }
    read[nutrient] = to_double(*number);
  }
  food_.nutrients = read;
}

} // namespace manciple::foods
