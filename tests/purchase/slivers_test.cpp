#include "emit/emit.hpp"
#include "house.hpp"

namespace manciple {
namespace {

using measure::Rational;

// Fifteen onions of 122 g: two bags hold 15 of them but for 19 g.
TEST(Slivers, TheLastOnionOfABagIsAnOnion) {
  House house;
  house.write("plans/stores/corner.yaml",
              "shop: Corner\nprices: {onion: [2 lb bag 1.20, 1.50/lb]}\n");
  house.recipe("stew", "1 onion");
  std::string meals;
  for (int day = 1; day <= 16; ++day) {
    meals += "2027-03-" + std::string(day < 10 ? "0" : "") + std::to_string(day) +
             ": {dinner: stew}" + (day < 16 ? ", " : "");
  }
  house.plan(meals);
  const auto compiled = house.good();
  ASSERT_EQ(compiled.resolved.uses.size(), 16U);
  std::vector<int> lots(16);
  Rational weighed = 0;
  for (const auto& supply : compiled.shopping.supplies) {
    ++lots[supply.use];
    EXPECT_EQ(supply.covers, compiled.resolved.uses[supply.use].amount);
    weighed += compiled.shopping.lines[supply.line].packs > 2 ? supply.amount : Rational(0);
  }
  EXPECT_EQ(lots, std::vector<int>(16, 1)); // no onion of two parts
  EXPECT_EQ(weighed, compiled.resolved.uses[0].amount);
  // What is weighed is taken as it is weighed.
  house.recipe("stew", "122 g onion", "give: 0 %\n");
  EXPECT_EQ(house.good().shopping.supplies.size(), 17U);
}

} // namespace
} // namespace manciple
