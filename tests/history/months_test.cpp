// Random months as they happen: receipts otherwise than listed, changes, counts. After each step
// nothing has come from nowhere or gone nowhere, and the past stays.
#include "dice.hpp"
#include "house.hpp"

#include "emit/emit.hpp"
#include "history/written.hpp"

#include <fmt/format.h>

#include <array>
#include <map>
#include <set>
#include <sstream>

namespace manciple {
namespace {

using history::Move;
using measure::Rational;
using text::Date;

constexpr std::array foods{"onions",       "eggs",           "ground beef",     "all-purpose flour",
                           "whole milk",   "carrots",        "butter",          "bananas",
                           "baby spinach", "cheddar cheese", "canned chickpeas"};
constexpr std::array amounts{"1 lb", "4", "1 lb", "1 cup", "1 pint", "1/2 lb",
                             "4 oz", "3", "5 oz", "6 oz",  "1 can"};
constexpr std::array prices{"[1.50/lb, 5 lb bag 4.00]",
                            "12 large 3.00",
                            "[5.00/lb, 3 lb pack 12.00]",
                            "5 lb bag 3.00",
                            "1 gal 3.50",
                            "2 lb bag 2.00",
                            "1 lb pack 4.50",
                            "0.60/lb",
                            "10 oz clamshell 3.50",
                            "1 lb pack 6.00",
                            "15 oz can 1.00"};
constexpr int first_day = 1;
constexpr int last_day = 31;

std::string day_text(int day) {
  return fmt::format("2027-03-{:02}", day);
}
Date date(int day) {
  return *text::parse_date(day_text(day));
}

class Month {
public:
  explicit Month(std::uint64_t seed) : dice(seed) {
    std::string list = "shop: Corner\nprices:\n";
    for (std::size_t f = 0; f < foods.size(); ++f) {
      list += fmt::format("  {}: {}\n", foods.at(f), prices.at(f));
    }
    house.write("plans/stores/corner.yaml", list);
    for (int r = 0; r < 5; ++r) {
      std::string ingredients;
      for (std::size_t f = dice.index(3); f < foods.size(); f += 1 + dice.index(6)) {
        ingredients += (ingredients.empty() ? "" : ", ") + some(f);
      }
      house.recipe(fmt::format("dish{}", r), ingredients,
                   "keeps: {fridge: 3 days, freezer: 2 months}\n");
    }
    for (int day = first_day; day <= last_day; ++day) {
      if (!dice.one_in(3)) {
        dinners[day] = fmt::format("dish{}", dice.number(0, 4));
      }
    }
    std::string there = "date: 2027-03-01\non hand:\n";
    for (std::size_t f = 0; f < foods.size(); ++f) {
      there += dice.one_in(2) ? fmt::format("  - {}\n", some(f)) : "";
    }
    house.write("plans/on-hand.yaml", there + "  - 2 lb onions\n");
    staples = dice.one_in(2) ? "staples: [1 gal whole milk per week, 6 bananas per week]\n" : "";
    write_plan();
  }

  std::string some(std::size_t food) {
    return fmt::format("{} {}", amounts.at(food), foods.at(food));
  }

  void write_plan() {
    std::string meals;
    for (const auto& [day, dish] : dinners) {
      meals += fmt::format("{}{}: {{dinner: {}}}", meals.empty() ? "" : ", ", day_text(day), dish);
    }
    std::string changed;
    for (const auto& [day, what] : changes) {
      changed += fmt::format("  {}: {{{}}}\n", day_text(day), what);
    }
    house.plan(meals, staples + (changed.empty() ? "" : "changes:\n" + changed) +
                          (as_of > first_day ? "as of: " + day_text(as_of) + "\n" : ""));
  }

  // The day's shopping, otherwise than listed in places.
  void shop(int day) {
    as_of = day;
    write_plan();
    const emit::Compiled compiled = house.good();
    for (std::size_t v = 0; v < compiled.shopping.visits.size(); ++v) {
      if (compiled.shopping.visits[v].date != date(day)) {
        continue;
      }
      std::istringstream lines(emit::receipt_yaml(compiled, v));
      std::string out;
      for (std::string line; std::getline(lines, line);) {
        const bool item = line.starts_with("  - ");
        if (line.starts_with("total") || line.starts_with("tax") || (item && dice.one_in(6))) {
          continue; // it was not there
        }
        out += line + "\n";
        if (item && dice.one_in(8)) {
          out += fmt::format("  - {}, {}.49\n", some(dice.index(foods.size())), dice.number(1, 4));
        }
      }
      const bool any = out.find("  - ") != std::string::npos;
      house.write(fmt::format("plans/receipts/{}-corner.yaml", day_text(day)),
                  any ? out : "shop: corner\nlines: [\"1 lb onions, 1.00\"]\n");
    }
  }

  void change(int day) {
    switch (dice.number(0, 2)) {
    case 0:
      changes[day] = "dinner: out";
      break;
    case 1:
      changes[day] = "thrown away: " + some(dice.index(foods.size()));
      break;
    default:
      changes[day] = "eaten: " + some(dice.index(foods.size()));
    }
    write_plan();
  }

  // What should be there, less some lines, and with more of something.
  void count(int day) {
    text::Sources sources;
    text::Diagnostics said;
    const auto done = cli::done_until(house.root() + "/plans/p.yaml", date(day), sources, said);
    ASSERT_TRUE(done);
    std::istringstream lines(history::file_written(done->kitchen, done->past));
    std::string out;
    for (std::string line; std::getline(lines, line);) {
      out += line.starts_with("  - ") && dice.one_in(5) ? "" : line + "\n";
    }
    out += "  - " + some(dice.index(foods.size())) + "\n";
    out += dice.one_in(2) ? "thrown away: " + some(dice.index(foods.size())) + "\n" : "";
    out += dice.one_in(2) ? "eaten: [" + some(dice.index(foods.size())) + "]\n" : "";
    house.write(fmt::format("plans/on-hand/{}.yaml", day_text(day)), out);
  }

  House house;
  Dice dice;
  std::map<int, std::string> dinners;
  std::map<int, std::string> changes;
  std::string staples;
  int as_of = first_day;
};

bool comes_in(Move::Kind kind) {
  return kind == Move::Kind::counted || kind == Move::Kind::bought || kind == Move::Kind::found;
}

// Per food, amounts and money.
void expect_conserved(const history::Past& past, const kitchen::Kitchen& kitchen) {
  std::map<std::string, Rational> amounts_of;
  Rational money = 0;
  for (const Move& move : past.moves) {
    const int sign = comes_in(move.kind) ? 1 : -1;
    amounts_of[kitchen.food(move.food).name] += sign * move.amount;
    money += sign * move.cost.value_or(0);
  }
  for (const history::Holding& one : past.there) {
    if (!one.cut && !one.given) {
      amounts_of[kitchen.food(one.food).name] -= one.amount;
      money -= one.price ? Rational(*one.price * one.amount) : Rational(0);
    }
  }
  for (const auto& [name, sum] : amounts_of) {
    EXPECT_TRUE(sum == 0) << name << " " << to_double(sum);
  }
  EXPECT_EQ(to_double(money), 0);
}

// What moved before a day: how, food and date.
using Moved = std::map<std::tuple<Move::Kind, std::string, Date>, Rational>;
Moved moved_before(const cli::Done& done, Date day) {
  Moved out;
  for (const Move& move : done.past.moves) {
    if (move.date < day) {
      out[{move.kind, done.kitchen.food(move.food).name, move.date}] += move.amount;
    }
  }
  return out;
}

// What was counted and bought stays to the gram. Of what there is nearly enough of, each use takes
// a little less, as far as it can do without: that is shared anew when another use is to come.
void expect_the_same(const Moved& before, const Moved& after) {
  std::set<Moved::key_type> keys;
  for (const auto* moved : {&before, &after}) {
    for (const auto& [key, amount] : *moved) {
      keys.insert(key);
    }
  }
  const Rational give(1, 10);
  for (const auto& key : keys) {
    const auto of = [&](const Moved& moved) {
      const auto found = moved.find(key);
      return found == moved.end() ? Rational(0) : found->second;
    };
    const auto& [kind, food, date] = key;
    const Rational most = std::max(of(before), of(after));
    const bool given = kind == Move::Kind::counted || kind == Move::Kind::bought;
    if (given || kind == Move::Kind::eaten) {
      EXPECT_TRUE(abs(of(before) - of(after)) <= most * (given ? Rational(0) : give))
          << food << " on " << text::print_date(date) << ": " << to_double(of(before))
          << " and then " << to_double(of(after));
    }
  }
}

cli::Done now(Month& month) {
  text::Sources sources;
  text::Diagnostics said;
  auto out = cli::reviewed(month.house.root() + "/plans/p.yaml", sources, said);
  EXPECT_TRUE(out.done) << render(said, sources);
  return out.done ? std::move(*out.done) : cli::Done{};
}

class RandomMonth : public testing::TestWithParam<int> {};

TEST_P(RandomMonth, NothingComesFromNowhereAndThePastStays) {
  Month month(static_cast<std::uint64_t>(GetParam()));
  for (const int day : {1, 6, 13, 20, 27}) {
    month.shop(day);
    const cli::Done before = now(month);
    expect_conserved(before.past, before.kitchen);
    // A dinner to come is changed: what was eaten, bought and counted stays.
    const int later = month.dice.number(day + 1, last_day);
    month.dinners[later] = fmt::format("dish{}", month.dice.number(0, 4));
    month.write_plan();
    const cli::Done after = now(month);
    expect_the_same(moved_before(before, date(day)), moved_before(after, date(day)));
    expect_conserved(after.past, after.kitchen);
    for (int i = 0; i < 2; ++i) {
      month.change(month.dice.number(day, std::min(day + 5, last_day)));
    }
    if (month.dice.one_in(2) && day < 27) {
      month.count(day + 3);
      month.as_of = day + 3;
      month.write_plan();
    }
    const cli::Done changed = now(month);
    expect_conserved(changed.past, changed.kitchen);
    const auto compiled = month.house.good();
    ASSERT_TRUE(compiled.past);
    expect_conserved(*compiled.past, compiled.kitchen);
  }
}

INSTANTIATE_TEST_SUITE_P(Seeds, RandomMonth, testing::Range(1, 9));

} // namespace
} // namespace manciple
