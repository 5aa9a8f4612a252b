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

void tell_spent(const Kitchen& kitchen, const Review& review, std::string& out) {
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

void tell_eaten(const Kitchen& kitchen, const Review& review, std::string& out) {
  out += "\nWhat it was spent on, as far as receipts say what was paid\n";
  for (const auto& [meal, sum] : review.by_meal) {
    out += sum > 0 ? row(kitchen, meal, cents(sum)) : "";
  }
  out += row(kitchen, "thrown away", cents(review.thrown_away));
  if (const Cents missing = cents(review.missing); missing != 0) {
    out += row(kitchen, missing > 0 ? "missing at a count" : "found at a count", std::abs(missing));
  }
  out += row(kitchen, "still there", cents(review.still_there));
  if (!review.by_person.empty()) {
    out += "\nWho ate it\n";
    for (const auto& [name, sum] : review.by_person) {
      out += row(kitchen, name, cents(sum));
    }
  }
}

void tell_thrown(const Kitchen& kitchen, const Review& review, std::string& out) {
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

void tell_prices(const Kitchen& kitchen, const Review& review, std::string& out) {
  bool any = false;
  for (const FoodPrices& of : review.prices) {
    if (!of.varies) {
      continue;
    }
    out += any ? "" : "\nFoods whose price varied\n";
    any = true;
    const PriceSeen& low = of.seen[of.lowest];
    out += fmt::format(
        "  {}: usually {}; lowest {} ({} for {}, {} {}{})\n", kitchen.food(of.food).name,
        by_unit(kitchen, of, of.usual), by_unit(kitchen, of, low.unit),
        foods::customary(kitchen.food(of.food), low.amount, kitchen.household.system),
        kitchen.household.currency.figure(low.paid), kitchen.shop(low.shop).name,
        text::print_day(low.date), low.sale ? ", on sale" : "");
  }
}

std::string signed_figure(const kitchen::Currency& currency, const Rational& amount) {
  const Cents whole = cents(amount);
  return whole == 0 ? "" : (whole > 0 ? "+" : "-") + currency.figure(std::abs(whole));
}

void savings(const Kitchen& kitchen, const Review& review, std::string& out) {
  const kitchen::Currency& currency = kitchen.household.currency;
  out += fmt::format("\nWhat each shop saved, compared with buying the same at the plan's other "
                     "shops on those days\n  {:<28} {:>9} {:>9} {:>9} {:>10} {:>9}\n",
                     "", "goods", "cash back", "stops", "membership", "in all");
  for (const ShopSaving& of : review.savings) {
    out += fmt::format(
        "  {:<28} {:>9} {:>9} {:>9} {:>10} {:>9}{}\n", kitchen.shop(of.shop).name,
        signed_figure(currency, of.goods), signed_figure(currency, of.cash_back),
        signed_figure(currency, -of.stop_costs),
        signed_figure(currency, -of.membership.value_or(0)), signed_figure(currency, of.in_all()),
        of.only_here > 0 ? fmt::format("  {} {} only there, not compared", of.only_here,
                                       of.only_here == 1 ? "food" : "foods")
                         : "");
  }
  for (const ShopSaving& of : review.savings) {
    if (of.by_member_prices) {
      out += fmt::format("  Of that, members' prices at {} saved {}.\n", kitchen.shop(of.shop).name,
                         currency.print(cents(*of.by_member_prices)));
    }
  }
}

void differences(const Kitchen& kitchen, const Review& review, std::string& out) {
  std::optional<Date> day;
  for (const history::Difference& one : review.differences) {
    const auto words = in_words(kitchen, one);
    if (!words) {
      continue;
    }
    if (day != one.date) {
      out += fmt::format("\nCounted on {}, compared with what should have been there\n",
                         text::print_day(one.date));
      day = one.date;
    }
    out += fmt::format("  {}: {}\n", kitchen.food(one.food).name, *words);
  }
}

void tell_rates(const Kitchen& kitchen, const Review& review, std::string& out) {
  if (review.rates.empty() || review.weeks < enough_weeks) {
    return;
  }
  out += fmt::format("\nStaples per week, from two counts {} weeks apart\n",
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

std::optional<std::string> in_words(const Kitchen& kitchen, const history::Difference& difference) {
  const foods::Food& food = kitchen.food(difference.food);
  const auto words = [&](const Rational& of) {
    return of == 0 ? std::string("none") : foods::amount_seen(food, of, kitchen.household.system);
  };
  const Rational less = difference.expected - difference.counted;
  constexpr int parts = 20; // nobody counts finer
  if (!foods::is_more_than_scraps(food, abs(less)) || abs(less) * parts < difference.expected ||
      words(difference.expected) == words(difference.counted)) {
    return std::nullopt;
  }
  std::string out =
      fmt::format("expected {}, counted {}: {} {}", words(difference.expected),
                  words(difference.counted), words(abs(less)), less > 0 ? "less" : "more");
  std::vector<std::string> went;
  if (difference.thrown_away > 0) {
    went.push_back(words(difference.thrown_away) + " thrown away");
  }
  if (difference.eaten > 0) {
    went.push_back(words(difference.eaten) + " eaten");
  }
  if (const Rational missing = difference.missing();
      !went.empty() && foods::is_more_than_scraps(food, abs(missing))) {
    went.push_back(words(abs(missing)) + (missing > 0 ? " missing" : " found"));
  }
  return went.empty() ? out : fmt::format("{} ({})", out, text::join(went, ", "));
}

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
    return out + "There are no receipts.\n";
  }
  tell_spent(kitchen, review, out);
  tell_eaten(kitchen, review, out);
  tell_thrown(kitchen, review, out);
  tell_prices(kitchen, review, out);
  savings(kitchen, review, out);
  differences(kitchen, review, out);
  tell_rates(kitchen, review, out);
  return out;
}

} // namespace manciple::review
