#include "emit/currency_json.hpp"
#include "emit/day_words.hpp"
#include "emit/dish_sheet.hpp"
#include "emit/page/parts.hpp"
#include "emit/receipt_text.hpp"
#include "emit/words.hpp"
#include "foods/counted.hpp"
#include "foods/spoken.hpp"
#include "prep/purpose.hpp"
#include "text/words.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cmath>
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
    Json one{{"slug", shop.slug},
             {"shop", shop.name},
             {"day", text::print_day(visit.date)},
             {"date", text::print_date(visit.date)},
             {"trip", visit.trip},
             {"credit", visit.credit},
             {"walk", walk},
             {"tax", tax}};
    if (shop.reduction) {
      one["over"] = shop.reduction->over;
      one["off"] = shop.reduction->off;
    }
    out.push_back(std::move(one));
  }
  return out;
}

// A number as people type it, to a thousandth.
double number(const measure::Rational& exact) {
  return std::round(to_double(exact) * 1000) / 1000;
}

Json lines(const Compiled& compiled, Meals& meals) {
  Json out = Json::array();
  std::map<std::string, int> seen;
  for (std::size_t l = 0; l < compiled.shopping.lines.size(); ++l) {
    const purchase::Line& line = compiled.shopping.lines[l];
    // What is bought, by what it is: a pack of another size is still the same. Only where a stop
    // has several lines of one food do the others say their packs and their numbers.
    std::string key = fmt::format("{}|{}", static_cast<std::size_t>(line.visit),
                                  static_cast<std::size_t>(line.food));
    const int times = ++seen[key];
    const ReceiptText text = receipt_text(compiled, line);
    const purchase::OutOfStock& missing = compiled.out_of_stock[l];
    Json offers = Json::array();
    for (const purchase::OtherOffer& other : missing.offers) {
      purchase::Line bought;
      bought.visit = other.visit;
      bought.offer = other.offer;
      bought.packs = other.packs;
      bought.food = line.food;
      const ReceiptText there = receipt_text(compiled, bought);
      Json one = {other.visit, other.cost ? Json(*other.cost) : Json(nullptr),
                  count_of(compiled, bought), there.text, number(there.each * other.packs)};
      if (!other.late.empty()) {
        one.push_back(meals.waiting(other.late));
      }
      offers.push_back(std::move(one));
    }
    Json entry{{"f", food_of(compiled, line).name},
               {"s", line.visit},
               {"d", static_cast<int>(food_of(compiled, line).department)},
               {"n", count_of(compiled, line)},
               {"t", text.text},
               {"q", number(text.each * line.packs)},
               {"c", line.cost ? Json(*line.cost) : Json(nullptr)},
               {"w", meals.waiting(missing.uses)},
               {"o", offers}};
    if (const std::string on_list = name_on_list(compiled, line); on_list != entry["f"]) {
      entry["l"] = on_list;
    }
    if (!offer_of(compiled, line).by_weight) {
      entry["u"] = number(text.each);
    }
    if (times > 1) {
      entry["p"] = fmt::format("{}|{}", offer_of(compiled, line).pack, times);
    }
    if (foods::is_more_than_scraps(food_of(compiled, line), line.to_freeze)) {
      entry["z"] = foods::amount_seen(food_of(compiled, line), line.to_freeze,
                                      compiled.kitchen.household.system);
    }
    out.push_back(std::move(entry));
  }
  return out;
}

// Texts that many dishes share, each once.
class Texts {
public:
  std::size_t place_of(const std::string& text) {
    const auto [found, fresh] = places_.emplace(text, places_.size());
    if (fresh) {
      all_.push_back(text);
    }
    return found->second;
  }
  [[nodiscard]] const Json& all() const { return all_; }

private:
  std::map<std::string, std::size_t> places_;
  Json all_ = Json::array();
};

// What a making is for: "all four", "Ada and Ben; lunch on Thu 4 Mar".
std::string eaten_by(const Compiled& compiled, const resolve::Making& making) {
  std::vector<std::string> parts;
  for (const resolve::Consumer& consumer : making.consumers) {
    if (const auto* dish = std::get_if<resolve::DishRef>(&consumer.who)) {
      const kitchen::Meal& meal = compiled.plan().meals[dish->meal];
      const std::string when = meal.date == making.date && !making.session
                                   ? meal.slot
                                   : fmt::format("{} on {}", meal.slot, text::print_day(meal.date));
      parts.push_back(fmt::format("{} for {}", when, eaters_of(compiled, *dish)));
    }
  }
  if (parts.empty()) {
    return "for " + prep::purposes(compiled.kitchen, compiled.resolved, making.id);
  }
  return text::the_first_few(parts);
}

Json dishes(const Compiled& compiled, Texts& texts) {
  Json out = Json::array();
  for (const resolve::Making& making : compiled.resolved.makings) {
    const kitchen::Recipe& recipe = compiled.kitchen.recipe(making.recipe);
    const DishSheet sheet = dish_sheet(compiled, making);
    Json taken = Json::array();
    for (const Taken& one : sheet.taken) {
      taken.push_back({texts.place_of(one.amount), texts.place_of(one.name),
                       texts.place_of(one.how),
                       one.place ? std::string(1, place_letter(*one.place)) : "",
                       texts.place_of(one.from), one.step ? Json(*one.step) : Json(-1)});
    }
    Json steps = Json::array();
    for (const SheetStep& step : sheet.steps) {
      steps.push_back({step.clock ? Json(*step.clock) : Json(-1), texts.place_of(step.what),
                       step.hands_on, step.then, texts.place_of(step.on)});
    }
    Json dish{{"n", recipe.name},
              {"d", text::print_date(making.date)},
              {"m", texts.place_of(how_much(compiled, making))},
              {"e", texts.place_of(eaten_by(compiled, making))},
              {"h", texts.place_of(safe_temperature(compiled, recipe))},
              {"b", texts.place_of(boxes_of(compiled, making.id))},
              {"t", taken},
              {"s", steps}};
    if (making.session) {
      dish["x"] = *making.session;
    } else {
      dish["r"] = making.ready_by;
    }
    if (const std::string left = left_of(compiled, making); !left.empty()) {
      dish["l"] = left + " left over" + good_until(making);
    }
    out.push_back(std::move(dish));
  }
  return out;
}

// Nothing in a script element may look like its end, or like a comment.
std::string in_script(const Json& json) {
  std::string safe;
  for (const char c : json.dump(-1, ' ', true, Json::error_handler_t::replace)) {
    safe += c == '<' ? std::string("\\u003c") : std::string(1, c);
  }
  return safe;
}

} // namespace

std::string dishes_json(const Compiled& compiled) {
  Texts texts;
  const Json all = dishes(compiled, texts);
  return in_script({{"dishes", all}, {"texts", texts.all()}});
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
                 {"plan", plan.name},
                 {"point", std::string(1, compiled.kitchen.household.system.point)},
                 {"currency", currency_json(compiled)},
                 {"budget", budget ? Json(*budget) : Json(nullptr)},
                 {"departments", departments},
                 {"trips", trips},
                 {"stops", stops(compiled)},
                 {"meals", meals.said()},
                 {"lines", all_lines}};
  return in_script(out);
}

} // namespace manciple::emit::page
