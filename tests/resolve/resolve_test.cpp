#include "emit/emit.hpp"
#include "house.hpp"
#include "text/words.hpp"

#include <fmt/format.h>

#include <bit>
#include <random>
#include <set>

namespace manciple {
namespace {

using measure::Rational;
using resolve::Making;

// The amount of a food that a plan uses, in pounds.
Rational pounds(emit::Compiled& compiled, std::string_view food) {
  const auto id = compiled.kitchen.foods.find(food);
  Rational sum = 0;
  for (const resolve::Use& use : compiled.resolved.uses) {
    sum += use.food == id ? use.amount : Rational(0);
  }
  return sum / measure::facts(measure::Unit::pound).factor;
}

std::vector<const Making*> makings_of(const emit::Compiled& compiled, std::string_view recipe) {
  std::vector<const Making*> out;
  for (const Making& making : compiled.resolved.makings) {
    if (compiled.kitchen.recipe(making.recipe).name == recipe) {
      out.push_back(&making);
    }
  }
  return out;
}

TEST(Resolve, ADishIsScaledToThoseWhoEat) {
  House house;
  house.recipe("stew", "2 lb onion", "made in: exactly\n"); // serves 2
  house.plan("2027-03-02: {dinner: stew}");
  auto compiled = house.good();
  EXPECT_EQ(pounds(compiled, "onion"), 2);

  house.plan("2027-03-02: {dinner: stew for 5}");
  compiled = house.good();
  EXPECT_EQ(pounds(compiled, "onion"), 5);

  house.plan("2027-03-02: {dinner: stew}",
             "away: [{who: Ben, from: 2027-03-02, until: 2027-03-03}]\nguests: [{who: Cy, count: "
             "3, portion: 1/2, from: 2027-03-02}]\n");
  compiled = house.good();
  EXPECT_EQ(pounds(compiled, "onion"), Rational(5, 2)); // Ada 1 and three half portions
}

TEST(Resolve, GuestsAloneDoNotTellWhoLivesHere) {
  House house;
  house.write("plans/household.yaml", "meals: {dinner: \"18:30\"}\n");
  house.recipe("stew", "2 lb onion", "made in: exactly\n"); // serves 2
  house.plan("2027-03-02: {dinner: stew}, 2027-03-20: {dinner: stew}",
             "guests: [{who: Cy, count: 3, from: 2027-03-20, until: 2027-03-21}]\n");
  auto compiled = house.good();
  EXPECT_EQ(pounds(compiled, "onion"), 5); // as written, then for three
}

TEST(Resolve, RecipesInRecipesGoToAnyDepth) {
  House house;
  house.recipe("base", "3 lb onion", "makes: 12 cups\nkeeps: {fridge: 3 days}\n");
  house.recipe("sauce", "4 cups base", "makes: 2 lb\n");
  house.recipe("dinner", "1 lb sauce");
  house.plan("2027-03-02: {dinner: dinner}");
  auto compiled = house.good();
  // Half of the sauce takes a sixth of the base; a quarter of it is made.
  EXPECT_EQ(pounds(compiled, "onion"), Rational(3) * Rational(1, 4));
}

TEST(Resolve, LeftoversAreCookedAlongWithTheMealBefore) {
  House house;
  house.recipe("stew", "2 lb onion", "keeps: {fridge: 3 days}\n");
  house.plan("2027-03-02: {dinner: stew}, 2027-03-04: {dinner: leftovers of stew}");
  auto compiled = house.good();
  const auto stews = makings_of(compiled, "stew");
  ASSERT_EQ(stews.size(), 1U);
  EXPECT_EQ(stews[0]->times, 2);
  EXPECT_EQ(pounds(compiled, "onion"), 4);
}

TEST(Resolve, LeftoversThatDoNotKeepAreAnError) {
  House house;
  house.recipe("stew", "2 lb onion", "keeps: {fridge: 3 days}\n");
  house.plan("2027-03-02: {dinner: stew}, 2027-03-06: {dinner: leftovers of stew}");
  EXPECT_FALSE(house.compile());
  EXPECT_TRUE(house.said("R003")) << house.said();
  house.plan("2027-03-06: {dinner: leftovers of stew}");
  EXPECT_FALSE(house.compile());
  EXPECT_TRUE(house.said("R002")) << house.said();
}

TEST(Resolve, OneBatchServesEveryUseThatItKeepsFor) {
  House house;
  house.recipe("base", "3 lb onion", "makes: 6 cups\nkeeps: {fridge: 4 days}\n");
  house.recipe("soup", "3 cups base");
  house.plan("2027-03-08: {dinner: soup}, 2027-03-11: {dinner: soup}, 2027-03-12: {dinner: soup}, "
             "2027-03-16: {dinner: soup}",
             "prep: [{every: Sunday, from: \"14:00\", until: \"17:00\"}]\n");
  auto compiled = house.good();
  // Sunday the 7th keeps to Thursday the 11th; Friday the 12th has no session near enough before it
  // (the 7th is five days away) and is cooked on its day; the 14th serves the 16th.
  const auto batches = makings_of(compiled, "base");
  ASSERT_EQ(batches.size(), 3U);
  std::vector<std::pair<std::string, Rational>> when;
  for (const Making* batch : batches) {
    when.emplace_back(text::print_date(batch->date), batch->times);
  }
  std::sort(when.begin(), when.end());
  EXPECT_EQ(when[0], (std::pair<std::string, Rational>{"2027-03-07", 1}));
  EXPECT_EQ(when[1], (std::pair<std::string, Rational>{"2027-03-12", Rational(1, 2)}));
  EXPECT_EQ(when[2], (std::pair<std::string, Rational>{"2027-03-14", Rational(1, 2)}));
}

// Against every choice of sessions: of those that serve all uses that a session can serve at all,
// the smallest. Uses that none can serve are made on their day, one making a day.
TEST(Resolve, ThereAreAsFewBatchesAsCanBe) {
  std::mt19937 random(20270301);
  const auto number = [&](int least, int most) {
    return least + static_cast<int>(random() % static_cast<unsigned>(most - least + 1));
  };
  for (int instance = 0; instance < 80; ++instance) {
    const int keeps = number(1, 9);
    std::set<int> sessions;
    std::set<int> uses;
    for (int i = number(1, 6); i > 0; --i) {
      sessions.insert(number(1, 31));
    }
    for (int i = number(1, 9); i > 0; --i) {
      uses.insert(number(1, 31));
    }
    House house;
    house.recipe("base", "3 lb onion",
                 fmt::format("makes: 6 cups\nkeeps: {{fridge: {} days}}\n", keeps));
    house.recipe("soup", "3 cups base");
    house.write("plans/on-hand.yaml",
                "date: 2027-02-28\non hand: [\"200 lb onion, pantry, use by 2027-04-30\"]\n");
    std::vector<std::string> meals;
    for (const int day : uses) {
      meals.push_back(fmt::format("2027-03-{:02}: {{dinner: soup}}", day));
    }
    std::string windows = "prep:\n";
    for (const int day : sessions) {
      windows +=
          fmt::format("  - {{date: 2027-03-{:02}, from: \"08:00\", until: \"09:00\"}}\n", day);
    }
    house.plan(text::join(meals, ", "), windows);

    const std::vector<int> days(sessions.begin(), sessions.end());
    const auto serves = [&](int session, int use) {
      return session <= use && use - session <= keeps;
    };
    std::size_t alone = 0;
    for (const int use : uses) {
      alone +=
          std::none_of(days.begin(), days.end(), [&](int s) { return serves(s, use); }) ? 1 : 0;
    }
    std::size_t fewest = days.size() + uses.size();
    for (unsigned chosen = 0; chosen < (1U << days.size()); ++chosen) {
      const auto served = [&](int use) {
        bool possible = false;
        for (std::size_t s = 0; s < days.size(); ++s) {
          possible = possible || serves(days[s], use);
          if ((chosen >> s & 1U) != 0 && serves(days[s], use)) {
            return true;
          }
        }
        return !possible;
      };
      if (std::all_of(uses.begin(), uses.end(), served)) {
        fewest = std::min<std::size_t>(fewest, static_cast<std::size_t>(std::popcount(chosen)));
      }
    }
    const auto compiled = house.good();
    EXPECT_EQ(makings_of(compiled, "base").size(), fewest + alone)
        << "keeps " << keeps << ", sessions on " << fmt::format("{}", fmt::join(days, " "))
        << ", uses on " << fmt::format("{}", fmt::join(uses, " "));
  }
}

TEST(Resolve, JuiceAndZestComeFromTheSameFruit) {
  House house;
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {lemon: 0.50 each}\n");
  house.recipe("tart", "zest of 2 lemons, juice of 3 lemons");
  house.plan("2027-03-02: {dinner: tart}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.shopping.lines.size(), 1U);
  EXPECT_EQ(compiled.shopping.lines[0].packs, 3);
}

TEST(Allergens, AreFoundThroughRecipesInRecipes) {
  House house;
  house.write(
      "plans/household.yaml",
      "people:\n  - {name: Ada, avoids: [egg]}\n  - {name: Ben}\nmeals: {dinner: \"18:30\"}\n");
  house.recipe("base", "2 eggs", "makes: 2 cups\n");
  house.recipe("sauce", "1 cup base", "makes: 2 cups\n");
  house.recipe("dish", "1 cup sauce");
  house.plan("2027-03-02: {dinner: dish}");
  EXPECT_FALSE(house.compile());
  EXPECT_TRUE(house.said("R004")) << house.said();
  EXPECT_NE(house.said().find("Ada must not have egg"), std::string::npos) << house.said();
  EXPECT_NE(house.said().find("through '2 eggs'"), std::string::npos) << house.said();

  house.plan("2027-03-02: {dinner: {dish: dish, eaten by: [Ben]}}");
  house.good();
}

TEST(Allergens, WhatIsNotKnownIsALabelToReadNotSafe) {
  House house;
  house.write("plans/household.yaml",
              "people:\n  - {name: Ada, avoids: [sesame]}\nmeals: {dinner: \"18:30\"}\n");
  house.write("recipes/foods.yaml", "odd paste: {department: condiments, stored: pantry, keeps: "
                                    "{pantry: [1 year, our own]}, shop in: oz}\n");
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {odd paste: 8 oz 3.00}\n");
  house.recipe("dish", "4 oz odd paste");
  house.plan("2027-03-02: {dinner: dish}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.resolved.labels.size(), 1U);
  EXPECT_EQ(compiled.resolved.labels[0].what, "sesame");
}

TEST(Stock, GoesFirstAndOnlyWhileItIsGood) {
  House house;
  house.recipe("stew", "2 lb onion");
  house.write("plans/on-hand.yaml",
              "date: 2027-02-28\non hand:\n  - 3 lb onions, pantry, use by 2027-03-05\n");
  house.plan("2027-03-02: {dinner: stew}, 2027-03-10: {dinner: stew}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.shopping.lines.size(), 1U);
  EXPECT_EQ(compiled.shopping.lines[0].cost,
            200); // 2 lb at 1.00; the third pound on hand is too old
}

TEST(Stock, FromTheFreezerIsNotForAFreshUse) {
  House house;
  house.recipe("stew", "\"2 lb ground beef, fresh\"");
  house.write("plans/on-hand.yaml", "date: 2027-02-28\non hand:\n  - 2 lb ground beef, freezer\n");
  house.plan("2027-03-02: {dinner: stew}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.shopping.lines.size(), 1U);
}

TEST(Stock, CitrusInTheFreezerIsJuice) {
  House house;
  house.write("plans/on-hand.yaml", "date: 2027-02-28\non hand: [\"2 lemons, freezer\"]\n");
  house.recipe("lemonade", "juice of 2 lemons");
  house.plan("2027-03-29: {dinner: lemonade}");
  const auto juice = house.good();
  EXPECT_EQ(juice.shopping.from_stock.size(), 1U);
  EXPECT_TRUE(juice.shopping.lines.empty());
  house.recipe("lemonade", "\"2 lemons, sliced\"");
  house.write("plans/stores/corner.yaml", "shop: Corner\nwalk: [meat]\nprices: {}\n");
  EXPECT_EQ(house.good().shopping.shortfalls.size(), 1U); // no shop has any
  EXPECT_TRUE(house.said("P001")) << house.said();
}

TEST(Safety, RawMeatThatIsSaidToKeepForWeeksIsQuestioned) {
  House house;
  house.plan("2027-03-02: {dinner: 2 eggs}");
  house.write("plans/on-hand.yaml",
              "date: 2027-02-28\non hand: [\"1 lb ground beef, fridge, use by 2027-03-20\"]\n");
  (void)house.good();
  EXPECT_TRUE(house.said("K014")) << house.said();
  house.write("plans/on-hand.yaml",
              "date: 2027-02-28\non hand: [\"1 lb ground beef, fridge, use by 2027-03-02\"]\n");
  (void)house.good();
  EXPECT_FALSE(house.said("K014")) << house.said();
}

TEST(Safety, WhatHasBeenThawedIsNotGoodForLong) {
  House house;
  house.recipe("stew", "1 lb ground beef");
  house.write("plans/on-hand.yaml",
              "date: 2027-03-01\non hand: [\"1 lb ground beef, fridge, thawed\"]\n");
  house.plan("2027-03-02: {dinner: stew}");
  EXPECT_TRUE(house.good().shopping.lines.empty());
  house.plan("2027-03-10: {dinner: stew}");
  EXPECT_EQ(house.good().shopping.lines.size(), 1U);
}

TEST(Resolve, WhatIsOptionalIsToldAndBoughtOnlyWhereTheHouseholdSaysSo) {
  House house;
  house.recipe("stew", "1 lb onion, \"8 oz ground beef, optional\"");
  house.plan("2027-03-02: {dinner: stew}");
  const auto left = house.good();
  ASSERT_EQ(left.resolved.uses.size(), 1U);
  ASSERT_EQ(left.resolved.left_out.size(), 1U);
  EXPECT_EQ(left.kitchen.food(left.resolved.left_out[0].food).name, "ground beef");
  EXPECT_EQ(left.shopping.lines.size(), 1U);
  EXPECT_NE(emit::list_text(left).find("Optional, and not on the list: 8 oz ground beef, for stew"),
            std::string::npos)
      << emit::list_text(left);
  house.household("optional: buy\n");
  const auto bought = house.good();
  EXPECT_EQ(bought.resolved.uses.size(), 2U);
  EXPECT_TRUE(bought.resolved.left_out.empty());
  house.household("optional: maybe\n");
  (void)house.compile();
  EXPECT_TRUE(house.said("K005")) << house.said();
}

// Made on the 7th for the 9th, the 14th and the 15th: what is eaten on the 15th has not stood in
// the fridge for eight days.
TEST(Resolve, LeftoversOfWhatWasFrozenWereFrozen) {
  House house;
  house.recipe("cake", "1 lb all-purpose flour",
               "make ahead: yes\nkeeps: {fridge: 4 days, freezer: 3 months}\n");
  house.plan("2027-03-09: {dinner: cake}, 2027-03-14: {dinner: cake}, "
             "2027-03-15: {dinner: leftovers of cake}",
             "prep: [{date: 2027-03-07, from: \"14:00\", until: \"17:00\"}]\n");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.resolved.makings.size(), 1U);
  const auto& consumers = compiled.resolved.makings[0].consumers;
  ASSERT_EQ(consumers.size(), 3U);
  EXPECT_FALSE(consumers[0].from_freezer);
  EXPECT_TRUE(consumers[1].from_freezer);
  EXPECT_TRUE(consumers[2].from_freezer);
  // A day longer than it keeps frozen, the leftovers are of a making of their own.
  house.recipe("cake", "1 lb all-purpose flour",
               "make ahead: yes\nkeeps: {fridge: 4 days, freezer: 7 days}\n");
  EXPECT_EQ(house.good().resolved.makings.size(), 2U);
}

// A dough that is kneaded in the session in which its pie is baked never sees the freezer, however
// long the pie is eaten afterwards, and whatever the dough by itself would keep.
TEST(Resolve, WhatIsMadeForAPieOfTheSameSessionIsFresh) {
  House house;
  house.recipe("dough", "1 lb all-purpose flour", "makes: 1 pound\n");
  house.recipe("pie", "1 lb dough, 1 lb onion", "make ahead: yes\nkeeps: {fridge: 3 days}\n");
  house.plan("2027-03-04: {dinner: pie}",
             "prep: [{date: 2027-03-02, from: \"14:00\", until: \"17:00\"}]\n");
  const auto compiled = house.good();
  const auto& makings = compiled.resolved.makings;
  ASSERT_EQ(makings.size(), 2U);
  EXPECT_EQ(makings[0].session, 0U);
  EXPECT_EQ(makings[1].session, 0U);
  ASSERT_EQ(makings[1].consumers.size(), 1U);
  EXPECT_FALSE(makings[1].consumers[0].from_freezer);
  for (const prep::Reminder& one : compiled.prep.reminders) {
    EXPECT_NE(one.kind, prep::Reminder::Kind::thaw) << one.what;
  }
  // The pie is as good as when its dough had been bought.
  EXPECT_EQ(makings[0].good_until, text::parse_date("2027-03-05"));
}

// The same where the dough is kneaded in the afternoon, and the pie baked for dinner and the day
// after.
TEST(Resolve, WhatIsMadeInASessionForTheDinnerOfThatDayIsFresh) {
  House house;
  house.recipe("dough", "1 lb all-purpose flour", "makes: 1 pound\nkeeps: {freezer: 3 months}\n");
  house.recipe("pie", "1 lb dough, 1 lb onion", "keeps: {fridge: 3 days}\n");
  house.plan("2027-03-02: {dinner: pie}, 2027-03-04: {dinner: leftovers of pie}",
             "prep: [{date: 2027-03-02, from: \"14:00\", until: \"17:00\"}]\n");
  const auto compiled = house.good();
  const auto& makings = compiled.resolved.makings;
  ASSERT_EQ(makings.size(), 2U);
  EXPECT_FALSE(makings[0].session);
  EXPECT_EQ(makings[1].session, 0U);
  ASSERT_EQ(makings[1].consumers.size(), 1U);
  EXPECT_FALSE(makings[1].consumers[0].from_freezer);
}

// Herbs that are eaten raw are fresh. The sausages are no sage, what is reserved is not served, and
// what cooks at a rolling boil does not stop at the top.
TEST(Resolve, AHerbIsFoundByWholeWords) {
  House house;
  const auto fresh = [&](const std::string& line, const std::string& method) {
    house.recipe("stew", line, "method: [" + method + "]\n");
    house.plan("2027-03-02: {dinner: stew}");
    const auto compiled = house.good();
    EXPECT_EQ(compiled.resolved.uses.size(), 1U);
    return compiled.resolved.uses.at(0).fresh;
  };
  const std::string strewn = "{do: Fry the sausages, hands on: 5 min, on: burner}, "
                             "{do: Strew the sage over, hands on: 1 min}";
  EXPECT_TRUE(fresh("1/4 cup chopped fresh sage", strewn));
  const std::string cooked = "{do: Stir in the parsley, hands on: 5 min, on: burner}";
  EXPECT_FALSE(fresh("\"1/4 cup chopped parsley, some reserved\"", cooked));
  EXPECT_FALSE(fresh("\"1/4 cup chopped parsley, stopping short of the stalks\"", cooked));
  EXPECT_TRUE(fresh("\"1/4 cup chopped parsley, to serve\"", cooked));
  EXPECT_TRUE(fresh("\"1/4 cup chopped parsley, for topping\"", cooked));
}

} // namespace
} // namespace manciple
