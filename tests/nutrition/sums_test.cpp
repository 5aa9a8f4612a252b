// Sums that are worked by hand beside each line: grams of a measure, share that is eaten, figure of
// 100 g, all from USDA SR28 (the numbers stand behind each).
#include "house.hpp"

#include "nutrition/intakes.hpp"
#include "nutrition/nutrition.hpp"

#include <cmath>

namespace manciple {
namespace {

using foods::Nutrient;
using nutrition::Sum;

struct Worked {
  const char* ingredients;
  Nutrient nutrient;
  double by_hand;
};

constexpr double pound = 453.59237;
constexpr double ounce = pound / 16;

const std::vector<Worked> worked{
    {"2 large eggs", Nutrient::energy, 2 * 50.0 * 143 / 100},              // 1123: 143
    {"2 large eggs", Nutrient::protein, 2 * 50.0 * 12.56 / 100},           // 12.56
    {"1 cup whole milk", Nutrient::calcium, 244.0 * 113 / 100},            // 1077: 275.7
    {"2 cups all-purpose flour", Nutrient::iron, 2 * 125 * 4.64 / 100},    // 20081: 11.6
    {"1/2 cup butter", Nutrient::sodium, 227.0 / 2 * 643 / 100},           // 1001: 729.8
    {"1 cup granulated sugar", Nutrient::carbohydrate, 200 * 99.98 / 100}, // 19335
    {"\"1 lb onions, diced\"", Nutrient::energy, pound * .90 * 40 / 100},  // 11282: refuse 10 %
    {"\"1 cup onion, chopped\"", Nutrient::vitamin_c, 160 * 7.4 / 100},    // 11282: 11.84
    {"2 lb potatoes", Nutrient::vitamin_c, 2 * pound * .75 * 19.7 / 100},  // 11352: refuse 25 %
    {"2 medium bananas", Nutrient::energy, 2 * 118.0 * 89 / 100},          // 9040: edible pieces
    {"1 lb bananas", Nutrient::energy, pound * .64 * 89 / 100},            // 9040: refuse 36 %
    {"3 medium carrots", Nutrient::fiber, 3 * 61 * 2.8 / 100},             // 11124: 5.12
    {"1 cup brown lentils", Nutrient::protein, 192 * 24.63 / 100},         // 16069: 47.3
    {"2 cups white rice", Nutrient::energy, 2 * 185.0 * 365 / 100},        // 20044: 1350.5
    {"1 lb ground beef", Nutrient::protein, pound * 18.59 / 100},          // 23567: 84.3
    {"\"4 oz cheddar cheese, shredded\"", Nutrient::calcium, 4 * ounce * 710 / 100}, // 1009
    {"\"1 cup shredded cheddar cheese\"", Nutrient::fat, 113 * 33.31 / 100},         // 1009
    {"1/4 cup olive oil", Nutrient::fat, 54.0},                       // 4053: 216 g a cup
    {"1 lb broccoli", Nutrient::vitamin_c, pound * .61 * 89.2 / 100}, // 11090: refuse 39 %
    {"\"1 can (15 oz) black beans, drained\"", Nutrient::fiber,
     15 * ounce * .60 * 6.9 / 100}, // 16018, of which 60 % is not poured away
    {"3 large egg whites", Nutrient::protein,
     3 * 50 / .88 * .58 * 10.9 / 100}, // 1124: 58 % of an egg in its shell
    {"1 cup orange juice", Nutrient::vitamin_c, 249 * 33.6 / 100}, // 9209
    {"1 lb boneless chicken breast, 1 lb onions", Nutrient::energy,
     pound * 120 / 100 + pound * .9 * 40 / 100}, // 5062
};

Sum serving(House& house, const std::string& ingredients) {
  house.write("plans/household.yaml", "people: [{name: Ada}]\n");
  house.write("recipes/dish.yaml", "serves: 1\ningredients: [" + ingredients + "]\n");
  house.write("plans/p.yaml", "meals: {2027-03-02: {dinner: dish}}\n");
  house.sources = {};
  house.diagnostics = {};
  const auto kitchen =
      kitchen::read_kitchen(house.root() + "/plans/p.yaml", house.sources, house.diagnostics);
  EXPECT_EQ(house.diagnostics.errors(), 0U) << house.said();
  return nutrition::of_serving(kitchen, kitchen.recipes.at(0));
}

TEST(Sums, AreThoseWorkedByHand) {
  House house;
  for (const Worked& one : worked) {
    const Sum sum = serving(house, one.ingredients);
    EXPECT_NEAR(sum[one.nutrient], one.by_hand, std::max(.01, one.by_hand * 1e-3))
        << one.ingredients << ": " << foods::facts(one.nutrient).name;
  }
  EXPECT_GE(worked.size(), 20U);
}

TEST(Sums, CoverageIsTheShareOfTheWeightThatHasFigures) {
  House house;
  const Sum sum = serving(house, "100 g arborio rice, 300 g white rice"); // no figures of the first
  EXPECT_NEAR(sum.coverage(Nutrient::energy), .75, 1e-9);
  EXPECT_NEAR(sum[Nutrient::energy], 300 * 3.65, 1e-6);
}

TEST(Sums, GoThroughRecipesOfRecipes) {
  House house;
  house.write("recipes/sauce.yaml", "serves: 4\nmakes: 2 cups\ningredients: [2 cups whole milk]\n");
  EXPECT_NEAR(serving(house, "1 cup sauce")[Nutrient::energy], 244 * .61, 1e-6);
}

// 11090: 89.2 mg raw, of which 72.4 % are left when it is boiled (tests/foods/retention_test).
TEST(Sums, LoseToHeatWhatTheTablesLoseAndNothingToACutter) {
  constexpr double raw = pound * .61 * 89.2 / 100;
  const auto with_step = [](const std::string& step) {
    House house;
    house.write("recipes/greens.yaml",
                "serves: 1\ningredients: [1 lb broccoli]\nmethod: [" + step + "]\n");
    return serving(house, "1 serving greens")[Nutrient::vitamin_c];
  };
  EXPECT_NEAR(with_step("{do: Cut, hands on: 5 min}"), raw, 1e-3);
  EXPECT_NEAR(with_step("{do: Steam, then: 5 min, on: burner}"), raw * .7242, .1);
  EXPECT_NEAR(with_step("{do: Heat the oil, then: 5 min, on: burner}, {do: Cut the broccoli, "
                        "hands on: 5 min}"),
              raw, 1e-3);
}

TEST(Days, AreSharedOutByPortions) {
  House house;
  house.write("plans/household.yaml",
              "people:\n  - {name: Ada}\n  - {name: Tot, age: 2}\n  - {name: Ilse, diet: "
              "vegetarian, age: 30, sex: female}\nmeals: {dinner: \"18:30\"}\n");
  house.recipe("dish", "1 lb ground beef");
  house.plan("2027-03-02: {dinner: {dish: dish, for: {Ilse: 100 g tofu instead of ground beef}}}");
  const auto compiled = house.good();
  const auto& people = compiled.nutrition.people;
  ASSERT_EQ(people.size(), 3U);
  // A serving is half a pound of beef; made is what one and a half servings take.
  EXPECT_NEAR(people[0].days.at(0).eaten[Nutrient::protein], pound / 2 * .1859, .5);
  EXPECT_NEAR(people[1].days.at(0).eaten[Nutrient::protein], pound / 4 * .1859, .3);
  EXPECT_NEAR(people[2].days.at(0).eaten.grams, 100, 1e-6);
  EXPECT_FALSE(people[0].intakes[static_cast<std::size_t>(Nutrient::protein)]);
  EXPECT_TRUE(people[2].intakes[static_cast<std::size_t>(Nutrient::protein)]);
}

TEST(Intakes, AreThoseOfTheTables) {
  const auto of = [](Nutrient nutrient, int years, std::optional<kitchen::Sex> sex) {
    return *nutrition::intake(nutrient, years * 12, sex);
  };
  using kitchen::Sex;
  // Institute of Medicine, tables as of 2011; sodium and potassium: National Academies, 2019.
  EXPECT_EQ(of(Nutrient::iron, 35, Sex::female).least, 18);
  EXPECT_EQ(of(Nutrient::iron, 60, Sex::female).least, 8);
  EXPECT_EQ(of(Nutrient::protein, 35, Sex::male).least, 56);
  EXPECT_EQ(of(Nutrient::calcium, 10, Sex::male).upper, 3000);
  EXPECT_EQ(of(Nutrient::sodium, 35, std::nullopt).upper, 2300);
  EXPECT_EQ(of(Nutrient::potassium, 35, Sex::female).least, 2600);
  const auto both = of(Nutrient::iron, 35, std::nullopt);
  EXPECT_EQ(both.least, 8);
  EXPECT_EQ(both.most, 18);
  EXPECT_FALSE(nutrition::intake(Nutrient::energy, 35 * 12, std::nullopt));
  const auto during = [](Nutrient nutrient, int years, kitchen::Stage stage) {
    return nutrition::intake(nutrient, years * 12, Sex::female, stage);
  };
  using kitchen::Stage;
  EXPECT_EQ(during(Nutrient::iron, 35, Stage::pregnant)->least, 27);
  EXPECT_EQ(during(Nutrient::iron, 17, Stage::nursing)->least, 10);
  EXPECT_EQ(during(Nutrient::folate, 25, Stage::pregnant)->least, 600);
  EXPECT_EQ(during(Nutrient::vitamin_a, 25, Stage::nursing)->upper, 3000);
  EXPECT_EQ(during(Nutrient::potassium, 35, Stage::nursing)->least, 2800);
  EXPECT_FALSE(during(Nutrient::iron, 13, Stage::pregnant)); // of these ages there are no rows
  EXPECT_FALSE(during(Nutrient::iron, 55, Stage::nursing));
  EXPECT_FALSE(nutrition::intake(Nutrient::iron, 8, std::nullopt)); // a baby of eight months
  EXPECT_EQ(nutrition::energy_shares(3 * 12)->fat_least, 30);
}

} // namespace
} // namespace manciple
