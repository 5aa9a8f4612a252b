#include "foods/food_reader.hpp"

#include "foods/keys.hpp"
#include "text/date.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::foods {

using text::Entry;
using text::Fields;
using text::Node;

namespace {

constexpr int hottest = 500; // F, of an oven

int to_degrees(const Rational& number) {
  return static_cast<int>(measure::to_int64(measure::round(number)));
}

} // namespace

// `not_at_all` is a word for no days, where there is one.
void FoodReader::keep(const Fields& fields, std::string_view key, std::optional<Sourced<int>>& into,
                      std::string_view not_at_all) {
  const Node* node = fields.find(key);
  if (node == nullptr) {
    return;
  }
  constexpr std::string_view example = "[5 days, FSIS 21]";
  if (const auto f = figure(*node, example)) {
    if (!not_at_all.empty() && f->value->scalar == not_at_all) {
      into = Sourced<int>{0, f->source};
    } else if (const auto days = text::parse_days(f->value->scalar)) {
      into = Sourced<int>{*days, f->source};
    } else {
      bad(*f->value, fmt::format("'{}' is not a keeping time", f->value->scalar), example);
    }
  }
}

void FoodReader::keeps(const Node& node) {
  const Fields fields(node, keys::keeps, diagnostics_);
  keep(fields, "pantry", food_.keeps.pantry);
  keep(fields, "fridge", food_.keeps.fridge);
  keep(fields, "freezer", food_.keeps.freezer);
  keep(fields, "opened", food_.keeps.opened);
  keep(fields, "thawed", food_.keeps.thawed);
  keep(fields, "hard", food_.keeps.hard);
  keep(fields, "cut", food_.keeps.cut, "when used");
  keep(fields, "frozen juice", food_.keeps.frozen_juice);
}

void FoodReader::safe_at(const Node& node) {
  constexpr std::string_view example = "[165 F, FSIS 21] or [145 F rest 3 min, FSIS 33]";
  const auto f = figure(node, example);
  if (!f) {
    return;
  }
  measure::Cursor cursor{f->value->scalar};
  const auto degrees = scan_positive(cursor);
  std::string_view rest = text::trim(cursor.rest());
  SafeTemperature safe;
  bool good = degrees && *degrees <= hottest && rest.starts_with('F');
  if (good) {
    safe.fahrenheit = to_degrees(*degrees);
    rest = text::trim(rest.substr(1));
    if (!rest.empty()) {
      const auto minutes =
          rest.starts_with("rest ") ? text::parse_minutes(rest.substr(5)) : std::nullopt;
      good = minutes.has_value();
      safe.rest_minutes = minutes.value_or(0);
    }
  }
  if (!good) {
    bad(*f->value, fmt::format("'{}' is not a temperature", f->value->scalar), example);
    return;
  }
  food_.safe_at = Sourced<SafeTemperature>{safe, f->source};
}

void FoodReader::roasts(const Entries& entries) {
  // A number and what it is of.
  const auto so_many = [](measure::Cursor& cursor, std::string_view what) {
    cursor.skip_spaces();
    auto number = scan_positive(cursor);
    cursor.skip_spaces();
    if (!cursor.rest().starts_with(what)) {
      number.reset();
    } else {
      cursor.at += what.size();
    }
    return number;
  };
  for (const Entry* of : entries) {
    const auto f = figure(of->value, "[20 min/lb at 350 F, FSIS 113]");
    if (!f) {
      continue;
    }
    measure::Cursor weight{of->key.scalar};
    measure::Cursor time{f->value->scalar};
    const auto pounds = so_many(weight, "lb");
    const auto minutes = so_many(time, "min/lb at ");
    const auto degrees = so_many(time, "F");
    const bool good =
        pounds && minutes && degrees && *degrees <= hottest && weight.done() && time.done();
    if (!good) {
      bad(of->value,
          fmt::format("'{}: {}' is not a roasting time up to a weight", of->key.scalar,
                      f->value->scalar),
          "{7 lb: [20 min/lb at 350 F, FSIS 113]}");
      continue;
    }
    put(food_.roasts, RoastingTime{*pounds, to_degrees(*degrees), *minutes, f->source},
        [&](const RoastingTime& r) { return r.pounds == *pounds; });
  }
  std::sort(food_.roasts.begin(), food_.roasts.end(),
            [](const RoastingTime& a, const RoastingTime& b) { return a.pounds < b.pounds; });
}

void FoodReader::time(const Fields& fields, std::string_view key,
                      std::optional<int> (*parse)(std::string_view), std::string_view example,
                      std::optional<Sourced<int>>& into) {
  const Node* node = fields.find(key);
  if (node == nullptr) {
    return;
  }
  const auto f = figure(*node, fmt::format("[{}, common practice no source]", example));
  if (!f) {
    return;
  }
  if (const auto value = parse(f->value->scalar)) {
    into = Sourced<int>{*value, f->source};
  } else {
    bad(*f->value, fmt::format("'{}' is not a time", f->value->scalar), example);
  }
}

} // namespace manciple::foods
