// Recipes in recipes in recipes: long rows and broad ones take no more than their number.
#include "cli/compile.hpp"
#include "emit/emit.hpp"

#include <gtest/gtest.h>

#include <fmt/format.h>

namespace manciple {
namespace {

// A house in memory whose recipes r0, r1, ... each need the next, `lines` times.
text::FilesInMemory row(int length, std::string_view line, int lines = 1,
                        std::string_view last = "1 lb onion") {
  text::FilesInMemory files;
  files.texts["plans/household.yaml"] =
      "people: [{name: Ada, avoids: [peanut]}]\nmeals: {dinner: \"18:30\"}\n";
  files.texts["plans/stores/corner.yaml"] =
      "shop: Corner\nprices: {onion: 1.00/lb, peanut butter: 16 oz jar 3.00}\n";
  files.texts["plans/p.yaml"] =
      "plan: P\nfrom: 2027-03-01\nuntil: 2027-03-31\nmeals: {2027-03-02: {dinner: r0}}\n"
      "trips: [{date: 2027-03-01, stops: [corner]}]\n";
  for (int i = 0; i < length; ++i) {
    std::string ingredients;
    for (int l = 0; l < lines; ++l) {
      ingredients += fmt::format("{}{} r{}", l > 0 ? ", " : "", line, i + 1);
    }
    files.texts[fmt::format("recipes/r{}.yaml", i)] =
        fmt::format("name: R{}\nserves: 1\nmakes: 1 cup\ningredients: [{}]\n", i,
                    i + 1 < length ? ingredients : std::string(last));
  }
  return files;
}

struct Built {
  text::Sources sources;
  text::Diagnostics diagnostics;
  std::optional<emit::Compiled> compiled;
  explicit Built(const text::FilesInMemory& files)
      : compiled(cli::compile("plans/p.yaml", sources, diagnostics, {}, files)) {}
  [[nodiscard]] std::string said() const { return render(diagnostics, sources); }
};

TEST(Chains, OfThousandsOfRecipesAreFollowedToTheirEnd) {
  const Built built(row(4000, "1 cup"));
  ASSERT_TRUE(built.compiled) << built.said();
  ASSERT_EQ(built.compiled->resolved.uses.size(), 1U);
  EXPECT_EQ(built.compiled->resolved.uses[0].amount, measure::facts(measure::Unit::pound).factor);
  const auto& shares = built.compiled->resolved.shares.back();
  ASSERT_EQ(shares.size(), 1U);
  EXPECT_EQ(shares[0].share, 1);
  // The tree that `why` prints stops growing at some depth.
  const auto onion = built.compiled->resolved.uses[0].food;
  EXPECT_LT(emit::why_text(*built.compiled, onion, {}).size(), 10000U);
}

TEST(Chains, ThatUseTheNextTwiceDoNotDoubleTheWork) {
  const Built built(row(60, "1/2 cup", 2));
  ASSERT_TRUE(built.compiled) << built.said();
  ASSERT_EQ(built.compiled->resolved.uses.size(), 1U);
  EXPECT_EQ(built.compiled->resolved.uses[0].amount, measure::facts(measure::Unit::pound).factor);
  EXPECT_EQ(built.compiled->worth.total(), built.compiled->shopping.lines.at(0).cost);
}

TEST(Chains, HideNoAllergenHoweverDeep) {
  const Built built(row(300, "1 cup", 1, "2 tbsp peanut butter"));
  EXPECT_FALSE(built.compiled);
  EXPECT_NE(built.said().find("plans/p.yaml:4:30: error: Ada must not have peanut"),
            std::string::npos)
      << built.said();
  // The way is shown by its two ends.
  EXPECT_NE(built.said().find("through '1 cup r1'"), std::string::npos);
  EXPECT_NE(built.said().find("through 288 more recipes"), std::string::npos) << built.said();
  EXPECT_NE(built.said().find("through '2 tbsp peanut butter'"), std::string::npos);
}

TEST(Chains, HideNothingThatARecipeSaysItMayContain) {
  text::FilesInMemory files = row(3, "1 cup");
  files.texts["recipes/r2.yaml"] += "may contain: [peanut]\n";
  EXPECT_NE(Built(files).said().find("Ada must not have peanut: R2 may contain it"),
            std::string::npos);
}

} // namespace
} // namespace manciple
