#include "emit/use_up.hpp"

#include "emit/emit.hpp"
#include "house.hpp"
#include "text/words.hpp"

namespace manciple {
namespace {

using use_up::Left;
using use_up::Suggestion;

// A house in which a pint of cream of two days is opened for a soup, and half of it is left.
class UsingUp : public ::testing::Test {
protected:
  UsingUp() {
    house.write(
        "plans/stores/corner.yaml",
        "shop: Corner\nprices: {onion: 1.00/lb, egg: 12 large 3.00, heavy cream: 16 fl oz "
        "carton 4.00, canned black beans: 15 oz can 1.00, salt: 26 oz box 1.00, ground beef: "
        "5.00/lb}\n");
    house.recipe("soup", "1 lb onion, 8 fl oz heavy cream");
    house.recipe("sauce", "4 fl oz heavy cream, 1 lb ground beef, \"2 tbsp butter, optional\"");
    house.recipe("stew", "1 lb onion");
    house.plan("2027-03-10: {dinner: soup}");
  }

  void run(const std::string& further_day = {}) {
    compiled = house.good();
    left = use_up::what_is_left(compiled.kitchen, compiled.resolved, compiled.shopping);
    library = kitchen::read_library(house.root(), kitchen::Recipes::all);
    wanted = {};
    wanted.day = further_day.empty() ? compiled.plan().until : *text::parse_date(further_day);
    for (std::size_t i = 0; i < left.size(); ++i) {
      if (use_up::is_urgent(left[i], wanted.day) &&
          use_up::is_worth_a_word(compiled.kitchen.food(left[i].food), left[i].amount)) {
        wanted.lefts.push_back(i);
      }
    }
    found = use_up::suggest(library, compiled.kitchen, left, wanted);
  }

  [[nodiscard]] const Left* of(std::string_view food) const {
    for (const Left& one : left) {
      if (compiled.kitchen.food(one.food).name == food) {
        return &one;
      }
    }
    return nullptr;
  }
  [[nodiscard]] std::vector<std::string> names() const {
    std::vector<std::string> out;
    for (const Suggestion& one : found.all) {
      out.push_back(library.kitchen.recipe(one.recipe).name);
    }
    return out;
  }
  [[nodiscard]] std::string said() const {
    return emit::use_up_text(compiled, {library.kitchen, left, wanted, found, {}, false});
  }

  House house;
  emit::Compiled compiled;
  std::vector<Left> left;
  kitchen::Library library;
  use_up::Wanted wanted;
  use_up::Suggestions found;
};

using Names = std::vector<std::string>;

TEST_F(UsingUp, WhatIsOpenedGoesOffSomeDaysLaterAndIsWorthItsPrice) {
  run();
  const Left* cream = of("heavy cream");
  ASSERT_NE(cream, nullptr);
  EXPECT_TRUE(cream->opened);
  EXPECT_FALSE(cream->frozen);
  EXPECT_NEAR(to_double(*cream->worth), 200, 1);
  ASSERT_TRUE(cream->until);
  EXPECT_GT(*cream->until, *text::parse_date("2027-03-10"));
  EXPECT_LT(*cream->until, compiled.plan().until);
}

TEST_F(UsingUp, ARecipeThatUsesItIsFoundWithWhatElseItNeeds) {
  run();
  ASSERT_EQ(names(), (Names{"sauce", "soup"}));
  const Suggestion& sauce = found.all[0];
  EXPECT_EQ(sauce.by, *of("heavy cream")->until);
  EXPECT_NEAR(to_double(sauce.saves), 100, 1); // a quarter of the carton
  ASSERT_EQ(sauce.lacking.size(), 1U);         // butter is optional
  EXPECT_EQ(library.kitchen.food(std::get<foods::FoodId>(sauce.lacking[0].what)).name,
            "ground beef");
}

TEST_F(UsingUp, WhatThePlanHasSoonComesLastAndIsMarked) {
  run();
  // It saves twice as much.
  EXPECT_GT(found.all[1].saves, found.all[0].saves);
  EXPECT_FALSE(found.all[0].planned);
  EXPECT_EQ(found.all[1].planned, text::parse_date("2027-03-10"));
  EXPECT_NE(said().find("soup, serves 2, by "), std::string::npos) << said();
  EXPECT_NE(said().find("(the plan has it on Wed 10 Mar)"), std::string::npos) << said();
}

TEST_F(UsingUp, WhatSomebodyMustNotHaveIsLeftOutAndCounted) {
  house.household("", "[beef]");
  run();
  EXPECT_EQ(names(), (Names{"soup"}));
  EXPECT_EQ(found.unfit, 1U);
  EXPECT_NE(said().find("1 recipe is left out: somebody here must not have"), std::string::npos);
}

TEST_F(UsingUp, WhatSomebodyMustNotHaveIsFoundInARecipeOfTheRecipe) {
  house.recipe("gravy", "1 lb ground beef", "makes: 2 cups\n");
  house.recipe("sauce", "4 fl oz heavy cream, 1 cup gravy");
  house.household("", "[beef]");
  run();
  EXPECT_EQ(names(), (Names{"soup"}));
}

TEST_F(UsingUp, ARecipeOfTheRecipeIsToBeMade) {
  house.recipe("gravy", "1 lb ground beef", "makes: 2 cups\n");
  house.recipe("sauce", "4 fl oz heavy cream, 1 cup gravy");
  run();
  EXPECT_NE(said().find("    also needs gravy\n"), std::string::npos) << said();
}

TEST_F(UsingUp, ARecipeWithAnErrorIsLeftOut) {
  house.recipe("sauce", "4 fl oz heavy cream, 1 lb onoin");
  run();
  EXPECT_EQ(names(), (Names{"soup"}));
  EXPECT_EQ(found.unread, 1U);
}

TEST_F(UsingUp, ATinOnTheShelfAndSaltAreNotUrgentButInTheHouse) {
  house.write("plans/on-hand.yaml", "date: 2027-03-01\non hand: [\"2 (15 oz) cans black beans, "
                                    "pantry\", \"20 oz salt, pantry\"]\n");
  house.recipe("chili", "1 lb onion, 8 fl oz heavy cream, 1 (15 oz) can black beans, 1 tbsp salt");
  run();
  ASSERT_NE(of("canned black bean"), nullptr);
  EXPECT_FALSE(use_up::is_urgent(*of("canned black bean"), compiled.plan().until));
  EXPECT_FALSE(
      use_up::is_worth_a_word(compiled.kitchen.food(of("salt")->food), of("salt")->amount));
  EXPECT_EQ(said().find("salt"), std::string::npos) << said();
  const auto chili = std::find_if(found.all.begin(), found.all.end(), [&](const Suggestion& one) {
    return library.kitchen.recipe(one.recipe).name == "chili";
  });
  ASSERT_NE(chili, found.all.end());
  ASSERT_EQ(chili->lacking.size(), 1U);
  EXPECT_EQ(library.kitchen.food(std::get<foods::FoodId>(chili->lacking[0].what)).name, "onion");
}

TEST_F(UsingUp, WhatIsFrozenIsToldApart) {
  house.write("plans/on-hand.yaml",
              "date: 2027-03-01\non hand: [\"2 lb ground beef, freezer, until 2027-05-01\"]\n");
  run();
  ASSERT_NE(of("ground beef"), nullptr);
  EXPECT_TRUE(of("ground beef")->frozen);
  EXPECT_NE(said().find("In the freezer: $10.00\n  Sat 1 May    2 lb ground beef, $10.00\n"),
            std::string::npos)
      << said();
}

TEST_F(UsingUp, LessThanATenthOfAPortionIsNoUse) {
  house.write("plans/on-hand.yaml",
              "date: 2027-03-01\non hand: [\"2 oz ground beef, fridge, until 2027-03-03\"]\n");
  // Of a pound a portion two ounces are an eighth, of eleven pounds a ninetieth.
  const auto is_suggested = [&](const std::string& ingredients) {
    house.recipe("roast", ingredients);
    run();
    const std::vector<std::string> all = names();
    return std::find(all.begin(), all.end(), "roast") != all.end();
  };
  EXPECT_TRUE(is_suggested("2 lb ground beef"));
  EXPECT_FALSE(is_suggested("22 lb ground beef"));
}

TEST_F(UsingUp, AllThatIsLeftIsWhatIsBoughtAndInTheHouseWithoutWhatIsUsed) {
  house.write(
      "plans/on-hand.yaml",
      "date: 2027-03-01\non hand: [\"2 lb ground beef, freezer\", \"1 lb onions, pantry\", "
      "\"4 eggs, fridge, until 2027-03-04\", \"1 pt heavy cream, fridge, until 2027-03-09\"]\n");
  house.plan("2027-03-10: {dinner: soup}, 2027-03-16: {dinner: sauce}");
  run();
  std::map<std::string, measure::Rational> sums;
  for (const Left& one : left) {
    sums[compiled.kitchen.food(one.food).name] += one.amount;
  }
  for (const purchase::Line& line : compiled.shopping.lines) {
    sums[compiled.kitchen.food(line.food).name] -= line.kept + line.wasted;
  }
  for (std::size_t lot = 0; lot < compiled.kitchen.on_hand.lots.size(); ++lot) {
    const kitchen::StockLot& held = compiled.kitchen.on_hand.lots[lot];
    sums[compiled.kitchen.food(*held.what.food()).name] -=
        held.amount - compiled.shopping.taken_of_lot(lot);
  }
  EXPECT_GE(sums.size(), 4U);
  for (const auto& [food, difference] : sums) {
    EXPECT_NEAR(to_double(difference), 0, 0.01) << food;
  }
}

TEST_F(UsingUp, WhatHasNoPriceSaysSo) {
  house.write("plans/on-hand.yaml",
              "date: 2027-03-01\non hand: [\"1 lb butter, fridge, until 2027-03-20\"]\n");
  run();
  EXPECT_NE(said().find("  Sat 20 Mar   1 lb butter, no price known\n"), std::string::npos)
      << said();
}

TEST_F(UsingUp, WhereNothingIsLeftThatIsSaid) {
  house.plan("2027-03-10: {dinner: stew}");
  run();
  EXPECT_NE(said().find("There is nothing to use up."), std::string::npos) << said();
}

} // namespace
} // namespace manciple
