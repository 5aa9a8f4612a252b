#include "nutrition/within.hpp"

#include "house.hpp"

#include <fmt/format.h>

#include <map>

namespace manciple {
namespace {

TEST(EachRecipe, IsVisitedOnceWithAllTheTimesThatItIsMade) {
  // Each takes the next one twice, so the last is made 2^8 times.
  constexpr int deep = 8;
  House house;
  for (int i = 0; i < deep; ++i) {
    house.recipe(fmt::format("r{}", i), fmt::format("\"1 cup r{0}\", \"1 cup r{0}\"", i + 1),
                 "makes: 1 cup\n");
  }
  house.recipe(fmt::format("r{}", deep), "1 g onion", "makes: 1 cup\n");
  house.plan("2027-03-02: {dinner: r0}");
  const auto compiled = house.good();
  std::map<std::string, double> times;
  for (const kitchen::Recipe& recipe : compiled.kitchen.recipes) {
    if (recipe.slug != "r0") {
      continue;
    }
    nutrition::each_recipe(compiled.kitchen, recipe, [&](const kitchen::Recipe& one, double of) {
      EXPECT_TRUE(times.emplace(one.slug, of).second) << one.slug;
    });
  }
  EXPECT_EQ(times.size(), deep + 1U);
  EXPECT_EQ(times["r8"], 256);
}

} // namespace
} // namespace manciple
