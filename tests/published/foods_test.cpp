// The reference against the published tables themselves. The whole tables are read where they lie
// beside the project (../shared/reference); where they do not, these tests skip and say so, and the
// sample in sample_test.cpp is what is checked.
#include "foods/book.hpp"
#include "published/compared.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <map>
#include <sstream>
#include <vector>

namespace manciple::foods {
namespace {

const std::string tables = std::string(MANCIPLE_SOURCE) + "/../shared/reference/";

std::vector<Food> all_foods() {
  Book book;
  std::vector<Food> out;
  for (const std::string& name : book.food_names()) {
    out.push_back(book.get(*book.find(name)));
  }
  return out;
}

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
std::map<std::string, double> sr28_weights() {
  std::map<std::string, double> out;
  std::ifstream in(tables + "usda-sr28/WEIGHT.txt");
  for (std::string line; std::getline(in, line);) {
    const auto f = fields_of(line);
    if (f.size() >= 5) {
      out["SR28 " + std::to_string(std::atoi(f[0].c_str())) + "." + f[1]] =
          std::atof(f[4].c_str()) / std::atof(f[2].c_str());
    }
  }
  return out;
}

TEST(PublishedFoods, GramWeightsAreThoseOfSr28) {
  const auto weights = sr28_weights();
  if (weights.empty()) {
    GTEST_SKIP() << "SR28 is not beside the project: the gram weights were NOT compared with the "
                    "whole table";
  }
  published::Compared compared("USDA SR28 gram weights");
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

TEST(PublishedFoods, WhatIsTrimmedIsTheRefuseOfSr28) {
  std::map<std::string, double> refuse;
  std::ifstream in(tables + "usda-sr28/FOOD_DES.txt");
  for (std::string line; std::getline(in, line);) {
    const auto f = fields_of(line);
    if (f.size() > 8) {
      refuse["SR28 " + std::to_string(std::atoi(f[0].c_str())) + " refuse"] =
          std::atof(f[8].c_str());
    }
  }
  if (refuse.empty()) {
    GTEST_SKIP() << "SR28 is not beside the project: refuse was NOT compared with the whole table";
  }
  published::Compared compared("USDA SR28 refuse");
  for (const Food& food : all_foods()) {
    if (const Yield* edible = food.yield(Form::plain)) {
      if (const auto found = refuse.find(edible->source); found != refuse.end()) {
        compared.near(food.name, to_double(edible->share) * 100, 100 - found->second, 1e-9);
      }
    }
  }
  EXPECT_GE(compared.count(), 80);
}

TEST(PublishedFoods, NutrientsAreThoseOfSr26) {
  std::map<int, std::vector<double>> rows;
  std::ifstream in(tables + "usda-sr28/nutrients-sr26-per-100g.csv");
  for (std::string line; std::getline(in, line);) {
    const auto cells = cells_of(line);
    if (cells.size() >= 9) {
      std::vector<double> values;
      for (const std::size_t column : {2U, 3U, 4U, 5U, 6U, 8U}) {
        values.push_back(cells[column].empty() ? -1 : std::atof(cells[column].c_str()));
      }
      rows[std::atoi(cells[0].c_str())] = values;
    }
  }
  if (rows.empty()) {
    GTEST_SKIP()
        << "SR26 is not beside the project: nutrients were NOT compared with the whole table";
  }
  published::Compared compared("USDA SR26 nutrients");
  for (const Food& food : all_foods()) {
    if (!food.nutrients || !food.usda || !rows.contains(*food.usda)) {
      continue;
    }
    const Nutrients& n = *food.nutrients;
    const std::array<const std::optional<Rational>*, 6> ours{
        &n.energy, &n.protein, &n.fat, &n.carbohydrate, &n.fiber, &n.sodium};
    for (std::size_t i = 0; i < ours.size(); ++i) {
      if (*ours[i]) {
        compared.near(food.name, to_double(**ours[i]), rows[*food.usda][i], 1e-9);
      }
    }
  }
  EXPECT_GE(compared.count(), 60 * 2);
}

TEST(PublishedFoods, NothingKeepsLongerThanTheStorageDataSays) {
  std::map<std::string, std::vector<std::string>> rows;
  std::vector<std::string> header;
  std::ifstream in(tables + "usda-storage/products.csv");
  for (std::string line; std::getline(in, line);) {
    auto cells = cells_of(line);
    if (header.empty()) {
      header = cells;
    } else if (cells.size() == header.size()) {
      rows["FSIS " + std::to_string(std::atoi(cells[0].c_str()))] = cells;
    }
  }
  if (rows.empty()) {
    GTEST_SKIP() << "the FSIS storage data is not beside the project: keeping times were NOT "
                    "compared with it";
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
  published::Compared compared("USDA FSIS storage times");
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
  }
  EXPECT_GE(compared.count(), 100);
}

} // namespace
} // namespace manciple::foods
