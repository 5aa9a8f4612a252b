#include "purchase/budget.hpp"

#include "house.hpp"
#include "purchase/errors.hpp"

#include <tuple>

namespace manciple::purchase {
namespace {

constexpr text::Date tuesday{std::chrono::year(2027) / 3 / 2};

// Soup for 3.00, roast for 5.00 and pie for 4.00, and 3.00 that are for nothing yet.
class BudgetTest : public testing::Test {
protected:
  BudgetTest() {
    kitchen.plan.emplace();
    kitchen::Meal& meal = kitchen.plan->meals.emplace_back();
    meal.date = tuesday;
    for (const char* dish : {"soup", "roast", "pie"}) {
      meal.dishes.emplace_back().what.text = dish;
    }
    worth.dishes = {{300, 500, 400}};
    shopping.paid = 1500;
  }
  // What is over its budget, with what would bring it down.
  std::vector<std::string> said() {
    text::Diagnostics diagnostics;
    check_budgets(kitchen, shopping, worth, diagnostics);
    std::vector<std::string> out;
    for (const text::Diagnostic& one : diagnostics.all()) {
      out.push_back(one.what);
      for (const text::Note& note : one.notes) {
        out.push_back(note.what);
      }
    }
    EXPECT_EQ(out.empty(), !diagnostics.said(errors::over_budget));
    return out;
  }

  using Words = std::vector<std::string>;
  kitchen::Kitchen kitchen;
  Shopping shopping;
  Worth worth;
};

TEST_F(BudgetTest, TheFewestDishesThatBringItDownAreNamed) {
  kitchen.plan->budget = 1000;
  EXPECT_EQ(said(), (Words{"the plan costs $15.00, $5.00 over its budget of $10.00",
                           "without 'roast' on Tue 2 Mar: about $5.00 less"}));
  kitchen.plan->budget = 999;
  EXPECT_EQ(said(), (Words{"the plan costs $15.00, $5.01 over its budget of $9.99",
                           "without 'roast' on Tue 2 Mar: about $5.00 less",
                           "without 'pie' on Tue 2 Mar: about $4.00 less"}));
}

TEST_F(BudgetTest, ThatOfThePlanGoesBeforeThatOfTheHousehold) {
  kitchen.household.budget = 1499;
  EXPECT_EQ(said().size(), 2U);
  kitchen.plan->budget = 1500; // to the cent
  EXPECT_EQ(said(), Words{});
}

TEST_F(BudgetTest, OfATripIsWhatItsOwnStopsCost) {
  const foods::FoodId onion = *kitchen.foods.find("onion");
  const foods::FoodId egg = *kitchen.foods.find("egg");
  kitchen.plan->trips.resize(2);
  for (kitchen::Trip& trip : kitchen.plan->trips) {
    trip.date = tuesday;
    trip.budget = 400;
  }
  StopMade stop;
  stop.goods = 450;
  stop.tax = 50;
  stop.off = 20;
  shopping.visits.push_back(stop);
  stop.trip = 1;
  stop.goods = 350;
  shopping.visits.push_back(stop); // 3.80
  for (const auto& [visit, food, cost] :
       {std::tuple(0, onion, 150), std::tuple(0, egg, 300), std::tuple(1, onion, 350)}) {
    Line line;
    line.visit = static_cast<std::size_t>(visit);
    line.food = food;
    line.cost = cost;
    shopping.lines.push_back(line);
  }
  EXPECT_EQ(said(), (Words{"the trip on Tue 2 Mar costs $4.80, $0.80 over its budget of $4.00",
                           "without egg: about $3.00 less"}));
}

TEST(Budget, WhatIsOverABudgetIsSaidWithWhatWouldBringItDown) {
  House house;
  house.recipe("stew", "1 lb ground beef");
  house.recipe("toast", "2 lb onion");
  house.plan("2027-03-02: {dinner: [stew, toast]}", "budget: 4.00\n");
  (void)house.good();
  EXPECT_TRUE(house.said("P008"));
  EXPECT_NE(house.said().find("the plan costs $7.00, $3.00 over its budget of $4.00"),
            std::string::npos)
      << house.said();
  EXPECT_NE(house.said().find("without 'stew' on Tue 2 Mar: about $5.00 less"), std::string::npos)
      << house.said();
  EXPECT_EQ(house.said().find("without 'toast'"), std::string::npos) << house.said();
  house.plan("2027-03-02: {dinner: [stew, toast]}", "budget: 7.00\n");
  (void)house.good();
  EXPECT_FALSE(house.said("P008"));
}

} // namespace
} // namespace manciple::purchase
