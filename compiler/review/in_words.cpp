#include "foods/counted.hpp"
#include "foods/spoken.hpp"
#include "review/review.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace manciple::review {
namespace {

using kitchen::Kitchen;

constexpr std::size_t most_thrown = 12;
// A rate that is off by less is right. Our own choice.
const Rational right_rate(1, 10);
// From so many weeks on a rate is worth a word. Our own choice.
constexpr int enough_weeks = 3;

Cents cents(const Rational& amount) {
  return measure::to_int64(measure::round(amount));
}

std::string row(const Kitchen& kitchen, std::string_view what, Cents amount,
                std::string_view note = {}) {
  return fmt::format("  {:<34} {:>10}{}{}\n", what, kitchen.household.currency.print(amount),
                     note.empty() ? "" : "  ", note);
}

std::string amount(const Kitchen& kitchen, foods::FoodId food, const Rational& of) {
  return foods::with_name(kitchen.food(food), of, kitchen.household.system);
}

// "1.29/lb", "0.49 each".
std::string by_unit(const Kitchen& kitchen, const FoodPrices& of, const Rational& unit) {
  const foods::PriceUnit of_food =
      foods::price_unit(kitchen.food(of.food), kitchen.household.system);
  return kitchen.household.currency.figure(cents(unit * of_food.size)) + of_food.word;
}

void spent(const Kitchen& kitchen, const Review& review, std::string& out) {
  out += "\nBy shop\n";
  for (const auto& [shop, sum] : review.by_shop) {
    out += row(kitchen, kitchen.shop(shop).name, sum.second,
               fmt::format("{} {}", sum.first, sum.first == 1 ? "stop" : "stops"));
  }
  out += "\nBy department, before tax\n";
  std::vector<std::pair<Cents, foods::Department>> departments;
  for (const auto& [department, sum] : review.by_department) {
    departments.emplace_back(sum, department);
  }
  std::sort(departments.rbegin(), departments.rend());
  for (const auto& [sum, department] : departments) {
    out += row(kitchen, foods::name(department), sum);
  }
}

void eaten(const Kitchen& kitchen, const Review& review, std::string& out) {
  out += "\nWhat it was for, as far as receipts say what was paid\n";
  for (const auto& [meal, sum] : review.by_meal) {
    out += sum > 0 ? row(kitchen, meal, cents(sum)) : "";
  }
  out += row(kitchen, "thrown away", cents(review.thrown_away));
  out += row(kitchen, "still there", cents(review.still_there));
  if (!review.by_person.empty()) {
    out += "\nWho ate it\n";
    for (const auto& [name, sum] : review.by_person) {
      out += row(kitchen, name, cents(sum));
    }
  }
}

void thrown(const Kitchen& kitchen, const Review& review, std::string& out) {
  std::size_t said = 0;
  for (const Thrown& one : review.thrown) {
    if (!foods::is_more_than_scraps(kitchen.food(one.food), one.amount) || said == most_thrown) {
      continue;
    }
    out += said++ == 0 ? "\nThrown away\n" : "";
    const std::string what =
        foods::as_seen(kitchen.food(one.food), one.amount, kitchen.household.system);
    out += one.cost ? row(kitchen, what, cents(*one.cost)) : "  " + what + "\n";
  }
}

void prices(const Kitchen& kitchen, const Review& review, std::string& out) {
  if (!review.prices.empty()) {
    out += "\nWhat was not always bought for about the same\n";
  }
  for (const FoodPrices& of : review.prices) {
    const PriceSeen& low = of.seen[of.lowest];
    out +=
        fmt::format("  {}: usually {}; least {} ({} for {}, {} {}{})\n", kitchen.food(of.food).name,
                    by_unit(kitchen, of, of.usual), by_unit(kitchen, of, low.unit),
                    foods::customary(kitchen.food(of.food), low.amount, kitchen.household.system),
                    kitchen.household.currency.figure(low.paid), kitchen.shop(low.shop).name,
                    text::print_day(low.date), low.sale ? ", on sale" : "");
  }
}

void rates(const Kitchen& kitchen, const Review& review, std::string& out) {
  if (review.rates.empty() || review.weeks < enough_weeks) {
    return;
  }
  out += fmt::format("\nStaples a week, by two counts {} weeks apart\n",
                     measure::print_decimal(review.weeks, 1, kitchen.household.currency.point));
  for (const Rate& rate : review.rates) {
    const foods::FoodId food = *kitchen.plan->staples[rate.staple].what.food();
    const Rational off = abs(Rational(rate.used - rate.planned));
    out +=
        fmt::format("  {}: planned {}, used {}{}\n", kitchen.food(food).name,
                    foods::customary(kitchen.food(food), rate.planned, kitchen.household.system),
                    foods::customary(kitchen.food(food), rate.used, kitchen.household.system),
                    off > rate.planned * right_rate ? fmt::format("; '{} per week' fits better",
                                                                  amount(kitchen, food, rate.used))
                                                    : "");
  }
}

} // namespace

std::string in_words(const Kitchen& kitchen, const Review& review) {
  const kitchen::Currency& currency = kitchen.household.currency;
  const kitchen::Plan& plan = *kitchen.plan;
  std::string out = fmt::format("{}, {} to {}: {} paid", plan.name, text::print_day(review.from),
                                text::print_day(review.until - std::chrono::days(1)),
                                currency.print(review.paid));
  if (const auto budget = plan.budget ? plan.budget : kitchen.household.budget) {
    out += fmt::format(" of a budget of {}", currency.print(*budget));
  }
  out += "\n";
  if (review.by_shop.empty()) {
    return out + "There is no receipt.\n";
  }
  spent(kitchen, review, out);
  eaten(kitchen, review, out);
  thrown(kitchen, review, out);
  prices(kitchen, review, out);
  rates(kitchen, review, out);
  return out;
}

} // namespace manciple::review
