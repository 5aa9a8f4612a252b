#include "emit/currency_json.hpp"
#include "emit/page/parts.hpp"
#include "emit/words.hpp"
#include "text/words.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <map>

namespace manciple::emit::page {
namespace {

using Json = nlohmann::ordered_json;

// What waits for food, each said once and then named by its place: a month has few meals and many
// lines.
class Meals {
public:
  explicit Meals(const Compiled& compiled) : compiled_(compiled) {}

  /// Dishes and other uses, the first few, the first one first; then how many more, as a negative
  /// number.
  Json waiting(const std::vector<std::size_t>& uses) {
    constexpr std::size_t shown = 4;
    const auto& plan = compiled_.plan();
    std::vector<std::string> all;
    for (const resolve::DishRef& ref : purchase::dishes_of(compiled_.resolved, uses)) {
      const kitchen::Meal& meal = plan.meals[ref.meal];
      all.push_back(fmt::format("{} {}: {}", text::print_day(meal.date), meal.slot,
                                dish_name(compiled_, meal.dishes[ref.dish])));
    }
    for (const std::size_t u : uses) {
      const resolve::Use& use = compiled_.resolved.uses[u];
      if (std::holds_alternative<resolve::OfStaple>(use.reason) ||
          std::holds_alternative<resolve::OfExtra>(use.reason)) {
        all.push_back(fmt::format("{}: {}", text::print_day(use.date), purpose_of(compiled_, use)));
      }
    }
    Json out = Json::array();
    for (std::size_t i = 0; i < all.size() && i < shown; ++i) {
      const auto [found, fresh] = places_.emplace(all[i], places_.size());
      if (fresh) {
        said_.push_back(all[i]);
      }
      out.push_back(found->second);
    }
    if (all.size() > shown) {
      out.push_back(-static_cast<int>(all.size() - shown));
    }
    return out;
  }

  [[nodiscard]] const Json& said() const { return said_; }

private:
  const Compiled& compiled_;
  std::map<std::string, std::size_t> places_;
  Json said_ = Json::array();
};

// Parts in a million: whole numbers, so that the script's sums are those of a till.
std::int64_t per_million(const measure::Rational& rate) {
  return measure::to_int64(measure::round(rate * 1'000'000));
}

Json stops(const Compiled& compiled) {
  Json out = Json::array();
  for (std::size_t v = 0; v < compiled.shopping.visits.size(); ++v) {
    const purchase::StopMade& visit = compiled.shopping.visits[v];
    const kitchen::Shop& shop = compiled.kitchen.shop(visit.shop);
    Json walk = Json::array();
    for (const foods::Department department : shop.walk) {
      walk.push_back(static_cast<int>(department));
    }
    Json tax = Json::object();
    for (const kitchen::Tax& one : shop.taxes) {
      tax[std::to_string(static_cast<int>(one.department))] = per_million(one.rate);
    }
    out.push_back({{"key", stop_key(compiled, v)},
                   {"shop", shop.name},
                   {"at", static_cast<std::size_t>(visit.shop)},
                   {"day", text::print_day(visit.date)},
                   {"date", text::print_date(visit.date)},
                   {"trip", visit.trip},
                   {"credit", shop.credit},
                   {"walk", walk},
                   {"tax", tax}});
  }
  return out;
}

Json lines(const Compiled& compiled, Meals& meals) {
  Json out = Json::array();
  std::map<std::string, int> seen;
  for (std::size_t l = 0; l < compiled.shopping.lines.size(); ++l) {
    const purchase::Line& line = compiled.shopping.lines[l];
    std::string key = fmt::format("{}|{}|{}", stop_key(compiled, line.visit),
                                  food_of(compiled, line).name, offer_of(compiled, line).pack);
    // Two offers of one shop may be called the same.
    if (const int times = ++seen[key]; times > 1) {
      key += fmt::format("|{}", times);
    }
    const purchase::OutOfStock& missing = compiled.out_of_stock[l];
    Json offers = Json::array();
    for (const purchase::OtherOffer& other : missing.offers) {
      purchase::Line bought;
      bought.visit = other.visit;
      bought.offer = other.offer;
      bought.packs = other.packs;
      Json one = {other.visit, other.packs, other.cost ? Json(*other.cost) : Json(nullptr),
                  count_of(compiled, bought)};
      if (!other.late.empty()) {
        one.push_back(meals.waiting(other.late));
      }
      offers.push_back(std::move(one));
    }
    out.push_back({{"k", key},
                   {"s", line.visit},
                   {"d", static_cast<int>(food_of(compiled, line).department)},
                   {"p", line.packs},
                   {"c", line.cost ? Json(*line.cost) : Json(nullptr)},
                   {"w", meals.waiting(missing.uses)},
                   {"o", offers}});
  }
  return out;
}

} // namespace

std::string stop_key(const Compiled& compiled, std::size_t visit) {
  const purchase::StopMade& stop = compiled.shopping.visits[visit];
  return text::print_date(stop.date) + "|" + compiled.kitchen.shop(stop.shop).slug;
}

std::string data_json(const Compiled& compiled) {
  const auto& plan = compiled.plan();
  Json departments = Json::array();
  for (const std::string_view word : foods::department_words()) {
    departments.push_back(word);
  }
  Json trips = Json::array();
  for (const kitchen::Trip& trip : plan.trips) {
    trips.push_back(trip.budget ? Json(*trip.budget) : Json(nullptr));
  }
  Meals meals(compiled);
  const Json all_lines = lines(compiled, meals);
  const auto budget = plan.budget ? plan.budget : compiled.kitchen.household.budget;
  const Json out{{"key", fmt::format("manciple|{}|{}", plan.name, text::print_date(plan.from))},
                 {"currency", currency_json(compiled)},
                 {"budget", budget ? Json(*budget) : Json(nullptr)},
                 {"departments", departments},
                 {"trips", trips},
                 {"stops", stops(compiled)},
                 {"meals", meals.said()},
                 {"lines", all_lines}};
  std::string safe;
  for (const char c : out.dump(-1, ' ', false, Json::error_handler_t::replace)) {
    // Nothing in a script element may look like its end, or like a comment.
    safe += c == '<' ? std::string("\\u003c") : std::string(1, c);
  }
  return safe;
}

} // namespace manciple::emit::page
