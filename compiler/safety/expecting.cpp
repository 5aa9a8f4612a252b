#include "safety/expecting.hpp"

#include "foods/diets.hpp"
#include "resolve/eaters.hpp"
#include "safety/errors.hpp"

#include <fmt/format.h>

#include <array>
#include <set>
#include <tuple>

namespace manciple::safety {
namespace {

using foods::Food;

struct Advice {
  bool (*holds)(const Food& food);
  bool while_nursing;
  std::string_view danger;  // "may carry listeria"
  std::string_view instead; // what to do
  std::string_view source;
};

template <foods::Caution caution>
bool is_of(const Food& food) {
  return foods::is(food, caution);
}
template <foods::Class what>
bool may_be(const Food& food) {
  return foods::may_be(food, what);
}

constexpr std::array<Advice, 7> advices{{
    {is_of<foods::Caution::high_mercury>, true, "is high in mercury",
     "choose a fish that is low in mercury, such as salmon, cod or trout",
     "FDA and EPA, Advice about Eating Fish"},
    {[](const Food& food) {
       return foods::holds(food, foods::DietClass::alcohol) == foods::Holds::yes;
     },
     true, "contains alcohol, some of which remains after cooking",
     "leave it out, or use stock or juice instead",
     "CDC, Alcohol Use During Pregnancy: no amount is known to be safe"},
    {is_of<foods::Caution::high_vitamin_a>, false,
     "is very high in vitamin A, which can harm a child before it is born", "leave it out",
     "Institute of Medicine, Dietary Reference Intakes: upper level of vitamin A"},
    {may_be<foods::Class::cold_cut>, false, "may carry listeria",
     "heat it until it steams, to 165 F, and eat it hot",
     "FDA, Food Safety for Moms-to-Be; CDC, Listeria"},
    {is_of<foods::Caution::soft_cheese>, false,
     "may carry listeria, above all where its milk was raw",
     "read the label: eat it only if the milk was pasteurised, and queso fresco only heated to 165 "
     "F",
     "FDA, Food Safety for Moms-to-Be; CDC, Listeria"},
    {may_be<foods::Class::sprout>, false, "may carry salmonella, E. coli and listeria",
     "cook them until they are hot all the way through", "FDA, Food Safety for Moms-to-Be"},
    {is_of<foods::Caution::ready_salad>, false, "may carry listeria where a shop has made it",
     "make it at home, and eat it soon", "CDC, Listeria"},
}};

} // namespace

void check_expecting(const kitchen::Kitchen& kitchen, const Dishes& dishes,
                     text::Diagnostics& diagnostics) {
  const auto& meals = kitchen.plan->meals;
  std::set<std::tuple<resolve::DishRef, std::size_t, std::string_view>> said;
  for (const auto& [dish, inside] : dishes) {
    const kitchen::Meal& meal = meals[dish.meal];
    for (const kitchen::Person* person : resolve::eaters(kitchen, dish)) {
      const bool pregnant = person->stage == kitchen::Stage::pregnant;
      if (!pregnant && person->stage != kitchen::Stage::nursing) {
        continue;
      }
      for (const foods::FoodId id : inside.foods) {
        const Food& food = kitchen.food(id);
        for (std::size_t a = 0; a < advices.size(); ++a) {
          const Advice& advice = advices.at(a);
          if ((pregnant || advice.while_nursing) && advice.holds(food) &&
              said.emplace(dish, a, person->name).second) {
            diagnostics
                .warning(errors::for_expecting, meal.dishes[dish.dish].at,
                         fmt::format("{} is {}, and {} {}: it is in what they eat for {} on {}",
                                     person->name, pregnant ? "pregnant" : "nursing", food.name,
                                     advice.danger, meal.slot, text::print_day(meal.date)),
                         std::string(advice.instead))
                .note(std::nullopt, std::string(advice.source));
          }
        }
      }
    }
  }
}

} // namespace manciple::safety
