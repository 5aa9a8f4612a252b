#include "kitchen/household.hpp"

#include "foods/convert.hpp"
#include "foods/swaps.hpp"
#include "kitchen/errors.hpp"
#include "kitchen/keys.hpp"
#include "kitchen/line_words.hpp"
#include "measure/scan.hpp"
#include "text/fields.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <tuple>

namespace manciple::kitchen {
namespace {

using text::Diagnostics;
using text::Entry;
using text::Fields;
using text::Node;

std::optional<Rational> read_litres(const Node& node, Diagnostics& diagnostics) {
  const auto quantity = measure::parse_quantity(node.scalar, measure::System::us);
  if (!quantity || measure::dimension(*quantity) != measure::Dimension::volume) {
    diagnostics.error(errors::bad_value, node.span, "give the size as a volume, such as 250 l");
    return std::nullopt;
  }
  return measure::convert(*quantity, measure::Unit::liter).amount;
}

void read_storage(const Node& node, Household& household, Diagnostics& diagnostics) {
  const Fields fields(node, keys::storage, diagnostics);
  const auto one = [&](std::string_view key, std::optional<Rational>& into) {
    if (const Node* value = fields.find(key)) {
      into = read_litres(*value, diagnostics);
    }
  };
  one("fridge", household.fridge_litres);
  one("freezer", household.freezer_litres);
  one("pantry", household.pantry_litres);
}

std::vector<ShopName> read_shops(const Fields& fields, std::string_view key) {
  std::vector<ShopName> out;
  for (const Node* shop : fields.list(key)) {
    out.push_back({text::slug(shop->scalar), shop->span});
  }
  return out;
}

void read_buying(const std::vector<const Entry*>& entries, Household& household, Names& names,
                 Diagnostics& diagnostics) {
  for (const Entry* rule_of : entries) {
    const Entry& entry = *rule_of;
    const auto target = names.find(entry.key.scalar);
    const Fields fields(entry.value, keys::buying, diagnostics);
    BuyingRule rule{{},
                    read_shops(fields, "only at"),
                    read_shops(fields, "never at"),
                    read_shops(fields, "prefer")};
    if (const auto* food = target ? std::get_if<foods::FoodId>(&*target) : nullptr) {
      rule.food = *food;
      household.buying.push_back(std::move(rule));
    } else {
      diagnostics.error(errors::unknown_food, entry.key.span,
                        fmt::format("no food is called '{}'", entry.key.scalar),
                        text::did_you_mean(entry.key.scalar, names.all()));
    }
  }
}

// "Europe/Berlin", "Etc/GMT+1", "UTC": by its shape, for the database is not at hand.
bool is_time_zone(std::string_view name) {
  const bool plain = std::all_of(name.begin(), name.end(), [](char c) {
    return text::is_letter(c) || text::is_digit(c) ||
           std::string_view("/_+-").find(c) != std::string_view::npos;
  });
  return plain && (name == "UTC" || (name.find('/') != std::string_view::npos &&
                                     !name.starts_with('/') && !name.ends_with('/')));
}

// The house's own words for measures, pieces and packs: a word of ours each.
void read_words(const std::vector<const Entry*>& entries, Household& household,
                Diagnostics& diagnostics) {
  for (const Entry* entry : entries) {
    const std::string& own = entry->key.scalar;
    const std::string meaning = text::lower(entry->value.scalar);
    if (own.empty() || own.find_first_of(" ,") != std::string::npos ||
        text::is_digit(own.front())) {
      diagnostics.error(errors::bad_value, entry->key.span,
                        fmt::format("'{}' is not one word", own));
    } else if (!is_measure(meaning, household.system.system)) {
      const auto meant = slip_of_word(meaning);
      diagnostics.error(errors::bad_value, entry->value.span,
                        fmt::format("'{}' is not a measure, a piece or a pack", meaning),
                        meant ? fmt::format("did you mean {}?", *meant)
                              : "use a word such as tbsp, g, bunch, clove, can or jar");
    } else {
      household.words.emplace(text::lower(own), meaning);
    }
  }
}

// Each group is a mapping from foods to how much of each does the same.
void read_any_of(const std::vector<const Node*>& groups, Household& household, Names& names,
                 Diagnostics& diagnostics) {
  for (const Node* group : groups) {
    Substitutes read;
    for (const Entry& entry : group->entries) {
      const auto target = names.find(entry.key.scalar);
      const auto* food = target ? std::get_if<foods::FoodId>(&*target) : nullptr;
      const auto amount = read_positive(entry.value, diagnostics);
      if (food == nullptr) {
        diagnostics.error(errors::unknown_food, entry.key.span,
                          fmt::format("no food is called '{}'", entry.key.scalar),
                          text::did_you_mean(entry.key.scalar, names.all()));
      } else if (household.instead_of(*food).size() > 1 || read.holds(*food)) {
        diagnostics.error(errors::bad_value, entry.key.span,
                          fmt::format("'{}' is in a group already", entry.key.scalar));
      } else if (amount) {
        if (!read.foods.empty() && foods::basis(*names.food(*food)) !=
                                       foods::basis(*names.food(read.foods.front().first))) {
          diagnostics.error(
              errors::wrong_measure, entry.key.span,
              fmt::format("'{}' is not measured like the others in its group", entry.key.scalar));
          continue;
        }
        read.foods.emplace_back(*food, *amount);
      }
    }
    household.any_of.push_back(std::move(read));
  }
}

// What the household groups itself stays as it says.
void read_swaps(const Node& node, Household& household, Names& names, Diagnostics& diagnostics) {
  if (node.scalar != "usual" && node.scalar != "none") {
    diagnostics.error(errors::bad_value, node.span,
                      fmt::format("'{}' is not a choice of swaps", node.scalar),
                      "write usual or none");
  }
  if (node.scalar != "usual") {
    return;
  }
  std::map<int, Substitutes> groups;
  for (const foods::Swap& swap : foods::usual_swaps) {
    const auto target = names.find(swap.food);
    const auto* food = target ? std::get_if<foods::FoodId>(&*target) : nullptr;
    if (food != nullptr && household.instead_of(*food).size() == 1) {
      auto& of = groups[swap.group].foods;
      const bool alike = of.empty() || foods::basis(*names.food(*food)) ==
                                           foods::basis(*names.food(of.front().first));
      if (alike) {
        of.emplace_back(*food, swap.amount);
      }
    }
  }
  for (auto& [number, group] : groups) {
    if (group.foods.size() > 1) {
      household.any_of.push_back(std::move(group));
    }
  }
}

} // namespace

bool Substitutes::holds(foods::FoodId food) const {
  return std::any_of(foods.begin(), foods.end(),
                     [&](const auto& one) { return one.first == food; });
}

InTermsOf Household::in_terms_of(foods::FoodId food) const {
  for (const Substitutes& group : any_of) {
    for (const auto& [one, amount] : group.foods) {
      if (one == food) {
        return {group.foods.front().first, group.foods.front().second / amount};
      }
    }
  }
  return {food, 1};
}

std::vector<foods::FoodId> Household::instead_of(foods::FoodId food) const {
  const foods::FoodId first = in_terms_of(food).food;
  for (const Substitutes& group : any_of) {
    if (!group.foods.empty() && group.foods.front().first == first) {
      std::vector<foods::FoodId> out;
      for (const auto& [one, amount] : group.foods) {
        out.push_back(one);
      }
      return out;
    }
  }
  return {food};
}

const Slot* Household::slot(std::string_view name) const {
  const auto found =
      std::find_if(slots.begin(), slots.end(), [&](const Slot& s) { return s.name == name; });
  return found == slots.end() ? nullptr : &*found;
}

void Household::add_slot(Slot slot) {
  const auto later =
      std::upper_bound(slots.begin(), slots.end(), slot, [](const Slot& a, const Slot& b) {
        return std::tie(a.at, a.name) < std::tie(b.at, b.name);
      });
  slots.insert(later, std::move(slot));
}

std::optional<std::size_t> Household::person(std::string_view name) const {
  for (std::size_t i = 0; i < people.size(); ++i) {
    if (people[i].name == name) {
      return i;
    }
  }
  return std::nullopt;
}

namespace {

void read_person(const Node& node, Household& household, Names& names, Diagnostics& diagnostics) {
  const Fields fields(node, keys::person, diagnostics);
  Person person;
  person.at = node.span;
  if (const Node* name = fields.find("name")) {
    person.name = name->scalar;
    person.at = name->span;
    if (household.person(person.name)) {
      diagnostics.error(errors::bad_value, name->span,
                        fmt::format("two people are called {}", person.name));
    }
  }
  read_about(fields, person, household.diets, names, diagnostics);
  household.people.push_back(std::move(person));
}

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

void read_appliances(const std::vector<const Entry*>& entries, Household& household,
                     Diagnostics& diagnostics) {
  auto& all = household.appliances;
  all.clear();
  household.says_appliances = true;
  for (const Entry* entry : entries) {
    std::string name = text::lower(entry->key.scalar);
    if (std::any_of(all.begin(), all.end(), [&](const Appliance& a) { return a.name == name; })) {
      diagnostics.error(errors::bad_value, entry->key.span,
                        fmt::format("two appliances are called {}", name));
    }
    all.push_back({std::move(name), read_count(entry->value, diagnostics).value_or(1)});
  }
  std::sort(all.begin(), all.end(),
            [](const Appliance& a, const Appliance& b) { return a.name < b.name; });
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

} // namespace

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

measure::System system_of(const Node& file) {
  const auto said = std::find_if(file.entries.begin(), file.entries.end(),
                                 [](const auto& entry) { return entry.key.scalar == "measures"; });
  return said != file.entries.end()
             ? measure::parse_system(said->value.scalar).value_or(measure::System::us)
             : measure::System::us;
}

Household usual_household() {
  Household household;
  constexpr int half_past = 30;
  for (const auto& [name, hour] :
       {std::pair("breakfast", 7), std::pair("brunch", 10), std::pair("lunch", 12),
        std::pair("snack", 15), std::pair("tea", 16), std::pair("dinner", 18),
        std::pair("supper", 19)}) {
    household.slots.push_back({name, hour * text::minutes_an_hour + half_past});
  }
  household.appliances = {{"burner", 4}, {"oven", 2}, {"sink", 1}};
  const Rational quart = measure::facts(measure::Unit::us_quart).factor;
  const Rational cup = measure::facts(measure::Unit::us_cup).factor;
  household.holds = {{"pot", 8 * quart},
                     {"slow cooker", 6 * quart},
                     {"mixer", 5 * quart},
                     {"food processor", 11 * cup},
                     {"blender", 6 * cup}};
  return household;
}

Household read_household(const Node& file, Names& names, Diagnostics& diagnostics) {
  Household household = usual_household();
  const Fields fields(file, keys::household, diagnostics);
  if (const Node* currency = fields.find("currency")) {
    household.currency = currency_called(currency->scalar);
    household.system.point = household.currency.point;
  }
  household.diets = read_diets(fields.named("diets"), names, diagnostics);
  for (const Node* node : fields.list("people")) {
    read_person(*node, household, names, diagnostics);
  }
  if (fields.has("meals")) {
    read_slots(fields.named("meals"), household, diagnostics);
  }
  read_cooks(fields.list("cooks"), household, diagnostics);
  if (const Node* system = fields.find("measures")) {
    if (const auto known = measure::parse_system(system->scalar)) {
      household.system.system = *known;
    } else {
      diagnostics.error(errors::bad_value, system->span,
                        fmt::format("'{}' is not a system of measures", system->scalar),
                        "use us, imperial, metric or australian");
    }
  }
  if (const Node* day = fields.find("week starts")) {
    if (const auto known = text::parse_weekday(day->scalar)) {
      household.week_starts = *known;
    } else {
      diagnostics.error(errors::bad_value, day->span,
                        fmt::format("'{}' is not a day of the week", day->scalar),
                        "write Monday or Sunday");
    }
  }
  if (const Node* zone = fields.find("time zone")) {
    household.time_zone = zone->scalar;
    if (!is_time_zone(zone->scalar)) {
      diagnostics.error(errors::bad_value, zone->span,
                        fmt::format("'{}' is not a time zone", zone->scalar),
                        "write it as the tz database does: Europe/Berlin, America/New_York");
    }
  }
  read_words(fields.named("words"), household, diagnostics);
  if (const Node* storage = fields.find("storage")) {
    read_storage(*storage, household, diagnostics);
  }
  if (fields.has("appliances")) {
    read_appliances(fields.named("appliances"), household, diagnostics);
  }
  for (const Entry* entry : fields.named("holds")) {
    if (const auto litres = read_litres(entry->value, diagnostics)) {
      constexpr int millilitres = 1000;
      household.holds[text::lower(entry->key.scalar)] = *litres * millilitres;
    }
  }
  if (const Node* cost = fields.find("an hour costs")) {
    household.hour_cost = read_money(*cost, household.currency, diagnostics).value_or(0);
    household.stop_cost = household.hour_cost / stops_an_hour;
  }
  if (const Node* cost = fields.find("a stop costs")) {
    household.stop_cost = read_money(*cost, household.currency, diagnostics).value_or(0);
  }
  if (const Node* budget = fields.find("budget")) {
    household.budget = read_money(*budget, household.currency, diagnostics);
  }
  if (const Node* cost = fields.find("throwing away costs")) {
    household.waste_costs = read_percent(*cost, diagnostics).value_or(Rational(1, 4));
  }
  if (const Node* give = fields.find("give")) {
    household.give = read_percent(*give, diagnostics).value_or(household.give);
  }
  if (const Node* optional = fields.find("optional")) {
    household.buys_optional = optional->scalar == "buy";
    if (!household.buys_optional && optional->scalar != "leave") {
      diagnostics.error(errors::bad_value, optional->span,
                        fmt::format("'{}' is not a choice for 'optional'", optional->scalar),
                        "write buy or leave");
    }
  }
  if (const Node* worth = fields.find("leftovers are worth")) {
    household.leftovers_worth = read_percent(*worth, diagnostics).value_or(Rational(1, 2));
  }
  household.member_of = read_shops(fields, "member of");
  read_buying(fields.named("buying"), household, names, diagnostics);
  read_any_of(fields.list("any of these"), household, names, diagnostics);
  if (const Node* swaps = fields.find("swaps")) {
    read_swaps(*swaps, household, names, diagnostics);
  }
  return household;
}

} // namespace manciple::kitchen
