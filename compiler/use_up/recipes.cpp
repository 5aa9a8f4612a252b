#include "use_up/recipes.hpp"

#include "foods/convert.hpp"
#include "resolve/limits.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace manciple::use_up {
namespace {

using kitchen::Ingredient;
using kitchen::Kitchen;
using kitchen::Recipe;
using kitchen::RecipeId;

// A dish that is on the table within a week, before or after, is soon enough. Our own choice.
constexpr std::chrono::days about{7};
// What keeps longer is looked at as of so long after the day: by then the rest is what it is now.
// Our own choice.
constexpr std::chrono::days look_ahead{14};
// Of what a recipe takes for a portion; less is no use. Our own choice.
const Rational least_of_a_portion{1, 10};

// What a recipe takes of a food, as it is bought.
struct Need {
  foods::FoodId food{};
  Rational amount;
};

class Suggesting {
public:
  Suggesting(kitchen::Library& library, const Kitchen& kitchen, const std::vector<Left>& left,
             const Wanted& wanted)
      : library_(library.kitchen),
        readable_(library.readable),
        kitchen_(kitchen),
        left_(left),
        wanted_(wanted) {}

  Suggestions run() {
    for (std::size_t r = 0; r < library_.recipes.size(); ++r) {
      if (readable_[r]) {
        consider(library_.recipes[r]);
      } else {
        ++out_.unread;
      }
    }
    std::stable_sort(out_.all.begin(), out_.all.end(), [&](const auto& a, const auto& b) {
      const auto key = [&](const Suggestion& one) {
        return std::tuple(one.planned.has_value(), -one.saves, one.lacking.size(),
                          std::string_view(library_.recipe(one.recipe).name));
      };
      return key(a) < key(b);
    });
    return std::move(out_);
  }

private:
  void consider(const Recipe& recipe) {
    const std::map<std::string_view, Need> needs = needs_of(recipe);
    std::optional<Suggestion> best;
    Date cooked_on = wanted_.day;
    for (const std::size_t one : wanted_.lefts) {
      if (!needs.contains(kitchen_.food(left_[one].food).name)) {
        continue;
      }
      const Date last = wanted_.day + look_ahead;
      const Date day = std::min(left_[one].until.value_or(last), last);
      Suggestion on = on_day(recipe, needs, day);
      if (!on.uses.empty() && (!best || std::pair(on.saves, on.uses.size()) >
                                            std::pair(best->saves, best->uses.size()))) {
        best = std::move(on);
        cooked_on = day;
      }
    }
    if (!best) {
      return;
    }
    if (!is_fit(recipe, *best)) {
      ++out_.unfit;
      return;
    }
    what_lacks(recipe, needs, cooked_on, *best);
    best->planned = planned(recipe, cooked_on);
    out_.all.push_back(std::move(*best));
  }

  // Of all that it takes in an amount, by name; nothing of what it can do without.
  std::map<std::string_view, Need> needs_of(const Recipe& recipe) const {
    std::map<std::string_view, Need> out;
    for (const Ingredient& line : recipe.ingredients) {
      const foods::FoodId* id = line.food();
      const foods::Food* food = id != nullptr ? &library_.food(*id) : nullptr;
      if (food == nullptr || food->from_tap || !line.amount || line.optional) {
        continue;
      }
      if (const auto bought = foods::as_purchased(*food, *line.amount)) {
        Need& need = out[food->name];
        need.food = *id;
        need.amount += bought->amount;
      }
    }
    return out;
  }

  [[nodiscard]] bool is_there(const Left& left, Date day) const {
    return left.since <= day && day <= left.until.value_or(day);
  }

  // What is wanted goes off first into it.
  Suggestion on_day(const Recipe& recipe, const std::map<std::string_view, Need>& needs,
                    Date day) const {
    Suggestion out;
    out.recipe = recipe.id;
    std::map<std::string_view, Rational> open;
    for (const std::size_t one : wanted_.lefts) {
      const Left& left = left_[one];
      const std::string_view name = kitchen_.food(left.food).name;
      const auto need = needs.find(name);
      if (need == needs.end() || !is_there(left, day)) {
        continue;
      }
      Rational& taken = open[name];
      const Rational amount = std::min(left.amount, Rational(need->second.amount - taken));
      const Rational portion = need->second.amount / recipe.serves;
      if (amount < portion * least_of_a_portion || amount <= 0) {
        continue;
      }
      taken += amount;
      out.uses.push_back({one, amount});
      if (left.until) {
        out.by = std::min(out.by.value_or(*left.until), *left.until);
      }
      out.saves += left.worth.value_or(0) * amount / left.amount;
    }
    return out;
  }

  void what_lacks(const Recipe& recipe, const std::map<std::string_view, Need>& needs, Date day,
                  Suggestion& out) const {
    std::set<std::string_view> told;
    for (const Ingredient& line : recipe.ingredients) {
      if (const RecipeId* of = line.recipe(); of != nullptr && !line.optional) {
        if (told.insert(library_.recipe(*of).name).second) {
          out.lacking.push_back({*of, 0});
        }
        continue;
      }
      const foods::FoodId* id = line.food();
      const auto need = id != nullptr ? needs.find(library_.food(*id).name) : needs.end();
      if (need == needs.end() || !told.insert(need->first).second) {
        continue;
      }
      Rational there = 0;
      for (const Left& left : left_) {
        there += kitchen_.food(left.food).name == need->first && is_there(left, day) ? left.amount
                                                                                     : Rational(0);
      }
      if (there < need->second.amount * (1 - kitchen::usual_give)) {
        out.lacking.push_back({need->second.food, Rational(need->second.amount - there)});
      }
    }
  }

  // Whether everybody of the household may eat it: as a plan's dish of that recipe is looked at.
  bool is_fit(const Recipe& recipe, Suggestion& out) {
    kitchen::Plan plan;
    plan.from = plan.until = wanted_.day;
    kitchen::Meal meal;
    meal.date = wanted_.day;
    kitchen::Dish dish;
    dish.what.target = recipe.id;
    dish.what.text = recipe.name;
    meal.dishes.push_back(std::move(dish));
    plan.meals.push_back(std::move(meal));
    library_.plan = std::move(plan);
    text::Diagnostics found;
    out.labels = resolve::check_limits(library_, found);
    library_.plan.reset();
    return found.errors() == 0;
  }

  [[nodiscard]] std::optional<Date> planned(const Recipe& recipe, Date day) const {
    for (const kitchen::Meal& meal : kitchen_.plan->meals) {
      for (const kitchen::Dish& dish : meal.dishes) {
        const RecipeId* of = dish.what.recipe();
        const bool near = meal.date + about >= day && meal.date <= day + about;
        if (near && of != nullptr && kitchen_.recipe(*of).slug == recipe.slug) {
          return meal.date;
        }
      }
    }
    return std::nullopt;
  }

  Kitchen& library_;
  const std::vector<bool>& readable_;
  const Kitchen& kitchen_;
  const std::vector<Left>& left_;
  const Wanted& wanted_;
  Suggestions out_;
};

} // namespace

Suggestions suggest(kitchen::Library& library, const Kitchen& kitchen,
                    const std::vector<Left>& left, const Wanted& wanted) {
  return Suggesting(library, kitchen, left, wanted).run();
}

} // namespace manciple::use_up
