#include "purchase/out_of_stock.hpp"

#include "house.hpp"

namespace manciple {
namespace {

// Two shops that are both visited on the first of March, the corner first; a plan of one dish.
class TwoShops : public House {
public:
  TwoShops(const std::string& corner, const std::string& market) {
    write("plans/stores/corner.yaml", "shop: Corner\nprices: {" + corner + "}\n");
    write("plans/stores/market.yaml", "shop: Market\nprices: {" + market + "}\n");
  }
  void plan(const std::string& meals, const std::string& trips = {}) const {
    write("plans/p.yaml", "plan: P\nfrom: 2027-03-01\nuntil: 2027-03-31\nmeals: {" + meals +
                              "}\ntrips:\n  - {date: 2027-03-01, stops: [{shop: corner, always: "
                              "yes}, {shop: market, always: yes}]}\n" +
                              trips);
  }
};

const purchase::Line& line(const emit::Compiled& compiled, std::size_t l) {
  return compiled.shopping.lines.at(l);
}

std::string shop(const emit::Compiled& compiled, const purchase::OtherOffer& other) {
  return compiled.kitchen.shop(compiled.shopping.visits.at(other.visit).shop).name;
}

TEST(OutOfStock, TheNextShopOfTheTripSellsItInThePackThatCostsLeast) {
  TwoShops house("onion: 1.00/lb", "onion: [5 lb bag 4.00, 1.50/lb]");
  house.recipe("stew", "2 lb onion");
  house.plan("2027-03-02: {dinner: stew}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.out_of_stock.size(), 1U);
  ASSERT_EQ(compiled.out_of_stock[0].offers.size(), 1U);
  const auto& other = compiled.out_of_stock[0].offers[0];
  EXPECT_EQ(shop(compiled, other), "Market");
  EXPECT_EQ(other.cost, 300);
  EXPECT_EQ(other.amount, line(compiled, 0).amount);
  EXPECT_TRUE(other.late.empty());
}

TEST(OutOfStock, AShopThatLiesBehindIsNoHelp) {
  TwoShops house("onion: 2.00/lb", "onion: 1.00/lb");
  house.recipe("stew", "2 lb onion");
  house.plan("2027-03-02: {dinner: stew}");
  const auto compiled = house.good();
  EXPECT_EQ(compiled.kitchen.shop(compiled.shopping.visits[line(compiled, 0).visit].shop).name,
            "Market");
  EXPECT_TRUE(compiled.out_of_stock[0].offers.empty());
}

TEST(OutOfStock, ALaterTripServesWhoCanWaitAndSaysWhoCannot) {
  TwoShops house("onion: {offer: 1.00/lb, sale: {price: 0.50, until: 2027-03-01}}",
                 "egg: 12 large 3.00");
  house.recipe("stew", "1 lb onion");
  house.plan("2027-03-02: {dinner: stew}, 2027-03-09: {dinner: stew}",
             "  - {date: 2027-03-06, stops: [{shop: corner, always: yes}]}\n");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.shopping.lines.size(), 1U);
  const auto& out = compiled.out_of_stock[0];
  ASSERT_EQ(out.uses.size(), 2U);
  ASSERT_EQ(out.offers.size(), 1U);
  EXPECT_EQ(text::print_date(compiled.shopping.visits[out.offers[0].visit].date), "2027-03-06");
  EXPECT_EQ(out.offers[0].cost, 100); // a pound, no longer on sale
  ASSERT_EQ(out.offers[0].late.size(), 1U);
  const auto without = purchase::dishes_of(compiled.resolved, out.offers[0].late);
  ASSERT_EQ(without.size(), 1U);
  EXPECT_EQ(text::print_date(compiled.plan().meals[without[0].meal].date), "2027-03-02");
}

TEST(OutOfStock, WhoIsInTimeForAllComesBeforeWhoIsCheaper) {
  TwoShops house("onion: 1.00/lb", "onion: 9.00/lb");
  house.recipe("stew", "1 lb onion");
  // From the sixth on the house buys onions at the corner for less, too late for the second.
  house.write("plans/stores/corner.yaml", "shop: Corner\nprices: {onion: {offer: 1.00/lb, sale: "
                                          "{price: 0.50, until: 2027-03-01}}}\n");
  house.plan("2027-03-02: {dinner: stew}, 2027-03-09: {dinner: stew}",
             "  - {date: 2027-03-06, stops: [{shop: corner, always: yes}]}\n");
  const auto compiled = house.good();
  const auto& offers = compiled.out_of_stock.at(0).offers;
  ASSERT_EQ(offers.size(), 2U);
  EXPECT_EQ(shop(compiled, offers[0]), "Market");
  EXPECT_EQ(offers[0].cost, 1800);
  EXPECT_TRUE(offers[0].late.empty());
  EXPECT_EQ(offers[1].late.size(), 1U);
}

TEST(OutOfStock, WhereAFoodMustNotBeBoughtItIsNotOffered) {
  TwoShops house("onion: 1.00/lb", "onion: 1.50/lb");
  house.recipe("stew", "2 lb onion");
  house.plan("2027-03-02: {dinner: stew}");
  house.write("plans/household.yaml",
              "people:\n  - {name: Ada}\n  - {name: Ben}\nmeals: {dinner: \"18:30\"}\n"
              "buying: {onion: {never at: [market]}}\n");
  EXPECT_TRUE(house.good().out_of_stock.at(0).offers.empty());
}

TEST(OutOfStock, AnOfferThatDoesNotHoldThatDayIsNotOffered) {
  TwoShops house("onion: 1.00/lb", "onion: {offer: 1.50/lb, from: 2027-03-02}");
  house.recipe("stew", "2 lb onion");
  house.plan("2027-03-02: {dinner: stew}");
  EXPECT_TRUE(house.good().out_of_stock.at(0).offers.empty());
}

TEST(OutOfStock, ALimitCountsWhatIsBoughtThereAnyway) {
  TwoShops house("egg: {offer: 12 large 1.00, limit: 1}", "egg: {offer: 12 large 3.50, limit: 1}");
  house.plan("2027-03-02: {dinner: 24 large eggs}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.shopping.lines.size(), 2U);
  EXPECT_TRUE(compiled.out_of_stock[0].offers.empty());
}

TEST(OutOfStock, ADealCountsWhatIsBoughtThereAnyway) {
  TwoShops house("egg: {offer: 12 large 1.00, limit: 1}",
                 "egg: {offer: 12 large 3.50, deal: 2 for 5.00}");
  house.plan("2027-03-02: {dinner: 24 large eggs}");
  const auto compiled = house.good();
  ASSERT_EQ(compiled.shopping.lines.size(), 2U);
  ASSERT_EQ(compiled.out_of_stock[0].offers.size(), 1U);
  EXPECT_EQ(compiled.out_of_stock[0].offers[0].cost, 150); // the second of two for 5.00
}

TEST(OutOfStock, WhoWaitsIsFoundThroughRecipesOfRecipesTheFirstOneFirst) {
  TwoShops house("onion: 1.00/lb", "egg: 12 large 3.00");
  house.recipe("sauce", "1 lb onion", "makes: 2 cups\nkeeps: {fridge: 5 days}\n");
  house.recipe("pasta", "1 cup sauce");
  house.recipe("pizza", "1 cup sauce");
  house.plan("2027-03-03: {dinner: pizza}, 2027-03-02: {dinner: pasta}");
  const auto compiled = house.good();
  ASSERT_FALSE(compiled.out_of_stock.empty());
  const auto dishes = purchase::dishes_of(compiled.resolved, compiled.out_of_stock[0].uses);
  ASSERT_EQ(dishes.size(), 2U);
  EXPECT_EQ(text::print_date(compiled.plan().meals[dishes[0].meal].date), "2027-03-02");
  EXPECT_EQ(text::print_date(compiled.plan().meals[dishes[1].meal].date), "2027-03-03");
}

} // namespace
} // namespace manciple
