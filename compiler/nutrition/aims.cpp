#include "nutrition/aims.hpp"

#include "kitchen/table.hpp"
#include "nutrition/errors.hpp"
#include "nutrition/stand_ins.hpp"
#include "resolve/eaters.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace manciple::nutrition {
namespace {

using kitchen::Aim;
using kitchen::Kitchen;
using kitchen::Person;
using resolve::DishRef;
using resolve::Resolved;

constexpr int days_a_week = 7;
// Two figures that differ by less are the same: the tables have two or three digits.
constexpr double close_enough = 0.005;

// One meal, day or week of one person.
struct Occasion {
  std::string person;
  text::Date date;
  double value = 0;
  double wanted = 0;
  std::vector<DishRef> dishes;
};

// With figures for less of the weight nothing is said of an amount that is too small.
constexpr double least_coverage = .8;

class Looker {
public:
  Looker(const Kitchen& kitchen, const Resolved& resolved, const Nutrition& nutrition,
         const purchase::Worth& worth, LibraryDishes& library, std::size_t aim)
      : kitchen_(kitchen),
        resolved_(resolved),
        nutrition_(nutrition),
        worth_(worth),
        library_(library),
        index_(aim),
        aim_(kitchen.plan->aims[aim]) {}

  AimMet run();

private:
  void count_dishes();
  void occasions_of(const Person& person);
  void meals_of(const Person& person);
  void periods_of(const Person& person);
  [[nodiscard]] double eaten_at(const Person& person, std::size_t meal,
                                std::vector<DishRef>* dishes) const;
  [[nodiscard]] bool misses(double value, double wanted) const {
    return aim_.at_least ? value < wanted * (1 - close_enough)
                         : value > wanted * (1 + close_enough);
  }
  [[nodiscard]] double by_how_much(double value, double wanted) const {
    return aim_.at_least ? wanted - value : value - wanted;
  }
  [[nodiscard]] double wanted() const { return to_double(aim_.amount); }
  [[nodiscard]] bool is_first(const DishRef& ref) const;
  [[nodiscard]] double coverage_of(const Occasion& one) const;
  [[nodiscard]] std::vector<StandIn> of_plan(const DishRef& of) const;
  [[nodiscard]] std::optional<double> known_cents_of(const DishRef& dish) const;
  void mend(const Occasion& worst, AimMet& met) const;
  [[nodiscard]] double cents_of(const DishRef& dish) const {
    const double servings = nutrition_.dishes[dish.meal][dish.dish].servings;
    return servings > 0 ? to_double(worth_.dishes[dish.meal][dish.dish]) / servings : 0;
  }

  const Kitchen& kitchen_;
  const Resolved& resolved_;
  const Nutrition& nutrition_;
  const purchase::Worth& worth_;
  LibraryDishes& library_;
  std::size_t index_;
  const Aim& aim_;
  std::vector<std::vector<double>> a_serving_; // of each dish: what is counted, of a serving
  std::vector<Occasion> occasions_;
};

void Looker::count_dishes() {
  const auto* nutrient = std::get_if<Nutrient>(&aim_.of);
  const bool money = std::holds_alternative<std::monostate>(aim_.of);
  const auto& meals = kitchen_.plan->meals;
  for (std::size_t m = 0; m < meals.size(); ++m) {
    auto& row = a_serving_.emplace_back(meals[m].dishes.size(), 0.0);
    for (std::size_t d = 0; d < row.size(); ++d) {
      const DishSum& dish = nutrition_.dishes[m][d];
      if (dish.servings > 0 && nutrient != nullptr) {
        row[d] = dish.whole[*nutrient] / dish.servings;
      } else if (money) {
        row[d] = cents_of({m, d});
      }
    }
  }
  if (nutrient != nullptr || money) {
    return;
  }
  for (const resolve::Use& use : resolved_.uses) {
    const foods::Food& food = kitchen_.food(use.food);
    if (!is_counted(kitchen_, food, aim_)) {
      continue;
    }
    const double grams =
        eaten_grams(food, eaten_form(kitchen_, resolved_, use), use.amount).value_or(0);
    for (const auto& [to, share] : resolved_.shares_of(use)) {
      const double servings = nutrition_.dishes[to.meal][to.dish].servings;
      a_serving_[to.meal][to.dish] += servings > 0 ? grams * to_double(share) / servings : 0;
    }
  }
}

// A pinch of a food in a dish is no meal of it.
constexpr double least_of_a_meal = 30; // grams a serving; common practice, no source

// What somebody eats at a meal, of an adult's serving.
double Looker::eaten_at(const Person& person, std::size_t m, std::vector<DishRef>* dishes) const {
  const kitchen::Meal& meal = kitchen_.plan->meals[m];
  double sum = 0;
  for (std::size_t d = 0; d < meal.dishes.size(); ++d) {
    const auto at = resolve::eaters(kitchen_, {m, d});
    if (std::find(at.begin(), at.end(), &person) == at.end()) {
      continue;
    }
    const kitchen::Dish unsaid;
    const double usual = to_double(kitchen::portion(person, meal, unsaid));
    const double here = to_double(kitchen::portion(person, meal, meal.dishes[d]));
    const double of_dish = a_serving_[m][d];
    if (aim_.times) {
      sum = std::max(sum, of_dish >= least_of_a_meal ? 1.0 : 0.0);
    } else if (usual > 0) {
      sum += of_dish * here / usual;
    }
    if (dishes != nullptr) {
      dishes->push_back({m, d});
    }
  }
  return sum;
}

void Looker::meals_of(const Person& person) {
  const auto& meals = kitchen_.plan->meals;
  for (std::size_t m = 0; m < meals.size(); ++m) {
    if (!aim_.slot.empty() && meals[m].slot != aim_.slot) {
      continue;
    }
    Occasion one{person.name, meals[m].date, 0, wanted(), {}};
    one.value = eaten_at(person, m, &one.dishes);
    if (!one.dishes.empty()) {
      occasions_.push_back(std::move(one));
    }
  }
}

// Days, or the days of a week, at which somebody sits at as many meals as on most of their days.
void Looker::periods_of(const Person& person) {
  const auto& plan = *kitchen_.plan;
  std::map<text::Date, std::pair<int, Occasion>> days; // with its meals
  for (std::size_t m = 0; m < plan.meals.size(); ++m) {
    std::vector<DishRef> dishes;
    const double value = eaten_at(person, m, &dishes);
    if (dishes.empty()) {
      continue;
    }
    auto& [count, day] = days[plan.meals[m].date];
    ++count;
    day.person = person.name;
    day.date = plan.meals[m].date;
    day.value += value;
    day.dishes.insert(day.dishes.end(), dishes.begin(), dishes.end());
  }
  std::map<int, int> how_often;
  for (const auto& [date, day] : days) {
    ++how_often[day.first];
  }
  const auto usual =
      std::max_element(how_often.begin(), how_often.end(),
                       [](const auto& a, const auto& b) { return a.second < b.second; });
  std::map<text::Date, std::pair<int, Occasion>> weeks;
  for (auto& [date, day] : days) {
    if (aim_.per == Aim::Per::day) {
      day.second.wanted = wanted();
      if (day.first >= usual->first) {
        occasions_.push_back(std::move(day.second));
      }
      continue;
    }
    const text::Date first =
        date - std::chrono::days(static_cast<int>(kitchen_.household.day_of_week(date)) - 1);
    auto& [length, week] = weeks[first];
    ++length;
    week.person = person.name;
    week.date = std::max(first, plan.from);
    week.value += day.second.value;
    week.dishes.insert(week.dishes.end(), day.second.dishes.begin(), day.second.dishes.end());
  }
  for (auto& [first, week] : weeks) {
    auto& [length, one] = week;
    one.wanted = wanted() * length / days_a_week;
    if (aim_.times) {
      one.wanted = aim_.at_least ? std::floor(one.wanted) : std::ceil(one.wanted);
    }
    occasions_.push_back(std::move(one));
  }
}

void Looker::occasions_of(const Person& person) {
  if (aim_.per == Aim::Per::meal) {
    meals_of(person);
  } else {
    periods_of(person);
  }
}

// Whether it is what its meal names first for those who eat it.
bool Looker::is_first(const DishRef& ref) const {
  const auto at = resolve::eaters(kitchen_, ref);
  for (std::size_t d = 0; d < ref.dish && !at.empty(); ++d) {
    const auto others = resolve::eaters(kitchen_, {ref.meal, d});
    if (std::find(others.begin(), others.end(), at.front()) != others.end()) {
      return false;
    }
  }
  return true;
}

// What a serving costs at what the plan pays, what was in the house at what it would cost; nothing
// where that is not known. A spice without a price is too little to matter.
std::optional<double> Looker::known_cents_of(const DishRef& dish) const {
  const double servings = nutrition_.dishes[dish.meal][dish.dish].servings;
  const auto& unknown = worth_.unknown_in[dish.meal][dish.dish];
  const bool known = std::all_of(unknown.begin(), unknown.end(), [&](foods::FoodId food) {
    return kitchen_.food(food).department == foods::Department::spices;
  });
  if (servings <= 0 || !known) {
    return std::nullopt;
  }
  return to_double(worth_.replaced.dishes[dish.meal][dish.dish]) / servings;
}

// Dishes that the plan has at the same meal of other days, and that all who eat this one eat there:
// what is named first in its meal for what is, and what goes with it for what goes with it.
std::vector<StandIn> Looker::of_plan(const DishRef& of) const {
  const auto& meals = kitchen_.plan->meals;
  const auto sorted_eaters = [&](const DishRef& ref) {
    std::vector<const Person*> out = resolve::eaters(kitchen_, ref);
    std::sort(out.begin(), out.end());
    return out;
  };
  const auto who = sorted_eaters(of);
  const kitchen::Dish& dish = meals[of.meal].dishes[of.dish];
  std::vector<StandIn> out;
  for (std::size_t m = 0; m < meals.size(); ++m) {
    for (std::size_t d = 0; d < meals[m].dishes.size(); ++d) {
      const kitchen::Dish& other = meals[m].dishes[d];
      if (meals[m].slot != meals[of.meal].slot || other.kind != kitchen::Dish::Kind::cooked ||
          other.what.recipe() == nullptr || other.what.target == dish.what.target ||
          !other.not_by.empty() || is_first({m, d}) != is_first(of)) {
        continue;
      }
      const auto all = sorted_eaters({m, d});
      if (std::includes(all.begin(), all.end(), who.begin(), who.end())) {
        out.push_back({kitchen_.recipe(*other.what.recipe()).name, true, false, a_serving_[m][d],
                       known_cents_of({m, d})});
      }
    }
  }
  return out;
}

// One dish of those that the occasion has in whose place another would help.
void Looker::mend(const Occasion& worst, AimMet& met) const {
  const auto enough = [&](const Mend& one) { return !misses(one.value, worst.wanted); };
  // Of what is enough, what costs least; what costs nobody knows how much comes last.
  const auto better = [&](const Mend& a, const Mend& b) {
    if (enough(a) != enough(b)) {
      return enough(a);
    }
    if (!enough(a)) {
      return by_how_much(a.value, worst.wanted) < by_how_much(b.value, worst.wanted);
    }
    return a.cents && (!b.cents || *a.cents < *b.cents);
  };
  for (const DishRef& of : worst.dishes) {
    const double old = a_serving_[of.meal][of.dish];
    const std::optional<double> cost = known_cents_of(of);
    std::vector<StandIn> all = of_plan(of);
    for (StandIn& one : library_.in_place_of(of, is_first(of), aim_)) {
      all.push_back(std::move(one));
    }
    for (StandIn& stand_in : all) {
      const bool of_money = std::holds_alternative<std::monostate>(aim_.of);
      if (of_money && !stand_in.cents) {
        continue;
      }
      Mend one{stand_in.name,
               stand_in.planned,
               stand_in.labels,
               of,
               worst.value - old + stand_in.counts,
               {}};
      if (cost && stand_in.cents) {
        one.cents = *stand_in.cents - *cost;
      }
      if (aim_.times) {
        const int before = old >= least_of_a_meal ? 1 : 0;
        const int after = stand_in.counts >= least_of_a_meal ? 1 : 0;
        one.value = worst.value - before + after;
      }
      if (by_how_much(one.value, worst.wanted) <
              by_how_much(worst.value, worst.wanted) * (1 - close_enough) &&
          (!met.mend || better(one, *met.mend))) {
        met.mend = std::move(one);
      }
    }
  }
}

double Looker::coverage_of(const Occasion& one) const {
  // Of a dish that only has a name, nobody knows what is in it.
  const bool unknown = std::any_of(one.dishes.begin(), one.dishes.end(), [&](const DishRef& ref) {
    const foods::FoodId* food = kitchen_.plan->meals[ref.meal].dishes[ref.dish].what.food();
    return food != nullptr && kitchen_.food(*food).as_written.has_value();
  });
  if (unknown) {
    return 0;
  }
  const auto* nutrient = std::get_if<Nutrient>(&aim_.of);
  Sum sum;
  for (const DishRef& dish : one.dishes) {
    const DishSum& of = nutrition_.dishes[dish.meal][dish.dish];
    sum.add(of.whole, of.servings > 0 ? 1 / of.servings : 0);
  }
  return nutrient == nullptr || sum.grams <= 0 ? 1 : sum.coverage(*nutrient);
}

AimMet Looker::run() {
  count_dishes();
  for (const Person& person : kitchen_.household.people) {
    occasions_of(person);
  }
  for (const kitchen::Guest& guest : kitchen_.plan->guests) {
    if (aim_.per == Aim::Per::meal) {
      occasions_of(guest.person);
    }
  }
  AimMet out;
  out.aim = index_;
  const Occasion* worst = nullptr;
  for (const Occasion& one : occasions_) {
    const bool missed = misses(one.value, one.wanted);
    if (aim_.at_least && missed && coverage_of(one) < least_coverage) {
      ++out.not_known;
      continue;
    }
    ++out.asked;
    out.mean += one.value;
    if (missed) {
      ++out.missed;
      if (worst == nullptr ||
          by_how_much(one.value, one.wanted) > by_how_much(worst->value, worst->wanted)) {
        worst = &one;
      }
    }
  }
  out.mean /= std::max(out.asked, 1);
  if (worst != nullptr) {
    out.worst = worst->value;
    out.wanted = worst->wanted;
    out.person = worst->person;
    out.date = worst->date;
    mend(*worst, out);
  }
  return out;
}

std::string times_word(double times) {
  const auto whole = static_cast<int>(std::lround(times));
  return whole == 0   ? "never"
         : whole == 1 ? "once"
         : whole == 2 ? "twice"
                      : fmt::format("{} times", whole);
}

std::string money(const Kitchen& kitchen, double cents) {
  return kitchen.household.currency.print(static_cast<kitchen::Cents>(std::llround(cents)));
}

std::string_view period(const Aim& aim) {
  return aim.per == Aim::Per::week  ? "week"
         : aim.per == Aim::Per::day ? "day"
         : aim.slot.empty()         ? std::string_view("meal")
                                    : std::string_view(aim.slot);
}

} // namespace

std::vector<AimMet> look_at_aims(const Kitchen& kitchen, const Resolved& resolved,
                                 const Nutrition& nutrition, const purchase::Worth& worth,
                                 kitchen::Library library) {
  LibraryDishes dishes(std::move(library), kitchen);
  std::vector<AimMet> out;
  for (std::size_t i = 0; i < kitchen.plan->aims.size(); ++i) {
    out.push_back(Looker(kitchen, resolved, nutrition, worth, dishes, i).run());
  }
  return out;
}

std::string print_amount(const Kitchen& kitchen, const Aim& aim, double amount) {
  if (aim.times) {
    return times_word(amount);
  }
  if (std::holds_alternative<std::monostate>(aim.of)) {
    return money(kitchen, amount);
  }
  const auto* nutrient = std::get_if<Nutrient>(&aim.of);
  return fmt::format("{:.{}f} {}", amount, amount < 10 ? 1 : 0,
                     nutrient != nullptr ? foods::facts(*nutrient).unit : "g");
}

std::string missed_by(const Kitchen& kitchen, const AimMet& met) {
  if (met.missed == 0) {
    return {};
  }
  const Aim& aim = kitchen.plan->aims[met.aim];
  return fmt::format("'{}' is missed {} times out of {}, counting each {} of each person as an "
                     "adult's serving; the furthest off is {} {} {}: {}, where the aim is {}",
                     aim.text, met.missed, met.asked, period(aim), met.person,
                     aim.per == Aim::Per::week ? "in the week from" : "on",
                     text::print_day(met.date), print_amount(kitchen, aim, met.worst),
                     print_amount(kitchen, aim, met.wanted));
}

std::string would_mend(const Kitchen& kitchen, const AimMet& met) {
  if (!met.mend) {
    return {};
  }
  const Aim& aim = kitchen.plan->aims[met.aim];
  const kitchen::Meal& meal = kitchen.plan->meals[met.mend->of.meal];
  const kitchen::Ingredient& what = meal.dishes[met.mend->of.dish].what;
  std::string out =
      fmt::format("{}{} instead of {} on {} would make it {}", met.mend->instead,
                  met.mend->planned ? "" : " (from the library)",
                  what.recipe() != nullptr ? kitchen.recipe(*what.recipe()).name : what.text,
                  text::print_day(meal.date), print_amount(kitchen, aim, met.mend->value));
  if (met.mend->cents) {
    out += fmt::format(", for about {} {} a serving", money(kitchen, std::abs(*met.mend->cents)),
                       *met.mend->cents < 0 ? "less" : "more");
  }
  if (met.mend->labels) {
    out += "; read the labels first: it may contain something that somebody at the table must not "
           "have";
  }
  return out;
}

void tell_aims(const Kitchen& kitchen, const std::vector<AimMet>& aims,
               text::Diagnostics& diagnostics) {
  for (const AimMet& met : aims) {
    if (met.missed > 0) {
      diagnostics.remark(errors::aim_missed, kitchen.plan->aims[met.aim].at,
                         missed_by(kitchen, met), would_mend(kitchen, met));
    }
  }
}

} // namespace manciple::nutrition
