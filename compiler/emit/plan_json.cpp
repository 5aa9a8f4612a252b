#include "emit/plan_json.hpp"

#include "emit/words.hpp"
#include "foods/convert.hpp"
#include "kitchen/table.hpp"
#include "prep/by_products.hpp"
#include "resolve/by_products.hpp"
#include "resolve/eaters.hpp"

namespace manciple::emit::json {
namespace {

std::string_view kind_of(kitchen::Dish::Kind kind) {
  switch (kind) {
  case kitchen::Dish::Kind::cooked:
    return "cooked";
  case kitchen::Dish::Kind::leftovers:
    return "leftovers";
  case kitchen::Dish::Kind::plain:
    return "plain";
  }
  return {};
}

// Who eats a dish, and how much of an adult's serving.
Json eaters(const Compiled& compiled, const resolve::DishRef& ref) {
  Json out = Json::array();
  const kitchen::Meal& meal = compiled.plan().meals[ref.meal];
  for (const kitchen::Person* one : resolve::eaters(compiled.kitchen, ref)) {
    out.push_back({{"name", one->name},
                   {"portion", number(kitchen::portion(*one, meal, meal.dishes[ref.dish]))}});
  }
  return out;
}

Json meals(const Compiled& compiled) {
  Json out = Json::array();
  const auto& plan = compiled.plan();
  for (std::size_t m = 0; m < plan.meals.size(); ++m) {
    Json dishes = Json::array();
    for (std::size_t d = 0; d < plan.meals[m].dishes.size(); ++d) {
      const kitchen::Dish& dish = plan.meals[m].dishes[d];
      dishes.push_back({{"kind", kind_of(dish.kind)},
                        {"name", dish_name(compiled, dish)},
                        {"servings", number(compiled.resolved.servings[m][d])},
                        {"cost", number(compiled.worth.dishes[m][d])},
                        {"worth", number(compiled.worth.replaced.dishes[m][d])},
                        {"worth_lacks", names(compiled, compiled.worth.unknown_in[m][d])},
                        {"eaters", eaters(compiled, {m, d})}});
    }
    out.push_back(
        {{"date", date(plan.meals[m].date)}, {"meal", plan.meals[m].slot}, {"dishes", dishes}});
  }
  return out;
}

Json makings(const Compiled& compiled) {
  Json out = Json::array();
  for (const resolve::Making& making : compiled.resolved.makings) {
    const kitchen::Recipe& recipe = compiled.kitchen.recipe(making.recipe);
    Json consumers = Json::array();
    for (const resolve::Consumer& consumer : making.consumers) {
      Json one{{"times", number(consumer.times)},
               {"date", date(consumer.date)},
               {"leftovers", consumer.leftovers},
               {"frozen", consumer.from_freezer}};
      if (const auto* dish = std::get_if<resolve::DishRef>(&consumer.who)) {
        one["meal"] = dish->meal;
        one["dish"] = dish->dish;
      } else {
        one["making"] = static_cast<std::size_t>(std::get<resolve::MakingId>(consumer.who));
      }
      consumers.push_back(std::move(one));
    }
    Json session = nullptr;
    if (making.session) {
      session = *making.session;
    }
    out.push_back({{"recipe", recipe.name},
                   {"file", recipe.slug},
                   {"serves", number(recipe.serves)},
                   {"times", number(making.times)},
                   {"needed", number(making.needed)},
                   {"date", date(making.date)},
                   {"session", std::move(session)},
                   {"keeps_unfrozen_days", maybe(recipe.keeps_unfrozen())},
                   {"keeps_freezer_days", maybe(recipe.keeps_freezer)},
                   {"keeps_in_pantry", recipe.keeps_pantry.has_value()},
                   {"good_until", maybe(making.good_until)},
                   {"for", consumers}});
    if (making.on_hand) {
      out.back()["made_before"] = true;
    }
  }
  return out;
}

// What makings leave over, and what takes it.
Json by_products(const Compiled& compiled) {
  Json out = Json::array();
  for (const resolve::ByProduct& one : compiled.resolved.by_products) {
    const kitchen::GivesLine& given = resolve::given_as(compiled.kitchen, compiled.resolved, one);
    Json parts = Json::array();
    for (const resolve::ByProduct::Part& part : one.parts) {
      parts.push_back({{"making", static_cast<std::size_t>(part.into)},
                       {"ingredient", part.ingredient},
                       {"amount", number(part.amount)},
                       {"covers", number(part.covers)},
                       {"date", date(part.date)},
                       {"frozen", part.from_freezer}});
    }
    out.push_back({{"making", static_cast<std::size_t>(one.of)},
                   {"name", prep::name_given(compiled.kitchen, compiled.resolved, one)},
                   {"is_recipe", given.what.recipe() != nullptr},
                   {"keeps_in_pantry", given.cool_place == foods::Place::pantry},
                   {"amount", number(one.amount)},
                   {"date", date(one.date)},
                   {"good_until", maybe(one.good_until)},
                   {"frozen_until", maybe(one.frozen_until)},
                   {"left", number(one.left())},
                   {"for", std::move(parts)}});
  }
  return out;
}

Json uses(const Compiled& compiled) {
  Json out = Json::array();
  for (const resolve::Use& use : compiled.resolved.uses) {
    Json one{{"food", compiled.kitchen.food(use.food).name},
             {"amount", number(use.amount)},
             {"date", date(use.date)},
             {"clock", use.clock},
             {"fresh", use.fresh},
             {"slack", use.slack},
             {"give", number(use.give)},
             {"cut_in", use.cut_in ? Json(*use.cut_in) : Json(nullptr)},
             {"containers", maybe(use.containers)}};
    if (const auto* making = std::get_if<resolve::OfMaking>(&use.reason)) {
      one["making"] = static_cast<std::size_t>(making->making);
      one["line"] = compiled.kitchen.recipe(compiled.resolved.making(making->making).recipe)
                        .ingredients[making->ingredient]
                        .text;
    } else if (const auto* dish = std::get_if<resolve::OfDish>(&use.reason)) {
      one["meal"] = dish->dish.meal;
      one["dish"] = dish->dish.dish;
    } else if (const auto* staple = std::get_if<resolve::OfStaple>(&use.reason)) {
      one["staple"] = staple->staple;
    } else {
      one["extra"] = std::get<resolve::OfExtra>(use.reason).extra;
    }
    out.push_back(std::move(one));
  }
  return out;
}

// Optional ingredients that are not bought.
Json left_out(const Compiled& compiled) {
  Json out = Json::array();
  for (const resolve::Use& use : compiled.resolved.left_out) {
    out.push_back({{"food", compiled.kitchen.food(use.food).name},
                   {"amount", number(use.amount)},
                   {"date", date(use.date)},
                   {"for", purpose_of(compiled, use)}});
  }
  return out;
}

} // namespace

void add_plan(Json& out, const Compiled& compiled) {
  out["meals"] = meals(compiled);
  out["makings"] = makings(compiled);
  out["by_products"] = by_products(compiled);
  out["uses"] = uses(compiled);
  out["optional"] = left_out(compiled);
}

} // namespace manciple::emit::json
