#include "safety/expecting.hpp"

#include "foods/diets.hpp"
#include "resolve/eaters.hpp"
#include "safety/errors.hpp"
#include "text/phrases.hpp"

#include <fmt/format.h>

#include <array>
#include <initializer_list>
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

bool is_called(const Food& food, std::initializer_list<std::string_view> names) {
  return text::says(food.name, names);
}

constexpr std::array<Advice, 6> advices{{
    {[](const Food& food) {
       return is_called(food, {"swordfish", "shark", "king mackerel", "marlin", "orange roughy",
                               "tilefish", "bigeye tuna"});
     },
     true, "is high in mercury",
     "choose a fish that is low in mercury, such as salmon, cod or trout",
     "FDA and EPA, Advice about Eating Fish"},
    {[](const Food& food) {
       return foods::holds(food, foods::DietClass::alcohol) == foods::Holds::yes;
     },
     true, "contains alcohol, some of which remains after cooking",
     "leave it out, or use stock or juice instead",
     "CDC, Alcohol Use During Pregnancy: no amount is known to be safe"},
    {[](const Food& food) {
       return is_called(food, {"liver", "liverwurst"});
     },
     false, "is very high in vitamin A, which can harm a child before it is born", "leave it out",
     "Institute of Medicine, Dietary Reference Intakes: upper level of vitamin A"},
    {[](const Food& food) {
       return is_called(
           food, {"deli", "hot dog", "smoked salmon", "smoked trout", "prosciutto", "salami"});
     },
     false, "may carry listeria", "heat it until it steams, to 165 F, and eat it hot",
     "FDA, Food Safety for Moms-to-Be; CDC, Listeria"},
    {[](const Food& food) {
       return is_called(food, {"brie", "camembert", "feta", "queso fresco", "blue cheese",
                               "gorgonzola", "roquefort"});
     },
     false, "may carry listeria, above all where its milk was raw",
     "read the label: eat it only if the milk was pasteurised, and queso fresco only heated to 165 "
     "F",
     "FDA, Food Safety for Moms-to-Be; CDC, Listeria"},
    {[](const Food& food) {
       return is_called(food, {"alfalfa sprout", "bean sprout", "radish sprout"});
     },
     false, "may carry salmonella, E. coli and listeria",
     "cook them until they are hot all the way through", "FDA, Food Safety for Moms-to-Be"},
}};

} // namespace

void check_expecting(const kitchen::Kitchen& kitchen, const resolve::Resolved& resolved,
                     text::Diagnostics& diagnostics) {
  const auto& meals = kitchen.plan->meals;
  std::set<std::tuple<resolve::DishRef, std::size_t, std::string_view>> said;
  for (const resolve::Use& use : resolved.uses) {
    const Food& food = kitchen.food(use.food);
    for (std::size_t a = 0; a < advices.size(); ++a) {
      const Advice& advice = advices.at(a);
      if (!advice.holds(food)) {
        continue;
      }
      for (const resolve::DishShare& share : resolved.shares_of(use)) {
        const kitchen::Meal& meal = meals[share.dish.meal];
        for (const kitchen::Person* person : resolve::eaters(kitchen, share.dish)) {
          const bool concerned = person->stage == kitchen::Stage::pregnant ||
                                 (person->stage == kitchen::Stage::nursing && advice.while_nursing);
          if (concerned && said.emplace(share.dish, a, person->name).second) {
            diagnostics
                .warning(
                    errors::for_expecting, meal.dishes[share.dish.dish].at,
                    fmt::format("{} is {}, and {} {}: it is in what they eat for {} on {}",
                                person->name,
                                person->stage == kitchen::Stage::pregnant ? "pregnant" : "nursing",
                                food.name, advice.danger, meal.slot, text::print_day(meal.date)),
                    std::string(advice.instead))
                .note(std::nullopt, std::string(advice.source));
          }
        }
      }
    }
  }
}

} // namespace manciple::safety
