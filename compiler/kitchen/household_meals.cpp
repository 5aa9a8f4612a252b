#include "kitchen/errors.hpp"
#include "kitchen/household_parts.hpp"
#include "kitchen/keys.hpp"
#include "kitchen/line_words.hpp"
#include "text/fields.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace manciple::kitchen {
namespace {

using text::Diagnostics;
using text::Entry;
using text::Fields;
using text::Node;

// The days of the week that a word means, Sunday first; none if it means none.
std::vector<unsigned> days_called(std::string_view word) {
  if (word == "every day") {
    return {0, 1, 2, 3, 4, 5, 6};
  }
  if (word == "weekdays") {
    return {1, 2, 3, 4, 5};
  }
  if (word == "weekends") {
    return {0, 6};
  }
  const auto day = text::parse_weekday(word);
  return day ? std::vector<unsigned>{day->c_encoding()} : std::vector<unsigned>{};
}

// Sets those of the week, Sunday first, that a list of words names.
void read_weekdays(const std::vector<const Node*>& words, std::array<bool, 7>& days,
                   Diagnostics& diagnostics) {
  for (const Node* word : words) {
    const std::vector<unsigned> called = days_called(word->scalar);
    if (called.empty()) {
      diagnostics.error(errors::bad_value, word->span,
                        fmt::format("'{}' is not a day of the week", word->scalar),
                        "write weekdays, weekends, every day, or days such as Mon and Tue");
    }
    for (const unsigned day : called) {
      days.at(day) = true;
    }
  }
}

void read_hours(const Node& node, Slot& slot, Diagnostics& diagnostics) {
  const Fields fields(node, keys::meal_hours, diagnostics);
  if (const Node* at = fields.find("at")) {
    slot.at = read_clock(*at, diagnostics).value_or(0);
  }
  // What is said of a single day goes before what is said of several.
  for (const std::string_view key :
       {"weekdays", "weekends", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"}) {
    if (const Node* clock = fields.find(key)) {
      for (const unsigned day : days_called(key)) {
        slot.by_day.at(day) = read_clock(*clock, diagnostics);
      }
    }
  }
  read_weekdays(fields.list("packed"), slot.packed, diagnostics);
}

} // namespace

void read_slots(const std::vector<const Entry*>& entries, Household& household,
                Diagnostics& diagnostics) {
  household.slots.clear();
  household.says_slots = true;
  for (const Entry* entry : entries) {
    std::string name = text::lower(entry->key.scalar);
    if (household.slot(name) != nullptr) {
      diagnostics.error(errors::bad_value, entry->key.span,
                        fmt::format("two meals are called {}", name));
    }
    Slot slot{std::move(name)};
    if (entry->value.is_scalar()) {
      slot.at = read_clock(entry->value, diagnostics).value_or(0);
    } else {
      read_hours(entry->value, slot, diagnostics);
    }
    household.add_slot(std::move(slot));
  }
}

// "Ada": always; "{who: Ada, days: weekdays, meals: dinner, from: "17:00"}".
void read_cooks(const std::vector<const Node*>& nodes, Household& household,
                Diagnostics& diagnostics) {
  CookRule always;
  for (const Node* node : nodes) {
    if (node->is_scalar()) {
      always.who.push_back(node->scalar);
      continue;
    }
    const Fields fields(*node, keys::cooks, diagnostics);
    CookRule rule = read_cook(fields, household, diagnostics);
    if (fields.has("days")) {
      rule.on = {};
    }
    read_weekdays(fields.list("days"), rule.on, diagnostics);
    household.cooks.push_back(std::move(rule));
  }
  if (!always.who.empty()) {
    household.cooks.push_back(std::move(always));
  }
  std::vector<std::string_view> known;
  for (const Person& person : household.people) {
    known.push_back(person.name);
  }
  for (const CookRule& rule : household.cooks) {
    for (const std::string& who : rule.who) {
      const auto meant = household.person(who) ? std::nullopt : text::slip_of(who, known);
      if (meant) {
        diagnostics.error(errors::unknown_person, nodes.front()->span,
                          fmt::format("{} is not in the household", who),
                          fmt::format("did you mean {}?", *meant));
      }
    }
  }
}

std::vector<std::string> read_meals(const std::vector<const Node*>& list,
                                    const Household& household, Diagnostics& diagnostics) {
  std::vector<std::string> out;
  for (const Node* node : list) {
    const std::string name = text::lower(node->scalar);
    if (household.slot(name) == nullptr) {
      std::vector<std::string_view> known;
      for (const Slot& slot : household.slots) {
        known.push_back(slot.name);
      }
      diagnostics.error(errors::unknown_slot, node->span,
                        fmt::format("the household has no meal '{}'", name),
                        text::did_you_mean(name, known));
      continue;
    }
    out.push_back(name);
  }
  return out;
}

CookRule read_cook(const Fields& fields, const Household& household, Diagnostics& diagnostics) {
  CookRule rule;
  for (const Node* who : fields.list("who")) {
    rule.who.push_back(who->scalar);
  }
  rule.slots = read_meals(fields.list("meals"), household, diagnostics);
  if (const Node* from = fields.find("from")) {
    rule.from = read_clock(*from, diagnostics);
  }
  if (const Node* until = fields.find("until")) {
    rule.until = read_clock(*until, diagnostics);
    if (rule.from && rule.until && *rule.until <= *rule.from) {
      diagnostics.error(errors::wrong_order, until->span, "this ends before it begins");
    }
  }
  return rule;
}

std::optional<int> hour_of_new_meal(const Household& household, std::string_view name) {
  constexpr int hour = text::minutes_an_hour;
  constexpr int half = hour / 2;
  static constexpr std::array<std::pair<std::string_view, int>, 7> others{{
      {"elevenses", 11 * hour},
      {"picnic", 12 * hour + half},
      {"packed lunch", 12 * hour + half},
      {"dessert", 19 * hour},
      {"pudding", 19 * hour},
      {"party", 19 * hour},
      {"nightcap", 21 * hour},
  }};
  std::vector<std::string_view> known;
  for (const Slot& slot : household.slots) {
    known.push_back(slot.name);
  }
  const Household usual = usual_household();
  for (const Slot& slot : usual.slots) {
    if (slot.name == name) {
      return slot.at;
    }
    known.push_back(slot.name);
  }
  for (const auto& [word, at] : others) {
    if (word == name) {
      return at;
    }
    known.push_back(word);
  }
  if (name.empty() || text::slip_of(name, known)) {
    return std::nullopt;
  }
  return 15 * hour + half; // as a snack
}

} // namespace manciple::kitchen
