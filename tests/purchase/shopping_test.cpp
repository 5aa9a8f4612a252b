#include "house.hpp"
#include "purchase/other_offers.hpp"

namespace manciple {
namespace {

using measure::Rational;

TEST(Shopping, AWorkedExampleByHand) {
  // Stew for 2, twice as written for 4 people: 3 lb of onion as bought.
  //   2 cups chopped onion: 2 x 160 g (SR28 11282.1) = 320 g, over 90 % edible = 355.555... g
  //   twice (serves 2, for 4)                        = 711.111... g = 1.5677... lb
  // The counter sells tenths of a pound: 1.6 lb at 1.29 = 2.064, a till says 2.06.
  // 3 large eggs, twice: 6 eggs; the dozen at 3.00 leaves 6.
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {onion: 1.29/lb, egg: 12 large 3.00}\n");
  house.recipe("stew", "\"2 cups onion, chopped\", 3 large eggs");
  house.plan("2027-03-02: {dinner: stew for 4}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.shopping.lines.size(), 2U);
  const auto& onion = compiled.shopping.lines[0];
  EXPECT_EQ(compiled.kitchen.food(onion.food).name, "onion");
  EXPECT_EQ(onion.packs, 16);
  EXPECT_EQ(onion.cost, 206);
  const auto& egg = compiled.shopping.lines[1];
  EXPECT_EQ(egg.packs, 1);
  EXPECT_EQ(measure::print_decimal(egg.kept, 3), measure::print_decimal(egg.amount / 2, 3));
  EXPECT_EQ(compiled.shopping.paid, 506);
}

TEST(Shopping, WhatEveryPartCostsMakesUpTheWhole) {
  House house;
  house.recipe("stew", "\"1/3 cup onion, chopped\", 1 lb ground beef, 2 eggs",
               "keeps: {fridge: 3 days}\n");
  house.plan("every Tuesday: {dinner: stew}, every Wednesday: {dinner: leftovers of stew}, every "
             "Sunday: {breakfast: 2 eggs}",
             "staples: [6 eggs per week, 1 lb onion per month]\nextra: [5 lb all-purpose flour]\n");
  const auto compiled = house.good();
  kitchen::Cents goods = 0;
  for (const auto& stop : compiled.shopping.visits) {
    goods += stop.goods;
  }
  EXPECT_EQ(compiled.worth.total(), Rational(goods));
}

// FSIS product 514: deli turkey keeps 3 to 5 days once opened, 2 weeks unopened.
TEST(Shopping, SlicedMeatThatWasOpenedIsEatenWithinDays) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {deli turkey: [1 lb pack 6.00, 4 oz pack 2.50]}\n");
  house.recipe("stew", "4 oz deli turkey");
  house.plan("2027-03-02: {dinner: stew}, 2027-03-05: {dinner: stew}");
  EXPECT_EQ(house.good().shopping.paid, 500); // of two of the small ones, or both of the large one
  house.plan("2027-03-02: {dinner: stew}, 2027-03-06: {dinner: stew}, 2027-03-07: {dinner: stew}, "
             "2027-03-08: {dinner: stew}");
  EXPECT_EQ(house.good().shopping.lines.size(), 2U); // the large one is not good from first to last
}

TEST(Shopping, WhatIsCutAtTheCounterHasBeenOpened) {
  House house;
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {deli turkey: 6.00/lb}\n");
  house.recipe("stew", "4 oz deli turkey");
  house.plan("2027-03-04: {dinner: stew}");
  EXPECT_TRUE(house.good().shopping.shortfalls.empty());
  house.plan("2027-03-05: {dinner: stew}");
  EXPECT_EQ(house.good().shopping.shortfalls.size(), 1U);
}

TEST(Shopping, ParsleyIsWorthNoTripOfItsOwn) {
  House house;
  house.household("a stop costs: 3.00\n");
  house.write(
      "plans/stores/corner.yaml",
      "shop: Corner\nprices: {parsley: bunch 1.58, onion: 1.00/lb, ground beef: 5.00/lb}\n");
  house.recipe("stew", "1 lb onion, 2 tbsp chopped parsley");
  house.plan("2027-03-11: {dinner: stew}"); // five days after the last trip, and it keeps three
  EXPECT_EQ(house.good().shopping.visits.size(), 1U);
  EXPECT_EQ(house.good().shopping.shortfalls.size(), 1U);
  // Where one shops anyway, it is bought.
  house.plan("2027-03-07: {dinner: stew}");
  EXPECT_TRUE(house.good().shopping.shortfalls.empty());
  // Without it there would be no tabbouleh.
  house.recipe("stew", "1 lb onion, 3 cups chopped parsley");
  const auto compiled = house.good();
  for (const purchase::Shortfall& one : compiled.shopping.shortfalls) {
    EXPECT_EQ(one.missing, 0); // a little short is enough
  }
}

TEST(Shopping, EveryUseIsMetExactly) {
  House house;
  house.recipe("stew", "\"1/3 cup onion, chopped\", 1/7 lb ground beef", "give: 0 %\n");
  house.plan("every day: {dinner: stew}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.resolved.uses.size(), 2U * 31U);
  std::vector<Rational> met(compiled.resolved.uses.size(), Rational(0));
  for (const auto& supply : compiled.shopping.supplies) {
    met[supply.use] += supply.covers;
  }
  for (std::size_t u = 0; u < met.size(); ++u) {
    EXPECT_EQ(met[u], compiled.resolved.uses[u].amount);
  }
}

TEST(Shopping, NothingIsBoughtThatIsNotGoodWhenItIsUsed) {
  House house;
  house.recipe("stew", "\"1 lb ground beef, fresh\""); // keeps two days, and may not be frozen
  house.plan("2027-03-10: {dinner: stew}");
  EXPECT_EQ(house.good().shopping.shortfalls.size(), 1U); // trips on the 6th and the 13th
  EXPECT_TRUE(house.said("P004")) << house.said();
  house.plan("2027-03-07: {dinner: stew}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.shopping.visits.size(), 1U);
  EXPECT_EQ(text::print_date(compiled.shopping.visits[0].date), "2027-03-06");
}

TEST(Shopping, ASmallPackNowWhenTheBigOneIsCheaperLater) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {all-purpose flour: [1 lb bag 1.50, {offer: 5 lb bag 6.00, "
              "sale: {price: 2.50, from: 2027-03-06}}]}\n");
  house.recipe("bread", "1 lb all-purpose flour");
  house.plan("2027-03-02: {dinner: bread}, 2027-03-09: {dinner: bread}, 2027-03-16: {dinner: "
             "bread}, 2027-03-23: {dinner: bread}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.shopping.lines.size(), 2U);
  EXPECT_EQ(compiled.shopping.lines[0].cost, 150);
  EXPECT_EQ(compiled.shopping.lines[1].cost, 250);
}

TEST(Shopping, BreakfastIsBeforeThatDaysShopping) {
  House house;
  house.recipe("toast", "1 lb onion");
  house.plan("2027-03-01: {breakfast: toast}");
  EXPECT_EQ(house.good().shopping.shortfalls.size(), 1U);
  EXPECT_TRUE(house.said("P002")) << house.said();
  house.plan("2027-03-06: {breakfast: toast}");
  const auto compiled = house.good();
  EXPECT_EQ(text::print_date(compiled.shopping.visits.at(0).date), "2027-03-01");
}

TEST(Shopping, ALimitTaxCreditAndDealsAreAsOnAReceipt) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\ntax: {household: 8.25 %}\nstore credit: 1.00\nprices: {dish soap: "
              "{offer: 1 bottle 2.99}, egg: {offer: 6 large 2.00, deal: 2 for 3.50}}\n");
  house.plan("2027-03-02: {dinner: 10 large eggs}", "extra: [1 bottle dish soap]\n");
  const auto compiled = house.good();
  const auto& stop = compiled.shopping.visits.at(0);
  EXPECT_EQ(stop.goods, 350 + 299);
  EXPECT_EQ(stop.tax, 25); // 8.25 % of 2.99 is 0.2467
  EXPECT_EQ(stop.credit, 100);
  EXPECT_EQ(compiled.shopping.paid, 350 + 299 + 25 - 100);
}

TEST(Shopping, AMemberPaysTheMemberPriceAndOthersDoNot) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {egg: {offer: 12 large 4.00, member price: 3.10}}\n");
  house.plan("2027-03-02: {dinner: 10 large eggs}");
  EXPECT_EQ(house.good().shopping.paid, 400);
  house.household("member of: [corner]\n");
  EXPECT_EQ(house.good().shopping.paid, 310);
  house.household("member of: [cornr]\n");
  EXPECT_FALSE(house.compile());
  EXPECT_TRUE(house.said("K007")) << house.said();
}

TEST(Shopping, AReductionIsTakenWhereEnoughIsSpent) {
  House house;
  const std::string prices = "prices: {egg: 12 large 4.00, onion: 3 lb bag 3.00}\n";
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nreduction: {over: 6.50, off: 2.00}\n" + prices);
  house.plan("2027-03-02: {dinner: 10 large eggs}");
  EXPECT_EQ(house.good().shopping.paid, 400); // a second dozen for 2.00 is no reduction
  house.plan("2027-03-02: {dinner: [10 large eggs, 2 lb onions]}");
  const auto compiled = house.good();
  EXPECT_EQ(compiled.shopping.visits.at(0).off, 200);
  EXPECT_EQ(compiled.shopping.paid, 500);
}

TEST(Shopping, APreferredShopIsChosenUnlessItIsMuchDearer) {
  House house;
  house.write("plans/stores/market.yaml", "shop: Market\nprices: {egg: 12 large 3.20}\n");
  house.plan_with_trip("2027-03-02: {dinner: 10 large eggs}", "[corner, market]");
  EXPECT_EQ(house.good().shopping.paid, 300);
  house.household("buying: {egg: {prefer: [market]}}\n");
  EXPECT_EQ(house.good().shopping.paid, 320); // 3.00 counts as 3.30
  house.write("plans/stores/market.yaml", "shop: Market\nprices: {egg: 12 large 3.40}\n");
  EXPECT_EQ(house.good().shopping.paid, 300);
}

TEST(Shopping, AnyOfTheseIsTheCheapestOfThem) {
  // 8 lb of potatoes for 2.00 beat 4 lb of red ones for 3.00; a pound of red is worth two.
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {red potatoes: 2 lb bag 3.00, russet potatoes: 8 lb bag "
              "2.00}\n");
  house.recipe("mash", "4 lb red potatoes");
  house.plan("2027-03-02: {dinner: mash}");
  EXPECT_EQ(house.good().shopping.paid, 600);
  house.household("any of these: [{red potatoes: 1, russet potatoes: 2}]\n");
  const auto compiled = house.good();
  EXPECT_EQ(compiled.shopping.paid, 200);
  const auto& line = compiled.shopping.lines.at(0);
  EXPECT_EQ(compiled.kitchen.food(line.food).name, "russet potato");
  const auto& supply = compiled.shopping.supplies.at(0);
  EXPECT_EQ(supply.covers, compiled.resolved.uses.at(0).amount); // 4 lb
  EXPECT_EQ(supply.amount, supply.covers * 2);
  EXPECT_EQ(line.kept + line.wasted, 0);
}

TEST(Shopping, ASubstituteWithAnAllergenIsRefusedLikeTheFoodItself) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {sunflower seeds: 1 lb bag 5.00, peanuts: 1 lb bag 3.00}\n");
  house.recipe("salad", "1/2 lb sunflower seeds");
  house.plan("2027-03-02: {dinner: salad}");
  house.household("any of these: [{sunflower seeds: 1, peanuts: 1}]\n", "[peanut]");
  EXPECT_FALSE(house.compile());
  EXPECT_TRUE(house.said("R004")) << house.said();
  house.household("any of these: [{sunflower seeds: 1, peanuts: 1}]\n");
  EXPECT_TRUE(house.compile()) << house.said();
}

TEST(Shopping, ASubstituteForFoodThatIsServedPlainIsRefusedToo) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {sunflower seeds: 1 lb bag 5.00, peanuts: 1 lb bag 3.00}\n");
  house.plan("2027-03-02: {dinner: 1/2 lb sunflower seeds}");
  house.household("any of these: [{sunflower seeds: 1, peanuts: 1}]\n", "[peanut]");
  EXPECT_FALSE(house.compile());
  EXPECT_TRUE(house.said("R004")) << house.said();
  house.household("", "[peanut]");
  EXPECT_TRUE(house.compile()) << house.said();
}

TEST(Shopping, OtherWaysOfBuyingAreCountedWithStopsAndWaste) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {whole milk: [1 qt carton 1.50, 1 gal jug 4.00]}\n");
  house.plan("2027-03-02: {breakfast: 3 cups whole milk}");
  const auto compiled = house.good();
  const auto food = compiled.shopping.lines.at(0).food;
  const auto ways = purchase::other_offers(compiled.kitchen, compiled.shopping, food);
  ASSERT_EQ(ways.size(), 2U);
  EXPECT_TRUE(ways[0].on_the_list);
  EXPECT_EQ(ways[0].more, 0);
  EXPECT_FALSE(ways[1].on_the_list);
  EXPECT_EQ(ways[1].spent, 400);
  // 2.50 at the till; and of the gallon 13 cups go off, of the quart 1, at a quarter of the usual
  // 4.00 a gallon.
  EXPECT_EQ(ways[1].more, 250 + 75);
  EXPECT_GT(ways[1].wasted, ways[0].wasted);
}

TEST(Shopping, LemonsForJuiceWaitAsCubesAndWholeOnesCannot) {
  House house;
  // Sold on the first day only, used four weeks later; whole they keep three.
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {lemons: {offer: 1.00 each, until: 2027-03-01}}\n");
  house.recipe("lemonade", "juice of 2 lemons");
  house.plan("2027-03-29: {dinner: lemonade}");
  const auto compiled = house.good();
  const auto& line = compiled.shopping.lines.at(0);
  const double grams = to_double(line.amount);
  EXPECT_GT(grams, 0);
  EXPECT_NEAR(to_double(line.to_freeze), grams, 0.001);
  house.recipe("lemonade", "\"2 lemons, sliced\"");
  EXPECT_EQ(house.good().shopping.shortfalls.size(), 1U);
  EXPECT_TRUE(house.said("P004")) << house.said();
}

TEST(Shopping, CansOnHandAreOpenedOneByOne) {
  // Opened they keep four days, so that one can cannot be for both.
  House house;
  house.write("plans/on-hand.yaml", "date: 2027-02-28\non hand: [\"2 (15 oz) cans chickpeas\"]\n");
  house.recipe("salad", "1 (15 oz) can chickpeas");
  house.plan("2027-03-02: {dinner: salad}, 2027-03-20: {dinner: salad}");
  EXPECT_TRUE(house.good().shopping.shortfalls.empty()) << house.said();
}

// The lines of the list with how many packs of each: "2 x 400 g can canned chickpea".
std::vector<std::string> lines_of(const emit::Compiled& compiled) {
  std::vector<std::string> out;
  for (const auto& line : compiled.shopping.lines) {
    const auto& shop = compiled.kitchen.shop(compiled.shopping.visits[line.visit].shop);
    out.push_back(std::to_string(line.packs) + " x " + shop.offers[line.offer].pack + " " +
                  compiled.kitchen.food(line.food).name);
  }
  return out;
}

TEST(Shopping, ACanIsACanWhateverIsInIt) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {canned chickpeas: 400 g can 1.00}\n");
  house.recipe("stew", "2 cans chickpeas");
  house.plan("2027-03-02: {dinner: stew}");
  EXPECT_EQ(lines_of(house.good()), (std::vector<std::string>{"2 x 400 g can canned chickpea"}));
  // Half as much is another thing: then the weight counts.
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {canned chickpeas: 7 oz can 1.00}\n");
  EXPECT_EQ(lines_of(house.good()), (std::vector<std::string>{"4 x 7 oz can canned chickpea"}));
  // So is a size that is said, but for the tenth that a dish can do without.
  house.recipe("stew", "2 (15 oz) cans chickpeas");
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {canned chickpeas: 375 g can 1.00}\n");
  EXPECT_EQ(lines_of(house.good()), (std::vector<std::string>{"3 x 375 g can canned chickpea"}));
}

TEST(Shopping, AUseIsMetInFullByACanOfAnotherSize) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {canned chickpeas: 400 g can 1.00}\n");
  house.recipe("stew", "1 can chickpeas");
  house.plan("2027-03-02: {dinner: stew}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.shopping.supplies.size(), 1U);
  EXPECT_EQ(compiled.shopping.supplies[0].amount, 400);
  EXPECT_EQ(compiled.shopping.supplies[0].covers, compiled.resolved.uses[0].amount);
  EXPECT_TRUE(compiled.shopping.shortfalls.empty());
}

TEST(Shopping, APackThatIsShortByLessThanATenthIsEnough) {
  House house;
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {feta cheese: 6 oz tub 4.00}\n");
  house.recipe("salad", "6.5 oz feta cheese");
  house.plan("2027-03-02: {dinner: salad}");
  const auto compiled = house.good();
  EXPECT_EQ(lines_of(compiled), (std::vector<std::string>{"1 x 6 oz tub feta cheese"}));
  ASSERT_EQ(compiled.shopping.shortfalls.size(), 1U);
  EXPECT_EQ(compiled.shopping.shortfalls[0].missing, 0);
  EXPECT_EQ(measure::print_decimal(compiled.shopping.shortfalls[0].lacking, 1), "14.2");
  house.recipe("salad", "6.5 oz feta cheese", "give: 0 %\n");
  EXPECT_EQ(lines_of(house.good()), (std::vector<std::string>{"2 x 6 oz tub feta cheese"}));
}

TEST(Shopping, NoJarOfASpiceIsOpenedForAThirdOfASpoon) {
  House house;
  // 3 g on hand, 3.6 g needed.
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {cumin: 1.5 oz jar 3.00}\n");
  house.write("plans/on-hand.yaml", "date: 2027-03-01\non hand: [3 g cumin]\n");
  house.recipe("stew", "3.6 g cumin");
  house.plan("2027-03-02: {dinner: stew}");
  EXPECT_TRUE(house.good().shopping.lines.empty());
}

TEST(Shopping, WhatDoesNotKeepForAWeekIsEatenWhileItIsGood) {
  // Avocados keep four days: those of a trip on Saturday are eaten by Wednesday.
  House house;
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {avocado: 1.00 each}\n");
  house.plan("", "staples: [3 avocados per week]\n");
  const auto compiled = house.good();
  EXPECT_TRUE(compiled.shopping.shortfalls.empty()) << house.said();
  // The 1st to the 7th, ... and three days at the end: 3 x 31 / 7.
  EXPECT_EQ(compiled.resolved.uses.size(), 5U);
}

TEST(Shopping, WhatElseIsBoughtIsBoughtOnAnyTripWhereNoDateIsSaid) {
  // Strawberries keep for a few days, and the last trip is four days before the end.
  House house;
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {strawberry: 1 lb box 3.00}\n");
  house.plan("", "extra: [2 lb strawberries]\n");
  const auto compiled = house.good();
  EXPECT_TRUE(compiled.shopping.shortfalls.empty()) << house.said();
  ASSERT_EQ(compiled.shopping.lines.size(), 1U);
  EXPECT_EQ(compiled.shopping.lines[0].packs, 2);
  house.plan("", "extra: [{buy: 2 lb strawberries, by: 2027-03-26}]\n");
  const auto dated = house.good();
  EXPECT_TRUE(dated.shopping.lines.empty());
  EXPECT_TRUE(house.said("P003")) << house.said(); // from Sat 20 Mar it would not keep
}

TEST(Shopping, UsualSwapsAreMadeWhereTheHouseholdSaysSo) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {jasmine rice: 1 lb bag 3.00, white rice: 1 lb bag 1.00}\n");
  house.recipe("rice", "1 lb jasmine rice");
  house.plan("2027-03-02: {dinner: rice}");
  EXPECT_EQ(lines_of(house.good()), (std::vector<std::string>{"1 x 1 lb bag jasmine rice"}));
  house.household("swaps: usual\n");
  EXPECT_EQ(lines_of(house.good()), (std::vector<std::string>{"1 x 1 lb bag white rice"}));
  // What the household groups itself goes before that.
  house.household("swaps: usual\nany of these: [{jasmine rice: 1, basmati rice: 1}]\n");
  EXPECT_EQ(lines_of(house.good()), (std::vector<std::string>{"1 x 1 lb bag jasmine rice"}));
  house.household("swaps: everything\n");
  EXPECT_FALSE(house.compile());
}

// Two thirds of an ounce is more than half of the cheapest bunch, so the dish needs it, and it is
// worth a stop; that it is less than half of a large one does not make it a garnish.
TEST(Shopping, ABunchOfHerbsIsTheCheapestPackOfThem) {
  House house;
  house.household("a stop costs: 6.00\n");
  house.recipe("salad", "20 g parsley");
  house.plan("2027-03-02: {dinner: salad}");
  const auto bought = [&](const std::string& offers) {
    house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {parsley: " + offers + "}\n");
    return house.good().shopping.lines.size();
  };
  EXPECT_EQ(bought("100 g bunch 2.00"), 0U);
  EXPECT_EQ(bought("20 g bunch 1.00"), 1U);
  EXPECT_EQ(bought("[20 g bunch 1.00, 100 g bunch 2.00]"), 1U);
}

// Twice as much of the thin milk does what the whole one does; what is thrown away of it is its
// own.
TEST(Shopping, WhatIsThrownAwayOfASubstituteIsInItsOwnMeasure) {
  House house;
  house.household("any of these: [{whole milk: 1, 2% milk: 2}]\n");
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {2% milk: 1 gal jug 4.00}\n");
  house.plan("2027-03-02: {breakfast: 3 cups whole milk}");
  const auto compiled = house.good();
  const purchase::Line& line = compiled.shopping.lines.at(0);
  const auto ways = purchase::other_offers(compiled.kitchen, compiled.shopping, line.food);
  ASSERT_EQ(ways.size(), 1U);
  EXPECT_GT(line.wasted, 0);
  EXPECT_NEAR(to_double(ways[0].wasted), to_double(line.wasted), 0.01);
}

} // namespace
} // namespace manciple
