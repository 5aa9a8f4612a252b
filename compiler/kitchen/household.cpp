#include "kitchen/household.hpp"

#include "foods/convert.hpp"
#include "kitchen/errors.hpp"
#include "kitchen/household_parts.hpp"
#include "kitchen/keys.hpp"
#include "kitchen/known_appliances.hpp"
#include "kitchen/line_words.hpp"
#include "measure/scan.hpp"
#include "text/fields.hpp"
#include "text/nearest.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
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

} // namespace

const Appliance* Household::appliance(std::string_view name) const {
  const auto found = std::find_if(appliances.begin(), appliances.end(),
                                  [&](const Appliance& one) { return one.name == name; });
  return found == appliances.end() ? nullptr : &*found;
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

// "4", or "{count: 1, heats: no}".
Appliance read_appliance(const Entry& entry, Diagnostics& diagnostics) {
  Appliance out{text::lower(entry.key.scalar)};
  if (entry.value.is_scalar()) {
    out.count = read_count(entry.value, diagnostics).value_or(1);
    return out;
  }
  const Fields fields(entry.value, keys::appliance, diagnostics);
  if (const Node* count = fields.find("count")) {
    out.count = read_count(*count, diagnostics).value_or(1);
  }
  if (const Node* heats = fields.find("heats")) {
    out.heats = read_yes_no(*heats, diagnostics);
  }
  return out;
}

void read_appliances(const std::vector<const Entry*>& entries, Household& household,
                     Diagnostics& diagnostics) {
  auto& all = household.appliances;
  all.clear();
  household.says_appliances = true;
  for (const Entry* entry : entries) {
    Appliance one = read_appliance(*entry, diagnostics);
    if (household.appliance(one.name) != nullptr) {
      diagnostics.error(errors::bad_value, entry->key.span,
                        fmt::format("two appliances are called {}", one.name));
    }
    all.push_back(std::move(one));
  }
  std::sort(all.begin(), all.end(),
            [](const Appliance& a, const Appliance& b) { return a.name < b.name; });
}

} // namespace

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
  constexpr int quarts_in_a_pot = 8;
  household.holds = {{"pot", quarts_in_a_pot * measure::facts(measure::Unit::us_quart).factor}};
  for (const KnownAppliance& one : known_appliances()) {
    if (one.usual > 0) {
      household.appliances.push_back({std::string(one.name), one.usual});
    }
    if (one.holds.number > 0) {
      household.holds.emplace(one.name, one.holds.number * measure::facts(one.holds.unit).factor);
    }
  }
  return household;
}

namespace {

// Its measures, its week, its time zone and its words.
void read_customs(const Fields& fields, Household& household, Diagnostics& diagnostics) {
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
}

// Where things stand, what there is to cook with, and what that holds.
void read_equipment(const Fields& fields, Household& household, Diagnostics& diagnostics) {
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
}

// What time, stops, waste and leftovers count, and how much there is to spend.
void read_worths(const Fields& fields, Household& household, Diagnostics& diagnostics) {
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
  const auto share = [&](std::string_view key, Rational& into) {
    if (const Node* node = fields.find(key)) {
      into = read_percent(*node, diagnostics).value_or(into);
    }
  };
  share("throwing away costs", household.waste_costs);
  share("give", household.give);
  if (const Node* optional = fields.find("optional")) {
    household.buys_optional = optional->scalar == "buy";
    if (!household.buys_optional && optional->scalar != "leave") {
      diagnostics.error(errors::bad_value, optional->span,
                        fmt::format("'{}' is not a choice for 'optional'", optional->scalar),
                        "write buy or leave");
    }
  }
  share("leftovers are worth", household.leftovers_worth);
}

} // namespace

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
  read_customs(fields, household, diagnostics);
  read_equipment(fields, household, diagnostics);
  read_worths(fields, household, diagnostics);
  household.member_of = read_shops(fields, "member of");
  read_buying(fields.named("buying"), household, names, diagnostics);
  read_any_of(fields.list("any of these"), household, names, diagnostics);
  if (const Node* swaps = fields.find("swaps")) {
    read_swaps(*swaps, household, names, diagnostics);
  }
  return household;
}

} // namespace manciple::kitchen
