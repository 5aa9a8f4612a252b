// The whole result, for other programs. Amounts are numbers of the food's basis (grams, millilitres
// or pieces) to six places; money is in cents, or what the currency has instead.
#include "emit/currency_json.hpp"
#include "emit/emit.hpp"
#include "emit/nutrition_json.hpp"
#include "emit/past_json.hpp"
#include "emit/result_form.hpp"
#include "emit/words.hpp"
#include "foods/convert.hpp"
#include "kitchen/table.hpp"
#include "measure/print.hpp"
#include "prep/by_products.hpp"
#include "purchase/lives.hpp"
#include "resolve/by_products.hpp"
#include "resolve/eaters.hpp"

#include <nlohmann/json.hpp>

#include <cmath>
#include <numeric>
#include <set>

namespace manciple::emit {
namespace {

using Json = nlohmann::ordered_json;
using measure::Rational;

// Six places; written by the shortest decimal that reads back to the same double.
Json number(const Rational& value) {
  return std::stod(measure::print_decimal(value, 6));
}

Json date(text::Date d) {
  return text::print_date(d);
}
Json maybe(const std::optional<text::Date>& d) {
  return d ? Json(text::print_date(*d)) : Json(nullptr);
}
Json maybe(const std::optional<int>& d) {
  return d ? Json(*d) : Json(nullptr);
}

std::string_view basis_word(const foods::Food& food) {
  switch (foods::basis(food)) {
  case measure::Dimension::mass:
    return "g";
  case measure::Dimension::volume:
    return "ml";
  case measure::Dimension::count:
    return "each";
  }
  return {};
}

Json maybe(const std::optional<Rational>& value) {
  return value ? number(*value) : Json(nullptr);
}

Json names(const Compiled& compiled, const std::set<foods::FoodId>& of) {
  std::set<std::string> out;
  for (const foods::FoodId food : of) {
    out.insert(compiled.kitchen.food(food).name);
  }
  return out;
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
      static constexpr std::array<std::string_view, 3> kinds{"cooked", "leftovers", "plain"};
      dishes.push_back({{"kind", kinds.at(static_cast<std::size_t>(dish.kind))},
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
    const kitchen::ByProduct& given = resolve::given_as(compiled.kitchen, compiled.resolved, one);
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
             {"containers", use.containers ? Json(number(*use.containers)) : Json(nullptr)}};
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

Json stock(const Compiled& compiled) {
  Json out = Json::array();
  const auto& lots = compiled.kitchen.on_hand.lots;
  for (std::size_t l = 0; l < lots.size(); ++l) {
    const kitchen::StockLot& lot = lots[l];
    out.push_back({{"food", compiled.kitchen.food(*lot.what.food()).name},
                   {"amount", number(lot.amount)},
                   {"place", foods::name(lot.place)},
                   {"use_by", maybe(lot.use_by)},
                   {"worth", maybe(compiled.worth.lots[l])},
                   {"kept", 0},
                   {"wasted", 0}});
  }
  for (const purchase::StockRest& rest : compiled.shopping.stock_left) {
    out[rest.lot]["kept"] = number(rest.kept);
    out[rest.lot]["wasted"] = number(rest.wasted);
  }
  return out;
}

Json purchases(const Compiled& compiled) {
  Json out = Json::array();
  const auto& lines = compiled.shopping.lines;
  for (std::size_t l = 0; l < lines.size(); ++l) {
    const purchase::Line& line = lines[l];
    const kitchen::Offer& offer = offer_of(compiled, line);
    out.push_back({{"visit", line.visit},
                   {"food", food_of(compiled, line).name},
                   {"count", count_of(compiled, line)},
                   {"name", name_on_list(compiled, line)},
                   {"notes", notes_of(compiled, l)},
                   {"pack", offer.pack},
                   {"by_weight", offer.by_weight},
                   {"pack_amount", number(offer.size)},
                   {"packs", line.packs},
                   {"price", offer.price ? Json(*offer.price) : Json(nullptr)},
                   {"steps_per_price", number(offer.steps_per_price)},
                   {"cost", line.cost ? Json(*line.cost) : Json(nullptr)},
                   {"worth", maybe(compiled.worth.lines[l])},
                   {"amount", number(line.amount)},
                   {"freeze", number(line.to_freeze)},
                   {"kept", number(line.kept)},
                   {"wasted", number(line.wasted)}});
  }
  return out;
}

Json visits(const Compiled& compiled) {
  Json out = Json::array();
  for (const purchase::StopMade& visit : compiled.shopping.visits) {
    out.push_back({{"date", date(visit.date)},
                   {"home", visit.home},
                   {"shop", compiled.kitchen.shop(visit.shop).name},
                   {"goods", visit.goods},
                   {"tax", visit.tax},
                   {"off", visit.off},
                   {"credit", visit.credit},
                   {"paid", visit.paid()},
                   {"cash_back", visit.cash_back},
                   {"stop_cost", visit.stop_cost}});
  }
  return out;
}

// What the solver was told of each food that is bought: enough to check its answer.
Json keeping(const Compiled& compiled) {
  Json out = Json::array();
  const auto& lowered = compiled.shopping.lowered;
  const int days = lowered.model.last_day + 1;
  for (const foods::FoodId first : lowered.foods) {
    for (const foods::FoodId id : compiled.kitchen.household.instead_of(first)) {
      const foods::Food& food = compiled.kitchen.food(id);
      const auto keeping = purchase::keeping_of(food, days);
      out.push_back({{"food", food.name},
                     {"basis", basis_word(food)},
                     {"keeps_days", keeping.life.cool},
                     {"keeps_frozen_days",
                      maybe(keeping.life.frozen ? keeping.life.frozen : keeping.life.refrozen)},
                     {"keeps_opened_days", maybe(keeping.life.opened)},
                     {"stands_for", compiled.kitchen.food(first).name}});
    }
  }
  return out;
}

void add_served(Json& out, const purchase::Served& served) {
  out["use"] = served.use;
  out["amount"] = number(served.amount);
  out["covers"] = number(served.covers);
  out["frozen"] = served.frozen;
  out["frozen_on"] = served.frozen ? Json(date(served.frozen_on)) : Json(nullptr);
  out["opened_on"] = maybe(served.opened_on);
}

// What the list minimises, term by term, in the currency's unit.
Json account(const purchase::Account& account, kitchen::Cents per_unit) {
  const auto money = [&](const Rational& cents) { return number(cents / per_unit); };
  return {{"prices", money(account.prices)},       {"tax", money(account.tax)},
          {"cash_back", money(account.cash_back)}, {"preference", money(account.preference)},
          {"unpriced", money(account.unpriced)},   {"reductions", money(account.reductions)},
          {"credit", money(account.credit)},       {"stops", money(account.stops)},
          {"wasted", money(account.wasted)},       {"kept", money(account.kept)},
          {"lacking", money(account.lacking)},     {"missing", money(account.missing)},
          {"handling", money(account.handling)},   {"total", money(account.total)}};
}

// Money by what it is for, in cents, and what has no known price.
Json worth(const Compiled& compiled) {
  const auto sum = [](const std::vector<Rational>& list) {
    return std::accumulate(list.begin(), list.end(), Rational(0));
  };
  const auto parts = [&](const purchase::Parts& of) {
    Rational meals = 0;
    for (const auto& meal : of.dishes) {
      meals += sum(meal);
    }
    return Json{{"meals", number(meals)},          {"staples", number(sum(of.staples))},
                {"extra", number(sum(of.extras))}, {"left_over", number(of.left_over)},
                {"kept", number(of.kept)},         {"wasted", number(of.wasted)}};
  };
  return {{"paid", parts(compiled.worth)},
          {"worth", parts(compiled.worth.replaced)},
          {"without_price", names(compiled, compiled.worth.unknown)}};
}

// What is lacking within what the dishes can do without, or missing beyond that.
Json shortfalls(const Compiled& compiled, Rational purchase::Shortfall::*part) {
  Json out = Json::array();
  for (const purchase::Shortfall& one : compiled.shopping.shortfalls) {
    if (one.*part > 0) {
      out.push_back({{"use", one.use},
                     {"food", compiled.kitchen.food(compiled.resolved.uses[one.use].food).name},
                     {"amount", number(one.*part)}});
    }
  }
  return out;
}

std::string_view kind_of(prep::Task::Kind kind) {
  static constexpr std::array<std::string_view, 8> kinds{"weigh",   "cut",  "cook",  "portion",
                                                         "preheat", "cool", "store", "wash"};
  return kinds.at(static_cast<std::size_t>(kind));
}

Json sessions(const Compiled& compiled) {
  Json out = Json::array();
  for (const prep::SessionPlan& session : compiled.prep.sessions) {
    const kitchen::Session& window = compiled.plan().sessions[session.session];
    Json tasks = Json::array();
    for (const prep::Task& task : session.tasks) {
      tasks.push_back(
          {{"start", task.start},
           {"hands_on", task.hands_on},
           {"then", task.then},
           {"cook", task.cook ? Json(*task.cook) : Json(nullptr)},
           {"kind", kind_of(task.kind)},
           {"appliance", task.appliance},
           {"places", task.places},
           {"vessel", task.vessel},
           {"vessels", task.vessels},
           {"fahrenheit", maybe(task.fahrenheit)},
           {"by", maybe(task.by)},
           {"step", task.step ? Json(*task.step) : Json(nullptr)},
           {"what", task.what},
           {"for", task.purpose},
           {"making", task.making ? Json(static_cast<std::size_t>(*task.making)) : Json(nullptr)},
           {"after", task.after}});
    }
    out.push_back({{"session", session.session},
                   {"date", date(window.date)},
                   {"from", window.from},
                   {"until", window.until},
                   {"cooks", window.cooks},
                   {"names", window.names},
                   {"length", session.length},
                   {"bound", session.bound},
                   {"tasks", tasks}});
  }
  return out;
}

Json days(const Compiled& compiled) {
  static constexpr std::array<std::string_view, 8> kinds{"thaw",   "soak",   "marinate",  "ripen",
                                                         "freeze", "use up", "leftovers", "pack"};
  Json out = Json::array();
  for (const prep::Reminder& reminder : compiled.prep.reminders) {
    out.push_back({{"date", date(reminder.date)},
                   {"kind", kinds.at(static_cast<std::size_t>(reminder.kind))},
                   {"clock", maybe(reminder.clock)},
                   {"making", reminder.making ? Json(static_cast<std::size_t>(*reminder.making))
                                              : Json(nullptr)},
                   {"lasts", maybe(reminder.lasts)},
                   {"what", reminder.what}});
  }
  return out;
}

// Who is there to cook, outside the sessions, where household or plan say so.
Json shifts(const Compiled& compiled) {
  Json out = Json::array();
  const kitchen::Plan& plan = compiled.plan();
  std::set<text::Date> days;
  for (text::Date day = plan.from; day <= plan.until; day += std::chrono::days(1)) {
    days.insert(day);
  }
  for (const prep::Cooking& cook : compiled.prep.cooking) {
    days.insert(cook.date);
  }
  for (const text::Date day : days) {
    for (const kitchen::Shift& shift : kitchen::shifts(compiled.kitchen, day)) {
      Json cooks = Json::array();
      for (const kitchen::Cook& cook : shift.cooks) {
        cooks.push_back({{"name", cook.name}, {"from", cook.from}, {"until", cook.until}});
      }
      if (!cooks.empty()) {
        out.push_back({{"date", date(day)},
                       {"from", shift.from},
                       {"until", shift.until},
                       {"cooks", std::move(cooks)}});
      }
    }
  }
  return out;
}

Json cooking(const Compiled& compiled) {
  Json out = Json::array();
  for (const prep::Cooking& cook : compiled.prep.cooking) {
    Json steps = Json::array();
    for (const prep::Cooking::Step& step : cook.steps) {
      steps.push_back({{"step", step.step},
                       {"what", step.what},
                       {"start", step.start},
                       {"hands_on", step.hands_on},
                       {"then", step.then},
                       {"appliance", step.appliance},
                       {"places", step.places},
                       {"vessel", step.vessel},
                       {"vessels", step.vessels},
                       {"who", step.who},
                       {"fahrenheit", maybe(step.fahrenheit)},
                       {"preheat", step.preheat},
                       {"wash", step.wash}});
    }
    out.push_back({{"making", static_cast<std::size_t>(cook.making)},
                   {"date", date(cook.date)},
                   {"start", cook.start},
                   {"done", cook.done},
                   {"ready", cook.ready},
                   {"ahead", cook.ahead},
                   {"stands_from", maybe(cook.stands_from)},
                   {"first_for", cook.first_for},
                   {"cooks", cook.cooks},
                   {"steps", std::move(steps)}});
  }
  return out;
}

} // namespace

std::string result_json(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  const auto& shopping = compiled.shopping;
  Json appliances = Json::object();
  for (const kitchen::Appliance& appliance : compiled.kitchen.household.appliances) {
    appliances[appliance.name] = appliance.count;
  }
  Json from_stock = Json::array();
  for (const purchase::StockUse& used : shopping.from_stock) {
    Json one{{"lot", used.lot}};
    add_served(one, used);
    from_stock.push_back(std::move(one));
  }
  Json supplies = Json::array();
  for (const purchase::Supply& supply : shopping.supplies) {
    Json one{{"purchase", supply.line}};
    add_served(one, supply);
    supplies.push_back(std::move(one));
  }
  Json labels = Json::array();
  for (const resolve::LabelCheck& label : compiled.resolved.labels) {
    labels.push_back({{"food", compiled.kitchen.food(label.food).name},
                      {"what", label.what},
                      {"known", label.known},
                      {"person", label.person}});
  }
  const auto budget = plan.budget ? plan.budget : compiled.kitchen.household.budget;
  Json out{{"form", result_form},
           {"plan", plan.name},
           {"from", date(plan.from)},
           {"until", date(plan.until)},
           {"currency", currency_json(compiled)},
           {"paid", shopping.paid},
           {"cash_back", shopping.cash_back},
           {"stop_costs", shopping.stop_costs},
           {"budget", budget ? Json(*budget) : Json(nullptr)},
           {"proven", shopping.proven()},
           {"stopped_by_hand", shopping.stopped_by_hand()},
           {"appliances", appliances},
           {"meals", meals(compiled)},
           {"makings", makings(compiled)},
           {"by_products", by_products(compiled)},
           {"uses", uses(compiled)},
           {"optional", left_out(compiled)},
           {"on_hand", stock(compiled)},
           {"from_stock", from_stock},
           {"foods", keeping(compiled)},
           {"visits", visits(compiled)},
           {"purchases", purchases(compiled)},
           {"supplies", supplies},
           {"still_to_find", shortfalls(compiled, &purchase::Shortfall::missing)},
           {"short_but_enough", shortfalls(compiled, &purchase::Shortfall::lacking)},
           {"account", account(shopping.account, compiled.kitchen.household.currency.per_unit())},
           {"money", worth(compiled)},
           {"labels_to_read", labels},
           {"nutrition", nutrition_json(compiled)},
           {"sessions", sessions(compiled)},
           {"shifts", shifts(compiled)},
           {"cooking", cooking(compiled)},
           {"reminders", days(compiled)},
           {"caution", caution}};
  if (compiled.past) {
    out["past"] = past_json(compiled.kitchen, *compiled.past);
  }
  return out.dump(1, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace manciple::emit
