#include "prep/cooling.hpp"

#include "house.hpp"
#include "prep/samples.hpp"

namespace manciple::prep {
namespace {

using measure::Unit;

// 9 by 13 in, 2 in deep, at 16.387064 ml a cubic inch: 3.83 l, a little over 16 cups.
Rational pans_full(const Rational& number) {
  return number * 9 * 13 * 2 * Rational(16387064, 1000000);
}

// A soup of so many millilitres that is simmered on the 2nd and eaten on the 4th.
class CoolingTest : public testing::Test {
protected:
  static constexpr text::Date cooked{std::chrono::year(2027) / 3 / 2};
  static constexpr text::Date later = cooked + std::chrono::days(2);

  CoolingTest() {
    kitchen.recipes.resize(1);
    soup().method.push_back(step_of("Simmer", 0, 0, "burner"));
    making.times = making.needed = 1;
    making.date = cooked;
    making.consumers.push_back({resolve::DishRef{}, 1, later});
  }
  kitchen::Recipe& soup() { return kitchen.recipes.front(); }
  void makes(const Rational& millilitres) {
    soup().makes = {{millilitres, {Unit::milliliter, {}}}};
  }
  [[nodiscard]] std::optional<Cooling> cooled() const { return cooling(kitchen, making); }

  kitchen::Kitchen kitchen;
  resolve::Making making;
};

// The time goes with the square of the depth: 48 minutes for a full pan, and never less than 20.
// Common practice, no source.
TEST_F(CoolingTest, TakesLongerTheDeeperThePan) {
  makes(pans_full(1));
  EXPECT_EQ(cooled()->minutes, 48);
  makes(pans_full({3, 4}));
  EXPECT_EQ(cooled()->minutes, 27); // 9/16 of 48
  makes(pans_full({1, 2}));
  EXPECT_EQ(cooled()->minutes, 20); // 1/4 of 48 is 12
}

TEST_F(CoolingTest, TakesAnotherPanOnceOneIsFull) {
  EXPECT_EQ(cooling_pans(pans_full(1)), 1);
  EXPECT_EQ(cooling_pans(pans_full(1) + 1), 2);
  makes(pans_full(3) / 2);
  EXPECT_EQ(cooled()->pans, 2);
  EXPECT_EQ(cooled()->minutes, 27); // each at three quarters
}

TEST_F(CoolingTest, IsOfWhatIsStoredAndNotOfWhatIsEatenAtOnce) {
  makes(pans_full(1));
  making.times = making.needed = 3;
  making.consumers.push_back({resolve::DishRef{}, 2, cooked});
  EXPECT_EQ(cooled()->pans, 1);
  making.times = 4; // one of them for nothing yet
  EXPECT_EQ(cooled()->pans, 2);
  making.times = 3;
  making.consumers.front().date = cooked;
  EXPECT_FALSE(cooled());
}

TEST_F(CoolingTest, IsNotNeededForWhatIsColdOrStandsInThePantry) {
  makes(pans_full(1));
  soup().keeps_pantry = 14;
  EXPECT_FALSE(cooled());
  soup().keeps_pantry.reset();
  EXPECT_TRUE(cooled());
  soup().method.front().is_hot = false;
  EXPECT_FALSE(cooled());
}

TEST_F(CoolingTest, OfALiquidIsInIceWater) {
  makes(pans_full(1));
  const auto metric = measure::Writing{measure::System::metric};
  EXPECT_EQ(how_to_cool(*cooled(), false, {}),
            "in 1 shallow pan no deeper than 2 in, in ice water, to 70 F");
  EXPECT_EQ(how_to_cool(*cooled(), true, {}), "the open boxes in ice water, to 70 F");
  EXPECT_EQ(how_to_cool({2, 48, false}, false, metric),
            "in 2 shallow pans no deeper than 5 cm, to 21 °C");
}

TEST(Cooling, OfASessionTakesShallowPansAndHasAnEnd) {
  House house;
  house.recipe("stock", "1 lb onion",
               "makes: 16 cups\nmade in: exactly\nkeeps: {fridge: 4 days}\nmethod: [{do: Simmer, "
               "hands on: 5 min, then: 1 h, on: burner}]\n");
  house.recipe("soup", "16 cups stock");
  house.plan("2027-03-09: {dinner: soup}", sunday_afternoon);
  const auto compiled = house.good();
  const Task* cool = nullptr;
  const Task* store = nullptr;
  const Task* simmer = nullptr;
  for (const Task& task : compiled.prep.sessions.at(0).tasks) {
    cool = task.kind == Task::Kind::cool ? &task : cool;
    store = task.kind == Task::Kind::store ? &task : store;
    simmer = task.kind == Task::Kind::cook ? &task : simmer;
  }
  ASSERT_NE(cool, nullptr);
  ASSERT_NE(store, nullptr);
  EXPECT_NE(cool->what.find("1 shallow pan"), std::string::npos) << cool->what;
  const int off = simmer->start + simmer->hands_on + simmer->then;
  EXPECT_EQ(store->by, off + 120); // FDA Food Code 3-501.14
  EXPECT_LE(store->start + store->hands_on, off + 120);
  EXPECT_NE(store->what.find("by 16:05"), std::string::npos) << store->what;
  EXPECT_NE(store->what.find("at 41 F by 20:05"), std::string::npos) << store->what;
}

} // namespace
} // namespace manciple::prep
