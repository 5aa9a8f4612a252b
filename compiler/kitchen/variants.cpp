#include "kitchen/variants.hpp"

#include "kitchen/errors.hpp"
#include "kitchen/table.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

namespace manciple::kitchen {
namespace {

using foods::Food;
using text::Diagnostics;

using Swaps = std::vector<Swap>;

// "with halloumi and oat cream, without mushrooms".
std::string words_of(const Swaps& swaps) {
  std::string with;
  std::string without;
  for (const Swap& swap : swaps) {
    std::string& into = swap.what ? with : without;
    into += into.empty() ? (swap.what ? "with " : "without ") : " and ";
    into += swap.what ? swap.what->text : swap.in_place_of;
  }
  return with + (with.empty() || without.empty() ? "" : ", ") + without;
}

std::string key_of(const Swaps& swaps) {
  std::string out;
  for (const Swap& swap : swaps) {
    out += swap.text + "\n";
  }
  return out;
}

class Splitter {
public:
  Splitter(Kitchen& kitchen, Diagnostics& diagnostics)
      : kitchen_(kitchen), diagnostics_(diagnostics) {}

  void run();

private:
  void split(Meal& meal, std::size_t dish);
  std::optional<RecipeId> variant(RecipeId of, const Variant& variant);
  std::optional<RecipeId> swapped(RecipeId of, const Swaps& swaps);
  bool line_swapped(Ingredient& line, const Swaps& swaps, const Rational& serves, bool& keep);
  bool replace(Ingredient& line, const Swap& swap, const Rational& serves);
  std::optional<foods::Amount> amount_for(const Ingredient& line, const Food& food);
  [[nodiscard]] bool is_replaced(const Ingredient& line, const Swap& swap) const;
  [[nodiscard]] std::string what_it_has(RecipeId id) const;
  Recipe& recipe(RecipeId id) { return kitchen_.recipes[static_cast<std::size_t>(id)]; }
  void fold(Meal& meal, std::size_t dish, const std::string& who, RecipeId other);

  Kitchen& kitchen_;
  Diagnostics& diagnostics_;
  // By recipe and the words of its swaps: the recipe that is made of it; nothing where it has
  // nothing to swap.
  std::map<std::pair<RecipeId, std::string>, std::optional<RecipeId>> known_;
  // Swaps that have found their food, by their words and that of the dish's recipe.
  std::set<std::string> found_;
  // Of the last cooking of a recipe: who has which other recipe.
  std::map<RecipeId, std::map<std::string, RecipeId>> cooked_;
};

bool Splitter::is_replaced(const Ingredient& line, const Swap& swap) const {
  if (swap.replaced) {
    return line.target == *swap.replaced;
  }
  const foods::FoodId* food = line.food();
  return food != nullptr &&
         std::any_of(swap.replaced_classes.begin(), swap.replaced_classes.end(),
                     [&](const foods::AnyClass& of) {
                       return foods::holds(kitchen_.food(*food), of) == foods::Holds::yes;
                     });
}

// The amount of the food that stands in the line's place, in the whole recipe. A weight stays a
// weight, and what is known by neither cup nor piece of its own is taken by its weight as eaten.
std::optional<foods::Amount> Splitter::amount_for(const Ingredient& line, const Food& food) {
  if (!line.amount || foods::basis(food) != measure::Dimension::mass || line.food() == nullptr) {
    return std::nullopt;
  }
  const Food& old = kitchen_.food(*line.food());
  const auto bought = foods::basis(old) == measure::Dimension::mass
                          ? foods::as_purchased(old, *line.amount)
                          : tl::unexpected(foods::NoConversion{});
  const auto old_share = foods::eaten_share(old, foods::Form::plain);
  const auto share = foods::eaten_share(food, foods::Form::plain);
  if (!bought || !old_share || !share) {
    return std::nullopt;
  }
  return foods::Amount{
      bought->amount * *old_share / *share, {measure::Unit::gram, {}}, foods::Form::plain};
}

bool Splitter::replace(Ingredient& line, const Swap& swap, const Rational& serves) {
  const Ingredient& what = *swap.what;
  Ingredient out = what;
  out.at = line.at;
  out.optional = line.optional;
  out.text = fmt::format("{} in place of '{}'", what.text, line.text);
  if (what.amount) {
    out.amount->number *= serves;
    if (out.containers) {
      *out.containers *= serves;
    }
  } else if (what.recipe() != nullptr && line.recipe() != nullptr) {
    out.amount = line.amount;
  } else if (what.recipe() != nullptr) {
    out.amount = foods::Amount{serves, {measure::Unit::each, "serving"}};
  } else {
    out.amount = amount_for(line, kitchen_.food(*what.food()));
    if (line.amount && !out.amount) {
      diagnostics_.error(
          errors::no_such_swap, swap.at,
          fmt::format("it is not clear how much {} replaces '{}'", what.text, line.text),
          fmt::format("give the amount for one serving, for example '{} {} instead of {}'",
                      kitchen_.household.system == measure::System::us ? "4 oz" : "100 g",
                      what.text, swap.in_place_of));
      return false;
    }
  }
  line = std::move(out);
  return true;
}

// Whether a line is another after the swaps, and whether it is there at all.
bool Splitter::line_swapped(Ingredient& line, const Swaps& swaps, const Rational& serves,
                            bool& keep) {
  for (const Swap& swap : swaps) {
    if (is_replaced(line, swap)) {
      found_.insert(swap.text);
      keep = swap.what && replace(line, swap, serves);
      return true;
    }
  }
  if (const RecipeId* part = line.recipe()) {
    if (const auto other = swapped(*part, swaps)) {
      line.target = *other;
      return true;
    }
  }
  return false;
}

std::optional<RecipeId> Splitter::swapped(RecipeId of, const Swaps& swaps) {
  const auto key = std::pair(of, key_of(swaps));
  if (const auto known = known_.find(key); known != known_.end()) {
    return known->second;
  }
  known_.emplace(key, std::nullopt); // a circle ends here; resolve tells of it
  Recipe copy = recipe(of);
  bool changed = false;
  std::vector<Ingredient> lines;
  for (Ingredient line : copy.ingredients) {
    bool keep = true;
    changed = line_swapped(line, swaps, copy.serves, keep) || changed;
    if (keep) {
      lines.push_back(std::move(line));
    }
  }
  if (!changed) {
    return std::nullopt;
  }
  copy.ingredients = std::move(lines);
  // What is left over of another dish is another thing, unless it is of what both have.
  std::erase_if(copy.gives, [&](const GivesLine& given) {
    const auto is_there = [&](const Target& one) {
      return std::any_of(copy.ingredients.begin(), copy.ingredients.end(),
                         [&](const Ingredient& line) { return line.target == one; });
    };
    return given.of.empty() || !std::all_of(given.of.begin(), given.of.end(), is_there);
  });
  copy.name = fmt::format("{} {}", copy.name, words_of(swaps));
  copy.slug = text::slug(fmt::format("{} {}", copy.slug, words_of(swaps)));
  // What all eat is measured together; of this, only what those few eat is made.
  copy.made_in = MadeIn::exactly;
  copy.id = RecipeId{static_cast<std::uint32_t>(kitchen_.recipes.size())};
  const RecipeId id = copy.id;
  kitchen_.recipes.push_back(std::move(copy));
  known_[key] = id;
  return id;
}

std::string Splitter::what_it_has(RecipeId id) const {
  std::vector<std::string> names;
  const Recipe& of = kitchen_.recipes[static_cast<std::size_t>(id)];
  for (const Ingredient& line : of.ingredients) {
    names.push_back(line.food() != nullptr
                        ? kitchen_.food(*line.food()).name
                        : kitchen_.recipes[static_cast<std::size_t>(*line.recipe())].name);
  }
  return fmt::format("it has {}", text::join(names, ", "));
}

std::optional<RecipeId> Splitter::variant(RecipeId of, const Variant& variant) {
  const bool fresh = !known_.contains({of, key_of(variant.swaps)});
  if (fresh) {
    found_.clear();
  }
  const std::size_t before = diagnostics_.errors();
  const auto made = swapped(of, variant.swaps);
  for (const Swap& swap : variant.swaps) {
    if ((fresh && !found_.contains(swap.text)) || (!fresh && !made)) {
      diagnostics_.error(errors::no_such_swap, swap.at,
                         fmt::format("{} has no {}", recipe(of).name, swap.in_place_of),
                         what_it_has(of));
    }
  }
  return diagnostics_.errors() == before ? made : std::nullopt;
}

// For one eater another dish stands beside the dish; several who have the same share it.
void Splitter::fold(Meal& meal, std::size_t index, const std::string& who, RecipeId other) {
  const Dish base = meal.dishes[index];
  Dish apart = base;
  apart.what.target = other;
  apart.what.text = recipe(other).name;
  apart.variants.clear();
  apart.servings.reset();
  apart.not_by.clear();
  apart.eaten_by = {who};
  const auto eating = eaters(kitchen_.household, *kitchen_.plan, meal, apart);
  if (eating.empty() && !kitchen_.household.people.empty()) {
    return; // away
  }
  if (base.servings && !eating.empty()) {
    const Rational theirs = portion(*eating.front(), meal, apart);
    meal.dishes[index].servings =
        *base.servings > theirs ? Rational(*base.servings - theirs) : Rational(0);
  }
  meal.dishes[index].not_by.push_back(who);
  for (Dish& dish : meal.dishes) {
    if (dish.kind == apart.kind && dish.what.target == apart.what.target &&
        !dish.eaten_by.empty() && !dish.servings) {
      dish.eaten_by.push_back(who);
      return;
    }
  }
  meal.dishes.insert(meal.dishes.begin() + static_cast<std::ptrdiff_t>(index) + 1,
                     std::move(apart));
}

void Splitter::split(Meal& meal, std::size_t index) {
  const Dish dish = meal.dishes[index];
  const RecipeId* of = dish.what.recipe();
  if (of == nullptr) {
    const foods::FoodId* food = dish.what.food();
    const bool not_written = food == nullptr || kitchen_.food(*food).as_written;
    for (const Variant& other : dish.variants) {
      const std::string what =
          fmt::format("'{}' is not a recipe, so nothing in it can be replaced", dish.what.text);
      if (not_written) {
        diagnostics_.warning(errors::no_such_swap, other.at, what, "write the recipe");
      } else {
        diagnostics_.error(errors::no_such_swap, other.at, what,
                           "give them a dish of their own: {dish: ..., eaten by: [...]}");
      }
    }
    return;
  }
  std::map<std::string, RecipeId> others;
  if (dish.kind == Dish::Kind::leftovers) {
    others = cooked_[*of];
  }
  for (const Variant& other : dish.variants) {
    if (const auto recipe = variant(*of, other)) {
      others[other.who] = *recipe;
    }
  }
  if (dish.kind == Dish::Kind::cooked) {
    cooked_[*of] = others;
  }
  const auto eats = [&](const std::string& who) {
    return dish.eaten_by.empty() ||
           std::find(dish.eaten_by.begin(), dish.eaten_by.end(), who) != dish.eaten_by.end();
  };
  for (const auto& [who, recipe] : others) {
    if (eats(who)) {
      fold(meal, index, who, recipe);
    }
  }
}

void Splitter::run() {
  for (Meal& meal : kitchen_.plan->meals) {
    for (std::size_t d = 0; d < meal.dishes.size(); ++d) {
      const std::size_t before = meal.dishes.size();
      split(meal, d);
      d += meal.dishes.size() - before; // what was put in behind it
    }
    // A dish of which everybody has another is not cooked.
    std::erase_if(meal.dishes, [&](const Dish& dish) {
      return !dish.not_by.empty() && dish.servings.value_or(0) == 0 &&
             eaters(kitchen_.household, *kitchen_.plan, meal, dish).empty();
    });
    for (Dish& dish : meal.dishes) {
      dish.variants.clear();
    }
  }
}

} // namespace

void split_meals(Kitchen& kitchen, Diagnostics& diagnostics) {
  if (kitchen.plan) {
    Splitter(kitchen, diagnostics).run();
  }
}

} // namespace manciple::kitchen
