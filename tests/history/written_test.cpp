#include "history/written.hpp"
#include "march.hpp"

#include <gtest/gtest.h>

namespace manciple::history {
namespace {

class WrittenTest : public testing::Test {
protected:
  Holding holding(std::string_view food, const Rational& amount) {
    Holding out;
    out.food = *kitchen.foods.find(food);
    out.amount = amount;
    return out;
  }
  std::string amount(std::string_view food, const Rational& amount) {
    return amount_written(kitchen, holding(food, amount));
  }

  const Rational pound = measure::facts(measure::Unit::pound).factor;
  kitchen::Kitchen kitchen;
};

TEST_F(WrittenTest, WholePiecesAreCounted) {
  EXPECT_EQ(amount("garlic", 100), "2 heads garlic"); // 50 g each
  EXPECT_EQ(amount("garlic", 101), "101 g garlic");
}

TEST_F(WrittenTest, WholeMeasuresAndQuartersOfThemAreSaidSo) {
  EXPECT_EQ(amount("ground beef", pound * Rational(9, 4)), "2 1/4 lb ground beef");
  EXPECT_EQ(amount("ground beef", pound / 16 * 3), "3 oz ground beef");
  kitchen.household.system = measure::System::metric;
  EXPECT_EQ(amount("ground beef", 1250), "1 1/4 kg ground beef");
}

// Nobody weighs finer than a milligram, and no use goes short by what is written.
TEST_F(WrittenTest, AnythingElseIsToTheMilligramAndNeverLess) {
  EXPECT_EQ(amount("ground beef", Rational(1000, 3)), "333.334 g ground beef");
  EXPECT_EQ(exactly(kitchen, *kitchen.foods.find("ground beef"), Rational(1000, 3)), "333.334 g");
}

TEST_F(WrittenTest, WholePacksAreSaidWithWhatIsInThem) {
  Holding cans = holding("canned chickpea", 850);
  cans.pack = 425;
  EXPECT_EQ(amount_written(kitchen, cans), "2 (1 can) packs canned chickpeas");
  cans.amount = 800; // one of them has been opened
  EXPECT_EQ(amount_written(kitchen, cans).find("packs"), std::string::npos);
}

TEST_F(WrittenTest, ALineSaysWhereItIsAndUntilWhenItIsGood) {
  Holding beef = holding("ground beef", pound);
  beef.place = foods::Place::fridge;
  EXPECT_EQ(line_written(kitchen, beef), "1 lb ground beef, fridge");
  beef.opened = march(2);
  beef.thawed = true;
  beef.use_by = march(4);
  EXPECT_EQ(line_written(kitchen, beef),
            "1 lb ground beef, fridge, opened 2027-03-02, thawed, until 2027-03-04");
}

TEST_F(WrittenTest, WhatWasMadeIsWrittenInServings) {
  kitchen.recipes.resize(1);
  kitchen.recipes.front().slug = "beef-chili";
  kitchen.recipes.front().serves = 6;
  kitchen::MadeLot lot;
  lot.what.target = kitchen::RecipeId{0};
  lot.times = Rational(1, 2);
  lot.place = foods::Place::freezer;
  lot.made = march(16);
  EXPECT_EQ(line_written(kitchen, lot), "3 servings beef-chili, freezer, made 2027-03-16");
  lot.times = Rational(1, 6);
  lot.use_by = march(20);
  EXPECT_EQ(line_written(kitchen, lot),
            "1 serving beef-chili, freezer, made 2027-03-16, until 2027-03-20");
}

} // namespace
} // namespace manciple::history
