#include "emit/nutrition_json.hpp"

#include "emit/nutrition_words.hpp"

#include <cmath>

namespace manciple::emit {
namespace {

using Json = nlohmann::ordered_json;
using nutrition::Nutrient;

// To a hundredth: the tables are no finer.
Json number(double value) {
  constexpr double hundred = 100;
  return std::round(value * hundred) / hundred;
}

Json amounts(const nutrition::Sum& sum) {
  Json out = Json::object();
  for (const Nutrient nutrient : foods::all_nutrients()) {
    out[foods::facts(nutrient).name] = number(sum[nutrient]);
  }
  return out;
}

Json coverage(const nutrition::Sum& sum) {
  Json out = Json::object();
  for (const Nutrient nutrient : foods::all_nutrients()) {
    out[foods::facts(nutrient).name] = number(sum.coverage(nutrient));
  }
  return out;
}

Json ranges(const nutrition::Eater& eater) {
  Json out = Json::object();
  for (const Nutrient nutrient : foods::all_nutrients()) {
    if (const auto& range = eater.intakes[static_cast<std::size_t>(nutrient)]) {
      out[foods::facts(nutrient).name] = {
          {"least", range->least},
          {"most", range->most},
          {"adequate_intake", range->adequate},
          {"upper", range->upper ? Json(*range->upper) : Json(nullptr)}};
    }
  }
  return out;
}

Json person(const nutrition::Eater& eater) {
  Json days = Json::array();
  for (const nutrition::Day& day : eater.days) {
    days.push_back({{"date", text::print_date(day.date)},
                    {"meals", day.meals},
                    {"grams", number(day.eaten.grams)},
                    {"amounts", amounts(day.eaten)}});
  }
  return {{"name", eater.name},
          {"guest", eater.guest},
          {"heads", eater.heads},
          {"portion", number(eater.portion)},
          {"ranges", ranges(eater)},
          {"coverage", coverage(mean_day(eater))},
          {"days", days}};
}

Json aim(const Compiled& compiled, const nutrition::AimMet& met) {
  Json mend = nullptr;
  if (met.mend) {
    mend = {{"instead", met.mend->instead},
            {"planned", met.mend->planned},
            {"labels", met.mend->labels},
            {"meal", met.mend->of.meal},
            {"dish", met.mend->of.dish},
            {"value", number(met.mend->value)},
            {"cost", met.mend->cents ? number(*met.mend->cents) : Json(nullptr)}};
  }
  const bool missed = met.missed > 0;
  return {{"aim", compiled.plan().aims[met.aim].text},
          {"asked", met.asked},
          {"missed", met.missed},
          {"not_known", met.not_known},
          {"mean", number(met.mean)},
          {"person", missed ? Json(met.person) : Json(nullptr)},
          {"date", missed ? Json(text::print_date(met.date)) : Json(nullptr)},
          {"value", missed ? number(met.worst) : Json(nullptr)},
          {"wanted", missed ? number(met.wanted) : Json(nullptr)},
          {"mend", mend}};
}

} // namespace

Json nutrition_json(const Compiled& compiled) {
  Json units = Json::object();
  for (const Nutrient nutrient : foods::all_nutrients()) {
    units[foods::facts(nutrient).name] = foods::facts(nutrient).unit;
  }
  Json people = Json::array();
  for (const nutrition::Eater& eater : compiled.nutrition.people) {
    people.push_back(person(eater));
  }
  Json servings = Json::array();
  for (const kitchen::Recipe* recipe : recipes_in_menu(compiled)) {
    const nutrition::Sum sum = nutrition::of_serving(compiled.kitchen, *recipe);
    servings.push_back({{"recipe", recipe->name},
                        {"grams", number(sum.grams)},
                        {"coverage", number(sum.coverage(Nutrient::energy))},
                        {"amounts", amounts(sum)}});
  }
  Json aims = Json::array();
  for (const nutrition::AimMet& met : compiled.aims) {
    aims.push_back(aim(compiled, met));
  }
  return {{"units", units},
          {"people", people},
          {"servings", servings},
          {"aims", aims},
          {"without_figures", compiled.nutrition.without_figures},
          {"without_amount", compiled.nutrition.without_amount},
          {"ranges_are_of", ranges_are_of},
          {"caution", nutrition::caution}};
}

} // namespace manciple::emit
