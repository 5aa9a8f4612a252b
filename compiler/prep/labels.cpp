#include "prep/labels.hpp"

#include "foods/counted.hpp"
#include "foods/spoken.hpp"
#include "measure/print.hpp"
#include "prep/by_products.hpp"
#include "prep/purpose.hpp"
#include "prep/reheat.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace manciple::prep {

std::string amount_made(const kitchen::Recipe& recipe, const Rational& times, bool as_dish) {
  if (as_dish || recipe.makes.empty()) {
    // What is left of a serving in rounding is eaten with the rest.
    const Rational halves(measure::round(times * recipe.serves * 2));
    const Rational servings = std::max(Rational(1, 2), Rational(halves / 2));
    return fmt::format("{} {}", measure::print_exact(servings),
                       servings > 1 ? "servings" : "serving");
  }
  const kitchen::Makes& makes = recipe.makes.front();
  const Rational number = times * makes.number;
  if (makes.measure.piece.empty()) {
    return measure::print_for_kitchen({number, makes.measure.unit}, recipe.system);
  }
  return fmt::format("{} {}", measure::print_decimal(number, 1, recipe.system.point),
                     number > 1 ? text::plural(makes.measure.piece) : makes.measure.piece);
}

std::vector<BoxLabel> labels(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                             const std::vector<Freezing>& freezing) {
  std::vector<BoxLabel> out;
  for (const resolve::Making& making : resolved.makings) {
    const kitchen::Recipe& recipe = kitchen.recipe(making.recipe);
    for (const resolve::Consumer& consumer : making.consumers) {
      if (consumer.date == making.date || making.on_hand) {
        continue; // eaten at once, or labelled when it was made
      }
      const Date good = consumer.from_freezer
                            ? making.date + std::chrono::days(recipe.keeps_freezer.value_or(0))
                            : making.good_until.value_or(making.date);
      const bool dish = std::holds_alternative<resolve::DishRef>(consumer.who);
      const std::string into =
          dish ? kitchen.plan->meals[std::get<resolve::DishRef>(consumer.who).meal].slot
               : kitchen.recipe(resolved.making(std::get<MakingId>(consumer.who)).recipe).name;
      out.push_back({recipe.name, fmt::format("{} on {}", into, text::print_day(consumer.date)),
                     amount_made(recipe, consumer.times, dish), making.date, good,
                     consumer.from_freezer ? foods::Place::freezer : recipe.cool_place(),
                     reheat_words(recipe, consumer.from_freezer), making.id});
    }
  }
  for (const resolve::ByProduct& one : resolved.by_products) {
    const resolve::Making& of = resolved.making(one.of);
    for (const resolve::ByProduct::Part& part : one.parts) {
      if (part.date == one.date) {
        continue;
      }
      const foods::Place place = place_of(kitchen, resolved, one, part);
      const kitchen::Recipe& into = kitchen.recipe(resolved.making(part.into).recipe);
      out.push_back({fmt::format("{}, of {}", name_given(kitchen, resolved, one),
                                 kitchen.recipe(of.recipe).name),
                     fmt::format("{} on {}", into.name, text::print_day(part.date)),
                     amount_given(kitchen, resolved, one, part.amount), one.date,
                     part.from_freezer ? *one.frozen_until : one.good_until.value_or(one.date),
                     place, "", of.id});
    }
  }
  for (const Freezing& one : freezing) {
    const foods::Food& food = kitchen.food(one.food);
    const bool juice = food.keeps.frozen_juice.has_value();
    const auto& keeps = food.keeps.in(foods::Place::freezer);
    for (const Bag& bag : one.bags) {
      const resolve::Use* use = bag.use ? &resolved.uses[*bag.use] : nullptr;
      const std::string of = foods::amount_seen(food, bag.amount, kitchen.household.system);
      out.push_back({juice ? food.name + " juice and zest" : food.name,
                     use == nullptr || resolve::is_for_freezer(kitchen, *use)
                         ? "nothing planned yet"
                         : fmt::format("{} on {}", purpose(kitchen, resolved, *use).value_or("use"),
                                       text::print_day(use->date)),
                     juice ? "of " + of : of, one.bought.value_or(bag.frozen_on),
                     bag.frozen_on + std::chrono::days(keeps ? keeps->value : 0),
                     foods::Place::freezer, food.thaw, std::nullopt});
    }
  }
  std::stable_sort(out.begin(), out.end(), [](const BoxLabel& a, const BoxLabel& b) {
    return std::tuple(a.made, std::string_view(a.name)) <
           std::tuple(b.made, std::string_view(b.name));
  });
  return out;
}

} // namespace manciple::prep
