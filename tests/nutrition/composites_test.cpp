// Dishes that the tables themselves hold as composites, cooked by a usual recipe and added up by
// us: USDA SR28, the number of each in the table below, of 100 g as eaten. The recipes of the USDA
// are not published with the tables; these are ours, in the proportions of any cookbook. Water
// goes and comes in cooking, so both are compared by 100 g of dry weight.
#include "house.hpp"

#include "nutrition/nutrition.hpp"

#include <cmath>

namespace manciple {
namespace {

using foods::Nutrient;

struct Composite {
  int number; ///< of SR28
  const char* name;
  const char* ingredients;
  // Of 100 g:
  double water, energy, protein, fat, carbohydrate;
};

const std::vector<Composite> composites{
    {18402, "Pie crust, standard-type, prepared from recipe, unbaked",
     "\"2 cups all-purpose flour\", \"2/3 cup shortening\", \"1 tsp salt\", \"5 tbsp water\"",
     19.70, 469, 5.70, 30.80, 42.30},
    {18293, "Pancakes, plain, prepared from recipe",
     "\"1 1/2 cups all-purpose flour\", \"1 tbsp sugar\", \"2 1/2 tsp baking powder\", \"3/4 tsp "
     "salt\", \"1 1/4 cups whole milk\", \"1 egg\", \"2 tbsp vegetable oil\"",
     52.90, 227, 6.40, 9.70, 28.30},
    {18390, "Pancakes, buttermilk, prepared from recipe",
     "\"1 1/2 cups all-purpose flour\", \"1 tbsp sugar\", \"2 tsp baking powder\", \"1/2 tsp "
     "salt\", \"1 1/2 cups buttermilk\", \"1 egg\", \"2 tbsp vegetable oil\"",
     52.50, 227, 6.80, 9.30, 28.70},
    {18024, "Bread, cornbread, prepared from recipe, made with low fat (2%) milk",
     "\"1 cup cornmeal\", \"1 cup all-purpose flour\", \"1 tbsp sugar\", \"4 tsp baking powder\", "
     "\"1/2 tsp salt\", \"1 1/3 cups 2% milk\", \"2 eggs\", \"2 tbsp vegetable oil\"",
     39.10, 266, 6.70, 7.10, 43.50},
    {18016, "Biscuits, plain or buttermilk, prepared from recipe",
     "\"2 cups all-purpose flour\", \"1 tbsp baking powder\", \"1 tsp salt\", \"6 tbsp "
     "shortening\", \"3/4 cup 2% milk\"",
     28.90, 353, 7.00, 16.30, 44.60},
    {18073, "Bread, white, prepared from recipe, made with low fat (2%) milk",
     "\"6 cups all-purpose flour\", \"2 tbsp sugar\", \"2 tsp salt\", \"3 tbsp shortening\", \"2 "
     "cups 2% milk\", \"2 tsp active dry yeast\"",
     35.30, 285, 7.90, 5.70, 49.60},
    {18273, "Muffins, plain, prepared from recipe, made with low fat (2%) milk",
     "\"2 cups all-purpose flour\", \"3 tbsp sugar\", \"1 tbsp baking powder\", \"1/2 tsp salt\", "
     "\"1 cup 2% milk\", \"1 egg\", \"1/4 cup vegetable oil\"",
     37.70, 296, 6.90, 11.40, 41.40},
    {18019, "Bread, banana, prepared from recipe, made with margarine",
     "\"1 3/4 cups all-purpose flour\", \"2/3 cup sugar\", \"1 tsp baking powder\", \"1/2 tsp "
     "baking soda\", \"1/2 tsp salt\", \"1/3 cup margarine\", \"2 eggs\", \"3 bananas\"",
     29.20, 326, 4.30, 10.50, 54.60},
    {18367, "Waffles, plain, prepared from recipe",
     "\"1 3/4 cups all-purpose flour\", \"1 tbsp baking powder\", \"1/2 tsp salt\", \"2 eggs\", "
     "\"1 1/2 cups whole milk\", \"1/3 cup vegetable oil\"",
     42.00, 291, 7.90, 14.10, 32.90},
    {18269, "French toast, prepared from recipe, made with low fat (2%) milk",
     "\"8 slices white bread\", \"3 eggs\", \"3/4 cup 2% milk\", \"2 tbsp margarine\"", 54.70, 229,
     7.70, 10.80, 25.00},
    {18154, "Cookies, brownies, prepared from recipe",
     "\"3/4 cup all-purpose flour\", \"1 cup sugar\", \"2 eggs\", \"1/2 cup margarine\", \"2 oz "
     "unsweetened chocolate\", \"1/2 cup walnuts, chopped\"",
     12.60, 466, 6.20, 29.10, 50.20},
    {18378, "Cookies, chocolate chip, prepared from recipe, made with butter",
     "\"2 1/4 cups all-purpose flour\", \"1 cup butter\", \"3/4 cup sugar\", \"3/4 cup brown "
     "sugar, packed\", \"2 eggs\", \"12 oz chocolate chips\", \"1 cup walnuts, chopped\"",
     5.70, 488, 5.70, 28.40, 58.20},
    {18184, "Cookies, oatmeal, prepared from recipe, with raisins",
     "\"1 1/2 cups all-purpose flour\", \"3 cups rolled oats\", \"1 cup margarine\", \"1 cup brown "
     "sugar, packed\", \"1/2 cup sugar\", \"2 eggs\", \"1 cup raisins\"",
     6.40, 435, 6.50, 16.20, 68.40},
    {18208, "Cookies, sugar, prepared from recipe, made with margarine",
     "\"2 3/4 cups all-purpose flour\", \"1 cup margarine\", \"1 cup sugar\", \"1 egg\", \"1 tsp "
     "baking powder\"",
     8.90, 472, 5.90, 23.40, 60.00},
    {18189, "Cookies, peanut butter, prepared from recipe",
     "\"1 1/4 cups all-purpose flour\", \"3/4 cup peanut butter\", \"1/2 cup shortening\", \"1 1/4 "
     "cups brown sugar, packed\", \"3 tbsp whole milk\", \"1 egg\"",
     5.90, 475, 9.00, 23.80, 58.90},
    {18139, "Cake, white, prepared from recipe without frosting",
     "\"2 1/4 cups cake flour\", \"1 1/2 cups sugar\", \"1/2 cup shortening\", \"1 cup whole "
     "milk\", \"4 egg whites\", \"1 tbsp baking powder\"",
     23.30, 357, 5.40, 12.40, 57.20},
    {18146, "Cake, yellow, prepared from recipe without frosting",
     "\"2 1/4 cups cake flour\", \"1 1/2 cups sugar\", \"1/2 cup shortening\", \"1 cup whole "
     "milk\", \"2 eggs\", \"1 tbsp baking powder\"",
     25.10, 361, 5.30, 14.60, 53.00},
    {18126, "Cake, shortcake, biscuit-type, prepared from recipe",
     "\"2 cups all-purpose flour\", \"2 tbsp sugar\", \"1 tbsp baking powder\", \"1/2 tsp salt\", "
     "\"5 tbsp shortening\", \"3/4 cup whole milk\"",
     28.40, 346, 6.10, 14.20, 48.50},
    {18032, "Bread, irish soda, prepared from recipe",
     "\"4 cups all-purpose flour\", \"1/4 cup sugar\", \"1/4 cup margarine\", \"1 cup raisins\", "
     "\"1 1/3 cups buttermilk\", \"1 egg\", \"1 tsp baking soda\", \"1 tbsp caraway seed\"",
     30.10, 290, 6.60, 5.00, 56.00},
    {18134, "Cake, sponge, prepared from recipe",
     "\"1 cup cake flour\", \"1 cup sugar\", \"6 eggs\"", 29.40, 297, 7.30, 4.30, 57.70},
    {18237, "Cream puff shell, prepared from recipe",
     "\"1 cup all-purpose flour\", \"1/2 cup shortening\", \"4 eggs\", \"1 cup water\", \"1/2 tsp "
     "salt\"",
     40.50, 360, 9.00, 25.90, 22.80},
    {18399, "Pie crust, cookie-type, prepared from recipe, graham cracker, chilled",
     "\"1 1/2 cups graham crackers, crushed\", \"1/4 cup sugar\", \"1/3 cup margarine\"", 6.10, 484,
     4.10, 24.40, 63.90},
    {18327, "Pie, pumpkin, prepared from recipe",
     "\"1 1/4 cups all-purpose flour\", \"7 tbsp shortening\", \"2 cups canned pumpkin\", \"3/4 "
     "cup sugar\", \"2 eggs\", \"1 can (12 oz) evaporated milk\"",
     58.50, 204, 4.50, 9.30, 26.40},
    {18325, "Pie, pecan, prepared from recipe",
     "\"1 1/4 cups all-purpose flour\", \"7 tbsp shortening\", \"3 eggs\", \"1 cup light corn "
     "syrup\", \"2/3 cup sugar\", \"1/3 cup butter\", \"1 1/2 cups pecans\"",
     19.50, 412, 4.90, 22.20, 52.20},
    {18302, "Pie, apple, prepared from recipe",
     "\"2 cups all-purpose flour\", \"2/3 cup shortening\", \"6 cups apples, sliced\", \"3/4 cup "
     "sugar\", \"2 tbsp all-purpose flour\", \"1 tbsp butter\"",
     47.30, 265, 2.40, 12.50, 37.10},
    {6165, "Sauce, homemade, white, thin",
     "\"1 tbsp all-purpose flour\", \"1 tbsp margarine\", \"1 cup whole milk\", \"1/4 tsp salt\"",
     80.66, 105, 3.77, 6.73, 7.40},
    {6166, "Sauce, homemade, white, medium",
     "\"2 tbsp all-purpose flour\", \"2 tbsp margarine\", \"1 cup whole milk\", \"1/4 tsp salt\"",
     74.89, 147, 3.84, 10.63, 9.17},
    {6167, "Sauce, homemade, white, thick",
     "\"3 tbsp all-purpose flour\", \"3 tbsp margarine\", \"1 cup whole milk\", \"1/4 tsp salt\"",
     69.10, 186, 3.99, 13.83, 11.61},
    {1164, "Cheese sauce, prepared from recipe",
     "\"2 tbsp all-purpose flour\", \"2 tbsp butter\", \"1 cup whole milk\", \"1 cup shredded "
     "cheddar cheese\"",
     66.86, 197, 10.33, 14.92, 5.48},
    {1105, "Milk, chocolate beverage, hot cocoa, homemade",
     "\"4 cups whole milk\", \"1/3 cup cocoa powder\", \"1/2 cup sugar\"", 82.45, 77, 3.52, 2.34,
     10.74},
    {1132, "Egg, whole, cooked, scrambled",
     "\"6 eggs\", \"1/3 cup whole milk\", \"1 1/2 tbsp butter\"", 76.40, 149, 9.99, 10.98, 1.61},
    {11371, "Potatoes, mashed, home-prepared, whole milk and margarine added",
     "\"2 lb potatoes\", \"1/2 cup whole milk\", \"3 tbsp margarine\", \"1 tsp salt\"", 75.25, 113,
     1.96, 4.20, 16.94},
    {11657, "Potatoes, mashed, home-prepared, whole milk added",
     "\"2 lb potatoes\", \"2/3 cup whole milk\", \"1 tsp salt\"", 78.48, 83, 1.91, 0.57, 17.57},
    {11372, "Potatoes, scalloped, home-prepared with butter",
     "\"2 lb potatoes\", \"3 tbsp butter\", \"3 tbsp all-purpose flour\", \"2 cups whole milk\", "
     "\"1 tsp salt\"",
     80.94, 88, 2.87, 3.68, 10.78},
    {11373, "Potatoes, au gratin, home-prepared from recipe using butter",
     "\"2 lb potatoes\", \"4 tbsp butter\", \"3 tbsp all-purpose flour\", \"1 3/4 cups whole "
     "milk\", \"1 1/2 cups shredded cheddar cheese\"",
     74.00, 132, 5.06, 7.59, 11.27},
    {11414, "Potato salad, home-prepared",
     "\"1 1/2 lb potatoes\", \"3 eggs\", \"1/2 cup mayonnaise\", \"1/2 cup celery, diced\", \"1/4 "
     "cup onion, chopped\", \"1/4 cup sweet pickle relish\"",
     76.00, 143, 2.68, 8.20, 11.17},
    {11659, "Sweet potato, cooked, candied, home-prepared",
     "\"2 lb sweet potatoes\", \"1/2 cup brown sugar, packed\", \"3 tbsp butter\"", 62.75, 164,
     0.89, 3.54, 32.12},
    {19168, "Desserts, egg custard, baked, prepared-from-recipe",
     "\"2 cups whole milk\", \"3 eggs\", \"1/3 cup sugar\"", 78.86, 104, 5.02, 4.58, 11.00},
    {19094, "Desserts, flan, caramel custard, prepared-from-recipe",
     "\"2 cups whole milk\", \"4 eggs\", \"3/4 cup sugar\"", 68.05, 145, 4.53, 4.03, 22.78},
    {19186, "Desserts, apple crisp, prepared-from-recipe",
     "\"6 cups apples, sliced\", \"3/4 cup brown sugar, packed\", \"1/2 cup all-purpose flour\", "
     "\"1/2 cup rolled oats\", \"3 tbsp margarine\"",
     62.91, 161, 1.75, 3.43, 30.84},
    {16138, "Falafel, home-prepared",
     "\"8 oz dried chickpeas\", \"1/2 cup onion, chopped\", \"1/4 cup parsley, chopped\", \"3 "
     "cloves garlic\", \"1/4 cup vegetable oil\"",
     34.62, 333, 13.31, 17.80, 31.84},
    {16137, "Hummus, home prepared",
     "\"8 oz dried chickpeas\", \"1/4 cup tahini\", \"2 tbsp olive oil\", \"1/4 cup bottled lemon "
     "juice\"",
     64.87, 177, 4.86, 8.59, 20.12},
    {19100, "Candies, fudge, chocolate, prepared-from-recipe",
     "\"2 cups sugar\", \"2/3 cup whole milk\", \"2 oz unsweetened chocolate\", \"2 tbsp butter\", "
     "\"2 tbsp light corn syrup\"",
     9.81, 411, 2.39, 10.41, 76.44},
    {19148, "Candies, peanut brittle, prepared-from-recipe",
     "\"1 cup sugar\", \"1/2 cup light corn syrup\", \"1 1/2 cups peanuts\", \"2 tbsp butter\"",
     0.70, 486, 7.57, 18.98, 71.24},
    {4135, "Salad dressing, home recipe, vinegar and oil",
     "\"1/2 cup vegetable oil\", \"1/2 cup cider vinegar\"", 47.40, 449, 0.00, 50.10, 2.50},
    {18396, "Rolls, dinner, plain, prepared from recipe, made with low fat (2%) milk",
     "\"3 1/2 cups all-purpose flour\", \"1/4 cup sugar\", \"1/4 cup margarine\", \"1 cup 2% "
     "milk\", \"1 egg\", \"2 tsp active dry yeast\", \"1 tsp salt\"",
     29.10, 316, 8.50, 7.30, 53.40},
    {19182, "Desserts, mousse, chocolate, prepared-from-recipe",
     "\"6 oz dark chocolate\", \"4 eggs\", \"1 cup heavy cream\", \"1/4 cup sugar\"", 62.94, 225,
     4.14, 16.00, 16.07},
};

// The stated bands. Recipes differ in their fat, milk and eggs by as much.
constexpr double band_of_energy = .10;
constexpr double band_of_grams = 7; // of protein, fat and carbohydrate in 100 g of dry weight

TEST(Composites, OfTheTablesAreWithinTheBand) {
  House house;
  house.write("plans/household.yaml", "people: [{name: Ada}]\n");
  std::string meals;
  auto day = *text::parse_date("2027-03-01");
  for (const Composite& one : composites) {
    house.write(fmt::format("recipes/c{}.yaml", one.number),
                fmt::format("serves: 1\ningredients: [{}]\n", one.ingredients));
    meals += fmt::format("  {}: {{dinner: c{}}}\n", text::print_date(day), one.number);
    day += std::chrono::days(1);
  }
  house.write("plans/p.yaml", "meals:\n" + meals);
  const auto kitchen =
      kitchen::read_kitchen(house.root() + "/plans/p.yaml", house.sources, house.diagnostics);
  ASSERT_EQ(house.diagnostics.errors(), 0U) << house.said();
  double worst_energy = 0;
  double worst_grams = 0;
  std::string worst_dish;
  std::string worst_part;
  for (const Composite& one : composites) {
    const auto recipe =
        std::find_if(kitchen.recipes.begin(), kitchen.recipes.end(),
                     [&](const auto& r) { return r.slug == fmt::format("c{}", one.number); });
    const nutrition::Sum ours = nutrition::of_serving(kitchen, *recipe);
    EXPECT_GT(ours.coverage(Nutrient::energy), .99) << one.name;
    const double dry = (ours.grams - ours[Nutrient::water]) / 100;
    const double theirs = (100 - one.water) / 100;
    const double energy = ours[Nutrient::energy] / dry / (one.energy / theirs) - 1;
    EXPECT_LE(std::abs(energy), band_of_energy) << one.number << " " << one.name;
    if (std::abs(energy) > worst_energy) {
      worst_energy = std::abs(energy);
      worst_dish = fmt::format("{} {}", one.number, one.name);
    }
    for (const auto& [nutrient, published] :
         {std::pair{Nutrient::protein, one.protein}, std::pair{Nutrient::fat, one.fat},
          std::pair{Nutrient::carbohydrate, one.carbohydrate}}) {
      const double off = std::abs(ours[nutrient] / dry - published / theirs);
      EXPECT_LE(off, band_of_grams)
          << one.number << " " << one.name << ", " << foods::facts(nutrient).name;
      if (off > worst_grams) {
        worst_grams = off;
        worst_part = fmt::format("{} of {} {}", foods::facts(nutrient).name, one.number, one.name);
      }
    }
    fmt::print("  SR28 {:05} {:<60} energy {:+.1f} %\n", one.number, one.name, energy * 100);
  }
  fmt::print(
      "published: {} composites of USDA SR28; worst: energy {:.1f} % ({}), {:.1f} g in 100 g "
      "dry ({})\n",
      composites.size(), worst_energy * 100, worst_dish, worst_grams, worst_part);
  EXPECT_GE(composites.size(), 40U);
}

} // namespace
} // namespace manciple
