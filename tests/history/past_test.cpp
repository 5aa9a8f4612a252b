// What has been done of a plan: sums worked by hand.
#include "house.hpp"

#include "cli/price_edit.hpp"
#include "history/settled.hpp"
#include "history/written.hpp"

#include <map>

namespace manciple {
namespace {

using history::Past;
using measure::Rational;
using text::parse_date;

constexpr double pound = 453.59237;

class PastTest : public testing::Test {
protected:
  Past until(const char* day) {
    house.sources = {};
    house.diagnostics = {};
    auto done = cli::done_until(house.root() + "/plans/p.yaml", parse_date(day), house.sources,
                                house.diagnostics);
    EXPECT_TRUE(done) << house.said();
    if (!done) {
      return {};
    }
    kitchen = std::move(done->kitchen);
    return std::move(done->past);
  }
  // Grams (or pieces) of a food that are there, in a place if one is said.
  double there(const Past& past, const char* name,
               std::optional<foods::Place> place = std::nullopt) const {
    double sum = 0;
    for (const history::Holding& one : past.there) {
      if (kitchen.food(one.food).name == name && (!place || one.place == *place) && !one.cut) {
        sum += to_double(one.amount);
      }
    }
    return sum;
  }
  void receipt(const std::string& lines, const char* day = "2027-03-01",
               const std::string& further = {}) {
    house.write(std::string("plans/receipts/") + day + "-corner.yaml",
                "shop: corner\nlines:\n" + lines + further);
  }

  House house;
  kitchen::Kitchen kitchen;
};

TEST_F(PastTest, WhatWasBoughtLessWhatWasEatenIsThere) {
  house.recipe("stew", "1 lb onions, 1 lb ground beef");
  house.plan("2027-03-02: {dinner: stew}, 2027-03-09: {dinner: stew}");
  receipt("  - 3 lb onions, 3.00\n  - 1 lb ground beef, 5.00\n");
  EXPECT_NEAR(there(until("2027-03-02"), "onion"), 3 * pound, 1e-6);
  EXPECT_NEAR(there(until("2027-03-03"), "onion"), 2 * pound, 1e-6);
  EXPECT_NEAR(there(until("2027-03-03"), "ground beef"), 0, 1e-6);
}

TEST_F(PastTest, NothingIsLostAndNothingComesFromNowhere) {
  house.recipe("stew", "1 lb onions, 3/4 lb ground beef, 3 eggs, 1 cup all-purpose flour");
  house.plan("every Monday: {dinner: stew}, every Thursday: {dinner: stew}",
             "staples: [6 eggs per week]\n"
             "changes: {2027-03-04: {dinner: out, thrown away: 2 eggs}, 2027-03-05: {eaten: 1 lb "
             "onions}}\n");
  house.write("plans/on-hand.yaml",
              "date: 2027-02-28\non hand: [\"5 eggs, fridge, until 2027-03-03\"]\n");
  receipt("  - 12 eggs, 3.00\n  - 4 lb onions, 4.00\n  - 3 lb ground beef, 15.00\n"
          "  - 5 lb all-purpose flour, 3.00\n");
  receipt("  - 24 eggs, 6.00\n  - 2 lb ground beef, 10.00, freeze 1 lb\n", "2027-03-06");
  for (const char* day : {"2027-03-01", "2027-03-03", "2027-03-06", "2027-03-17", "2027-03-31"}) {
    const Past past = until(day);
    std::map<foods::FoodId, Rational> sums;
    for (const history::Move& move : past.moves) {
      const bool in =
          move.kind == history::Move::Kind::counted || move.kind == history::Move::Kind::bought;
      sums[move.food] += in ? move.amount : Rational(-move.amount);
    }
    for (const history::Holding& one : past.there) {
      sums[one.food] -= one.cut || one.given ? Rational(0) : one.amount;
    }
    for (const auto& [food, sum] : sums) {
      EXPECT_EQ(sum, 0) << kitchen.food(food).name << " on " << day;
    }
  }
}

TEST_F(PastTest, WhatGoesOffFirstIsEatenFirstAndThrownAwayAfterItsDay) {
  house.recipe("omelet", "4 eggs");
  house.plan("2027-03-02: {dinner: omelet}");
  house.write("plans/on-hand.yaml", "date: 2027-03-01\non hand:\n"
                                    "  - 6 eggs, fridge, until 2027-03-20\n"
                                    "  - 5 eggs, fridge, until 2027-03-03\n");
  EXPECT_NEAR(there(until("2027-03-03"), "egg"), there(until("2027-03-01"), "egg") * 7 / 11, 1e-6);
  EXPECT_NEAR(there(until("2027-03-04"), "egg"), there(until("2027-03-01"), "egg") * 6 / 11, 1e-6);
}

TEST_F(PastTest, WhatWouldBeEatenTooLateWasFrozenUnlessTheReceiptSays) {
  house.recipe("stew", "1 lb ground beef");
  house.plan("2027-03-02: {dinner: stew}, 2027-03-20: {dinner: stew}");
  receipt("  - 2 lb ground beef, 10.00\n");
  EXPECT_NEAR(there(until("2027-03-03"), "ground beef", foods::Place::freezer), pound, 1e-6);
  receipt("  - 2 lb ground beef, 10.00, freeze none\n");
  const Past spoilt = until("2027-03-10");
  EXPECT_NEAR(there(spoilt, "ground beef"), 0, 1e-6);
  EXPECT_EQ(spoilt.moves.back().kind, history::Move::Kind::thrown_away);
}

TEST_F(PastTest, APackIsOpenedWhenItIsUsedAndItsClockStarts) {
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {whole milk: 1/2 gal 3.00}\n");
  house.recipe("porridge", "2 cups whole milk");
  house.plan("2027-03-02: {breakfast: porridge}");
  receipt("  - 2 (1/2 gal) packs whole milk, 6.00\n");
  const Past past = until("2027-03-03");
  ASSERT_EQ(past.there.size(), 2U);
  EXPECT_FALSE(past.there[0].opened);
  EXPECT_EQ(past.there[1].opened, parse_date("2027-03-02"));
  EXPECT_EQ(past.there[1].use_by, parse_date("2027-03-09"));        // a week once opened, FSIS 18
  EXPECT_NEAR(there(past, "whole milk"), 2 * 1952 - 2 * 244, 1e-6); // SR28 1077.1: 244 g a cup
}

TEST_F(PastTest, WhatIsThereReadsBackAsTheSame) {
  house.recipe("stew", "2/3 lb onions, 2 eggs, 1/3 cup all-purpose flour",
               "keeps: {fridge: 4 days}\nmakes: 3 cups\n");
  house.recipe("hash", "1 cup stew, 1 egg");
  house.plan("2027-03-02: {dinner: stew}, 2027-03-04: {dinner: leftovers of stew}");
  receipt("  - 3 lb onions, 3.00\n  - 12 eggs, 3.00\n  - 5 lb all-purpose flour, 3.00\n");
  const Past first = until("2027-03-03");
  house.write("plans/on-hand/2027-03-03.yaml", history::file_written(kitchen, first));
  const Past again = until("2027-03-03");
  ASSERT_EQ(first.there.size(), again.there.size()) << history::file_written(kitchen, again);
  for (const char* food : {"onion", "egg", "all-purpose flour"}) {
    EXPECT_NEAR(there(first, food), there(again, food), 1e-3) << food;
    EXPECT_GE(there(again, food), there(first, food)) << food;
  }
  ASSERT_EQ(again.made.size(), 1U);
  EXPECT_EQ(again.made.front().times, first.made.front().times);
  EXPECT_EQ(again.made.front().made, parse_date("2027-03-02"));
  EXPECT_EQ(house.good().resolved.makings.size(), 1U); // the leftovers, and nothing cooked
}

TEST_F(PastTest, TheListOfWhatIsToComeStaysAsItWas) {
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {onion: 1.00/lb, ground beef: 5.00/lb, egg: 12 large 3.00}\n");
  house.recipe("stew", "1 lb onions, 1 lb ground beef");
  house.recipe("omelet", "4 eggs");
  house.plan("every Tuesday: {dinner: stew}, every Friday: {breakfast: omelet}",
             "staples: [4 eggs per week]\n");
  const emit::Compiled whole = house.good();
  const auto paid = [](const emit::Compiled& compiled, const char* from) {
    kitchen::Cents sum = 0;
    for (const purchase::StopMade& visit : compiled.shopping.visits) {
      sum += visit.date >= *parse_date(from) ? visit.paid() : 0;
    }
    return sum;
  };
  for (const char* day : {"2027-03-02", "2027-03-06", "2027-03-11", "2027-03-20"}) {
    house.write("plans/p.yaml",
                "plan: P\nfrom: 2027-03-01\nuntil: 2027-03-31\nas of: " + std::string(day) +
                    "\nmeals: {every Tuesday: {dinner: stew}, every Friday: "
                    "{breakfast: omelet}}\nstaples: [4 eggs per week]\ntrips:\n"
                    "  - {date: 2027-03-01, stops: [corner]}\n"
                    "  - {every: Saturday, stops: [corner]}\n");
    const emit::Compiled rest = house.good();
    EXPECT_EQ(rest.shopping.paid, paid(whole, day)) << day;
    EXPECT_EQ(rest.past->paid + rest.shopping.paid, whole.shopping.paid) << day;
  }
}

TEST_F(PastTest, WhatIsMissingIsBoughtOnTheNextTripAndWhatWasBoughtIsNot) {
  house.recipe("stew", "1 lb onions");
  house.plan("2027-03-09: {dinner: stew}, 2027-03-10: {dinner: stew}",
             "as of: 2027-03-04\nextra: [{buy: 1 birthday card, by: 2027-03-02}]\n");
  receipt("  - 1 lb onions, 1.00\n");
  const emit::Compiled rest = house.good();
  ASSERT_EQ(rest.shopping.lines.size(), 2U);
  EXPECT_EQ(rest.kitchen.food(rest.shopping.lines[0].food).name, "onion");
  EXPECT_NEAR(to_double(rest.shopping.lines[0].amount), pound, 1);
  EXPECT_EQ(rest.kitchen.food(rest.shopping.lines[1].food).name, "greeting card");
  EXPECT_EQ(rest.shopping.visits.front().date, parse_date("2027-03-06"));
}

TEST_F(PastTest, TheBudgetCountsWhatWasPaid) {
  house.recipe("stew", "1 lb onions");
  house.plan("2027-03-02: {dinner: stew}", "budget: 10.00\n");
  receipt("  - 1 lb onions, 1.20\n", "2027-03-01", "tax: 0.10\n");
  EXPECT_EQ(house.good().plan().budget, 870);
}

TEST_F(PastTest, LeftoversAreEatenThoughTheirMealIsPast) {
  house.recipe("chili", "2 lb ground beef",
               "serves: 4\nkeeps: {fridge: 4 days, freezer: 2 months}\n");
  house.write("recipes/chili.yaml", "serves: 4\ningredients: [2 lb ground beef]\n"
                                    "keeps: {fridge: 4 days, freezer: 2 months}\n");
  house.plan("2027-03-02: {dinner: chili}, 2027-03-05: {dinner: leftovers of chili}",
             "as of: 2027-03-04\n");
  receipt("  - 2 lb ground beef, 10.00\n");
  const emit::Compiled rest = house.good();
  EXPECT_TRUE(rest.shopping.lines.empty());
  ASSERT_EQ(rest.resolved.makings.size(), 1U);
  EXPECT_TRUE(rest.resolved.makings.front().on_hand);
  EXPECT_EQ(rest.resolved.makings.front().times, Rational(1, 2));
}

TEST_F(PastTest, AReceiptIsSetBesideTheList) {
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices:\n"
                                          "  onion: 3 lb bag 3.00 # the yellow ones\n"
                                          "  egg: [12 large 3.00, 18 large 4.20]\n"
                                          "  ground beef: 5.00/lb\n"
                                          "  all-purpose flour: 5 lb bag 3.00\n");
  house.recipe("stew", "3 lb onions, 12 eggs, 1 lb ground beef, 1 lb all-purpose flour");
  house.plan("2027-03-02: {dinner: stew}");
  receipt(
      "  - 3 lb onions, 3.29\n  - 12 eggs, 1.99, sale\n  - 1 lb rye flour, 2.00, instead of flour\n"
      "  - 1.1 lb ground beef, 5.50\n",
      "2027-03-01", "total: 13.00\n");
  const auto beside = cli::beside_list(house.root() + "/plans/p.yaml", "2027-03-01-corner",
                                       house.sources, house.diagnostics);
  ASSERT_TRUE(beside && beside->list) << house.said();
  const auto settled = history::settle(beside->kitchen, beside->receipt, beside->list);
  std::map<std::string, history::SettledLine::Fate> fates;
  for (const auto& line : settled.lines) {
    fates[beside->kitchen.food(line.food).name] = line.fate;
  }
  using Fate = history::SettledLine::Fate;
  EXPECT_EQ(fates["onion"], Fate::other_price);
  EXPECT_EQ(fates["egg"], Fate::other_price);
  EXPECT_EQ(fates["rye flour"], Fate::not_planned);
  EXPECT_EQ(fates["all-purpose flour"], Fate::missing);
  EXPECT_EQ(fates["ground beef"], Fate::other_amount);
  EXPECT_EQ(settled.planned, 1400);
  EXPECT_EQ(settled.paid, 1300);
  EXPECT_EQ(settled.unaccounted, 1300 - (329 + 199 + 200 + 550));

  const auto file = house.sources.find(house.root() + "/plans/stores/corner.yaml");
  ASSERT_TRUE(file);
  const std::string_view text = house.sources.text(*file);
  const auto edits = cli::price_edits(text, beside->kitchen, beside->receipt, settled);
  ASSERT_EQ(edits.size(), 1U);
  EXPECT_EQ(edits.front().after, "  onion: 3 lb bag 3.29 # the yellow ones; 3.00 until 2027-03-01");
  const std::string after = cli::edited(text, edits);
  EXPECT_EQ(after.size(), text.size() + std::string("; 3.00 until 2027-03-01").size());
}

TEST_F(PastTest, ALaterCountIsToldFromWhatShouldBeThere) {
  house.recipe("stew", "1 lb onions, 1 lb ground beef");
  house.plan("2027-03-02: {dinner: stew}, 2027-03-09: {dinner: stew}");
  house.write("plans/on-hand.yaml",
              "date: 2027-03-01\non hand: [6 lb onions, 12 eggs, 4 lemons]\n");
  house.write("plans/on-hand/2027-03-05.yaml",
              "on hand: [3 lb onions, 13 eggs]\nthrown away: 4 lemons\neaten: [1 lb onions]\n");
  receipt("  - 1 lb ground beef, 5.00\n");
  house.sources = {};
  house.diagnostics = {};
  const auto done =
      cli::reviewed(house.root() + "/plans/p.yaml", house.sources, house.diagnostics).done;
  ASSERT_TRUE(done) << house.said();
  std::map<std::string, history::Difference> of;
  for (const history::Difference& one : done->past.differences) {
    of.emplace(done->kitchen.food(one.food).name, one);
  }
  ASSERT_EQ(of.size(), 3U);
  EXPECT_NEAR(to_double(of.at("onion").expected), 5 * pound, 1e-6);
  EXPECT_NEAR(to_double(of.at("onion").eaten), pound, 1e-6);
  EXPECT_NEAR(to_double(of.at("onion").missing()), pound, 1e-6);
  EXPECT_EQ(of.at("lemon").missing(), 0);
  EXPECT_EQ(of.at("lemon").thrown_away, of.at("lemon").expected);
  EXPECT_EQ(of.at("egg").missing() * 12, -of.at("egg").expected); // one has been found
  std::map<foods::FoodId, Rational> sums;
  using Kind = history::Move::Kind;
  for (const history::Move& move : done->past.moves) {
    const bool in =
        move.kind == Kind::counted || move.kind == Kind::bought || move.kind == Kind::found;
    sums[move.food] += in ? move.amount : Rational(-move.amount);
  }
  for (const history::Holding& one : done->past.there) {
    sums[one.food] -= one.amount;
  }
  for (const auto& [food, sum] : sums) {
    EXPECT_EQ(sum, 0) << done->kitchen.food(food).name;
  }
}

TEST_F(PastTest, ACountOfALaterMonthIsRefusedWithWhereItBelongs) {
  house.recipe("stew", "1 lb onions");
  house.plan("2027-03-02: {dinner: stew}");
  house.write("plans/on-hand.yaml", "date: 2027-04-10\non hand: [6 lb onions]\n");
  EXPECT_FALSE(house.compile());
  EXPECT_NE(house.said().find("rename the file to plans/on-hand/2027-04-10.yaml"),
            std::string::npos)
      << house.said();
  std::filesystem::create_directories(house.root() + "/plans/on-hand");
  std::filesystem::rename(house.root() + "/plans/on-hand.yaml",
                          house.root() + "/plans/on-hand/2027-04-10.yaml");
  EXPECT_TRUE(house.good().kitchen.on_hand.lots.empty());
}

TEST_F(PastTest, WhatIsThereIsWrittenWithWhatItWouldCostToBuyAgain) {
  house.recipe("stew", "1 lb onions, 1/2 lb carrots");
  house.plan("2027-03-02: {dinner: stew}, 2027-03-09: {dinner: stew}");
  house.write("plans/stores/corner.yaml", "prices: {onions: 1.50/lb, carrots: 2 lb bag 2.00}\n");
  house.write(
      "plans/on-hand.yaml",
      "date: 2027-03-01\non hand: [2 lb onions, 1 oz cinnamon, \"4 servings stew, freezer\"]\n");
  const Past past = until("2027-03-02");
  const std::string file = history::file_written(kitchen, past);
  // 2 lb of onions, 2 lb of carrots, and twice the stew: 3.00 + 2.00 + 4.00.
  EXPECT_NE(file.find("# It would cost $9.00 to buy again; one thing has no known price.\n"),
            std::string::npos)
      << file;
  EXPECT_NE(file.find("  - 2 lb onions, pantry, until 2027-03-31  # $3.00\n"), std::string::npos)
      << file;
  EXPECT_NE(file.find("cinnamon, pantry, until 2031-02-28\n"), std::string::npos) << file;
}

// Of two trips on a day the one to the market is home after dinner: what comes from there is not
// eaten at dinner.
TEST_F(PastTest, WhatWasBoughtIsAtHomeWithTheTripToItsShop) {
  house.recipe("stew", "1 lb onions");
  house.write("plans/stores/market.yaml", "shop: Market\nprices: {onion: 1.00/lb}\n");
  const auto left = [&](const std::string& shop) {
    house.write("plans/p.yaml", "plan: P\nfrom: 2027-03-01\nuntil: 2027-03-31\n"
                                "meals: {2027-03-01: {dinner: stew}}\ntrips:\n"
                                "  - {date: 2027-03-01, stops: [corner], home by: \"10:00\"}\n"
                                "  - {date: 2027-03-01, stops: [market], home by: \"20:00\"}\n");
    house.write("plans/receipts/2027-03-01-any.yaml",
                "date: 2027-03-01\nshop: " + shop + "\nlines:\n  - 1 lb onions, 1.00\n");
    return there(until("2027-03-02"), "onion");
  };
  EXPECT_NEAR(left("corner"), 0, 1e-6);
  EXPECT_NEAR(left("market"), pound, 1e-6);
}

} // namespace
} // namespace manciple
