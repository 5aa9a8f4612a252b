// The reference against the published tables: always against the sample of their lines in sample/,
// and against the whole tables where they lie beside the project (../shared/reference). Where they
// do not, the second half skips and says so.
#include "all_foods.hpp"
#include "published/compared.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <map>
#include <sstream>
#include <vector>

namespace manciple::foods {
namespace {

/// Where tables lie.
struct Tables {
  std::string what; ///< "a sample", "the whole table"
  std::string sr28;
  std::string storage;
};

const Tables sample{"a sample", std::string(MANCIPLE_SOURCE) + "/tests/published/sample/",
                    std::string(MANCIPLE_SOURCE) + "/tests/published/sample/"};
const Tables whole{"the whole table",
                   std::string(MANCIPLE_SOURCE) + "/../shared/reference/usda-sr28/",
                   std::string(MANCIPLE_SOURCE) + "/../shared/reference/usda-storage/"};

class PublishedFoods : public testing::TestWithParam<Tables> {
protected:
  [[nodiscard]] const Tables& tables() const { return GetParam(); }
  [[nodiscard]] std::string source(const std::string& name) const {
    return name + " (" + tables().what + ")";
  }
  [[nodiscard]] std::string skipped(const std::string& name) const {
    return name + " is not beside the project: the reference was NOT compared with " +
           tables().what;
  }
};

// Fields between ^, texts wrapped in ~.
std::vector<std::string> fields_of(const std::string& line) {
  std::vector<std::string> out;
  std::stringstream in(line);
  for (std::string field; std::getline(in, field, '^');) {
    std::erase_if(field, [](char c) { return c == '~' || c == '\r' || c == '\n'; });
    out.push_back(field);
  }
  return out;
}

// Fields of a CSV line with quotes.
std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> out(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '"') {
      quoted = !quoted;
    } else if (c == ',' && !quoted) {
      out.emplace_back();
    } else if (c != '\r') {
      out.back() += c;
    }
  }
  return out;
}

// "SR28 11282.1": grams of one of the measure.
std::map<std::string, double> sr28_weights(const Tables& tables) {
  std::map<std::string, double> out;
  std::ifstream in(tables.sr28 + "WEIGHT.txt");
  for (std::string line; std::getline(in, line);) {
    const auto f = fields_of(line);
    if (f.size() >= 5) {
      out["SR28 " + std::to_string(std::atoi(f[0].c_str())) + "." + f[1]] =
          std::atof(f[4].c_str()) / std::atof(f[2].c_str());
    }
  }
  return out;
}

TEST_P(PublishedFoods, GramWeightsAreThoseOfSr28) {
  const auto weights = sr28_weights(tables());
  if (weights.empty()) {
    GTEST_SKIP() << skipped("SR28");
  }
  published::Compared compared(source("USDA SR28 gram weights"));
  for (const Food& food : all_foods()) {
    const auto one = [&](const std::string& source, const Rational& grams) {
      if (const auto found = weights.find(source); found != weights.end()) {
        compared.near(food.name + " " + source, to_double(grams), found->second,
                      0.01 * found->second);
      }
    };
    for (const VolumeWeight& v : food.volumes) {
      one(v.source, v.grams);
    }
    for (const Piece& p : food.pieces) {
      one(p.source, p.grams);
    }
  }
  EXPECT_GE(compared.count(), 200);
}

TEST_P(PublishedFoods, WhatIsTrimmedIsTheRefuseOfSr28) {
  std::map<std::string, double> refuse;
  std::ifstream in(tables().sr28 + "FOOD_DES.txt");
  for (std::string line; std::getline(in, line);) {
    const auto f = fields_of(line);
    if (f.size() > 8) {
      refuse["SR28 " + std::to_string(std::atoi(f[0].c_str())) + " refuse"] =
          std::atof(f[8].c_str());
    }
  }
  if (refuse.empty()) {
    GTEST_SKIP() << skipped("SR28");
  }
  published::Compared compared(source("USDA SR28 refuse"));
  for (const Food& food : all_foods()) {
    if (const Yield* edible = food.yield(Form::plain)) {
      if (const auto found = refuse.find(edible->source); found != refuse.end()) {
        compared.near(food.name, to_double(edible->share) * 100, 100 - found->second, 1e-9);
      }
    }
  }
  EXPECT_GE(compared.count(), 80);
}

TEST_P(PublishedFoods, NutrientsAreThoseOfSr28) {
  std::map<int, std::vector<std::string>> rows;
  std::vector<std::string> header;
  std::ifstream in(tables().sr28 + "nutrients-sr28-per-100g.csv");
  for (std::string line; std::getline(in, line);) {
    const auto cells = cells_of(line);
    if (header.empty()) {
      header = cells;
    } else {
      rows[std::atoi(cells[0].c_str())] = cells;
    }
  }
  if (rows.empty()) {
    GTEST_SKIP() << skipped("SR28");
  }
  published::Compared compared(source("USDA SR28 nutrients"));
  const auto compare = [&](const Food& food, std::optional<int> number,
                           const std::optional<Nutrients>& figures) {
    if (!figures || !number || !rows.contains(*number)) {
      return;
    }
    const auto& row = rows[*number];
    for (const Nutrient nutrient : all_nutrients()) {
      const auto column = static_cast<std::size_t>(
          std::find(header.begin(), header.end(), facts(nutrient).column) - header.begin());
      ASSERT_LT(column, header.size());
      const auto& ours = (*figures)[nutrient];
      EXPECT_EQ(ours.has_value(), column < row.size() && !row[column].empty()) << food.name;
      if (ours) {
        compared.near(food.name, *ours, std::atof(row[column].c_str()), 1e-9);
      }
    }
  };
  for (const Food& food : all_foods()) {
    compare(food, food.usda, food.nutrients);
    compare(food, food.usda_cooked, food.cooked);
  }
  EXPECT_GE(compared.count(), 60 * 2);
}

TEST_P(PublishedFoods, NothingKeepsLongerThanTheStorageDataSays) {
  std::map<std::string, std::vector<std::string>> rows;
  std::vector<std::string> header;
  std::ifstream in(tables().storage + "products.csv");
  for (std::string line; std::getline(in, line);) {
    auto cells = cells_of(line);
    if (header.empty()) {
      header = cells;
    } else if (cells.size() == header.size()) {
      rows["FSIS " + std::to_string(std::atoi(cells[0].c_str()))] = cells;
    }
  }
  if (rows.empty()) {
    GTEST_SKIP() << skipped("the FSIS storage data");
  }
  const auto days = [](double number, const std::string& metric) {
    const std::map<std::string, double> length{
        {"Days", 1}, {"Weeks", 7}, {"Months", 30}, {"Years", 365}, {"Hours", 1.0 / 24}};
    const auto found = length.find(metric);
    return found == length.end() ? 0 : number * found->second;
  };
  const auto column = [&](const std::string& name) {
    return static_cast<std::size_t>(std::find(header.begin(), header.end(), name) - header.begin());
  };
  published::Compared compared(source("USDA FSIS storage times"));
  for (const Food& food : all_foods()) {
    const auto one = [&](const std::optional<Sourced<int>>& keeps, const std::string& place) {
      const auto row = keeps ? rows.find(keeps->source) : rows.end();
      if (row == rows.end()) {
        return;
      }
      double longest = 0;
      for (const std::string prefix : {"", "DOP_"}) {
        const std::size_t most = column(prefix + place + "_Max");
        const std::size_t metric = column(prefix + place + "_Metric");
        longest =
            std::max(longest, days(std::atof(row->second[most].c_str()), row->second[metric]));
      }
      if (longest > 0) {
        compared.at_most(food.name + " in the " + place, keeps->value, longest);
      }
    };
    one(food.keeps.pantry, "Pantry");
    one(food.keeps.fridge, "Refrigerate");
    one(food.keeps.freezer, "Freeze");
    one(food.keeps.frozen_juice, "Freeze");
  }
  EXPECT_GE(compared.count(), 100);
}

TEST_P(PublishedFoods, SafeTemperaturesAreThoseOfFsis) {
  std::map<std::string, double> least;
  std::ifstream in(tables().storage + "minimum-temperatures.csv");
  std::size_t column = 0;
  for (std::string line; std::getline(in, line);) {
    const auto cells = cells_of(line);
    if (column == 0) {
      column = static_cast<std::size_t>(
          std::find(cells.begin(), cells.end(), "Safe_Minimum_Temperature") - cells.begin());
    } else if (cells.size() > column && !cells[column].empty()) {
      least["FSIS " + std::to_string(std::atoi(cells[1].c_str()))] =
          std::atof(cells[column].c_str());
    }
  }
  if (least.empty()) {
    GTEST_SKIP() << skipped("the FSIS table of temperatures");
  }
  published::Compared compared(source("USDA FSIS minimum temperatures"));
  for (const Food& food : all_foods()) {
    if (food.safe_at && least.contains(food.safe_at->source)) {
      compared.near(food.name, food.safe_at->value.fahrenheit, least[food.safe_at->source], 0);
    }
  }
  EXPECT_GE(compared.count(), 40);
}

TEST_P(PublishedFoods, RoastsTakeAtLeastTheTimesOfFsis) {
  struct Row {
    std::string metric;
    double most, oven, least;
  };
  std::map<std::string, Row> rows;
  std::vector<std::string> header;
  std::ifstream in(tables().storage + "cooking-times.csv");
  for (std::string line; std::getline(in, line);) {
    const auto cells = cells_of(line);
    if (header.empty()) {
      header = cells;
      continue;
    }
    const auto cell = [&](const std::string& name) {
      return cells.at(
          static_cast<std::size_t>(std::find(header.begin(), header.end(), name) - header.begin()));
    };
    const auto number = [&](const std::string& name) { return std::atof(cell(name).c_str()); };
    if (cell("Cooking_Method") == "Oven" && cell("Timing_per") == "pound") {
      rows["FSIS " + std::to_string(std::atoi(cell("Product_ID").c_str()))] = {
          cell("Size_metric"), number("Measure_to"), number("Cooking_Temperature"),
          number("Timing_from")};
    }
  }
  if (rows.empty()) {
    GTEST_SKIP() << skipped("the FSIS cooking times");
  }
  published::Compared compared(source("USDA FSIS cooking times"));
  for (const Food& food : all_foods()) {
    for (const RoastingTime& time : food.roasts) {
      const auto row = rows.find(time.source.substr(0, time.source.find(" to ")));
      ASSERT_NE(row, rows.end()) << food.name;
      EXPECT_EQ(row->second.metric, "pounds") << food.name;
      compared.near(food.name + ": oven", time.fahrenheit, row->second.oven, 0);
      compared.near(food.name + ": minutes", to_double(time.minutes_a_pound), row->second.least, 0);
      if (row->first == time.source) {
        compared.near(food.name + ": weight", to_double(time.pounds), row->second.most, 0);
      }
    }
  }
  EXPECT_GE(compared.count(), 3 * 10);
}

INSTANTIATE_TEST_SUITE_P(Sample, PublishedFoods, testing::Values(sample));
INSTANTIATE_TEST_SUITE_P(Whole, PublishedFoods, testing::Values(whole));

// The nine of US law: FALCPA 2004, sec. 203(c)(1), with sesame by the FASTER Act of 2021. The
// fourteen of Regulation (EU) No 1169/2011, Annex II. Both lists in our words, from memory.
TEST(PublishedAllergens, EveryClassOfUsAndEuLawHasAWord) {
  const std::vector<std::string> us{"milk",  "egg",    "fish", "crustaceans", "tree nuts",
                                    "wheat", "peanut", "soy",  "sesame"};
  const std::vector<std::string> eu{"gluten", "crustaceans", "egg",       "fish",    "peanut",
                                    "soy",    "milk",        "tree nuts", "celery",  "mustard",
                                    "sesame", "sulphites",   "lupin",     "molluscs"};
  published::Compared compared("allergen classes of US and EU law");
  for (const auto* list : {&us, &eu}) {
    for (const std::string& word : *list) {
      compared.near(word, parse_allergen(word).has_value() ? 1 : 0, 1, 0);
    }
  }
  EXPECT_EQ(compared.count(), 9 + 14);
}

// What a label of such a food must say under those laws.
TEST(PublishedAllergens, ObviousFoodsAreOfTheirClass) {
  Book book;
  const std::vector<std::pair<std::string, Allergen>> foods{
      {"whole milk", Allergen::milk},
      {"cheddar cheese", Allergen::milk},
      {"butter", Allergen::milk},
      {"egg", Allergen::egg},
      {"mayonnaise", Allergen::egg},
      {"salmon fillet", Allergen::fish},
      {"shrimp", Allergen::crustaceans},
      {"mussels", Allergen::molluscs},
      {"walnuts", Allergen::tree_nuts},
      {"almonds", Allergen::tree_nuts},
      {"peanut butter", Allergen::peanut},
      {"all-purpose flour", Allergen::wheat},
      {"all-purpose flour", Allergen::gluten},
      {"pearl barley", Allergen::gluten},
      {"soy sauce", Allergen::soy},
      {"soy sauce", Allergen::wheat},
      {"tofu", Allergen::soy},
      {"tahini", Allergen::sesame},
      {"celery", Allergen::celery},
      {"dijon mustard", Allergen::mustard},
  };
  for (const auto& [name, allergen] : foods) {
    const auto id = book.find(name);
    ASSERT_TRUE(id) << name;
    const auto& contains = book.get(*id).allergens->contains;
    EXPECT_NE(std::find(contains.begin(), contains.end(), allergen), contains.end())
        << name << " and " << foods::name(allergen);
  }
}

} // namespace
} // namespace manciple::foods
