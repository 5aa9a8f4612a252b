#include "emit/words.hpp"

#include "foods/convert.hpp"
#include "foods/counted.hpp"
#include "foods/spoken.hpp"
#include "measure/print.hpp"
#include "prep/ripening.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

namespace manciple::emit {

using measure::Rational;

const foods::Food& food_of(const Compiled& compiled, const purchase::Line& line) {
  return compiled.kitchen.food(line.food);
}

const kitchen::Offer& offer_of(const Compiled& compiled, const purchase::Line& line) {
  return compiled.kitchen.shop(compiled.shopping.visits[line.visit].shop).offers[line.offer];
}

namespace {

// "2", or "2 loaves" where bread is sold by the piece.
std::string each_of(const Compiled& compiled, const purchase::Line& line) {
  const foods::Food& food = food_of(compiled, line);
  const foods::ShopUnit one = foods::shop_unit(food, compiled.kitchen.household.system);
  const bool loaf = one.word == "loaf" && one.size == offer_of(compiled, line).size &&
                    !foods::counts_itself(food, one.word);
  return loaf
             ? fmt::format("{} {}", line.packs, line.packs == 1 ? one.word : text::plural(one.word))
             : fmt::format("{}", line.packs);
}

} // namespace

std::string count_of(const Compiled& compiled, const purchase::Line& line) {
  const kitchen::Offer& offer = offer_of(compiled, line);
  const bool sized = !offer.pack.empty() && text::is_digit(offer.pack.front());
  if (offer.likely && offer.pack != "each" && !sized) {
    return offer.by_weight ? amount_of(compiled, line.food, offer.size * line.packs)
                           : fmt::format("{} {}", line.packs,
                                         line.packs == 1 ? offer.pack : text::plural(offer.pack));
  }
  if (offer.by_weight) {
    const std::string weight = fmt::format(
        "{} {}", decimal(compiled, Rational(line.packs) / offer.steps_per_price, 2), offer.pack);
    const auto pieces = foods::pieces_in(food_of(compiled, line), line.amount);
    return pieces ? fmt::format("{}, about {}", pieces->words, weight) : weight;
  }
  if (offer.pack == "each") {
    return each_of(compiled, line);
  }
  return line.packs == 1 ? offer.pack : fmt::format("{} x {}", line.packs, offer.pack);
}

std::string name_on_list(const Compiled& compiled, const purchase::Line& line) {
  const foods::Food& food = food_of(compiled, line);
  const kitchen::Offer& offer = offer_of(compiled, line);
  const auto pieces =
      offer.by_weight ? foods::pieces_in(food, line.amount) : std::optional<foods::Pieces>();
  if (pieces && pieces->several) {
    return text::plural(food.name);
  }
  const std::string count = count_of(compiled, line);
  const bool named = offer.pack != "each" || text::is_letter(count.back()); // "2 loaves"
  if (named || food.as_written) {
    return foods::name_of(food, line.amount);
  }
  const bool one = foods::basis(food) == measure::Dimension::count;
  return line.packs > 1 ? text::plural(food.name)
         : one          ? food.name
                        : foods::name_of(food, line.amount);
}

std::string amount_of(const Compiled& compiled, foods::FoodId food, const Rational& amount,
                      int decimals) {
  return foods::customary(compiled.kitchen.food(food), amount, compiled.kitchen.household.system,
                          decimals);
}

std::string cost_of(const Compiled& compiled, const purchase::Line& line) {
  return line.cost ? figure(compiled, *line.cost) : std::string();
}

std::size_t without_price(const Compiled& compiled) {
  const auto& lines = compiled.shopping.lines;
  return static_cast<std::size_t>(std::count_if(
      lines.begin(), lines.end(), [](const purchase::Line& line) { return !line.cost; }));
}

bool has_prices(const Compiled& compiled, std::size_t visit) {
  const auto& lines = compiled.shopping.lines;
  return std::any_of(lines.begin(), lines.end(),
                     [&](const purchase::Line& line) { return line.visit == visit && line.cost; });
}

std::string money(const Compiled& compiled, kitchen::Cents cents) {
  return compiled.kitchen.household.currency.print(cents);
}

std::string decimal(const Compiled& compiled, const Rational& number, int places) {
  return measure::print_decimal(number, places, compiled.kitchen.household.system.point);
}

std::string figure(const Compiled& compiled, kitchen::Cents cents) {
  return compiled.kitchen.household.currency.figure(cents);
}

kitchen::Cents cents(const Rational& amount) {
  return measure::to_int64(measure::round(amount));
}

std::string purpose_of(const Compiled& compiled, const resolve::Use& use) {
  const auto& plan = compiled.plan();
  if (const auto* of = std::get_if<resolve::OfMaking>(&use.reason)) {
    return compiled.kitchen.recipe(compiled.resolved.making(of->making).recipe).name;
  }
  if (const auto* of = std::get_if<resolve::OfDish>(&use.reason)) {
    return plan.meals[of->dish.meal].slot;
  }
  if (const auto* of = std::get_if<resolve::OfStaple>(&use.reason)) {
    return plan.staples[of->staple].every_days ? "regular use" : "keeping in stock";
  }
  const auto& extra = plan.extra[std::get<resolve::OfExtra>(use.reason).extra];
  return extra.reason.empty() ? "other needs" : extra.reason;
}

std::vector<std::string> purposes_of(const Compiled& compiled, std::size_t line) {
  std::vector<std::string> out;
  for (const purchase::Supply& supply : compiled.shopping.supplies) {
    if (supply.line == line) {
      std::string purpose = purpose_of(compiled, compiled.resolved.uses[supply.use]);
      if (std::find(out.begin(), out.end(), purpose) == out.end()) {
        out.push_back(std::move(purpose));
      }
    }
  }
  return out;
}

std::string for_what(const Compiled& compiled, std::size_t line) {
  return text::the_first_few(purposes_of(compiled, line));
}

namespace {

std::string_view ripeness_word(prep::Ripeness ripeness) {
  switch (ripeness) {
  case prep::Ripeness::ripe:
    return "ripe";
  case prep::Ripeness::nearly_ripe:
    return "nearly ripe";
  case prep::Ripeness::hard:
    return "hard";
  case prep::Ripeness::mixed:
    break;
  }
  return "from ripe to hard";
}

// How ripe fruit is chosen: "hard", "2 ripe, 4 hard".
std::string how_ripe(const Compiled& compiled, std::size_t index) {
  const purchase::Line& line = compiled.shopping.lines[index];
  const auto chosen =
      prep::ripeness_of(compiled.kitchen, compiled.resolved, compiled.shopping, index);
  std::vector<std::string> parts;
  for (const prep::Chosen& one : chosen) {
    const auto pieces = foods::pieces_in(food_of(compiled, line), one.amount);
    const std::string_view word = ripeness_word(one.ripeness);
    parts.push_back(chosen.size() == 1
                        ? std::string(word)
                        : fmt::format("{} {}", pieces ? pieces->words : "some", word));
  }
  return text::join(parts, ", ");
}

} // namespace

std::vector<std::string> notes_of(const Compiled& compiled, std::size_t index) {
  const purchase::Line& line = compiled.shopping.lines[index];
  std::vector<std::string> out;
  if (!line.cost && without_price(compiled) < compiled.shopping.lines.size()) {
    out.emplace_back("no price known");
  }
  if (foods::is_more_than_scraps(compiled.kitchen.food(line.food), line.to_freeze)) {
    const bool juice = food_of(compiled, line).keeps.frozen_juice.has_value();
    out.push_back(fmt::format("{} {}", juice ? "juice and freeze" : "freeze",
                              foods::amount_seen(food_of(compiled, line), line.to_freeze,
                                                 compiled.kitchen.household.system)));
  }
  if (const std::string ripe = how_ripe(compiled, index); !ripe.empty()) {
    out.push_back(ripe);
  }
  std::set<std::string_view> replaced;
  for (const purchase::Supply& supply : compiled.shopping.supplies) {
    const foods::FoodId wanted = compiled.resolved.uses[supply.use].food;
    if (supply.line == index && wanted != line.food) {
      replaced.insert(compiled.kitchen.food(wanted).name);
    }
  }
  for (const std::string_view name : replaced) {
    out.push_back(fmt::format("in place of {}", name));
  }
  std::map<std::string, std::string> labels;
  for (const resolve::LabelCheck& label : compiled.resolved.labels) {
    if (label.food == line.food) {
      std::string& classes = labels[label.person];
      classes += fmt::format("{}{}", classes.empty() ? "" : ", ", label.what);
    }
  }
  for (const auto& [person, classes] : labels) {
    out.push_back(fmt::format("read the label for {}: {}", person, classes));
  }
  return out;
}

std::vector<std::string> to_check(const Compiled& compiled) {
  std::vector<std::string> out;
  for (const resolve::Making& making : compiled.resolved.makings) {
    for (const auto& ingredient : compiled.kitchen.recipe(making.recipe).ingredients) {
      const foods::FoodId* food = ingredient.food();
      if (!making.on_hand && food != nullptr && !ingredient.amount &&
          !compiled.kitchen.food(*food).from_tap) {
        out.push_back(compiled.kitchen.food(*food).name);
      }
    }
  }
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

namespace {

void add_to(std::vector<StillToFind>& list, const Compiled& compiled, const resolve::Use& use,
            const Rational& amount) {
  auto same = std::find_if(list.begin(), list.end(),
                           [&](const StillToFind& one) { return one.food == use.food; });
  if (same == list.end()) {
    same = list.insert(list.end(), StillToFind{use.food, Rational(0), {}});
  }
  same->amount += amount;
  std::string purpose = purpose_of(compiled, use);
  if (std::find(same->purposes.begin(), same->purposes.end(), purpose) == same->purposes.end()) {
    same->purposes.push_back(std::move(purpose));
  }
}

} // namespace

std::vector<StillToFind> still_to_find(const Compiled& compiled) {
  std::vector<StillToFind> out;
  for (const purchase::Shortfall& shortfall : compiled.shopping.shortfalls) {
    if (shortfall.missing > 0) {
      add_to(out, compiled, compiled.resolved.uses[shortfall.use], shortfall.to_find());
    }
  }
  return out;
}

std::vector<StillToFind> optional_ones(const Compiled& compiled) {
  std::vector<StillToFind> out;
  for (const resolve::Use& use : compiled.resolved.left_out) {
    add_to(out, compiled, use, use.amount);
  }
  return out;
}

std::string phrase(const Compiled& compiled, const StillToFind& one) {
  const foods::Food& food = compiled.kitchen.food(one.food);
  const foods::ShopUnit unit = foods::shop_unit(food, compiled.kitchen.household.system);
  const auto& system = compiled.kitchen.household.system;
  const std::string amount =
      unit.by_weight
          ? foods::as_seen(food, one.amount, system)
          : foods::with_name(food, Rational(measure::ceil(one.amount / unit.size)) * unit.size,
                             system);
  return fmt::format("{}, for {}", amount, text::the_first_few(one.purposes));
}

std::vector<std::string> a_little_short(const Compiled& compiled) {
  std::map<std::string_view, std::pair<foods::FoodId, Rational>> by_food;
  for (const purchase::Shortfall& one : compiled.shopping.shortfalls) {
    const foods::FoodId food = compiled.resolved.uses[one.use].food;
    auto& [id, sum] = by_food[compiled.kitchen.food(food).name];
    id = food;
    sum += one.missing > 0 ? Rational(0) : one.lacking;
  }
  std::vector<std::string> out;
  for (const auto& [name, of] : by_food) {
    const auto& [id, lacking] = of;
    const foods::Food& food = compiled.kitchen.food(id);
    if (foods::is_seen(food, lacking)) {
      out.push_back(foods::as_seen(food, lacking, compiled.kitchen.household.system));
    }
  }
  return out;
}

std::string verdict(const Compiled& compiled) {
  const std::size_t open = without_price(compiled);
  if (open > 0 && open == compiled.shopping.lines.size()) {
    return "No price is known for anything on the list; add some under 'prices' in "
           "plans/stores/SHOP.yaml.";
  }
  if (!compiled.shopping.proven()) {
    return compiled.shopping.stopped_by_hand()
               ? "A cheaper way of shopping may exist: the search was stopped by hand before it "
                 "could rule that out."
               : "A cheaper way of shopping may exist.";
  }
  const std::string_view known = open > 0 ? ", as far as prices are known" : "";
  return still_to_find(compiled).empty()
             ? fmt::format("No cheaper way of shopping meets this plan{} (proven).", known)
             : fmt::format("No cheaper way of shopping leaves as little to find{} (proven).",
                           known);
}

std::string dish_name(const Compiled& compiled, const kitchen::Dish& dish) {
  if (const auto* recipe = dish.what.recipe()) {
    return compiled.kitchen.recipe(*recipe).name;
  }
  return dish.what.text;
}

std::string escape_markdown(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const char next = i + 1 < text.size() ? text[i + 1] : ' ';
    const std::string_view before = text.substr(0, i);
    // What begins a list, a heading or a rule does so only at the start: "- x", "+ x", "12. x".
    const bool number = before.find_first_not_of("0123456789") == std::string_view::npos;
    const bool opens =
        i == 0 ? c == '-' || c == '+' || c == '=' : number && (c == '.' || c == ')') && next == ' ';
    const bool entity = c == '&' && (text::is_letter(next) || next == '#');
    if (opens || entity || std::string_view("\\`*_{}[]<>#|~").find(c) != std::string_view::npos) {
      out += '\\';
    }
    out += c == '\n' || c == '\r' ? ' ' : c;
  }
  return out;
}

// A cell that a spreadsheet would run as a formula gets an apostrophe before it, by which
// spreadsheets mark text. A space would be lost on a reader that trims, and then be a formula.
std::string csv_cell(std::string_view text, char separator) {
  std::string out;
  const std::string_view seen = text::trim(text);
  if (!seen.empty() && std::string_view("=+-@").find(seen.front()) != std::string_view::npos) {
    out += '\'';
  }
  for (const char c : text) {
    out += c == '"' ? "\"\"" : std::string(1, c);
  }
  const bool plain =
      out.find_first_of("\"\r\n") == std::string::npos && out.find(separator) == std::string::npos;
  return plain ? out : "\"" + out + "\"";
}

} // namespace manciple::emit
