// What a plan would like its eaters to have more or less of.
#include "foods/kinds.hpp"
#include "kitchen/errors.hpp"
#include "kitchen/plan_reader.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <array>

namespace manciple::kitchen {

using text::Entry;
using text::Node;

namespace {

constexpr std::string_view shape =
    "write it as 'at least 30 g a dinner', 'at most 2.3 g a day' or 'twice a week'";

bool take(std::string_view& words, std::string_view word) {
  if (words == word) {
    words = {};
    return true;
  }
  if (words.starts_with(word) && words.size() > word.size() && words[word.size()] == ' ') {
    words = text::trim(words.substr(word.size()));
    return true;
  }
  return false;
}

bool take_any(std::string_view& words, std::initializer_list<std::string_view> any) {
  for (const std::string_view word : any) {
    if (take(words, word)) {
      return true;
    }
  }
  return false;
}

// How many of the nutrient's own unit one of a unit of energy or weight is; nothing where it is
// another measure.
std::optional<Rational> in_unit_of(foods::Nutrient nutrient, std::string_view unit) {
  const std::string_view own = foods::facts(nutrient).unit;
  if (own == "kcal") {
    return unit == "kcal" ? std::optional(Rational(1))
           : unit == "kJ" ? std::optional(Rational(1000, 4184)) // NIST SP 811
                          : std::nullopt;
  }
  constexpr std::array<std::pair<std::string_view, int>, 5> micrograms{
      {{"ug", 1}, {"µg", 1}, {"mcg", 1}, {"mg", 1000}, {"g", 1000000}}};
  std::optional<int> of_unit;
  std::optional<int> of_own;
  for (const auto& [word, size] : micrograms) {
    of_unit = word == unit ? std::optional(size) : of_unit;
    of_own = word == own ? std::optional(size) : of_own;
  }
  return of_unit && of_own ? std::optional(Rational(*of_unit, *of_own)) : std::nullopt;
}

} // namespace

// A nutrient, money, a kind or class of foods, or a food.
bool PlanReader::aimed_at(const Node& what, Aim& aim) {
  const std::string word = text::lower(what.scalar);
  aim.what = what.scalar;
  if (word == "cost") {
    return true;
  }
  for (const foods::Nutrient nutrient : foods::all_nutrients()) {
    if (text::lower(foods::facts(nutrient).name) == word) {
      aim.of = nutrient;
      return true;
    }
  }
  if (const auto nutrient = foods::parse_nutrient(word)) {
    aim.of = *nutrient;
    return true;
  }
  if (const auto kind = foods::parse_kind(word)) {
    aim.of = std::string(*kind);
    return true;
  }
  if (auto classes = foods::classes_called(word); !classes.empty()) {
    aim.of = std::move(classes);
    return true;
  }
  const auto target = context_.foods.find(word);
  if (const auto* food = target ? std::get_if<foods::FoodId>(&*target) : nullptr) {
    aim.of = *food;
    return true;
  }
  std::vector<std::string_view> known = context_.foods.all();
  const auto classes = foods::class_words();
  known.insert(known.end(), classes.begin(), classes.end());
  for (const foods::Nutrient nutrient : foods::all_nutrients()) {
    known.push_back(foods::in_words(nutrient));
  }
  known.emplace_back("cost");
  diagnostics_.error(
      errors::unread_aim, what.span,
      fmt::format("'{}' is neither a nutrient nor a class of foods nor a food", what.scalar),
      text::did_you_mean(word, known));
  return false;
}

std::optional<Aim> PlanReader::aim(const Entry& entry) {
  Aim out;
  out.at = entry.key.span;
  out.text = fmt::format("{}: {}", entry.key.scalar, entry.value.scalar);
  if (!aimed_at(entry.key, out)) {
    return std::nullopt;
  }
  const bool money = std::holds_alternative<std::monostate>(out.of);
  const auto refuse = [&](std::string what) {
    diagnostics_.error(errors::unread_aim, entry.value.span, std::move(what), std::string(shape));
    return std::nullopt;
  };
  std::string_view words = text::trim(entry.value.scalar);
  out.at_least = !take_any(words, {"at most", "no more than", "up to", "under"});
  take(words, "at least");
  if (take(words, "once") || take(words, "twice")) {
    out.times = true;
    out.amount = entry.value.scalar.find("twice") != std::string::npos ? 2 : 1;
  } else {
    measure::Cursor cursor{words};
    if (money && !text::trim(context_.household.currency.sign).empty() &&
        words.starts_with(context_.household.currency.sign)) {
      cursor.at = context_.household.currency.sign.size();
    }
    const auto number = measure::scan_number(cursor);
    if (!number) {
      return refuse(fmt::format("'{}' has no amount", entry.value.scalar));
    }
    out.amount = *number;
    words = text::trim(cursor.rest());
    const auto* nutrient = std::get_if<foods::Nutrient>(&out.of);
    const std::string_view unit = words.substr(0, words.find(' '));
    if (money) {
      out.amount *= context_.household.currency.per_unit();
    } else if (take_any(words, {"times", "time"})) {
      out.times = true;
    } else if (nutrient != nullptr) {
      const auto size = in_unit_of(*nutrient, unit);
      if (!size) {
        return refuse(fmt::format("'{}' is not a measure of {}, which is measured in {}", unit,
                                  out.what, foods::facts(*nutrient).unit));
      }
      out.amount *= *size;
      take(words, unit);
    } else {
      const auto weight = measure::find_unit(unit, measure::System::us);
      if (!weight || measure::facts(*weight).dimension != measure::Dimension::mass) {
        return refuse(fmt::format("'{}' is not a weight", unit));
      }
      out.amount *= measure::facts(*weight).factor;
      take(words, unit);
    }
  }
  if (out.times && (money || std::holds_alternative<foods::Nutrient>(out.of))) {
    return refuse(fmt::format("{} has an amount, not a number of times", out.what));
  }
  take_any(words, {"a", "an", "per", "each", "every"});
  const std::string per = text::lower(words);
  if (per == "day" || per == "week") {
    out.per = per == "day" ? Aim::Per::day : Aim::Per::week;
    return out;
  }
  out.per = Aim::Per::meal;
  if (per == "meal") {
    return out;
  }
  if (context_.household.slot(per) == nullptr) {
    return refuse(fmt::format("'{}' is neither a day nor a week nor a meal of the household", per));
  }
  out.slot = per;
  return out;
}

void PlanReader::aims(const std::vector<const Entry*>& entries) {
  for (const Entry* entry : entries) {
    if (auto read = aim(*entry)) {
      plan_.aims.push_back(std::move(*read));
    }
  }
}

} // namespace manciple::kitchen
