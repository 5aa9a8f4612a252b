// Aims of a plan: how they are read, where they are missed and what would mend it.
#include "house.hpp"

#include "nutrition/aims.hpp"

namespace manciple {
namespace {

void two_dishes(House& house) {
  house.write("plans/household.yaml",
              "people:\n  - {name: Ada}\n  - {name: Tot, age: 2}\nmeals: {dinner: \"18:30\"}\n");
  house.write(
      "plans/stores/corner.yaml",
      "shop: Corner\nprices: {onion: 1.00/lb, salmon fillet: 8.00/lb, ground beef: 5.00/lb}\n");
  house.recipe("stew", "2 lb onions");
  house.recipe("fry", "1 lb ground beef");
  house.recipe("bake", "1 lb salmon fillet");
}

nutrition::AimMet only(const emit::Compiled& compiled) {
  EXPECT_EQ(compiled.aims.size(), 1U);
  return compiled.aims.at(0);
}

TEST(Aims, AreMissedByMealAndMendedByTheCheapestDishThatIsEnough) {
  House house;
  two_dishes(house);
  house.plan("2027-03-02: {dinner: stew}, 2027-03-03: {dinner: fry}, 2027-03-04: {dinner: bake}",
             "aims: {protein: at least 30 g a dinner}\n");
  const auto compiled = house.good();
  const auto met = only(compiled);
  EXPECT_EQ(met.asked, 6); // three dinners of two, of a child as of an adult
  EXPECT_EQ(met.missed, 2);
  // A pound of onions: 454 g x 0.9 x 1.1 g in 100 g.
  EXPECT_NEAR(met.worst, 453.6 * .9 * .011, .5);
  ASSERT_TRUE(met.mend);
  EXPECT_EQ(met.mend->instead, "fry");
  EXPECT_NEAR(met.mend->value, 453.6 / 2 * .1859, 1);
  EXPECT_NEAR(met.mend->cents.value(), 250 - 100, 12); // half a pound of beef for a pound of onions
  EXPECT_TRUE(house.said("N001")) << house.said();
  EXPECT_NE(house.said().find("fry instead of stew on Tue 2 Mar"), std::string::npos)
      << house.said();
}

TEST(Aims, AreRemarksAndNeverErrors) {
  House house;
  two_dishes(house);
  house.plan("2027-03-02: {dinner: stew}",
             "aims: {protein: 500 g a day, cost: at most 0.01 a dinner, fish: 7 times a week}\n");
  EXPECT_TRUE(house.compile()) << house.said();
  EXPECT_EQ(house.diagnostics.errors(), 0U);
}

TEST(Aims, CountMealsOfAFoodInAWeek) {
  House house;
  two_dishes(house);
  // A whole week from Monday 1 March, with fish once.
  std::string meals;
  for (int day = 1; day <= 7; ++day) {
    meals += fmt::format("{}2027-03-0{}: {{dinner: {}}}", day == 1 ? "" : ", ", day,
                         day == 4 ? "bake" : "stew");
  }
  house.plan(meals, "aims: {fish: twice a week}\n");
  const auto met = only(house.good());
  EXPECT_EQ(met.asked, 2); // a week of each of the two
  EXPECT_EQ(met.missed, 2);
  EXPECT_EQ(met.worst, 1);
  EXPECT_EQ(met.wanted, 2);
  EXPECT_TRUE(met.mend);

  house.plan(meals, "aims: {seafood: once a week}\n");
  EXPECT_EQ(only(house.good()).missed, 0);
}

TEST(Aims, WeighFoodsOfAKindAndOfAClass) {
  House house;
  two_dishes(house);
  house.plan("2027-03-02: {dinner: [stew, fry]}", "aims: {vegetables: 400 g a day}\n");
  EXPECT_EQ(only(house.good()).missed, 0); // a pound of onions each, of which nine tenths are eaten
  house.plan("2027-03-02: {dinner: [stew, fry]}", "aims: {vegetables: 500 g a day}\n");
  EXPECT_NEAR(only(house.good()).worst, 408, 1);
  house.plan("2027-03-02: {dinner: [stew, fry]}", "aims: {red meat: at most 100 g a day}\n");
  EXPECT_NEAR(only(house.good()).worst, 226.8, 1);
}

TEST(Aims, OfMoneyAreOfAServing) {
  House house;
  two_dishes(house);
  house.plan("2027-03-02: {dinner: bake}", "aims: {cost: at most $3.00 a dinner}\n");
  const auto met = only(house.good());
  EXPECT_EQ(met.missed, 2);
  EXPECT_NEAR(met.worst, 400, 20); // half a pound of salmon
}

TEST(Aims, SayNothingOfWhatHasNoFigures) {
  House house;
  two_dishes(house);
  house.recipe("grain", "1 lb arborio rice");
  house.plan("2027-03-02: {dinner: grain}", "aims: {protein: at least 30 g a dinner}\n");
  const auto met = only(house.good());
  EXPECT_EQ(met.asked, 0);
  EXPECT_EQ(met.not_known, 2);
}

TEST(Aims, SayNothingOfADishThatOnlyHasAName) {
  House house;
  two_dishes(house);
  house.plan("2027-03-02: {dinner: grandmother's pie}, 2027-03-03: {dinner: [bake, pudding]}, "
             "2027-03-04: {dinner: stew}",
             "aims: {protein: at least 30 g a dinner}\n");
  const auto met = only(house.good());
  EXPECT_EQ(met.not_known, 2);
  EXPECT_EQ(met.asked, 4); // the salmon is enough, whatever is in the pudding
  EXPECT_EQ(met.missed, 2);
  EXPECT_EQ(text::print_date(met.date), "2027-03-04");
}

TEST(Aims, ThatCannotBeReadSayHowTheyAreWritten) {
  for (const char* aim :
       {"protien: 30 g a day", "protein: 30 a day", "protein: lots", "fish: 30 kcal a week",
        "cost: twice a week", "protein: at least 30 g a brunhc"}) {
    House house;
    two_dishes(house);
    house.plan("2027-03-02: {dinner: stew}", fmt::format("aims: {{{}}}\n", aim));
    EXPECT_FALSE(house.compile()) << aim;
    EXPECT_TRUE(house.said("K020")) << aim << house.said();
  }
}

// What a library has besides the plan.
class LibraryMends : public testing::Test {
protected:
  LibraryMends() {
    two_dishes(house);
    house.write("plans/stores/corner.yaml",
                "shop: Corner\nprices: {onion: 1.00/lb, salmon fillet: 8.00/lb, ground beef: "
                "5.00/lb, brown lentils: 1.50/lb, tofu: 14 oz block 2.00}\n");
  }

  std::optional<nutrition::Mend> mend(const std::string& aim) {
    house.plan("2027-03-02: {dinner: stew}", "aims: {" + aim + "}\n");
    return only(house.good()).mend;
  }

  House house;
};

constexpr const char* protein_aim = "protein: at least 30 g a dinner";

TEST_F(LibraryMends, AreOfRecipesThatSayTheySuitTheMeal) {
  EXPECT_FALSE(mend(protein_aim));
  house.recipe("pot", "1 lb brown lentils");
  EXPECT_FALSE(mend(protein_aim));
  house.recipe("pot", "1 lb brown lentils", "suits: breakfast\n");
  EXPECT_FALSE(mend(protein_aim));
  house.recipe("pot", "1 lb brown lentils", "suits: side\n");
  EXPECT_FALSE(mend(protein_aim));
  house.recipe("pot", "1 lb brown lentils", "suits: [Breakfast, dinner]\n");
  const auto found = mend(protein_aim);
  ASSERT_TRUE(found);
  EXPECT_EQ(found->instead, "pot");
  EXPECT_FALSE(found->planned);
  EXPECT_NEAR(found->value, 453.6 / 2 * .2463, 1);
  EXPECT_NEAR(found->cents.value(), 75 - 100, 12); // half a pound of each
  EXPECT_NE(house.said().find("pot (from the library) instead of stew on Tue 2 Mar would make it"),
            std::string::npos)
      << house.said();
}

TEST_F(LibraryMends, GoBesideTheMainDishIfTheySuitASide) {
  house.recipe("peas", "2 lb brown lentils", "suits: side\n");
  house.recipe("salad", "1 lb onions");
  house.plan("2027-03-02: {dinner: [stew, salad]}", fmt::format("aims: {{{}}}\n", protein_aim));
  const auto compiled = house.good();
  const auto met = only(compiled);
  ASSERT_TRUE(met.mend);
  EXPECT_EQ(met.mend->instead, "peas");
  EXPECT_EQ(met.mend->of.dish, 1U);
}

TEST_F(LibraryMends, AreTheCheapestThatIsEnough) {
  house.recipe("pot", "1 lb brown lentils", "suits: dinner\n");
  house.recipe("steak", "1 lb ground beef", "suits: dinner\n");
  EXPECT_EQ(mend(protein_aim)->instead, "pot");
  EXPECT_EQ(mend("protein: at least 60 g a dinner")->instead, "pot"); // 56 g, nearest to it
}

TEST_F(LibraryMends, AreNotOfWhatAnEaterMustNotHaveNorOfWhatCannotBeRead) {
  house.write("plans/household.yaml",
              "people: [{name: Ada, diet: vegetarian}]\nmeals: {dinner: \"18:30\"}\n");
  house.recipe("steak", "1 lb ground beef", "suits: dinner\n");
  house.recipe("half", "1 lb brown lentils, 1 lb unreadable:", "suits: dinner\n");
  EXPECT_FALSE(mend(protein_aim));
  // What differs by maker is a label to read.
  house.recipe("cheese pot", "1 lb brown lentils, 4 oz parmesan cheese", "suits: dinner\n");
  const auto found = mend(protein_aim);
  ASSERT_TRUE(found);
  EXPECT_TRUE(found->labels);
  EXPECT_NE(house.said().find("read the labels first"), std::string::npos) << house.said();
}

TEST_F(LibraryMends, SayNoPriceWhereOneIsNotKnownButForSpices) {
  house.recipe("pot", "1 lb brown lentils, 1 tsp ground cumin", "suits: dinner\n");
  EXPECT_TRUE(mend(protein_aim)->cents);
  house.recipe("pot", "1 lb brown lentils, 1 cup coconut milk", "suits: dinner\n");
  const auto found = mend(protein_aim);
  ASSERT_TRUE(found);
  EXPECT_FALSE(found->cents);
  EXPECT_FALSE(mend("cost: at most 0.10 a dinner"));
}

TEST_F(LibraryMends, EndWhereRecipesNeedEachOther) {
  house.recipe("egg", "1 serving hen, 1 lb brown lentils", "suits: dinner\n");
  house.recipe("hen", "1 serving egg");
  EXPECT_EQ(mend(protein_aim)->instead, "egg");
}

TEST_F(LibraryMends, SayWhichMealTheHouseholdDoesNotHave) {
  house.recipe("stew", "2 lb onions", "suits: diner\n");
  mend(protein_aim);
  EXPECT_TRUE(house.said("K011")) << house.said();
  EXPECT_EQ(house.diagnostics.errors(), 0U);
  EXPECT_NE(house.said().find("dinner"), std::string::npos);
}

} // namespace
} // namespace manciple
