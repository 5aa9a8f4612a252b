#include "resolve/steps.hpp"

#include "kitchen/contents.hpp"

#include <algorithm>
#include <numeric>

namespace manciple::resolve {
namespace {

using foods::Department;
using kitchen::Ingredient;
using kitchen::Kitchen;
using kitchen::MadeIn;
using kitchen::Recipe;
using measure::Rational;

constexpr int least_grams = 15;
// Into how many parts one piece is cut, at most.
constexpr int parts_of_produce = 4;
constexpr int parts_of_container = 2;
// Parts of a recipe without anything counted.
constexpr int quarters = 4;
constexpr int thirds = 3;
// More parts than that nobody counts: such an amount is weighed.
constexpr int most_parts = 1000;

// The smallest parts of an ingredient that a cook takes, as so many of them: 2 onions are 8
// quarters. Nothing if the ingredient fits any number of times.
std::optional<int> parts(const Kitchen& kitchen, const Ingredient& ingredient) {
  const foods::FoodId* id = ingredient.food();
  if (id == nullptr || !ingredient.amount) {
    return std::nullopt;
  }
  const foods::Food& food = kitchen.food(*id);
  Rational count;
  int parts_of_one = 1;
  if (ingredient.containers) {
    count = *ingredient.containers;
    parts_of_one = parts_of_container;
  } else if (ingredient.amount->measure.is_counted() && food.department != Department::spices) {
    count = ingredient.amount->number;
    const auto bought = foods::as_purchased(food, *ingredient.amount);
    const bool weighed = foods::basis(food) == measure::Dimension::mass;
    if (!bought || (weighed && bought->amount < count * least_grams)) {
      return std::nullopt;
    }
    parts_of_one = food.department == Department::produce ? parts_of_produce : 1;
  } else {
    return std::nullopt;
  }
  const Rational all = count * parts_of_one;
  if (denominator(all) != 1 || all < 1 || all > most_parts) {
    return std::nullopt;
  }
  return static_cast<int>(measure::to_int64(measure::floor(all)));
}

// Of what is counted, by rounding it: at least this share is taken, and at most that. Common
// practice, no source.
const Rational least_rounded(9, 10);
const Rational most_rounded(5, 4);

// Of so many parts, whole ones: the nearest number, if that is not too few.
Rational whole_parts(const Rational& number) {
  const Rational nearest(measure::round(number));
  return nearest > 0 && nearest >= number * least_rounded ? nearest
                                                          : Rational(measure::ceil(number));
}

// Of what a dish leaves over the nearest number, and at least one: a larger roast has one bone,
// too.
Rational whole_pieces(const Rational& number) {
  return std::max(Rational(1), Rational(measure::round(number)));
}

// Of each ingredient that is counted.
std::vector<int> all_parts(const Kitchen& kitchen, const Recipe& recipe) {
  std::vector<int> out;
  for (const Ingredient& ingredient : recipe.ingredients) {
    const foods::FoodId* food = ingredient.food();
    const bool given = food != nullptr && kitchen.food(*food).given; // a bone more or less
    if (const auto counted = parts(kitchen, ingredient); counted && !given) {
      out.push_back(*counted);
    }
  }
  return out;
}

// Made so many times, no counted ingredient is rounded up too far.
bool rounds_well(const std::vector<int>& counted, const Rational& times) {
  return std::all_of(counted.begin(), counted.end(), [&](int all) {
    const Rational part = times * all;
    return part == 0 || whole_parts(part) <= part * most_rounded;
  });
}

// From `needed` up (or down, with `step` -1): the first number of nths that rounds well; but not
// more than a whole recipe further on.
Rational next_measured(const std::vector<int>& counted, const Rational& needed, int n, int step) {
  const Rational first(step > 0 ? measure::ceil(needed * n) : measure::floor(needed * n));
  int on = 0;
  while (on < n && !rounds_well(counted, (first + step * on) / n)) {
    ++on;
  }
  return (first + step * on) / n;
}

// The parts in which a recipe may be made: n stands for 1/n, 2/n, ...
std::vector<int> divisions(const Recipe& recipe, const std::vector<int>& counted) {
  switch (recipe.made_in) {
  case MadeIn::whole:
    return {1};
  case MadeIn::halves:
    return {2};
  case MadeIn::quarters:
    return {quarters};
  case MadeIn::exactly:
  case MadeIn::usual:
    break;
  }
  std::vector<int> out{quarters, thirds};
  if (!counted.empty()) {
    out.push_back(std::reduce(counted.begin(), counted.end(), 0,
                              [](int a, int b) { return std::gcd(a, b); }));
  }
  return out;
}

} // namespace

bool comes_in_pieces(const Kitchen& kitchen, const Ingredient& ingredient) {
  return parts(kitchen, ingredient).has_value();
}

std::optional<Rational> piece_of_produce(const Kitchen& kitchen, const Ingredient& ingredient) {
  if (ingredient.containers || !comes_in_pieces(kitchen, ingredient)) {
    return std::nullopt;
  }
  const foods::Food& food = kitchen.food(*ingredient.food());
  const bool by_the_leaf = ingredient.amount->measure.piece == "head";
  if (food.department != Department::produce || by_the_leaf) {
    return std::nullopt;
  }
  return foods::as_purchased(food, *ingredient.amount)->amount / ingredient.amount->number;
}

int minutes_to_cook(const Recipe& recipe) {
  int out = recipe.marinate.value_or(0);
  for (const kitchen::MethodStep& step : recipe.method) {
    out += step.hands_on + step.then;
  }
  return out;
}

Rational give_of(const Kitchen& kitchen, const Recipe& recipe) {
  if (recipe.give) {
    return *recipe.give;
  }
  return kitchen::is_baked_from_flour(kitchen, recipe) ? Rational(0) : kitchen.household.give;
}

Rational times_of_ingredient(const Kitchen& kitchen, const Recipe& recipe,
                             const Ingredient& ingredient, const Rational& times) {
  const auto counted =
      recipe.made_in == MadeIn::exactly ? std::nullopt : parts(kitchen, ingredient);
  const foods::FoodId* food = ingredient.food();
  if (counted && food != nullptr && kitchen.food(*food).given) {
    return whole_pieces(times * *counted) / *counted;
  }
  return counted ? Rational(whole_parts(times * *counted) / *counted) : times;
}

Rational times_given(const Kitchen& kitchen, const Recipe& recipe, const Ingredient& given,
                     const Rational& times) {
  const auto counted = recipe.made_in == MadeIn::exactly ? std::nullopt : parts(kitchen, given);
  return counted ? Rational(whole_pieces(times * *counted) / *counted) : times;
}

Rational times_to_make(const Kitchen& kitchen, const Recipe& recipe, const Rational& needed) {
  if (recipe.made_in == MadeIn::exactly) {
    return needed;
  }
  const Rational give = give_of(kitchen, recipe);
  const Rational least = needed * (1 - give);
  const std::vector<int> counted = all_parts(kitchen, recipe);
  const std::vector<int> in = divisions(recipe, counted);
  std::optional<Rational> more; // or just as much
  std::optional<Rational> less;
  for (const int n : in) {
    const Rational up = next_measured(counted, needed, n, 1);
    if (rounds_well(counted, up)) {
      more = more ? std::min(*more, up) : up;
    }
    const Rational down = next_measured(counted, needed, n, -1);
    if (down > 0 && down >= least && rounds_well(counted, down)) {
      less = less ? std::max(*less, down) : down;
    }
  }
  if (!more) { // what the recipe itself says goes before what comes out well
    more = Rational(measure::ceil(needed * in.front())) / in.front();
  }
  const bool leaves_little = *more <= needed * (1 + give);
  return less && !leaves_little ? *less : *more;
}

} // namespace manciple::resolve
