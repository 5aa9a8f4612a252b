#include "resolve/uses.hpp"

#include "kitchen/appliances.hpp"
#include "resolve/steps.hpp"
#include "text/phrases.hpp"

#include <algorithm>
#include <array>
#include <map>

namespace manciple::resolve {
namespace {

using foods::Form;
using kitchen::Ingredient;
using kitchen::Kitchen;
using kitchen::Plan;
using kitchen::Recipe;

// Work that can be done ahead: a cut that keeps for a while.
constexpr std::array<Form, 10> cuts{Form::chopped,   Form::diced,  Form::minced, Form::sliced,
                                    Form::shredded,  Form::grated, Form::cubed,  Form::torn,
                                    Form::julienned, Form::florets};

// Staples and what is bought besides wait for the day's shopping.
constexpr int end_of_day = text::minutes_a_day;

Rational as_purchased(const Kitchen& kitchen, const Ingredient& ingredient) {
  return foods::as_purchased(kitchen.food(*ingredient.food()), *ingredient.amount)->amount;
}

// Of a seasoning, so many times what a dish can do without of its other food. Our own choice.
constexpr int seasonings_give = 3;

// What may be lacking of an ingredient where a recipe or household gives `share`. Of what is
// counted, nothing: half an egg is never bought.
Rational give(const Kitchen& kitchen, const Ingredient& ingredient, const Rational& share) {
  const foods::Food& food = kitchen.food(*ingredient.food());
  const bool seasoning = food.department == foods::Department::spices;
  const bool whole = comes_in_pieces(kitchen, ingredient) || food.is_household();
  if (whole && !ingredient.containers && !seasoning) {
    return 0;
  }
  return std::min(Rational(1), Rational(share * (seasoning ? seasonings_give : 1)));
}

// How many containers are asked for, if any will do.
std::optional<Rational> any_containers(const Ingredient& ingredient, const Rational& times) {
  return ingredient.any_size ? std::optional(Rational(*ingredient.containers * times))
                             : std::nullopt;
}

// The last session that is over before the dish is begun, from which the cut keeps.
std::optional<std::size_t> session_to_cut(const Kitchen& kitchen, const foods::Food& food,
                                          const Making& making, Form form) {
  const Plan& plan = *kitchen.plan;
  const bool vegetable = food.department == foods::Department::produce;
  const int keeps = food.keeps.once_cut();
  const auto& shopped = plan.trips_done.empty() ? plan.trips : plan.trips_done;
  if (!is_cut(form) || !vegetable || making.session || keeps == 0 || shopped.empty()) {
    return std::nullopt;
  }
  const int begun = making.ready_by - minutes_to_cook(kitchen.recipe(making.recipe));
  std::optional<std::size_t> last;
  for (std::size_t i = 0; i < plan.sessions.size(); ++i) {
    const auto& session = plan.sessions[i];
    const bool before =
        session.date < making.date || (session.date == making.date && session.until <= begun);
    if (before && making.date - session.date <= std::chrono::days(keeps) &&
        session.date >= shopped.front().date) {
      last = i;
    }
  }
  return last;
}

// By making and ingredient: how much of it others leave over.
using Covered = std::map<std::pair<MakingId, std::size_t>, Rational>;

Covered covered_by(const std::vector<ByProduct>& by_products) {
  Covered out;
  for (const ByProduct& one : by_products) {
    for (const ByProduct::Part& part : one.parts) {
      out[{part.into, part.ingredient}] += part.covers;
    }
  }
  return out;
}

void of_makings(const Kitchen& kitchen, const std::vector<Making>& makings, const Covered& covered,
                std::vector<Use>& out) {
  std::vector<std::vector<Rational>> per_making;
  for (const Recipe& recipe : kitchen.recipes) {
    per_making.push_back(purchased_per_making(kitchen, recipe));
  }
  for (const Making& making : makings) {
    if (making.on_hand) {
      continue;
    }
    const Recipe& recipe = kitchen.recipe(making.recipe);
    const auto& amounts = per_making[static_cast<std::size_t>(recipe.id)];
    for (std::size_t i = 0; i < recipe.ingredients.size(); ++i) {
      const Ingredient& ingredient = recipe.ingredients[i];
      if (ingredient.food() == nullptr || amounts[i] == 0 ||
          kitchen.food(*ingredient.food()).from_tap) {
        continue;
      }
      const Form form = ingredient.amount->form;
      const auto session = session_to_cut(kitchen, kitchen.food(*ingredient.food()), making, form);
      const auto done_in = session ? session : making.session;
      const Date date = session ? kitchen.plan->sessions[*session].date : making.date;
      const int clock = done_in ? kitchen.plan->sessions[*done_in].from : making.ready_by;
      const Rational times = times_of_ingredient(kitchen, recipe, ingredient, making.times);
      const Rational whole = amounts[i] * times;
      const Rational can_do_without = whole * give(kitchen, ingredient, give_of(kitchen, recipe));
      const auto known = covered.find({making.id, i});
      const Rational amount = known == covered.end() ? whole : Rational(whole - known->second);
      if (known != covered.end() && amount <= can_do_without) {
        continue;
      }
      out.push_back({*ingredient.food(), amount, date, clock, ingredient.fresh,
                     OfMaking{making.id, i}, form, session, std::min(can_do_without, amount),
                     any_containers(ingredient, times * amount / whole)});
      out.back().optional = ingredient.optional;
    }
  }
}

void of_dishes(const Kitchen& kitchen, std::vector<Use>& out) {
  const Plan& plan = *kitchen.plan;
  for (std::size_t m = 0; m < plan.meals.size(); ++m) {
    for (std::size_t d = 0; d < plan.meals[m].dishes.size(); ++d) {
      const kitchen::Dish& dish = plan.meals[m].dishes[d];
      if (dish.kind == kitchen::Dish::Kind::plain && dish.what.amount) {
        const Rational amount = as_purchased(kitchen, dish.what) * dish.servings.value_or(1);
        out.push_back({*dish.what.food(),
                       amount,
                       plan.meals[m].date,
                       kitchen.household.slot(plan.meals[m].slot)->hour(plan.meals[m].date),
                       dish.what.fresh,
                       OfDish{{m, d}},
                       dish.what.amount->form,
                       {},
                       amount * give(kitchen, dish.what, kitchen.household.give),
                       any_containers(dish.what, dish.servings.value_or(1))});
        out.back().optional = dish.what.optional;
      }
    }
  }
}

// As it is bought, it is good so long.
bool keeps_for(const foods::Food& food, int days) {
  const auto& keeps = food.keeps.in(food.keeps.best_place(food.stored));
  return food.is_household() || food.stored == foods::Place::freezer ||
         (keeps && keeps->value >= days);
}

// So much a week is used day by day; but what does not keep for a week is eaten some time in the
// week, while it is good. What else is bought without a date, and does not keep to the plan's last
// day, is eaten whenever a trip has brought it.
void of_plan(const Kitchen& kitchen, std::vector<Use>& out) {
  const Plan& plan = *kitchen.plan;
  for (std::size_t i = 0; i < plan.staples.size(); ++i) {
    const kitchen::Staple& staple = plan.staples[i];
    const Rational amount = as_purchased(kitchen, staple.what);
    const foods::FoodId food = *staple.what.food();
    if (!staple.every_days) {
      // A level to keep is what must be left on the last day.
      out.push_back({food,
                     amount,
                     plan.until,
                     end_of_day,
                     staple.what.fresh,
                     OfStaple{i},
                     Form::plain,
                     {},
                     0,
                     any_containers(staple.what, 1)});
      continue;
    }
    const auto whole = static_cast<int>(measure::to_int64(measure::floor(*staple.every_days)));
    const int period = keeps_for(kitchen.food(food), whole) ? 1 : whole;
    // The plan's own weeks, whatever of it is done.
    for (Date first = plan.begins; first <= plan.until; first += std::chrono::days(period)) {
      const Date last = std::min(plan.until, first + std::chrono::days(period - 1));
      if (last < plan.from) {
        continue;
      }
      const auto slack = static_cast<int>((last - std::max(first, plan.from)).count());
      const Rational share = Rational((last - first).count() + 1) / *staple.every_days;
      const Rational part = amount * share;
      out.push_back({food,
                     part,
                     last,
                     end_of_day,
                     staple.what.fresh,
                     OfStaple{i},
                     Form::plain,
                     {},
                     part * give(kitchen, staple.what, kitchen.household.give),
                     any_containers(staple.what, share),
                     slack});
    }
  }
  const Date bought_from =
      plan.trips.empty() ? plan.from : std::min(plan.from, plan.trips.front().date);
  for (std::size_t i = 0; i < plan.extra.size(); ++i) {
    const kitchen::Extra& extra = plan.extra[i];
    const Date last = extra.by.value_or(plan.until);
    const auto days = static_cast<int>((last - bought_from).count());
    const bool any_day = !extra.by && !keeps_for(kitchen.food(*extra.what.food()), days);
    out.push_back({*extra.what.food(),
                   as_purchased(kitchen, extra.what),
                   last,
                   end_of_day,
                   extra.what.fresh,
                   OfExtra{i},
                   Form::plain,
                   {},
                   0,
                   any_containers(extra.what, 1),
                   any_day ? days : 0});
  }
}

} // namespace

bool is_for_freezer(const Kitchen& kitchen, const Use& use) {
  const auto* of = std::get_if<OfStaple>(&use.reason);
  return of != nullptr && kitchen.plan->staples[of->staple].in_freezer &&
         kitchen.food(use.food).stored != foods::Place::freezer;
}

bool is_cut(Form form) {
  return std::find(cuts.begin(), cuts.end(), form) != cuts.end();
}

std::vector<Rational> purchased_per_making(const Kitchen& kitchen, const Recipe& recipe) {
  std::vector<Rational> out(recipe.ingredients.size(), Rational(0));
  for (std::size_t i = 0; i < out.size(); ++i) {
    const Ingredient& ingredient = recipe.ingredients[i];
    if (ingredient.food() != nullptr && ingredient.amount) {
      out[i] = as_purchased(kitchen, ingredient);
    }
  }
  for (const auto& [one, other] :
       {std::pair{Form::juice, Form::zest}, std::pair{Form::white, Form::yolk}}) {
    std::map<foods::FoodId, std::array<Rational, 2>> sums;
    const auto side = [&, one = one, other = other](std::size_t i) -> std::optional<std::size_t> {
      const Ingredient& ingredient = recipe.ingredients[i];
      if (ingredient.food() == nullptr || !ingredient.amount) {
        return std::nullopt;
      }
      const Form form = ingredient.amount->form;
      return form == one     ? std::optional<std::size_t>(0)
             : form == other ? std::optional<std::size_t>(1)
                             : std::nullopt;
    };
    for (std::size_t i = 0; i < out.size(); ++i) {
      if (const auto s = side(i)) {
        sums[*recipe.ingredients[i].food()][*s] += out[i];
      }
    }
    for (std::size_t i = 0; i < out.size(); ++i) {
      if (const auto s = side(i)) {
        const auto& both = sums[*recipe.ingredients[i].food()];
        const bool smaller = both[*s] < both[1 - *s] || (both[*s] == both[1 - *s] && *s == 1);
        out[i] = smaller ? Rational(0) : out[i];
      }
    }
  }
  return out;
}

namespace {

bool is_cooked(const Kitchen& kitchen, const std::vector<Making>& makings, const Use& use) {
  const auto* of = std::get_if<OfMaking>(&use.reason);
  if (of == nullptr) {
    return false;
  }
  const Recipe& recipe = kitchen.recipe(makings[static_cast<std::size_t>(of->making)].recipe);
  const std::string& note = recipe.ingredients[of->ingredient].note;
  const bool raw =
      text::says(note, {"serve", "served", "serving", "garnish~", "top", "topping~", "sprinkl~"});
  return !raw && kitchen::is_cooked(recipe, kitchen.food(use.food).name);
}

} // namespace

std::vector<Use> uses(const Kitchen& kitchen, const std::vector<Making>& makings,
                      const std::vector<ByProduct>& by_products) {
  std::vector<Use> out;
  of_makings(kitchen, makings, covered_by(by_products), out);
  of_dishes(kitchen, out);
  of_plan(kitchen, out);
  for (Use& use : out) {
    const foods::Food& food = kitchen.food(use.food);
    if (food.freezes_for_cooking) { // "fresh" tells herbs from dried ones
      use.fresh = !is_cooked(kitchen, makings, use);
    }
    // Citrus waits in the freezer as cubes of juice; what is used whole or in slices cannot.
    const bool squeezed = use.form == Form::juice || use.form == Form::zest;
    use.fresh = use.fresh || (food.keeps.frozen_juice && !squeezed);
  }
  std::stable_sort(out.begin(), out.end(), [&](const Use& a, const Use& b) {
    return std::pair(std::string_view(kitchen.food(a.food).name), a.date) <
           std::pair(std::string_view(kitchen.food(b.food).name), b.date);
  });
  return out;
}

} // namespace manciple::resolve
