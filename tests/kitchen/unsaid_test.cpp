// What a house does not say is taken as usual, said once, and ends no reading.
#include "kitchen/kitchen.hpp"

#include <gtest/gtest.h>

namespace manciple::kitchen {
namespace {

struct UnsaidRead {
  text::Sources sources;
  text::Diagnostics diagnostics;
  Kitchen kitchen;
  explicit UnsaidRead(const std::string& plan, std::map<std::string, std::string> more = {}) {
    text::FilesInMemory files;
    files.texts = std::move(more);
    files.texts["recipes/stew.yaml"] = "ingredients: [1 lb onions]\n";
    files.texts["plans/week.yaml"] = plan;
    kitchen = read_kitchen("plans/week.yaml", sources, diagnostics, files);
  }
  [[nodiscard]] const Plan& plan() const { return *kitchen.plan; }
  [[nodiscard]] std::string said() const { return render(diagnostics, sources); }
  [[nodiscard]] bool says(std::string_view words) const {
    return said().find(words) != std::string::npos;
  }
};

text::Date day(std::string_view iso) {
  return *text::parse_date(iso);
}

TEST(Unsaid, AMealThatTheHouseholdDoesNotNameHasItsUsualHour) {
  const std::map<std::string, std::string> house{
      {"plans/household.yaml", "people: [{name: Ada}]\nmeals: {dinner: \"18:30\"}\n"}};
  const UnsaidRead read("meals: {2027-04-05: {dinner: stew, tea: stew, midnight feast: stew}}\n"
                        "away: [{who: Ada, from: 2027-04-05, meals: [tea]}]\n",
                        house);
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
  EXPECT_TRUE(read.says("midnight feast at 15:30")) << read.said();
  EXPECT_TRUE(read.says("tea at 16:30")) << read.said();
  EXPECT_FALSE(read.says("dinner at")) << read.said();
  ASSERT_EQ(read.plan().meals.size(), 3U);
  EXPECT_EQ(read.plan().meals[2].slot, "dinner"); // by the time of the meal
  const UnsaidRead slip("meals: {2027-04-05: {diner: stew}}\n", house);
  EXPECT_TRUE(slip.says("the household has no meal 'diner' [K011]")) << slip.said();
  EXPECT_TRUE(slip.says("did you mean dinner?")) << slip.said();
}

TEST(Unsaid, MealsAloneAreAPlan) {
  const UnsaidRead read("meals: {2027-04-05: {dinner: stew}, 2027-04-09: {lunch: stew}}\n");
  ASSERT_TRUE(read.kitchen.plan) << read.said();
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
  EXPECT_EQ(read.plan().name, "Week");
  EXPECT_EQ(read.plan().from, day("2027-04-05"));
  EXPECT_EQ(read.plan().until, day("2027-04-09"));
  EXPECT_EQ(read.kitchen.recipes.at(0).name, "Stew");
  EXPECT_EQ(read.kitchen.recipes.at(0).serves, 4);
  ASSERT_EQ(read.plan().trips.size(), 1U);
  EXPECT_EQ(read.plan().trips[0].date, day("2027-04-04"));
  ASSERT_EQ(read.kitchen.household.slots.size(), 2U); // those that the plan has
  ASSERT_EQ(read.diagnostics.all().size(), 1U) << read.said();
  EXPECT_TRUE(read.says("note: not stated, so assumed: each dish is made for as many people as its "
                        "recipe serves; Stew serves 4; lunch at 12:30 and dinner at 18:30; "
                        "shopping is on Sun 4 Apr [K015]"))
      << read.said();
}

TEST(Unsaid, ThoseEatWhomThePlanNames) {
  const UnsaidRead read("meals: {2027-04-05: {dinner: [{dish: stew, eaten by: [Ada, Cy]}]}}\n"
                        "away: [{who: Ben, from: 2027-04-05, until: 2027-04-05}]\n");
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
  ASSERT_EQ(read.kitchen.household.people.size(), 3U);
  EXPECT_EQ(read.kitchen.household.people[2].name, "Ben");
  EXPECT_TRUE(read.says("Ada, Cy and Ben eat here, and nobody else")) << read.said();
}

TEST(Unsaid, AMonthIsThatOfTheFile) {
  text::Sources sources;
  text::Diagnostics diagnostics;
  text::FilesInMemory files;
  files.texts["plans/2027-02.yaml"] = "staples: [2 lb onions per week]\n";
  const Kitchen kitchen = read_kitchen("plans/2027-02.yaml", sources, diagnostics, files);
  ASSERT_TRUE(kitchen.plan) << render(diagnostics, sources);
  EXPECT_EQ(kitchen.plan->from, day("2027-02-01"));
  EXPECT_EQ(kitchen.plan->until, day("2027-02-28"));
  EXPECT_EQ(kitchen.plan->trips.size(), 4U);
}

TEST(Unsaid, WithoutAnyDateThereIsNoPlan) {
  const UnsaidRead read("meals: {every Friday: {dinner: stew}}\n");
  EXPECT_FALSE(read.kitchen.plan);
  EXPECT_TRUE(read.says("a plan needs 'from', or meals with dates [T007]")) << read.said();
}

TEST(Unsaid, AppliancesThatRecipesNameAreThere) {
  const UnsaidRead read(
      "meals: {2027-04-05: {dinner: roast}}\n",
      {{"recipes/roast.yaml", "serves: 2\ningredients: [1 lb onions]\nmethod: [{do: "
                              "Bake, then: 1 h, on: kiln}]\n"}});
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
  EXPECT_TRUE(read.says("the kitchen has four burners, an oven, a sink and one kiln"));
}

// The days of them, in a plan from a Wednesday to the Thursday of the next week.
std::vector<std::string> trips(const std::string& said) {
  const UnsaidRead read("from: 2027-04-07\nuntil: 2027-04-15\ntrips: " + said + "\n");
  std::vector<std::string> out;
  for (const Trip& trip : read.plan().trips) {
    out.push_back(text::print_day(trip.date));
  }
  return out;
}

TEST(Unsaid, AWeeklyTripIsAlsoMadeBeforeThePlanBegins) {
  using Days = std::vector<std::string>;
  EXPECT_EQ(trips("[{every: Sunday}]"), (Days{"Sun 4 Apr", "Sun 11 Apr"}));
  EXPECT_EQ(trips("[{every: Thursday}, {every: Sunday}]"),
            (Days{"Thu 1 Apr", "Sun 4 Apr", "Thu 8 Apr", "Sun 11 Apr", "Thu 15 Apr"}));
  // Not where the plan shops in time anyway.
  EXPECT_EQ(trips("[{every: Wednesday}]"), (Days{"Wed 7 Apr", "Wed 14 Apr"}));
  EXPECT_EQ(trips("[{every: Sunday}, {date: 2027-04-07}]"), (Days{"Wed 7 Apr", "Sun 11 Apr"}));
  EXPECT_EQ(trips("[{every: Sunday}, {date: 2027-04-03}]"), (Days{"Sat 3 Apr", "Sun 11 Apr"}));
  EXPECT_EQ(trips("[{every: Sunday}, {date: 2027-04-08}]"),
            (Days{"Sun 4 Apr", "Thu 8 Apr", "Sun 11 Apr"}));
}

TEST(Unsaid, AWeeklyTripBeforeThePlanGoesWhereItIsOpen) {
  const std::map<std::string, std::string> closed{
      {"plans/stores/corner.yaml", "shop: Corner\nopen: [Mon]\n"}};
  EXPECT_TRUE(UnsaidRead("from: 2027-04-07\nuntil: 2027-04-08\ntrips: [{every: Sunday}]\n", closed)
                  .plan()
                  .trips.empty());
}

TEST(Unsaid, AShopWithoutAFileIsAShop) {
  const UnsaidRead read(
      "meals: {2027-04-05: {dinner: stew}}\ntrips: [{date: 2027-04-03, stops: [Corner "
      "Shop, corner-shop]}]\n");
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
  ASSERT_EQ(read.kitchen.shops.size(), 1U);
  EXPECT_EQ(read.kitchen.shops[0].name, "Corner shop");
  EXPECT_EQ(read.plan().trips.at(0).date, day("2027-04-03")); // before the plan
}

TEST(Unsaid, ASlipOfAShopIsAnError) {
  const UnsaidRead read("meals: {2027-04-05: {dinner: stew}}\ntrips: [{date: 2027-04-03, stops: "
                        "[markte]}]\n",
                        {{"plans/stores/market.yaml", "prices: {onion: 1.00/lb}\n"}});
  EXPECT_TRUE(read.says("there is no shop 'markte' [K007]")) << read.said();
  EXPECT_TRUE(read.says("did you mean market?"));
}

TEST(Unsaid, ShoppingIsOnADayOnWhichShopsAreOpen) {
  const UnsaidRead read("meals: {2027-04-05: {dinner: stew}}\n",
                        {{"plans/stores/market.yaml", "open: [Tue, \"Thu-Fri 07:00-13:00\"]\n"}});
  ASSERT_EQ(read.plan().trips.size(), 1U) << read.said();
  EXPECT_EQ(read.plan().trips[0].date, day("2027-04-02")); // a Friday
  EXPECT_EQ(read.plan().trips[0].stops.size(), 1U);
}

TEST(Unsaid, AStopAtAClosedShopIsLeftOut) {
  const UnsaidRead read(
      "meals: {2027-04-05: {dinner: stew}}\ntrips: [{date: 2027-04-03, stops: [market]}"
      ", {date: 2027-04-05, home by: \"09:00\", stops: [market]}]\n",
      {{"plans/stores/market.yaml", "open: [\"Mon 10:00-13:00\"]\n"}});
  EXPECT_TRUE(read.plan().trips.at(0).stops.empty());
  EXPECT_TRUE(read.plan().trips.at(1).stops.empty());
  EXPECT_TRUE(read.says("Market is not open on Sat 3 Apr before 12:00")) << read.said();
}

TEST(Dishes, AreFoundByTheNameThatARecipeGivesItself) {
  const UnsaidRead read(
      "meals: {2027-04-05: {dinner: Grandmother's best for 2}}\n",
      {{"recipes/r7.yaml",
        "name: \"Grandmother's best\"\nserves: 2\ningredients: [1 lb onions]\n"}});
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
  ASSERT_EQ(read.kitchen.recipes.size(), 1U);
  EXPECT_EQ(read.kitchen.recipes[0].slug, "r7");
}

TEST(Dishes, ThatNobodyKnowsStandInTheMenu) {
  const UnsaidRead read("meals: {2027-04-05: {dinner: pizza from next door}}\n");
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
  ASSERT_EQ(read.plan().meals.size(), 1U);
  EXPECT_EQ(read.plan().meals[0].dishes.at(0).kind, Dish::Kind::plain);
  EXPECT_TRUE(read.says("warning: there is no recipe 'pizza from next door'"));
}

TEST(Extra, IsFreeText) {
  const UnsaidRead read(
      "meals: {2027-04-05: {dinner: stew}}\nextra: [50 storage bags, a shower curtain, "
      "blue yarn]\n");
  EXPECT_EQ(read.diagnostics.all().size(), 1U) << read.said(); // the note of what is usual
  ASSERT_EQ(read.plan().extra.size(), 3U);
  EXPECT_EQ(read.plan().extra[0].what.amount->number, 50);
  EXPECT_EQ(read.kitchen.food(*read.plan().extra[1].what.food()).name, "shower curtain");
}

TEST(Extra, IsStillCheckedForSlips) {
  const UnsaidRead read("meals: {2027-04-05: {dinner: stew}}\nextra: [2 freezr bags]\n");
  EXPECT_TRUE(read.says("did you mean freezer bag")) << read.said();
}

UnsaidRead cooking(const std::string& line) {
  return UnsaidRead("meals: {2027-04-05: {dinner: soup}}\n",
                    {{"recipes/soup.yaml", "serves: 2\ningredients: [\"" + line + "\"]\n"}});
}

TEST(Unknown, FoodIsCarriedAsItIsWritten) {
  const UnsaidRead read = cooking("2 bunches soup greens, chopped");
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
  EXPECT_TRUE(read.says("no food or recipe is called 'soup greens'")) << read.said();
  const Ingredient& line = read.kitchen.recipes.at(0).ingredients.at(0);
  const foods::Food& food = read.kitchen.food(*line.food());
  EXPECT_EQ(food.name, "soup greens");
  EXPECT_EQ(food.shop_in, "bunch");
  EXPECT_EQ(foods::basis(food), measure::Dimension::count);
  EXPECT_FALSE(food.allergens);
}

TEST(Unknown, FoodOfAPriceListIsThatOfARecipe) {
  const UnsaidRead read("meals: {2027-04-05: {dinner: soup}}\n",
                        {{"recipes/soup.yaml", "serves: 2\ningredients: [2 bunches soup greens]\n"},
                         {"plans/stores/market.yaml", "prices: {soup greens: 1.99 each}\n"}});
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
  EXPECT_EQ(*read.kitchen.recipes.at(0).ingredients.at(0).food(),
            read.kitchen.shops.at(0).offers.at(0).food);
}

TEST(Unknown, AHandfulOfSomethingIsThatAndNotOfIt) {
  const UnsaidRead read = cooking("1 handful of zorgle leaves");
  const Ingredient& line = read.kitchen.recipes.at(0).ingredients.at(0);
  EXPECT_EQ(read.kitchen.food(*line.food()).name, "zorgle leaves");
}

TEST(Unknown, ARecipeThatIsCalledAsItsMainFoodMeansTheFood) {
  const UnsaidRead read("meals: {2027-04-05: {dinner: gnocchi}}\n",
                        {{"recipes/gnocchi.yaml", "serves: 2\ningredients: [500 g gnocchi]\n"}});
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
  ASSERT_TRUE(read.kitchen.recipes.at(0).ingredients.at(0).food());
}

TEST(Unknown, TinsInAPriceListAreOfWhatIsInTins) {
  const UnsaidRead read(
      "meals: {2027-04-05: {dinner: soup}}\n",
      {{"recipes/soup.yaml", "serves: 2\ningredients: [2 tins chopped tomatoes]\n"},
       {"plans/stores/market.yaml", "prices: {chopped tomatoes: 400 g tin 0.69}\n"}});
  EXPECT_FALSE(read.says("warning")) << read.said();
  EXPECT_EQ(*read.kitchen.recipes.at(0).ingredients.at(0).food(),
            read.kitchen.shops.at(0).offers.at(0).food);
}

TEST(Unknown, RecipeAndItsLeftoversStandInTheMenu) {
  const UnsaidRead read(
      "meals: {2027-04-05: {dinner: pot roast}, 2027-04-06: {dinner: leftovers of pot "
      "roast}}\n",
      {});
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
  ASSERT_EQ(read.kitchen.plan->meals.size(), 2U);
  EXPECT_EQ(read.kitchen.plan->meals[1].dishes.at(0).kind, kitchen::Dish::Kind::plain);
}

TEST(Unknown, AmountOnHandIsNotCounted) {
  const UnsaidRead read("meals: {2027-04-05: {dinner: stew}}\n",
                        {{"plans/on-hand.yaml", "on hand: [onions, some garlic]\n"}});
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
  EXPECT_TRUE(read.says("no amount is given, so it is not counted")) << read.said();
  EXPECT_TRUE(read.kitchen.on_hand.lots.empty());
}

TEST(Unknown, FoodThatIsCountedByAWordOfItsOwnIsStillThatFood) {
  const UnsaidRead read = cooking("1 wedge of brie");
  const Ingredient& line = read.kitchen.recipes.at(0).ingredients.at(0);
  EXPECT_EQ(read.kitchen.food(*line.food()).department, foods::Department::dairy);
}

TEST(Extra, OfAFoodWithoutAnAmountIsOnTheListAsItIsWritten) {
  const UnsaidRead read("meals: {2027-04-05: {dinner: stew}}\nextra: [honey, white bread]\n");
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
  const std::vector<Extra>& extra = read.plan().extra;
  ASSERT_EQ(extra.size(), 2U);
  EXPECT_EQ(extra[1].what.amount->measure.piece, "loaf");
}

TEST(Unknown, WordsDoNotMakeOneFoodAnother) {
  const UnsaidRead read = cooking("2 tbsp perilla oil");
  const Ingredient& line = read.kitchen.recipes.at(0).ingredients.at(0);
  EXPECT_EQ(read.kitchen.food(*line.food()).name, "perilla oil");
  EXPECT_EQ(foods::basis(read.kitchen.food(*line.food())), measure::Dimension::volume);
}

TEST(Unknown, FoodHasTheAllergensThatItsNameSpeaksOf) {
  const auto allergens = [](const std::string& line) {
    const UnsaidRead read = cooking(line);
    return read.kitchen.food(*read.kitchen.recipes.at(0).ingredients.at(0).food()).allergens;
  };
  const auto spread = allergens("2 tbsp zorgle peanut butter");
  ASSERT_TRUE(spread);
  EXPECT_EQ(spread->contains, std::vector{foods::Allergen::peanut});
  EXPECT_FALSE(allergens("2 tbsp peanut-free peanut butter")); // not known, never "none"
}

TEST(Unknown, MeasureIsCarriedWithTheFood) {
  const UnsaidRead read = cooking("2 dollops butter");
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
  const Ingredient& line = read.kitchen.recipes.at(0).ingredients.at(0);
  const foods::Food& food = read.kitchen.food(*line.food());
  EXPECT_EQ(food.department, foods::Department::dairy);
  ASSERT_TRUE(food.allergens);
  EXPECT_EQ(food.allergens->contains, std::vector{foods::Allergen::milk});
}

TEST(Unknown, SlipsAreErrorsWithWhatIsMeant) {
  for (const auto& [line, meant] :
       {std::pair("1 lb onoin", "onion"), std::pair("1 lb onions, dicced", "diced"),
        std::pair("2 cups brwon rice", "brown rice"),
        std::pair("2 cups chpped onions", "chopped")}) {
    const UnsaidRead read = cooking(line);
    EXPECT_GE(read.diagnostics.errors(), 1U) << line;
    EXPECT_TRUE(read.says(std::string("did you mean ") + meant)) << read.said();
  }
}

TEST(Unknown, WhatIsFreeOfSomethingIsNotAnsweredWithThat) {
  const UnsaidRead read = cooking("1 cup gluten-free zorgle flour");
  EXPECT_TRUE(read.says("gluten free flour")) << read.said();
  EXPECT_FALSE(read.says("gluten flour")) << read.said();
}

TEST(Unknown, AFoodAfterTheCommaIsReported) {
  EXPECT_TRUE(cooking("1 lb onions, diced and banana").says("'banana' after the comma"));
  EXPECT_TRUE(cooking("1 cup flour, gluten-free").says("'gluten-free' after the comma"));
  EXPECT_FALSE(cooking("2 onions, cut in wedges").says("after the comma"));
}

UnsaidRead holding(const std::string& lines) {
  return UnsaidRead("meals: {2027-04-05: {dinner: stew}}\n",
                    {{"plans/on-hand.yaml", "on hand: [" + lines + "]\n"}});
}

TEST(OnHand, SaysWhereAndUntilWhenInWords) {
  const UnsaidRead read =
      holding("\"6 eggs, in the freezer\", \"2 cups milk, opened 3 Apr, until 24 "
              "Apr\", 1 lb onions fridge, \"1 lb ground beef, Use-by 9 April\"");
  EXPECT_EQ(read.diagnostics.errors(), 0U) << read.said();
  const auto& lots = read.kitchen.on_hand.lots;
  ASSERT_EQ(lots.size(), 4U) << read.said();
  EXPECT_EQ(lots[0].place, foods::Place::freezer);
  EXPECT_EQ(lots[1].opened, day("2027-04-03"));
  EXPECT_LT(*lots[1].use_by, day("2027-04-24")); // what is open goes by that
  EXPECT_EQ(lots[2].place, foods::Place::fridge);
  EXPECT_EQ(lots[3].use_by, day("2027-04-09"));
}

TEST(OnHand, LeavesNothingOutWithoutAWord) {
  EXPECT_TRUE(holding("\"6 eggs, frige\"").says("did you mean fridge?"));
  EXPECT_TRUE(holding("\"6 eggs, unitl 24 Apr\"").says("did you mean until?"));
  EXPECT_TRUE(holding("\"6 eggs, 24 Apr\"").says("write 'until 24 Apr' or 'opened 24 Apr'"));
  EXPECT_TRUE(holding("\"6 eggs, banana\"").says("'banana' is not understood"));
  EXPECT_TRUE(holding("\"6 eggs, until soon\"").says("'soon' is not a date"));
}

} // namespace
} // namespace manciple::kitchen
