#include "nutrition/nutrition.hpp"

#include "foods/retention.hpp"
#include "kitchen/appliances.hpp"
#include "kitchen/table.hpp"
#include "nutrition/within.hpp"
#include "resolve/by_products.hpp"
#include "resolve/eaters.hpp"
#include "resolve/makings.hpp"
#include "resolve/uses.hpp"

#include <algorithm>
#include <set>

namespace manciple::nutrition {
namespace {

using foods::Food;
using foods::Form;
using kitchen::Kitchen;
using measure::Rational;
using resolve::Resolved;

constexpr double hundred_grams = 100;

// What is taken from a food and weighs less than the food; else the edible portion counts, whatever
// cooking does to its weight.
bool is_part(Form form) {
  return form == Form::juice || form == Form::zest || form == Form::yolk || form == Form::white ||
         form == Form::drained || form == Form::pitted || form == Form::shelled ||
         form == Form::peeled || form == Form::leaves || form == Form::florets;
}

// A by-product may be made of what has a by-product again, and that be made with the first: what is
// left of what is left of what is left over changes no figure that anybody sees.
constexpr int deepest = 3;

Sum of_making(const Kitchen& kitchen, const kitchen::Recipe& recipe, int depth = 0);

// Adds so many grams of a food to what holds it, cooked where the recipe cooks it.
void add_food(Sum& to, const Food& food, Form form, const kitchen::Recipe* in, double grams) {
  if (in != nullptr && food.cooked && kitchen::is_cooked(*in, food.name)) {
    const auto figures = foods::heated(food, form);
    to.add(figures ? &*figures : nullptr, grams);
  } else {
    to.add(food.nutrients_of(form), grams);
  }
}

// What so much of a food or of a recipe holds. Of a recipe, times as written.
Sum of_target(const Kitchen& kitchen, const kitchen::Target& what, Form form,
              const Rational& amount, int depth = 0) {
  Sum out;
  if (const auto* id = std::get_if<kitchen::RecipeId>(&what)) {
    out.add(of_making(kitchen, kitchen.recipe(*id), depth + 1), to_double(amount));
  } else if (const Food& food = kitchen.food(std::get<foods::FoodId>(what)); !food.from_tap) {
    out.add(food.nutrients_of(form), eaten_grams(food, form, amount).value_or(0));
  }
  return out;
}

// What one making leaves over and its eaters do not have: no more than what it is of holds.
Sum left_over(const Kitchen& kitchen, const kitchen::Recipe& recipe, int depth = 0) {
  Sum out;
  const auto bought = resolve::purchased_per_making(kitchen, recipe);
  text::Diagnostics unsaid;
  for (const kitchen::GivesLine& given : recipe.gives) {
    Sum most;
    for (std::size_t i = 0; i < recipe.ingredients.size(); ++i) {
      const kitchen::Ingredient& line = recipe.ingredients[i];
      const bool in_it = given.of.empty() ||
                         std::find(given.of.begin(), given.of.end(), line.target) != given.of.end();
      const auto times = line.recipe() != nullptr && line.amount
                             ? resolve::times_of(kitchen, line, unsaid)
                             : std::optional(bought[i]);
      if (in_it && line.amount && !line.optional && times) {
        most.add(of_target(kitchen, line.target, eaten_form(line), *times, depth));
      }
    }
    if (const auto amount = resolve::amount_given(kitchen, given)) {
      out.add(of_target(kitchen, given.what.target, eaten_form(given.what), *amount, depth)
                  .at_most(most));
    }
  }
  return out;
}

// What a recipe made once holds, with what is in its recipes.
Sum of_making(const Kitchen& kitchen, const kitchen::Recipe& recipe, int depth) {
  Sum out;
  each_recipe(kitchen, recipe, [&](const kitchen::Recipe& part, double times) {
    for (const FoodOf& one : foods_of(kitchen, part)) {
      const Food& food = kitchen.food(one.food);
      const Form form = eaten_form(one.line);
      add_food(out, food, form, &part, eaten_grams(food, form, one.bought).value_or(0) * times);
    }
    if (!part.gives.empty() && depth < deepest) {
      out.add(left_over(kitchen, part, depth), -times);
    }
  });
  return out;
}

class Reckoner {
public:
  Reckoner(const Kitchen& kitchen, const Resolved& resolved)
      : kitchen_(kitchen), resolved_(resolved) {}

  Nutrition run();

private:
  void dishes();
  void add_to_dishes(const resolve::Use& use);
  void by_products();
  void person(const kitchen::Person& person, bool guest);
  void without_amount();

  const Kitchen& kitchen_;
  const Resolved& resolved_;
  Nutrition out_;
  std::set<std::string> without_figures_;
};

void Reckoner::add_to_dishes(const resolve::Use& use) {
  const Food& food = kitchen_.food(use.food);
  if (food.is_household()) {
    return;
  }
  const std::vector<resolve::DishShare> to = resolved_.shares_of(use);
  const Form form = eaten_form(kitchen_, resolved_, use);
  const auto grams = eaten_grams(food, form, use.amount);
  if (!to.empty() && (food.nutrients_of(form) == nullptr || !grams)) {
    without_figures_.insert(food.name);
  }
  const auto* making = std::get_if<resolve::OfMaking>(&use.reason);
  const kitchen::Recipe* in =
      making != nullptr ? &kitchen_.recipe(resolved_.making(making->making).recipe) : nullptr;
  for (const resolve::DishShare& share : to) {
    add_food(out_.dishes[share.dish.meal][share.dish.dish].whole, food, form, in,
             grams.value_or(0) * to_double(share.share));
  }
}

// What is left over is eaten with the dish that it goes into, not with the one that it is of.
void Reckoner::by_products() {
  const auto add = [&](resolve::MakingId making, const Sum& of, const Rational& times) {
    for (const resolve::DishShare& share : resolved_.shares_of(making)) {
      out_.dishes[share.dish.meal][share.dish.dish].whole.add(
          of, to_double(Rational(times * share.share)));
    }
  };
  for (const resolve::Making& making : resolved_.makings) {
    const kitchen::Recipe& recipe = kitchen_.recipe(making.recipe);
    if (!making.on_hand && !recipe.gives.empty()) {
      add(making.id, left_over(kitchen_, recipe), -making.times);
    }
  }
  for (const resolve::ByProduct& one : resolved_.by_products) {
    const kitchen::Target& what = resolve::given_as(kitchen_, resolved_, one).what.target;
    for (const resolve::ByProduct::Part& part : one.parts) {
      const kitchen::Ingredient& line =
          kitchen_.recipe(resolved_.making(part.into).recipe).ingredients[part.ingredient];
      add(part.into, of_target(kitchen_, what, eaten_form(line), part.amount), 1);
    }
  }
}

void Reckoner::dishes() {
  const auto& meals = kitchen_.plan->meals;
  for (std::size_t m = 0; m < meals.size(); ++m) {
    auto& row = out_.dishes.emplace_back();
    for (std::size_t d = 0; d < meals[m].dishes.size(); ++d) {
      Rational eaten = 0;
      for (const kitchen::Person* one : resolve::eaters(kitchen_, {m, d})) {
        eaten += kitchen::portion(*one, meals[m], meals[m].dishes[d]);
      }
      // Where the plan says for how many, and who eats it, they share that among them.
      const Rational servings = eaten > 0 ? eaten : resolved_.servings[m][d];
      row.push_back({{}, to_double(servings)});
    }
  }
  for (const resolve::Use& use : resolved_.uses) {
    add_to_dishes(use);
  }
  by_products();
  for (const resolve::Making& making : resolved_.makings) {
    if (making.on_hand) {
      const Sum once = of_making(kitchen_, kitchen_.recipe(making.recipe));
      for (const resolve::DishShare& share : resolved_.shares_of(making.id)) {
        out_.dishes[share.dish.meal][share.dish.dish].whole.add(
            once, to_double(Rational(making.times * share.share)));
      }
    }
  }
}

void Reckoner::person(const kitchen::Person& person, bool guest) {
  Eater out;
  out.name = person.name;
  out.guest = guest;
  out.heads = person.heads;
  out.portion = to_double(person.portion) / person.heads;
  const auto& meals = kitchen_.plan->meals;
  for (std::size_t m = 0; m < meals.size(); ++m) {
    bool sits = false;
    for (std::size_t d = 0; d < meals[m].dishes.size(); ++d) {
      const auto at = resolve::eaters(kitchen_, {m, d});
      const DishSum& dish = out_.dishes[m][d];
      if (std::find(at.begin(), at.end(), &person) == at.end() || dish.servings <= 0) {
        continue;
      }
      if (out.days.empty() || out.days.back().date != meals[m].date) {
        out.days.push_back({meals[m].date, 0, {}});
      }
      Day& day = out.days.back();
      day.meals += sits ? 0 : 1;
      sits = true;
      const double share =
          to_double(kitchen::portion(person, meals[m], meals[m].dishes[d])) / dish.servings;
      day.eaten.add(dish.whole, share / person.heads);
    }
  }
  if (person.months) {
    for (const Nutrient nutrient : foods::all_nutrients()) {
      out.intakes[static_cast<std::size_t>(nutrient)] =
          intake(nutrient, *person.months, person.sex, person.stage);
    }
    out.shares = energy_shares(*person.months);
  }
  out_.people.push_back(std::move(out));
}

void Reckoner::without_amount() {
  std::set<std::string> names;
  for (const resolve::Making& making : resolved_.makings) {
    for (const kitchen::Ingredient& line : kitchen_.recipe(making.recipe).ingredients) {
      if (line.food() != nullptr && !line.amount && !kitchen_.food(*line.food()).from_tap) {
        names.insert(kitchen_.food(*line.food()).name);
      }
    }
  }
  out_.without_amount.assign(names.begin(), names.end());
}

Nutrition Reckoner::run() {
  dishes();
  for (const kitchen::Person& one : kitchen_.household.people) {
    person(one, false);
  }
  for (const kitchen::Guest& guest : kitchen_.plan->guests) {
    person(guest.person, true);
  }
  without_amount();
  out_.without_figures.assign(without_figures_.begin(), without_figures_.end());
  return std::move(out_);
}

} // namespace

const std::string_view caution =
    "Added up from published tables of foods as they are bought; of what cooking destroys, only "
    "some vitamin C and folate is deducted. This is not medical advice: the ranges are for healthy "
    "people, and medical diets belong in the hands of a professional.";

void Sum::add(const foods::Nutrients* per_100_g, double amount) {
  grams += amount;
  for (std::size_t i = 0; per_100_g != nullptr && i < of.size(); ++i) {
    if (const auto& figure = per_100_g->of.at(i)) {
      of.at(i) += *figure * amount / hundred_grams;
      known.at(i) += amount;
    }
  }
}

void Sum::add(const Sum& other, double times) {
  grams += other.grams * times;
  for (std::size_t i = 0; i < of.size(); ++i) {
    of.at(i) += other.of.at(i) * times;
    known.at(i) += other.known.at(i) * times;
  }
}

Sum Sum::at_most(const Sum& other) const {
  Sum out = *this;
  out.grams = std::min(grams, other.grams);
  for (std::size_t i = 0; i < of.size(); ++i) {
    out.of.at(i) = std::min(of.at(i), other.of.at(i));
    out.known.at(i) = std::min(known.at(i), other.known.at(i));
  }
  return out;
}

double Sum::coverage(Nutrient nutrient) const {
  return grams > 0 ? known[static_cast<std::size_t>(nutrient)] / grams : 0;
}

Form eaten_form(const kitchen::Ingredient& line) {
  if (line.drained_can) {
    return Form::drained;
  }
  return line.amount ? line.amount->form : Form::plain;
}

Form eaten_form(const Kitchen& kitchen, const Resolved& resolved, const resolve::Use& use) {
  if (const auto* making = std::get_if<resolve::OfMaking>(&use.reason)) {
    const auto& recipe = kitchen.recipe(resolved.making(making->making).recipe);
    return eaten_form(recipe.ingredients[making->ingredient]);
  }
  return use.form;
}

std::optional<double> eaten_grams(const Food& food, Form form, const Rational& as_purchased) {
  if (foods::basis(food) != measure::Dimension::mass) {
    return std::nullopt;
  }
  const auto share = foods::eaten_share(food, is_part(form) ? form : Form::plain);
  return share ? std::optional(to_double(as_purchased * *share)) : std::nullopt;
}

Nutrition nutrition(const Kitchen& kitchen, const Resolved& resolved) {
  return Reckoner(kitchen, resolved).run();
}

Sum of_serving(const Kitchen& kitchen, const kitchen::Recipe& recipe) {
  Sum out;
  out.add(of_making(kitchen, recipe), 1 / to_double(recipe.serves));
  return out;
}

} // namespace manciple::nutrition
