#include "emit/dish_sheet.hpp"

#include "emit/day_words.hpp"
#include "emit/words.hpp"
#include "foods/convert.hpp"
#include "foods/counted.hpp"
#include "foods/spoken.hpp"
#include "measure/at_hand.hpp"
#include "measure/print.hpp"
#include "prep/by_products.hpp"
#include "resolve/steps.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>

namespace manciple::emit {
namespace {

using kitchen::Ingredient;
using measure::Rational;

// The words of a text in the singular.
std::set<std::string> words_of(std::string_view text) {
  std::set<std::string> out;
  std::string word;
  for (const char c : text::lower(text) + " ") {
    if (text::is_letter(c)) {
      word += c;
    } else if (!word.empty()) {
      out.insert(text::singular(word));
      word.clear();
    }
  }
  return out;
}

// What a step calls foods of a department together.
std::string_view together(foods::Department department) {
  switch (department) {
  case foods::Department::produce:
    return "vegetable";
  case foods::Department::spices:
    return "spice";
  case foods::Department::meat:
    return "meat";
  default:
    return "";
  }
}

// What stands in a recipe's line for the container: "can", "jar".
std::string container_in(std::string_view line) {
  constexpr std::array<std::string_view, 10> known{"can",    "jar", "tin",    "package", "pack",
                                                   "bottle", "bag", "carton", "tub",     "box"};
  for (const std::string& word : words_of(line)) {
    if (std::find(known.begin(), known.end(), word) != known.end()) {
      return word;
    }
  }
  return "pack";
}

class Sheet {
public:
  Sheet(const Compiled& compiled, const resolve::Making& making)
      : compiled_(compiled), making_(making), recipe_(compiled.kitchen.recipe(making.recipe)) {}

  DishSheet run() {
    steps();
    for (std::size_t i = 0; i < recipe_.ingredients.size(); ++i) {
      sheet_.taken.push_back(taken(i));
    }
    std::stable_sort(sheet_.taken.begin(), sheet_.taken.end(), [](const Taken& a, const Taken& b) {
      return a.step.value_or(0) < b.step.value_or(0);
    });
    return std::move(sheet_);
  }

private:
  void steps();
  void add(std::optional<std::size_t> step, SheetStep one);
  [[nodiscard]] std::string on(const std::string& appliance, std::optional<int> fahrenheit) const;
  [[nodiscard]] Taken taken(std::size_t i) const;
  [[nodiscard]] std::string amount(const Ingredient& ingredient) const;
  [[nodiscard]] std::string one(const Ingredient& ingredient, const foods::Amount& amount) const;
  [[nodiscard]] bool several(const Ingredient& ingredient, const foods::Food& food) const;
  [[nodiscard]] std::string inside_of(const foods::Amount& amount) const;
  [[nodiscard]] std::optional<std::size_t> step_of(const Ingredient& ingredient) const;
  void from(std::size_t i, Taken& out) const;
  bool from_by_product(std::size_t i, Taken& out) const;
  void from_making(Taken& out, kitchen::RecipeId recipe) const;

  const Compiled& compiled_;
  const resolve::Making& making_;
  const kitchen::Recipe& recipe_;
  std::vector<std::set<std::string>> words_; // by step of the sheet
  DishSheet sheet_;
};

std::string Sheet::on(const std::string& appliance, std::optional<int> fahrenheit) const {
  if (!fahrenheit) {
    return appliance;
  }
  return fmt::format("{}, {}", appliance, on_the_dial(compiled_, *fahrenheit));
}

void Sheet::add(std::optional<std::size_t> step, SheetStep one) {
  std::set<std::string> words = words_of(one.what);
  if (step) { // the recipe's own words may name what a shorter phrase leaves out
    words.merge(words_of(recipe_.method[*step].what));
  }
  words_.push_back(std::move(words));
  sheet_.steps.push_back(std::move(one));
}

void Sheet::steps() {
  for (const prep::Cooking& cook : compiled_.prep.cooking) {
    for (const prep::Cooking::Step& step : cook.steps) {
      if (cook.making == making_.id) {
        const std::string where = on(step.appliance, step.fahrenheit);
        const bool by_name = cook.cooks.size() > 1 && !step.who.empty();
        add(step.step, {step.what, step.start, step.hands_on, step.then,
                        by_name ? step.who + (where.empty() ? "" : ", " + where) : where});
      }
    }
  }
  const std::string before = recipe_.name + ": ";
  for (const prep::SessionPlan& session : compiled_.prep.sessions) {
    const kitchen::Session& window = compiled_.plan().sessions[session.session];
    for (const prep::Task& task : session.tasks) {
      if (task.making == making_.id && task.kind != prep::Task::Kind::wash) {
        std::string what =
            task.what.starts_with(before) ? task.what.substr(before.size()) : task.what;
        what.front() = text::is_letter(what.front()) && what.front() >= 'a'
                           ? static_cast<char>(what.front() - ('a' - 'A'))
                           : what.front();
        add(task.step, {what, window.from + task.start, task.hands_on, task.then,
                        on(task.appliance, task.fahrenheit)});
      }
    }
  }
  if (sheet_.steps.empty()) {
    for (std::size_t s = 0; s < recipe_.method.size(); ++s) {
      const kitchen::MethodStep& step = recipe_.method[s];
      add(s,
          {step.what, std::nullopt, step.hands_on, step.then, on(step.appliance, step.fahrenheit)});
    }
  }
}

std::string Sheet::one(const Ingredient& ingredient, const foods::Amount& amount) const {
  if (!amount.measure.is_counted()) {
    return measure::print_for_kitchen({amount.number, amount.measure.unit}, recipe_.system);
  }
  const std::string& piece = amount.measure.piece;
  const Rational count = piece.empty() // by the dozen, too
                             ? measure::in_base({amount.number, amount.measure.unit})
                             : amount.number;
  const foods::FoodId* id = ingredient.food();
  std::string number =
      id != nullptr ? foods::pieces_to_take(compiled_.kitchen.food(*id), count, piece)
                    : measure::print_exact(measure::by_the_piece(count, measure::Cut::quarters));
  if (piece.empty()) {
    return number;
  }
  constexpr std::array<std::string_view, 3> sizes{"small", "medium", "large"};
  const bool sized = std::find(sizes.begin(), sizes.end(), piece) != sizes.end();
  return fmt::format("{} {}", number,
                     count > 1 && number != "1" && !sized ? text::plural(piece) : piece);
}

// Of what is counted by itself more than one are several: "1 1/2 onions".
bool Sheet::several(const Ingredient& ingredient, const foods::Food& food) const {
  if (!ingredient.amount || ingredient.containers || !ingredient.amount->measure.is_counted()) {
    return false;
  }
  const foods::Measure& measure = ingredient.amount->measure;
  const Rational number =
      ingredient.amount->number *
      resolve::times_of_ingredient(compiled_.kitchen, recipe_, ingredient, making_.times);
  return foods::counts_itself(food,
                              measure.piece.empty() ? foods::counted_by(food) : measure.piece) &&
         foods::pieces_to_take(food, number, measure.piece) != "1" && number > 1;
}

// As it stands on the pack: "14.5 oz".
std::string Sheet::inside_of(const foods::Amount& amount) const {
  return amount.measure.is_counted() ? foods::print(amount)
                                     : fmt::format("{} {}", decimal(compiled_, amount.number, 2),
                                                   measure::facts(amount.measure.unit).name);
}

std::string Sheet::amount(const Ingredient& ingredient) const {
  if (!ingredient.amount) {
    return {};
  }
  const Rational times =
      resolve::times_of_ingredient(compiled_.kitchen, recipe_, ingredient, making_.times);
  foods::Amount most{ingredient.amount->number * times, ingredient.amount->measure};
  if (ingredient.containers && *ingredient.containers > 0) {
    const std::string word = container_in(ingredient.text);
    const Rational packs = *ingredient.containers * times;
    const foods::Amount inside{ingredient.amount->number / *ingredient.containers,
                               ingredient.amount->measure};
    const std::string number =
        measure::print_exact(measure::by_the_piece(packs, measure::Cut::quarters));
    const std::string several = packs > 1 ? text::plural(word) : word;
    return ingredient.any_size ? fmt::format("{} {}", number, several)
                               : fmt::format("{} {} ({})", number, several, inside_of(inside));
  }
  std::string said = one(ingredient, most);
  if (ingredient.low && *ingredient.low < ingredient.amount->number) {
    most.number = *ingredient.low * times;
    const std::string least = one(ingredient, most);
    const auto number_of = [](const std::string& words) {
      return words.substr(0, words.find_first_not_of("0123456789/., "));
    };
    const std::string number = number_of(least);
    if (least == said) {
      return said;
    }
    // "1 to 2 tsp": the measure once, where both have the same.
    said = least.substr(number.size()) == said.substr(number_of(said).size())
               ? fmt::format("{} to {}", text::trim(number), said)
               : fmt::format("{} to {}", least, said);
  }
  return said;
}

// The first step that speaks of it: by the last word of its name ("stock"), by what it is called
// together with others ("the vegetables"), or by "everything".
std::optional<std::size_t> Sheet::step_of(const Ingredient& ingredient) const {
  std::vector<std::string> keys;
  const foods::FoodId* id = ingredient.food();
  const std::string& name =
      id != nullptr ? compiled_.kitchen.food(*id).name
                    : compiled_.kitchen.recipe(std::get<kitchen::RecipeId>(ingredient.target)).name;
  for (const std::string& word : words_of(name)) {
    if (text::lower(name).ends_with(word) || name.size() == word.size()) {
      keys.insert(keys.begin(), word);
    } else if (word.size() > 3 || (word.size() > 2 && text::lower(name).starts_with(word))) {
      keys.push_back(word);
    }
  }
  if (id != nullptr) {
    keys.emplace_back(together(compiled_.kitchen.food(*id).department));
  }
  for (const std::string& key : keys) {
    for (std::size_t s = 0; s < words_.size(); ++s) {
      if (words_[s].contains(key)) {
        return s;
      }
    }
  }
  for (const std::string_view all :
       {"everything", "the rest", "all but", "all the", "ingredients"}) {
    for (std::size_t s = 0; s < sheet_.steps.size(); ++s) {
      if (text::lower(sheet_.steps[s].what).find(all) != std::string::npos) {
        return s;
      }
    }
  }
  return std::nullopt;
}

void Sheet::from_making(Taken& out, kitchen::RecipeId recipe) const {
  for (const resolve::Making& other : compiled_.resolved.makings) {
    for (const resolve::Consumer& consumer : other.consumers) {
      const auto* who = std::get_if<resolve::MakingId>(&consumer.who);
      if (other.recipe != recipe || who == nullptr || *who != making_.id) {
        continue;
      }
      const bool today = other.date == making_.date;
      out.from = today ? "made today" : "made on " + text::print_day(other.date);
      const auto label =
          std::find_if(compiled_.prep.labels.begin(), compiled_.prep.labels.end(),
                       [&](const prep::BoxLabel& one) {
                         return one.making == other.id && one.purpose.starts_with(recipe_.name);
                       });
      if (consumer.from_freezer) {
        out.place = foods::Place::freezer;
      } else if (label != compiled_.prep.labels.end()) {
        out.place = label->place;
      } else if (!today) {
        out.place = foods::Place::fridge;
      }
      return;
    }
  }
}

// What another dish has left over for it.
bool Sheet::from_by_product(std::size_t i, Taken& out) const {
  std::vector<std::string> names;
  for (const resolve::ByProduct& one : compiled_.resolved.by_products) {
    for (const resolve::ByProduct::Part& part : one.parts) {
      if (part.into == making_.id && part.ingredient == i) {
        const resolve::Making& of = compiled_.resolved.making(one.of);
        names.push_back(fmt::format("{} of {}", compiled_.kitchen.recipe(of.recipe).name,
                                    part.date == one.date ? "today" : text::print_day(one.date)));
        if (part.date > one.date) {
          out.place = prep::place_of(compiled_.kitchen, compiled_.resolved, one, part);
        }
      }
    }
  }
  out.from = names.empty() ? "" : "left over from " + text::join(names, " and ");
  return !names.empty();
}

void Sheet::from(std::size_t i, Taken& out) const {
  if (from_by_product(i, out)) {
    return;
  }
  if (const auto* recipe = recipe_.ingredients[i].recipe()) {
    from_making(out, *recipe);
    return;
  }
  const foods::Food& food = compiled_.kitchen.food(*recipe_.ingredients[i].food());
  if (!food.from_tap) {
    out.place = food.stored;
  }
  const auto& uses = compiled_.resolved.uses;
  for (std::size_t u = 0; u < uses.size(); ++u) {
    const auto* of = std::get_if<resolve::OfMaking>(&uses[u].reason);
    if (of == nullptr || of->making != making_.id || of->ingredient != i) {
      continue;
    }
    for (const purchase::StockUse& used : compiled_.shopping.from_stock) {
      if (used.use == u) {
        out.place =
            used.frozen ? foods::Place::freezer : compiled_.kitchen.on_hand.lots[used.lot].place;
        if (const foods::FoodId lot = food_of(compiled_.kitchen, used); lot != uses[u].food) {
          out.from = "in place of it: " + compiled_.kitchen.food(lot).name;
        }
      }
    }
    for (const purchase::Supply& supply : compiled_.shopping.supplies) {
      if (supply.use == u && supply.frozen) {
        out.place = foods::Place::freezer;
        out.from = "frozen on " + text::print_day(supply.frozen_on);
      }
      if (supply.use == u && compiled_.shopping.lines[supply.line].food != uses[u].food) {
        out.from = "replaced by: " + food_of(compiled_, compiled_.shopping.lines[supply.line]).name;
      }
    }
    if (uses[u].cut_in && making_.session != uses[u].cut_in) {
      out.place = foods::Place::fridge;
      out.from = "cut on " + text::print_day(compiled_.plan().sessions[*uses[u].cut_in].date);
    }
  }
}

Taken Sheet::taken(std::size_t i) const {
  const Ingredient& ingredient = recipe_.ingredients[i];
  Taken out;
  out.amount = amount(ingredient);
  if (const foods::FoodId* id = ingredient.food()) {
    const foods::Food& food = compiled_.kitchen.food(*id);
    const auto bought = ingredient.amount ? foods::as_purchased(food, *ingredient.amount)
                                          : tl::expected<foods::Purchased, foods::NoConversion>(
                                                tl::unexpected(foods::NoConversion{}));
    out.name = several(ingredient, food) ? text::plural(food.name)
               : bought                  ? foods::name_of(food, bought->amount * making_.times)
                                         : food.name;
    if (ingredient.amount && ingredient.amount->form != foods::Form::plain) {
      out.how = foods::name(ingredient.amount->form);
    }
  } else {
    out.name = compiled_.kitchen.recipe(std::get<kitchen::RecipeId>(ingredient.target)).name;
  }
  if (!ingredient.note.empty()) {
    out.how += (out.how.empty() ? "" : ", ") + ingredient.note;
  }
  // "2 cans", of "diced tomatoes".
  constexpr std::string_view said_already = "canned ";
  if (ingredient.containers && out.name.starts_with(said_already)) {
    out.name.erase(0, said_already.size());
  }
  if (ingredient.optional) {
    out.how += out.how.empty() ? "optional" : ", optional";
  }
  out.step = step_of(ingredient);
  from(i, out);
  return out;
}

} // namespace

DishSheet dish_sheet(const Compiled& compiled, const resolve::Making& making) {
  return Sheet(compiled, making).run();
}

} // namespace manciple::emit
